// Verbs that put new ones into the parts box: one thing, or several at once (T4).
import * as z from 'zod';
import type { Entry } from '../entry.ts';
import { no } from '../guards.ts';
import { stateOf } from '../ledger.ts';
import { specSchema } from '../spec.ts';
import { nameSchema } from '../subjects.ts';
import { type Standing, verb } from '../verb.ts';

const boughtTakes = z.strictObject({
  name: nameSchema,
  quantity: z.number().int().min(1).max(5000).optional(),
  spec: specSchema.optional(),
  replaces: nameSchema.optional(),
});
type Bought = z.infer<typeof boughtTakes>;
const sortBought = ({ spec, replaces }: Bought) => (spec ? 'fastener' : replaces ? 'part' : 'supply');

const oneName = { code: 'another-of-this-name', rule: 'L12', kind: 'footing' } as const;
function otherOfTheName(s: Standing, said: Bought) {
  const sort = stateOf(s.ledger, 'box', said.name)?.sort;
  return sort && sort !== sortBought(said)
    ? no(`${said.name} is in the box as a ${sort}`, 'give this one a name of its own')
    : null;
}
const filled = (said: Bought): Entry => {
  const { name, quantity, spec, replaces } = said;
  return {
    kind: 'box-filled',
    name,
    sort: sortBought(said),
    quantity: quantity ?? 1,
    ...(spec && { spec }),
    ...(replaces && { replaces }),
  };
};
export const fillBox = verb(
  'fill-box',
  boughtTakes,
  [{ ...oneName, needs: ['name'], check: otherOfTheName }],
  (_s, said) => [filled(said)],
);
export const fillTogether = verb(
  'fill-box-together',
  () => z.strictObject({ bought: z.array(boughtTakes).min(1).max(200) }),
  [
    {
      ...oneName,
      needs: ['bought'],
      check: (s, { bought }) => bought.map((one) => otherOfTheName(s, one)).find((stop) => stop !== null) ?? null,
    },
  ],
  (_s, { bought }) => bought.map(filled),
);
