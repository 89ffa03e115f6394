// What a practitioner would check of a sump, a thermostat, an auxiliary belt and a cylinder head: plain lists, each point
// held against the plan. Common practice of the trade, no source.
import { describe, expect, it } from 'vitest';
import { buildOrder } from '../../../src/plan/build-order.ts';
import { mergePlans } from '../../../src/plan/merge.ts';
import { needOf } from '../../../src/plan/need.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { worksOf } from '../../../src/plan/works.ts';
import { areaIn, cautioned, expectInOrder, shipped, stripped } from './shipped.ts';

const wayBack = (plan: Plan, service: string): string[] =>
  buildOrder(plan, needOf(worksOf(plan), plan, [service], new Set()).back).map((step) =>
    'at' in step ? step.at : 'circuit' in step ? `${step.kind} ${step.circuit}` : step.kind,
  );
const renewed = (plan: Plan) => plan.parts?.filter((one) => one.renew).map((one) => one.part);

describe('sump reseal', () => {
  const plan = shipped('inline-four-sump-reseal.json');
  const order = stripped(plan, 'sump reseal');

  it('the oil is out, and the sensor unplugged, before the sump is loosened', () => {
    expectInOrder(order, ['area:undertray', 'area:sump plug', 'area:sump']);
    expectInOrder(order, ['connection:oil level sensor plug', 'area:sump']);
  });

  it('the bolts into the gearbox are an area of their own, found before the sump is pulled', () => {
    expectInOrder(order, ['area:sump to gearbox', 'area:sump']);
    expect(plan.parts?.find((one) => one.part === 'sump')?.heldBy).toEqual({ sump: '1-16', 'sump to gearbox': '1 2' });
    expect(cautioned(plan, /bolts into the gearbox/)).toBe(true);
  });

  it('a new crush washer, a new filter, and what the oil carries is looked at', () => {
    expect(areaIn(plan, 'sump plug').holes.map((group) => [group.numbers, group.wants?.oneUse])).toEqual([
      ['1', undefined],
      ['1 washer', true],
    ]);
    expect(renewed(plan)).toEqual(['oil filter']);
    expect(cautioned(plan, /glitter/)).toBe(true);
  });

  it('a bead on bare dry faces, none of it inside, strainer seen, and no oil before the label allows it', () => {
    expect(plan.faces?.find((one) => one.area === 'sump')?.bead).toBe(true);
    expect(areaIn(plan, 'sump').companions).toEqual(['strainer seal', 'dowels']);
    expect(cautioned(plan, /strainer finds it/)).toBe(true);
    expect(cautioned(plan, /no oil before the label/i)).toBe(true);
    expectInOrder(wayBack(plan, 'sump reseal'), [
      'face',
      'area:sump',
      'area:sump plug',
      'fill engine oil',
      'leak-check engine oil',
    ]);
  });
});

describe('thermostat and hoses', () => {
  const plan = shipped('inline-four-thermostat-and-hoses.json');

  it('never opened hot, the fan made safe, the coolant caught', () => {
    expect(cautioned(plan, /never opened hot/i)).toBe(true);
    expect(cautioned(plan, /fan may start/i)).toBe(true);
    expect(cautioned(plan, /kept from drains, dogs and children/)).toBe(true);
  });

  it('drained before the first hose is parted; the thermostat alone parts one hose, both hoses four ends', () => {
    const whole = stripped(plan, 'thermostat and hoses');
    const hoses = plan.connections
      ?.filter((one) => one.circuit === 'coolant')
      .map((one) => `connection:${one.connection}`);
    expect(hoses).toHaveLength(4);
    for (const hose of hoses ?? []) expectInOrder(whole, ['area:radiator drain', hose]);
    expect(stripped(plan, 'thermostat').filter((at) => hoses?.includes(at))).toEqual([
      'connection:top hose at the thermostat',
    ]);
  });

  it('the thermostat the right way round with its bleed at the top, O-ring new, filled and bled with the heater on', () => {
    expect(areaIn(plan, 'thermostat housing').marked).toBe(true);
    expect(renewed(plan)).toEqual(['thermostat', 'housing O-ring', 'top hose', 'bottom hose']);
    expect(cautioned(plan, /jiggle pin at the top/)).toBe(true);
    expect(cautioned(plan, /heater on hot/, /bleeders/)).toBe(true);
    expectInOrder(wayBack(plan, 'thermostat'), ['area:thermostat housing', 'fill coolant', 'leak-check coolant']);
  });
});

