// Ears: the microphone cut into utterances and given to the decoders, or any outside program that prints one heard phrase
// a line. While they are stopped nothing is heard; while the program itself speaks they are deaf.
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Grammar } from './grammar.ts';
import { heardIn } from './hearings.ts';
import type { Heard } from './judge.ts';
import { howToGetOne, isOnPath, isReady } from './pocketsphinx.ts';
import { createCutter, rate } from './utterances.ts';

export type Ears = { stop(): void; deaf(isDeaf: boolean): void };
export type Listening = {
  /** The grammar as things stand now: asked for before each utterance is decoded. */
  grammar(): Grammar;
  heard(what: Heard): void;
  /** The recogniser ended or can't go on, and why. */
  failed(why: string): void;
};

/** A program that gives the microphone's sound: 16 kHz, 16 bit, one channel, without a header. */
export function microphone(own = process.env.COUNTBACK_MICROPHONE): string | undefined {
  if (own) return own;
  if (isOnPath('arecord')) return `arecord -q -f S16_LE -r ${rate} -c 1 -t raw`;
  return isOnPath('rec') ? `rec -q -t raw -r ${rate} -b 16 -e signed-integer -c 1 -` : undefined;
}

export function listenByMicrophone({ grammar, heard, failed }: Listening): Ears | { why: string } {
  const command = microphone();
  if (!isReady() || command === undefined) return { why: howToGetOne };
  const cutter = createCutter();
  let isDeaf = false;
  let stopped = false;
  let before: Promise<void> = Promise.resolve();
  const child = inGroup(command, {});
  child.stdout?.on('data', (pcm: Buffer) => {
    if (isDeaf) return cutter.drop();
    for (const utterance of cutter.push(pcm)) {
      before = before
        .then(() => (stopped ? [] : heardIn([utterance], grammar())))
        .then(([what = 'nothing']) => {
          if (!stopped && what !== 'nothing') heard(what);
        })
        .catch((thrown: unknown) => failed(thrown instanceof Error ? thrown.message : String(thrown)));
    }
  });
  const end = whenEnded(child, command, (why) => void before.then(() => !stopped && failed(why)));
  return {
    stop() {
      stopped = true;
      end();
    },
    deaf(deaf) {
      isDeaf = deaf;
      cutter.drop();
    },
  };
}

/** The grammar is kept in a file, named to the program as COUNTBACK_GRAMMAR, and written anew when it changes. */
export function listenWith(command: string, { grammar, heard, failed }: Listening): Ears & { renew(): void } {
  const folder = mkdtempSync(join(tmpdir(), 'countback-grammar-'));
  const file = join(folder, 'calls.jsgf');
  let written = '';
  const renew = (): void => {
    const { jsgf } = grammar();
    if (jsgf === written) return;
    written = jsgf;
    writeFileSync(`${file}.new`, jsgf);
    renameSync(`${file}.new`, file);
  };
  renew();
  let isDeaf = false;
  let stopped = false;
  const child = inGroup(command, { COUNTBACK_GRAMMAR: file });
  // Read only when it is used: it brings in all of Node's line editor.
  const { createInterface } = process.getBuiltinModule('node:readline');
  if (child.stdout)
    createInterface({ input: child.stdout }).on('line', (line) => {
      const phrase = line.trim().toLowerCase().slice(0, 200);
      if (!stopped && !isDeaf && phrase !== '') heard({ phrase });
    });
  const end = whenEnded(child, command, (why) => !stopped && failed(why));
  return {
    renew,
    deaf: (deaf) => {
      isDeaf = deaf;
    },
    stop() {
      stopped = true;
      end();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** In a group of its own, so that what it started ends with it. */
const inGroup = (command: string, env: Record<string, string>): ChildProcess =>
  spawn('/bin/sh', ['-c', command], {
    stdio: ['ignore', 'pipe', 'ignore'],
    detached: true,
    env: { ...process.env, ...env },
  });
function whenEnded(child: ChildProcess, command: string, told: (why: string) => void): () => void {
  let isOver = false;
  child.on('error', (error) => told(error.message));
  child.on('close', (code, signal) => {
    isOver = true;
    told(`"${command.slice(0, 60)}" ended (${signal ?? `exit ${code}`})`);
  });
  return () => {
    if (isOver || child.pid === undefined) return;
    try {
      process.kill(-child.pid, 'SIGTERM');
    } catch {
      child.kill();
    }
  };
}
