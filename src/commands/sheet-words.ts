// The words on a printed sheet: a digest of their own goes onto it with them, and is held to them again by verify. Of a
// text sheet that was changed the first line is named that its log would not print.
import { createHash } from 'node:crypto';
import { stateOf } from '../job/ledger.ts';
import type { Line } from '../job/line.ts';
import { readLog } from '../job/log.ts';
import { isOwnDigest, linesOf, ownDigestOf, textHead, withOwnDigest } from '../sheet/digest-on-sheet.ts';
import { sheetText } from '../sheet/text.ts';
import { plainText } from '../trade/plain-text.ts';
import { metric, type Units } from '../trade/units-shown.ts';

/** As many figures as a link of the log: it tells a slip or a hand, and who computes it anew is no better kept out by more. */
const figures = 16;
const digestOf = (words: string): string => createHash('sha256').update(words).digest('hex').slice(0, figures);

/** A sheet as it is printed, with the digest of its own words. */
export const withItsDigest = (sheet: string): string => withOwnDigest(sheet, digestOf(ownDigestOf(sheet).words));

/**
 * What is to be said of the words on a sheet of this log, and whether they are no longer those that were printed.
 * @param lines of the log when it was printed
 */
export function wordsOnSheet(text: string, lines: readonly Line[]): { isChanged: boolean; said: string } {
  const { words, digest } = ownDigestOf(text);
  if (digest !== undefined && digest === digestOf(words))
    return { isChanged: false, said: 'The words on it are as they were printed.' };
  const other = firstOtherLine(text, lines);
  if (digest === undefined) {
    const said = 'The words on it were not compared, only the digest of the log: it carries none of its own';
    return { isChanged: false, said: other ? `${said}. This log would not print its ${other}` : `${said}.` };
  }
  const said = 'it no longer reads as it was printed, or was saved anew by a program that writes it otherwise';
  return { isChanged: true, said: other ? `${said}. Look first at ${other}` : `${said}.` };
}

/**
 * Of a text sheet the first line that its log would not print, in any units and in either copy. It names a place to look
 * at and judges nothing: another version of the program words some lines otherwise.
 */
function firstOtherLine(text: string, lines: readonly Line[]): string | undefined {
  const head = textHead(text);
  if (!head) return undefined;
  const ledger = readLog(lines);
  const { photos = [] } = stateOf(ledger, 'vehicle', 'vehicle') ?? {};
  const run = (lines.at(-1)?.run ?? 0) + 1;
  const { copy, digest, zoneMin } = head;
  const printed = new Set<string>();
  // What cures is told to the minute, and so is the moment of printing.
  for (const atMs of [head.atMs, head.atMs + 59_000])
    for (const [units, state] of ways) {
      const now = { atMs, zoneMin, run, awakeMs: 0 };
      const photosThen = new Map(photos.map(({ n }) => [n, { state }]));
      const anew = sheetText(ledger, { now, units, photos: photosThen, copy, digest, benchTime: true });
      for (const line of linesOf(anew)) printed.add(line);
    }
  const all = linesOf(text);
  const at = all.findIndex((line) => !printed.has(line) && !isOwnDigest(line));
  return at < 0 ? undefined : `line ${at + 1}, ${JSON.stringify(plainText((all[at] ?? '').trim()))}`;
}

const imperial: Units = { distance: 'mi', temperature: 'F', torque: 'lbf ft' };
/** Units, and what had become of the photographs: no line tells of both. */
const ways = [
  [metric, 'as noted'],
  [imperial, 'not there'],
  [metric, 'changed'],
] as const;
