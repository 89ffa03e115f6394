// Verbs on a hole and its fastener: found, slack, off, back, tightened, final.
import { z } from 'zod';
import { chosenFor, levelsOf, mayNotTrade } from '../choose.ts';
import { isCritical, wantsOf } from '../closed.ts';
import { holesUncounted } from '../counts.ts';
import type { Entry } from '../entry.ts';
import {
  fastenerState,
  holdsKnown,
  holdsSomething,
  holeIsFree,
  holeState,
  inOfSort,
  mayNotServe,
  no,
  noGateBehind,
  nothingOpenBehind,
  occupantOf,
  partIsBack,
  unfit,
  wantsIn,
} from '../guards.ts';
import { stateOf } from '../ledger.ts';
import { nextPass, outOfTurn, passesOf } from '../passes.ts';
import { methodSchema, type Spec, specSchema, specText } from '../spec.ts';
import {
  areaOf,
  fromBox,
  type Hole,
  holeSchema,
  inTray,
  nameOf,
  nameSchema,
  placeSchema,
  subjectText,
} from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';

const when = z.enum(['on arrival', 'during the work']);

/** Declares an area that nobody has named before. */
export function areaIfNew(s: Standing, area: string): Entry[] {
  return stateOf(s.ledger, 'area', area)?.declared ? [] : [{ kind: 'area-declared', area }];
}

/** What makes the fastener of a hole known when this is the first call on it. */
function foundIfNew(
  s: Standing,
  hole: Hole,
  spec: Spec | undefined,
  k: number,
): { entries: Entry[]; fastener: string } {
  const known = occupantOf(s, hole);
  if (known) return { entries: [], fastener: known.fastener };
  const fastener = `f${s.n}.${k}`;
  const entry: Entry = { kind: 'fastener-found', hole, fastener, spec: spec ?? wantsIn(s.ledger, hole) ?? {} };
  return { entries: [...(k === 1 ? areaIfNew(s, areaOf(hole)) : []), entry], fastener };
}

const find = verb(
  'find-fastener',
  z.strictObject({ hole: holeSchema, spec: specSchema.optional() }),
  [
    {
      code: 'already-known',
      rule: 'L1',
      kind: 'footing',
      needs: ['hole'],
      check: (s, { hole }) =>
        (holeState(s, hole)?.called.levels.length ?? 0) > 0
          ? no(`${subjectText(`hole:${hole}`)} has been called before`, 'correct the spec, if it is another')
          : null,
    },
  ],
  (s, { hole, spec }) => foundIfNew(s, hole, spec, 1).entries,
);

const findEmpty = verb(
  'find-empty',
  z.strictObject({ hole: holeSchema, when: when.optional() }),
  [
    {
      code: 'not-empty-on-arrival',
      rule: 'L11',
      kind: 'footing',
      needs: ['hole'],
      check: (s, { hole }) =>
        holeState(s, hole)?.called.levels.length
          ? no(`${subjectText(`hole:${hole}`)} has been called before`, 'call what became of its fastener')
          : null,
    },
  ],
  (s, { hole }) => [
    ...areaIfNew(s, areaOf(hole)),
    { kind: 'hole-found-empty', hole },
    { kind: 'finding-made', finding: `d${s.n}.1`, at: `hole:${hole}`, what: 'empty', when: 'on arrival' },
  ],
);

const notSlackAlready: Guard<{ hole: Hole }> = {
  code: 'slack-already',
  rule: 'L4',
  kind: 'footing',
  needs: ['hole'],
  check: (s, { hole }) =>
    occupantOf(s, hole)?.level === 'slack'
      ? no(`${subjectText(`hole:${hole}`)} is slack already`, 'call it off, or tight')
      : null,
};

