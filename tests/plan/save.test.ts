// A job saved as a plan: what it keeps, what it leaves behind, and that the next job from it comes to an equal standing.
import { describe, expect, it } from 'vitest';
import { offerOf, type PlanOffer } from '../../src/calls/desk.ts';
import { emptyLedger, every, type Ledger, stateOf } from '../../src/job/ledger.ts';
import { declarationsOf } from '../../src/plan/declarations.ts';
import { declaredWhole } from '../../src/plan/declared-whole.ts';
import { needOf } from '../../src/plan/need.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read-plan.ts';
import { planFromJob } from '../../src/plan/save.ts';
import { worksOf } from '../../src/plan/works.ts';
import { bench, m6 } from '../job/bench.ts';
import { playLines, scriptLines } from '../jobs/lines.ts';
import { referencePlan } from '../jobs/plan-of-reference.ts';
import { standingOf } from '../jobs/standing.ts';

const planned = playLines(scriptLines('reference-planned.calls'));
const free = playLines(scriptLines('reference-free.calls'));

/** Saved, written as a file and read again as any plan is. */
function saved(ledger: Ledger, name?: string): Plan {
  const read = readPlan(JSON.stringify(planFromJob(ledger, name)), 'saved.json');
  if (!read.ok) throw new Error(`${read.fault.where}: ${read.fault.what}`);
  return read.plan;
}
const offer = (plan: Plan): PlanOffer => offerOf({ plan, file: 'saved.json' });
const asText = (plan: Plan): string[] =>
  declaredWhole(plan)
    .map((one) => JSON.stringify(sortedFields(one)))
    .sort();
const sortedFields = (one: object): object =>
  Object.fromEntries(Object.entries(one).sort(([a], [b]) => (a < b ? -1 : 1)));

describe('the reference job saved as a plan', () => {
  it('declares the same as the plan it was taken from', () => {
    expect(asText(saved(planned.ledger))).toEqual(asText(referencePlan()));
  });

  it.each([
    ['taken from its plan', planned],
    ['made free', free],
  ])('%s, brings the next job to an equal standing', (_, job) => {
    const plan = saved(job.ledger, 'inline-four belt service');
    const again = playLines(scriptLines('reference-planned.calls'), [offer(plan)]);
    expect(again.refused).toEqual([]);
    expect(standingOf(again.ledger, again.now)).toEqual(standingOf(planned.ledger, planned.now));
  });

  it('saved again from the next job says the same', () => {
    const first = saved(free.ledger, 'inline-four belt service');
    const again = playLines(scriptLines('reference-planned.calls'), [offer(first)]);
    expect(asText(saved(again.ledger))).toEqual(asText(first));
  });

  it('knows for each service what is in front of it', () => {
    const plan = saved(planned.ledger);
    const works = worksOf(plan);
    const { each } = needOf(works, plan, ['timing belt', 'coolant pump', 'cam cover gasket'], new Set());
    expect(each.map(({ service, alone }) => [service, alone.fasteners, alone.slack])).toEqual([
      ['timing belt', 29, 2],
      ['coolant pump', 35, 2],
      ['cam cover gasket', 18, 2],
    ]);
  });

  it('[P1 X4] keeps the interval of each service, as its plan had it when it was ordered', () => {
    const interval = { months: 60, distanceKm: 100_000, from: 'the maker' };
    const { services, ...rest } = referencePlan();
    const timed: Plan = {
      ...rest,
      services: services.map((one) => (one.service === 'timing belt' ? { ...one, interval } : one)),
    };
    const job = playLines(scriptLines('reference-planned.calls'), [offer(timed)]);
    expect(job.refused).toEqual([]);
    const kept = (plan: Plan) => plan.services.map((one) => [one.service, one.interval]);
    expect(kept(saved(job.ledger))).toEqual(kept(timed));
  });

  it('keeps each service apart as its plan had it, with its cautions and what was bought for it', () => {
    const plan = saved(planned.ledger);
    const asSet = ({ service, areas, also }: Plan['services'][number]) => ({
      service,
      areas: [...areas].sort(),
      also: [...(also ?? [])].sort(),
    });
    expect(plan.services.map(asSet)).toEqual(referencePlan().services.map(asSet));
    expect(plan.cautions?.map((one) => one.words).sort()).toEqual(
      referencePlan()
        .cautions?.map((one) => one.words)
        .sort(),
    );
    const wanting = (name: string) => plan.newParts?.find((one) => one.name === name)?.services;
    expect(wanting('new pump')).toEqual(['coolant pump']);
    expect(wanting('new timing belt')).toEqual(['timing belt', 'coolant pump']);
    expect(wanting('thread insert')).toBe(undefined);
  });

  it('buys again what was bought, and leaves the identity of the vehicle and the trays behind', () => {
    for (const job of [planned, free]) {
      const plan = saved(job.ledger);
      expect(plan.newParts?.length).toBe([...every(job.ledger, 'box')].length);
      const vehicle = stateOf(job.ledger, 'vehicle', 'vehicle');
      const text = JSON.stringify(plan);
      expect(vehicle?.label).toBeTruthy();
      for (const secret of [vehicle?.label, vehicle?.registration, 'tray', vehicle?.releasedBy, '2026']) {
        if (secret) expect(text.includes(secret), secret).toBe(false);
      }
    }
  });
});

