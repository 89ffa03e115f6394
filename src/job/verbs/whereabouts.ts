// Verbs on where a fastener lies and whether it serves: moved, condemned, measured, scrapped, a piece of it moved. What is
// lost stands in losses.ts, a stray in strays.ts, U3's corrections in corrections.ts.
import * as z from 'zod';
import { fastenerIdSchema, pieceIdSchema } from '../entries/fasteners.ts';
import type { Entry } from '../entry.ts';
import { fastenerState, holeState, mayNotServe, no } from '../guards.ts';
import { asScrap } from '../hole-states.ts';
import { stateOf } from '../ledger.ts';
import { reasonSchema } from '../reasons.ts';
import { holeSchema, placeSchema, subjectText } from '../subjects.ts';
import { type Guard, verb } from '../verb.ts';

export const fastener = fastenerIdSchema;

export const isKnown: Guard<{ fastener: string }> = {
  code: 'no-such-fastener',
  rule: 'L1',
  kind: 'footing',
  needs: ['fastener'],
  check: (s, said) =>
    fastenerState(s, said.fastener) ? null : no(`there is no fastener ${said.fastener}`, 'name its hole'),
};
export const isNotInAHole: Guard<{ fastener: string }> = {
  code: 'still-in-its-hole',
  rule: 'L1',
  kind: 'footing',
  needs: ['fastener'],
  check(s, said) {
    const f = fastenerState(s, said.fastener);
    return f?.place.startsWith('hole:') ? no(`it is in ${subjectText(f.place)}`, 'call it off first') : null;
  },
};

const move = verb(
  'move-fastener',
  () => z.strictObject({ fastener, to: placeSchema, because: reasonSchema.optional() }),
  [
    isKnown,
    isNotInAHole,
    {
      code: 'not-a-place-to-lay',
      rule: 'L1',
      kind: 'footing',
      needs: ['fastener', 'to'],
      check: (s, { fastener: id, to }) =>
        to.startsWith('hole:') || to.startsWith('box:') || to === 'lost' || fastenerState(s, id)?.place === to
          ? no(`it can't be moved to ${subjectText(to)}`, 'call it back into a hole, lost, or to another tray')
          : null,
    },
  ],
  (s, said) => [
    {
      kind: 'fastener-moved',
      fastener: said.fastener,
      from: fastenerState(s, said.fastener)?.place as string,
      to: said.to,
      ...(said.because && { because: said.because }),
    },
  ],
);

/** Several at once, as those of a kind that do not serve again. */
const scrapTogether = verb(
  'scrap-together',
  () => z.strictObject({ fasteners: z.array(fastener).min(1).max(500) }),
  [
    {
      code: 'not-in-a-tray',
      rule: 'L1',
      kind: 'footing',
      needs: ['fasteners'],
      check(s, { fasteners }) {
        const other = fasteners.find((id) => !fastenerState(s, id)?.place.startsWith('tray:'));
        return other === undefined ? null : no(`${other} lies in no tray`, 'call it off first');
      },
    },
  ],
  (s, { fasteners }) =>
    [...new Set(fasteners)].map((id) => ({
      kind: 'fastener-moved',
      fastener: id,
      from: fastenerState(s, id)?.place as string,
      to: 'scrap',
    })),
);

const condemn = verb(
  'condemn',
  () => z.strictObject({ fastener, because: reasonSchema }),
  [
    isKnown,
    {
      code: 'condemned-already',
      rule: 'L8',
      kind: 'footing',
      needs: ['fastener'],
      check: (s, said) =>
        fastenerState(s, said.fastener)?.condemned ? no('it is condemned already', 'lay it on the scrap pile') : null,
    },
  ],
  (s, said) => [
    {
      kind: 'fastener-condemned',
      fastener: said.fastener,
      at: fastenerState(s, said.fastener)?.place as string,
      because: said.because,
    },
  ],
);

const pieceOut = verb(
  'move-piece',
  () => z.strictObject({ piece: pieceIdSchema, to: placeSchema }),
  [
    {
      code: 'no-such-piece',
      rule: 'L10',
      kind: 'footing',
      needs: ['piece'],
      check(s, { piece, to }) {
        const p = stateOf(s.ledger, 'piece', piece);
        if (!p) return no(`there is no piece ${piece}`, 'name the piece');
        return p.place === to || to === 'lost' || to.startsWith('box:')
          ? no(`it can't be moved to ${subjectText(to)}`, 'call it found, or lost')
          : null;
      },
    },
  ],
  (s, { piece, to }) => [{ kind: 'piece-moved', piece, from: stateOf(s.ledger, 'piece', piece)?.place as string, to }],
);

const measure = verb(
  'measure-fastener',
  () =>
    z.strictObject({
      fastener,
      what: z.string().min(1).max(60),
      measuredMm: z.number().positive().max(2000),
      limitMm: z.number().positive().max(2000),
    }),
  [
    isKnown,
    {
      code: 'beyond-the-limit',
      rule: 'L7',
      kind: 'rule',
      needs: ['fastener'],
      check: (s, said) =>
        said.measuredMm > said.limitMm
          ? no(`${said.measuredMm} mm is beyond the limit of ${said.limitMm} mm`, 'fit a new one', [
              fastenerState(s, said.fastener)?.place ?? '',
            ])
          : null,
    },
  ],
  (s, said) => [{ kind: 'fastener-measured', at: fastenerState(s, said.fastener)?.place as string, ...said }],
);

const scrapHole = verb(
  'scrap-own',
  () => z.strictObject({ hole: holeSchema }),
  [
    {
      code: 'not-in-a-tray',
      rule: 'L1',
      kind: 'footing',
      needs: ['hole'],
      check(s, { hole }) {
        const own = holeState(s, hole)?.called.own;
        const f = own ? fastenerState(s, own) : undefined;
        return f?.place.startsWith('tray:')
          ? null
          : no(`the fastener of ${subjectText(`hole:${hole}`)} lies in no tray`, 'call it off first');
      },
    },
  ],
  (s, { hole }) => {
    const f = fastenerState(s, holeState(s, hole)?.called.own as string);
    const barred = f && mayNotServe(f, false);
    const condemned: Entry[] =
      f && !barred ? [{ kind: 'fastener-condemned', fastener: f.id, at: f.place, because: asScrap }] : [];
    return f ? [...condemned, { kind: 'fastener-moved', fastener: f.id, from: f.place, to: 'scrap' }] : [];
  },
);

export const whereaboutsVerbs = [move, scrapTogether, condemn, pieceOut, measure, scrapHole];
