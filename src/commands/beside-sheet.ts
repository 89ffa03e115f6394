// A printed sheet beside a job file: whether it was printed from that log and after which call, else from which other job.
import { stateOf } from '../job/ledger.ts';
import { readLine } from '../job/line.ts';
import { readLog } from '../job/log.ts';
import { digestOnSheet, type OnSheet } from '../sheet/digest-on-sheet.ts';
import { counted } from '../sheet/words.ts';
import { type Disk, readFile, realDisk } from '../store/disk.ts';
import { fault, faultFrom, isFault } from '../store/fault.ts';
import { readJournal } from '../store/journal.ts';
import { longestJobBytes } from '../store/journal-adapter.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { type Seal, sealOf } from '../store/seal.ts';
import { jobsIn } from '../store/shelf.ts';

/** Without the header; an emptied file has not even that. */
export const callsIn = ({ digests }: Seal): number => Math.max(0, digests.length - 1);

export async function bytesOf(disk: Disk, path: string): Promise<Buffer> {
  try {
    const { kind, size } = await disk.stat(path);
    if (kind !== 'file') throw fault('foreign', 'this is no file', path, 'name a file');
    if (size > longestJobBytes) throw fault('foreign', 'the file is larger than any job', path, 'name a job file');
    return await readFile(disk, path);
  } catch (thrown) {
    throw faultFrom(thrown, path);
  }
}

export async function sheetOf(disk: Disk, file: string): Promise<OnSheet & { text: string }> {
  const text = (await bytesOf(disk, file)).toString('utf8');
  const found = digestOnSheet(text);
  if (found) return { ...found, text };
  throw fault('foreign', 'there is no log digest on this', file, 'name a sheet as "countback sheet" made it');
}

export function besideSheet(seal: Seal, { digest, calls }: OnSheet): { agrees: boolean; words: string; at: number } {
  const there = callsIn(seal);
  const at = seal.digests.indexOf(digest);
  if (at >= 0) {
    const since = there - at;
    const words = `The sheet was printed from this log after call ${at}`;
    return {
      agrees: true,
      at,
      words: since === 0 ? `${words}, its last.` : `${words}; ${counted(since, 'call')} came after it.`,
    };
  }
  const why =
    calls !== undefined && calls > there
      ? `the sheet counts ${counted(calls, 'call')} and ${there || 'none'} hold here: calls were cut off at the end, or it is another log`
      : 'the log was changed and its chain computed anew, or it is another log';
  return { agrees: false, at, words: `the digest on the sheet is not of this log: ${why}` };
}

/**
 * Which other job the sheet was printed from, as far as it can be known: by its digest, else by the vehicle it names. A
 * file that goes on from this one is no other job: the end is missing here.
 */
export async function anotherJob(
  sheet: OnSheet,
  seal: Seal,
  bytes: Buffer,
  path: string,
): Promise<{ words: string; goesOn: boolean } | undefined> {
  const last = callsIn(seal);
  for (const one of await jobsIn(realDisk, placesOn(thisMachine()).jobs).catch(() => [])) {
    if (one.path === path || 'fault' in one) continue;
    const { digests } = sealOf(await bytesOf(realDisk, one.path).catch(() => Buffer.alloc(0)));
    const at = digests.indexOf(sheet.digest);
    if (at < 0) continue;
    const goesOn = last > 0 && digests[last] === seal.digests[last];
    return goesOn
      ? {
          words: `the end is missing here, or this is an older copy: the sheet was printed after call ${at}, which ${one.path} holds`,
          goesOn,
        }
      : { words: `it was printed from "${one.job}" after call ${at} (${one.path})`, goesOn };
  }
  const label = vehicleOf(bytes, path);
  return sheet.vehicle === undefined || label === undefined || sheet.vehicle === label
    ? undefined
    : { words: `it names the vehicle "${sheet.vehicle}", this log "${label}"`, goesOn: false };
}
function vehicleOf(bytes: Buffer, path: string): string | undefined {
  try {
    return stateOf(readLog(readJournal(bytes, path, readLine).lines), 'vehicle', 'vehicle')?.label;
  } catch (thrown) {
    // What cannot be read names no vehicle, and is told as altered.
    if (!isFault(thrown)) throw thrown;
    return undefined;
  }
}
