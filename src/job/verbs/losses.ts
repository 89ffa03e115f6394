// Verbs on what is lost (L9): a fastener or a piece called lost, searched for, ruled out. Found again, it is moved from
// there as from anywhere, in whereabouts.ts.
import * as z from 'zod';
import { likeInTray } from '../choose.ts';
import { pieceIdSchema } from '../entries/fasteners.ts';
import { fastenerState, no } from '../guards.ts';
import { later } from '../later.ts';
import { stateOf } from '../ledger.ts';
import { personSchema, reasonSchema } from '../reasons.ts';
import { specSchema, specText } from '../spec.ts';
import { fromBox, nameSchema } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';
import { fastener, isNotInAHole } from './whereabouts.ts';

const loseTakes = later(() =>
  z.strictObject({
    fastener: fastener.optional(),
    /** Or a new one of this name, dropped on its way from the parts box. */
    box: nameSchema.optional(),
    /** Or what a tray came short of (K2): one of its equals there. */
    short: z.strictObject({ spec: specSchema, tray: nameSchema }).optional(),
    reaches: z.boolean(),
    where: z.string().max(80),
  }),
);
type Lose = z.infer<ReturnType<typeof loseTakes>>;
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
  () => z.strictObject({ lost: anyLost, how: z.enum(['magnet', 'camera', 'cover off', 'sump off']) }),
  [isLost],
  (_s, said) => [{ kind: 'search-made', ...said }],
);
const ruleOut = verb(
  'rule-out-loss',
  () => z.strictObject({ lost: anyLost, who: personSchema, because: reasonSchema }),
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
const losePiece = verb(
  'lose-piece',
  () => z.strictObject({ piece: pieceIdSchema, reaches: z.boolean(), where: z.string().max(80) }),
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

export const lossVerbs = [lose, search, ruleOut, losePiece];
