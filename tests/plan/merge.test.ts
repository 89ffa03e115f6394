// Merging plans of one vehicle: what they share is there once, and what they say differently is refused with both places.
import { describe, expect, it } from 'vitest';
import { declaredWhole } from '../../src/plan/declared-whole.ts';
import { mergePlans, type Source } from '../../src/plan/merge.ts';
import { needOf } from '../../src/plan/need.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read-plan.ts';
import { worksOf } from '../../src/plan/works.ts';
import { writtenFrom } from '../../src/plan/written.ts';
import { referencePlan } from '../jobs/plan-of-reference.ts';
import { smallPlan } from './small-plans.ts';

const nothingOff = new Set<string>();
const base = (more: Partial<Plan>): Plan => ({
  countback: 'plan',
  version: 1,
  name: 'one',
  vehicle: 'any',
  services: [{ service: 'reseal', areas: ['cover'] }],
  areas: [{ area: 'cover', holes: [{ numbers: '1-3', wants: { kind: 'bolt', head: 'hex 10' } }] }],
  ...more,
});
const merge = (one: Plan, other: Plan) =>
  mergePlans([
    { plan: one, file: 'one.json' },
    { plan: other, file: 'other.json' },
  ]);
const clashesOf = (one: Plan, other: Plan) => {
  const merged = merge(one, other);
  return merged.ok ? [] : merged.clashes;
};
const covering = (holes: Plan['areas'][number]['holes'], more: object = {}): Plan =>
  base({ services: [{ service: 'pads', areas: ['cover'] }], areas: [{ area: 'cover', holes, ...more }] });

