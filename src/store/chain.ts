// The chain that runs through a job file: the last field of each line is a link, 16 hex of SHA-256 over the previous
// full digest and the bytes before the link. It sees bytes, lines and links; what a line means is none of its business.
import { hash } from 'node:crypto';

/** Where the verified part of a file ends. */
export type Reached = { end: number; line: number; digest: Buffer };

export const beforeFirst: Reached = { end: 0, line: 0, digest: Buffer.alloc(32) };

const opening = Buffer.from(',"link":"');
const hexLength = 16;
const closing = Buffer.from('"}');
const linkLength = opening.length + hexLength + closing.length;
export const newline = 0x0a;
/** So much of the end of a file tells whether it is one's own: each link rests on all before it. */
export const endBytes = 256;

const digestOf = (before: Reached, bytes: Uint8Array) =>
  hash('sha256', Buffer.concat([before.digest, bytes]), 'buffer');

/** `value` as the next line, newline and all. */
export function linked(value: object, before: Reached): { bytes: Buffer; reached: Reached } {
  const text = JSON.stringify(value);
  if (!text.startsWith('{"')) throw new Error('a line of a job file is an object with fields');
  const raw = Buffer.concat([Buffer.from(text.slice(0, -1)), opening]);
  const digest = digestOf(before, raw);
  const bytes = Buffer.concat([
    raw,
    Buffer.from(digest.toString('hex', 0, hexLength / 2)),
    closing,
    Buffer.of(newline),
  ]);
  return { bytes, reached: { end: before.end + bytes.length, line: before.line + 1, digest } };
}

/** What follows the last verified line. Lines are counted from 1 and bytes from 0, as editors do. */
export type Tail =
  | { kind: 'none' }
  /** The last line is whole and verified, its newline is not there; `dropped` bytes follow it. */
  | { kind: 'newline-missing'; dropped: number }
  /** A half-written line: no newline, no link that holds. */
  | { kind: 'torn'; line: number; byte: number; bytes: number }
  /** The last line ends in a newline and its link does not hold. */
  | { kind: 'last-line-bad'; line: number; byte: number }
  /** A line's link does not hold, and more follows it. */
  | { kind: 'damaged'; line: number; byte: number };

export type Chain = {
  /** The verified lines, as JSON text without their links. */
  texts: string[];
  /** After the last of them, its newline included. */
  reached: Reached;
  /** Before the last of them. */
  beforeLast: Reached;
  tail: Tail;
};

/** Reads `bytes`, which begin in the file where `from` ends. */
export function readChain(bytes: Buffer, from: Reached = beforeFirst): Chain {
  const texts: string[] = [];
  let reached = from;
  let beforeLast = from;
  const take = (start: number, end: number, digest: Buffer) => {
    texts.push(`${bytes.toString('utf8', start, end - linkLength)}}`);
    beforeLast = reached;
    reached = { end: from.end + end + 1, line: reached.line + 1, digest };
  };
  const done = (tail: Tail): Chain => ({ texts, reached, beforeLast, tail });

  let at = 0;
  while (at < bytes.length) {
    const found = bytes.indexOf(newline, at);
    const end = found < 0 ? bytes.length : found;
    const digest = found < 0 ? undefined : verified(bytes, at, end, reached);
    if (digest) {
      take(at, end, digest);
      at = end + 1;
      continue;
    }
    const place = { line: reached.line + 1, byte: from.end + at };
    if (found >= 0) {
      // A line is written only after the one before it is known to be on the disk: no power cut leaves this behind.
      if (found + 1 < bytes.length) return done({ kind: 'damaged', ...place });
      // Two calls run together by one lost newline: the first of them still proves itself.
      const first = firstVerified(bytes, at, end, reached);
      if (!first) return done({ kind: 'last-line-bad', ...place });
      take(at, first.end, first.digest);
      return done({ kind: 'last-line-bad', line: place.line + 1, byte: from.end + first.end + 1 });
    }
    const first = firstVerified(bytes, at, end, reached);
    if (!first) return done({ kind: 'torn', ...place, bytes: bytes.length - at });
    take(at, first.end, first.digest);
    return done({ kind: 'newline-missing', dropped: bytes.length - first.end });
  }
  return done({ kind: 'none' });
}

/** The full digest of the line from `start` to `end` (its newline not counted), if its link holds. */
export function verified(bytes: Buffer, start: number, end: number, before: Reached): Buffer | undefined {
  const link = end - linkLength;
  if (link <= start) return undefined;
  const hex = link + opening.length;
  if (!bytes.subarray(link, hex).equals(opening) || !bytes.subarray(end - closing.length, end).equals(closing))
    return undefined;
  const digest = digestOf(before, bytes.subarray(start, hex));
  return digest.toString('hex', 0, hexLength / 2) === bytes.toString('latin1', hex, hex + hexLength)
    ? digest
    : undefined;
}

/** A verified line that begins at `start` and ends anywhere before `end`. */
function firstVerified(bytes: Buffer, start: number, end: number, before: Reached) {
  let link = bytes.indexOf(opening, start);
  while (link >= 0 && link + linkLength <= end) {
    const digest = verified(bytes, start, link + linkLength, before);
    if (digest) return { end: link + linkLength, digest };
    link = bytes.indexOf(opening, link + 1);
  }
  return undefined;
}
