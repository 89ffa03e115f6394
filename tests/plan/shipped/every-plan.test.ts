// What every plan that comes with the program owes, and that each comes off and goes back on a job, in the order it
// gives, with no refusal and no override.
import { describe, expect, it } from 'vitest';
import { missingBefore } from '../../../src/job/first-in.ts';
import { wantsIn } from '../../../src/job/guards.ts';
import { every, stateOf } from '../../../src/job/ledger.ts';
import { declarationsOf } from '../../../src/plan/declarations.ts';
import { declaredWhole } from '../../../src/plan/declared-whole.ts';
import { needOf } from '../../../src/plan/need.ts';
import { ordersOf } from '../../../src/plan/orders.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { worksOf } from '../../../src/plan/works.ts';
import { bench } from '../../job/bench.ts';
import { shipped, shippedNames } from './shipped.ts';

const nothingOff = new Set<string>();

describe.each(shippedNames)('%s', (name) => {
  const plan = shipped(name);
  const works = worksOf(plan);
  const whole = declaredWhole(plan);
  const services = plan.services.map((s) => s.service);
  const need = needOf(works, plan, services, nothingOff);

  it('asks for stands before an undertray comes off, and of a wheel once it does', () => {
    const on = bench();
    on.call('order-services', { orders: ordersOf(plan, services, on.ledger()) });
    for (const { area } of plan.areas.filter((a) => a.area === 'undertray'))
      expect(missingBefore(on.ledger(), area)).toEqual(['four stands']);
    for (const { area } of plan.areas.filter((a) => a.role === 'wheel')) {
      const stands = plan.temporaries?.filter((t) => t.sort === 'stand' && t.at === `area:${area}`);
      expect(stands).toHaveLength(1);
      expect(missingBefore(on.ledger(), area)).toEqual([]);
    }
  });
  it('says of every hole what it wants, where it sits and how it is tightened', () => {
    const methods = new Map(plan.areas.map((a) => [a.area, a.method]));
    const holes = whole.filter((one) => one.kind === 'hole-declared');
    expect(holes.length).toBeGreaterThan(0);
    for (const { hole, wants, at, method } of holes) {
      expect({ hole, kind: typeof wants?.kind, at: at?.length }).toEqual({ hole, kind: 'string', at: 2 });
      if (['bolt', 'nut', 'screw', 'stud', 'plug'].includes(wants?.kind ?? '')) {
        expect({ hole, head: typeof wants?.head, thread: typeof wants?.thread }).toEqual({
          hole,
          head: 'string',
          thread: 'string',
        });
      }
      expect({ hole, method: method ?? methods.get(hole.split('/')[0] as string) }).not.toEqual({
        hole,
        method: undefined,
      });
    }
  });

  it('leaves torques blank, and says that they come from the maker of the vehicle', () => {
    expect(JSON.stringify(plan)).not.toMatch(/newtonMetres|"degrees"/);
    expect(JSON.stringify([plan.notes, plan.sources])).toMatch(/maker's manual/);
    expect(plan.vehicle).toMatch(/no maker, invented/);
    expect(plan.cautions?.length).toBeGreaterThan(5);
  });

  it('takes off everything it declares, and nothing stands without an order', () => {
    expect([...need.whole].sort()).toEqual([...works.units].sort());
    const fronts = new Set([...works.behind.keys(), ...works.fronts.keys()]);
    const alone = plan.areas.filter(({ area }) => !fronts.has(`area:${area}`)).map((a) => a.area);
    expect(alone).toEqual([]);
  });

  it('has a new one bought for each part that is renewed and each fastener that serves once', () => {
    const renewed = whole.flatMap((one) => (one.kind === 'part-declared' && one.renew ? one.part : []));
    const replaced = (plan.newParts ?? []).flatMap((one) => one.replaces ?? []);
    expect([...replaced].sort()).toEqual([...renewed].sort());
    const once = whole.filter((one) => one.kind === 'hole-declared' && one.wants?.oneUse && !one.slackOnly).length;
    const bought = (plan.newParts ?? []).filter((one) => one.spec?.oneUse).reduce((sum, one) => sum + one.quantity, 0);
    expect(bought).toBe(once);
  });

  it('comes off and goes back on a job in its own order, with no override', () => {
    const on = bench();
    for (const service of services) {
      on.call('order-service', { service, declares: declarationsOf(plan, [service], on.ledger()) });
    }
    const playedOff = playOff(on, plan);
    expect(playedOff).toBe(need.order.flatMap((step) => step.units).length);
    playBack(on, plan);
    const open = on
      .open()
      .filter((one) => /^(hole-open|part-off|for-now|connection-parted|holes-not-counted) /.test(one));
    expect(open).toEqual([]);
  });
});

/** Everything off in the plan's order; how many things that were. */
function playOff(on: ReturnType<typeof bench>, plan: Plan): number {
  const works = worksOf(plan);
  const { order } = needOf(
    works,
    plan,
    plan.services.map((s) => s.service),
    nothingOff,
  );
  let played = 0;
  for (const unit of order.flatMap((step) => step.units)) {
    played += 1;
    const [sort, named] = split(unit);
    if (sort === 'connection') on.call('part-connection', { connection: named });
    else if (sort === 'hole') holeOff(on, named, works.slackOnly.has(unit));
    else if (!stateOf(on.ledger(), 'part', named)?.off) on.call('remove-part', { part: named });
  }
  return played;
}

/** Everything back in the reverse order: what is renewed or serves once from the parts box, all called tight at the end. */
function playBack(on: ReturnType<typeof bench>, plan: Plan): void {
  const works = worksOf(plan);
  const { back } = needOf(
    works,
    plan,
    plan.services.map((s) => s.service),
    nothingOff,
  );
  for (const step of back.toReversed()) {
    for (const unit of step.units.toReversed()) {
      const [sort, named] = split(unit);
      if (sort === 'connection') on.call('make-connection', { connection: named });
      if (sort === 'part') partBack(on, named);
    }
    const holes = step.units.toReversed().flatMap((unit) => (unit.startsWith('hole:') ? split(unit)[1] : []));
    if (holes.length > 0) beforeItCloses(on, step.at.slice('area:'.length));
    for (const hole of holes) holeBack(on, hole, works.slackOnly.has(`hole:${hole}`));
    for (const pass of [on.snug, on.tight]) {
      for (const hole of holes) if (on.level(hole) !== 'tight') pass(hole);
    }
    for (const drive of every(on.ledger(), 'drive')) {
      if (step.at === `rotation:${drive.drive}`) turned(on, drive.drive, drive.declared?.marks ?? []);
    }
  }
}

const split = (unit: string): [sort: string, name: string] => {
  const at = unit.indexOf(':');
  return [unit.slice(0, at), unit.slice(at + 1)];
};

function partBack(on: ReturnType<typeof bench>, part: string): void {
  const state = stateOf(on.ledger(), 'part', part);
  if (!state?.off) return;
  if (!state.declared?.renew) return void on.call('fit-part', { part });
  on.call('fill-box', { name: `new ${part}`, quantity: 1, replaces: part });
  on.call('replace-part', { part, from: `new ${part}` });
}

function holeBack(on: ReturnType<typeof bench>, hole: string, slackOnly: boolean): void {
  const wants = wantsIn(on.ledger(), hole);
  if (wants?.oneUse) {
    on.call('fill-box', { name: `new for ${hole.replace('/', ' ')}`, quantity: 1, spec: wants });
    on.back(hole, { box: `new for ${hole.replace('/', ' ')}` });
  } else if (!slackOnly) on.back(hole);
}

/** One call on a number takes all its levels. */
function holeOff(on: ReturnType<typeof bench>, hole: string, slackOnly: boolean): void {
  if (slackOnly) on.slack(hole);
  else if (on.level(hole) !== 'empty' || !on.hole(hole)?.touchedAt) on.off(hole);
}

function beforeItCloses(on: ReturnType<typeof bench>, area: string): void {
  const declared = stateOf(on.ledger(), 'area', area)?.declared;
  if (declared?.companions) on.call('companions-seen', { area });
  if (declared?.blindHoles) on.call('blind-holes-dry', { area });
  if (declared?.marked) on.call('direction-right', { area });
}

function turned(on: ReturnType<typeof bench>, drive: string, marks: readonly string[]): void {
  on.call('tensioner-live', { drive });
  on.countTrays();
  on.call('turn-crank', { drive, quarters: 8 });
  for (const mark of marks) on.call('read-mark', { drive, mark, teethOff: 0 });
  on.call('read-tension', { drive, how: 'pointer', right: true });
}