describe('merging', () => {
  it('leaves one plan as it is, and a plan with itself the same', () => {
    const plan = referencePlan();
    expect(mergePlans([{ plan, file: 'a' }])).toEqual({ ok: true, plan });
    const twice = merge(plan, plan);
    expect(twice.ok && declaredWhole(twice.plan)).toEqual(declaredWhole(plan));
    expect(twice.ok && twice.plan.services).toEqual(plan.services);
  });

  it('fills in what only one of them knows, and keeps a danger either of them knows', () => {
    const merged = merge(
      base({}),
      covering([{ numbers: '1-3', wants: { thread: 'M6', oneUse: true } }], { critical: true, companions: ['dowel'] }),
    );
    expect(merged.ok && merged.plan.areas).toEqual([
      {
        area: 'cover',
        critical: true,
        companions: ['dowel'],
        holes: [{ numbers: '1-3', wants: { kind: 'bolt', head: 'hex 10', thread: 'M6', oneUse: true } }],
      },
    ]);
  });

  it('buys what both want once, the greater number of it, and for the services that want it', () => {
    const bolt = { name: 'bolt, new', sort: 'fastener', spec: { kind: 'bolt' } } as const;
    const one = base({ newParts: [{ ...bolt, quantity: 2 }] });
    const other = {
      ...covering([{ numbers: '1-3' }]),
      newParts: [
        { ...bolt, quantity: 3, services: ['pads'] },
        { name: 'grease', sort: 'supply', quantity: 1 },
      ],
    } satisfies Plan;
    const merged = merge(one, other);
    expect(merged.ok && merged.plan.newParts).toEqual([
      { ...bolt, quantity: 3, services: ['reseal', 'pads'] },
      { name: 'grease', sort: 'supply', quantity: 1, services: ['pads'] },
    ]);
  });

  it('takes off what one only slackens and the other takes off', () => {
    const merged = merge(covering([{ numbers: '1-3', slackOnly: true }]), base({}));
    expect(merged.ok && merged.plan.areas[0]?.holes[0]?.slackOnly).toBe(undefined);
  });

  it('waits for closed where one of them would let snug do', () => {
    const edge = (until?: 'snug') =>
      base({
        services: [{ service: 'reseal', areas: ['cover'], also: ['connection:plug'] }],
        connections: [{ connection: 'plug' }],
        behind: [{ front: 'connection:plug', behind: ['area:cover'], ...(until && { until }) }],
      });
    const merged = merge(edge('snug'), edge());
    expect(merged.ok && merged.plan.behind).toEqual([{ front: 'connection:plug', behind: ['area:cover'] }]);
  });

  it('refuses two specs for one hole, naming both places', () => {
    expect(clashesOf(base({}), covering([{ numbers: '1 2' }, { numbers: '3', wants: { head: 'hex 8' } }]))).toEqual([
      {
        what: 'cover 3: two say different wants head',
        places: ['one.json: areas[0].holes[0]', 'other.json: areas[0].holes[1]'],
      },
    ]);
  });

  it.each<[string, Plan, string]>([
    ['another number of holes', covering([{ numbers: '1-4' }]), 'cover: hole 4 is in one and not in the other'],
    [
      'another method',
      covering([{ numbers: '1-3' }], { method: { by: 'hand' } }),
      'cover: two say different method by',
    ],
    ['another role', covering([{ numbers: '1-3' }], { role: 'wheel' }), 'cover: two say different role'],
    [
      'a part held elsewhere',
      { ...covering([{ numbers: '1-3' }]), parts: [{ part: 'lid', heldBy: { cover: '1 2' } }] },
      'lid: two say different holes',
    ],
    [
      'a service of the same name',
      base({
        services: [{ service: 'reseal', areas: ['cover'], also: ['part:lid'] }],
        parts: [{ part: 'lid', heldBy: { cover: '1-3' } }],
      }),
      'reseal: two services of one name',
    ],
  ])('refuses %s, naming both places', (_, other, what) => {
    const one = base({
      areas: [{ area: 'cover', role: 'engine', method: { by: 'torque' }, holes: [{ numbers: '1-3' }] }],
      parts: [{ part: 'lid', heldBy: { cover: '1-3' } }],
    });
    const [clash, ...more] = clashesOf(one, other);
    expect(clash?.what).toBe(what);
    expect(more).toEqual([]);
    expect(clash?.places.map((place) => place.split(':')[0])).toEqual(['one.json', 'other.json']);
  });

  it('refuses an order that only goes round in the two together, naming where each edge stands', () => {
    const order = (front: string, behind: string) =>
      base({
        services: [{ service: `by ${front}`, areas: ['cover', 'bracket'] }],
        areas: ['cover', 'bracket'].map((area) => ({ area, holes: [{ numbers: '1' }] })),
        behind: [{ front: `area:${front}`, behind: [`area:${behind}`] }],
      });
    const [clash] = clashesOf(order('cover', 'bracket'), order('bracket', 'cover'));
    expect(clash?.what).toMatch(
      /^(cover in front of bracket in front of cover|bracket in front of cover in front of bracket): that goes round$/,
    );
    expect([...(clash?.places ?? [])].sort()).toEqual([
      'one.json: behind[0].behind[0]',
      'other.json: behind[0].behind[0]',
    ]);
  });

  it('of a thousand small plans cut in two needs what the whole needed', () => {
    let cut = 0;
    for (let seed = 1; seed <= 1000; seed++) {
      const whole = smallPlan(seed);
      if (!readPlan(JSON.stringify(whole), 'whole').ok) continue;
      const half = (odd: number): Source => ({
        file: `half ${odd}`,
        plan: { ...whole, behind: (whole.behind ?? []).filter((_, i) => i % 2 === odd) },
      });
      const merged = mergePlans([half(0), half(1)]);
      if (!merged.ok) throw new Error(`${seed}: ${merged.clashes[0]?.what}`);
      const need = (plan: Plan) => [...needOf(worksOf(plan), plan, ['some'], nothingOff).whole].sort();
      expect({ seed, need: need(merged.plan) }).toEqual({ seed, need: need(whole) });
      cut += Number((whole.behind ?? []).length > 1);
    }
    expect(cut).toBeGreaterThan(300);
  });
});

describe('writing declarations as a plan', () => {
  it('comes back as the same declarations, for the reference plan and a thousand small ones', () => {
    const plans = [referencePlan(), ...Array.from({ length: 1000 }, (_, i) => smallPlan(i + 1))];
    for (const plan of plans) {
      const again = { ...plan, ...writtenFrom(declaredWhole(plan)) };
      expect(declaredWhole(again)).toEqual(declaredWhole(plan));
    }
  });

  it('keeps levels, runs and places', () => {
    const plan = base({
      areas: [
        {
          area: 'cover',
          order: '3 1 2',
          holes: [
            {
              numbers: '1-3 7',
              at: [
                [0, 0],
                [1, 0],
                [2, 0],
                [9, 9],
              ],
            },
            { numbers: '7 washer, 8 nut 2', wants: { kind: 'washer' } },
          ],
        },
      ],
    });
    expect(writtenFrom(declaredWhole(plan)).areas).toEqual(plan.areas);
  });
});
