// One first merge of twenty services of a hundred areas each, in a program that has merged nothing before; run by plans.ts,
// which reads the two times it prints: the merge, and the reading of the same plans as bare JSON.
import { mergePlans, type Source } from '../../src/plan/merge.ts';
import type { Plan } from '../../src/plan/plan.ts';

const areasOfEach = 100;
/** Each plan has most of its areas with its neighbours, as services of one vehicle have. */
const apart = 10;

function planOf(i: number): Plan {
  const areas = Array.from({ length: areasOfEach }, (_, k) => `area ${i * apart + k + 1}`);
  return {
    countback: 'plan',
    version: 1,
    name: `plan ${i + 1}`,
    vehicle: 'invented',
    services: [{ service: `service ${i + 1}`, areas }],
    areas: areas.map((area) => ({
      area,
      method: { by: 'torque' },
      order: '1 3 5 2 4 6',
      holes: [
        {
          numbers: '1-6',
          wants: { kind: 'bolt', head: 'hex 10', thread: 'M6', lengthMm: 25 },
          at: Array.from({ length: 6 }, (_, n): [number, number] => [n * 10, 0]),
        },
      ],
    })),
    parts: areas.map((area) => ({ part: `cover of ${area}`, heldBy: { [area]: '1-6' } })),
    behind: areas.slice(1).map((area, k) => ({ front: `area:${areas[k]}`, behind: [`area:${area}`] })),
  };
}

const texts = Array.from({ length: 20 }, (_, i) => JSON.stringify(planOf(i)));
const beforeParse = performance.now();
const sources = texts.map((text, i): Source => ({ plan: JSON.parse(text) as Plan, file: `plan-${i + 1}.json` }));
const parsedMs = performance.now() - beforeParse;
const before = performance.now();
const merged = mergePlans(sources as [Source, ...Source[]]);
const mergedMs = performance.now() - before;
if (!merged.ok || merged.plan.areas.length !== 290) throw new Error('they did not merge');
process.stdout.write(JSON.stringify({ mergedMs, parsedMs }));
