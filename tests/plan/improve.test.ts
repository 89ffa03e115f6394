// A plan improved by the next job made from it: what is shown, what is taken, and that the plan is sound afterwards.
import { describe, expect, it } from 'vitest';
import { changesOf, improved } from '../../src/plan/improve.ts';
import { needOf } from '../../src/plan/need.ts';
import { ordersOf } from '../../src/plan/orders.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read-plan.ts';
import { knownNames } from '../../src/plan/same-place.ts';
import { planFromJob } from '../../src/plan/save.ts';
import { worksOf } from '../../src/plan/works.ts';
import { type Bench, bench, m6 } from '../job/bench.ts';
import { playLines, scriptLines } from '../jobs/lines.ts';
import { referencePlan } from '../jobs/plan-of-reference.ts';

const plan = referencePlan();
const changes = (on: Pick<Bench, 'ledger'>, of: Plan = plan) =>
  changesOf(of, planFromJob(on.ledger()), knownNames(on.ledger()));
const words = (on: Pick<Bench, 'ledger'>, of?: Plan) => changes(on, of).map((one) => one.words);
const sound = (one: Plan): Plan => {
  const read = readPlan(JSON.stringify(one), 'improved.json');
  if (!read.ok) throw new Error(`${read.fault.where}: ${read.fault.what}`);
  return read.plan;
};
function job(...services: string[]): Bench {
  const on = bench();
  on.call('order-services', { orders: ordersOf(plan, services, on.ledger()) });
  return on;
}

describe('what the next job says', () => {
  it('is nothing more where it went as planned, whichever services it was made for', () => {
    expect(words(job('timing belt'))).toEqual([]);
    expect(words(job(...plan.services.map((s) => s.service)))).toEqual([]);
    const on = job('cam cover gasket');
    for (const hole of [1, 2, 3]) on.off(`upper belt cover/${hole}`);
    expect(words(on)).toEqual([]);
  });

  it('of the reference job: what the bracket and the cover hole wanted, and what was bought besides', () => {
    const played = playLines(scriptLines('reference-planned.calls'));
    const said = changesOf(plan, planFromJob(played.ledger)).map((one) => one.words);
    expect(said).toEqual([
      'new cover bolt: new to buy, 1',
      'new bracket bolt: new to buy, 1',
      'thread insert: new to buy, 1',
      'tube of sealant: new to buy, 1',
    ]);
  });

  const corrected = () => {
    const on = job('cam cover gasket');
    on.call('state-wants', {
      hole: 'upper belt cover/2',
      spec: { kind: 'bolt', head: 'hex 10', thread: 'M6', lengthMm: 30 },
      because: 'the boss is longer',
    });
    on.call('remove', { hole: 'mount bracket/4', to: 'tray:1' }, { because: 'done already' });
    on.off('heat shield/1', m6);
    on.off('heat shield/2', m6);
    on.declare(
      { kind: 'behind-declared', front: 'area:heat shield', behind: 'area:cam cover', until: 'closed', from: 'said' },
      { kind: 'connection-declared', connection: 'knock sensor plug' },
      { kind: 'hole-declared', hole: 'cam cover/10', tool: 'joint and long bar' },
    );
    return on;
  };

  it('is shown one line a thing: a spec, a nut that came off, a tool, an area with its holes and its order, a plug', () => {
    expect(words(corrected())).toEqual([
      'mount bracket 4: slack only yes -> nothing',
      'upper belt cover 2: wants bolt hex 10 M6x25 -> bolt hex 10 M6x30',
      'cam cover 10: tool nothing -> joint and long bar',
      'heat shield: new',
      'heat shield 1: new',
      'heat shield 2: new',
      'knock sensor plug: new',
      'cam cover behind heat shield: new',
    ]);
  });

  it('taken whole, the plan is sound, says the same as the job, and takes off what is new for its service alone', () => {
    const on = corrected();
    const better = sound(improved(plan, changes(on)));
    expect(words(on, better)).toEqual([]);
    const need = (service: string) => needOf(worksOf(better), better, [service], new Set()).whole;
    expect(need('cam cover gasket')).toContain('hole:heat shield/2');
    expect(need('cam cover gasket')).toContain('connection:knock sensor plug');
    expect(need('timing belt')).not.toContain('hole:heat shield/2');
    for (const kept of ['name', 'vehicle', 'cautions', 'sources', 'drives', 'products', 'newParts'] as const)
      expect(better[kept]).toEqual(plan[kept]);
  });

  it('taken by choice, only that is other in it', () => {
    const on = corrected();
    const [, second] = changes(on);
    if (!second) throw new Error('no change');
    const better = sound(improved(plan, [second]));
    expect(words(on, better)).toHaveLength(7);
    const differ = better.areas.filter((area, i) => JSON.stringify(area) !== JSON.stringify(plan.areas[i]));
    expect(differ.map((area) => area.area)).toEqual(['upper belt cover']);
    expect(improved(plan, [])).toEqual(plan);
  });

  it('[P2] said of a place by its own name is said of the plan’s', () => {
    const on = bench();
    for (const hole of [1, 2, 9])
      on.off(`valve cover/${hole}`, { kind: 'bolt', head: 'hex 8', thread: 'M6', lengthMm: 35 });
    const same = [{ area: 'valve cover', is: 'cam cover' }];
    on.call('order-services', { orders: ordersOf(plan, ['cam cover gasket'], on.ledger(), same) });
    on.call('state-wants', {
      hole: 'valve cover/3',
      spec: { kind: 'bolt', head: 'hex 8', thread: 'M6', lengthMm: 40 },
      because: 'longer there',
    });
    expect(words(on)).toEqual(['cam cover 3: wants bolt hex 8 M6x35 shouldered -> bolt hex 8 M6x40 shouldered']);
  });

  it('a service the plan has not comes with its areas, and another number bought is another number', () => {
    const on = job('cam cover gasket');
    on.call('order-service', { service: 'heat shield' });
    on.off('heat shield/1', m6);
    on.call('fill-box', { name: 'gasket, new', quantity: 2, replaces: 'gasket' });
    expect(words(on)).toEqual([
      'heat shield: new service',
      'heat shield: new',
      'heat shield 1: new',
      'gasket, new: bought 1 -> 2',
    ]);
    const better = sound(improved(plan, changes(on)));
    expect(better.services.at(-1)).toEqual({ service: 'heat shield', areas: ['heat shield'] });
    expect(better.newParts?.find((one) => one.name === 'gasket, new')).toMatchObject({
      quantity: 2,
      services: ['cam cover gasket'],
    });
  });
});
