// The jobs in the folder of jobs, told by their headers alone: no list of them is kept anywhere.
import { join } from 'node:path';
import { type Disk, readFile } from './disk.ts';
import { type Fault, fault, faultFrom, hasCode } from './fault.ts';
import { headerBytesMost, readHeader } from './journal.ts';
import { jobFileEnding } from './places.ts';

export type OnShelf = { path: string; changedMs: number } & ({ job: string } | { fault: Fault });

/** The latest first. A folder that is not there yet holds none; one that cannot be read throws a fault. */
export async function jobsIn(disk: Disk, folder: string): Promise<OnShelf[]> {
  const names = await namesIn(disk, folder);
  const jobs = names.filter((name) => name.endsWith(jobFileEnding)).map((name) => onShelf(disk, join(folder, name)));
  return (await Promise.all(jobs)).sort((a, b) => b.changedMs - a.changedMs || (a.path < b.path ? -1 : 1));
}

/** Job files that are called otherwise than one, as a browser or a hand names them: in no list of jobs. The file, and what it would be called. */
export async function otherwiseCalled(disk: Disk, folder: string): Promise<{ path: string; as: string }[]> {
  const names = (await namesIn(disk, folder)).filter(
    (name) => name.endsWith('.jsonl') && !name.endsWith(jobFileEnding),
  );
  const found = names.map(async (name) => {
    const path = join(folder, name);
    if ('fault' in (await onShelf(disk, path))) return [];
    const stem = name.slice(0, -'.jsonl'.length).replace('.countback', '');
    return [{ path, as: `${stem}${jobFileEnding}` }];
  });
  return (await Promise.all(found)).flat();
}

async function namesIn(disk: Disk, folder: string): Promise<string[]> {
  try {
    return await disk.readdir(folder);
  } catch (thrown) {
    if (hasCode(thrown, 'ENOENT')) return [];
    throw faultFrom(thrown, folder);
  }
}

async function onShelf(disk: Disk, path: string): Promise<OnShelf> {
  let changedMs = 0;
  try {
    const facts = await disk.stat(path);
    changedMs = facts.changedMs;
    // Anything but a file might keep whoever opens it waiting for ever.
    if (facts.kind !== 'file') throw fault('foreign', 'this is no file', path, 'move it elsewhere');
    return { path, changedMs, job: readHeader(await readFile(disk, path, headerBytesMost), path) };
  } catch (thrown) {
    return { path, changedMs, fault: faultFrom(thrown, path) };
  }
}
