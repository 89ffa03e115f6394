// What taking a plan writes into a job, service by service, and what it leaves alone.
import { describe, expect, it } from 'vitest';
import { decide } from '../../src/job/decide.ts';
import type { Entry } from '../../src/job/entry.ts';
import { emptyLedger, type Ledger, stateOf } from '../../src/job/ledger.ts';
import { declarationsOf } from '../../src/plan/declarations.ts';
import { bench } from '../job/bench.ts';
import { referencePlan } from '../jobs/plan-of-reference.ts';

const plan = referencePlan();
const every = plan.services.map((s) => s.service);
const now = { atMs: 0, zoneMin: 0, run: 1, awakeMs: 0 };

const kindsOf = (entries: readonly Entry[]) =>
  Object.fromEntries([...Map.groupBy(entries, (e) => e.kind)].map(([kind, all]) => [kind, all.length]));
const ordered = (service: string, ledger: Ledger) => ({
  verb: 'order-service',
  service,
  declares: declarationsOf(plan, [service], ledger),
});
/** A bench at which these services were ordered, one call each. */
function benchWith(services: readonly string[]) {
  const on = bench();
  for (const service of services) on.call('order-service', ordered(service, on.ledger()));
  return on;
}

describe('taking a plan', () => {
  it('[P1] writes its declarations, areas as planned, and nothing that has happened', () => {
    const entries = declarationsOf(plan, every, emptyLedger);
    expect(kindsOf(entries)).toEqual({
      'area-declared': 9,
      'hole-declared': 47,
      'part-declared': 13,
      'connection-declared': 7,
      'face-declared': 2,
      'behind-declared': 19,
      'drive-declared': 1,
      'circuit-declared': 2,
      'temporary-declared': 6,
      'product-declared': 1,
    });
    expect(entries.filter((e) => e.kind === 'area-declared' && e.planned !== true)).toEqual([]);
    expect(entries.filter((e) => e.kind === 'behind-declared' && e.from !== 'plan')).toEqual([]);
  });

  it('[P1] is taken by the call that orders a service, and is all the job needs', () => {
    const answer = decide(emptyLedger, ordered('timing belt', emptyLedger), now);
    expect('entries' in answer && answer.entries[0]).toEqual({ kind: 'service-ordered', service: 'timing belt' });
    const on = benchWith(['timing belt']);
    on.off('crank pulley/1');
    expect(stateOf(on.ledger(), 'fastener', on.own('crank pulley/1'))?.spec).toMatchObject({
      head: 'hex 19',
      oneUse: true,
    });
    expect(stateOf(on.ledger(), 'part', 'pulley')?.off).toBe(true);
  });

  it('expands ranges, flags and orders to the words of the log', () => {
    const entries = declarationsOf(plan, ['cam cover gasket'], emptyLedger);
    const nuts = entries.filter((e) => e.kind === 'hole-declared' && e.hole === 'mount bracket/5');
    expect(nuts).toEqual([
      {
        kind: 'hole-declared',
        hole: 'mount bracket/5',
        wants: { kind: 'nut', head: 'hex 17', thread: 'M12x1.25' },
        slackOnly: true,
        later: 'on-wheels',
        at: [15, 10],
      },
    ]);
    const cover = entries.find((e) => e.kind === 'area-declared' && e.area === 'cam cover');
    expect(cover).toMatchObject({ order: ['3', '8', '2', '7', '4', '9', '1', '6', '5', '10'] });
  });

  it('brings of one service only its own areas, and edges only between what is there', () => {
    const entries = declarationsOf(plan, ['cam cover gasket'], emptyLedger);
    expect(entries.filter((e) => e.kind === 'area-declared').map((e) => e.area)).toEqual([
      'mount bracket',
      'upper belt cover',
      'cam cover',
    ]);
    const edges = entries.filter((e) => e.kind === 'behind-declared').map((e) => `${e.front} > ${e.behind}`);
    expect(edges).toContain('area:upper belt cover > area:cam cover');
    expect(edges.filter((e) => /lower|wheel|rotation|hose/.test(e))).toEqual([]);
    expect(entries.some((e) => e.kind === 'drive-declared')).toBe(false);
  });

  it('adds of a second service what the first did not bring, with the edges between the two', () => {
    const ledger = benchWith(['timing belt']).ledger();
    const more = declarationsOf(plan, ['cam cover gasket'], ledger);
    expect(more.filter((e) => e.kind === 'area-declared').map((e) => e.area)).toEqual(['cam cover']);
    expect(more.filter((e) => e.kind === 'behind-declared').map((e) => `${e.front} > ${e.behind}`)).toContain(
      'area:upper belt cover > area:cam cover',
    );
    expect(declarationsOf(plan, ['timing belt'], ledger)).toEqual([]);
  });

  it('says the same whether services are ordered at once or one by one', () => {
    expect(declarationsOf(plan, every, benchWith(every).ledger())).toEqual([]);
  });

  it('[P2] leaves a hole already called its spec, and takes the rest', () => {
    const found = { kind: 'bolt', head: 'star 30', thread: 'M6', lengthMm: 25 } as const;
    const on = bench();
    on.off('upper belt cover/2', found);
    on.call('order-service', ordered('timing belt', on.ledger()));
    const ledger = on.ledger();
    const hole = stateOf(ledger, 'hole', 'upper belt cover/2');
    expect(stateOf(ledger, 'fastener', hole?.called.first ?? '')?.spec).toEqual(found);
    expect(hole?.declared).toEqual({
      hole: 'upper belt cover/2',
      at: [10, 0],
      planSays: { kind: 'bolt', head: 'hex 10', thread: 'M6', lengthMm: 25 },
    });
    expect(stateOf(ledger, 'hole', 'upper belt cover/1')?.declared?.wants?.head).toBe('hex 10');
    expect(stateOf(ledger, 'area', 'upper belt cover')?.declared?.planned).toBe(true);
  });
});
