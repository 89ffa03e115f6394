// What a practitioner would check of front pads and discs: a plain list, each point held against the plan, and against a
// job where the job itself must stop the car. Common practice of the trade, no source.
import { expect, it } from 'vitest';
import { emptyLedger, every } from '../../../src/job/ledger.ts';
import { buildOrder } from '../../../src/plan/build-order.ts';
import { declarationsOf } from '../../../src/plan/declarations.ts';
import { mergePlans } from '../../../src/plan/merge.ts';
import { needOf } from '../../../src/plan/need.ts';
import { ordersOf } from '../../../src/plan/orders.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { worksOf } from '../../../src/plan/works.ts';
import { bench } from '../../job/bench.ts';
import { areaIn, cautioned, expectInOrder, shipped, stripped } from './shipped.ts';

const plan = shipped('front-brake-pads-and-discs.json');
const discs = stripped(plan, 'front pads and discs');
const sides = ['right', 'left'];

it('both sides of the axle, always', () => {
  for (const { service, areas } of plan.services) {
    const right = areas.filter((area) => area.startsWith('right')).map((area) => area.slice('right '.length));
    const left = areas.filter((area) => area.startsWith('left')).map((area) => area.slice('left '.length));
    expect({ service, left }).toEqual({ service, left: right });
  }
});

it('wheel, wear sensor, caliper, pads, bracket, disc: from the outside in', () => {
  for (const side of sides) {
    expectInOrder(discs, [
      `area:${side} front wheel`,
      `connection:${side} wear sensor plug`,
      `area:${side} caliper`,
      `part:${side} pads`,
      `area:${side} caliper bracket`,
      `area:${side} disc`,
    ]);
  }
});

it('pads alone leave brackets and discs where they are', () => {
  expect(stripped(plan, 'front pads').filter((at) => /bracket|disc/.test(at))).toEqual([]);
});

it('stands, never the jack; the other wheels chocked', () => {
  expect(plan.temporaries?.filter((one) => one.sort === 'stand').map((one) => one.at)).toEqual([
    'area:right front wheel',
    'area:left front wheel',
  ]);
  expect(plan.temporaries?.some((one) => one.temporary === 'wheel chock')).toBe(true);
  expect(cautioned(plan, /never on the jack/)).toBe(true);
});

it('the caliper is never hung on its hose: a hook for each, and said at each', () => {
  for (const side of sides) {
    expect(plan.temporaries).toContainEqual({
      temporary: `${side} caliper hook`,
      sort: 'strap',
      at: `area:${side} caliper`,
    });
    const at = plan.cautions?.filter(
      (one) => one.at === `area:${side} caliper` && /never hung on its hose/.test(one.words),
    );
    expect(at).toHaveLength(1);
  }
});

it('the hydraulics stay closed, and the reservoir is watched when pistons go back', () => {
  expect(plan.circuits).toBe(undefined);
  expect(plan.connections?.map((one) => one.connection)).toEqual(['right wear sensor plug', 'left wear sensor plug']);
  expect(cautioned(plan, /reservoir/, /pushed back/)).toBe(true);
});

it('guide bolts serve once, four new ones are bought, and everything on the brake is critical', () => {
  for (const side of sides) {
    expect(areaIn(plan, `${side} caliper`).holes[0]?.wants?.oneUse).toBe(true);
    for (const area of ['caliper', 'caliper bracket', 'disc']) {
      expect(areaIn(plan, `${side} ${area}`)).toMatchObject({ critical: true, role: 'brake' });
    }
  }
  expect(plan.newParts?.find((one) => one.name === 'guide bolt, new')).toMatchObject({ quantity: 4 });
});

it('guides, boots, springs and slide plates are seen, hub faces clean, pads the right way round', () => {
  for (const side of sides) {
    expect(areaIn(plan, `${side} caliper`)).toMatchObject({
      companions: ['guide pin boots', 'pad springs'],
      marked: true,
    });
    expect(areaIn(plan, `${side} caliper bracket`).companions).toEqual(['pad slide plates']);
    expect(areaIn(plan, `${side} disc`).companions).toEqual(['hub face bare and clean']);
  }
  expect(cautioned(plan, /run-out/)).toBe(true);
});

it('dust wet, paste never on a friction face, hose not twisted', () => {
  expect(cautioned(plan, /washed off wet/)).toBe(true);
  expect(cautioned(plan, /none on a friction face/)).toBe(true);
  expect(cautioned(plan, /not twisted/)).toBe(true);
});

