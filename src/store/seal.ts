// Whether the bytes of a job file are as they were written, and where not: changed, taken out, moved, put in, cut off.
// It shows alteration and proves no author: whoever computes the whole chain anew is seen only beside a printed digest.
import { beforeFirst, newline, type Reached, verified } from './chain.ts';
import { headerStart } from './journal.ts';

/** Lines are counted from 1 with the header, bytes from 0, as editors do; calls from 1 without it. */
export type Alteration =
  | { kind: 'changed'; line: number; byte: number }
  /** Calls `from` to `to` are not there; the line that stands in their place is `line`. */
  | { kind: 'taken-out'; line: number; byte: number; from: number; to: number }
  /** The line holds, at another place than where it stands. */
  | { kind: 'moved'; line: number; byte: number; belongsAt: number }
  | { kind: 'put-in'; line: number; byte: number }
  /** Nothing ends the last line. */
  | { kind: 'cut'; line: number; byte: number; bytes: number };

export type Seal = {
  /** The full digest, in hex, behind the header and behind each call, as far as they hold: `digests[3]` is after call 3. */
  digests: string[];
  alterations: Alteration[];
  /** What follows the last line that holds and can't be checked, since each link rests on the line before it. */
  unchecked: number;
};

type Segment = { line: number; start: number; end: number; ended: boolean };

/** More out of place than this is no slip of an editor, and looking on would take ever longer; the rest is left unchecked. */
const mostTold = 200;

export function sealOf(bytes: Buffer): Seal {
  const segments = segmentsOf(bytes);
  let from = 0;
  /** Passed over, because a line behind them holds here. */
  const aside: Segment[] = [];
  const digests: string[] = [];
  const alterations: Alteration[] = [];
  let reached: Reached = beforeFirst;
  const take = (segment: Segment) => {
    if (!segment.ended) alterations.push(cutAt(segment));
    const digest = holds(bytes, segment, reached) as Buffer;
    digests.push(digest.toString('hex'));
    reached = { end: segment.end + 1, line: reached.line + 1, digest };
  };
  while (from < segments.length || aside.length > 0) {
    const ahead = segments[from];
    if (alterations.length > mostTold) break;
    const inPlace = ahead !== undefined && holds(bytes, ahead, reached) !== undefined;
    const moved = inPlace ? -1 : aside.findIndex((one) => holds(bytes, one, reached));
    const [back] = moved < 0 ? [] : aside.splice(moved, 1);
    if (back) {
      alterations.push({ kind: 'moved', line: back.line, byte: back.start, belongsAt: reached.line + 1 });
      take(back);
      continue;
    }
    const next = inPlace ? from : segments.findIndex((one, i) => i >= from && holds(bytes, one, reached));
    const found = segments[next];
    if (!found) break;
    aside.push(...segments.slice(from, next));
    from = next + 1;
    take(found);
  }
  for (const { line, start } of aside) alterations.push({ kind: 'put-in', line, byte: start });
  const first = segments[from];
  if (first) alterations.push(brokenAt(bytes, first, reached.line));
  return { digests, alterations, unchecked: Math.max(0, segments.length - from - 1) };
}

function segmentsOf(bytes: Buffer): Segment[] {
  const segments: Segment[] = [];
  for (let start = 0; start < bytes.length; ) {
    const found = bytes.indexOf(newline, start);
    const end = found < 0 ? bytes.length : found;
    segments.push({ line: segments.length + 1, start, end, ended: found >= 0 });
    start = end + 1;
  }
  return segments;
}

function holds(bytes: Buffer, { start, end }: Segment, reached: Reached): Buffer | undefined {
  if (reached.line === 0 && !bytes.subarray(start, start + headerStart.length).equals(headerStart)) return undefined;
  return verified(bytes, start, end, reached);
}

const cutAt = ({ line, start, end }: Segment): Alteration => ({ kind: 'cut', line, byte: start, bytes: end - start });

/** @param call the number that the call here should have; 0 for the header */
function brokenAt(bytes: Buffer, segment: Segment, call: number): Alteration {
  const { line, start, end, ended } = segment;
  const said = callNumber(bytes.toString('utf8', start, end));
  if (said !== undefined && said > call) return { kind: 'taken-out', line, byte: start, from: call, to: said - 1 };
  return ended ? { kind: 'changed', line, byte: start } : cutAt(segment);
}

/** Whether these bytes may ever have been a job's: by a header, or a line with a call's number. */
export const mayBeAJob = (bytes: Buffer): boolean =>
  bytes.includes(headerStart) ||
  segmentsOf(bytes).some(({ start, end }) => callNumber(bytes.toString('utf8', start, end)) !== undefined);

function callNumber(text: string): number | undefined {
  try {
    const value = JSON.parse(text) as unknown;
    const n = value !== null && typeof value === 'object' && 'n' in value ? value.n : undefined;
    return typeof n === 'number' && Number.isSafeInteger(n) ? n : undefined;
  } catch {
    return undefined;
  }
}
