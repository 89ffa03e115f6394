// Keys that may be a slip though nothing stands against the call: what each is answered the first time, with nothing
// written. The same key again means it, or Enter on the line that was typed; what was heard, a second word.
import { holesOf, isEmptyOnArrival, isOff, isTouched, partsOf } from '../job/closed.ts';
import { carriesYet, notReady, springNotHeld, unlockedTooSoon } from '../job/first-in.ts';
import type { HoleState } from '../job/hole-states.ts';
import { stateOf } from '../job/ledger.ts';
import { dueIn, inOrder, passesOf } from '../job/passes.ts';
import { isWorkedOn } from '../job/repair.ts';
import { driveLockedAt, isOffItsMarks } from '../job/rotation.ts';
import type { Said } from '../job/said.ts';
import { areaOf, holeIn, named, numberOf, type Subject, subjectText, withinArea } from '../job/subjects.ts';
import { beforeTheRest } from '../job/warnings-leaving.ts';
import { areHolesKnown, type Desk } from './desk.ts';
import { allProposed } from './proposals.ts';
import type { Once } from './row.ts';

const wasSlack = (h: HoleState): boolean => h.called.levels.some(({ level }) => level === 'slack');

/** What holds a loaded spring is turned, and what presses that together was not called in. */
export function askedOnLoadedSpring({ ledger }: Desk, { hole }: Said): Once | undefined {
  const missing = typeof hole === 'string' ? springNotHeld(ledger, areaOf(hole)) : [];
  if (typeof hole !== 'string' || missing.length === 0) return undefined;
  return {
    because: `${withinArea(hole)} holds a loaded spring, and ${missing.join(' and ')} ${missing.length === 1 ? 'is' : 'are'} not in: let go, it kills`,
    instead: 'put in what presses it together first',
    by: 'put-in',
    again: `calls ${withinArea(hole)} all the same`,
  };
}
/** Of an area whose holes are all called some came straight off: what is slack among them was called slack on purpose. */
export const askedOnComingOff = (desk: Desk, said: Said): Once | undefined =>
  askedOnLoadedSpring(desk, said) ?? askedOnTakingSlack(desk, said);
function askedOnTakingSlack({ ledger, facing }: Desk, { hole }: Said): Once | undefined {
  const h = typeof hole === 'string' ? stateOf(ledger, 'hole', hole) : undefined;
  const a = h && stateOf(ledger, 'area', areaOf(h.hole));
  if (!h || !a || facing.hole !== undefined || h.called.occupant?.level !== 'slack') return undefined;
  // What a plan has come off comes off, slackened before or not.
  if (a.declared?.planned && h.declared && !h.declared.slackOnly) return undefined;
  const all = holesOf(ledger, a);
  const areCalled = areHolesKnown(ledger, a.area) && all.every(isTouched);
  const off = all.filter(isOff);
  // Once one of them came off by this key, the others follow.
  if (!areCalled || off.every(wasSlack) || off.some(wasSlack)) return undefined;
  const number = withinArea(h.hole);
  return {
    because: `all ${inOrder(ledger, a.area).length} of ${a.area} are called, ${number} only slackened`,
    instead: 'another area is next',
    by: 'area',
    again: `takes ${number} off`,
  };
}

/** A pass of the whole area is called while a hole of it holds nothing, or what is in it gets nothing by this pass. */
export function askedOnPass({ ledger }: Desk, { area }: Said): Once | undefined {
  const a = typeof area === 'string' ? stateOf(ledger, 'area', area) : undefined;
  if (!a) return undefined;
  const pass = passesOf(ledger, a.area).find((one) => dueIn(ledger, a.area, one).length > 0);
  if (pass === undefined) return undefined;
  const due = new Set(dueIn(ledger, a.area, pass));
  const isLoose = ({ hole, called: { occupant } }: HoleState): boolean =>
    (occupant?.level === 'slack' || occupant?.level === 'on') &&
    !occupant.working &&
    !due.has(holeIn(a.area, numberOf(hole)));
  const touched = holesOf(ledger, a).filter(isTouched);
  const empty = touched.filter(isOff);
  const loose = touched.filter((h) => !isOff(h) && isLoose(h));
  if (empty.length + loose.length === 0) return undefined;
  const named = (some: readonly HoleState[], how: string) =>
    some.length === 0
      ? []
      : [`${some.map(({ hole }) => withinArea(hole)).join(', ')} ${some.length === 1 ? 'is' : 'are'} still ${how}`];
  return {
    because: `${a.area}: ${[...named(empty, 'empty'), ...named(loose, 'loose')].join(', ')}`,
    instead: 'in by hand first',
    by: empty.length > 0 && empty.every(isEmptyOnArrival) ? 'new' : 'back',
    again: `calls ${pass} done without ${empty.length + loose.length === 1 ? 'it' : 'them'}`,
  };
}

