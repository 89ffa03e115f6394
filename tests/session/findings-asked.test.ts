// What is asked before a finding and before the steps of a thread repair, and what is said after them.
import { describe, expect, it } from 'vitest';
import { findingRows } from '../../src/calls/lists/findings.ts';
import { every, stateOf } from '../../src/job/ledger.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { type AtTheBench, lettersOf, newJob } from './at-the-bench.ts';
import { partWay } from './part-way.ts';

async function begun(...lines: readonly string[]): Promise<AtTheBench> {
  const at = await newJob();
  for (const line of ['area cover', 'bolt hex 10 M6x25', ...lines]) {
    const answer = at.session().runLine(line);
    if (answer.kind === 'refused') throw new Error(`${line}: ${answer.text}`);
  }
  return at;
}
const findingsOf = (at: AtTheBench) =>
  [...every(at.state().ledger, 'finding')].map((f) => ({ at: f.at, when: f.when, what: f.what }));
const said = (at: AtTheBench): string => {
  const { answer } = at.state();
  return answer && 'text' in answer ? answer.text : '';
};

describe('a finding', () => {
  it('[F1] is of the hole that was called just now, and asks by number whether it was so on arrival', async () => {
    const at = await begun('holes 2');
    await at.press('enter', 'f');
    expect(at.view().asking?.title).toContain('at cover 1, was it so');
    await at.press('1', ...lettersOf('stripped'), 'enter');
    expect(findingsOf(at)).toEqual([{ at: 'hole:cover/1', when: 'on arrival', what: 'stripped' }]);
    await at.press('enter', 'f', '2', ...lettersOf('bent'), 'enter');
    expect(findingsOf(at)[1]).toEqual({ at: 'hole:cover/2', when: 'during the work', what: 'bent' });
  });
  it('[F1] is of what came off damaged as found on arrival, and three keys say that it was the work', async () => {
    const at = await begun('off 1');
    const calls = () => findingsOf(at).map(({ at, when }) => `${at} ${when}`);
    await at.press('d');
    expect(calls()).toEqual(['hole:cover/2 on arrival']);
    expect(
      textOf(sceneOf({ screen: 'strip' }, { desk: at.bench.desk(), session: at.state() })).replace(/\s+/g, ' '),
    ).toContain(
      'fastener damaged, condemned; cover 2 off, to tray 1. Noted as found on arrival; if the work did it: Bksp then "," then d',
    );
    await at.press('backspace', ',', 'd');
    expect(at.view().asking?.title).toBe('damaged: was it so (Enter alone: as it came)');
    await at.press('2');
    expect(calls()).toEqual(['hole:cover/2 during the work']);
    expect(at.state().answer).not.toHaveProperty('otherwise');
    // Left out, it is as the key alone has it; typed, it stands behind the number.
    await at.press(',', 'd', 'enter');
    at.session().runLine('damaged 4 during the work');
    expect(calls().slice(1)).toEqual(['hole:cover/3 on arrival', 'hole:cover/4 during the work']);
    // Of one that lies in its tray already nothing is asked.
    await at.press('#', '1', 'enter', ',', 'd');
    expect(said(at)).toContain('condemned');
  });
  it('[F1] is of the one pointed at by the same three keys, once all are back in', async () => {
    const at = await begun(
      ...['off 1', 'off 2', 'off 3', 'holes 3', 'back 1', 'back 2', 'back 3'],
      ...['area lid', 'off 1', 'holes 1', 'area cover'],
    );
    await at.press('S');
    expect(
      textOf(sceneOf({ screen: 'strip' }, { desk: at.bench.desk(), session: at.state() })).replace(/[\s│]+/g, ' '),
    ).toContain('Nothing of it is off. One that comes off again is pointed at first: #.');
    await at.press('#', '2', 'd', 'backspace', ',', 'd', '2');
    expect(findingsOf(at)).toMatchObject([{ at: 'hole:cover/2', when: 'during the work' }]);
  });
  it('[F1] is of what came off damaged by the work, where it was the last of an area from a plan too', async () => {
    const at = await partWay('off 5');
    await at.press('d');
    expect(at.state().facing.area).not.toBe('right front wheel');
    await at.press('backspace', ',', 'd', '2');
    expect(findingsOf(at).at(-1)).toMatchObject({ at: 'hole:right front wheel/5', when: 'during the work' });
  });
  it('[F1] is of the area where the call before was of no hole, after a comma, and after a hole of another area', async () => {
    const at = await begun('holes 2', 'off 1');
    await at.press(',', 'f');
    expect(at.view().asking?.title).toContain('at cover, was it so');
    await at.press('escape');
    for (const line of ['part off lid held by nothing']) at.session().runLine(line);
    await at.press('f');
    expect(at.view().asking?.title).toContain('at cover, was it so');
    await at.press('escape');
    for (const line of ['off 2', 'area lid']) at.session().runLine(line);
    await at.press('f');
    expect(at.view().asking?.title).toContain('at lid, was it so');
  });
  it('[F1] is of the one in the wrench while they are pulled up, and of the one just called put in by hand', async () => {
    const at = await begun('off 1', 'off 2', 'holes 2', 'back 1', 'back 2');
    await at.press('B', 'f');
    expect(at.view().asking?.title).toContain('at cover 2, was it so');
    await at.press('escape', 't', 'f');
    expect(at.view().asking?.title).toContain('at cover 2, was it so');
    await at.press('escape', 't', 'f');
    expect(at.view().asking?.title).toContain('at cover 1, was it so');
  });
  it('[F2] is named where it is accepted, and a service where it is dropped', async () => {
    const at = await begun('off 1', 'holes 1', 'finding thread stripped', 'service oil', 'service front brakes');
    await at.press('F', 'a');
    expect(at.view().asking?.title).toBe('accepted (cover: thread stripped): who says so');
    await at.press('escape', 'W', 'down', 'd');
    expect(at.view().asking?.title).toMatch(/^service dropped front brakes: /);
  });
  it('[F1] is of the hole pointed at, whichever was called', async () => {
    const at = await begun('holes 2', 'off 1');
    await at.press('#', '2', 'enter', 'f');
    expect(at.view().asking?.title).toContain('at cover 2, was it so');
  });
});

