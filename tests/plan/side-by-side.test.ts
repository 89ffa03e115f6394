// Services side by side on a running job, held against the merging of the plans they come from, pair by pair; and what is
// off already, dropped, or needed by none.
import { describe, expect, it } from 'vitest';
import { emptyLedger } from '../../src/job/ledger.ts';
import { mergePlans } from '../../src/plan/merge.ts';
import { countOf, mustComeOff, needOf } from '../../src/plan/need.ts';
import { ordersOf } from '../../src/plan/orders.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { sideBySide } from '../../src/plan/side-by-side.ts';
import { stillToDo } from '../../src/plan/still-to-do.ts';
import { worksOf } from '../../src/plan/works.ts';
import { bench } from '../job/bench.ts';
import { shipped, shippedNames } from './shipped/shipped.ts';

const plans = shippedNames.map(shipped);
const named = (name: string): Plan => plans.find((one) => one.name === name) as Plan;
const belt = named('inline-four belt service');
const pairs = plans.flatMap((one, i) => plans.slice(i).map((other): [Plan, Plan] => [one, other]));

describe('on a job where nothing is off', () => {
  it('says for any two services of plans that go together what merging their plans says', () => {
    let held = 0;
    for (const [one, other] of pairs) {
      const merged = mergePlans([
        { plan: one, file: 'one' },
        { plan: other, file: 'other' },
      ]);
      if (!merged.ok || one === other) continue;
      const works = worksOf(merged.plan);
      for (const first of one.services) {
        for (const second of other.services) {
          const chosen = [
            { plan: one.name, service: first.service },
            { plan: other.name, service: second.service },
          ];
          const side = sideBySide(emptyLedger, plans, chosen);
          const need = needOf(works, merged.plan, [first.service, second.service], new Set());
          const of = (service: string) => side.all.find((row) => row.service === service && row.state === 'chosen');
          expect(side.together).toEqual(countOf(works, need.whole));
          for (const { service, alone, besides } of need.each)
            expect(of(service)).toMatchObject({ alone, more: besides });
          const near = side.nearby.filter((row) => row.plan === one.name);
          for (const { service, more } of need.nearby)
            for (const row of near.filter((n) => n.service === service)) expect(row.more).toEqual(more);
          held += 1;
        }
      }
    }
    expect(held).toBeGreaterThan(80);
  });

  it('ranks what is not chosen by how little more it is', () => {
    const { nearby } = sideBySide(emptyLedger, plans, [{ plan: belt.name, service: 'coolant pump' }]);
    const effort = nearby.map(({ more }) => more.fasteners + more.slack + more.parts + more.connections);
    expect(effort).toEqual(effort.toSorted((a, b) => a - b));
    expect(nearby.filter(({ more }) => more.fasteners + more.parts === 0).map((one) => one.service)).toEqual([
      'auxiliary belt',
      'timing belt',
    ]);
  });
});

