// Reads the digest of the log back from a printed sheet, in each of its forms, and puts one of the sheet's own words behind
// it. Only where the sheet itself puts them: no name or note that a job holds can stand there.
import type { Copy } from './area-text.ts';

/** `vehicle` as the sheet names it, where it can be read back as it was written. */
export type OnSheet = { digest: string; calls?: number; vehicle?: string };

const digestPlaces = [
  /^Log digest {6}([0-9a-f]{64})$/m,
  /^log,digest,([0-9a-f]{64}),/m,
  /<code id="log-digest">([0-9a-f]{64})<\/code>/,
] as const;
const countPlaces = [
  /^ {2}- (\d+) lines?, \d+ struck/gm,
  /^log,lines,(\d+),/gm,
  /<span id="log-lines">(\d+)<\/span>/g,
] as const;
const vehiclePlaces = [
  /^Vehicle {9}(.{1,62})$/m,
  /^vehicle,label,,([^",]+),/m,
  /<h1>([^<&]+?)(?: <span|<\/h1>)/,
] as const;

export function digestOnSheet(sheet: string): OnSheet | undefined {
  const text = linesOf(sheet).join('\n');
  for (const [i, place] of digestPlaces.entries()) {
    const digest = place.exec(text)?.[1];
    if (digest === undefined) continue;
    // Words of the job stand before the sheet's own count, never behind it.
    const count = [...text.matchAll(countPlaces[i] as RegExp)].at(-1)?.[1];
    const vehicle = vehiclePlaces[i]?.exec(text)?.[1];
    return { digest, ...(vehicle && { vehicle }), ...(count !== undefined && { calls: Number(count) }) };
  }
  return undefined;
}

/** The digest that stands on a sheet of its own words, and those words without it. */
export type OwnDigest = { words: string; digest?: string };

/** The line of the log's digest, with what ends it; the line of the sheet's own, as that form words it; back from it. */
const ownPlaces = [
  {
    after: /^Log digest {6}[0-9a-f]{64}\n/m,
    own: (digest: string) => `Sheet digest    ${digest}\n`,
    back: /^(Log digest {6}[0-9a-f]{64}\n)Sheet digest {4}([0-9a-f]{16})\n/m,
  },
  {
    after: /^log,digest,[0-9a-f]{64},,,,,\r?\n/m,
    own: (digest: string) => `sheet,digest,${digest},,,,,\r\n`,
    back: /^(log,digest,[0-9a-f]{64},,,,,\n)sheet,digest,([0-9a-f]{16}),,,,,\n/m,
  },
  {
    after: /<p>Log digest <code id="log-digest">[0-9a-f]{64}<\/code><\/p>\n/,
    own: (digest: string) => `<p>Sheet digest <code id="sheet-digest">${digest}</code></p>\n`,
    back: /(<p>Log digest <code id="log-digest">[0-9a-f]{64}<\/code><\/p>\n)<p>Sheet digest <code id="sheet-digest">([0-9a-f]{16})<\/code><\/p>\n/,
  },
] as const;

export function withOwnDigest(sheet: string, digest: string): string {
  const place = ownPlaces.find(({ after }) => after.test(sheet));
  return place ? sheet.replace(place.after, (line) => `${line}${place.own(digest)}`) : sheet;
}

/** How lines end, and blanks at their ends, are no words of it: mail and editors change them. */
export function ownDigestOf(sheet: string): OwnDigest {
  const words = linesOf(sheet).join('\n').trimEnd();
  for (const { back } of ownPlaces) {
    const digest = back.exec(words)?.[2];
    if (digest !== undefined) return { words: words.replace(back, '$1'), digest };
  }
  return { words };
}

/** A text sheet's own digest, where its line stands alone. */
export const isOwnDigest = (line: string): boolean => /^Sheet digest {4}[0-9a-f]{16}$/.test(line);
export const linesOf = (sheet: string): string[] =>
  sheet
    .replace(/^\u{FEFF}/u, '')
    .split('\n')
    .map((line) => line.trimEnd());

type TextHead = { copy: Copy; atMs: number; zoneMin: number; digest: string };
const standsPlace =
  /^As it stands {4}[A-Z][a-z]+ (\d{4}-\d\d-\d\d) (\d\d:\d\d) \(UTC([+-]\d\d:\d\d)\)\nLog digest {6}([0-9a-f]{64})$/m;
/** Whose copy a text sheet is, and of which moment and log; undefined where its head does not say so. */
export function textHead(sheet: string): TextHead | undefined {
  const text = linesOf(sheet).join('\n');
  const copy = /^JOB SHEET +(owner|workshop)'s copy$/m.exec(text)?.[1];
  const stands = standsPlace.exec(text);
  if (!copy || !stands) return undefined;
  const [, day, time, offset = '', digest = ''] = stands;
  const [hours = 0, minutes = 0] = offset.slice(1).split(':').map(Number);
  const zoneMin = (offset.startsWith('-') ? -1 : 1) * (hours * 60 + minutes);
  const atMs = Date.parse(`${day}T${time}Z`) - zoneMin * 60_000;
  return Number.isNaN(atMs) ? undefined : { copy: copy === 'owner' ? 'owner' : 'workshop', atMs, zoneMin, digest };
}
