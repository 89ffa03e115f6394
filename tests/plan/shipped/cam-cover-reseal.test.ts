// What a practitioner would check of a cam cover reseal: a plain list, each point held against the plan. Common practice
// of the trade, no source.
import { expect, it } from 'vitest';
import { areaIn, cautioned, expectInOrder, shipped, stripped } from './shipped.ts';

const plan = shipped('inline-four-cam-cover-reseal.json');
const order = stripped(plan, 'cam cover reseal');
const cover = areaIn(plan, 'cam cover');

it('the engine is cold, the battery earth first off and last on', () => {
  expect(cautioned(plan, /cold/i)).toBe(true);
  expect(order[0]).toBe('connection:battery earth');
});

it('every coil is unplugged before it is drawn, and all coils are out before the cover is loosened', () => {
  for (const coil of [1, 2, 3, 4]) expectInOrder(order, [`connection:coil plug ${coil}`, 'area:ignition coils']);
  expectInOrder(order, ['area:engine cover', 'area:ignition coils', 'area:cam cover', 'part:cam cover gasket']);
});

it('breathers, sensor plug and harness are off the cover before it is lifted', () => {
  for (const one of ['front breather', 'rear breather', 'cam sensor plug', 'harness off the cover']) {
    expectInOrder(order, [`connection:${one}`, 'area:cam cover']);
  }
});

it('plug wells are blown out first, and nothing can fall in while it is open', () => {
  expect(cautioned(plan, /blow out the plug wells before/i)).toBe(true);
  expect(plan.temporaries?.filter((one) => one.sort === 'rag').length).toBe(4);
  expect(plan.temporaries?.some((one) => one.sort === 'mask' && one.at === 'area:cam cover')).toBe(true);
  expect(cover.keepClean).toBe(true);
});

it('gasket and plug well seals are new; half-moon plugs and sealing washers are seen', () => {
  const renewed = plan.parts?.filter((one) => one.renew).map((one) => one.part);
  expect(renewed).toEqual(['cam cover gasket', 'plug well seals']);
  expect(cover.companions).toEqual(['half-moon plugs', 'bolt sealing washers']);
});

it('sealant only as dabs at the joints, on a clean face, and it cures before it runs', () => {
  const [face] = plan.faces ?? [];
  expect(face).toMatchObject({
    part: 'cam cover',
    bead: true,
    keepsIn: ['engine oil'],
    pressedBy: { 'cam cover': '1-10' },
  });
  expect(cautioned(plan, /only as dabs at the joints/, /oil strainer/)).toBe(true);
  expect(plan.products?.[0]).toMatchObject({ runHours: 6, fullHours: 24 });
  expect(plan.sources?.some((one) => /sealant/.test(one.of) && /label/.test(one.from))).toBe(true);
});

it('shouldered bolts go to the shoulder and stop, from the middle outwards, into dry holes', () => {
  expect(cover.method).toEqual({ by: 'shoulder' });
  expect(cover.holes.every((group) => group.wants?.shouldered)).toBe(true);
  expect(cover.order).toMatch(/^3 8 /);
  expect(cover.blindHoles).toBe(true);
  const places = new Map(
    cover.holes.flatMap((group) =>
      ['1', '2', '3', '4', '5', '6', '7', '8', '9', '10'].map((n, i) => [n, group.at?.[i] ?? [0, 0]] as const),
    ),
  );
  const fromMiddle = (cover.order ?? '').split(' ').map((n) => {
    const [x = 0, y = 0] = places.get(n) ?? [];
    return Math.hypot(x - 15, y - 5);
  });
  expect(fromMiddle).toEqual([...fromMiddle].sort((one, other) => one - other));
});

it('faces are never levered or scraped with steel', () => {
  expect(cautioned(plan, /never lever/i, /plastic/)).toBe(true);
});

it('asks why it leaked: a blocked crankcase ventilation pushes any gasket out', () => {
  expect(cautioned(plan, /crankcase ventilation/)).toBe(true);
});
