// Outside programs in the place of a recogniser and of a speaking program: what they print is heard, what is said is said.
import { expect, it } from 'vitest';
import type { Desk } from '../../src/calls/desk.ts';
import { guessedText, warnsOfGuesses } from '../../src/commands/listening.ts';
import { createBench } from '../../src/session/bench.ts';
import { listenWith, microphone } from '../../src/voice/ears.ts';
import type { Grammar } from '../../src/voice/grammar.ts';
import { createMouth } from '../../src/voice/speaking.ts';

const grammar = (): Grammar => ({ jsgf: '#JSGF V1.0;\n', words: [], phrases: 0 });

it('hears one phrase a line of any program, which finds the grammar in a file', async () => {
  const heard: string[] = [];
  const why = await new Promise<string>((failed) => {
    listenWith('cat "$COUNTBACK_GRAMMAR"; echo "Into Tray two two"', {
      grammar,
      heard: (what) => heard.push(JSON.stringify(what)),
      failed,
    });
  });
  expect(heard).toEqual(['{"phrase":"#jsgf v1.0;"}', '{"phrase":"into tray two two"}']);
  expect(why).toContain('ended (exit 0)');
});

it('is deaf while the program speaks, and does not end with a complaint when it is stopped', async () => {
  const heard: unknown[] = [];
  let failed = 0;
  await new Promise<void>((first) => {
    const ears = listenWith('echo "one two"; exec cat /dev/zero', {
      grammar,
      heard(what) {
        heard.push(what);
        ears.stop();
        first();
      },
      failed: () => failed++,
    });
  });
  const deaf = await new Promise<string>((ended) => {
    const ears = listenWith('read line < /dev/null; echo "one two"', {
      grammar,
      heard: (what) => heard.push(what),
      failed: ended,
    });
    ears.deaf(true);
  });
  expect([heard.length, failed]).toEqual([1, 0]);
  expect(deaf).toContain('ended');
});

it('breaks off what is being said for the newest answer, and tells when it has fallen silent', async () => {
  const killed: string[] = [];
  await new Promise<void>((silent) => {
    const mouth = createMouth(
      () => {
        killed.push('silent');
        silent();
      },
      { program: '/bin/sh', args: (text) => ['-c', text] },
    );
    mouth?.say('exec cat /dev/zero > /dev/null');
    expect(mouth?.isSpeaking()).toBe(true);
    mouth?.say('exit 0');
  });
  // The first would never have ended by itself, and its end is not told.
  expect(killed).toEqual(['silent']);
});

it('takes a microphone of the workshop before its own', () => {
  expect(microphone('my-mic --raw')).toBe('my-mic --raw');
});

it('says on the bench how to get a recogniser where there is none, and takes no phrase while a question stands', () => {
  const bench = createBench({
    jobs: () => Promise.resolve([]),
    open: () => Promise.reject(new Error('none')),
    howToHear: 'listening needs a recogniser',
  });
  bench.press('V');
  expect(bench.store.getState()).toMatchObject({ word: 'listening needs a recogniser' });
  expect(bench.store.getState().listening).toBeUndefined();
  bench.ears(true);
  bench.press('V');
  expect([bench.store.getState().listening, bench.heed()]).toEqual([false, 'start']);
  bench.hear({ phrase: 'start listening' });
  expect(bench.store.getState().listening).toBe(true);
  bench.press('A');
  expect(bench.store.getState()).toMatchObject({ speaking: true, note: 'Answers are spoken.' });
});

it('tells once of each name whose sound was guessed, when listening starts and when the name comes up', async () => {
  const told: string[] = [];
  let words = ['pump', 'zwickel'];
  let length = 4;
  const bench = {
    desk: () => ({ ledger: { lines: { length } } }) as Desk,
    store: { getState: () => ({ session: {} }) },
    tell: (line: string) => void told.push(line),
  };
  const turn = () => new Promise((done) => setImmediate(done));
  const warn = warnsOfGuesses(
    bench as unknown as Parameters<typeof warnsOfGuesses>[0],
    () => ({ jsgf: '', words, phrases: 1 }),
    (grammar) => grammar.words.filter((word) => word !== 'pump'),
  );
  warn();
  warn();
  await turn();
  expect(told).toEqual([guessedText(['zwickel'])]);
  words = ['pump', 'zwickel', 'blech'];
  warn();
  await turn();
  expect(told).toHaveLength(1);
  length++;
  warn();
  await turn();
  expect(told.slice(1)).toEqual([guessedText(['blech'])]);
});
