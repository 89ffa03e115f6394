// Verbs that state and correct: left empty, what a hole wants, a spec, holes exchanged (L5, L11, U3).
import * as z from 'zod';
import { isCritical } from '../closed.ts';
import { fastenerIdSchema } from '../entries/fasteners.ts';
import { holeState, no } from '../guards.ts';
import { stateOf } from '../ledger.ts';
import { personSchema, reasonSchema } from '../reasons.ts';
import { contradictions, fieldWords, specSchema, specText } from '../spec.ts';
import { areaOf, holeSchema, subjectText } from '../subjects.ts';
import { verb } from '../verb.ts';
import { corrected } from './first-call.ts';
import { isKnown } from './whereabouts.ts';

const fastener = fastenerIdSchema;
const leaveEmpty = verb(
  'leave-empty',
  () => z.strictObject({ hole: holeSchema, who: personSchema, because: reasonSchema }),
  [
    {
      code: 'not-empty',
      rule: 'L1',
      kind: 'footing',
      needs: ['hole'],
      check: (s, { hole }) => {
        const h = holeState(s, hole);
        return !h?.called.touchedAt || h.called.occupant
          ? no(`${subjectText(`hole:${hole}`)} is not an empty hole`, 'call it off, or found empty')
          : null;
      },
    },
    {
      code: 'never-on-a-critical-area',
      rule: 'L11',
      kind: 'rule',
      needs: ['hole'],
      check: (s, { hole }) => {
        const h = holeState(s, hole);
        return h && isCritical(s.ledger, h, areaOf(hole))
          ? no('no hole of a critical area stays empty', 'fit a fastener', [`hole:${hole}`])
          : null;
      },
    },
  ],
  (_s, said) => [{ kind: 'hole-left-empty', ...said }],
);

const stateWants = verb(
  'state-wants',
  () => z.strictObject({ hole: holeSchema, spec: specSchema, because: reasonSchema }),
  [],
  (s, said) => [
    ...(stateOf(s.ledger, 'area', areaOf(said.hole))?.declared
      ? []
      : [{ kind: 'area-declared' as const, area: areaOf(said.hole) }]),
    { kind: 'wants-stated', ...said },
  ],
);

const correctSpec = verb(
  'correct-spec',
  () => z.strictObject({ fastener, spec: specSchema, because: reasonSchema }),
  [isKnown],
  (s, said) => [corrected(s, said.fastener, said.spec, said.because)],
);

const exchangeHoles = verb(
  'exchange-holes',
  () => z.strictObject({ one: holeSchema, other: holeSchema, because: reasonSchema }),
  [
    {
      code: 'nothing-to-exchange',
      rule: 'U3',
      kind: 'footing',
      needs: ['one', 'other'],
      check(s, { one, other }) {
        const called = (hole: string) => (holeState(s, hole)?.called.levels.length ?? 0) > 0;
        if (one === other) return no('they are the same hole', 'name the hole it really was');
        return called(one) || called(other)
          ? null
          : no('nothing was called of either', 'name the hole that was called');
      },
    },
    {
      code: 'could-not-have-held-it',
      rule: 'U3',
      kind: 'rule',
      needs: ['one', 'other'],
      check(s, { one, other }) {
        const a = holeState(s, one);
        const b = holeState(s, other);
        for (const [from, into] of [
          [a, b],
          [b, a],
        ] as const) {
          const spec = from?.called.occupant?.spec;
          const wants = into?.declared?.wants;
          const differs = spec && wants && !from?.called.occupant?.substitute ? contradictions(wants, spec) : [];
          if (differs.length > 0 && spec) {
            return no(
              `${subjectText(`hole:${into?.hole}`)} wants another ${fieldWords(differs)} than ${specText(spec)}`,
              'name the hole it really was; if it was this one, strike that call and call this hole',
            );
          }
        }
        return null;
      },
    },
  ],
  (_s, said) => [{ kind: 'holes-exchanged', ...said }],
);

export const correctionVerbs = [leaveEmpty, stateWants, correctSpec, exchangeHoles];
