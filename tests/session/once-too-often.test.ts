// A key pressed once more than there are things of its kind opens a question: the hand that has not stopped answers nothing.
import { beforeEach, describe, expect, it } from 'vitest';
import { plansAtHand } from '../../src/commands/plans.ts';
import { type AtTheBench, atTheBench, lettersOf, newJob } from './at-the-bench.ts';

const { offers: plans } = plansAtHand(new URL('../../', import.meta.url));
let at: AtTheBench;
const say = (...lines: string[]) => {
  for (const line of lines) {
    const said = at.session().runLine(line);
    if (said.kind === 'refused') throw new Error(`${line}: ${said.text}`);
  }
};
const written = () => at.state().ledger.lines.length;
const asking = () => at.view().asking;

describe('a key once more than there are things of its kind', () => {
  beforeEach(async () => {
    at = await atTheBench(undefined, { trays: ['1', '2', '3'], plans });
    await at.press('n', 'x', 'enter', 'S');
    say('plan cam cover reseal for cam cover reseal', 'area ignition coils');
  });

  it('names nothing new by itself, nor by the Enter behind it', async () => {
    for (const one of ['battery earth', 'coil plug 1', 'coil plug 2', 'coil plug 3']) say(`parted ${one}`);
    at.pace.stepMs = 40;
    await at.press('c');
    const before = written();
    await at.press('c');
    expect(asking()?.title).toBe('parted: connection');
    await at.press('c', 'c');
    expect(asking()).toMatchObject({ typed: '', why: '"c" opened this, and answers nothing so soon' });
    await at.press('enter', 'enter');
    expect(asking()?.why).toBe('this Enter came too soon and took nothing; again, it takes cam sensor plug');
    expect(written()).toBe(before);
    at.pace.stepMs = 60_000;
    await at.press('enter');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: 'cam sensor plug parted' });
  });

  it('loses no letter of a word that begins with it', async () => {
    for (const one of ['battery earth', 'coil plug 1', 'coil plug 2', 'coil plug 3']) say(`parted ${one}`);
    at.pace.stepMs = 50;
    await at.press('c', 'c', 'c', 'a', 'm', 'enter');
    expect(asking()?.typed).toBe('cam');
  });

  it('puts back no part of another area', async () => {
    say(...[1, 2, 3, 4].map((n) => `off engine cover ${n}`), ...[1, 2].map((n) => `off ignition coils ${n}`));
    await at.press('B');
    say('part back coil 1');
    at.pace.stepMs = 40;
    await at.press('b');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringContaining('coil 2 back') });
    const before = written();
    await at.press('b', 'enter', 'b', 'enter', 'enter');
    expect(asking()?.choices[0]?.value).toBe('engine cover');
    expect(written()).toBe(before);
  });

  it('chooses no row on the keypad', async () => {
    await at.press('K');
    say('connection knock sensor plug in cam cover');
    for (const one of ['battery earth', 'coil plug 1', 'coil plug 2', 'coil plug 3']) say(`parted ${one}`);
    at.pace.stepMs = 40;
    await at.press('5', '5', '5', '5', '5');
    // Those parted already keep their places.
    expect(asking()?.choices.filter((one) => !one.blocked)).toHaveLength(5);
    expect(asking()?.choices).toHaveLength(10);
  });
});

it('takes its own letter for no name, however late Enter comes', async () => {
  at = await newJob();
  await at.press('a', ...lettersOf('gearbox'), 'enter', 'c', 'c', 'enter');
  expect(asking()?.why).toBe('"c" is the key that asks this, and no name');
  await at.press(...lettersOf('lutch cable'), 'enter');
  expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringContaining('clutch cable parted') });
});
it('[T2] takes what was chosen of a list, though the key that opened it had just gone on to another area', async () => {
  at = await newJob();
  say('area bracket', 'off 1', 'holes 1', 'area manifold', 'off 1', 'holes 1', 'connection fuel hose in manifold');
  say('parted fuel hose', 'parted left hose', 'parted right hose', 'back 1', 'tight 1', 'tight 1');
  await at.press('B', 'j');
  expect(at.state().answer).toMatchObject({ text: expect.stringMatching(/^fuel hose made.* On to bracket/) });
  at.pace.stepMs = 200;
  await at.press('j', '2');
  expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringMatching(/^left hose made/) });
});
