// What ordering services of a plan writes into a job beside the declarations, and the places a plan may know by another
// name: what is asked, and what the answer comes to.
import { describe, expect, it } from 'vitest';
import { emptyLedger, every, stateOf } from '../../src/job/ledger.ts';
import { suspectedAt } from '../../src/job/suspicions.ts';
import { ordersOf } from '../../src/plan/orders.ts';
import { samePlaces } from '../../src/plan/same-place.ts';
import { type Bench, bench } from '../job/bench.ts';
import { referencePlan } from '../jobs/plan-of-reference.ts';

const plan = referencePlan();
const all = plan.services.map((s) => s.service);
const bolt = { kind: 'bolt', head: 'hex 8', thread: 'M6', lengthMm: 35 } as const;

const order = (on: Bench, services: readonly string[], same: Parameters<typeof ordersOf>[3] = []) =>
  on.call('order-services', { orders: ordersOf(plan, services, on.ledger(), same) });
/** A cover made on the spot, some of its bolts off already. */
function withCover(holes: readonly number[], spec: object = bolt): Bench {
  const on = bench();
  for (const hole of holes) on.off(`valve cover/${hole}`, spec);
  return on;
}

describe('ordering several services of a plan', () => {
  it('[P1] says of each what it brings, known already or not, and declares each thing once', () => {
    const orders = ordersOf(plan, all, emptyLedger);
    const brings = (i: number) => orders[i]?.brings ?? [];
    expect(orders.map((one) => one.service)).toEqual(all);
    for (const i of [0, 1, 2]) expect(brings(i)).toContain('area:mount bracket');
    expect(brings(0)).toContain('drive:timing drive');
    expect(brings(0)).not.toContain('area:cam cover');
    expect(brings(2)).toContain('part:gasket');
    expect(orders.flatMap(({ brings }) => brings ?? []).filter((one) => /^(hole|product)/.test(one))).toEqual([]);
    const declared = orders.flatMap((one) => one.declares ?? []).map((one) => JSON.stringify(one));
    expect(new Set(declared).size).toBe(declared.length);
    const on = bench();
    order(on, all);
    expect([...every(on.ledger(), 'hole')]).toHaveLength(47);
    expect(ordersOf(plan, all, on.ledger()).flatMap((one) => one.declares ?? [])).toEqual([]);
  });

  it('buys for each what the plan buys for it, and says where it can hurt there', () => {
    const orders = ordersOf(plan, all, emptyLedger);
    const bought = (service: string) =>
      (plan.newParts ?? []).filter((one) => !one.services || one.services.includes(service)).map((one) => one.name);
    for (const one of orders) expect((one.newParts ?? []).map(({ name }) => name)).toEqual(bought(one.service));
    expect(bought('timing belt').length).toBeGreaterThan(2);
    const cautions = orders.map((one) => (one.cautions ?? []).map(({ at }) => at));
    expect(cautions[0]?.length).toBeGreaterThan(0);
    for (const [i, one] of cautions.entries())
      for (const at of one)
        if (at && at !== 'vehicle') expect(JSON.stringify(orders[i]?.brings)).toContain(at.split(/[:/]/)[1]);
  });
});

