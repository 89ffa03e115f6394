// pocketsphinx as decoders of the same utterances, which judge.ts holds against each other. Each is run on recorded
// utterances as an outside program, with the grammar as it stands then; nothing of it stays running.
import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import type { Grammar } from './grammar.ts';
import type { Decoded } from './judge.ts';
import { dictionaryOf, readDictionary } from './pronounce.ts';

const modelFolder = '/usr/share/pocketsphinx/model/en-us';
export const howToGetOne =
  'listening needs a recogniser: "apt-get install pocketsphinx pocketsphinx-en-us alsa-utils", or name another with --listen-with CMD';

export const isOnPath = (program: string): boolean =>
  (process.env.PATH ?? '').split(delimiter).some((folder) => existsSync(join(folder, program)));
export const isReady = (): boolean =>
  isOnPath('pocketsphinx_batch') && existsSync(join(modelFolder, 'cmudict-en-us.dict'));

let known: ReadonlyMap<string, readonly string[]> | undefined;
function dictionaryAtHand(): ReadonlyMap<string, readonly string[]> {
  known ??= readDictionary(readFileSync(join(modelFolder, 'cmudict-en-us.dict'), 'utf8'));
  return known;
}

/** Words of the grammar whose sound had to be guessed from their spelling. */
export const guessedIn = ({ words }: Grammar): readonly string[] => dictionaryOf(words, dictionaryAtHand()).guessed;

export const settings = [
  '-beam',
  '1e-80',
  '-pbeam',
  '1e-80',
  '-wbeam',
  '1e-60',
  '-silprob',
  '0.1',
  '-cmn',
  'batch',
  '-bestpath',
  'no',
  '-vad_threshold',
  '2.7',
] as const;
/**
 * They hear the same words at other speeds and pitches, so that they err elsewhere: a narrower band or another weight of
 * the grammar did not do that, such decoders erred together.
 */
export const decoders: readonly Decoder[] = [1, 1.05, 0.94].map((stretch) => ({ stretch }));
export type Decoder = { stretch: number };

/** The sound drawn out or pressed together, pitch and all. */
export function stretched(pcm: Buffer, by: number): Buffer {
  if (by === 1) return pcm;
  const samples = Math.floor(pcm.length / 2);
  const out = Buffer.alloc(Math.floor(samples * by) * 2);
  for (let i = 0; i < out.length / 2; i++) {
    const at = i / by;
    const before = Math.min(samples - 1, Math.floor(at));
    const after = Math.min(samples - 1, before + 1);
    const share = at - before;
    out.writeInt16LE(Math.round(pcm.readInt16LE(before * 2) * (1 - share) + pcm.readInt16LE(after * 2) * share), i * 2);
  }
  return out;
}

/** What one decoder makes of each utterance: 16 kHz, 16 bit, one channel. */
export async function decodeAll(
  utterances: readonly Buffer[],
  grammar: Grammar,
  { stretch }: Decoder,
  nice?: number,
): Promise<Decoded[]> {
  const folder = mkdtempSync(join(tmpdir(), 'countback-heard-'));
  try {
    writeDictionary(folder, grammar.words);
    writeFileSync(join(folder, 'calls.jsgf'), grammar.jsgf);
    writeFileSync(join(folder, 'utterances'), utterances.map((_, i) => `u${i}\n`).join(''));
    utterances.forEach((pcm, i) => {
      writeFileSync(join(folder, `u${i}.raw`), stretched(pcm, stretch));
    });
    const at = (name: string) => join(folder, name);
    const io = [
      '-adcin',
      'yes',
      '-cepdir',
      folder,
      '-cepext',
      '.raw',
      '-ctl',
      at('utterances'),
      '-hypseg',
      at('heard'),
    ];
    await runBatch([...modelArgs(folder), '-jsgf', at('calls.jsgf'), ...io, ...settings], nice);
    const lines = readFileSync(at('heard'), 'utf8').split('\n');
    return utterances.map((_, i) => readSegments(lines.find((line) => line.startsWith(`u${i} `)) ?? ''));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
export function writeDictionary(folder: string, words: readonly string[]): void {
  writeFileSync(join(folder, 'words.dict'), dictionaryOf(words, dictionaryAtHand()).text);
}
export const modelArgs = (folder: string): string[] => [
  '-hmm',
  join(modelFolder, 'en-us'),
  '-dict',
  join(folder, 'words.dict'),
];
export function runBatch(args: readonly string[], nice?: number): Promise<void> {
  const program = 'pocketsphinx_batch';
  const [name, all] = nice ? ['nice', ['-n', String(nice), program, ...args]] : [program, [...args]];
  return new Promise((done, failed) => {
    execFile(name, all, { maxBuffer: 1 << 28 }, (error, _out, complaint) => {
      if (!error) return done();
      const why = complaint.split('\n').find((line) => /ERROR|FATAL/.test(line)) ?? error.message;
      failed(new Error(`${program}: ${why.trim()}`));
    });
  });
}

/** "u0 S 0 T -1234 A -1000 L -234 0 -50 0 <s> 12 -300 -9 take 40 …": start, acoustic and language score, word; then the end. */
function readSegments(line: string): Decoded {
  const parts = line.trim().split(/\s+/);
  const from = parts.indexOf('L') + 2;
  const words: { word: string; fit: number; frames: number }[] = [];
  for (let at = from; from > 1 && at + 3 < parts.length; at += 4) {
    const [start, acoustic, , word = ''] = parts.slice(at, at + 4);
    const frames = Math.max(1, Number(parts[at + 4]) - Number(start));
    if (/^[<+[(]/.test(word) || word === '') continue;
    words.push({ word: word.replace(/\(\d+\)$/, ''), fit: Number(acoustic) / frames, frames });
  }
  return { words };
}
