// Verbs on a sealing face: cleaned, a bead laid on it. Its holes are brought up as any other's, in tighten.ts.
import * as z from 'zod';
import { faceOpenedAt, noSealant } from '../beads.ts';
import { type Product, productSchema } from '../entries/declared.ts';
import { no } from '../guards.ts';
import { later } from '../later.ts';
import { stateOf } from '../ledger.ts';
import { nameSchema } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';
import { suppliedBy } from './box-and-fluids.ts';

const face = later(() => z.strictObject({ face: nameSchema }));
const isFace: Guard<{ face: string }> = {
  code: 'no-such-face',
  rule: 'S1',
  kind: 'footing',
  needs: ['face'],
  // Its declaration may be struck and a bead still be on it.
  check: (s, said) =>
    stateOf(s.ledger, 'face', said.face)
      ? null
      : no(`there is no sealing face ${said.face}`, 'say which bolts press it: "face NAME pressed by 1-8"'),
};
const clean = verb('clean-face', face, [isFace], (_s, said) => [{ kind: 'face-cleaned', ...said }]);

const labelOf = (s: Standing, said: { product?: string; label?: Product }): Product | undefined =>
  said.label ?? (said.product ? stateOf(s.ledger, 'product', said.product)?.label : undefined);
const lay = verb(
  'lay-bead',
  () => z.strictObject({ face: nameSchema, product: nameSchema.optional(), label: productSchema.optional() }),
  [
    isFace,
    {
      code: 'product-not-on-the-list',
      rule: 'S1',
      kind: 'rule',
      needs: ['product'],
      check: (s, said) =>
        labelOf(s, said)
          ? null
          : no(`${said.product ?? 'the product'} is not on the workshop's list`, 'put its label on the list'),
    },
    {
      code: 'face-not-clean',
      rule: 'S1',
      kind: 'rule',
      needs: ['face'],
      check(s, said) {
        const f = stateOf(s.ledger, 'face', said.face);
        return f && f.cleanedAt > faceOpenedAt(s.ledger, f)
          ? null
          : no(`${said.face} was not called clean since it was opened`, 'clean it, and call it clean', [
              `face:${said.face}`,
            ]);
      },
    },
    {
      code: 'bead-lies-on-it',
      rule: 'S1',
      kind: 'rule',
      needs: ['face'],
      check(s, said) {
        if (labelOf(s, said)?.product !== noSealant.product) return null;
        const bead = stateOf(s.ledger, 'face', said.face)?.beads.find((b) => b.label.product !== noSealant.product);
        return bead
          ? no(`a bead of ${bead.label.product} lies on ${said.face}`, 'take it off, and call the face clean first', [
              `face:${said.face}`,
            ])
          : null;
      },
    },
  ],
  (s, said) => {
    const label = labelOf(s, said) as Product;
    return [{ kind: 'bead-laid', face: said.face, label }, ...suppliedBy(s, label.product)];
  },
);

export const faceVerbs = [clean, lay];
