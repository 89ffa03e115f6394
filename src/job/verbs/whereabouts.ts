// Verbs on where fasteners lie: moved, lost and found, condemned, broken, measured, strays; and U3's corrections.
import { z } from 'zod';
import { likeInTray } from '../choose.ts';
import { fastenerIdSchema, pieceIdSchema } from '../entries/fasteners.ts';
import type { Entry } from '../entry.ts';
import { fastenerState, holeState, mayNotServe, no } from '../guards.ts';
import { stateOf } from '../ledger.ts';
import { specSchema, specText } from '../spec.ts';
import { fromBox, holeSchema, nameSchema, placeSchema, subjectText } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';

const reason = z.string().min(1).max(400);
const person = z.string().min(1).max(60);
const fastener = fastenerIdSchema;

export const isKnown: Guard<{ fastener: string }> = {
  code: 'no-such-fastener',
  rule: 'L1',
  kind: 'footing',
  needs: ['fastener'],
  check: (s, said) =>
    fastenerState(s, said.fastener) ? null : no(`there is no fastener ${said.fastener}`, 'name its hole'),
};
const isNotInAHole: Guard<{ fastener: string }> = {
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
  z.strictObject({ fastener, to: placeSchema, because: reason.optional() }),
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

const loseTakes = z.strictObject({
  fastener: fastener.optional(),
  /** Or a new one of this name, dropped on its way from the parts box. */
  box: nameSchema.optional(),
  /** Or what a tray came short of (K2): one of its equals there. */
  short: z.strictObject({ spec: specSchema, tray: nameSchema }).optional(),
  reaches: z.boolean(),
  where: z.string().max(80),
});
type Lose = z.infer<typeof loseTakes>;
const lostOne = (s: Standing, { fastener: id, short }: Lose): string | undefined =>
  short ? likeInTray(s.ledger, short.tray, short.spec)?.id : id;
const lose = verb(
  'lose-fastener',
  loseTakes,
  [
    {
      code: 'no-such-fastener',
      rule: 'L9',
      kind: 'footing',
      needs: [],
      check(s, said) {
        if (said.box) {
          const b = stateOf(s.ledger, 'box', said.box);
          return b && b.sort === 'fastener' && b.left > 0
            ? null
            : no(`no fastener ${said.box} is left in the parts box`, 'name what was dropped');
        }
        const id = lostOne(s, said);
        if (id && fastenerState(s, id)) return null;
        return said.short
          ? no(`nothing in tray ${said.short.tray} is ${specText(said.short.spec)}`, 'say another spec or tray')
          : no('it names no fastener', 'name its hole, or a new one from the parts box');
      },
    },
    {
      ...isNotInAHole,
      check: (s, said) => (said.fastener ? isNotInAHole.check(s, { fastener: said.fastener }) : null),
    },
    {
      code: 'lost-already',
      rule: 'L9',
      kind: 'footing',
      needs: ['fastener'],
      check: (s, said) =>
        said.fastener && fastenerState(s, said.fastener)?.place === 'lost'
          ? no('it is called lost already', 'call it found, or the search')
          : null,
    },
  ],
  (s, said) => {
    const { box, reaches, where } = said;
    const id = lostOne(s, said);
    const spec = box ? stateOf(s.ledger, 'box', box)?.spec : undefined;
    return [
      {
        kind: 'fastener-lost',
        fastener: box ? `f${s.n}.1` : (id as string),
        from: box ? fromBox(box) : (fastenerState(s, id as string)?.place as string),
        reaches,
        where,
        ...(spec && { spec }),
      },
    ];
  },
);

const lostOf = (s: Standing, lost: string) =>
  lost.startsWith('p') ? stateOf(s.ledger, 'piece', lost)?.loss : stateOf(s.ledger, 'fastener', lost)?.loss;
const anyLost = z.union([fastener, pieceIdSchema]);
const isLost: Guard<{ lost: string }> = {
  code: 'not-lost',
  rule: 'L9',
  kind: 'footing',
  needs: ['lost'],
  check: (s, { lost }) => (lostOf(s, lost) ? null : no(`${lost} is not lost`, 'name what is lost')),
};
const search = verb(
  'search',
  z.strictObject({ lost: anyLost, how: z.enum(['magnet', 'camera', 'cover off', 'sump off']) }),
  [isLost],
  (_s, said) => [{ kind: 'search-made', ...said }],
);
const ruleOut = verb(
  'rule-out-loss',
  z.strictObject({ lost: anyLost, who: person, because: reason }),
  [
    isLost,
    {
      code: 'search-not-made',
      rule: 'L9',
      kind: 'gate',
      needs: ['lost'],
      check(s, { lost }) {
        const loss = lostOf(s, lost);
        return loss?.reaches && loss.searched.length === 0
          ? no(
              'it can reach belt, gears, valves, cylinders or sump',
              'make the search first: magnet, camera, cover or sump off',
            )
          : null;
      },
    },
  ],
  (_s, said) => [{ kind: 'loss-ruled-out', ...said }],
);

const condemn = verb(
  'condemn',
  z.strictObject({ fastener, because: reason }),
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
  z.strictObject({ piece: pieceIdSchema, to: placeSchema }),
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
const losePiece = verb(
  'lose-piece',
  z.strictObject({ piece: pieceIdSchema, reaches: z.boolean(), where: z.string().max(80) }),
  [
    {
      code: 'no-such-piece',
      rule: 'L10',
      kind: 'footing',
      needs: ['piece'],
      check(s, { piece }) {
        const p = stateOf(s.ledger, 'piece', piece);
        return p && p.place !== 'lost' ? null : no(`there is no piece ${piece} to lose`, 'name the piece');
      },
    },
  ],
  (s, said) => [{ kind: 'piece-lost', from: stateOf(s.ledger, 'piece', said.piece)?.place as string, ...said }],
);

const measure = verb(
  'measure-fastener',
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
  z.strictObject({ hole: holeSchema }),
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
      f && !barred ? [{ kind: 'fastener-condemned', fastener: f.id, at: f.place, because: 'scrapped' }] : [];
    return f ? [...condemned, { kind: 'fastener-moved', fastener: f.id, from: f.place, to: 'scrap' }] : [];
  },
);

export const whereaboutsVerbs = [move, lose, search, ruleOut, condemn, pieceOut, losePiece, measure, scrapHole];
