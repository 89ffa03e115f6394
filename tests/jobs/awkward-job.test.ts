// The awkward job by call lines to release: a test for each thing that goes otherwise than a plan would have it.
import { describe, expect, it } from 'vitest';
import { every, type Ledger, stateOf } from '../../src/job/ledger.ts';
import { openPoints } from '../../src/job/open-points.ts';
import { isReleased } from './leave-one-out.ts';
import { linesOf, type PlayedLines, playLines, refusalOf, scriptLines, upTo } from './lines.ts';

const script = scriptLines('awkward.calls');
const job = playLines(script);
const { ledger } = job;

/** The job as it stood before a line was said. */
const at = (text: string, nth?: number) => playLines(upTo(script, text, nth));
const occupant = (of: Ledger, hole: string) => stateOf(of, 'hole', hole)?.called.occupant;
const originIn = (hole: string) => stateOf(ledger, 'fastener', occupant(ledger, hole)?.fastener ?? '')?.origin;
const openAt = ({ ledger: of, now }: PlayedLines, place: string) =>
  openPoints(of, now)
    .filter((p) => p.at === place)
    .map((p) => p.code);

describe('the awkward job', () => {
  it('[X1] is taken whole with no line refused and none overridden, and leaves released', () => {
    expect(job.refused).toEqual([]);
    expect(linesOf(ledger).filter((line) => line.overrides)).toEqual([]);
    expect(isReleased(job)).toBe(true);
    expect(openPoints(ledger, job.now)).toEqual([]);
  });

  it('[L7] a sump plug with crush washer: both come off at one call, and only a new washer goes in', () => {
    const removed = linesOf(ledger).flatMap(({ entries }) => {
      const holes = entries.flatMap((e) => (e.kind === 'fastener-removed' ? e.hole : []));
      return holes.includes('sump plug/1') ? [holes] : [];
    });
    expect(removed).toEqual([['sump plug/1', 'sump plug/1 washer']]);
    const oldOne = refusalOf(upTo(script, 'new 1 washer from new sump washer'), 'back 1 washer');
    expect(oldOne?.because).toContain('one-use, and it was tight before');
    expect(originIn('sump plug/1 washer')).toBe('box:new sump washer');
  });

  it('[L1] a stud that comes out with its nut: two fasteners at one call, and at one call back', () => {
    const off = at('part off front pipe held by 1-3').ledger;
    expect([...every(off, 'fastener')].filter((f) => f.origin.startsWith('hole:exhaust flange/2'))).toMatchObject([
      { origin: 'hole:exhaust flange/2 stud', place: 'tray:3' },
      { origin: 'hole:exhaust flange/2', place: 'tray:3' },
    ]);
    expect(occupant(ledger, 'exhaust flange/2')).toMatchObject({ level: 'tight', spec: { kind: 'nut' } });
    expect(occupant(ledger, 'exhaust flange/2 stud')).toMatchObject({ level: 'tight', spec: { kind: 'stud' } });
  });

  it('[K1] captive bolts kept in a cover are in a tray of that name, and are counted there', () => {
    expect(stateOf(at('resumed').ledger, 'tray', 'belt cover')?.contents).toHaveLength(4);
    expect(refusalOf(upTo(script, 'count belt cover is 4'), 'turned 2')).toMatchObject({ rule: 'K1' });
    expect(stateOf(ledger, 'tray', 'belt cover')).toMatchObject({ contents: [], counted: { count: 0 } });
  });

  it('[O4 L7] a castle nut takes a new split pin', () => {
    expect(originIn('ball joint/1 pin')).toBe('box:new split pin');
    expect(stateOf(ledger, 'hole', 'ball joint/1')?.called.passes.at(-1)?.method?.by).toBe('castle');
    expect(openAt(at('new 1 pin from new split pin'), 'hole:ball joint/1 pin')).toEqual(['hole-open', 'second-look']);
  });

  it('[L6] two bolts equal in every field, in different areas, are traded and nobody is asked', () => {
    const [traded] = at('back hose bracket 1').ledger.lines.all.slice(-1);
    expect(traded?.entries).toMatchObject([{ kind: 'fastener-fitted', hole: 'coil bracket/1', from: 'tray:2' }]);
    expect(originIn('coil bracket/1')).toBe('hole:hose bracket/1');
    const holes = ['coil bracket/1', 'coil bracket/2', 'hose bracket/1', 'hose bracket/2'];
    expect(holes.map((hole) => originIn(hole)).sort()).toEqual(holes.map((hole) => `hole:${hole}`));
    expect(holes.every((hole) => occupant(ledger, hole)?.level === 'tight')).toBe(true);
  });

  it('[L9] one dropped into the belt bay: no statement closes it before the search; the magnet finds it', () => {
    const dropped = upTo(script, 'searched hose bracket 2 by magnet');
    expect(refusalOf(dropped, 'ruled out hose bracket 2 by me because gone')?.rule).toBe('L9');
    expect(openPoints(playLines(dropped).ledger, job.now)).toContainEqual(
      expect.objectContaining({ code: 'lost', because: expect.stringContaining('belt bay, can reach the works') }),
    );
    expect([...every(ledger, 'fastener')].filter((f) => f.loss)).toEqual([]);
  });

  it('[L10] one broken with a piece left in: head and piece are booked by themselves', () => {
    const broken = at('part off manifold held by 1-3');
    expect(openPoints(broken.ledger, broken.now).filter((p) => p.at === 'hole:manifold/3')).toMatchObject([
      { because: 'a broken piece is in it' },
    ]);
    expect([...every(broken.ledger, 'piece')].map((p) => p.place)).toEqual(['hole:manifold/3']);
    expect([...every(ledger, 'piece')].map((p) => p.place)).toEqual(['scrap']);
    expect(originIn('manifold/3')).toBe('box:new manifold bolt');
  });

  it('[T7] a wheel on for now to move the car, which is not on', () => {
    const moved = at('moved by hand');
    const forNow = openPoints(moved.ledger, moved.now).filter((p) => p.code === 'for-now');
    expect(forNow.map((p) => p.at)).toEqual(
      [1, 2, 3, 4, 5].map((n) => `hole:left front wheel/${n}`).concat('part:wheel'),
    );
    expect(refusalOf(upTo(script, 'pass', 3), 'out stand')?.rule).toMatch(/T1|T7/);
  });

  it('[T8] a job waiting three days for parts and coming back', () => {
    const waiting = at('resumed');
    expect(openAt(waiting, 'vehicle')).toContain('waiting');
    const wait = linesOf(waiting.ledger).find((line) => line.call === 'waiting');
    expect(Math.floor((waiting.now.atMs - (wait?.atMs ?? 0)) / 3_600_000)).toBe(72);
    expect(openAt(playLines(upTo(script, 'area belt cover', 2)), 'vehicle')).not.toContain('waiting');
  });

  it('[T7] a front caliper off: the car does not move before the pedal is firm', () => {
    expect(refusalOf(upTo(script, 'pedal firm'), 'moved by hand')).toMatchObject({ rule: 'T7' });
    expect(refusalOf(upTo(script, 'moved by hand'), 'moved by hand')).toBeUndefined();
  });

  it('[S1] a face with two beads of different kinds wants both', () => {
    const beads = stateOf(ledger, 'face', 'timing case face')?.beads ?? [];
    expect(beads.map((b) => b.label.kind)).toEqual(['moisture', 'anaerobic']);
    expect(openAt(at('bead timing case face with flange sealant'), 'face:timing case face')).toContain('bead-missing');
  });

  it("[S4 S5] the label's time is too short for a 6 \u00b0C bench", () => {
    const filling = 'filled engine oil litres 4.2';
    const toFill = upTo(script, filling);
    // The hours at the bench come last before it is filled: here made as many as on the label, two.
    const [hours] = toFill.slice(-1);
    const asOnTheLabel = toFill.map((line) =>
      line === hours ? { ...line, call: false, minutes: 120, closed: false } : line,
    );
    expect(refusalOf(asOnTheLabel as typeof toFill, filling)?.rule).toBe('S5');
    expect(refusalOf(toFill, filling)).toBeUndefined();
    // Without the night, seven hours after the bead and three past the label's time to run.
    const noNight = upTo(script, 'start').filter((line) => line.text !== '#@ closed 15 h');
    expect(refusalOf(noNight, 'start')?.rule).toBe('S5');
    expect(refusalOf(upTo(script, 'start'), 'start')).toBeUndefined();
  });

  it('[U3 R6] a bolt called at 7 that was 8, found two days after the rotation: put right, and turned over again', () => {
    const was = script.find((line) => line.call && line.text.startsWith('was idler plate 7'))?.text ?? '';
    const unaware = at(was);
    expect(openAt(unaware, 'drive:belt drive')).toEqual([]);
    expect(unaware.now.atMs - (linesOf(unaware.ledger).at(-1)?.atMs ?? 0)).toBe(48 * 3_600_000);
    const putRight = at('wants idler plate 7 bolt hex 12 M8x22 8.8 because as its neighbours');
    expect(openAt(putRight, 'drive:belt drive')).toEqual(['rotation-needed']);
    expect(stateOf(ledger, 'drive', 'belt drive')?.tries.map((t) => t.passedAt > 0)).toEqual([true, true]);
    expect(stateOf(ledger, 'hole', 'idler plate/7')?.called.touchedAt).toBe(0);
    expect(occupant(ledger, 'idler plate/8')).toMatchObject({ level: 'tight', spec: { lengthMm: 30 } });
  });

  it('[K4] one bolt never called off at all shows in the count of the holes, and nowhere else', () => {
    const found = at('off 6', 3);
    const guard = openPoints(found.ledger, found.now).filter((p) => p.at.includes('splash guard'));
    expect(guard).toMatchObject([{ at: 'area:splash guard', because: '6 holes counted by eye, 5 called' }]);
    expect(openAt(found, 'area:splash guard')).toEqual(['holes-not-counted']);
  });
});