describe('auxiliary belt', () => {
  const plan = shipped('auxiliary-belt-and-tensioner.json');

  it('earth off and the run of the belt drawn before it comes off, the tensioner pinned', () => {
    expectInOrder(stripped(plan, 'auxiliary belt'), ['connection:battery earth', 'part:auxiliary belt']);
    expect(cautioned(plan, /draw how the belt runs/i)).toBe(true);
    expect(areaIn(plan, 'auxiliary tensioner').marked).toBe(true);
    expect(plan.temporaries).toContainEqual({ temporary: 'tensioner pin', sort: 'pin', at: 'part:auxiliary belt' });
  });

  it('the belt alone leaves tensioner and idler on; both come off only with the belt off', () => {
    expect(stripped(plan, 'auxiliary belt').filter((at) => /tensioner|idler/.test(at))).toEqual([]);
    const both = stripped(plan, 'auxiliary belt and tensioner');
    expectInOrder(both, ['part:auxiliary belt', 'area:auxiliary tensioner']);
    expectInOrder(both, ['part:auxiliary belt', 'area:auxiliary idler']);
  });

  it('pulleys spun, leaks found, ribs looked at and a turn by hand before the engine turns it', () => {
    expect(cautioned(plan, /pulley is spun/)).toBe(true);
    expect(cautioned(plan, /oil or coolant on the old belt/i)).toBe(true);
    expect(cautioned(plan, /each rib/i, /turn by hand/)).toBe(true);
  });

  it('is nearly free beside the timing belt of the same vehicle: with its plan merged, nothing more', () => {
    const merged = mergePlans([
      { plan, file: 'auxiliary' },
      { plan: shipped('inline-four-belt-service.json'), file: 'belt' },
    ]);
    if (!merged.ok) throw new Error(merged.clashes[0]?.what);
    const { nearby } = needOf(worksOf(merged.plan), merged.plan, ['timing belt'], new Set());
    expect(nearby[0]).toEqual({
      service: 'auxiliary belt',
      more: { fasteners: 0, slack: 0, parts: 0, connections: 0 },
    });
  });
});

describe('cylinder head', () => {
  const plan = shipped('inline-four-cylinder-head.json');
  const order = stripped(plan, 'cylinder head');
  const head = areaIn(plan, 'cylinder head');

  it('belt, sprockets, cams, manifolds and hoses are off before a head bolt is touched', () => {
    expectInOrder(order, [
      'part:timing belt',
      'area:cam sprockets',
      'area:cam caps',
      'area:cylinder head',
      'part:head gasket',
    ]);
    for (const one of [
      'area:exhaust manifold',
      'area:intake manifold',
      'connection:top hose',
      'connection:heater hose',
    ]) {
      expectInOrder(order, [one, 'area:cylinder head']);
    }
  });

  it('head bolts are stretch bolts, all new, in stages of angle and in an order from the middle crosswise', () => {
    expect(head.holes[0]?.wants).toMatchObject({ oneUse: true });
    expect(head.method).toEqual({ by: 'torque-angle', with: 'oil' });
    expect(head.passes?.length).toBeGreaterThan(2);
    expect(head.order).toMatch(/^3 8 /);
    expect(plan.newParts?.find((one) => one.name === 'head bolt, new')?.quantity).toBe(10);
  });

  it('the head comes off in the reverse of its tightening order', () => {
    const works = worksOf(plan);
    const { order: steps } = needOf(works, plan, ['cylinder head'], new Set());
    const off = steps
      .find((step) => step.at === 'area:cylinder head')
      ?.units.flatMap((unit) => unit.split('/')[1] ?? []);
    expect(off).toEqual((head.order ?? '').split(' ').toReversed());
  });

  it('holes dry, dowels there, face under a straight edge, bolts measured or thrown away', () => {
    expect(head.blindHoles).toBe(true);
    expect(head.companions).toEqual(['two dowels']);
    expect(cautioned(plan, /straight edge/)).toBe(true);
    expect(cautioned(plan, /blown dry/)).toBe(true);
    expect(cautioned(plan, /measured or thrown away/)).toBe(true);
    expect(plan.faces?.find((one) => one.area === 'cylinder head')?.keepsIn).toEqual(['coolant', 'engine oil']);
  });

  it('locks are no holding tools; caps keep their places; no cam is turned onto a piston', () => {
    expect(cautioned(plan, /holding tool, never against the locks/)).toBe(true);
    expect(plan.temporaries?.some((one) => one.temporary === 'sprocket holding tool')).toBe(true);
    expect(areaIn(plan, 'cam caps').holes.every((group) => group.ownPlace)).toBe(true);
    expect(areaIn(plan, 'cam sprockets').holes.every((group) => group.sprocketBolt)).toBe(true);
    expect(cautioned(plan, /piston stands at the top/)).toBe(true);
  });

  it('fuel pressure off before its line is parted, and two turns by hand before the starter', () => {
    expectInOrder(order, ['connection:fuel line at the rail', 'area:intake manifold']);
    expect(cautioned(plan, /fuel pressure off/)).toBe(true);
    const back = wayBack(plan, 'cylinder head');
    expectInOrder(back, [
      'area:cylinder head',
      'area:cam caps',
      'area:cam sprockets',
      'part:timing belt',
      'rotation',
      'area:lower belt cover',
      'fill coolant',
    ]);
  });
});
