// A disk in memory that can lose power and fail. It keeps what was written apart from what an fsync has put down, and a
// power cut drops, tears and reorders the difference, names of files as well as their bytes. It is harsher than the real
// ones: fsync of a file does not put down its name, and bytes whose fsync failed are never tried again by the next.
import { dirname } from 'node:path';
import type { Disk, Facts, OpenFile } from '../../src/store/disk.ts';

export type Op = {
  name:
    | 'open'
    | 'read'
    | 'write'
    | 'sync'
    | 'truncate'
    | 'stat'
    | 'close'
    | 'readdir'
    | 'makeFolder'
    | 'link'
    | 'rename'
    | 'unlink'
    | 'syncFolder';
  path: string;
  how?: 'read' | 'write' | 'new';
};
/** `afterBytes` of a write are taken first; without a code they are simply all that is written this time. */
export type Failure = { code?: string; afterBytes?: number };

export type DiskDouble = Disk & {
  /** Asked before each operation. */
  failing: ((op: Op) => Failure | undefined) | undefined;
  /** Told before and after each operation: a place to pull the plug. */
  watching: ((op: Op, when: 'before' | 'after') => void) | undefined;
  /** The disk as it is found when the power is back. */
  cut(seed: number): DiskDouble;
  /** Behind the program's back, and on the disk at once. */
  put(path: string, bytes: Uint8Array): void;
  remove(path: string): void;
  makeOther(path: string): void;
  bytesAt(path: string): Buffer | undefined;
  names(): string[];
};

type Change = { at: number; bytes: Buffer } | { size: number };
type Inode = { id: number; kind: Facts['kind']; now: Buffer; onDisk: Buffer; dirty: Change[] };
type Renaming = { folders: string[]; names: [path: string, inode: number | undefined][] };
type Names = Map<string, number>;

/** Far smaller than a real block, so that one short line lies in several. */
const block = 32;

const error = (code: string, path: string) => Object.assign(new Error(`${code}: ${path}`), { code });

