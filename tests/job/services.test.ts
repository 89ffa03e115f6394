// P: services on a running job. Plan files themselves are read elsewhere.
import { describe, expect, it } from 'vitest';
import { stateOf } from '../../src/job/ledger.ts';
import { withdrawnOn } from '../../src/job/withdrawn.ts';
import { type Bench, bench, m6, m8 } from './bench.ts';

const declares = [
  { kind: 'area-declared', area: 'lid', planned: true, critical: true, companions: ['dowel'] },
  { kind: 'hole-declared', hole: 'lid/1', wants: m6 },
  { kind: 'hole-declared', hole: 'lid/2', wants: m6 },
  { kind: 'area-declared', area: 'idler', planned: true },
  { kind: 'hole-declared', hole: 'idler/1', wants: m8 },
  { kind: 'part-declared', part: 'gasket', heldBy: [], renew: true },
  { kind: 'connection-declared', connection: 'plug', area: 'lid', circuit: 'cooling' },
  { kind: 'face-declared', face: 'lid', area: 'lid', pressedBy: ['lid/1', 'lid/2'], keepsIn: [], bead: true },
  {
    kind: 'drive-declared',
    drive: 'belt',
    areas: ['idler'],
    parts: [],
    marks: ['cam'],
    turns: 2,
    tensioner: 'none',
    crankKeyed: true,
  },
] as const;

/** Ordered, and then dropped with a reason; in between whatever was done. */
function dropped(between: (on: Bench) => void = () => {}): Bench {
  const on = bench();
  on.call('order-service', { service: 'belt', declares });
  between(on);
  on.call('drop-service', { service: 'belt', because: 'the owner sells it' });
  return on;
}

describe('ordering a service', () => {
  it('[P1] writes declarations and nothing that happened', () => {
    const on = bench();
    const order = (...more: object[]) =>
      on.refused('order-service', { service: 'belt', declares: [...declares, ...more] });
    expect(order({ kind: 'service-dropped', service: 'belt', because: 'so' })).toBe('P1 not-a-declaration');
    expect(order({ kind: 'holes-counted', area: 'lid', count: 2 })).toBe('P1 not-a-declaration');
    expect(order({ kind: 'job-opened', vehicle: { label: 'other' } })).toBe('P1 not-a-declaration');
    const behind = (front: string, one: string) => ({
      kind: 'behind-declared',
      front,
      behind: one,
      until: 'closed',
      from: 'plan',
    });
    expect(order(behind('area:lid', 'area:idler'), behind('area:idler', 'area:lid'))).toBe('O1 goes-round');
    on.call('order-service', { service: 'belt', declares });
  });

  it('[P1] takes several as one call, each with what it brings, what is bought for it and where it can hurt', () => {
    const on = bench();
    const ofPump = {
      service: 'pump',
      brings: ['area:lid', 'part:gasket'],
      newParts: [{ name: 'new gasket', sort: 'part', quantity: 1, replaces: 'gasket' }],
      cautions: [{ words: 'hot coolant', at: 'area:lid' }],
    } as const;
    const n = on.call('order-services', { orders: [{ service: 'belt', declares }, ofPump] });
    expect(on.entriesOf(n).map((one) => one.kind)).toEqual([
      'service-ordered',
      ...declares.map((one) => one.kind),
      'service-ordered',
    ]);
    expect(stateOf(on.ledger(), 'service', 'pump')).toEqual({ ...ofPump, state: 'ordered' });
    expect(on.open('service-open')).toHaveLength(2);
    const both = (service: string) => on.refused('order-services', { orders: [{ service: 'wash' }, { service }] });
    expect(both('belt')).toBe('P1 ordered-already');
    expect(both('wash')).toBe('P1 ordered-already');
    const round = { service: 'wash', declares: [{ kind: 'holes-counted', area: 'lid', count: 2 }] };
    expect(on.refused('order-services', { orders: [{ service: 'pads' }, round] })).toBe('P1 not-a-declaration');
    on.call('drop-service', { service: 'pump', because: 'no parts' });
    expect(stateOf(on.ledger(), 'service', 'pump')).toMatchObject({ ...ofPump, state: 'dropped' });
  });
});

