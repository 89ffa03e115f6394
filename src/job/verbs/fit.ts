// The verb that puts a fastener into a hole by a few turns, and all that may stand against it (L5 to L8, K4).
import * as z from 'zod';
import { chosenFor, mayNotTrade, openFindingOf } from '../choose.ts';
import { isEmptyOnArrival, wantsOf } from '../closed.ts';
import type { Entry } from '../entry.ts';
import {
  fastenerState,
  holeIsFree,
  holeState,
  holesAreCounted,
  isRenewed,
  mayNotServe,
  no,
  unfit,
  wantsIn,
} from '../guards.ts';
import type { FastenerState } from '../hole-states.ts';
import { later } from '../later.ts';
import { stateOf } from '../ledger.ts';
import { emptiedLevels, levelToFill, nutOverStud, studOutUnder } from '../levels.ts';
import { fieldWords, specText } from '../spec.ts';
import { areaOf, fromBox, type Hole, holeSchema, nameSchema, subjectText } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';

const fitTakes = later(() =>
  z.strictObject({
    hole: holeSchema,
    fastener: z.string().max(20).optional(),
    /** A new one of this name from the parts box. */
    box: nameSchema.optional(),
    forNow: z.literal(true).optional(),
    working: z.literal(true).optional(),
    substitute: z.string().min(1).max(400).optional(),
    partStays: z.literal(true).optional(),
  }),
);
type Fit = z.infer<ReturnType<typeof fitTakes>>;

/** Guards and entries speak of the level the fastener goes into, whatever number was called. */
const into = (s: Standing, said: Fit): Hole => levelToFill(s.ledger, said.hole);

/** The fastener a fit speaks of: named, from the box, or chosen by L6. */
function meant(s: Standing, said: Fit): FastenerState | undefined {
  if (said.box) return undefined;
  return said.fastener
    ? fastenerState(s, said.fastener)
    : chosenFor(s.ledger, into(s, said), { working: said.working === true });
}

const levelIsFree: Guard<Fit> = { ...holeIsFree, check: (s, said) => holeIsFree.check(s, { hole: into(s, said) }) };

/** L1: a nut holds on its stud alone: they go in together, or the stud before it. */
const studIsIn: Guard<Fit> = {
  code: 'stud-is-out',
  rule: 'L1',
  kind: 'footing',
  needs: ['hole'],
  check(s, said) {
    const hole = into(s, said);
    const nut = nutOverStud(s.ledger, hole);
    if (nut) return no(`${subjectText(`hole:${nut}`)} is in, and no stud under it`, 'call the nut off first');
    const stud = studOutUnder(s.ledger, hole);
    const own = stud && chosenFor(s.ledger, stud);
    if (!stud || (own && others(s, said, hole).includes(stud))) return null;
    return no(`${subjectText(`hole:${stud}`)} is out`, `${own ? 'it' : 'a new one'} goes in before its nut`);
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
    const h = holeState(s, into(s, said));
    const own = h?.called.own ? fastenerState(s, h.called.own) : undefined;
    const barred = own && (mayNotServe(own, said.working === true)?.because ?? foundWrong(s, own));
    const wants = specText((h && wantsOf(s.ledger, h)) ?? {});
    const none = wants === 'unknown' ? 'nothing in the trays is known to fit' : `nothing in the trays is ${wants}`;
    const hasNone = h !== undefined && isEmptyOnArrival(h) ? `it was empty on arrival, and ${none}` : none;
    const because = barred ? `its own fastener may not: ${barred}` : hasNone;
    const isOther = own?.place.startsWith('tray:') === true && !barred && !said.working;
    return no(
      isOther ? `${because}, and its own is called ${specText(own.spec)}` : because,
      isOther
        ? 'correct what its own is, where that was called wrong, or call a new one from the parts box'
        : 'call a new one from the parts box, or a substitute',
      [`hole:${said.hole}`],
    );
  },
};

const foundWrong = (s: Standing, f: FastenerState): string | undefined => {
  const finding = openFindingOf(s.ledger, f);
  return finding && `there is a finding on it: ${finding.what}`;
};

const barredBy = (rule: 'L7' | 'L8' | 'L10', code: string): Guard<Fit> => ({
  code,
  rule,
  kind: 'rule',
  needs: ['hole'],
  check(s, said) {
    const f = meant(s, said);
    const barred = f && mayNotServe(f, said.working === true);
    return barred?.rule === rule
      ? no(`${specText(f?.spec ?? {})} does not go back: ${barred.because}`, 'fit a new one')
      : null;
  },
});