describe('a thread repair', () => {
  const stripped = () => begun('off 1', 'off 2', 'holes 2', 'finding on arrival at 2 stripped');
  it('[F5] asks how wide the drill is, and proposes the first that fits', async () => {
    const at = await stripped();
    await at.press('F', 'r', '2', '2', 'enter', 'r');
    expect(at.view().asking).toMatchObject({
      title: 'thread repair: 2: the drill, how wide across, mm',
      typed: '6.3',
    });
    await at.press('enter');
    expect(said(at)).toBe('cover 2 drilled 6.3 mm across');
    expect(findingRows(at.bench.desk())[0]).toMatchObject({
      end: 'next tapped',
      more: 'cover 2: stripped, on arrival. next tapped',
    });
  });
  it('[F5] asks about a figure that says how deep, or that no drill has, and takes it when it is meant', async () => {
    const at = await stripped();
    await at.press('F', 'r', '2', '2', 'enter', 'r', '2', '1', 'enter');
    expect(at.view().asking?.title).toBe('cover 2: 21 mm is how deep, not how wide; is that the drill, across?');
    await at.press('1', 'r', '2', '2', 'enter');
    expect(at.view().asking?.title).toContain('22 mm is how deep');
    await at.press('1', 'r', '1', '4', 'enter');
    expect(at.view().asking?.title).toContain('14 mm across is too wide for M6');
    await at.press('2');
    expect(said(at)).toContain('cover 2 drilled 14 mm across. Mind: 14 mm is too large for an insert of M6');
  });
  it('[F5] is not called put right at one press where the drill was too wide for what holds it', async () => {
    const steps = ['depth 22', 'drilled 8', 'tapped', 'cleaned', 'insert 12', 'tried'].map((one) => `repair 2 ${one}`);
    const at = await begun('off 1', 'off 2', 'finding on arrival at 2 stripped', ...steps);
    await at.press('F', 'p');
    expect(at.state().answer).toMatchObject({
      kind: 'asked',
      text: expect.stringMatching(/^cover 2 was drilled so: 8 mm is too large for an insert of M6/),
      by: 'repair',
    });
    await at.press('p');
    expect(said(at)).toMatch(/put right/);
  });
  it('[F6] is refused before a figure is asked for where the works stand open', async () => {
    const at = await begun(
      'keep clean',
      'off 1',
      'off 2',
      'holes 2',
      'finding on arrival at 2 stripped',
      'repair 2 depth 22',
    );
    await at.press('F', 'r');
    expect(at.view().asking).toBeUndefined();
    expect(at.state().answer).toMatchObject({ kind: 'refused', by: 'masked' });
  });
  it('[F3] says once it is whole that put right is next, and what comes before that where the finding is of what came out', async () => {
    const whole = ['depth 22', 'drilled 6.3', 'tapped', 'cleaned', 'insert 12'].map((step) => `repair 2 ${step}`);
    const at = await begun('off 1', 'off 2', 'holes 2', 'finding on arrival at 2 stripped', ...whole);
    await at.press('F', 'r');
    expect(at.state().answer).toMatchObject({
      otherwise: { words: 'The repair is whole; put right', by: 'put-right' },
    });
    expect(findingRows(at.bench.desk())[0]?.end).toBe('next put right');
    await at.press('r');
    expect(at.view().asking?.title).toBe('thread repair: 2 is repaired, and put right comes next; begun anew with');
    await at.press('escape', 'p');
    expect(stateOf(at.state().ledger, 'finding', 'd5.1')?.closed?.how).toBe('put right');
    const wrong = await begun('off 1', 'wrong one 2', 'finding on arrival at 2 thread spoilt', 'holes 2', ...whole);
    await wrong.press('F', 'r');
    expect(wrong.state().answer).toMatchObject({
      otherwise: { words: 'The repair is whole; put d4.1 right', by: 'put-right' },
    });
    await wrong.press('p');
    expect(stateOf(wrong.state().ledger, 'finding', 'd4.1')?.closed?.how).toBe('put right');
    const damaged = await begun('off 1', 'damaged 2', 'holes 2', ...whole);
    await damaged.press('F', 'r');
    expect(damaged.state().answer).toMatchObject({ otherwise: { by: 'new' } });
    await damaged.press('p');
    expect(said(damaged)).toBe('it is of what came out, and nothing is in the hole yet');
  });
  it('[F5] leads to its hole and says where it goes on, as Escape does that puts a refusal away there', async () => {
    const at = await begun('off 1', 'off 2', 'finding on arrival at 2 stripped', 'repair 2 depth 22');
    const note = () => at.bench.store.getState().note;
    await at.press('F', 'enter');
    expect(note()).toBe('Build, opened from Findings. Esc back, where thread repair goes on: r.');
    await at.press('t');
    expect(at.state().answer?.kind).toBe('refused');
    await at.press('escape');
    expect(note()).toBe('Put away. Build, opened from Findings. Esc back.');
  });
  it('[F5] goes back by Escape at once, with a refusal that stood there before', async () => {
    const at = await begun('off 1', 'off 2', 'finding on arrival at 2 stripped', 'repair 2 depth 22');
    await at.press('F', 'd', 'escape', 'p');
    expect(at.state().answer?.kind).not.toBe('taken');
    await at.press('enter');
    expect(at.view().screen).toBe('build');
    await at.press('escape');
    expect(at.view().screen).toBe('findings');
  });
});
