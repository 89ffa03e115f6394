// Verbs that take apart: found, found empty, slack, off, broken.
import * as z from 'zod';
import type { Entry } from '../entry.ts';
import { fastenerState, holdsSomething, holeState, mayNotServe, no, occupantOf } from '../guards.ts';
import { stateOf } from '../ledger.ts';
import { levelsOf } from '../levels.ts';
import { specSchema } from '../spec.ts';
import { areaOf, type Hole, holeSchema, inHole, placeSchema, sortOf, subjectText } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';
import { areaIfNew, canComeOff, foundIfNew } from './first-call.ts';

const when = z.enum(['on arrival', 'during the work']);

const find = verb(
  'find-fastener',
  () => z.strictObject({ hole: holeSchema, spec: specSchema.optional() }),
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
  () => z.strictObject({ hole: holeSchema, when: when.optional() }),
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
  () => z.strictObject({ hole: holeSchema, spec: specSchema.optional() }),
  [holdsSomething, notSlackAlready],
  (s, { hole, spec }) =>
    levelsOf(s.ledger, hole).flatMap((level, i): Entry[] => {
      if (i > 0 && !canComeOff(s, level)) return [];
      const { entries, fastener } = foundIfNew(s, level, i === 0 ? spec : undefined, i + 1);
      return [...entries, { kind: 'fastener-slackened', hole: level, fastener }];
    }),
);

const slackOnly: Guard<{ hole: Hole }> = {
  code: 'slack-only',
  rule: 'O2',
  kind: 'order',
  needs: ['hole'],
  check(s, { hole }) {
    if (!holeState(s, hole)?.declared?.slackOnly || mustComeOff(s, hole)) return null;
    return no(`${subjectText(`hole:${hole}`)} is only to be slackened`, 'call it slack');
  },
};
/** L7, L8, L10: what may not serve there any more comes off whatever was declared. */
function mustComeOff(s: Standing, hole: Hole): boolean {
  const o = occupantOf(s, hole);
  const f = o && fastenerState(s, o.fastener);
  return o?.working === true || (f !== undefined && mayNotServe(f, false) !== null);
}

/** L1: what comes off lies somewhere, in no other hole and not in the parts box. */
const placeToLay = (to: string): boolean => !to.startsWith('hole:') && !to.startsWith('box:');
const laidSomewhere: Guard<{ to: string }> = {
  code: 'not-a-place-to-lay',
  rule: 'L1',
  kind: 'footing',
  needs: ['to'],
  check: (_s, { to }) =>
    placeToLay(to) ? null : no(`it can't be laid in ${subjectText(to)}`, 'name a tray, the scrap pile or the owner'),
};

/** Off, with every level known under its number; a part comes off with its last fastener unless called otherwise. */
const remove = verb(
  'remove',
  () =>
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
  [holdsSomething, laidSomewhere, slackOnly],
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

/** It came off on this job and went back, or was bought for it: the car did not come so. */
const wasWorkedOn = (s: Standing, fastener: string): boolean => {
  const f = stateOf(s.ledger, 'fastener', fastener);
  return f !== undefined && (f.everOff || sortOf(f.origin) === 'box');
};
function wrongEntries(
  s: Standing,
  said: { hole: Hole; wrong?: 'odd' | 'damaged'; what?: string; when?: 'on arrival' | 'during the work' },
  fastener: string,
): Entry[] {
  if (!said.wrong) return [];
  const at = `hole:${said.hole}`;
  const what = said.what ?? (said.wrong === 'odd' ? 'wrong fastener in it' : 'fastener damaged');
  const when = said.when ?? (wasWorkedOn(s, fastener) ? 'during the work' : 'on arrival');
  const finding: Entry = { kind: 'finding-made', finding: `d${s.n}.1`, at, what, when, fastener };
  return said.wrong === 'odd'
    ? [{ ...finding, wrongOne: true }]
    : [finding, { kind: 'fastener-condemned', fastener, at, because: what }];
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

/** L10: each piece is booked by itself. It may be the first call on the hole: that is how most of them break. */
const breaks = verb(
  'break',
  () =>
    z.strictObject({
      hole: holeSchema,
      /** Where the head is now: still in the hole, in a tray, or lost. */
      headTo: placeSchema,
      /** Each further piece: in the hole, found (on the scrap pile), or lost. */
      pieces: z
        .array(z.enum(['hole', 'found', 'lost']))
        .min(1)
        .max(8),
      spec: specSchema.optional(),
    }),
  [
    holdsSomething,
    {
      code: 'not-a-place-to-lay',
      rule: 'L1',
      kind: 'footing',
      needs: ['hole', 'headTo'],
      check: (_s, { hole, headTo }) =>
        headTo === inHole(hole) || placeToLay(headTo)
          ? null
          : no(`the head can't be in ${subjectText(headTo)}`, 'name its hole, a tray, the scrap pile, or lost'),
    },
  ],
  (s, { hole, headTo, pieces, spec }) => {
    const { entries, fastener } = foundIfNew(s, hole, spec, 1);
    const stays = headTo === inHole(hole);
    const out: Entry[] = stays ? [] : [{ kind: 'fastener-removed', hole, fastener, to: headTo }];
    const where = { hole: inHole(hole), found: 'scrap', lost: 'lost' } as const;
    const at = `hole:${hole}`;
    const what = 'fastener broken';
    return [
      ...entries,
      { kind: 'finding-made', finding: `d${s.n}.1`, at, what, when: 'during the work', fastener },
      ...out,
      {
        kind: 'fastener-broken',
        fastener,
        at: headTo,
        pieces: pieces.map((p, i) => ({ piece: `p${s.n}.${i + 1}`, in: where[p] })),
      },
      ...(stays ? [] : partsFreed(s, [hole])),
    ];
  },
);

export const stripVerbs = [find, findEmpty, slacken, remove, breaks];
