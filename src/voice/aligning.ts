// How well each of a few phrases fits an utterance, at several speeds: every phrase is held to the sound alone, by a grammar
// that has nothing else. It costs a tenth of hearing anew, and weighs what the hearings were split over.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { modelArgs, runBatch, settings, stretched, writeDictionary } from './pocketsphinx.ts';

/** Fit of each phrase at each speed, nought being best; undefined where it could not be held to the sound at all. */
export type Fits = readonly (number | undefined)[];
export type Split = { pcm: Buffer; phrases: readonly string[] };

export async function alignAll(
  splits: readonly Split[],
  stretches: readonly number[],
  nice?: number,
): Promise<Fits[][]> {
  const folder = mkdtempSync(join(tmpdir(), 'countback-aligned-'));
  const at = (name: string) => join(folder, name);
  try {
    const sounds: string[] = [];
    const grammars: string[] = [];
    splits.forEach(({ pcm, phrases }, i) => {
      stretches.forEach((stretch, s) => {
        writeFileSync(at(`u${i}-${s}.raw`), stretched(pcm, stretch));
        phrases.forEach((_, p) => {
          sounds.push(`u${i}-${s} 0 -1 a${i}-${s}-${p}\n`);
          grammars.push(`g${i}-${p}\n`);
        });
      });
      for (const [p, phrase] of phrases.entries()) writeFileSync(at(`g${i}-${p}.fsg`), onlyOf(phrase));
    });
    writeFileSync(at('sounds'), sounds.join(''));
    writeFileSync(at('grammars'), grammars.join(''));
    const words = splits.flatMap(({ phrases }) => phrases.flatMap((phrase) => phrase.split(' ')));
    writeDictionary(folder, [...new Set(words)].sort());
    const io = ['-adcin', 'yes', '-cepdir', folder, '-cepext', '.raw', '-ctl', at('sounds'), '-hypseg', at('heard')];
    const by = ['-fsgctl', at('grammars'), '-fsgdir', folder, '-fsgext', '.fsg'];
    await runBatch([...modelArgs(folder), ...by, ...io, ...settings], nice);
    const found = new Map(readFileSync(at('heard'), 'utf8').split('\n').map(fitOf));
    return splits.map(({ phrases }, i) =>
      phrases.map((_, p) => stretches.map((_stretch, s) => found.get(`a${i}-${s}-${p}`))),
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
/** One phrase and no other, as a finite-state grammar. */
function onlyOf(phrase: string): string {
  const words = phrase.split(' ');
  const steps = words.map((word, i) => `TRANSITION ${i} ${i + 1} 1.0 ${word}\n`).join('');
  return `FSG_BEGIN only\nNUM_STATES ${words.length + 1}\nSTART_STATE 0\nFINAL_STATE ${words.length}\n${steps}FSG_END\n`;
}
/** "a0-0-0 S 0 T -7423 A -7129 L -294 0 -661 …": the whole is the figure after T; a line without words found nothing. */
function fitOf(line: string): [string, number | undefined] {
  const parts = line.trim().split(/\s+/);
  const whole = Number(parts[parts.indexOf('T') + 1]);
  return [parts[0] ?? '', parts.length > 12 ? whole : undefined];
}
