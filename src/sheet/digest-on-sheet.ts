// Reads the digest of the log back from a printed sheet, in each of its forms. Only where the sheet itself puts it: no
// name or note that a job holds can stand there.

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
  const text = sheet.replaceAll('\r\n', '\n').replace(/^\u{FEFF}/u, '');
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
