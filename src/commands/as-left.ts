// What stands on the terminal once the program is left: whether all is saved and where, what goes on by itself and till
// when, and how one comes back. One line, made from the job as it stood.
import path from 'node:path';
import type { Desk } from '../calls/desk.ts';
import { jobName } from '../calls/job-name.ts';
import { beadWords } from '../calls/lists/sealing.ts';
import { openSaid, outParts } from '../calls/tally-words.ts';
import { stateOf } from '../job/ledger.ts';
import { type Hanging, whatHangs } from '../job/what-hangs.ts';
import { fileNameOf, type Places } from '../store/places.ts';
import { plainText } from '../trade/plain-text.ts';

/** What nobody need be told of by name before the job is opened again. */
const counted: readonly (readonly [Hanging['what'], string])[] = [
  ['snug', 'only snug'],
  ['for-now', 'on for now'],
  ['lost', 'lost'],
];

/** @param job its file, and whether it was only looked at */
export function asLeft(desk: Desk, job: { path: string; looking: boolean }, places: Pick<Places, 'jobs'>): string {
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
  const saved = job.looking ? 'only looked at' : `saved in ${job.path}`;
  const name = path.dirname(job.path) === places.jobs ? fileNameOf(job.path) : job.path;
  const back = `Back to it: countback open ${/^[\w./-]+$/.test(name) ? name : JSON.stringify(name)}`;
  return plainText(`${jobName(ledger, name)}: ${[saved, stands.join(', '), ...named].join('; ')}. ${back}`);
}
