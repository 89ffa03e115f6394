// Synthetic speech and synthetic workshop noise, 16 kHz, 16 bit, one channel: the same for the same seed. Synthetic voices
// are not people: figures from them compare wordings and settings, they promise nothing.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isOnPath } from '../../src/voice/pocketsphinx.ts';

export const rate = 16_000;
export type Voice = { name: string; heldOut?: true; program: string; args(text: string, file: string): string[] };
const espeak = (name: string, voice: string, pitch: number, speed: number): Voice => ({
  name,
  program: 'espeak-ng',
  args: (text, file) => ['-v', voice, '-p', String(pitch), '-s', String(speed), '-w', file, text],
});
const flite = (voice: string): Voice => ({
  name: `flite ${voice}`,
  program: 'flite',
  args: (text, file) => ['-voice', voice, '-t', text, '-o', file],
});
export const voices: readonly Voice[] = [
  espeak('espeak us', 'en-us', 50, 150),
  espeak('espeak gb low slow', 'en-gb+m3', 35, 130),
  espeak('espeak us f fast', 'en-us+f3', 60, 170),
  flite('kal'),
  flite('awb'),
  flite('rms'),
  { ...flite('slt'), heldOut: true },
];
export const missing = (): string[] =>
  ['pocketsphinx_batch', 'espeak-ng', 'sox', 'flite'].filter((program) => !isOnPath(program));

/** A small seeded generator: the noise of a run is the noise of every run. */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export type Sound = Float64Array;
export function spoken(voice: Voice, text: string): Sound {
  const folder = mkdtempSync(join(tmpdir(), 'countback-spoken-'));
  try {
    const file = join(folder, 'a.wav');
    execFileSync(voice.program, voice.args(text, file), { stdio: 'ignore' });
    const raw = join(folder, 'a.raw');
    const form = ['-r', String(rate), '-b', '16', '-c', '1', '-e', 'signed-integer', '-t', 'raw', raw];
    execFileSync('sox', [
      '-D',
      file,
      ...form,
      'silence',
      '1',
      '0.02',
      '0.5%',
      'reverse',
      'silence',
      '1',
      '0.02',
      '0.5%',
      'reverse',
      'gain',
      '-n',
      '-6',
    ]);
    const pcm = readFileSync(raw);
    return Float64Array.from({ length: pcm.length / 2 }, (_, i) => pcm.readInt16LE(i * 2) / 32768);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A piston compressor: a hum with its harmonics, beating with the strokes, over air. */
export function compressor(length: number, seed: number): Sound {
  const next = chance(seed);
  const hum = 46 + 6 * next();
  let air = 0;
  return Float64Array.from({ length }, (_, i) => {
    const t = i / rate;
    air = 0.9 * air + 0.1 * (2 * next() - 1);
    const stroke = 0.6 + 0.4 * Math.sin(2 * Math.PI * (hum / 4) * t);
    const tones = [1, 2, 3, 4, 6].reduce((sum, k) => sum + Math.sin(2 * Math.PI * hum * k * t + k) / k, 0);
    return stroke * (0.5 * tones + 3 * air) + 0.15 * (2 * next() - 1);
  });
}
/** A ratchet: clicks that ring, in strokes of a dozen with pauses between. */
export function ratchet(length: number, seed: number): Sound {
  const next = chance(seed);
  const out = new Float64Array(length);
  for (let at = Math.floor(next() * rate * 0.3); at < length; ) {
    for (let click = 8 + Math.floor(next() * 8); click > 0 && at < length; click--) {
      const ring = 1800 + 1500 * next();
      for (let i = 0; i < 480 && at + i < length; i++)
        out[at + i] = (out[at + i] ?? 0) + Math.exp(-i / 90) * Math.sin((2 * Math.PI * ring * i) / rate);
      at += Math.floor(rate * (0.045 + 0.03 * next()));
    }
    at += Math.floor(rate * (0.25 + 0.4 * next()));
  }
  return out.map((x) => x + 0.01 * (2 * next() - 1));
}
export const noises = { compressor, ratchet } as const;

const power = (sound: Sound): number => sound.reduce((sum, x) => sum + x * x, 0) / Math.max(1, sound.length);

/** Speech with quiet before and after, over a noise so many decibels below it, or with a little dither alone. */
export function over(speech: Sound, noise: keyof typeof noises | 'clean', decibels: number, seed: number): Buffer {
  const before = Math.floor(rate * 0.4);
  const length = before + speech.length + Math.floor(rate * 0.5);
  const next = chance(seed + 1);
  const under = noise === 'clean' ? new Float64Array(length) : noises[noise](length, seed);
  const gain = noise === 'clean' ? 0 : Math.sqrt(power(speech) / (power(under) * 10 ** (decibels / 10)));
  const mixed = under.map((x, i) => gain * x + (speech[i - before] ?? 0) + 0.0006 * (2 * next() - 1));
  return pcmOf(mixed);
}
export function pcmOf(sound: Sound): Buffer {
  const most = sound.reduce((peak, x) => Math.max(peak, Math.abs(x)), 0);
  const scale = most > 0.98 ? 0.98 / most : 1;
  const pcm = Buffer.alloc(sound.length * 2);
  for (let i = 0; i < sound.length; i++) pcm.writeInt16LE(Math.round((sound[i] ?? 0) * scale * 32767), i * 2);
  return pcm;
}