it('wheel nuts in star order, final on the ground, and looked at again', () => {
  for (const side of sides) {
    const wheel = areaIn(plan, `${side} front wheel`);
    expect(wheel).toMatchObject({ role: 'wheel', critical: true, order: '1 3 5 2 4' });
    expect(wheel.holes.every((group) => group.later === 'on-wheels')).toBe(true);
  }
  expect(cautioned(plan, /star order/)).toBe(true);
  expect(plan.cautions?.filter(({ at }) => at === 'vehicle').map(({ words }) => words)).toEqual([
    expect.stringMatching(/^Bedding in/),
    expect.stringMatching(/again after the first 50 km/),
  ]);
});

it('the pedal is firm before it moves, then the road: on the way back', () => {
  const { back } = needOf(worksOf(plan), plan, ['front pads'], new Set());
  const kinds = buildOrder(plan, back).flatMap((step) => ('kind' in step ? step.kind : []));
  expectInOrder(kinds, ['pedal', 'road-test', 'second-look']);
  expect(cautioned(plan, /pedal pumped until it is firm before the car moves/i)).toBe(true);
  expect(cautioned(plan, /bedding in/i)).toBe(true);
});

it('[T7] on a job from this plan, the car is not moved before the pedal was called firm', () => {
  const on = bench();
  on.call('order-service', { service: 'front pads', declares: declarationsOf(plan, ['front pads'], on.ledger()) });
  on.off('right caliper/1');
  expect(on.open('pedal')).toEqual(['pedal vehicle']);
});

it('shares the right front wheel with the belt service: both together take it off once', () => {
  const merged = mergePlans([
    { plan, file: 'brakes' },
    { plan: shipped('inline-four-belt-service.json'), file: 'belt' },
  ]);
  if (!merged.ok) throw new Error(merged.clashes[0]?.what);
  const need = needOf(worksOf(merged.plan), merged.plan, ['front pads', 'timing belt'], new Set());
  expect(need.order.filter((step) => step.at === 'area:right front wheel')).toHaveLength(1);
  expect(need.each.map((one) => one.alone.fasteners)).toEqual([14, 29]);
  expect([...need.whole].filter((unit) => unit.startsWith('hole:'))).toHaveLength(14 + 31 - 5);
});

/** As the names were before each side had its own. */
const names = (text: string): string => text.replaceAll('right wheel', 'wheel').replaceAll('right stand', 'stand');

it('no part and no stand of one side goes by a name that the other side could be meant by', () => {
  for (const file of ['front-brake-pads-and-discs.json', 'front-struts.json']) {
    const { parts = [], temporaries = [] } = shipped(file);
    const all = [...parts.map(({ part }) => part), ...temporaries.map(({ temporary }) => temporary)];
    const of = (side: string) =>
      all.flatMap((name) => (name.startsWith(`${side} `) ? [name.slice(side.length + 1)] : [])).sort();
    expect(of('right')).toEqual(of('left'));
    expect(all.filter((name) => of('left').includes(name))).toEqual([]);
  }
});
it('[P1] a job that knows wheel and stand by the names of an older plan keeps them, and so does an older plan of one’s own', () => {
  const older = JSON.parse(names(JSON.stringify(shipped('inline-four-belt-service.json')))) as Plan;
  const on = bench();
  on.call('order-services', { orders: ordersOf(older, ['timing belt'], emptyLedger) });
  on.call('order-services', { orders: ordersOf(plan, ['front pads'], on.ledger()) });
  const known = (sort: 'part' | 'temporary') => [...every(on.ledger(), sort)].map((one) => Object.values(one)[0]);
  expect(known('part')).toEqual(expect.arrayContaining(['wheel', 'left wheel']));
  expect(known('part')).not.toContain('right wheel');
  expect(known('temporary')).toEqual(expect.arrayContaining(['stand', 'left stand']));
  expect(known('temporary')).not.toContain('right stand');
  const merged = mergePlans([
    { plan: older, file: 'own.json' },
    { plan, file: 'front.json' },
  ]);
  expect(merged.ok && merged.plan.parts?.map(({ part }) => part).filter((part) => part.endsWith('wheel'))).toEqual([
    'wheel',
    'left wheel',
  ]);
  expect(merged.ok && JSON.stringify(merged.plan)).not.toMatch(/right (wheel|stand)"/);
});
