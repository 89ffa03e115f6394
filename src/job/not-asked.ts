// What release does not ask on this job, since nobody declared what it hangs on: a plan does, one's own areas need not. It
// is told where the car may leave, and judges nothing.

import { noSealant } from './beads.ts';
import { isCritical, isTouched } from './closed.ts';
import type { HoleState } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { circuitOpenedAt } from './open-points.ts';
import { roleOf } from './roles.ts';
import type { AreaState, CircuitState, FaceState } from './states.ts';
import { type Hole, subjectText, withinArea } from './subjects.ts';
import { isByFeel, wantsFigure } from './tightening.ts';
import { makesChips } from './warnings-sealing.ts';

export type NotAsked = { what: string; because: string };

export const notAsked = (ledger: Ledger): NotAsked[] => [
  ...undeclared(ledger),
  ...noFigures(ledger),
  ...chipsInBeads(ledger),
];

/** Empty where nothing was done, and of a plan's areas. */
function undeclared(ledger: Ledger): NotAsked[] {
  const own = ownAreas(ledger);
  const parted = [...every(ledger, 'connection')].filter((c) => c.partedAt > 0 && !c.declared?.area);
  // What belongs to no area is of the whole car, as the battery's earth is; parted alone it asks for nothing more.
  if (own.length === 0 && parted.every((c) => c.declared)) return [];
  const none = (one: NotAsked, is: boolean): NotAsked[] => (is ? [one] : []);
  const noRole = own.filter((a) => !roleOf(ledger, a.area)).map((a) => a.area);
  const noFace = own.filter((a) => !hasFace(ledger, a)).map((a) => a.area);
  const circuits = [...every(ledger, 'circuit')];
  const isOpened = circuits.some((c) => circuitOpenedAt(ledger, c) > 0);
  const uncritical = own.filter((a) => !isCriticalArea(ledger, a)).map((a) => a.area);
  // What was called though nobody asked for it is not told as left out.
  const v = stateOf(ledger, 'vehicle', 'vehicle');
  const road = [...(v?.roadAt ? [] : ['road test']), ...(v?.pedalAt ? [] : ['brake pedal'])];
  const run = ['fluids', ...(v?.oilAt ? [] : ['oil level']), ...(v?.startedAt ? [] : ['first start'])];
  return [
    ...none({ what: `${run.join(', ')} and leaks`, because: notOpened(circuits) }, !isOpened),
    ...none({ what: 'clean faces, beads and their cure', because: `no face of ${names(noFace)}` }, noFace.length > 0),
    ...none(
      { what: 'check rotation', because: 'no belt or chain drive was declared' },
      [...every(ledger, 'drive')].length === 0,
    ),
    ...none(
      { what: road.join(' and '), because: `nobody said what ${names(noRole)} belongs to` },
      noRole.length > 0 && road.length > 0,
    ),
    ...none({ what: 'a second look', because: `${names(uncritical)}: not called critical` }, uncritical.length > 0),
  ];
}

/** O4: closed in this job to a figure that nobody said, a plan's areas among them: it is told at each call, and asked at none. */
function noFigures(ledger: Ledger): NotAsked[] {
  const without = [...every(ledger, 'area')].flatMap(({ area, holes }) => {
    const tight = holes.filter((hole) => stateOf(ledger, 'hole', hole)?.called.occupant?.level === 'tight');
    const lacking = tight.filter((hole) => isWithoutFigure(ledger, stateOf(ledger, 'hole', hole) as HoleState));
    if (lacking.length === 0) return [];
    return [lacking.length === tight.length ? area : `${area} ${lacking.map(withinArea).join(', ')}`];
  });
  return without.length > 0 ? [{ what: 'torque figures', because: `none was noted for ${names(without)}` }] : [];
}
function isWithoutFigure(ledger: Ledger, { called: { occupant, passes } }: HoleState): boolean {
  const last = passes.at(-1);
  if (occupant?.level !== 'tight' || !last?.last || last.readNewtonMetres !== undefined) return false;
  if (last.method !== undefined) return wantsFigure(last.method);
  return !isByFeel(stateOf(ledger, 'fastener', occupant.fastener)?.spec);
}
/** S1: minded as it was drilled, and nobody saw since whether the bead that lay open there was to be laid anew. */
const chipsInBeads = (ledger: Ledger): NotAsked[] =>
  [...every(ledger, 'face')].flatMap((f) => {
    const bead = f.beads.findLast((b) => b.n > f.cleanedAt && b.label.product !== noSealant.product);
    const drilled = holesAtFace(ledger, f).filter((hole) =>
      stateOf(ledger, 'hole', hole)?.called.repair.some(({ n, step }) => bead && n > bead.n && makesChips.has(step)),
    );
    const because = `${drilled.map((hole) => subjectText(`hole:${hole}`)).join(', ')} drilled or tapped while it lay open`;
    return drilled.length > 0 ? [{ what: `chips in the bead on ${f.face}`, because }] : [];
  });
const holesAtFace = (ledger: Ledger, { declared }: FaceState): readonly Hole[] => [
  ...new Set([...(stateOf(ledger, 'area', declared?.area ?? '')?.holes ?? []), ...(declared?.pressedBy ?? [])]),
];

/** A circuit alone asks for nothing: what of it was opened is called of a connection or a face. */
const notOpened = (circuits: readonly CircuitState[]): string =>
  circuits.length === 0
    ? 'no circuit was declared'
    : `no connection or face of ${names(circuits.map(({ circuit }) => circuit))} was opened`;

const ownAreas = (ledger: Ledger): AreaState[] =>
  [...every(ledger, 'area')].filter((a) => {
    if (a.declared?.planned) return false;
    return a.holes.some((hole) => {
      const h = stateOf(ledger, 'hole', hole);
      return h !== undefined && isTouched(h);
    });
  });
const hasFace = (ledger: Ledger, a: AreaState): boolean =>
  [...every(ledger, 'face')].some(
    (f) => f.declared?.area === a.area || f.declared?.pressedBy.some((h) => a.holes.includes(h)),
  );
const isCriticalArea = (ledger: Ledger, a: AreaState): boolean =>
  a.holes.some((hole) => {
    const h = stateOf(ledger, 'hole', hole);
    return h !== undefined && isCritical(ledger, h, a.area);
  });

const mostNamed = 4;
const names = (areas: readonly string[]): string =>
  areas.length > mostNamed
    ? `${areas.slice(0, mostNamed - 1).join(', ')} and ${areas.length - mostNamed + 1} more areas`
    : areas.join(', ');
export const notAskedText = ({ what, because }: NotAsked): string => `${what} (${because})`;