describe('[P2] your "valve cover" = its "cam cover"?', () => {
  const asked = (on: Bench, services: readonly string[] = ['cam cover gasket']) =>
    samePlaces(plan, services, on.ledger());

  it('[P2] is asked of an area made on the spot that one of the plan could be, the likeliest first', () => {
    expect(asked(withCover([1, 2, 9]))).toEqual([{ area: 'valve cover', perhaps: ['cam cover'] }]);
    const [few] = asked(withCover([1, 2], { kind: 'bolt' }));
    expect(few?.perhaps[0]).toBe('mount bracket');
    expect(few?.perhaps).toContain('cam cover');
  });

  it('[P2] and of none that can not be one: other holes, other fasteners, a place the plan names itself, nothing called', () => {
    expect(asked(withCover([1, 11]))).toEqual([]);
    expect(asked(withCover([1, 2, 3], { kind: 'nut', head: 'hex 22' }))).toEqual([]);
    const own = bench();
    own.off('cam cover/1', bolt);
    expect(asked(own)).toEqual([]);
    const named = bench();
    named.declare({ kind: 'area-declared', area: 'valve cover' }, { kind: 'hole-declared', hole: 'valve cover/1' });
    expect(asked(named)).toEqual([]);
    expect(asked(bench())).toEqual([]);
  });

  it('[P2] said once: the job keeps its own name, and all the plan says of it is said of that', () => {
    const on = withCover([1, 2, 9]);
    order(on, ['cam cover gasket'], [{ area: 'valve cover', is: 'cam cover' }]);
    const ledger = on.ledger();
    expect(stateOf(ledger, 'area', 'cam cover')).toBe(undefined);
    const cover = stateOf(ledger, 'area', 'valve cover');
    expect(cover?.declared).toMatchObject({ inPlans: 'cam cover', planned: true });
    expect(cover?.holes).toHaveLength(10);
    expect(stateOf(ledger, 'part', 'cam cover')?.declared?.heldBy).toContain('valve cover/7');
    expect(stateOf(ledger, 'face', 'cam cover face')?.declared?.area).toBe('valve cover');
    expect(stateOf(ledger, 'service', 'cam cover gasket')?.brings).toContain('area:valve cover');
    const text = JSON.stringify(on.lines());
    expect(text).not.toContain('cam cover/');
    expect(text).not.toContain('area:cam cover');
    expect(asked(on, all)).toEqual([]);
    order(on, ['timing belt']);
    expect(stateOf(on.ledger(), 'area', 'cam cover')).toBe(undefined);
    on.call('drop-service', { service: 'cam cover gasket', because: 'not today' });
    expect(asked(on)).toEqual([]);
  });

  it('[P2] said to be none of its places, both are there, and it is not asked again', () => {
    const on = withCover([1, 2, 9]);
    order(on, ['cam cover gasket'], [{ area: 'valve cover' }]);
    expect(stateOf(on.ledger(), 'area', 'cam cover')?.holes).toHaveLength(10);
    expect(stateOf(on.ledger(), 'area', 'valve cover')).toMatchObject({ holes: { length: 3 } });
    expect(asked(on, all)).toEqual([]);
  });

  it('[P2] a hole already called keeps its spec, and the plan speaks against it as a suspicion', () => {
    const on = withCover([1, 2, 9], { ...bolt, head: 'hex 8', thread: 'M6' });
    on.off('valve cover/4', { kind: 'bolt', head: 'hex 10', thread: 'M8' });
    order(on, ['cam cover gasket'], [{ area: 'valve cover', is: 'cam cover' }]);
    const of = (number: number) => stateOf(on.ledger(), 'hole', `valve cover/${number}`)?.declared;
    expect(of(4)?.wants).toBe(undefined);
    expect(of(4)?.planSays).toMatchObject({ thread: 'M6' });
    expect(of(5)?.wants).toMatchObject({ thread: 'M6' });
    expect(of(5)?.planSays).toBe(undefined);
    const against = suspectedAt(on.ledger(), 'valve cover/4')?.suspicions.map((one) => one.against);
    expect(against).toContain('plan');
    expect(suspectedAt(on.ledger(), 'valve cover/1')).toBe(undefined);
    on.back('valve cover/4');
    on.snug('valve cover/4');
    on.tight('valve cover/4');
    expect(on.open('hole-open')).not.toContain('hole-open hole:valve cover/4');
  });

  it('an answer renames nothing that is not an area: parts of the plan keep their names', () => {
    const on = withCover([1, 2, 9]);
    const [one] = ordersOf(plan, ['cam cover gasket'], on.ledger(), [{ area: 'valve cover', is: 'cam cover' }]);
    expect(one.brings).toContain('part:cam cover');
    expect(one.declares?.flatMap((said) => (said.kind === 'behind-declared' ? said.behind : []))).toContain(
      'area:valve cover',
    );
  });
});
