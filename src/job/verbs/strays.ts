// Verbs on strays (K3): found in a tray, in another than was said, given to a hole, scrapped, no part of this vehicle.
import * as z from 'zod';
import { wantsOf } from '../closed.ts';
import type { Entry } from '../entry.ts';
import { holeState, holesAreCounted, no, occupantOf } from '../guards.ts';
import { stateOf } from '../ledger.ts';
import { personSchema, reasonSchema } from '../reasons.ts';
import { contradictions, specSchema, specText } from '../spec.ts';
import { holeSchema, named, nameSchema, placeSchema, subjectText } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';

const strayId = z.string().regex(/^s\d{1,8}\.\d{1,4}$/);
const stray = verb(
  'find-stray',
  () => z.strictObject({ spec: specSchema, tray: nameSchema }),
  [],
  (s, { spec, tray }) => [{ kind: 'stray-found', stray: `s${s.n}.1`, spec, at: `tray:${tray}` }],
);
const isStray: Guard<{ stray: string }> = {
  code: 'no-such-stray',
  rule: 'K3',
  kind: 'footing',
  needs: ['stray'],
  check(s, said) {
    const known = stateOf(s.ledger, 'stray', said.stray);
    return known && !known.settled ? null : no(`there is no stray ${said.stray} to settle`, 'name a stray');
  },
};
/** K3: it lies in another tray than was called. */
const moveStray = verb(
  'move-stray',
  () => z.strictObject({ stray: strayId, to: placeSchema }),
  [
    isStray,
    {
      code: 'not-a-tray-to-lie-in',
      rule: 'K3',
      kind: 'footing',
      needs: ['stray', 'to'],
      check: (s, { stray: id, to }) =>
        named('tray', to) === undefined || stateOf(s.ledger, 'stray', id)?.place === to
          ? no(`a stray can't be laid in ${subjectText(to)}`, 'name another tray, or call what becomes of it')
          : null,
    },
  ],
  (s, { stray: id, to }) => [
    { kind: 'stray-moved', stray: id, from: stateOf(s.ledger, 'stray', id)?.place as string, to },
  ],
);
const settle = (s: Standing, id: string) => ({
  kind: 'stray-settled' as const,
  stray: id,
  at: stateOf(s.ledger, 'stray', id)?.place as string,
});

/** K3: it becomes a fastener in hand, its own hole's if the hole's own never was there, and can be called back. */
const giveStray = verb(
  'give-stray',
  () => z.strictObject({ stray: strayId, hole: holeSchema }),
  [
    isStray,
    {
      code: 'hole-is-taken',
      rule: 'L1',
      kind: 'footing',
      needs: ['hole'],
      check: (s, { hole }) =>
        occupantOf(s, hole) ? no(`${subjectText(`hole:${hole}`)} holds a fastener`, 'name an open hole') : null,
    },
    holesAreCounted,
    {
      code: 'wants-another',
      rule: 'L5',
      kind: 'rule',
      needs: ['stray', 'hole'],
      check(s, said) {
        const spec = stateOf(s.ledger, 'stray', said.stray)?.spec ?? {};
        const h = holeState(s, said.hole);
        const wants = h && wantsOf(s.ledger, h);
        const differs = wants ? contradictions(wants, spec) : [];
        return differs.length > 0
          ? no(`it wants ${specText(wants ?? {})}, this is ${specText(spec)}`, 'name another hole')
          : null;
      },
    },
  ],
  (s, said) => {
    const spec = stateOf(s.ledger, 'stray', said.stray)?.spec ?? {};
    const h = holeState(s, said.hole);
    const untouched: Entry[] = h && h.called.levels.length > 0 ? [] : [{ kind: 'hole-found-empty', hole: said.hole }];
    const id = `f${s.n}.1`;
    return [
      ...untouched,
      { ...settle(s, said.stray), as: 'given', fastener: id, spec: { ...spec } },
      {
        kind: 'fastener-fitted',
        hole: said.hole,
        fastener: id,
        from: stateOf(s.ledger, 'stray', said.stray)?.place as string,
        spec,
      },
    ];
  },
);
const scrapStray = verb(
  'scrap-stray',
  () => z.strictObject({ stray: strayId }),
  [isStray],
  (s, said) => [{ ...settle(s, said.stray), as: 'scrapped' }],
);
const disownStray = verb(
  'disown-stray',
  () => z.strictObject({ stray: strayId, who: personSchema, because: reasonSchema }),
  [isStray],
  (s, said) => [{ ...settle(s, said.stray), as: 'not-of-this-vehicle', who: said.who, because: said.because }],
);

export const strayVerbs = [stray, moveStray, giveStray, scrapStray, disownStray];
