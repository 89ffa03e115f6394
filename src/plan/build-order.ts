// The way back: the strip order turned round, with what must be proved or done in its place before the next thing may
// close, and what stands at the end before the car leaves. Says when; the job's own rules judge whether.
import { areaOf, type Hole, named } from '../job/subjects.ts';
import { type Declaration, declaredWhole } from './declared-whole.ts';
import type { Step } from './need.ts';
import type { Plan } from './plan.ts';
import { holeOfUnit } from './works.ts';

export type Proof =
  | { kind: 'companions'; area: string; companions: readonly string[] }
  | { kind: 'blind-holes-dry' | 'direction'; area: string }
  | { kind: 'face'; face: string; beads: number }
  | { kind: 'rotation'; drive: string; tightFirst: readonly Hole[] }
  | { kind: 'later'; later: 'after-turning' | 'on-wheels'; holes: readonly Hole[] }
  | { kind: 'fill' | 'leak-check'; circuit: string }
  | { kind: 'pedal' | 'road-test' }
  | { kind: 'second-look'; holes: readonly Hole[] };
export type BuildStep = Step | Proof;

type AreaSaid = Extract<Declaration, { kind: 'area-declared' }>;

/** @param strip as needOf has it: the same steps come back in reverse */
export function buildOrder(plan: Plan, strip: readonly Step[]): BuildStep[] {
  const whole = declaredWhole(plan);
  const touched = strip.flatMap((step) => step.units);
  const holes = new Set(touched.flatMap((unit) => holeOfUnit(unit) ?? []));
  const back = strip.toReversed().map((step) => ({ ...step, units: step.units.toReversed() }));
  const closes = new Set<string>();
  const steps = back.flatMap((step): BuildStep[] => {
    const drive = named('rotation', step.at);
    if (drive !== undefined) return [{ kind: 'rotation', drive, tightFirst: laterIn(whole, holes, 'after-belt') }];
    const area = named('area', step.at);
    // An area that comes back in two goes is made ready before the first.
    if (area === undefined || closes.has(area)) return [step];
    closes.add(area);
    return [...readied(whole, area, step), step];
  });
  return [...steps, ...beforeItLeaves(whole, strip, holes)];
}

function readied(whole: readonly Declaration[], area: string, { units }: Step): Proof[] {
  const said = whole.find((one): one is AreaSaid => one.kind === 'area-declared' && one.area === area);
  const opened = new Set(units.flatMap((unit) => holeOfUnit(unit) ?? []));
  const faces = whole.flatMap((one): Proof[] =>
    one.kind === 'face-declared' && one.pressedBy.some((hole) => opened.has(hole))
      ? [{ kind: 'face', face: one.face, beads: Number(one.bead ?? 0) }]
      : [],
  );
  return [
    ...faces,
    ...(said?.companions ? [{ kind: 'companions', area, companions: said.companions } as const] : []),
    ...(said?.blindHoles ? [{ kind: 'blind-holes-dry', area } as const] : []),
    ...(said?.marked ? [{ kind: 'direction', area } as const] : []),
  ];
}

/** T1: wheel nuts get their final on the ground whatever is declared. */
function laterIn(whole: readonly Declaration[], holes: ReadonlySet<Hole>, later: string): Hole[] {
  const wheels = new Set(
    whole.flatMap((one) => (one.kind === 'area-declared' && one.role === 'wheel' ? one.area : [])),
  );
  return whole.flatMap((one) => {
    if (one.kind !== 'hole-declared' || !holes.has(one.hole)) return [];
    return (one.later ?? (wheels.has(areaOf(one.hole)) ? 'on-wheels' : undefined)) === later ? one.hole : [];
  });
}

function beforeItLeaves(whole: readonly Declaration[], strip: readonly Step[], holes: ReadonlySet<Hole>): Proof[] {
  const parted = new Set(strip.flatMap((step) => named('connection', step.at) ?? []));
  const areas = new Set([...holes].map(areaOf));
  const opened = new Set<string>();
  const empty = new Set<string>();
  const plugs = new Set<string>();
  const roles = new Set<string>();
  const critical: Hole[] = [];
  const criticalAreas = new Set<string>();
  for (const one of whole) {
    if (one.kind === 'area-declared' && areas.has(one.area)) {
      if (one.role) roles.add(one.role);
      if (one.critical) criticalAreas.add(one.area);
    }
    if (one.kind === 'hole-declared' && holes.has(one.hole) && (one.critical || criticalAreas.has(areaOf(one.hole)))) {
      critical.push(one.hole);
    }
    if (one.kind === 'hole-declared' && holes.has(one.hole) && one.wants?.kind === 'plug') plugs.add(areaOf(one.hole));
    if (one.kind === 'connection-declared' && one.circuit && parted.has(one.connection)) empty.add(one.circuit);
    if (one.kind === 'face-declared' && one.pressedBy.some((hole) => holes.has(hole))) {
      for (const circuit of one.keepsIn) (plugs.has(one.area) ? empty : opened).add(circuit);
    }
  }
  const later = (kind: 'after-turning' | 'on-wheels'): Proof[] => {
    const some = laterIn(whole, holes, kind);
    return some.length > 0 ? [{ kind: 'later', later: kind, holes: some }] : [];
  };
  return [
    ...later('after-turning'),
    ...[...empty].map((circuit): Proof => ({ kind: 'fill', circuit })),
    ...later('on-wheels'),
    ...(roles.has('brake') ? [{ kind: 'pedal' } as const] : []),
    ...[...new Set([...empty, ...opened])].map((circuit): Proof => ({ kind: 'leak-check', circuit })),
    ...(roles.size > 0 ? [{ kind: 'road-test' } as const] : []),
    ...(critical.length > 0 ? [{ kind: 'second-look', holes: critical } as const] : []),
  ];
}
