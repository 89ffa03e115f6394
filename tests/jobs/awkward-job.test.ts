// The awkward job to release, every line of it, and each of its lines left out.
import { describe, expect, it } from 'vitest';
import { decide } from '../../src/job/decide.ts';
import { every, type Ledger, stateOf } from '../../src/job/ledger.ts';
import { openPoints } from '../../src/job/open-points.ts';
import type { Said } from '../../src/job/said.ts';
import { awkwardJob } from './awkward-job.ts';
import { play, playUntil, without } from './play.ts';

const script = awkwardJob();
const job = play(script);
const { ledger } = job;

const spec = (at: Ledger, hole: string) => stateOf(at, 'hole', hole)?.called.occupant?.spec;
const stepOf = (verb: string) => job.called.find(({ said }) => said.verb === verb)?.step;
const released = (at: Ledger) => (stateOf(at, 'vehicle', 'vehicle')?.releasedAt ?? 0) > 0;
const refusal = (at: ReturnType<typeof play>, said: Said) => {
  const answer = decide(at.ledger, said, { ...at.now, atMs: at.now.atMs + 1000, awakeMs: at.now.awakeMs + 1000 });
  return 'refused' in answer ? answer.refused : undefined;
};

describe('the awkward job', () => {
  it('is played whole with no call refused and none overridden, and leaves released', () => {
    expect(job.refused.map(({ said, refusal: no }) => [said, no.because])).toEqual([]);
    expect(job.overridden).toBe(0);
    expect(released(ledger)).toBe(true);
    expect(openPoints(ledger, job.now)).toEqual([]);
  });

  it('a sump plug with crush washer: both come off at one call, a new washer goes in', () => {
    const removed = ledger.lines.all.find((line) =>
      line.entries.some((e) => e.kind === 'fastener-removed' && e.hole === 'sump plug/1'),
    );
    expect(removed?.entries.filter((e) => e.kind === 'fastener-removed').map((e) => e.hole)).toEqual([
      'sump plug/1',
      'sump plug/1 washer',
    ]);
    const washer = stateOf(ledger, 'hole', 'sump plug/1 washer')?.called.occupant;
    expect(stateOf(ledger, 'fastener', washer?.fastener ?? '')?.origin).toBe('box:new sump washer');
    const before = playUntil(script, 'resume');
    expect(refusal(before, { verb: 'fit', hole: 'sump plug/1 washer' })?.rule).toMatch(/L6|L7/);
  });

  it('a stud that comes out with its nut goes back with it', () => {
    const off = playUntil(script, 'resume').ledger;
    expect([...every(off, 'fastener')].filter((f) => f.origin.startsWith('hole:exhaust flange/2'))).toMatchObject([
      { origin: 'hole:exhaust flange/2 stud', place: 'tray:3' },
      { origin: 'hole:exhaust flange/2', place: 'tray:3' },
    ]);
    expect(spec(ledger, 'exhaust flange/2')?.kind).toBe('nut');
    expect(spec(ledger, 'exhaust flange/2 stud')?.kind).toBe('stud');
  });

  it('captive bolts are kept in their cover, and are counted there', () => {
    expect(stateOf(playUntil(script, 'resume').ledger, 'tray', 'belt cover')?.contents).toHaveLength(4);
    expect(stateOf(ledger, 'tray', 'belt cover')).toMatchObject({ contents: [], counted: { count: 0 } });
  });

  it('a castle nut takes a new split pin', () => {
    const pin = stateOf(ledger, 'hole', 'ball joint/1 pin')?.called.occupant;
    expect(stateOf(ledger, 'fastener', pin?.fastener ?? '')?.origin).toBe('box:new split pin');
    expect(stateOf(ledger, 'hole', 'ball joint/1')?.called.passes.at(-1)?.method?.by).toBe('castle');
  });

  it('two bolts equal in every field change places between areas', () => {
    const where = [...every(ledger, 'fastener')]
      .filter((f) => /(coil|hose) bracket/.test(f.origin))
      .map((f) => `${f.origin} in ${f.place}`);
    expect(where).toContain('hole:hose bracket/1 in hole:coil bracket/1');
    expect(where).toContain('hole:coil bracket/1 in hole:hose bracket/2');
    expect(where).toHaveLength(4);
  });

  it('one dropped into the belt bay is no lost one once the magnet has found it', () => {
    const lost = playUntil(script, 'search');
    const id = [...every(lost.ledger, 'fastener')].find((f) => f.place === 'lost')?.id ?? '';
    expect(refusal(lost, { verb: 'rule-out-loss', lost: id, who: 'me', because: 'gone' })?.rule).toBe('L9');
    expect([...every(ledger, 'fastener')].filter((f) => f.loss)).toEqual([]);
  });

  it('one broken with a piece left in: the head and the piece are booked by themselves', () => {
    const broken = playUntil(script, 'wait').ledger;
    expect(openPoints(broken, job.now).filter((p) => p.at === 'hole:manifold/3')).toMatchObject([
      { because: 'a broken piece is in it' },
    ]);
    expect([...every(ledger, 'piece')].map((p) => p.place)).toEqual(['scrap']);
    expect(spec(ledger, 'manifold/3')?.class).toBe('8.8');
  });

  it('a wheel on for now lets the car be moved, and is not on', () => {
    const moved = playUntil(script, 'move-car');
    expect(
      openPoints(moved.ledger, moved.now)
        .filter((p) => p.code === 'for-now')
        .map((p) => p.at),
    ).toEqual([...[1, 2, 3, 4, 5].map((n) => `hole:left front wheel/${n}`), 'part:wheel']);
  });

  it('a job waiting three days for parts is named as waiting', () => {
    const waiting = playUntil(script, 'resume');
    expect(openPoints(waiting.ledger, waiting.now).filter((p) => p.code === 'waiting')).toHaveLength(1);
    const wait = waiting.ledger.lines.all.findLast((line) => line.call === 'wait');
    expect(waiting.now.atMs - (wait?.atMs ?? 0)).toBe(72 * 3_600_000);
  });

  it('a front caliper off: the car does not move before the pedal is firm', () => {
    expect(refusal(playUntil(script, 'pedal-firm'), { verb: 'move-car' })).toMatchObject({ rule: 'T7' });
    expect(refusal(playUntil(script, 'move-car'), { verb: 'move-car' })).toBeUndefined();
  });

  it('a face with two beads of different kinds waits for both', () => {
    const beads = stateOf(ledger, 'face', 'timing case face')?.beads ?? [];
    expect(beads.map((b) => b.label.kind)).toEqual(['moisture', 'anaerobic']);
  });

  it("the label's time is too short for a 6 \u00b0C bench", () => {
    const oil: Said = { verb: 'fill-fluid', circuit: 'engine oil' };
    const toFill = script.slice(0, stepOf('fill-fluid'));
    // The hours at the bench are the last step before it is filled: made as many as on the label, two.
    const atLabelTime = play([...toFill.slice(0, -1), { minutes: 2 * 60 }]);
    expect(refusal(atLabelTime, oil)).toMatchObject({ rule: 'S5' });
    expect(refusal(play(toFill), oil)).toBeUndefined();
    const toStart = script.slice(0, stepOf('start-engine'));
    // Seven hours after the bead, three past the label's time to run.
    expect(refusal(play(without(toStart, closedSteps(1))), { verb: 'start-engine' })).toMatchObject({
      rule: 'S5',
      code: 'bead-not-ready',
    });
    expect(refusal(play(toStart), { verb: 'start-engine' })).toBeUndefined();
  });

  it('a bolt called at 7 that was 8, found after the rotation: the check is void and made again', () => {
    const found = playUntil(script, 'state-wants');
    expect(openPoints(found.ledger, found.now).map((p) => p.code)).toContain('rotation-needed');
    const before = playUntil(script, 'exchange-holes');
    expect(openPoints(before.ledger, before.now).map((p) => p.code)).not.toContain('rotation-needed');
    expect(stateOf(ledger, 'hole', 'idler plate/7')?.called.touchedAt).toBe(0);
    expect(spec(ledger, 'idler plate/8')?.lengthMm).toBe(30);
    expect(stateOf(ledger, 'drive', 'belt drive')?.tries.map((t) => t.passedAt > 0)).toEqual([true, true]);
  });

  it('[K4] one bolt never called off at all shows in the count of the holes', () => {
    const all = script.map((_, step) => step);
    const late = new Set(all.slice(job.called.find(({ said }) => said.hole === 'splash guard/6')?.step));
    const before = play(without(script, late));
    expect(openPoints(before.ledger, before.now).filter((p) => p.at === 'area:splash guard')).toMatchObject([
      { code: 'holes-not-counted', because: '6 holes counted by eye, 5 called' },
    ]);
  });
});

