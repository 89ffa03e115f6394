// What was proven once and opened again: the sheet must not tell it as standing.
import { expect, it } from 'vitest';
import { sheetFacts } from '../../src/sheet/facts.ts';
import { sheetText } from '../../src/sheet/text.ts';
import { type Story, unwrapped } from './bench-story.ts';
import { releasedJob } from './jobs.ts';

const reopened = () => releasedJob().call('reopen', { who: 'Bo', because: 'it drips' });
const facts = (s: Story) => sheetFacts(s.ledger, { now: s.now });
const text = (s: Story) => unwrapped(sheetText(s.ledger, { now: s.now }));
const holeIn = (s: Story, hole: string) => facts(s).areas.flatMap((a) => a.holes.filter((h) => h.hole === hole))[0];

it('a second look falls when its hole is changed, and only there', () => {
  const s = reopened();
  expect(holeIn(s, 'mount/1')?.looked?.who).toBe('Bo');
  s.call('slacken', { hole: 'mount/1' });
  expect(holeIn(s, 'mount/1')).toMatchObject({ open: 'slack', passes: [] });
  expect(holeIn(s, 'mount/1')?.looked).toBeUndefined();
  expect(text(s)).toContain('second look 2; 2026-11-25 07:22 by Bo');
});

it('a leak check falls when a hose of its circuit is parted', () => {
  const s = reopened();
  expect(text(s)).not.toContain('WHICH NO LONGER STANDS');
  s.call('part-connection', { connection: 'bottom hose' });
  expect(text(s)).toContain(
    'leak-checked after running (cold, 1 min after the start) 2026-11-25 07:21, WHICH NO LONGER STANDS',
  );
});

it('a filling says what was filled then, not what an earlier one measured', () => {
  const s = reopened().call('drain', { circuit: 'coolant' });
  expect(text(s)).toContain('NOT FILLED');
  s.call('fill-fluid', { circuit: 'coolant', fluid: 'water' });
  expect(facts(s).circuits[0]?.filled).toMatchObject({ fluid: 'water' });
  expect(facts(s).circuits[0]?.filled).not.toHaveProperty('litres');
});

it('companions and dry holes fall when their area is opened, and a bead when its face is', () => {
  const s = reopened();
  expect(facts(s).areas[0]).toMatchObject({ area: 'pump', companions: { seen: ['dowel', 'O-ring'] } });
  for (const hole of ['pump/1', 'pump/2']) s.call('slacken', { hole });
  expect(facts(s).areas[0]).not.toHaveProperty('companions');
  expect(facts(s).areas[0]).not.toHaveProperty('blindHolesDry');
  expect(text(s)).toContain('VOID: opened again');
});

it('a check rotation falls when its drive is opened, and its tries stay told', () => {
  const s = reopened().call('remove-part', { part: 'belt' });
  expect(text(s)).toContain('timing belt: NO CHECK ROTATION STANDS');
  expect(facts(s).drives[0]?.tries.map((t) => t.result)).toEqual(['failed', 'passed']);
});

it('a part that comes off again is judged anew; what was renewed stays told with its own verdict', () => {
  const s = reopened()
    .call('remove-part', { part: 'belt' })
    .call('fill-box', { name: 'second belt', replaces: 'belt' })
    .call('replace-part', { part: 'belt', verdict: 'cracked' });
  expect(facts(s).parts.renewed.map(({ from, old }) => [from, old?.verdict])).toEqual([
    ['new pump', 'leaking'],
    ['new belt', 'worn'],
    ['second belt', 'cracked'],
  ]);
  s.call('remove-part', { part: 'belt' });
  expect(text(s)).toContain('- OFF: belt ');
  expect(facts(s).parts.off).toEqual([{ part: 'belt' }]);
});

it('a bind stops a try, and its cause is told', () => {
  const s = reopened()
    .call('remove-part', { part: 'belt' })
    .call('fit-part', { part: 'belt' })
    .call('tensioner-live', { drive: 'timing belt' })
    .call('turn-crank', { drive: 'timing belt', quarters: 1 })
    .call('feel-bind', { drive: 'timing belt' })
    .call('explain-bind', { drive: 'timing belt', cause: 'socket against the rail' });
  expect(text(s)).toContain('0.25 turns; FAILED: bind felt, cause: socket against the rail');
});

it('[T5] says of a leak check how soon after the start it was called, where that was too soon to show one', () => {
  const checked = (minutes: number, how = 'after running') =>
    text(reopened().call('start-engine').later(minutes).call('check-leaks', { circuit: 'coolant', how }));
  expect(checked(2)).toMatch(/leak-checked after running \(cold, 3 min after the start\) 2026/);
  expect(checked(4)).toMatch(/leak-checked after running 2026/);
  expect(checked(0, 'under pressure')).toMatch(/leak-checked under pressure 2026/);
});

it('what does not fit what was there is counted and changes nothing', () => {
  const s = reopened().forged({ kind: 'part-replaced', part: 'bracket', from: 'thin air' });
  expect(facts(s).parts.renewed).toHaveLength(2);
  expect(text(s)).toContain('1 THAT DO NOT FIT WHAT WAS THERE');
});