/** What locks the shafts keeps them where they stand: beside the marks, the timing is lost with the belt. Common practice, no source. */
export function askedOnLocking({ ledger }: Desk, { temporary, sort, at }: Said): Once | undefined {
  const t = typeof temporary === 'string' ? stateOf(ledger, 'temporary', temporary) : undefined;
  const kind = sort ?? t?.sort;
  if (kind !== 'lock' && kind !== 'pin') return undefined;
  const drive = driveLockedAt(ledger, (at as Subject | undefined) ?? t?.at);
  if (!drive || !isOffItsMarks(ledger, drive)) return undefined;
  return {
    because: `${drive.drive} was not called turned to its marks, and ${temporary} locks it where it stands`,
    instead: 'bring it there first, and call that',
    by: 'to-marks',
    again: `calls ${temporary} in`,
  };
}

/** R2: what holds the shafts or carries what is open comes out: by one key the timing would be gone, or what it carries fall. */
export function askedOnTakingOut({ ledger }: Desk, { temporary }: Said): Once | undefined {
  const t = typeof temporary === 'string' ? stateOf(ledger, 'temporary', temporary) : undefined;
  if (!t) return undefined;
  const again = `calls ${t.temporary} out`;
  const [first] = unlockedTooSoon(ledger, t);
  if (first !== undefined)
    return {
      because: `${t.temporary} holds the shafts, and ${notReady(ledger, first)}`,
      instead: 'it stays in until the drive is together',
      by: 'to-rotation',
      again,
    };
  if (t.sort === 'chock' && carriesYet(ledger, t))
    return {
      because: `the car is not on its wheels with their nuts tight: ${t.temporary} keeps it from rolling`,
      instead: 'it stays in until the last',
      by: 'to-leaving',
      again,
    };
  if (t.sort === 'compressor' && t.at !== undefined && carriesYet(ledger, t))
    return {
      because: `${subjectText(t.at)} is open: let go, the spring throws what is on it`,
      instead: 'it stays in until that is tight',
      by: 'to-leaving',
      again,
    };
  return t.sort !== 'stand' && t.at !== undefined && carriesYet(ledger, t)
    ? {
        because: `${subjectText(t.at)} is open: what ${t.temporary} carries hangs on nothing else`,
        instead: 'it stays in until that is snug',
        by: 'to-leaving',
        again,
      }
    : undefined;
}

/** Nothing was filled since: what is meant is another circuit. */
export function askedOnDraining({ ledger }: Desk, { circuit }: Said): Once | undefined {
  const c = typeof circuit === 'string' ? stateOf(ledger, 'circuit', circuit) : undefined;
  return c && c.drainedAt > c.filledAt
    ? {
        because: `${c.circuit} was drained in line ${c.drainedAt}, and not filled since`,
        instead: 'another circuit is chosen',
        again: `calls ${c.circuit} drained once more`,
      }
    : undefined;
}

const mostNamed = 4;
/** What is called bought by one key is read first; what each is stands in the list. */
export function askedOnBuyingAll(desk: Desk): Once {
  const all = allProposed(desk).map(({ name }) => name);
  const more = all.length > mostNamed ? ` and ${all.length - mostNamed} more` : '';
  return {
    because: `${all.length} proposed: ${all.slice(0, mostNamed).join(', ')}${more}`,
    instead: 'each by itself',
    by: 'box',
    again: 'puts all of it in the box',
  };
}

/** What belongs to no area, as the battery's earth, is joined last: a key that finds nothing else would join it. */
export function askedOnJoining({ ledger }: Desk, { connection }: Said): Once | undefined {
  const [because] = typeof connection === 'string' ? beforeTheRest(ledger, connection) : [];
  return because === undefined
    ? undefined
    : { because, instead: 'it waits for them', by: 'to-leaving', again: `calls ${connection} made` };
}

/** Read on what stands in its place: with a part of the area off it is read too soon. */
export function askedOnDirection({ ledger }: Desk, { area }: Said): Once | undefined {
  const a = typeof area === 'string' ? stateOf(ledger, 'area', area) : undefined;
  const off = a && partsOf(ledger, a).filter((part) => stateOf(ledger, 'part', part)?.off);
  return off && off.length > 0
    ? {
        because: `${off.join(' and ')} ${off.length === 1 ? 'is' : 'are'} off: what goes which way is seen once it is on`,
        instead: 'put it on first',
        by: 'part-back',
        again: 'calls the direction right all the same',
      }
    : undefined;
}

/** F3, F5: nothing is in the hole and nothing was done at it since: what was put right is not in the log. */
export function askedOnPutRight({ ledger }: Desk, { finding }: Said): Once | undefined {
  const f = typeof finding === 'string' ? stateOf(ledger, 'finding', finding) : undefined;
  const hole = f && named('hole', f.at);
  const c = hole ? stateOf(ledger, 'hole', hole)?.called : undefined;
  if (!f || !hole || !c || c.occupant || f.fastener !== undefined) return undefined;
  return isWorkedOn(ledger, hole, f)
    ? undefined
    : {
        because: `nothing was called done at ${subjectText(f.at)} since it was found: ${f.what}`,
        instead: 'a thread that is repaired or chased is called so',
        by: 'repair',
        again: 'calls it put right all the same',
      };
}
