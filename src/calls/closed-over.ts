// Whether a face is meant that cannot well be: one that is closed over, or a bead on one that wants none. A call made too
// late is still a call, so nothing is refused: it is asked for once more before it is written.
import { coveringHoles, partOver } from '../job/beads.ts';
import { snugOrBetter } from '../job/hole-states.ts';
import { type Ledger, stateOf } from '../job/ledger.ts';
import type { FaceState } from '../job/states.ts';
import { type Hole, subjectText } from '../job/subjects.ts';
import type { Desk } from './desk.ts';
import type { Args } from './form.ts';
import type { Besides } from './row.ts';

/** Everything that presses it holds something pulled up, or is as found, or its part is on: nobody reaches it now. */
function closedOverBy({ ledger }: Desk, face: FaceState): string | undefined {
  const pressedBy = face.declared?.pressedBy ?? [];
  const isShut = (hole: string): boolean => {
    const called = stateOf(ledger, 'hole', hole)?.called;
    if (!called || called.touchedAt === 0) return true;
    return called.occupant !== undefined && snugOrBetter(called.occupant.level);
  };
  if (pressedBy.length > 0 && pressedBy.every(isShut)) return `${face.face} is closed over`;
  const part = partOver(ledger, face);
  if (part !== undefined) return `${part} is on ${face.face}`;
  const pressing = coveringHoles(ledger, face).find((hole) => isPulledUp(ledger, hole));
  return pressing === undefined || face.declared?.part !== undefined
    ? undefined
    : `${subjectText(`hole:${pressing}`)} presses ${face.face}`;
}
/** A stud stays in the face when its cover is off. */
function isPulledUp(ledger: Ledger, hole: Hole): boolean {
  const occupant = stateOf(ledger, 'hole', hole)?.called.occupant;
  if (!occupant || occupant.working || !snugOrBetter(occupant.level)) return false;
  return stateOf(ledger, 'fastener', occupant.fastener)?.spec.kind !== 'stud';
}
/** Its area is known from a plan, which would name the bead. */
const wantsNone = ({ ledger }: Desk, { declared }: FaceState): boolean =>
  declared !== undefined &&
  !declared.bead &&
  declared.area !== undefined &&
  stateOf(ledger, 'area', declared.area)?.declared?.planned === true;

const asked = (title: string): Besides => ({
  key: 'late',
  title,
  choices: [
    { value: 'no', text: 'no: another face is meant' },
    // Without the letters of the two calls' own keys: pressed again by habit they pick "no".
    { value: 'all the same', text: 'right: I mean it' },
  ],
  givesUp: 'no',
  inWords:
    'name the face that is meant; what is closed over comes off again first; or say it with "all the same" at its end',
});
const faceOf = ({ ledger }: Desk, { face }: Args) =>
  typeof face === 'string' ? stateOf(ledger, 'face', face) : undefined;

export function askedOnCleaning(desk: Desk, args: Args): Besides | undefined {
  const face = faceOf(desk, args);
  const over = face && args.late === undefined ? closedOverBy(desk, face) : undefined;
  return over === undefined ? undefined : asked(`${over}: was it cleaned before?`);
}
export function askedOnLaying(desk: Desk, args: Args): Besides | undefined {
  const face = faceOf(desk, args);
  if (!face || args.late !== undefined) return undefined;
  const over = closedOverBy(desk, face);
  if (over !== undefined) return asked(`${over}: was the bead laid before?`);
  return wantsNone(desk, face) ? asked(`${face.face} wants no bead by its plan: is one laid?`) : undefined;
}