/** The program closed, the n-th time. */
function closedSteps(nth: number): Set<number> {
  const steps = script.flatMap((step, i) => (typeof step === 'object' && 'closedHours' in step ? [i] : []));
  return new Set([steps[nth] as number]);
}

describe('a line of the awkward job left out', () => {
  const of =
    (verb: string, fields: object = {}) =>
    (said: Said) =>
      said.verb === verb && Object.entries(fields).every(([name, value]) => said[name] === value);
  const lines: [string, (said: Said) => boolean, string][] = [
    ['the new crush washer', of('fit', { hole: 'sump plug/1 washer' }), 'hole:sump plug/1 washer'],
    ['the stud seen to come with its nut', of('find-fastener', { hole: 'exhaust flange/2 stud' }), 'drive:belt drive'],
    ['the captive bolts back', (said) => said.verb === 'fit' && /^belt cover/.test(`${said.hole}`), 'tray:belt cover'],
    ['the new split pin', of('fit', { hole: 'ball joint/1 pin' }), 'hole:ball joint/1 pin'],
    ['the trade', of('fit', { hole: 'coil bracket/1' }), 'hole:coil bracket/1'],
    ['what the magnet found', of('move-fastener', { to: 'tray:2' }), 'hole:hose bracket/2'],
    ['the piece drawn', of('move-piece'), 'hole:manifold/3'],
    [
      'the wheel taken off again',
      (said) => said.verb === 'remove' && /front wheel/.test(`${said.hole}`) && !said.spec,
      'hole:left front wheel/1',
    ],
    ['coming back', of('resume'), 'vehicle'],
    ['the pedal', of('pedal-firm'), 'vehicle'],
    ['both beads', of('lay-bead'), 'face:timing case face'],
    ['the cold bench', of('note-conditions'), 'face:timing case face'],
    ['that 7 was 8', of('exchange-holes'), 'hole:idler plate/7'],
    ['the bolt never called', of('remove', { hole: 'splash guard/6' }), 'area:splash guard'],
  ];

  it.each(lines)('%s: release stops and its place is named', (_, leftOut, place) => {
    const steps = new Set(job.called.filter(({ said }) => leftOut(said)).map(({ step }) => step));
    expect(steps.size).toBeGreaterThan(0);
    const short = play(without(script, steps));
    expect(released(short.ledger)).toBe(false);
    expect(openPoints(short.ledger, short.now).map((p) => p.at)).toContain(place);
  });
});
