// T8: a job that waits, and what is said first on return to it.
import { describe, expect, it } from 'vitest';
import { whatHangs } from '../../src/job/what-hangs.ts';
import { type Bench, bench, m6, m8 } from './bench.ts';

const label = {
  product: 'grey',
  kind: 'moisture',
  skinMinutes: 15,
  fullHours: 24,
  labelCelsius: 23,
  labelHumidityPct: 50,
} as const;

const said = (on: Bench) => whatHangs(on.ledger(), on.now());
const kinds = (on: Bench) => said(on).map((one) => `${one.what} ${one.at}`);
const words = (on: Bench, at: string) => said(on).find((one) => one.at === at)?.words;

/** A sealed cover put together, its bead curing. */
function sealed(on: Bench): void {
  on.declare({ kind: 'face-declared', face: 'sump', area: 'sump', pressedBy: ['sump/1'], keepsIn: [], bead: true });
  on.call('note-conditions', { celsius: 23, humidityPct: 50 });
  on.off('sump/1', m6);
  on.count('sump', 1);
  on.call('clean-face', { face: 'sump' });
  on.call('lay-bead', { face: 'sump', label });
  on.back('sump/1');
  on.tight('sump/1');
}

describe('a job that waits', () => {
  it('[T8] says for whom, why and until when, and is an open point until it goes on', () => {
    const on = bench();
    expect(on.refused('resume')).toBe('T8 not-waiting');
    expect(on.refused('wait', { who: 'supplier' })).toBe('L1 badly-said');
    on.call('wait', { who: 'supplier', because: 'bolts on order', until: 'Thursday' });
    expect(on.open('waiting')).toEqual(['waiting vehicle']);
    expect(said(on)).toEqual([
      {
        what: 'waits',
        at: 'vehicle',
        words: 'waiting for supplier: bolts on order, until Thursday',
        waiting: { who: 'supplier', until: 'Thursday' },
      },
    ]);
    on.call('resume');
    expect(on.open('waiting')).toEqual([]);
    expect(said(on)).toEqual([]);
  });

  it('[T8] waits without a day where none was said, and work may go on meanwhile', () => {
    const on = bench();
    on.call('wait', { who: 'owner', because: 'to ring back' });
    expect(words(on, 'vehicle')).toBe('waiting for owner: to ring back');
    on.off('cover/1', m6);
    expect(on.open('waiting')).toHaveLength(1);
  });
});

describe('on return', () => {
  it('[T8] first what is only snug, then what is on for now, what cures, what hangs', () => {
    const on = bench();
    on.call('wait', { who: 'supplier', because: 'bolts on order' });
    on.declare({ kind: 'part-declared', part: 'pump', heldBy: [] });
    on.call('remove-part', { part: 'pump' });
    on.off('cover/1', m6);
    on.call('lose-fastener', { fastener: on.own('cover/1'), reaches: true, where: 'belt bay' });
    on.call('put-in', { temporary: 'jack', sort: 'jack' });
    on.call('part-connection', { connection: 'earth' });
    on.call('drain', { circuit: 'coolant' });
    sealed(on);
    on.off('guard/1', m8);
    on.count('guard', 1);
    on.back('guard/1', { forNow: true });
    on.slack('mount/4', m8);
    on.snug('mount/4');
    on.away(60);
    expect(kinds(on)).toEqual([
      'snug hole:mount/4',
      'for-now hole:guard/1',
      'cures face:sump',
      'waits vehicle',
      `lost fastener:${on.own('cover/1')}`,
      'part-off part:pump',
      'in temporary:jack',
      'parted connection:earth',
      'drained circuit:coolant',
    ]);
  });

  it('[T8] nothing is said of a job that waits for nothing', () => {
    const on = bench();
    on.off('cover/1', m6);
    on.slack('cover/2', m6);
    on.call('find-fastener', { hole: 'cover/3', spec: m6 });
    expect(kinds(on)).toEqual([]);
  });

  it('[T8] snug: with when its final is due, gone once tight, and not said again where it is on for now', () => {
    const on = bench();
    on.declare({ kind: 'hole-declared', hole: 'mount/4', later: 'on-wheels' });
    on.slack('mount/4', m8);
    on.snug('mount/4');
    on.off('guard/1', m8);
    on.count('guard', 1);
    on.back('guard/1', { forNow: true });
    on.snug('guard/1');
    expect(words(on, 'hole:mount/4')).toBe('mount 4 is only snug, final on its wheels');
    expect(kinds(on)).toEqual(['snug hole:mount/4', 'for-now hole:guard/1']);
    on.tight('mount/4');
    expect(kinds(on)).toEqual(['for-now hole:guard/1']);
    on.call('make-final', { hole: 'guard/1' });
    expect(words(on, 'hole:guard/1')).toBe('guard 1 is only snug');
  });

  it('[T8] on for now: fasteners, parts and connections; a working fastener is said too', () => {
    const on = bench();
    on.off('nose/1', m8);
    on.count('nose', 1);
    on.back('nose/1', { working: true });
    on.call('remove-part', { part: 'wheel', heldBy: [] });
    on.call('fit-part', { part: 'wheel', forNow: true });
    on.call('part-connection', { connection: 'earth' });
    on.call('make-connection', { connection: 'earth', forNow: true });
    expect(said(on).map((one) => one.words)).toEqual([
      'nose 1 holds a working fastener',
      'wheel is on for now',
      'earth is made for now',
    ]);
  });

  it('[T8] what cures: how far, and what time away waits for the clock to be called right; done, it is not said', () => {
    const on = bench();
    sealed(on);
    on.away(10);
    const [bead] = said(on);
    expect(bead).toMatchObject({ what: 'cures', words: 'grey on sump is curing' });
    expect(bead?.bead?.earnedHours).toBeLessThan(0.1);
    expect(bead?.bead?.awayHours).toBeCloseTo(10, 1);
    on.away(20);
    on.call('confirm-clock');
    expect(kinds(on)).toEqual([]);
  });

  it('[T8] a bead that skinned while nobody looked is said as void', () => {
    const on = bench();
    on.declare({ kind: 'face-declared', face: 'sump', area: 'sump', pressedBy: ['sump/1'], keepsIn: [] });
    on.off('sump/1', m6);
    on.count('sump', 1);
    on.call('clean-face', { face: 'sump' });
    on.call('lay-bead', { face: 'sump', label });
    expect(words(on, 'face:sump')).toBe('grey on sump is laid, and the face is not together');
    on.away(1);
    expect(words(on, 'face:sump')).toBe('sump: the bead is void: skinned before it was together');
    on.call('clean-face', { face: 'sump' });
    expect(kinds(on)).toEqual([]);
  });

  it('[T8] what hangs: pieces lost as well, until they are found or ruled out', () => {
    const on = bench();
    const n = on.call('break', { hole: 'manifold/2', headTo: 'scrap', pieces: ['lost'], spec: m8 });
    expect(kinds(on)).toEqual([`lost piece:p${n}.1`]);
    expect(words(on, `piece:p${n}.1`)).toBe('a broken piece is lost, can reach the works');
    on.call('search', { lost: `p${n}.1`, how: 'magnet' });
    on.call('rule-out-loss', { lost: `p${n}.1`, who: 'Ann', because: 'on the floor' });
    expect(kinds(on)).toEqual([]);
  });
});