describe('on a running job', () => {
  const ordered = (...services: string[]) => {
    const on = bench();
    on.call('order-services', { orders: ordersOf(belt, services, on.ledger()) });
    return on;
  };

  it('counts as more only what is not off already, and as to come only what was never off', () => {
    const on = ordered('timing belt');
    for (let hole = 1; hole <= 5; hole++) on.off(`right front wheel/${hole}`);
    const row = (service: string) => sideBySide(on.ledger(), plans, []).all.find((one) => one.service === service);
    expect(row('timing belt')).toMatchObject({ state: 'ordered', alone: { fasteners: 29 }, left: { fasteners: 24 } });
    const works = worksOf(belt);
    const off = mustComeOff(works, ['area:right front wheel']);
    const [pump] = needOf(works, belt, ['coolant pump'], off).each;
    const marginal = (pump?.more.fasteners ?? 0) - 24;
    expect(row('coolant pump')?.more.fasteners).toBe(marginal);
    for (let hole = 1; hole <= 5; hole++) on.back(`right front wheel/${hole}`);
    expect(row('timing belt')?.left.fasteners).toBe(24);
    expect(row('front pads')?.more.fasteners).toBe(9);
  });

  it('what is off already is nothing more, though none that is ordered needs it', () => {
    const on = ordered('cam cover gasket');
    const more = () =>
      sideBySide(on.ledger(), plans, []).all.find((one) => one.service === 'coolant pump')?.more.fasteners ?? 0;
    const before = more();
    for (let hole = 1; hole <= 5; hole++) on.off(`right front wheel/${hole}`, { kind: 'nut' });
    expect(more()).toBe(before - 5);
  });

  it('takes off what one plan only slackens and another takes off', () => {
    const one = (slackOnly: boolean): Plan => ({
      countback: 'plan',
      version: 1,
      name: slackOnly ? 'slackened' : 'taken off',
      vehicle: 'any',
      services: [{ service: slackOnly ? 'slackened' : 'taken off', areas: ['mount'] }],
      areas: [{ area: 'mount', holes: [{ numbers: '1 2', ...(slackOnly && { slackOnly: true as const }) }] }],
    });
    const chosen = ['slackened', 'taken off'].map((name) => ({ plan: name, service: name }));
    for (const both of [
      [one(true), one(false)],
      [one(false), one(true)],
    ])
      expect(sideBySide(emptyLedger, both, chosen).together).toMatchObject({ fasteners: 2, slack: 0 });
  });

  it('names what is off for none: only once every service taken is known, and a dropped one needs nothing', () => {
    const on = ordered('timing belt', 'cam cover gasket');
    on.off('crank pulley/1');
    const needless = () => sideBySide(on.ledger(), plans, []).needless.map((step) => step.at);
    expect(needless()).toEqual([]);
    on.call('drop-service', { service: 'timing belt', because: 'no belt' });
    expect(needless()).toEqual(['area:crank pulley']);
    on.call('order-service', { service: 'wash' });
    expect(needless()).toEqual([]);
  });

  it('says what is still to do of each, a shared place once, and the rest of no service', () => {
    const on = ordered('timing belt', 'coolant pump');
    const todo = () => stillToDo(on.ledger(), on.now());
    const takeOff = () => todo().services.map((one) => one.takeOff.flatMap((step) => step.units).length);
    expect(takeOff()).toEqual([29 + 2 + 10 + 2, 6 + 1 + 1]);
    on.off('coolant pump/1');
    on.off('heat shield/1', { kind: 'bolt' });
    expect(takeOff()).toEqual([43, 7, 0]);
    expect(todo().services.map((one) => [one.service, one.fit.map(({ at, words }) => `${at} ${words}`)])).toEqual([
      ['timing belt', ['drive:timing drive opened, no check rotation stands']],
      ['coolant pump', ['area:coolant pump 1 off, companions not called seen since it was opened']],
      [undefined, ['area:heat shield 1 off']],
    ]);
    on.call('service-done', { service: 'coolant pump' });
    expect(todo().services.map((one) => one.service)).toEqual(['timing belt', undefined]);
  });

  it('holds the parts box against what the plans buy: by what it replaces, by spec, by name', () => {
    const on = ordered('timing belt', 'coolant pump');
    const short = () =>
      todo()
        .filter((one) => one.bought < one.quantity)
        .map((one) => one.name);
    const todo = () => stillToDo(on.ledger(), on.now()).newParts;
    expect(short()).toHaveLength(7);
    on.call('fill-box', { name: 'a belt', quantity: 1, replaces: 'timing belt' });
    on.call('fill-box', {
      name: 'a bolt',
      quantity: 1,
      spec: { kind: 'bolt', head: 'hex 19', thread: 'M14x1.5', lengthMm: 65, oneUse: true },
    });
    on.call('fill-box', { name: 'coolant mix', quantity: 1 });
    expect(short()).toEqual(['auxiliary belt, new', 'tensioner, new', 'idler, new', 'pump, new']);
    on.call('drop-service', { service: 'coolant pump', because: 'dry' });
    expect(short()).toEqual(['auxiliary belt, new', 'tensioner, new', 'idler, new']);
  });

  it('names the tools of awkward holes while they are to come off or to go back', () => {
    const brakes = named('front brakes');
    const on = bench();
    on.call('order-services', { orders: ordersOf(brakes, ['front pads and discs'], on.ledger()) });
    const tools = () => stillToDo(on.ledger(), on.now()).tools.map(({ tool, words }) => `${tool}: ${words}`);
    const there = brakes.areas.flatMap(({ area, holes }) =>
      holes.flatMap(({ tool }) => (tool ? `${tool}: ${area}` : [])),
    );
    expect(there.length).toBeGreaterThan(0);
    expect(tools().map((one) => one.replace(/ [\d -]+$/, ''))).toEqual(there);
    on.call('drop-service', { service: 'front pads and discs', because: 'no discs' });
    expect(tools()).toEqual([]);
  });
});
