// Which of what goes in for the work goes in next, and which comes out.
import { keepsItsAreaOpen } from '../job/area-rest.ts';
import {
  carriesYet,
  closesOpenings,
  heldOnceMore,
  holdsYet,
  isAt,
  missingBefore,
  missingToBringUp,
  missingWhereOpen,
  stillUnder,
} from '../job/first-in.ts';
import { inFrontOf } from '../job/in-front.ts';
import { every, type Ledger, stateOf, tallyOf } from '../job/ledger.ts';
import type { TemporaryState } from '../job/states.ts';
import { areaOf, named } from '../job/subjects.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import { type Desk, nextHole } from './desk.ts';
import { isFromPlan, lastFirst } from './in-turn.ts';
import { nextArea } from './next-area.ts';
import { sideIn } from './other-side.ts';
import { areasOfPart } from './where-parts-are.ts';

/** There is no opening to close, or it is masked as all are. */
function closesNothing(ledger: Ledger, t: TemporaryState): boolean {
  const { sort, at } = t;
  const area = at === undefined ? undefined : named('area', at);
  if (area === undefined || !closesOpenings.has(sort)) return false;
  const isMasked = sort === 'mask' && (stateOf(ledger, 'area', area)?.maskedAt ?? 0) > 0;
  return isMasked || tallyOf(ledger, area).off === 0 || stillUnder(ledger, t.temporary, t) !== undefined;
}

/** What is declared to go in where work is now; before any area is in use, where it begins. */
function goesInHere(desk: Desk, at: string | undefined): boolean {
  if (at === undefined) return true;
  const area = desk.facing.area ?? nextArea(desk, false);
  const part = named('part', at);
  if (part !== undefined)
    return (
      area !== undefined && areasOfPart(desk.ledger, part).includes(area) && inFrontOf(desk.ledger, at).length === 0
    );
  const hole = named('hole', at);
  const there = hole === undefined ? named('area', at) : areaOf(hole);
  return there === undefined || there === area;
}
const isAllCalled = (ledger: Ledger, area: string): boolean => {
  const { holes, touched } = tallyOf(ledger, area);
  return holes > 0 && touched >= holes;
};

/** As a plan has it: what is to be in before what is next, then what belongs where work is. */
export function goesInNext(desk: Desk): string[] {
  if (!isFromPlan(desk.ledger)) return [];
  // What held a bolt while it came off holds it again while it is brought up.
  const next = nextHole(desk, 'build');
  const holding = next === undefined ? [] : missingToBringUp(desk.ledger, next);
  const { area } = desk.facing;
  const first = area === undefined || isAllCalled(desk.ledger, area) ? [] : missingBefore(desk.ledger, area);
  const never = [...every(desk.ledger, 'temporary')].filter(
    (t) =>
      t.putInAt === 0 &&
      !isWithdrawn(desk.ledger, `temporary:${t.temporary}`) &&
      (goesInHere(desk, t.at) || closesOpenings.has(t.sort)) &&
      !closesNothing(desk.ledger, t),
  );
  // What the screen says is to be in first, the chock before the car is raised, what belongs here, what to no place.
  const rank = ({ sort, at }: TemporaryState): number => (sort === 'chock' ? -1 : Number(at === undefined));
  const here = never.toSorted((one, other) => rank(one) - rank(other));
  const open = missingWhereOpen(desk.ledger).map((t) => t.temporary);
  return [...new Set([...holding, ...first, ...open, ...here.map((t) => t.temporary)])];
}

/** What the area in use waits for, then what belongs to it or its side of the car; the last one that went in first. */
export function comesOutNext({ ledger, facing: { area } }: Desk): string[] {
  const side = area === undefined ? undefined : sideIn(area);
  const lateness = (t: TemporaryState): number => {
    const isHere = area !== undefined && isAt(t, area);
    if (isHere && keepsItsAreaOpen.has(t.sort)) return 0;
    if (heldOnceMore(ledger, t)) return 4;
    return isHere ? 1 : side !== undefined && sideIn(t.temporary) === side ? 2 : 3;
  };
  const may = [...every(ledger, 'temporary')].filter((t) => t.in && !carriesYet(ledger, t) && !holdsYet(ledger, t));
  return (
    lastFirst(may, (t) => t.putInAt)
      // What the area in use waits for comes first, then what belongs to it, then to its side of the car; one that a
      // bolt wants once more stays in the longest.
      .toSorted((one, other) => lateness(one) - lateness(other))
      .map((t) => t.temporary)
  );
}
