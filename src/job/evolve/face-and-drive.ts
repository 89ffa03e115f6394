// What each entry does to a sealing face and to a drive. Whether a bead or a check rotation stands is not kept here:
// it depends on what was opened since, and is computed when asked.
import type { Entry, EntryOf } from '../entry.ts';
import type { DriveState, FaceState, Try } from '../states.ts';
import { type Misfit, misfit } from './misfit.ts';

export function evolveFace(before: FaceState | undefined, entry: Entry, n: number, face: string): FaceState {
  const f: FaceState = before ?? { face, cleanedAt: 0, beads: [], dropped: false };
  switch (entry.kind) {
    case 'face-declared': {
      const { kind: _, ...said } = entry;
      return { ...f, declared: { ...f.declared, ...said } };
    }
    case 'face-cleaned':
      return { ...f, cleanedAt: n, beads: [], dropped: f.dropped || f.beads.length > 0 };
    case 'bead-laid':
      return { ...f, beads: [...f.beads, { n, label: entry.label }] };
    default:
      return f;
  }
}

const quartersOfTwoTurns = 8;

export function evolveDrive(
  before: DriveState | undefined,
  entry: Entry,
  n: number,
  drive: string,
): DriveState | Misfit {
  const d: DriveState = before ?? { drive, liveAt: 0, tries: [] };
  switch (entry.kind) {
    case 'drive-declared': {
      const { kind: _, ...said } = entry;
      return { ...d, declared: { ...d.declared, ...said } };
    }
    case 'tensioner-live':
      return { ...d, liveAt: n };
    case 'rotation-begun':
      return { ...d, tries: [...d.tries, freshTry(n, 4 * (d.declared?.turns ?? 2))] };
    case 'tension-reset':
    case 'crank-turned':
    case 'mark-read':
    case 'locks-slid':
    case 'tension-read':
    case 'bind-felt':
    case 'bind-explained': {
      const running = d.tries.at(-1);
      if (!running) return misfit;
      const next = passed(evolveTry(running, entry, n, d), d, n);
      return { ...d, tries: [...d.tries.slice(0, -1), next] };
    }
    default:
      return d;
  }
}

const freshTry = (n: number, need: number): Try => ({
  begunAt: n,
  quarters: 0,
  need,
  turnedAt: 0,
  marks: {},
  locksSlid: false,
  passedAt: 0,
});

type OfTry = EntryOf<
  'tension-reset' | 'crank-turned' | 'mark-read' | 'locks-slid' | 'tension-read' | 'bind-felt' | 'bind-explained'
>;

function evolveTry(t: Try, entry: OfTry, n: number, d: DriveState): Try {
  const { tension: _, ...unread } = { ...t, marks: {}, locksSlid: false, passedAt: 0 };
  switch (entry.kind) {
    case 'crank-turned':
      return { ...unread, quarters: quartersAfter(t, entry), turnedAt: n };
    case 'tension-reset':
      return { ...(t.failed === tensionFailed ? unfailed(unread) : unread), quarters: 0, need: quartersOfTwoTurns };
    case 'mark-read': {
      const marks = { ...t.marks, [entry.mark]: entry.teethOff };
      return entry.teethOff === 0 ? { ...t, marks } : failed({ ...t, marks }, `${entry.mark} off by ${entry.teethOff}`);
    }
    case 'locks-slid':
      return { ...t, locksSlid: true };
    case 'tension-read': {
      const read = { ...t, tension: { how: entry.how, right: entry.right } };
      if (!entry.right) return failed(read, tensionFailed);
      // R4: the tension comes after the marks; read before them it proves nothing.
      return marksSeen(t, d) ? read : t;
    }
    case 'bind-felt':
      return failed(t, 'bind felt');
    case 'bind-explained':
      return { ...t, explained: entry.cause };
  }
}
/** R3: a turn backwards starts the count again; a step of the maker's own procedure is only taken off it. */
function quartersAfter(t: Try, { quarters, backwards, makersStep }: EntryOf<'crank-turned'>): number {
  if (!backwards) return t.quarters + quarters;
  return makersStep ? Math.max(0, t.quarters - quarters) : 0;
}
/** R4: without marks to read, locks must slide in. */
export function marksSeen(t: Try, d: DriveState): boolean {
  const marks = d.declared?.marks ?? [];
  return t.locksSlid || (marks.length > 0 && marks.every((m) => t.marks[m] === 0));
}
const tensionFailed = 'tension not right';
/** R6: tension set again is no failed try. */
function unfailed(t: Try): Try {
  const { failed: _, ...rest } = t;
  return rest;
}
const failed = (t: Try, why: string): Try => ({ ...t, failed: t.failed ?? why, passedAt: 0 });

/** R4: turns complete, then marks or locks, then tension. Only the entry that completes the row sets the line. */
function passed(t: Try, d: DriveState, n: number): Try {
  if (t.failed || t.passedAt || !turned(t)) return t;
  const tensed = (d.declared?.tensioner ?? 'none') === 'none' || t.tension?.right === true;
  return marksSeen(t, d) && tensed ? { ...t, passedAt: n } : t;
}
export const turned = (t: Try): boolean => t.quarters >= t.need && t.quarters % quartersOfTwoTurns === 0;
