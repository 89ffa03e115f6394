// The port between the store and a disk: every operation a saved line rests on, and nothing else, so that a double can
// stand in for it and lose power in the middle. It decides nothing; who uses it checks what came back.
//
// Promises, not the synchronous calls: an fsync takes 0.5 to 10 ms, on a tired disk seconds, and the screen is painted
// by the same thread.
import type { BigIntStats } from 'node:fs';
import { link, mkdir, open, readdir, rename, stat, unlink } from 'node:fs/promises';
import { dirname } from 'node:path';

export type Facts = {
  kind: 'file' | 'folder' | 'other';
  size: number /** which file it is, whatever its name */;
  inode: string;
  changedMs: number;
};

export type OpenFile = {
  /** How many bytes were read; 0 at the end. */
  read(into: Uint8Array, at: number): Promise<number>;
  /** How many bytes were written, which may be fewer than given. */
  write(bytes: Uint8Array, at: number): Promise<number>;
  /** Back when the bytes are on the disk. */
  sync(): Promise<void>;
  truncate(size: number): Promise<void>;
  stat(): Promise<Facts>;
  close(): Promise<void>;
};

export type Disk = {
  /** `read` and `write` want it there; `new` wants it not there. */
  open(path: string, how: 'read' | 'write' | 'new'): Promise<OpenFile>;
  stat(path: string): Promise<Facts>;
  readdir(path: string): Promise<string[]>;
  makeFolder(path: string): Promise<void>;
  /** Refuses where `to` is there. */
  link(from: string, to: string): Promise<void>;
  /** Replaces `to` where it is there. */
  rename(from: string, to: string): Promise<void>;
  unlink(path: string): Promise<void>;
  /** Back when the folder's names are on the disk. */
  syncFolder(path: string): Promise<void>;
};

const factsOf = (s: BigIntStats): Facts => ({
  kind: s.isFile() ? 'file' : s.isDirectory() ? 'folder' : 'other',
  size: Number(s.size),
  inode: `${s.dev}:${s.ino}`,
  changedMs: Number(s.mtimeMs),
});

const flags = { read: 'r', write: 'r+', new: 'wx+' } as const;

export const realDisk: Disk = {
  async open(path, how) {
    const handle = await open(path, flags[how]);
    return {
      read: async (into, at) => (await handle.read(into, 0, into.length, at)).bytesRead,
      write: async (bytes, at) => (await handle.write(bytes, 0, bytes.length, at)).bytesWritten,
      sync: () => handle.sync(),
      truncate: (size) => handle.truncate(size),
      stat: async () => factsOf(await handle.stat({ bigint: true })),
      close: () => handle.close(),
    };
  },
  stat: async (path) => factsOf(await stat(path, { bigint: true })),
  readdir: (path) => readdir(path),
  async makeFolder(path) {
    await mkdir(path, { recursive: true });
  },
  async link(from, to) {
    try {
      await link(from, to);
    } catch (thrown) {
      // Linux says EPERM where the file system knows no hard links; the folder took the file to be linked a moment ago.
      if (thrown instanceof Error && 'code' in thrown && thrown.code === 'EPERM')
        throw Object.assign(new Error(thrown.message), { code: 'ENOTSUP' });
      throw thrown;
    }
  },
  rename,
  unlink,
  async syncFolder(path) {
    // Windows opens no folder for syncing and keeps names in its own journal.
    if (process.platform === 'win32') return;
    const handle = await open(path, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  },
};

export async function readFully(file: OpenFile, from: number, to: number): Promise<Buffer> {
  const bytes = Buffer.alloc(Math.max(0, to - from));
  let got = 0;
  while (got < bytes.length) {
    const n = await file.read(bytes.subarray(got), from + got);
    if (n === 0) break;
    got += n;
  }
  return bytes.subarray(0, got);
}

export async function writeFully(file: OpenFile, bytes: Uint8Array, at: number): Promise<void> {
  let done = 0;
  while (done < bytes.length) {
    const n = await file.write(bytes.subarray(done), at + done);
    if (n === 0) throw Object.assign(new Error('the disk took no byte'), { code: 'ENOSPC' });
    done += n;
  }
}

export async function readFile(disk: Disk, path: string, most = Number.POSITIVE_INFINITY): Promise<Buffer> {
  const file = await disk.open(path, 'read');
  try {
    return await readFully(file, 0, Math.min((await file.stat()).size, most));
  } finally {
    await file.close();
  }
}

/** Makes a folder and the ones above it, each name on the disk before the next. */
export async function makeFolders(disk: Disk, path: string): Promise<void> {
  const there = await disk.stat(path).catch(() => undefined);
  if (there?.kind === 'folder') return;
  const above = dirname(path);
  if (above !== path) await makeFolders(disk, above);
  await disk.makeFolder(path);
  if (above !== path) await disk.syncFolder(above);
}
