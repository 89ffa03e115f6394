// P2: what a plan says, in the names this job has for its areas. Parts and all else keep theirs.
import { areaOf, type Hole, holeIn, named, type Subject, withinArea } from '../job/subjects.ts';
import type { Declaration } from './declared-whole.ts';

/** A plan's area → the job's name for it. */
export type AreaNames = ReadonlyMap<string, string>;

const areaIn = (names: AreaNames, area: string): string => names.get(area) ?? area;
const holeIs = (names: AreaNames, hole: Hole): Hole => holeIn(areaIn(names, areaOf(hole)), withinArea(hole));

export function renamedSubject(names: AreaNames, subject: Subject): Subject {
  const area = named('area', subject);
  if (area !== undefined) return `area:${areaIn(names, area)}`;
  const hole = named('hole', subject);
  return hole === undefined ? subject : `hole:${holeIs(names, hole)}`;
}

export const renamed = (names: AreaNames, all: readonly Declaration[]): Declaration[] =>
  names.size === 0 ? [...all] : all.map((one) => renamedOne(names, one));

function renamedOne(names: AreaNames, one: Declaration): Declaration {
  switch (one.kind) {
    case 'area-declared': {
      const area = areaIn(names, one.area);
      return area === one.area ? one : { ...one, area, inPlans: one.area };
    }
    case 'hole-declared':
      return { ...one, hole: holeIs(names, one.hole) };
    case 'part-declared':
      return { ...one, heldBy: one.heldBy.map((hole) => holeIs(names, hole)) };
    case 'connection-declared':
      return one.area === undefined ? one : { ...one, area: areaIn(names, one.area) };
    case 'face-declared':
      return {
        ...one,
        area: areaIn(names, one.area),
        pressedBy: one.pressedBy.map((hole) => holeIs(names, hole)),
      };
    case 'behind-declared':
      return { ...one, front: renamedSubject(names, one.front), behind: renamedSubject(names, one.behind) };
    case 'drive-declared':
      return {
        ...one,
        areas: one.areas.map((area) => areaIn(names, area)),
        ...(one.crankBolt !== undefined && { crankBolt: holeIs(names, one.crankBolt) }),
      };
    case 'temporary-declared':
      return one.at === undefined ? one : { ...one, at: renamedSubject(names, one.at) };
    case 'circuit-declared':
    case 'product-declared':
      return one;
  }
}
