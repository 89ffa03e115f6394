// What has become of the photographs of a job, at the moment its sheet is printed: each file is read, held to the digest
// that was noted, and the bytes of small ones are taken along for a page.
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { type Ledger, stateOf } from '../job/ledger.ts';
import { embeddedAtMost, type PhotoNow, type PhotosNow } from '../sheet/photo-facts.ts';
import { isFault } from '../store/fault.ts';
import { photographAt } from '../store/photograph.ts';

export async function photosNow(ledger: Ledger, isPage: boolean): Promise<PhotosNow> {
  const now = new Map<number, PhotoNow>();
  let room: number = isPage ? embeddedAtMost.together : 0;
  for (const { n, file, sha256, bytes } of stateOf(ledger, 'vehicle', 'vehicle')?.photos ?? []) {
    const goesOn = bytes <= Math.min(room, embeddedAtMost.bytes);
    const one = await photoNow(file, sha256, goesOn);
    if (one.state === 'as noted' && one.picture) room -= bytes;
    now.set(n, one);
  }
  return now;
}

async function photoNow(file: string, sha256: string, goesOn: boolean): Promise<PhotoNow> {
  try {
    if (photographAt(file).sha256 !== sha256) return { state: 'changed' };
    if (!goesOn) return { state: 'as noted' };
    const bytes = await readFile(file);
    // Read a second time: what goes on the page is held to the digest itself.
    if (createHash('sha256').update(bytes).digest('hex') !== sha256) return { state: 'changed' };
    const picture = pictureOf(bytes);
    return { state: 'as noted', ...(picture && { picture }) };
  } catch (thrown) {
    if (isFault(thrown) || (thrown instanceof Error && 'code' in thrown)) return { state: 'not there' };
    throw thrown;
  }
}

const firstBytes = [
  ['image/jpeg', 'ffd8ff'],
  ['image/png', '89504e470d0a1a0a'],
] as const;
/** Of bytes that begin as a photograph does. */
function pictureOf(bytes: Buffer): string | undefined {
  const start = bytes.subarray(0, 8).toString('hex');
  const type = firstBytes.find(([, first]) => start.startsWith(first))?.[0];
  return type && `data:${type};base64,${bytes.toString('base64')}`;
}