const slacken = verb(
  'slacken',
  z.strictObject({ hole: holeSchema, spec: specSchema.optional() }),
  [holdsSomething, notSlackAlready],
  (s, { hole, spec }) =>
    levelsOf(s.ledger, hole).flatMap((level, i): Entry[] => {
      if (i > 0 && !canComeOff(s, level)) return [];
      const { entries, fastener } = foundIfNew(s, level, i === 0 ? spec : undefined, i + 1);
      return [...entries, { kind: 'fastener-slackened', hole: level, fastener }];
    }),
);

const canComeOff = (s: Standing, hole: Hole): boolean => {
  const c = holeState(s, hole)?.called;
  return !c || c.occupant !== undefined || c.levels.length === 0;
};

const slackOnly: Guard<{ hole: Hole; anyway?: true }> = {
  code: 'slack-only',
  rule: 'O2',
  kind: 'order',
  needs: ['hole'],
  check: (s, { hole }) =>
    holeState(s, hole)?.declared?.slackOnly
      ? no(`${subjectText(`hole:${hole}`)} is only to be slackened`, 'call it slack')
      : null,
};

/** Off, with every level known under its number; a part comes off with its last fastener unless called otherwise. */
const remove = verb(
  'remove',
  z.strictObject({
    hole: holeSchema,
    to: placeSchema,
    spec: specSchema.optional(),
    /** Something is wrong with it: a finding beside it. `odd` is the wrong one for this hole, `damaged` is condemned. */
    wrong: z.enum(['odd', 'damaged']).optional(),
    what: z.string().max(200).optional(),
    when: when.optional(),
    partStays: z.literal(true).optional(),
  }),
  [holdsSomething, slackOnly],
  (s, said) => {
    const out = levelsOf(s.ledger, said.hole).filter((level, i) => i === 0 || canComeOff(s, level));
    const entries = out.flatMap((level, i): Entry[] => {
      const found = foundIfNew(s, level, i === 0 ? said.spec : undefined, i + 1);
      const gone: Entry = { kind: 'fastener-removed', hole: level, fastener: found.fastener, to: said.to };
      return i === 0 ? [...found.entries, ...wrongEntries(s, said, found.fastener), gone] : [...found.entries, gone];
    });
    return said.partStays ? entries : [...entries, ...partsFreed(s, out)];
  },
);

function wrongEntries(
  s: Standing,
  said: { hole: Hole; wrong?: 'odd' | 'damaged'; what?: string; when?: 'on arrival' | 'during the work' },
  fastener: string,
): Entry[] {
  if (!said.wrong) return [];
  const at = `hole:${said.hole}`;
  const what = said.what ?? (said.wrong === 'odd' ? 'wrong fastener in it' : 'fastener damaged');
  const when = said.when ?? 'on arrival';
  const finding: Entry = { kind: 'finding-made', finding: `d${s.n}.1`, at, what, when };
  return said.wrong === 'odd' ? [finding] : [finding, { kind: 'fastener-condemned', fastener, at, because: what }];
}

/** Parts whose last fastener comes off with these holes. */
function partsFreed(s: Standing, out: readonly Hole[]): Entry[] {
  const area = stateOf(s.ledger, 'area', areaOf(out[0] as Hole));
  return (area?.parts ?? []).flatMap((name): Entry[] => {
    const part = stateOf(s.ledger, 'part', name);
    const held = part?.declared?.heldBy ?? [];
    if (!part || part.off || !held.some((h) => out.includes(h))) return [];
    const stillHeld = held.some((h) => !out.includes(h) && holds(s, h));
    return stillHeld ? [] : [{ kind: 'part-removed', part: name }];
  });
}
function holds(s: Standing, hole: Hole): boolean {
  const h = holeState(s, hole);
  if (h?.declared?.slackOnly) return h.called.occupant?.level !== 'slack';
  return !h || h.called.occupant !== undefined || h.called.levels.length === 0;
}

