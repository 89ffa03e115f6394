// What is wrong with a file, a disk or a folder: told, never repaired behind anyone's back. One shape for all, so that
// whoever shows it needs to know only what, where and what to do next. A refusal of the job is not a fault.
import { plainText } from '../trade/plain-text.ts';

export type FaultKind =
  | 'missing'
  | 'empty'
  | 'damaged'
  | 'last-line-bad'
  | 'torn'
  | 'copy-differs'
  | 'foreign'
  | 'newer'
  | 'exists'
  | 'bad-name'
  | 'bad-settings'
  | 'bad-plan'
  | 'in-use'
  | 'lock-unreadable'
  | 'read-only'
  | 'disk-full'
  | 'not-allowed'
  | 'disk-failed'
  | 'changed-underneath'
  | 'copy';

export type Fault = Error & {
  readonly kind: FaultKind;
  /** One clear line. */
  readonly what: string;
  /** The file or folder; a place inside it where there is one. */
  readonly where: string;
  /** What the person can do about it. */
  readonly next: string;
};

/**
 * An error, so that it passes through whatever is between the disk and the screen.
 * @param named by the name of a job: its path says least, and comes last
 */
export function fault(kind: FaultKind, what: string, where: string, next: string, named = false): Fault {
  const told = { kind, what: plainText(what, 600), where: plainText(where), next: plainText(next, 600) };
  const { what: wrong, where: place, next: then } = told;
  const message =
    named || kind === 'in-use' || kind === 'lock-unreadable'
      ? `${wrong}; ${then} (${place})`
      : `${place}: ${wrong}; ${then}`;
  return Object.assign(new Error(message), told, { name: 'Fault' });
}

export function isFault(thrown: unknown): thrown is Fault {
  return thrown instanceof Error && 'kind' in thrown && 'what' in thrown && 'where' in thrown && 'next' in thrown;
}

const fromCode: Record<string, readonly [FaultKind, string, string]> = {
  ENOSPC: ['disk-full', 'the disk is full', 'free some space, then save again'],
  EDQUOT: ['disk-full', 'your share of the disk is used up', 'free some space, then save again'],
  EFBIG: ['disk-full', 'the file may not grow further on this disk', 'free some space, then save again'],
  EROFS: ['read-only', 'the disk is read-only', 'make it writable, then save again'],
  EACCES: ['not-allowed', 'permission is denied', 'allow reading and writing here, then try again'],
  EPERM: ['not-allowed', 'this is not allowed here', 'allow reading and writing here, then try again'],
  ENOENT: ['missing', 'there is no such file or folder', 'look whether it was moved, renamed or unplugged'],
  ENOTDIR: ['missing', 'a part of this path is not a folder', 'check the path'],
  EISDIR: ['foreign', 'this is a folder', 'name the file inside it'],
  ELOOP: ['foreign', 'this link leads in a circle', 'name the file itself'],
  ENAMETOOLONG: ['bad-name', 'the name is too long for this disk', 'choose a shorter one'],
  EEXIST: ['exists', 'this is there already', 'choose another name'],
  EMLINK: ['not-allowed', 'this disk makes no more links', "move the job to the computer's own disk"],
  ENOTSUP: ['not-allowed', 'this disk cannot make links', "move the job to the computer's own disk"],
  EOPNOTSUPP: ['not-allowed', 'this disk cannot make links', "move the job to the computer's own disk"],
  ENOSYS: ['not-allowed', 'this disk cannot make links', "move the job to the computer's own disk"],
  EIO: ['disk-failed', 'the disk failed', 'check the disk, then save again'],
};

/** What the disk threw, as a fault. A fault stays what it is; a bug goes on being thrown. */
export function faultFrom(thrown: unknown, where: string): Fault {
  if (isFault(thrown)) return thrown;
  const code = thrown instanceof Error && 'code' in thrown ? String(thrown.code) : undefined;
  // Node's own mistakes of use (ERR_…) are bugs of ours, not the disk's.
  if (code === undefined || code.startsWith('ERR_')) throw thrown;
  const [kind, what, next] = fromCode[code] ?? ['disk-failed', 'the disk failed', 'check the disk, then save again'];
  return fault(kind, `${what} (${code})`, where, next);
}

export function hasCode(thrown: unknown, ...codes: string[]): boolean {
  return thrown instanceof Error && 'code' in thrown && codes.includes(String(thrown.code));
}