const fitsTheHole: Guard<Fit> = {
  code: 'wants-another',
  rule: 'L5',
  kind: 'rule',
  needs: ['hole'],
  check(s, said) {
    if (said.substitute || said.working) return null;
    const b = said.box ? stateOf(s.ledger, 'box', said.box) : undefined;
    const spec = said.box ? b?.spec : meant(s, said)?.spec;
    const wants = wantsIn(s.ledger, into(s, said));
    const differs = spec ? unfit(wants, spec, said.box !== undefined) : [];
    if (differs.length === 0) return null;
    const because = `it wants ${specText(wants ?? {})}, this is ${specText(spec ?? {})}: another ${fieldWords(differs)}`;
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
    const because = f && mayNotTrade(s.ledger, f, into(s, said));
    return because ? no(because, 'fit its own') : null;
  },
};

/** Back by a few turns; a part that is off comes back with its first fastener, unless it is to be renewed. */
const fit = verb(
  'fit',
  fitTakes,
  [
    levelIsFree,
    holesAreCounted,
    boxHasIt,
    somethingFits,
    studIsIn,
    barredBy('L7', 'may-not-serve-again'),
    barredBy('L8', 'condemned-never-goes-back'),
    barredBy('L10', 'broken-never-goes-back'),
    fitsTheHole,
    mayTrade,
  ],
  (s, said) => {
    const hole = into(s, said);
    const first = meant(s, said);
    const taken = new Set(first ? [first.id] : []);
    const entries = fitOne(s, said, hole, first);
    for (const level of others(s, said, hole)) {
      const f = chosenFor(s.ledger, level, { except: taken });
      if (!f) continue;
      taken.add(f.id);
      entries.push(...fitOne(s, { hole: level, ...(said.forNow && { forNow: said.forNow }) }, level, f));
    }
    return [...entries, ...(said.working || said.partStays ? [] : partsBack(s, said, hole))];
  },
);

/** What shares the number and goes in with the one called. */
const others = (s: Standing, said: Fit, hole: Hole): Hole[] =>
  said.working || hole !== said.hole ? [] : emptiedLevels(s.ledger, hole).filter((level) => level !== hole);

function fitOne(s: Standing, said: Fit, hole: Hole, f: FastenerState | undefined): Entry[] {
  const flags = {
    ...(said.forNow && { forNow: said.forNow }),
    ...(said.working && { working: said.working }),
    ...(said.substitute && { substitute: said.substitute }),
  };
  if (!f) return [...newFromBox(s, said, hole, flags), ...substituteFinding(s, said, hole)];
  const fitted: Entry = { kind: 'fastener-fitted', hole, fastener: f.id, from: f.place, spec: f.spec, ...flags };
  return [fitted, ...substituteFinding(s, said, hole)];
}

function substituteFinding(s: Standing, said: Fit, hole: Hole): Entry[] {
  if (!said.substitute) return [];
  const what = `substitute fitted: ${said.substitute}`.slice(0, 200);
  return [{ kind: 'finding-made', finding: `d${s.n}.1`, at: `hole:${hole}`, what, when: 'during the work' }];
}

type Flags = Pick<Fit, 'forNow' | 'working' | 'substitute'>;
function newFromBox(s: Standing, said: Fit, hole: Hole, flags: Flags): Entry[] {
  if (!said.box) return [];
  const spec = stateOf(s.ledger, 'box', said.box)?.spec ?? {};
  const wants = wantsIn(s.ledger, hole);
  const differs = wants && !said.substitute && !said.working ? unfit(wants, spec, false) : [];
  const newPattern = differs.length > 0 ? { newPattern: differs } : {};
  const from = fromBox(said.box);
  const known = said.working ? spec : { ...wants, ...spec };
  return [{ kind: 'fastener-fitted', hole, fastener: `f${s.n}.1`, from, spec: known, ...flags, ...newPattern }];
}

function partsBack(s: Standing, said: Fit, hole: Hole): Entry[] {
  const parts = stateOf(s.ledger, 'area', areaOf(hole))?.parts ?? [];
  return parts.flatMap((name): Entry[] => {
    const part = stateOf(s.ledger, 'part', name);
    const held = part?.declared?.heldBy ?? [];
    const ours = part?.off && (held.includes(hole) || held.includes(said.hole));
    if (!ours || isRenewed(s.ledger, part)) return [];
    return [{ kind: 'part-fitted', part: name, ...(said.forNow && { forNow: said.forNow }) }];
  });
}

export const fitVerbs = [fit];