const fitTakes = z.strictObject({
  hole: holeSchema,
  fastener: z.string().max(20).optional(),
  /** A new one of this name from the parts box. */
  box: nameSchema.optional(),
  forNow: z.literal(true).optional(),
  working: z.literal(true).optional(),
  substitute: z.string().min(1).max(400).optional(),
  partStays: z.literal(true).optional(),
});
type Fit = z.infer<typeof fitTakes>;

/** The fastener a fit speaks of: named, from the box, or chosen by L6. */
function meant(s: Standing, said: Fit) {
  if (said.box) return undefined;
  return said.fastener ? fastenerState(s, said.fastener) : chosenFor(s.ledger, said.hole, said.working === true);
}

const holesAreCounted: Guard<Fit> = {
  code: 'holes-not-counted',
  rule: 'K4',
  kind: 'gate',
  needs: ['hole'],
  check(s, { hole, working }) {
    const area = stateOf(s.ledger, 'area', areaOf(hole));
    if (!area || working || area.counted) return null;
    const because = holesUncounted(s.ledger, area);
    return because
      ? no(`${area.area}: ${because}`, 'count its holes and call the number', [`area:${area.area}`])
      : null;
  },
};

const boxHasIt: Guard<Fit> = {
  code: 'not-in-the-box',
  rule: 'L12',
  kind: 'footing',
  needs: ['hole', 'box'],
  check(s, { box, hole }) {
    if (!box) return null;
    const b = stateOf(s.ledger, 'box', box);
    if (!b || b.left < 1) return no(`no ${box} is left in the parts box`, 'put it in the box first', [`hole:${hole}`]);
    return b.sort === 'fastener' ? null : no(`${box} is no fastener`, 'call the part back');
  },
};

const somethingFits: Guard<Fit> = {
  code: 'nothing-in-hand-fits',
  rule: 'L6',
  kind: 'footing',
  needs: ['hole'],
  check(s, said) {
    if (said.box) return null;
    const f = meant(s, said);
    if (f)
      return f.place.startsWith('tray:')
        ? null
        : no(`${specText(f.spec)} lies in no tray: ${subjectText(f.place)}`, 'call where it is');
    const h = holeState(s, said.hole);
    const own = h?.called.own ? fastenerState(s, h.called.own) : undefined;
    const barred = own && mayNotServe(own, said.working === true);
    const wants = specText((h && wantsOf(h)) ?? {});
    const because = barred ? `its own fastener may not: ${barred.because}` : `nothing in the trays is ${wants}`;
    return no(because, 'call a new one from the parts box, or a substitute', [`hole:${said.hole}`]);
  },
};

const mayServe: Guard<Fit> = {
  code: 'may-not-serve-again',
  rule: 'L7',
  kind: 'rule',
  needs: ['hole'],
  check(s, said) {
    const f = meant(s, said);
    const barred = f && mayNotServe(f, said.working === true);
    return barred
      ? no(`${specText(f.spec)} does not go back (${barred.rule}): ${barred.because}`, 'fit a new one')
      : null;
  },
};

const fitsTheHole: Guard<Fit> = {
  code: 'wants-another',
  rule: 'L5',
  kind: 'rule',
  needs: ['hole'],
  check(s, said) {
    if (said.substitute || said.working) return null;
    const b = said.box ? stateOf(s.ledger, 'box', said.box) : undefined;
    const spec = said.box ? b?.spec : meant(s, said)?.spec;
    const wants = wantsIn(s.ledger, said.hole);
    const differs = spec ? unfit(wants, spec, said.box !== undefined) : [];
    if (differs.length === 0) return null;
    const because = `it wants ${specText(wants ?? {})}, this is ${specText(spec ?? {})}: another ${differs.join(', ')}`;
    return no(because, 'fit what it wants, or call it a substitute with a reason', [`hole:${said.hole}`]);
  },
};

const mayTrade: Guard<Fit> = {
  code: 'trades-with-none',
  rule: 'L6',
  kind: 'rule',
  needs: ['hole'],
  check(s, said) {
    const f = said.working || said.substitute ? undefined : meant(s, said);
    const because = f && mayNotTrade(s.ledger, f, said.hole);
    return because ? no(because, 'fit its own') : null;
  },
};

