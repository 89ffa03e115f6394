// What a hole most likely wants of which nobody knows it: what the fasteners found in the other holes of its area have in
// common. A proposal for the eye, never a fact: no hole wants it before somebody says so.
import { wantsOf } from '../job/closed.ts';
import { type Ledger, stateOf } from '../job/ledger.ts';
import { isAlike, type Spec, tellingFields } from '../job/spec.ts';
import { areaOf, type Hole } from '../job/subjects.ts';

/** Common practice, no source: one beside it is chance, and of three two are a row. */
const fewest = 2;
const shareOfOneMind = 2 / 3;

/** Fields that most of its neighbours agree in; undefined where that is too little to buy by. */
export function likeNeighbours(ledger: Ledger, hole: Hole): Spec | undefined {
  const all = (stateOf(ledger, 'area', areaOf(hole))?.holes ?? [])
    .filter((one) => one !== hole)
    .flatMap((one): Spec[] => {
      const h = stateOf(ledger, 'hole', one);
      const wants = h && wantsOf(ledger, h);
      return wants ? [wants] : [];
    });
  const spec = Object.fromEntries(
    tellingFields.flatMap((field) => {
      const known = all.filter((one) => one[field] !== undefined);
      const alike = known.map((one) => known.filter((other) => isAlike(field, one, other)).length);
      const most = Math.max(0, ...alike);
      const isOfOneMind = most >= fewest && most >= known.length * shareOfOneMind;
      return isOfOneMind ? [[field, known[alike.indexOf(most)]?.[field]]] : [];
    }),
  ) as Spec;
  return spec.thread === undefined ? undefined : spec;
}
