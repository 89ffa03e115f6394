// Everything that still stands between the car and the road, each with its next call (X5).

import { areaOfPlace } from '../../job/area-of-place.ts';
import { lastOpenedFirst } from '../../job/learned.ts';
import { type Ledger, stateOf } from '../../job/ledger.ts';
import { openPointsToLookAt } from '../../job/next-call.ts';
import { firstWords } from '../../job/next-elsewhere.ts';
import { gapWords } from '../../job/number-jump.ts';
import { isOfTheCar } from '../../job/of-the-car.ts';
import type { OpenPoint } from '../../job/open-point.ts';
import { gatedBy } from '../../job/order.ts';
import { waitWords } from '../../job/ready.ts';
import { areaOf, named, nameOf, sortOf, subjectText } from '../../job/subjects.ts';
import { toldOnce } from '../../job/told-once.ts';
import { voidBeadWords } from '../../job/towards-bead.ts';
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { nextWords } from '../line-reader.ts';
import { type Listed, type Rows, rowsMadeBy } from '../listed.ts';
import { specWords } from '../spec-words.ts';

/** Of no holes that could be gated: whether something else comes first shows in the call that leads to it. */
const waitsByItsCall: ReadonlySet<string> = new Set(['part', 'connection', 'face', 'drive', 'circuit']);

export function leavingRows(desk: Desk): Rows {
  const { points: each, withNext } = openPointsToLookAt(desk.ledger, desk.now);
  const all = toldOnce(desk.ledger, each);
  // What can be closed now comes before what waits for something behind it.
  const gated = new Map<OpenPoint, boolean>();
  const isGated = (point: OpenPoint): boolean => {
    const areas = areasOf(desk, point.at);
    if (areas.length > 0) return areas.every((area) => gatedBy(desk.ledger, area) !== undefined);
    if (!waitsByItsCall.has(sortOf(point.at))) return false;
    const known = gated.get(point) ?? firstWords(desk.ledger, withNext(point)) !== '';
    gated.set(point, known);
    return known;
  };
  const together = (some: readonly OpenPoint[]) => asItGoesBack(desk, some);
  const points = [...together(all.filter((point) => !isGated(point))), ...together(all.filter(isGated))];
  // A call is named with its area: rows of several stand one below the other.
  const { area: _, ...elsewhere } = desk.facing;
  const anywhere: Desk = { ...desk, facing: elsewhere };
  const groupOf = (point: OpenPoint) => `${isGated(point)} ${areaOfPlace(desk.ledger, point.at) ?? ''}`;
  const rowAt = (i: number): Listed => {
    const point = withNext(points[i] as OpenPoint);
    const { at, because, code } = point;
    const text = `${at === 'vehicle' ? '' : `${subjectText(at)}: `}${because}${gapWords(desk.ledger, point)}${voidBeadWords(desk.ledger, point, desk.now)}${firstWords(desk.ledger, point)}`;
    const next = point.next ? nextWords(anywhere, point.next) : '';
    const end = next === '' ? waitWords(desk.ledger, point, desk.now) : next;
    const forWhat = point.next?.verb === 'confirm-clock' && code !== 'bead-curing' ? ', for what cures before it' : '';
    const more = end === '' ? `${text}.` : `${text}. Next: ${end}${forWhat}${fastenerWords(desk, point)}`;
    return {
      key: `${code} ${at}`,
      mark: isGated(point) ? 'gated' : 'open',
      name: '',
      text,
      end,
      more,
      picks: picksOf(at),
      leads: at,
    };
  };
  return rowsMadeBy(points.length, rowAt, (i) => groupOf(points[i] as OpenPoint));
}

/**
 * Those of one area together, the area opened last first, as the way back goes; then what is of no area: a joint of the whole
 * car behind the rest, a service at last.
 */
function asItGoesBack({ ledger }: Desk, some: readonly OpenPoint[]): OpenPoint[] {
  const there = some.map((point) => ({ point, area: areaOfPlace(ledger, point.at) }));
  const areas = [...new Set(there.flatMap(({ area }) => area ?? []))];
  const turn = new Map(lastOpenedFirst(ledger, areas).map((area, i) => [area, i]));
  const turnOf = ({ point, area = '' }: (typeof there)[number]): number =>
    turn.get(area) ?? areas.length + (point.code === 'service-open' ? 2 : Number(isOnLast(ledger, point.at)));
  return there.toSorted((one, other) => turnOf(one) - turnOf(other)).map(({ point }) => point);
}

/** "connection:battery earth". */
function isOnLast(ledger: Ledger, at: string): boolean {
  const c = stateOf(ledger, 'connection', named('connection', at) ?? '');
  return c !== undefined && isOfTheCar(c);
}

/** The fastener that the call names by its number in the log. */
function fastenerWords({ ledger }: Desk, { next }: OpenPoint): string {
  const named = typeof next?.fastener === 'string' ? stateOf(ledger, 'fastener', next.fastener) : undefined;
  return named && next ? `; ${next.fastener} is the ${specWords(named.spec)}` : '';
}

/** The areas that something is of; of a part those whose fasteners hold it. */
function areasOf({ ledger }: Desk, at: string): string[] {
  const hole = named('hole', at);
  if (hole !== undefined) return [areaOf(hole)];
  const part = named('part', at);
  if (part !== undefined) return (stateOf(ledger, 'part', part)?.declared?.heldBy ?? []).map(areaOf);
  const area = named('area', at);
  return area === undefined ? [] : [area];
}
function picksOf(at: string): Args {
  const [sort] = at.split(':');
  return sort && at !== sort
    ? { [sort === 'line' ? 'lines' : sort]: sort === 'line' ? [Number(nameOf(at))] : nameOf(at) }
    : {};
}
