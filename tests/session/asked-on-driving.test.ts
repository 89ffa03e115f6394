// What is asked once before a circuit is drained or called dry, and before the car moves or is driven.
import { describe, expect, it } from 'vitest';
import { pickedAt } from '../../src/calls/listed.ts';
import { asked, lines } from './asked.ts';
import { type AtTheBench, newJob } from './at-the-bench.ts';

describe('a circuit', () => {
  it('is asked about before it is drained once more with nothing filled since', async () => {
    const at = await newJob();
    for (const line of ['circuit coolant with water', 'drained coolant', 'circuit engine oil with oil'])
      at.session().runLine(line);
    await at.press('C', 'd');
    expect(asked(at)).toMatch(/^coolant was drained in line 3, and not filled since; another circuit is chosen; /);
  });
});

/** Coolant drained and filled, the engine started, and a second between two keys. */
async function started(): Promise<AtTheBench> {
  const at = await newJob();
  at.pace.stepMs = 1000;
  const lines = [
    'circuit coolant with water',
    'drained coolant',
    'filled coolant',
    'oil level',
    'tools out',
    'first start',
  ];
  for (const line of lines) expect(at.session().runLine(line)).toMatchObject({ kind: 'taken' });
  return at;
}

describe('a circuit looked over for leaks', () => {
  it('is asked about where the engine was started a moment ago, and not once it ran for a while', async () => {
    const at = await started();
    await at.press('C', 'k');
    expect(asked(at)).toMatch(
      /^the engine was called started \d+ s ago: cold, it hides a leak; let it get warm, .*dry/,
    );
    at.pace.stepMs = 5 * 60_000;
    await at.press('k');
    expect(at.state().answer?.kind).toBe('taken');
  });
  it('is called dry by the same key all the same, and the next circuit then without asking', async () => {
    const at = await newJob();
    const circuits = ['circuit coolant with water', 'circuit washer with water'];
    const more = ['drained coolant', 'drained washer', 'filled coolant', 'filled washer', 'oil level', 'tools out'];
    for (const line of [...circuits, ...more, 'first start']) at.session().runLine(line);
    const before = lines(at);
    at.pace.stepMs = 1000;
    await at.press('C', 'k');
    expect(lines(at)).toBe(before);
    await at.press('k', 'k');
    expect(lines(at)).toBe(before + 2);
  });
  it('is not asked about under pressure', async () => {
    const at = await started();
    expect(at.session().runLine('leak check coolant under pressure', 'key')).toMatchObject({ kind: 'taken' });
  });
});

describe('the road test', () => {
  it('is asked about while a circuit was not looked over for leaks', async () => {
    const at = await started();
    await at.press('L', 'r');
    expect(asked(at)).toMatch(/^coolant not looked over for leaks since; look it over first; leak-check; /);
    expect(at.session().runLine('leak check coolant')).toMatchObject({ kind: 'taken' });
    await at.press('r');
    expect(at.state().answer?.kind).toBe('taken');
  });
});

describe('the car that moves', () => {
  it('is asked about while something is under it or the tools are not out', async () => {
    const at = await newJob();
    at.session().runLine('area rear');
    for (const line of ['in wheel chock as chock', 'off 1', 'holes 1', 'back 1', 'tight 1', 'tight 1'])
      expect(at.session().runLine(line)).toMatchObject({ kind: 'taken' });
    await at.press('L', 'm', '1');
    expect(asked(at)).toMatch(/^wheel chock is in; take it away first; taken-out; /);
    at.session().runLine('out wheel chock');
    await at.press('m', '1');
    expect(asked(at)).toMatch(/^tools not called out since the last work; count them first; tools; /);
    at.session().runLine('tools out');
    await at.press('m', '1');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringMatching(/^car moved/) });
  });
});

describe('a wheel whose nuts are only snug', () => {
  it('[T7] is named before the car moves, with the tools and after them', async () => {
    const at = await newJob();
    at.session().runLine('area left wheel');
    for (const line of ['role wheel', 'off 1', 'off 2', 'holes 2', 'back 1', 'back 2', 'tight 1', 'tight 2'])
      expect(at.session().runLine(line)).toMatchObject({ kind: 'taken' });
    await at.press('L', 'm', '2');
    expect(asked(at)).toMatch(
      /^tools not called out since the last work; only snug: left wheel 1, 2; count them first; tools; /,
    );
    at.session().runLine('tools out');
    await at.press('m', '2');
    expect(asked(at)).toBe(
      'only snug: left wheel 1, 2; drawn to their figure on the ground first; tight; calls it all the same',
    );
    await at.press('m');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringMatching(/^car moved/) });
  });
});

describe('what went in for the work', () => {
  it('is named where none of it may come out yet', async () => {
    const at = await newJob();
    for (const line of ['area left wheel', 'role wheel', 'in stand as stand', 'off 1']) at.session().runLine(line);
    await at.press('o');
    expect(at.state().answer).toMatchObject({
      kind: 'refused',
      text: 'stand in, and each holds or carries something yet',
    });
  });
});

describe('the circuits that could be drained', () => {
  const inOrder = (at: AtTheBench) => at.view().asking?.choices.map(({ value }) => value);
  it('begin with the one whose joint was just parted, then that of the area in use, and end with what is dry', async () => {
    const at = await newJob();
    for (const line of [
      'circuit engine oil with oil',
      'circuit coolant with water',
      'circuit fuel with fuel',
      'connection bottom hose in pump of coolant',
      'connection heater hose in bulkhead of coolant',
      'connection fuel line in rail of fuel',
      'area cover',
      'off 1',
    ])
      at.session().runLine(line);
    await at.press('l');
    expect(inOrder(at)).toEqual(['coolant', 'fuel', 'engine oil']);
    await at.press('escape');
    for (const line of ['parted fuel line', 'parted bottom hose', 'area cover']) at.session().runLine(line);
    await at.press('C');
    expect(pickedAt(at.bench.listed(), at.view().at.sealing)?.text).toBe('coolant');
    await at.press('S');
    await at.press('l');
    expect(inOrder(at)).toEqual(['coolant', 'fuel', 'engine oil']);
    await at.press('1', 'l');
    expect(inOrder(at)).toEqual(['fuel', 'engine oil', 'coolant']);
    await at.press('escape');
    at.session().runLine('area bulkhead');
    await at.press('l');
    expect(inOrder(at)).toEqual(['fuel', 'engine oil', 'coolant']);
  });
  it('are taken unasked where the joint that was parted belongs to no area', async () => {
    const at = await newJob();
    for (const line of [
      'circuit engine oil with oil',
      'circuit coolant with water',
      'connection top hose of coolant',
      'area cover',
      'off 1',
      'parted top hose',
    ])
      at.session().runLine(line);
    await at.press('l');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: 'coolant drained' });
  });
});
