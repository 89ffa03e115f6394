// All that was declared on a job, corrected by what the work has shown since: what a plan of it would say.
import { wantsOf } from '../job/closed.ts';
import type { HoleState } from '../job/hole-states.ts';
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import { edgesOf } from '../job/order.ts';
import type { AreaState } from '../job/states.ts';
import { areaOf, nameOf, type Subject, sortOf, withinArea } from '../job/subjects.ts';
import { type Declaration, subjectOf } from './declared-whole.ts';

/** Every declaration of the job, corrected by what was found, with edges only between what is there. */
export function declaredOn(ledger: Ledger): Declaration[] {
  const areas = [...every(ledger, 'area')].filter((a) => a.holes.length > 0);
  const said: Declaration[] = [
    ...areas.map((a): Declaration => ({ kind: 'area-declared', ...areaSaid(ledger, a) })),
    ...areas.flatMap((a) => inNumbers(a.holes).map((hole) => holeSaid(ledger, hole))),
    ...[...every(ledger, 'part')].map((p): Declaration => {
      const renewed = p.declared?.renew || p.replacedAt > 0;
      return { kind: 'part-declared', part: p.part, heldBy: p.declared?.heldBy ?? [], ...(renewed && { renew: true }) };
    }),
    ...[...every(ledger, 'circuit')].map(
      (c): Declaration => ({ kind: 'circuit-declared', circuit: c.circuit, fluid: c.fluid ?? c.circuit }),
    ),
    ...[...every(ledger, 'connection')].map(
      (c): Declaration => ({ kind: 'connection-declared', ...(c.declared ?? { connection: c.connection }) }),
    ),
    ...[...every(ledger, 'face')].flatMap((f): Declaration[] =>
      f.declared ? [{ kind: 'face-declared', ...f.declared }] : [],
    ),
    ...[...every(ledger, 'drive')].flatMap((d): Declaration[] =>
      d.declared ? [{ kind: 'drive-declared', ...d.declared }] : [],
    ),
    ...[...every(ledger, 'temporary')].map(
      ({ temporary, sort, at }): Declaration => ({ kind: 'temporary-declared', temporary, sort, ...(at && { at }) }),
    ),
    ...[...every(ledger, 'product')].map(({ label }): Declaration => ({ kind: 'product-declared', label })),
  ];
  const there = new Set(said.flatMap((one) => subjectOf(one) ?? []));
  const isThere = (subject: Subject) =>
    there.has(sortOf(subject) === 'rotation' ? `drive:${nameOf(subject)}` : subject);
  const edges = edgesOf(ledger)
    .filter((e) => isThere(e.front) && isThere(e.behind))
    .map(({ n: _, ...edge }): Declaration => ({ kind: 'behind-declared', ...edge, from: 'plan' }));
  return [...said.map((one) => withoutLostPlace(one, isThere)), ...edges];
}

/** Where a temporary was put that is nothing of the vehicle (a tray, the vehicle's outside) is not said. */
function withoutLostPlace(one: Declaration, isThere: (subject: Subject) => boolean): Declaration {
  if (one.kind !== 'temporary-declared' || !one.at || one.at === 'vehicle' || isThere(one.at)) return one;
  const { at: _, ...rest } = one;
  return rest;
}

function areaSaid(ledger: Ledger, a: AreaState): Omit<Extract<Declaration, { kind: 'area-declared' }>, 'kind'> {
  const { planned: _, inPlans: __, ...declared } = a.declared ?? { area: a.area };
  const order = declared.order ?? orderDone(ledger, a);
  return { ...declared, ...(order && { order }) };
}

/** O3: the order in which its last pass was made, where it was made whole and was not just as numbered. */
function orderDone(ledger: Ledger, a: AreaState): string[] | undefined {
  const passes = a.holes.map((hole) => ({ hole, n: stateOf(ledger, 'hole', hole)?.called.passes.at(-1)?.n ?? 0 }));
  if (passes.length < 3 || passes.some(({ n }) => n === 0)) return undefined;
  if (new Set(passes.map(({ n }) => n)).size < passes.length) return undefined;
  const done = passes.toSorted((one, other) => one.n - other.n).map(({ hole }) => withinArea(hole));
  const numbered = inNumbers(a.holes).map(withinArea);
  return done.every((number, i) => number === numbered[i]) ? undefined : done;
}

const inNumbers = (holes: readonly string[]): string[] =>
  holes.toSorted((one, other) => Number.parseInt(withinArea(one), 10) - Number.parseInt(withinArea(other), 10));

function holeSaid(ledger: Ledger, hole: string): Declaration {
  const h = stateOf(ledger, 'hole', hole) as HoleState;
  const { wants: _, planSays: __, slackOnly: ___, ...declared } = h.declared ?? { hole };
  // A wrong one came out and nobody said what belongs there: what was put in its place is the nearest there is.
  const wants = wantsOf(ledger, h) ?? h.called.occupant?.spec;
  const planned = stateOf(ledger, 'area', areaOf(hole))?.declared?.planned === true;
  const slackOnly = (h.declared?.slackOnly && !cameOff(h)) || (!planned && isOnlySlackened(h));
  return { kind: 'hole-declared', ...declared, ...(wants && { wants }), ...(slackOnly && { slackOnly: true }) };
}
const cameOff = ({ called }: Pick<HoleState, 'called'>): boolean =>
  called.levels.some((one) => one.level === 'off' || one.level === 'left');
const isOnlySlackened = ({ called }: HoleState): boolean =>
  called.levels.some((one) => one.level === 'slack') && !cameOff({ called });