/** Mulberry32, by Tommy Ettinger (public domain). */
export function chance(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** The bytes of a file after these changes, one upon the other. */
function applied(bytes: Buffer, ...changes: readonly Change[]): Buffer {
  const ends = changes.map((change) => ('size' in change ? change.size : change.at + change.bytes.length));
  const after = Buffer.alloc(Math.max(bytes.length, ...ends));
  bytes.copy(after);
  let { length } = bytes;
  for (const change of changes) {
    if ('size' in change) {
      after.fill(0, change.size, Math.max(change.size, length));
      length = change.size;
    } else {
      change.bytes.copy(after, change.at);
      length = Math.max(length, change.at + change.bytes.length);
    }
  }
  return after.subarray(0, length);
}

function inBlocks(at: number, bytes: Uint8Array): Change[] {
  const pieces: Change[] = [];
  for (let done = 0; done < bytes.length; ) {
    const n = Math.min(bytes.length - done, block - ((at + done) % block));
    pieces.push({ at: at + done, bytes: Buffer.from(bytes.subarray(done, done + n)) });
    done += n;
  }
  return pieces;
}

/** What is left of `dirty` after the power went: nothing, all, the first ones, or any, the last one perhaps in half. */
function fallen({ onDisk, now, dirty }: Inode, next: () => number, manner: number): Buffer {
  if (dirty.length === 0 || manner === 0) return onDisk;
  const upTo = Math.floor(next() * (dirty.length + 1));
  let bytes = onDisk;
  for (const [i, change] of dirty.entries()) {
    if (manner === 2 ? i >= upTo : manner === 3 && next() < 0.5) continue;
    const torn = manner > 1 && 'at' in change && next() < 0.3;
    bytes = applied(
      bytes,
      torn ? { at: change.at, bytes: change.bytes.subarray(0, Math.floor(next() * block)) } : change,
    );
  }
  // The length of a file may reach the disk before what is in it.
  const lengthFirst = manner === 3 && now.length > bytes.length && next() < 0.4;
  return lengthFirst ? applied(bytes, { size: now.length }) : bytes;
}

export function diskDouble(folders: readonly string[] = ['/', '/jobs']): DiskDouble {
  const inodes = new Map<number, Inode>();
  const names: Names = new Map();
  for (const path of folders) names.set(path, made(inodes, 'folder'));
  return doubleOf(inodes, names, new Map(names), []);
}

let lastInode = 0;
function made(inodes: Map<number, Inode>, kind: Facts['kind']): number {
  lastInode++;
  inodes.set(lastInode, { id: lastInode, kind, now: Buffer.alloc(0), onDisk: Buffer.alloc(0), dirty: [] });
  return lastInode;
}

function doubleOf(inodes: Map<number, Inode>, names: Names, namesOnDisk: Names, renamings: Renaming[]): DiskDouble {
  let changedMs = 0;

  async function run<T>(op: Op, what: (failure: Failure | undefined) => T): Promise<T> {
    const failure = double.failing?.(op);
    double.watching?.(op, 'before');
    if (failure?.code && !('afterBytes' in failure) && op.name !== 'sync') throw error(failure.code, op.path);
    const result = what(failure);
    double.watching?.(op, 'after');
    return result;
  }

  function inodeAt(path: string): Inode {
    const inode = inodes.get(names.get(path) ?? -1);
    if (!inode) throw error('ENOENT', path);
    return inode;
  }
  function folderOf(path: string) {
    if (inodeAt(dirname(path)).kind !== 'folder') throw error('ENOTDIR', path);
  }
  function rename(...changes: Renaming['names']) {
    for (const [path, inode] of changes) inode === undefined ? names.delete(path) : names.set(path, inode);
    renamings.push({ folders: changes.map(([path]) => dirname(path)), names: changes });
  }
  const factsOf = ({ id, kind, now }: Inode): Facts => ({ kind, size: now.length, inode: `double:${id}`, changedMs });

  function opened(path: string, inode: Inode): OpenFile {
    return {
      read: (into, at) => run({ name: 'read', path }, () => inode.now.copy(into, 0, at, at + into.length)),
      write: (bytes, at) =>
        run({ name: 'write', path }, (failure) => {
          const taken = bytes.subarray(0, failure?.afterBytes ?? bytes.length);
          const pieces = inBlocks(at, taken);
          inode.now = applied(inode.now, ...pieces);
          inode.dirty.push(...pieces);
          changedMs++;
          if (failure?.code) throw error(failure.code, path);
          return taken.length;
        }),
      sync: () =>
        run({ name: 'sync', path }, (failure) => {
          const dirty = inode.dirty.splice(0);
          if (failure?.code) throw error(failure.code, path);
          inode.onDisk = applied(inode.onDisk, ...dirty);
        }),
      truncate: (size) =>
        run({ name: 'truncate', path }, () => {
          inode.now = applied(inode.now, { size });
          inode.dirty.push({ size });
        }),
      stat: () => run({ name: 'stat', path }, () => factsOf(inode)),
      close: () => run({ name: 'close', path }, () => undefined),
    };
  }

  const double: DiskDouble = {
    failing: undefined,
    watching: undefined,
    open: (path, how) =>
      run({ name: 'open', path, how }, () => {
        if (how === 'new') {
          folderOf(path);
          if (names.has(path)) throw error('EEXIST', path);
          rename([path, made(inodes, 'file')]);
        }
        const inode = inodeAt(path);
        if (inode.kind === 'folder') throw error('EISDIR', path);
        return opened(path, inode);
      }),
    stat: (path) => run({ name: 'stat', path }, () => factsOf(inodeAt(path))),
    readdir: (path) =>
      run({ name: 'readdir', path }, () => {
        if (inodeAt(path).kind !== 'folder') throw error('ENOTDIR', path);
        return [...names.keys()]
          .filter((n) => n !== path && dirname(n) === path)
          .map((n) => n.slice(path.length).replace(/^\//, ''));
      }),
    makeFolder: (path) =>
      run({ name: 'makeFolder', path }, () => {
        folderOf(path);
        if (!names.has(path)) rename([path, made(inodes, 'folder')]);
      }),
    link: (from, to) =>
      run({ name: 'link', path: to }, () => {
        const { id } = inodeAt(from);
        folderOf(to);
        if (names.has(to)) throw error('EEXIST', to);
        rename([to, id]);
      }),
    rename: (from, to) =>
      run({ name: 'rename', path: to }, () => {
        const { id } = inodeAt(from);
        folderOf(to);
        rename([to, id], [from, undefined]);
      }),
    unlink: (path) =>
      run({ name: 'unlink', path }, () => {
        inodeAt(path);
        rename([path, undefined]);
      }),
    syncFolder: (path) =>
      run({ name: 'syncFolder', path }, (failure) => {
        if (failure?.code) throw error(failure.code, path);
        for (const renaming of renamings.splice(0)) {
          if (renaming.folders.includes(path)) putDown(namesOnDisk, renaming);
          else renamings.push(renaming);
        }
      }),
    cut(seed) {
      const next = chance(seed);
      const manner = seed % 4;
      const after = new Map<number, Inode>();
      for (const inode of inodes.values()) {
        const bytes = Buffer.from(fallen(inode, next, manner));
        after.set(inode.id, { ...inode, now: bytes, onDisk: bytes, dirty: [] });
      }
      const left: Names = new Map(namesOnDisk);
      const upTo = Math.floor(next() * (renamings.length + 1));
      for (const [i, renaming] of renamings.entries())
        if (manner === 1 || (manner === 2 && i < upTo) || (manner === 3 && next() < 0.5)) putDown(left, renaming);
      return doubleOf(after, left, new Map(left), []);
    },
    put(path, bytes) {
      const id = made(inodes, 'file');
      inodes.set(id, { id, kind: 'file', now: Buffer.from(bytes), onDisk: Buffer.from(bytes), dirty: [] });
      names.set(path, id);
      namesOnDisk.set(path, id);
    },
    remove(path) {
      names.delete(path);
      namesOnDisk.delete(path);
    },
    makeOther(path) {
      names.set(path, made(inodes, 'other'));
    },
    bytesAt(path) {
      const inode = inodes.get(names.get(path) ?? -1);
      return inode && Buffer.from(inode.now);
    },
    names: () => [...names.keys()].filter((n) => inodes.get(names.get(n) ?? -1)?.kind !== 'folder').sort(),
  };
  return double;
}

function putDown(names: Names, renaming: Renaming) {
  for (const [path, inode] of renaming.names) inode === undefined ? names.delete(path) : names.set(path, inode);
}
