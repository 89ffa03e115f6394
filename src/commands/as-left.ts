// What stands on the terminal once the program is left: whether all is saved and where, what goes on by itself and till
// when, and how one comes back. A few rows, made from the job as it stood.
import path from 'node:path';
import type { Desk } from '../calls/desk.ts';
import { jobName } from '../calls/job-name.ts';
import { beadWords } from '../calls/lists/sealing.ts';
import { openSaid, outParts } from '../calls/tally-words.ts';
import { stateOf } from '../job/ledger.ts';
import type { Line } from '../job/line.ts';
import { type Hanging, whatHangs } from '../job/what-hangs.ts';
import type { OpenJob } from '../store/open-job.ts';
import { fileNameOf, type Places } from '../store/places.ts';
import { plainText } from '../trade/plain-text.ts';
import { inRows } from './in-rows.ts';

/** What nobody need be told of by name before the job is opened again. */
const counted: readonly (readonly [Hanging['what'], string])[] = [
  ['snug', 'only snug'],
  ['for-now', 'on for now'],
  ['lost', 'lost'],
];

/** A path and a command are copied: neither is broken where it has room on a row of its own. */
const solid = (text: string): string => plainText(text).replaceAll(' ', '\u00a0');

/**
 * Of a job that was only looked at no way is told that would open it to write.
 * @param columns of the terminal, whose own end of a row would fall amid a word
 * @param program as it is called in this shell
 */
export function asLeft(
  desk: Desk,
  job: Pick<OpenJob<Line>, 'path' | 'mode' | 'whyLook'>,
  places: Pick<Places, 'jobs'>,
  columns?: number,
  program = 'countback',
): string {
  const { ledger } = desk;
  const hanging = whatHangs(ledger, desk.now);
  const named = hanging.flatMap((one) => {
    if (one.what === 'waits') return one.words;
    if (one.what !== 'cures') return [];
    return one.bead?.togetherAt ? `${one.words}, ${beadWords(one.bead, desk)}` : one.words;
  });
  const sums = counted.flatMap(([what, words]) => {
    const many = hanging.filter((one) => one.what === what).length;
    return many > 0 ? `${many} ${words}` : [];
  });
  const { all } = ledger.tallies;
  const isReleased = (stateOf(ledger, 'vehicle', 'vehicle')?.releasedAt ?? 0) > 0;
  const stands = isReleased ? ['released'] : [...outParts(all), openSaid(all), ...sums];
  const saved = job.mode === 'look' ? 'only looked at' : `saved in ${solid(job.path)}`;
  const name = path.dirname(job.path) === places.jobs ? fileNameOf(job.path) : job.path;
  const open = solid(`${program} open ${/^[\w./-]+$/.test(name) ? name : JSON.stringify(name)}`);
  const again = job.whyLook?.kind === 'copy' ? `. To look again: ${open}` : '';
  const back = job.mode === 'look' ? again : `. Back to it: ${open}`;
  const said = plainText(`${jobName(ledger, name)}: ${[saved, stands.join(', '), ...named].join('; ')}${back}`);
  return inRows(said, 0, 2, columns).replaceAll('\u00a0', ' ');
}
