// The reference job from first bolt to release, from its plan and free, with the sums it must end with.
import { describe, expect, it } from 'vitest';
import { books } from '../../src/job/books.ts';
import { every, stateOf, tallyOf } from '../../src/job/ledger.ts';
import { specText } from '../../src/job/spec.ts';
import { areaOf } from '../../src/job/subjects.ts';
import { referencePlan } from './plan-of-reference.ts';
import { type Played, play } from './play.ts';
import { freeReferenceJob, plannedReferenceJob } from './reference-job.ts';
import { standingOf } from './standing.ts';

const jobs: [string, Played][] = [
  ['from its plan', play(plannedReferenceJob(referencePlan()))],
  ['free, areas made on the spot', play(freeReferenceJob())],
];

describe.each(jobs)('the reference job %s', (_, job) => {
  const { ledger, now } = job;

  it('needs no call refused and none overridden, and leaves released', () => {
    expect(job.refused.map(({ said, refusal }) => [said, refusal.because])).toEqual([]);
    expect(job.overridden).toBe(0);
    expect(stateOf(ledger, 'vehicle', 'vehicle')?.releasedAt).toBe(ledger.lines.length);
    expect(standingOf(ledger, now).openPoints).toEqual([]);
  });

  it('ends with 44 off = 42 back + 2 scrapped, and 3 new + 2 slack made tight + 42 = 47 closed', () => {
    const all = [...every(ledger, 'fastener')];
    const own = all.filter((f) => f.origin.startsWith('hole:'));
    const cameOff = own.filter((f) => f.everOff);
    expect(own).toHaveLength(46);
    expect(cameOff).toHaveLength(44);
    expect(books(ledger).everOff).toBe(44);
    expect(cameOff.filter((f) => f.place.startsWith('hole:'))).toHaveLength(42);
    const scrapped = cameOff.filter((f) => f.place === 'scrap').map((f) => specText(f.spec));
    expect(scrapped.sort()).toEqual(['bolt hex 17 M10x1.25x50 8.8', 'bolt hex 19 M14x1.5x65 one-use']);
    const fresh = all.filter((f) => f.origin.startsWith('box:'));
    expect(fresh.map((f) => f.place).sort()).toEqual([
      'hole:crank pulley/1',
      'hole:lower belt cover/4',
      'hole:mount bracket/3',
    ]);
    const slackOnly = own.filter((f) => !f.everOff).map((f) => f.place);
    expect(slackOnly).toEqual(['hole:mount bracket/4', 'hole:mount bracket/5']);
    expect(ledger.tallies.all).toMatchObject({ holes: 47, touched: 47, closed: 47, open: 0, off: 0, slack: 0 });
  });

  it('has 9 areas of 5 7 5 1 5 6 2 6 10 holes, 13 parts of which 6 renewed, 7 connections, 6 temporaries', () => {
    const areas = [...every(ledger, 'area')].map((a) => [a.area, tallyOf(ledger, a.area).closed]);
    expect(Object.fromEntries(areas)).toEqual({
      'right front wheel': 5,
      'arch liner': 7,
      'mount bracket': 5,
      'crank pulley': 1,
      'upper belt cover': 5,
      'lower belt cover': 6,
      'tensioner and idler': 2,
      'coolant pump': 6,
      'cam cover': 10,
    });
    const parts = [...every(ledger, 'part')];
    expect(parts).toHaveLength(13);
    expect(parts.filter((p) => p.replacedAt > 0)).toHaveLength(6);
    expect(parts.every((p) => p.removedAt > 0 && !p.off)).toBe(true);
    expect([...every(ledger, 'connection')].filter((c) => c.partedAt > 0 && c.madeAt > c.partedAt)).toHaveLength(7);
    expect([...every(ledger, 'temporary')].filter((t) => !t.in)).toHaveLength(6);
    expect([...every(ledger, 'finding')]).toHaveLength(3);
    expect([...every(ledger, 'box')].map((b) => b.left)).toEqual(Array(11).fill(0));
  });

  it('does not put the old crank bolt back, which was a working bolt in between', () => {
    const bolt = stateOf(ledger, 'hole', 'crank pulley/1')?.called.occupant;
    expect(bolt?.level).toBe('tight');
    expect(stateOf(ledger, 'fastener', bolt?.fastener ?? '')?.origin).toBe('box:new crank bolt');
    const scrapped = ledger.lines.all.flatMap((line) => line.entries).filter((e) => e.kind === 'fastener-fitted');
    expect(scrapped.filter((e) => e.working).map((e) => e.hole)).toEqual(['crank pulley/1']);
  });
});

describe('the two jobs', () => {
  const [planned, free] = jobs.map(([, job]) => standingOf(job.ledger, job.now));

  it('[P1] stand equal at the end, clock aside', () => {
    expect(free).toEqual(planned);
  });

  it('differ in that only one was declared beforehand', () => {
    const declaredBy = (job: Played) =>
      [...every(job.ledger, 'area')].filter((a) => a.declared?.planned).map((a) => areaOf(`${a.area}/1`));
    expect(declaredBy(jobs[0]?.[1] as Played)).toHaveLength(9);
    expect(declaredBy(jobs[1]?.[1] as Played)).toHaveLength(0);
  });
});
