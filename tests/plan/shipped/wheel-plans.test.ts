// What a practitioner would check of front struts and of a wheel bearing: plain lists, each point held against the plan.
// Common practice of the trade, no source.
import { describe, expect, it } from 'vitest';
import { mergePlans } from '../../../src/plan/merge.ts';
import { areaIn, cautioned, expectInOrder, shipped, stripped } from './shipped.ts';

const sides = ['right', 'left'];

describe('front struts', () => {
  const plan = shipped('front-struts.json');
  const order = stripped(plan, 'front struts');

  it('the spring is held before the top nut: two compressors, and the strut is out before the piston nut', () => {
    for (const side of sides) {
      const there = plan.temporaries?.filter(
        (one) => one.sort === 'compressor' && one.at === `area:${side} piston nut`,
      );
      expect(there).toHaveLength(2);
    }
    expect(cautioned(plan, /two compressors/, /BEFORE the top nut/)).toBe(true);
    expect(cautioned(plan, /no impact wrench/)).toBe(true);
    for (const side of sides) {
      expectInOrder(order, [
        `area:${side} strut top`,
        `area:${side} piston nut`,
        `part:${side} spring`,
        `part:${side} damper`,
      ]);
    }
  });

  it('leads and hose off the strut and link off before the foot; the top nuts last, they carry it', () => {
    for (const side of sides) {
      for (const one of [
        `connection:${side} brake hose off the strut`,
        `connection:${side} wheel speed lead off the strut`,
        `area:${side} link`,
      ]) {
        expectInOrder(order, [`area:${side} front wheel`, one, `area:${side} strut foot`, `area:${side} strut top`]);
      }
    }
  });

  it('the hub is tied up, the foot marked for the camber, its bolts in their own places with new nuts', () => {
    for (const side of sides) {
      expect(plan.temporaries?.some((one) => one.sort === 'strap' && one.at === `area:${side} strut foot`)).toBe(true);
      const foot = areaIn(plan, `${side} strut foot`);
      expect(foot.marked).toBe(true);
      expect(foot.holes.map((group) => [group.numbers, group.ownPlace, group.wants?.oneUse])).toEqual([
        ['1 2', true, undefined],
        ['1 nut, 2 nut', undefined, true],
      ]);
    }
    expect(cautioned(plan, /camber/)).toBe(true);
  });

  it('both sides, everything critical, bearing and spring seats seen, aligned afterwards', () => {
    expect(plan.areas.filter((area) => area.role === 'suspension').every((area) => area.critical)).toBe(true);
    expect(plan.areas.filter((area) => area.area.startsWith('right'))).toHaveLength(plan.areas.length / 2);
    for (const side of sides) {
      expect(areaIn(plan, `${side} piston nut`).companions).toContain('spring ends in their seats');
    }
    expect(cautioned(plan, /alignment/)).toBe(true);
    expect(cautioned(plan, /weight on the wheels/)).toBe(true);
  });
});

describe('front wheel bearing', () => {
  const plan = shipped('front-wheel-bearing.json');
  const order = stripped(plan, 'right front wheel bearing');

  it('hub nut with the wheel on the ground, new, staked, and no weight while it is loose', () => {
    expect(areaIn(plan, 'hub nut').holes[0]).toMatchObject({ later: 'on-wheels', wants: { oneUse: true } });
    expect(cautioned(plan, /wheel on the ground/)).toBe(true);
    expect(cautioned(plan, /no weight on the bearing/i)).toBe(true);
    expect(cautioned(plan, /new and staked/)).toBe(true);
  });

  it('caliper, bracket, disc, sensor and hub nut are off before the unit is unbolted', () => {
    expectInOrder(order, ['area:right caliper', 'area:right caliper bracket', 'area:right disc', 'area:bearing unit']);
    expectInOrder(order, ['connection:wheel speed plug', 'area:speed sensor', 'area:bearing unit']);
    expectInOrder(order, ['area:hub nut', 'area:bearing unit']);
  });

  it('the caliper is never hung on its hose, nor the shaft left to hang', () => {
    expect(plan.temporaries?.filter((one) => one.sort === 'strap').map((one) => one.at)).toEqual([
      'area:right caliper',
      'area:bearing unit',
    ]);
    expect(cautioned(plan, /never hung on its hose/)).toBe(true);
  });

  it('the magnet ring faces the sensor; the unit goes in square into a clean seat with new bolts', () => {
    expect(areaIn(plan, 'bearing unit')).toMatchObject({ marked: true, critical: true });
    expect(areaIn(plan, 'bearing unit').holes.every((group) => group.wants?.oneUse)).toBe(true);
    expect(cautioned(plan, /magnet ring faces the sensor/)).toBe(true);
    expect(cautioned(plan, /never driven in by its inner ring/)).toBe(true);
  });

  it('the pedal is firm before it moves, and the noise was this one', () => {
    expect(areaIn(plan, 'right caliper').role).toBe('brake');
    expect(cautioned(plan, /firm before the car moves/)).toBe(true);
    expect(cautioned(plan, /both sides compared/)).toBe(true);
  });

  it('merges with the front brakes, of which it shares wheel, caliper, bracket and disc', () => {
    const merged = mergePlans([
      { plan, file: 'bearing' },
      { plan: shipped('front-brake-pads-and-discs.json'), file: 'brakes' },
    ]);
    expect(merged.ok ? [] : merged.clashes).toEqual([]);
  });
});
