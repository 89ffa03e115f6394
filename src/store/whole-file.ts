// A whole file put on the disk at once: after a power cut there is the old one or the new one, never half of either.
// It knows no contents. A job's log is not written this way (see tail.ts): it only grows.
import { randomBytes } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { type Disk, makeFolders, writeFully } from './disk.ts';
import { hasCode } from './fault.ts';

/** `replace` puts it in the place of what is there; `fresh` refuses (EEXIST) where something is. */
export async function writeWhole(disk: Disk, path: string, bytes: Uint8Array, how: 'replace' | 'fresh'): Promise<void> {
  const folder = dirname(path);
  await makeFolders(disk, folder);
  const draft = join(folder, `.${basename(path)}.new-${randomBytes(6).toString('hex')}`);
  try {
    await writeDraft(disk, draft, bytes);
    if (how === 'replace') await disk.rename(draft, path);
    else {
      await disk.link(draft, path);
      await disk.unlink(draft);
    }
  } catch (thrown) {
    // What stopped it is what counts, not that the draft could not be cleared away either.
    await disk.unlink(draft).catch(() => undefined);
    throw thrown;
  }
  await disk.syncFolder(folder);
}

/** A new file whose bytes are on the disk, though perhaps not yet its name. */
export async function writeDraft(disk: Disk, path: string, bytes: Uint8Array): Promise<void> {
  const file = await disk.open(path, 'new');
  try {
    await writeFully(file, bytes, 0);
    await file.sync();
  } finally {
    await file.close();
  }
}

export async function unlinkIfThere(disk: Disk, path: string): Promise<void> {
  try {
    await disk.unlink(path);
  } catch (thrown) {
    if (!hasCode(thrown, 'ENOENT')) throw thrown;
  }
}
