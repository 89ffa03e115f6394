// A photograph as a job notes it: its file, the digest of its bytes and how many there are. The file stays where it lies.
import { createHash } from 'node:crypto';
import { closeSync, fstatSync, openSync, readSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { plainText } from '../trade/plain-text.ts';
import { fault, faultFrom } from './fault.ts';

export type Photograph = { file: string; sha256: string; bytes: number };

/** Above that it is no photograph, and reading it would keep the bench waiting. */
const mostBytes = 100 * 1024 * 1024;
const atOnce = 1024 * 1024;

/** @throws a fault: no such file, a folder, empty, too large, or a name that could not be written down as it is */
export function photographAt(named: string): Photograph {
  const file = resolve(named.startsWith('~/') ? join(homedir(), named.slice(2)) : named);
  if (plainText(file) !== file || file.length > 500)
    throw fault('bad-name', 'this path holds unseen characters or is too long', file, 'rename the photo');
  try {
    // Opened, a pipe would keep the bench waiting for ever.
    if (!statSync(file).isFile()) throw fault('foreign', 'this is no file', file, 'name the photo itself');
    const opened = openSync(file, 'r');
    try {
      return { file, ...digested(opened, file) };
    } finally {
      closeSync(opened);
    }
  } catch (thrown) {
    throw faultFrom(thrown, file);
  }
}

function digested(opened: number, file: string): Omit<Photograph, 'file'> {
  const { size } = fstatSync(opened);
  if (size === 0) throw fault('empty', 'the photo is empty', file, 'copy it from the camera again');
  if (size > mostBytes) throw fault('foreign', 'this is too large for a photo', file, 'name a photo of at most 100 MB');
  const sum = createHash('sha256');
  const part = Buffer.alloc(Math.min(size, atOnce));
  let bytes = 0;
  for (let read = readSync(opened, part); read > 0; read = readSync(opened, part)) {
    sum.update(part.subarray(0, read));
    bytes += read;
  }
  return { sha256: sum.digest('hex'), bytes };
}
