// The reference job from first bolt to release, from its plan and free, with the sums it must end with.
import { describe, expect, it } from 'vitest';
import { books } from '../../src/job/books.ts';
import { every, stateOf, tallyOf } from '../../src/job/ledger.ts';
import { specText } from '../../src/job/spec.ts';
import { isReleased } from './leave-one-out.ts';
import { linesOf, type PlayedLines, playLines, refusalOf, scriptLines, upTo } from './lines.ts';
import { standingOf } from './standing.ts';

const jobs: [string, PlayedLines][] = [
  ['free, areas made on the spot', playLines(scriptLines('reference-free.calls'))],
  ['from its plan', playLines(scriptLines('reference-planned.calls'))],
];

describe.each(jobs)('the reference job %s', (_, job) => {
  const { ledger, now } = job;
  const entries = linesOf(ledger).flatMap((line) => line.entries);

  it('[X1] has no line refused and none overridden, and leaves released', () => {
    expect(job.refused).toEqual([]);
    expect(linesOf(ledger).filter((line) => line.overrides)).toEqual([]);
    expect(isReleased(job)).toBe(true);
    expect(stateOf(ledger, 'vehicle', 'vehicle')?.releasedAt).toBe(ledger.lines.length);
    expect(standingOf(ledger, now).openPoints).toEqual([]);
  });

  it('[L12] ends with 44 off = 42 back + 2 scrapped, and 3 new + 2 slack made tight + 42 = 47 closed', () => {
    const all = [...every(ledger, 'fastener')];
    const own = all.filter((f) => f.origin.startsWith('hole:'));
    const cameOff = own.filter((f) => f.everOff);
    expect(own).toHaveLength(46);
    expect(cameOff).toHaveLength(44);
    expect(books(ledger).everOff).toBe(44);
    expect(books(ledger).flow.job).toEqual({ refitted: 42, scrap: 2 });
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

  it('has 9 areas of 5 7 5 1 5 6 2 6 10 holes', () => {
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
  });

  it('has 13 parts of which 6 renewed, 7 connections, 6 temporaries, 11 lots of the parts box used up', () => {
    const parts = [...every(ledger, 'part')];
    const named = (renewed: boolean) => parts.filter((p) => p.replacedAt > 0 === renewed).map((p) => p.part);
    expect(named(true).sort()).toEqual(['auxiliary belt', 'gasket', 'idler', 'pump', 'tensioner', 'timing belt']);
    expect(named(false).sort()).toEqual([
      'bracket',
      'cam cover',
      'liner',
      'lower cover',
      'pulley',
      'right wheel',
      'upper cover',
    ]);
    expect(parts.every((p) => p.removedAt > 0 && !p.off)).toBe(true);
    const connections = [...every(ledger, 'connection')].filter((c) => c.partedAt > 0 && c.madeAt > c.partedAt);
    expect(connections.map((c) => c.connection).sort()).toEqual([
      'battery earth',
      'bottom hose',
      'cam sensor plug',
      'coil rail plug',
      'front breather',
      'harness clip',
      'rear breather',
    ]);
    const out = [...every(ledger, 'temporary')].filter((t) => !t.in).map((t) => `${t.temporary}: ${t.sort}`);
    expect(out.sort()).toEqual([
      'cam clamp: lock',
      'crank pin: pin',
      'flywheel lock: lock',
      'jack with block: jack',
      'mask: mask',
      'right stand: stand',
    ]);
    expect([...every(ledger, 'box')].map((b) => b.left)).toEqual(Array(11).fill(0));
  });

  it('has 3 findings put right, a thread repair, a bead, a fluid, and a check rotation of two turns and three marks', () => {
    const findings = [...every(ledger, 'finding')].map((f) => [f.at, f.closed?.how]);
    expect(findings.sort()).toEqual([
      ['hole:cam cover/7', 'put right'],
      ['hole:lower belt cover/4', 'put right'],
      ['hole:mount bracket/3', 'put right'],
    ]);
    const repaired = entries.flatMap((e) => (e.kind === 'repair-step' ? `${e.hole} ${e.step}` : []));
    const steps = ['depth', 'drilled', 'tapped', 'cleaned', 'insert', 'tried'];
    expect(repaired).toEqual(steps.map((step) => `cam cover/7 ${step}`));
    expect(entries.filter((e) => e.kind === 'bead-laid').map((e) => e.face)).toEqual(['cam cover face']);
    expect([...every(ledger, 'circuit')].filter((c) => c.drainedAt > 0).map((c) => c.circuit)).toEqual(['coolant']);
    const [drive] = [...every(ledger, 'drive')];
    expect(drive?.tries).toHaveLength(1);
    expect(drive?.tries[0]).toMatchObject({ quarters: 8 });
    const marks = entries.flatMap((e) => (e.kind === 'mark-read' ? e.mark : []));
    expect(marks).toEqual(['crank mark', 'intake cam mark', 'exhaust cam mark']);
  });

  it('[O1 T1 L7] takes crank bolt, mount and wheel in the order mechanics do them', () => {
    const told: Record<string, string> = {
      'working crank pulley/1': 'old crank bolt in as working fastener',
      'rotation passed': 'check rotation',
      'off crank pulley/1 to scrap': 'working bolt out, scrap',
      'tight lower belt cover/4': 'lower cover with the new one in 4',
      'tight crank pulley/1': 'pulley, new bolt',
      'tight upper belt cover/1': 'upper cover',
      'tight mount bracket/3': 'mount 1 to 3',
      'out jack with block': 'jack out',
      'back auxiliary belt': 'auxiliary belt',
      'tight arch liner/1': 'liner',
      'snug right front wheel/1': 'wheel snug',
      'out right stand': 'stand out',
      'car-lowered': 'down',
      'tight mount bracket/4': 'mount 4 and 5',
      'tight right front wheel/1': 'wheel tight',
    };
    const happened = entries.flatMap((e): string[] => {
      if (e.kind === 'fastener-fitted' && e.working) return [`working ${e.hole}`];
      if (e.kind === 'tension-read') return ['rotation passed'];
      if (e.kind === 'fastener-removed') return [`off ${e.hole} to ${e.to}`];
      if (e.kind === 'fastener-tightened') return [`${e.last ? 'tight' : 'snug'} ${e.hole}`];
      if (e.kind === 'temporary-taken-out') return [`out ${e.temporary}`];
      if (e.kind === 'part-replaced') return [`back ${e.part}`];
      return [e.kind];
    });
    expect(happened.flatMap((one) => told[one] ?? [])).toEqual(Object.values(told));
    const bolt = stateOf(ledger, 'hole', 'crank pulley/1')?.called.occupant;
    expect(stateOf(ledger, 'fastener', bolt?.fastener ?? '')?.origin).toBe('box:new crank bolt');
  });
});

describe('the order is asked where it matters', () => {
  const script = scriptLines('reference-planned.calls');

  it('[R7] the lower cover is not closed before the check rotation', () => {
    const notTurned = upTo(script, 'turned 1');
    const covered = ['area lower belt cover', 'back 1'].map((text, i) => ({ at: 1000 + i, text, call: true as const }));
    expect(refusalOf([...notTurned, ...covered], 'tight 1')?.rule).toBe('R7');
  });
  it('[L7] the old crank bolt does not go back to stay', () => {
    expect(refusalOf(upTo(script, 'new 1 from new crank bolt'), 'back 1')?.rule).toMatch(/^L[67]$/);
  });
  it('[O1 T1] mount 4 and 5 and the wheel get no final in the air', () => {
    const inTheAir = upTo(script, 'out right stand');
    expect(refusalOf(inTheAir, 'pass')?.rule).toBe('O1');
    expect(refusalOf(inTheAir, 'final mount bracket 4')?.rule).toBe('O1');
  });
  it('[O2] a part named for the first time is not off while a bolt said to hold it is as found', () => {
    const free = upTo(scriptLines('reference-free.calls'), 'part off tensioner held by 1');
    const off = free.findLast((line) => line.text === 'off 1');
    expect(refusalOf(free, 'part off tensioner held by 1')).toBeUndefined();
    const notOff = free.filter((line) => line !== off);
    expect(refusalOf(notOff, 'part off tensioner held by 1')).toMatchObject({
      rule: 'O2',
      because: 'tensioner is still held by tensioner and idler 1',
    });
  });
});

describe('the two jobs', () => {
  const [free, planned] = jobs.map(([, job]) => standingOf(job.ledger, job.now));

  it('[P1] stand equal at the end, clock aside', () => {
    expect(free).toEqual(planned);
    expect(free?.holes).toHaveLength(47);
  });

  it('differ in that only one was declared beforehand', () => {
    const planned = jobs.map(([, job]) => [...every(job.ledger, 'area')].filter((a) => a.declared?.planned).length);
    expect(planned).toEqual([0, 9]);
  });
});