/** Back by a few turns; a part that is off comes back with its first fastener, unless it is to be renewed. */
const fit = verb(
  'fit',
  fitTakes,
  [holeIsFree, holesAreCounted, boxHasIt, somethingFits, mayServe, fitsTheHole, mayTrade],
  (s, said) => {
    const main = fitOne(s, said, said.hole);
    const others = levelsOf(s.ledger, said.hole)
      .slice(1)
      .filter((level) => !occupantOf(s, level) && !said.working)
      .flatMap((level) => {
        const f = chosenFor(s.ledger, level);
        return f ? fitOne(s, { hole: level, fastener: f.id, forNow: said.forNow }, level) : [];
      });
    return [...main, ...others, ...(said.working || said.partStays ? [] : partsBack(s, said))];
  },
);

function fitOne(s: Standing, said: Fit, hole: Hole): Entry[] {
  const flags = {
    ...(said.forNow && { forNow: said.forNow }),
    ...(said.working && { working: said.working }),
    ...(said.substitute && { substitute: said.substitute }),
  };
  const finding: Entry[] = said.substitute
    ? [
        {
          kind: 'finding-made',
          finding: `d${s.n}.1`,
          at: `hole:${hole}`,
          what: `substitute fitted: ${said.substitute}`,
          when: 'during the work',
        },
      ]
    : [];
  if (said.box) {
    const spec = stateOf(s.ledger, 'box', said.box)?.spec ?? {};
    const wants = wantsIn(s.ledger, hole);
    const differs = wants && !said.substitute ? unfit(wants, spec, false) : [];
    const newPattern = differs.length > 0 ? { newPattern: differs } : {};
    return [
      {
        kind: 'fastener-fitted',
        hole,
        fastener: `f${s.n}.1`,
        from: fromBox(said.box),
        spec: { ...wants, ...spec },
        ...flags,
        ...newPattern,
      },
      ...finding,
    ];
  }
  const f = meant(s, said);
  return f
    ? [{ kind: 'fastener-fitted', hole, fastener: f.id, from: f.place, spec: f.spec, ...flags }, ...finding]
    : [];
}

function partsBack(s: Standing, said: Fit): Entry[] {
  const parts = stateOf(s.ledger, 'area', areaOf(said.hole))?.parts ?? [];
  return parts.flatMap((name): Entry[] => {
    const part = stateOf(s.ledger, 'part', name);
    const ours = part?.off && part.declared?.heldBy.includes(said.hole);
    if (!ours || part.declared?.renew || part.judged) return [];
    return [{ kind: 'part-fitted', part: name, ...(said.forNow && { forNow: said.forNow }) }];
  });
}

const tightenTakes = z.strictObject({
  hole: holeSchema,
  pass: nameSchema.optional(),
  last: z.boolean().optional(),
  method: methodSchema.optional(),
  tool: z.string().max(60).optional(),
});
type Tighten = z.infer<typeof tightenTakes>;

export const passMeant = (s: Standing, said: Tighten): { pass: string; last: boolean } => {
  const passes = passesOf(s.ledger, areaOf(said.hole));
  const pass = said.pass ?? nextPass(s.ledger, said.hole);
  return { pass, last: said.last ?? pass === passes.at(-1) };
};

const spentIsNeverTight: Guard<Tighten> = {
  code: 'spent-is-never-tight',
  rule: 'L7',
  kind: 'rule',
  needs: ['hole'],
  check(s, said) {
    const o = occupantOf(s, said.hole);
    const f = o && fastenerState(s, o.fastener);
    if (!o || !f || !passMeant(s, said).last) return null;
    if (o.working) return no('a working fastener is never called tight', 'take it out when the work is done');
    const barred = mayNotServe(f, false);
    return barred
      ? no(`${specText(f.spec)} may not serve (${barred.rule}): ${barred.because}`, 'take it off and fit a new one')
      : null;
  },
};

