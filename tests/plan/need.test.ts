// What must come off for services, how much more it is for the next one, and in what order: on the reference plan by
// what the bench says of it, and on a thousand small random plans against trying every subset and every pair.
import { describe, expect, it } from 'vitest';
import { mustComeOff, needOf } from '../../src/plan/need.ts';
import { readPlan } from '../../src/plan/read-plan.ts';
import { worksOf } from '../../src/plan/works.ts';
import { referencePlan } from '../jobs/plan-of-reference.ts';
import { leastByTrying, pairsOf, plainly, smallPlan, sortedByTaking } from './small-plans.ts';

const plan = referencePlan();
const works = worksOf(plan);
const every = plan.services.map((s) => s.service);
const nothingOff = new Set<string>();

describe('what must come off', () => {
  it('for the three services of the reference job is all that is opened there: 47 holes, two of them only slackened, 13 parts, 7 connections', () => {
    const { each, whole } = needOf(works, plan, every, nothingOff);
    expect([...whole].filter((unit) => unit.startsWith('hole:'))).toHaveLength(47);
    expect([...whole].filter((unit) => unit.startsWith('part:'))).toHaveLength(13);
    expect([...whole].filter((unit) => unit.startsWith('connection:'))).toHaveLength(7);
    expect(each.map(({ service, alone }) => [service, alone.fasteners, alone.slack])).toEqual([
      ['timing belt', 29, 2],
      ['coolant pump', 35, 2],
      ['cam cover gasket', 18, 2],
    ]);
  });

  it('counts what services share once: belt and pump together are the pump alone', () => {
    const both = needOf(works, plan, ['timing belt', 'coolant pump'], nothingOff);
    const pump = needOf(works, plan, ['coolant pump'], nothingOff);
    expect([...both.whole].sort()).toEqual([...pump.whole].sort());
    expect(both.each.map((one) => one.besides.fasteners)).toEqual([0, 6]);
  });

  it('is found from the goal alone, through everything in front of it', () => {
    const off = mustComeOff(works, ['part:timing belt']);
    expect([...off].filter((unit) => unit.startsWith('hole:lower belt cover/'))).toHaveLength(6);
    expect(off).toContain('part:right wheel');
    expect(off).toContain('connection:harness clip');
    expect([...off].filter((unit) => /pump|tensioner|cam cover|battery/.test(unit))).toEqual([]);
  });

  it('with the lower belt cover off, is for the pump its six, the tensioner and idler, belt, hose and earth', () => {
    const off = mustComeOff(works, ['area:lower belt cover']);
    const [pump] = needOf(works, plan, ['coolant pump'], off).each;
    expect(pump?.more).toEqual({ fasteners: 8, slack: 0, parts: 4, connections: 2 });
  });

  it('names what is off and needed by none', () => {
    const off = mustComeOff(works, ['area:lower belt cover']);
    const { needless } = needOf(works, plan, ['cam cover gasket'], off);
    expect(needless).toContain('hole:lower belt cover/1');
    expect(needless).toContain('hole:right front wheel/5');
    expect([...needless].filter((unit) => /mount bracket|upper/.test(unit))).toEqual([]);
  });

  it('ranks what is not chosen by how little more it is', () => {
    const { nearby } = needOf(works, plan, ['timing belt'], nothingOff);
    expect(nearby.map((one) => [one.service, one.more.fasteners])).toEqual([
      ['coolant pump', 6],
      ['cam cover gasket', 10],
    ]);
  });
});

describe('the order of stripping', () => {
  it('is that of the reference job, the check rotation before the lower cover on the way back', () => {
    const { order } = needOf(works, plan, every, nothingOff);
    expect(order.map((step) => step.at)).toEqual([
      'connection:battery earth',
      'area:right front wheel',
      'area:arch liner',
      'area:mount bracket',
      'part:auxiliary belt',
      'area:crank pulley',
      'connection:harness clip',
      'area:upper belt cover',
      'area:lower belt cover',
      'rotation:timing drive',
      'part:timing belt',
      'area:tensioner and idler',
      'connection:bottom hose',
      'area:coolant pump',
      'connection:coil rail plug',
      'connection:cam sensor plug',
      'connection:front breather',
      'connection:rear breather',
      'area:cam cover',
      'part:gasket',
    ]);
  });

  it('[O3] loosens an area the other way round than it is tightened, and without an order as numbered', () => {
    const { order } = needOf(works, plan, every, nothingOff);
    const holesAt = (area: string) =>
      order
        .filter((step) => step.at === `area:${area}`)
        .flatMap((step) => step.units.filter((unit) => unit.startsWith('hole:')).map((unit) => unit.split('/')[1]));
    expect(holesAt('cam cover')).toEqual(['10', '5', '6', '1', '9', '4', '7', '2', '8', '3']);
    expect(holesAt('coolant pump')).toEqual(['1', '2', '3', '4', '5', '6']);
  });

  it('asks for no check rotation where the drive stays shut', () => {
    const { order } = needOf(works, plan, ['cam cover gasket'], nothingOff);
    expect(order.some((step) => step.at.startsWith('rotation:'))).toBe(false);
  });
});

describe('a thousand small random plans', () => {
  const seeds = Array.from({ length: 1000 }, (_, i) => i + 1);
  const outcome = (seed: number) => readPlan(JSON.stringify(smallPlan(seed)), 'small.json');

  it('are refused exactly when their order goes round, and are worth trying', () => {
    let round = 0;
    let edges = 0;
    let slips = 0;
    for (const seed of seeds) {
      const plain = plainly(smallPlan(seed));
      const goesRound = sortedByTaking(plain.units, pairsOf(plain)) === undefined;
      const read = outcome(seed);
      expect({ seed, refused: !read.ok }).toEqual({ seed, refused: goesRound });
      if (!read.ok) expect(read.fault.what).toContain('goes round');
      round += Number(goesRound);
      edges += plain.edges.length;
      slips += Number(plain.units.length > 10);
    }
    expect(slips).toBe(0);
    expect(edges).toBeGreaterThan(2000);
    expect(round).toBeGreaterThan(50);
    expect(round).toBeLessThan(700);
  });

  it('need the least set that trying every subset finds, and there is only one', () => {
    let tried = 0;
    for (const seed of seeds) {
      const small = smallPlan(seed);
      if (!outcome(seed).ok) continue;
      const plain = plainly(small);
      const places = worksOf(small);
      for (const { service, areas, also } of small.services.slice(0, 2)) {
        const targets = [...areas.map((area) => `area:${area}`), ...(also ?? [])];
        const { least, only } = leastByTrying(plain, targets);
        const { whole } = needOf(places, small, [service], nothingOff);
        expect({ seed, service, only, whole: [...whole].sort() }).toEqual({
          seed,
          service,
          only: true,
          whole: [...least].sort(),
        });
        tried += Number(least.size > targets.length);
      }
    }
    expect(tried).toBeGreaterThan(300);
  });

  it('come off in an order in which no pair stands the wrong way round', () => {
    for (const seed of seeds) {
      const small = smallPlan(seed);
      if (!outcome(seed).ok) continue;
      const { order, more } = needOf(worksOf(small), small, ['some', 'other'], nothingOff);
      const units = order.flatMap((step) => step.units);
      expect([...units].sort()).toEqual([...more].sort());
      const place = new Map(units.map((unit, i) => [unit, i]));
      const wrong = pairsOf(plainly(small)).filter(([first, then]) => {
        const [one, other] = [place.get(first), place.get(then)];
        return other !== undefined && (one === undefined || one > other);
      });
      expect({ seed, wrong }).toEqual({ seed, wrong: [] });
    }
  });
});