describe('dropping a service', () => {
  it('[P3] withdraws what is as found: nothing of it is asked any more', () => {
    expect(dropped().open()).toEqual([]);
    const seen = dropped((on) => {
      for (const hole of ['lid/1', 'lid/2', 'idler/1']) on.call('find-fastener', { hole });
    });
    expect(seen.open()).toEqual([]);
  });

  it('[P3] and only that: what was touched stays open, with all that was declared of it', () => {
    const on = dropped((b) => {
      b.slack('lid/1');
      b.call('find-fastener', { hole: 'lid/2' });
      b.call('remove-part', { part: 'gasket' });
      b.call('part-connection', { connection: 'plug' });
    });
    expect(on.open().sort()).toEqual([
      'bead-missing face:lid',
      'circuit-unchecked circuit:cooling',
      'companions area:lid',
      'connection-parted connection:plug',
      'hole-open hole:lid/1',
      'part-off part:gasket',
      'second-look hole:lid/1',
      'tools vehicle',
    ]);
    on.tight('lid/1');
    expect(on.open('rotation-needed')).toEqual([]);
    on.slack('idler/1');
    expect(on.open('rotation-needed')).toEqual(['rotation-needed drive:belt']);
    expect(on.refused('fit', { hole: 'idler/1' })).toBe('L1 hole-is-taken');
  });

  it('[P3] of an area that was opened, a planned hole nobody called is still looked for', () => {
    const on = dropped((b) => b.off('lid/1'));
    expect(on.open('holes-not-counted')).toEqual(['holes-not-counted hole:lid/2']);
  });

  describe('of which it was said what it brings', () => {
    const brings = ['area:lid', 'area:idler', 'part:gasket', 'connection:plug', 'face:lid', 'drive:belt'];
    const withdrawn = (between: (on: Bench) => void = () => {}, also?: object) => {
      const on = bench();
      on.call('order-services', { orders: [{ service: 'belt', brings, declares }, ...(also ? [also] : [])] });
      expect([...withdrawnOn(on.ledger())]).toEqual([]);
      between(on);
      on.call('drop-service', { service: 'belt', because: 'the owner sells it' });
      return [...withdrawnOn(on.ledger())];
    };

    it('[P3] withdraws all of it while it is as found, and gives it back when it is ordered again', () => {
      expect(withdrawn()).toEqual(brings);
      const again = dropped();
      again.call('order-service', { service: 'belt', brings });
      expect([...withdrawnOn(again.ledger())]).toEqual([]);
      again.call('drop-service', { service: 'belt', because: 'after all' });
      expect([...withdrawnOn(again.ledger())]).toEqual(brings);
      again.slack('lid/1');
      expect([...withdrawnOn(again.ledger())]).toEqual(['area:idler', 'part:gasket', 'connection:plug', 'drive:belt']);
    });

    it.each<[string, (on: Bench) => void, string[]]>([
      ['a bolt slackened: its area and its face', (on) => on.slack('lid/1'), ['area:lid', 'face:lid']],
      ['a bolt of the drive: that and the drive', (on) => on.slack('idler/1'), ['area:idler', 'drive:belt']],
      ['a part off', (on) => on.call('remove-part', { part: 'gasket' }), ['part:gasket']],
      ['a plug parted', (on) => on.call('part-connection', { connection: 'plug' }), ['connection:plug']],
      ['a fastener only seen: nothing', (on) => on.call('find-fastener', { hole: 'lid/2' }), []],
    ])('[P3] and keeps what was touched: %s', (_, touch, kept) => {
      expect(withdrawn(touch)).toEqual(brings.filter((one) => !kept.includes(one)));
    });

    it('[P3] and what another service brings as well, whether done or not', () => {
      const pump = { service: 'pump', brings: ['area:lid', 'face:lid'] };
      const rest = brings.filter((one) => !pump.brings.includes(one));
      expect(withdrawn(undefined, pump)).toEqual(rest);
      expect(withdrawn((on) => on.call('service-done', { service: 'pump' }), pump)).toEqual(rest);
      const both = (on: Bench) => on.call('drop-service', { service: 'pump', because: 'no parts' });
      expect(withdrawn(both, pump).sort()).toEqual([...brings].sort());
    });
  });

  it('[P3] is a call with a reason, of a service that is open', () => {
    const on = bench();
    on.call('order-service', { service: 'belt', declares });
    expect(on.open('service-open')).toEqual(['service-open service:belt']);
    expect(on.refused('drop-service', { service: 'belt' })).toBe('L1 badly-said');
    expect(on.refused('drop-service', { service: 'wash', because: 'so' })).toBe('X1 service-not-open');
    on.call('drop-service', { service: 'belt', because: 'the owner sells it' });
    expect(stateOf(on.ledger(), 'service', 'belt')).toMatchObject({ state: 'dropped', because: 'the owner sells it' });
    expect(on.refused('service-done', { service: 'belt' })).toBe('X1 service-not-open');
    on.call('order-service', { service: 'belt' });
    expect(on.open('service-open')).toHaveLength(1);
  });
});