/** O1, T1: what is finished on its wheels gets its final with the weight on, jack and block out. */
const weightIsOn: Guard<Tighten> = {
  code: 'weight-not-on',
  rule: 'O1',
  kind: 'order',
  needs: ['hole'],
  check(s, said) {
    if (holeState(s, said.hole)?.declared?.later !== 'on-wheels' || !passMeant(s, said).last) return null;
    const stands = inOfSort(s, ['stand']).map((t) => t.temporary);
    return stands.length > 0
      ? no(`final with the weight on; ${stands[0]} is in`, 'snug now, lower the car, then final', [
          `temporary:${stands[0]}`,
        ])
      : null;
  },
};
const jackIsOut: Guard<Tighten> = {
  code: 'jack-still-in',
  rule: 'T1',
  kind: 'gate',
  needs: ['hole'],
  check(s, said) {
    if (holeState(s, said.hole)?.declared?.later !== 'on-wheels' || !passMeant(s, said).last) return null;
    const jacks = inOfSort(s, ['jack', 'block']).map((t) => t.temporary);
    return jacks.length > 0
      ? no(`final after jack and block are out; ${jacks[0]} is in`, `take ${jacks[0]} out`, [`temporary:${jacks[0]}`])
      : null;
  },
};

export const tightenGuards = [
  holdsKnown,
  spentIsNeverTight,
  partIsBack,
  noGateBehind,
  nothingOpenBehind,
  weightIsOn,
  jackIsOut,
] as const satisfies readonly Guard<Tighten>[];

export function tightenEntries(s: Standing, said: Tighten): Entry[] {
  const { pass, last } = passMeant(s, said);
  const outOfOrder = outOfTurn(s.ledger, said.hole, pass) ? { outOfOrder: true as const } : {};
  return levelsOf(s.ledger, said.hole)
    .filter((level) => occupantOf(s, level))
    .map((level, i): Entry => {
      const o = occupantOf(s, level);
      const h = holeState(s, level);
      const method = said.method ?? h?.declared?.method ?? stateOf(s.ledger, 'area', areaOf(level))?.declared?.method;
      return {
        kind: 'fastener-tightened',
        hole: level,
        fastener: o?.fastener as string,
        pass,
        last,
        ...(method && { method }),
        ...(said.tool && { tool: said.tool }),
        ...(i === 0 && outOfOrder),
      };
    });
}

const tighten = verb('tighten', tightenTakes, tightenGuards, tightenEntries);

const makeFinal = verb(
  'make-final',
  z.strictObject({ hole: holeSchema }),
  [
    {
      code: 'not-on-for-now',
      rule: 'L1',
      kind: 'footing',
      needs: ['hole'],
      check: (s, { hole }) =>
        occupantOf(s, hole)?.forNow ? null : no(`${subjectText(`hole:${hole}`)} is not on for now`, 'call it tight'),
    },
  ],
  (s, { hole }) => [{ kind: 'fastener-made-final', hole, fastener: occupantOf(s, hole)?.fastener as string }],
);

const looked = verb(
  'look-again',
  z.strictObject({ holes: z.array(holeSchema).min(1).max(500), who: z.string().max(60).optional() }),
  [],
  (_s, { holes, who }) => holes.map((hole): Entry => ({ kind: 'looked-again', hole, ...(who && { who }) })),
);

export const isCriticalHole = (s: Standing, hole: Hole): boolean => {
  const h = holeState(s, hole);
  return h !== undefined && isCritical(s.ledger, h, areaOf(hole));
};

export const trayOf = (place: string): string | undefined => (place.startsWith('tray:') ? nameOf(place) : undefined);
export const defaultTray = inTray('1');

export const fastenerVerbs = [find, findEmpty, slacken, remove, fit, tighten, makeFinal, looked];