describe('what the work has shown', () => {
  const opened = () => {
    const on = bench();
    on.call('order-service', { service: 'reseal' });
    for (const hole of [1, 2, 3, 4]) on.off(`cover/${hole}`, m6);
    return on;
  };
  const holesOf = (plan: Plan) =>
    declarationsOf(
      plan,
      plan.services.map((s) => s.service),
      emptyLedger,
    ).filter((one) => one.kind === 'hole-declared');

  it('a hole wants what was stated of it, not the wrong one found there', () => {
    const on = opened();
    on.call('state-wants', {
      hole: 'cover/2',
      spec: { ...m6, lengthMm: 30 },
      because: 'as its neighbours on the other side',
    });
    expect(holesOf(saved(on.ledger())).map((one) => one.wants?.lengthMm)).toEqual([25, 30, 25, 25]);
  });

  it('a hole only slackened is slack-only on the next', () => {
    const on = opened();
    on.slack('mount/1', m6);
    on.slack('mount/2', m6);
    on.off('mount/2');
    const slack = holesOf(saved(on.ledger())).filter((one) => one.slackOnly);
    expect(slack.map((one) => one.hole)).toEqual(['mount/1']);
  });

  it('[O3] the order of the last pass is proposed on the next, unless it was as numbered', () => {
    const inOrder = (order: number[]) => {
      const on = opened();
      on.count('cover', 4);
      for (const hole of order) on.back(`cover/${hole}`);
      for (const hole of order) on.snug(`cover/${hole}`);
      for (const hole of order) on.tight(`cover/${hole}`);
      return saved(on.ledger()).areas[0]?.order;
    };
    expect(inOrder([2, 3, 1, 4])).toBe('2 3 1 4');
    expect(inOrder([1, 2, 3, 4])).toBe(undefined);
  });

  it('[O1] what was said to sit behind is kept, and a part that was renewed is renewed', () => {
    const on = opened();
    on.off('bracket/1', m6);
    on.declare(
      { kind: 'behind-declared', front: 'area:bracket', behind: 'area:cover', until: 'closed', from: 'said' },
      { kind: 'part-declared', part: 'gasket', heldBy: [] },
    );
    on.call('remove-part', { part: 'gasket' });
    on.call('fill-box', { name: 'new gasket', replaces: 'gasket' });
    on.call('replace-part', { part: 'gasket', from: 'new gasket' });
    const plan = saved(on.ledger());
    expect(plan.behind).toEqual([{ front: 'area:bracket', behind: ['area:cover'] }]);
    expect(plan.parts).toEqual([{ part: 'gasket', renew: true }]);
    expect(plan.newParts).toEqual([{ name: 'new gasket', sort: 'part', quantity: 1, replaces: 'gasket' }]);
  });

  it('a dropped service is not kept, and without any the plan has one of its own name', () => {
    const on = opened();
    on.call('order-service', { service: 'paint' });
    on.call('drop-service', { service: 'paint', because: 'not today' });
    expect(saved(on.ledger()).services.map((s) => s.service)).toEqual(['reseal']);
    const none = bench();
    none.off('cover/1', m6);
    expect(saved(none.ledger(), 'cover off')).toMatchObject({
      name: 'cover off',
      services: [{ service: 'cover off' }],
    });
  });
});
