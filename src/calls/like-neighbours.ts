// What the fasteners of one area have in common: what a hole most likely wants of which nobody knows it, and which of them
// are of another length. For the eye, never a fact: no hole wants it before somebody says so, and length alone is suspected
// of nothing (F2).
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

/** Holes whose fastener is longer or shorter than most of its kind and thread in the area: not to be mixed up in the hand. */
export function ofOtherLength(ledger: Ledger, area: string): ReadonlySet<Hole> {
  const known = (stateOf(ledger, 'area', area)?.holes ?? []).flatMap((hole) => {
    const h = stateOf(ledger, 'hole', hole);
    const own = h?.called.own === undefined ? undefined : stateOf(ledger, 'fastener', h.called.own)?.spec;
    const spec = h && (h.called.occupant?.spec ?? own ?? wantsOf(ledger, h));
    return spec?.lengthMm === undefined ? [] : [{ hole, spec }];
  });
  const alike = Map.groupBy(known, ({ spec }) => `${spec.kind} ${spec.thread}`);
  return new Set([...alike.values()].flatMap(shorterOrLonger));
}
function shorterOrLonger(all: readonly { hole: Hole; spec: Spec }[]): Hole[] {
  const byLength = [...Map.groupBy(all, ({ spec }) => spec.lengthMm).values()].sort((a, b) => b.length - a.length);
  const [most = [], ...others] = byLength;
  return most.length >= fewest && most.length >= all.length * shareOfOneMind
    ? others.flat().map(({ hole }) => hole)
    : [];
}
