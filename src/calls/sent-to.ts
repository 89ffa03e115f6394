// Where a screen opens that one is sent to: on the row of what the area in use waits for, so that the next key speaks of that
// and of nothing else. What is named on the bench and what is picked there are one reading.

import { areaOfPlace } from '../job/area-of-place.ts';
import { holesOf, isOff } from '../job/closed.ts';
import { inFrontOf } from '../job/in-front.ts';
import { every, stateOf } from '../job/ledger.ts';
import { type FaceWithoutBead, facesNotClean, facesWithoutBead } from '../job/warnings-building.ts';
import type { ScreenId } from '../view/screens.ts';
import { circuitAwaited } from './circuits-in-turn.ts';
import { type Desk, nextHole } from './desk.ts';
import type { Listed } from './listed.ts';
import { mindedBack } from './minded-back.ts';
import { names } from './slot-names.ts';

/** S1: as long as a face of the area lies without its bead; before the first fastener of one that wants none. */
export function facesAwaited(desk: Desk): { toSeal: FaceWithoutBead[]; toClean: string[] } {
  const { ledger, facing, now } = desk;
  const a = facing.area === undefined ? undefined : stateOf(ledger, 'area', facing.area);
  const next = nextHole(desk, 'build');
  const h = next === undefined ? undefined : stateOf(ledger, 'hole', next);
  const toSeal = (a ? holesOf(ledger, a) : []).flatMap(({ hole }) => facesWithoutBead(ledger, hole, now));
  return {
    toSeal: [...new Map(toSeal.map((one) => [one.face, one])).values()],
    toClean: h && isOff(h) ? facesNotClean(ledger, { hole: h.hole }) : [],
  };
}

/** What is to be minded at the area in use, and at what stands in front of it; before anything was touched, on the whole car. */
export function mindedHere({ ledger, facing: { area } }: Desk): string[] {
  const before = area === undefined ? [] : inFrontOf(ledger, `area:${area}`);
  const about = new Set<string | undefined>([...(area === undefined ? [] : [`area:${area}`]), ...before]);
  if (ledger.tallies.all.touched === 0) about.add(undefined);
  const cautions = [...every(ledger, 'service')].flatMap((s) => s.cautions ?? []);
  const minded = cautions.filter(({ at }) => about.has(at));
  const isHere = ({ at }: { at?: string }): boolean => area !== undefined && at === `area:${area}`;
  // What is said of this place is read before what is said of the whole car.
  return [...new Set([...minded.filter(isHere), ...minded].map(({ words }) => words))];
}

const waits = ({ mark }: Listed): boolean => mark === 'open' || mark === 'half';

/** How far a row of a screen is what one was sent there for: the least is the one; undefined where it is not. */
type Wanted = (row: Listed) => number | undefined;
const byScreen: Partial<Record<ScreenId, (desk: Desk, from: ScreenId) => Wanted>> = {
  sealing(desk) {
    const { toSeal, toClean } = facesAwaited(desk);
    const named = [...toSeal.map(({ face }) => face), ...toClean];
    const drains = circuitAwaited(desk, names(desk.ledger, 'circuit'));
    return (row) => {
      if (drains !== undefined && row.picks.circuit === drains) return named.length + 4;
      const face = row.name === 'face' ? row.text : undefined;
      if (face === undefined) return undefined;
      if (named.includes(face)) return named.indexOf(face);
      const area = stateOf(desk.ledger, 'face', face)?.declared?.area;
      const isHere = area !== undefined && area === desk.facing.area;
      return waits(row) ? named.length + (isHere ? 0 : 2) + (row.mark === 'open' ? 0 : 1) : undefined;
    };
  },
  findings:
    ({ ledger, facing }) =>
    (row) => {
      if (!waits(row) || row.leads === undefined) return undefined;
      if (facing.hole !== undefined && row.leads === `hole:${facing.hole}`) return 0;
      return facing.area !== undefined && areaOfPlace(ledger, row.leads) === facing.area ? 1 : undefined;
    },
  rotation:
    ({ ledger, facing }) =>
    (row) => {
      const { areas = [] } = stateOf(ledger, 'drive', row.key)?.declared ?? {};
      return row.name === 'drive' && facing.area !== undefined && areas.includes(facing.area) ? 0 : undefined;
    },
  todo(desk, from) {
    // Over the next hole that comes off the strip screen says how much there is to mind; else the list is what is asked for.
    const isAnywhere = desk.facing.area === undefined;
    const isSent = from === 'strip' && (isAnywhere || nextHole(desk, 'strip') !== undefined);
    const minded = isSent ? mindedHere(desk) : from === 'build' ? mindedBack(desk).map(({ words }) => words) : [];
    // What is said of this place is read before what is said of the whole car.
    return (row) => (row.name === 'mind' && minded.includes(row.text) ? Number(row.end === '') : undefined);
  },
};

export const isSentTo = (screen: ScreenId): boolean => byScreen[screen] !== undefined;
/** Which row it is; undefined where none is wanted, and the list opens where it was left. */
export function rowSentTo(desk: Desk, screen: ScreenId, from: ScreenId, rows: readonly Listed[]): number | undefined {
  const wanted = byScreen[screen]?.(desk, from);
  let best: number | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, row] of wanted ? rows.entries() : []) {
    const rank = wanted?.(row);
    if (rank === undefined || rank >= least) continue;
    best = i;
    least = rank;
  }
  return best;
}
