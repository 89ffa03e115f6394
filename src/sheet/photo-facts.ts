// The photographs of a job on its sheet: by file and digest as noted, and what has become of the file since. Who prints
// the sheet looks at the files; here nothing is read.
import { stateOf } from '../job/ledger.ts';
import type { Copy } from './area-text.ts';
import { type Moment, moment, placeWords, type Reading } from './reading.ts';

/** As the file was when the sheet was printed. `picture` is its bytes as a data address, where it goes on the page. */
export type PhotoNow = { state: 'as noted'; picture?: string } | { state: 'not there' } | { state: 'changed' };
/** By the line that noted it. */
export type PhotosNow = ReadonlyMap<number, PhotoNow>;
export type PhotoFact = Moment & {
  file: string;
  sha256: string;
  bytes: number;
  place: string;
  words?: string;
  now?: PhotoNow;
};

/** Larger ones are named only: a sheet must go by mail. */
export const embeddedAtMost = { bytes: 400_000, together: 4_000_000 } as const;

export const photoFacts = (of: Reading): PhotoFact[] =>
  (stateOf(of.ledger, 'vehicle', 'vehicle')?.photos ?? []).map(({ n, file, sha256, bytes, at, words }) => ({
    ...moment(of, n),
    file,
    sha256,
    bytes,
    place: placeWords(at),
    ...(words && { words }),
  }));
export const seenNow = (photos: readonly PhotoFact[], now: PhotosNow = new Map()): PhotoFact[] =>
  photos.map((photo) => {
    const one = now.get(photo.n);
    return one ? { ...photo, now: one } : photo;
  });

export const isPicture = (text: string): boolean => /^data:image\/(?:jpeg|png);base64,[A-Za-z0-9+/]+=*$/.test(text);

const standings = {
  'as noted': 'the file is as it was',
  'not there': 'THE FILE IS NOT THERE ANY MORE',
  changed: 'THE FILE IS ANOTHER NOW',
} as const;
/** "pump: crack at the boss, 2026-11-25 14:20" */
export const photoWords = ({ place, words }: PhotoFact): string => [place, ...(words ? [words] : [])].join(': ');
/** "p7.jpg, 120000 bytes, SHA-256 ab…; the file is as it was" */
/** Where it lies on the bench's laptop is the workshop's business. */
const lastOf = (path: string): string => path.split(/[\\/]/).at(-1) ?? path;
export const photoFile = ({ file, bytes, sha256, now }: PhotoFact, copy: Copy): string =>
  `${copy === 'owner' ? lastOf(file) : file}, ${bytes} bytes, SHA-256 ${sha256}${now ? `; ${standings[now.state]}` : ''}`;
