// What a practitioner would check of the belt service with pump and cover, held against its plan.
import { expect, it } from 'vitest';
import { buildOrder } from '../../../src/plan/build-order.ts';
import { needOf } from '../../../src/plan/need.ts';
import { buildText } from '../../../src/plan/need-words.ts';
import { worksOf } from '../../../src/plan/works.ts';
import { areaIn, cautioned, expectInOrder, shipped, stripped } from './shipped.ts';

const plan = shipped('inline-four-belt-service.json');
const all = plan.services.map((s) => s.service);
const edgeTo = (front: string) => (plan.behind ?? []).filter((one) => one.front === front);

it('stands, a cold engine, earth first off and last on', () => {
  expect(cautioned(plan, /stands, never on the jack/i)).toBe(true);
  expect(cautioned(plan, /cold/i, /earth off first and on last/i)).toBe(true);
  expect(stripped(plan, ...all)[0]).toBe('connection:battery earth');
});

it('wheel, liner, auxiliary belt and pulley, covers from above, then the belt, then what it runs over', () => {
  const off = stripped(plan, ...all);
  expectInOrder(off, ['area:right front wheel', 'area:arch liner', 'part:auxiliary belt', 'area:crank pulley']);
  expectInOrder(off, ['area:mount bracket', 'area:upper belt cover', 'area:lower belt cover', 'part:timing belt']);
  expectInOrder(off, ['part:timing belt', 'area:tensioner and idler', 'area:coolant pump']);
});

it('the engine is carried by the jack before its bracket is opened', () => {
  expect(plan.temporaries).toContainEqual({ temporary: 'jack with block', sort: 'jack', at: 'area:mount bracket' });
  expect(cautioned(plan, /jack carries the engine/i, /before the bracket/i)).toBe(true);
});

it('cams and crank are locked before the belt comes off, and locks are no holding tools', () => {
  expect(
    (plan.temporaries ?? []).filter((one) => ['lock', 'pin'].includes(one.sort)).map((one) => one.temporary),
  ).toEqual(expect.arrayContaining(['cam clamp', 'crank pin', 'flywheel lock']));
  const at = (name: string) => plan.temporaries?.find((one) => one.temporary === name)?.at;
  expect([at('cam clamp'), at('crank pin')]).toEqual(['part:timing belt', 'part:timing belt']);
  expect(at('flywheel lock')).toBe('area:crank pulley');
  expect(cautioned(plan, /no holding tools/i, /flywheel lock/i, /out before anything is turned/i)).toBe(true);
  expect(cautioned(plan, /locked from outside/i, /under its cover/i)).toBe(true);
  expect(cautioned(plan, /neither crank nor cams are turned/i)).toBe(true);
});

it('the crank bolt serves once and is new; the old one turns the engine for the check', () => {
  expect(areaIn(plan, 'crank pulley').holes[0]?.wants).toMatchObject({ oneUse: true, thread: 'M14x1.5' });
  expect(cautioned(plan, /new/i, /old one turns the engine/i)).toBe(true);
});

it('tensioner, idler and belt are renewed together, and the pump behind the belt too', () => {
  const renewed = (plan.parts ?? []).filter((one) => one.renew).map((one) => one.part);
  expect(renewed).toEqual(expect.arrayContaining(['timing belt', 'tensioner', 'idler', 'pump']));
  const bought = (service: string) =>
    (plan.newParts ?? []).flatMap((one) => (one.services?.includes(service) && one.replaces ? one.replaces : []));
  expect(bought('timing belt')).toEqual(['auxiliary belt', 'timing belt', 'tensioner', 'idler']);
  expect(bought('coolant pump')).toContain('pump');
});

it('the belt is not folded or levered, its direction marked, and oil on the old one is followed up', () => {
  expect(cautioned(plan, /direction is marked/i, /folded/i, /levered/i)).toBe(true);
  expect(cautioned(plan, /oil or coolant on the old belt/i)).toBe(true);
});

it('two turns by hand and all three marks read before the lower cover goes on: a gate', () => {
  const [drive] = plan.drives ?? [];
  expect(drive).toMatchObject({ turns: 2, tensioner: 'sprung', marks: { length: 3 } });
  expect(edgeTo('area:lower belt cover')).toContainEqual(
    expect.objectContaining({ behind: ['rotation:timing drive'], gate: true }),
  );
  const works = worksOf(plan);
  const back = buildOrder(plan, needOf(works, plan, all, new Set()).back).map(buildText);
  expectInOrder(back, [
    'timing belt back',
    'gate: tensioner and idler 1 tight, then check rotation of timing drive',
    'lower belt cover: lower cover back, 6 fasteners',
    'crank pulley: pulley back, 1 fastener',
  ]);
});

it('the pump: coolant cold and caught, dowels and O-ring, filled and bled, leak check', () => {
  expect(areaIn(plan, 'coolant pump').companions).toEqual(['dowel one', 'dowel two', 'O-ring']);
  expect(cautioned(plan, /coolant is cold/i, /caught/i)).toBe(true);
  expect(cautioned(plan, /bled/i, /leak check/i)).toBe(true);
});

it('the cover: nothing falls in, shouldered bolts from the middle outwards, dabs that cure before it runs', () => {
  const cover = areaIn(plan, 'cam cover');
  expect(cover).toMatchObject({ keepClean: true, method: { by: 'shoulder' } });
  expect(cover.order).toBe('3 8 2 7 4 9 1 6 5 10');
  expect(plan.faces).toContainEqual(expect.objectContaining({ area: 'cam cover', bead: true }));
  expect(plan.products?.[0]?.runHours).toBeGreaterThan(0);
  expect(plan.temporaries).toContainEqual({ temporary: 'mask', sort: 'mask', at: 'area:cam cover' });
});

it('wheel nuts and the mount get their final on the ground, and both are looked at again', () => {
  for (const area of ['right front wheel', 'mount bracket']) expect(areaIn(plan, area).critical).toBe(true);
  expect(areaIn(plan, 'mount bracket').holes.some((one) => one.later === 'on-wheels' && one.slackOnly)).toBe(true);
  expect(areaIn(plan, 'right front wheel').holes[0]?.later).toBe('on-wheels');
});
