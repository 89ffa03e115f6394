// What a practitioner would check of a crankcase ventilation renewed: a plain list, each point held against the plan.
// Common practice of the trade, no source.
import { expect, it } from 'vitest';
import { areaIn, cautioned, expectInOrder, shipped, stripped } from './shipped.ts';

const plan = shipped('inline-four-crankcase-ventilation.json');
const order = stripped(plan, 'crankcase ventilation');

it('the battery earth is off before any plug is parted, and on last', () => {
  for (const plug of ['air meter plug', 'throttle plug', 'manifold pressure plug']) {
    expectInOrder(order, ['connection:battery earth', `connection:${plug}`]);
  }
});

it('the way in: duct, throttle, manifold, then the separator with valve, hose and drain off it', () => {
  expectInOrder(order, [
    'area:air duct',
    'area:throttle body',
    'area:intake manifold',
    'area:oil separator',
    'part:separator gasket',
  ]);
  for (const one of ['area:ventilation valve', 'area:crankcase hose', 'connection:drain-back hose']) {
    expectInOrder(order, ['area:intake manifold', one, 'area:oil separator']);
  }
});

it('no fuel is opened', () => {
  expect(cautioned(plan, /fuel rail stays/, /pressure/)).toBe(true);
  expect(JSON.stringify([plan.connections, plan.circuits])).not.toMatch(/fuel/);
});

it('the open ports are masked and must stay clean: what falls in is in a cylinder', () => {
  expect(plan.temporaries).toContainEqual({
    temporary: 'mask over the ports',
    sort: 'mask',
    at: 'area:intake manifold',
  });
  expect(areaIn(plan, 'intake manifold').keepClean).toBe(true);
  expect(areaIn(plan, 'throttle body').keepClean).toBe(true);
  expect(cautioned(plan, /masked as soon as they are open/)).toBe(true);
});

it('separator, valve, hose and every gasket are new, and the clamps that serve once', () => {
  const renewed = plan.parts?.filter((one) => one.renew).map((one) => one.part);
  expect(renewed).toEqual([
    'throttle gasket',
    'manifold gasket',
    'ventilation valve',
    'oil separator',
    'separator gasket',
    'crankcase hose',
  ]);
  const clamps = areaIn(plan, 'crankcase hose').holes.filter((group) => group.wants?.oneUse);
  expect(clamps.map((group) => group.numbers)).toEqual(['1 2']);
  expect(areaIn(plan, 'ventilation valve').companions).toEqual(['valve O-ring']);
});

it('the way back to the sump is blown free before the new separator goes on', () => {
  expect(cautioned(plan, /back to the sump must be free/)).toBe(true);
});

it('hoses lie as they lay, the servo hose is back, and the pedal is tried with the engine running', () => {
  expect(areaIn(plan, 'crankcase hose').marked).toBe(true);
  expect(plan.connections?.some((one) => one.connection === 'brake servo hose')).toBe(true);
  expect(cautioned(plan, /servo hose/, /pedal with the engine running/)).toBe(true);
});

it('the manifold is drawn from the middle outwards, and the awkward bolts name their tool', () => {
  const manifold = areaIn(plan, 'intake manifold');
  expect(manifold.order).toBe('3 2 4 1 5 6 7');
  expect(manifold.holes.find((group) => group.numbers === '6 7')?.tool).toMatch(/extension/);
});

it('the running engine proves it: slight pull at the cap, and what the pressure did is looked for', () => {
  expect(cautioned(plan, /filler cap/, /blocked/)).toBe(true);
  expect(cautioned(plan, /dipstick/, /oil level/)).toBe(true);
  expect(plan.faces?.[0]?.keepsIn).toEqual(['engine oil']);
});
