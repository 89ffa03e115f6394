// The areas of a job, and of the one in use its holes with their levels and the parts and connections that belong there.

import { areaOfJoint } from '../../job/area-of-place.ts';
import { keepsOpen, namedAsParted, restOf } from '../../job/area-rest.ts';
import { isCritical, isEmptyOnArrival, isOff, isOwnLost, isTouched, openBecause, wantsOf } from '../../job/closed.ts';
import { isFreed } from '../../job/freed.ts';
import type { HoleState } from '../../job/hole-states.ts';
import { every, type Ledger, lineAt, stateOf, tallyOf } from '../../job/ledger.ts';
import { gatedBy } from '../../job/order.ts';
import { inLooseningOrder, inOrder } from '../../job/passes.ts';
import type { AreaState } from '../../job/states.ts';
import { areaOf, inHole, named, numberOf, subjectText, withinArea } from '../../job/subjects.ts';
import { suspectedAt } from '../../job/suspicions.ts';
import { isWithdrawn } from '../../job/withdrawn.ts';
import type { Desk } from '../desk.ts';
import { type Listed, type Mark, type Rows, rowsMadeBy } from '../listed.ts';
import { specWords } from '../spec-words.ts';
import { outOf } from '../tally-words.ts';

/** Every hole of the area in use with its levels: in the order they are loosened or tightened in. */
export function holesHere(desk: Desk, order: 'loosening' | 'tightening'): HoleState[] {
  const { area } = desk.facing;
  const a = area === undefined ? undefined : stateOf(desk.ledger, 'area', area);
  if (!a) return [];
  const numbers = (order === 'loosening' ? inLooseningOrder : inOrder)(desk.ledger, a.area);
  const levels = Map.groupBy(
    a.holes.filter((h) => withinArea(h).includes(' ')),
    (h) => `${a.area}/${numberOf(h)}`,
  );
  return numbers.flatMap((n) => [n, ...(levels.get(n) ?? [])]).flatMap((h) => stateOf(desk.ledger, 'hole', h) ?? []);
}

/** State of a hole in one word. */
export function holeWord(ledger: Ledger, h: HoleState): string {
  const o = h.called.occupant;
  if (!isTouched(h)) return 'as found';
  if (o?.working) return 'working';
  if (o?.forNow) return 'for now';
  if (isOwnLost(ledger, h)) return 'lost';
  if (isOff(h)) return isEmptyOnArrival(h) ? 'empty' : 'off';
  if (!o) return 'left empty';
  return o.level === 'tight' && openBecause(ledger, h) ? 'tight, open' : o.level;
}
export const holeMark = (ledger: Ledger, h: HoleState): Mark =>
  isTouched(h) ? touchedMark(h, openBecause(ledger, h)) : markAsFound(h);
const markAsFound = (h: HoleState): Mark => (h.declared?.slackOnly ? 'stays' : 'found');
function touchedMark(h: HoleState, because: string | null): Mark {
  if (!because) return 'done';
  if (isOff(h)) return isEmptyOnArrival(h) ? 'empty' : 'open';
  const o = h.called.occupant;
  if (!o || o.working || o.forNow) return 'half';
  return o.level === 'slack' || o.level === 'on' || o.level === 'snug' ? o.level : 'half';
}

/** A row is made when it is looked at. */
export function holeRows(desk: Desk, order: 'loosening' | 'tightening'): Rows {
  const holes = holesHere(desk, order);
  return rowsMadeBy(holes.length, (i) => holeRow(desk, holes[i] as HoleState));
}
export function holeRow(desk: Desk, h: HoleState): Listed {
  const o = h.called.occupant;
  const own = h.called.own ? stateOf(desk.ledger, 'fastener', h.called.own) : undefined;
  const spec = o?.spec ?? own?.spec ?? wantsOf(desk.ledger, h);
  const word = holeWord(desk.ledger, h);
  const isLost = word === 'lost';
  const lies = !o && own && !isLost ? subjectText(own.place) : undefined;
  const because = openBecause(desk.ledger, h);
  const critical = isCritical(desk.ledger, h, areaOf(h.hole));
  const more = [
    suspectedAt(desk.ledger, h.hole) ? 'suspected' : undefined,
    because && because !== (isLost ? 'off' : word) && because !== o?.level ? because : undefined,
    lies,
    h.declared?.slackOnly ? 'slack only' : undefined,
    h.declared?.later?.replace('-', ' '),
    critical && o?.level === 'tight' && h.called.lookedAt <= h.called.changedAt ? 'look again' : undefined,
  ].filter(Boolean);
  return {
    key: h.hole,
    mark: isTouched(h) ? touchedMark(h, because) : markAsFound(h),
    name: withinArea(h.hole),
    text: `${word.padEnd(8)} ${spec ? specWords(spec) : ''}`,
    end: more.join(', '),
    brief: { end: more.flatMap((words) => briefly(String(words))).join(', ') },
    picks: { hole: h.hole },
    leads: inHole(h.hole),
  };
}

/** Why a hole is open, as the word of its state leaves it to be said, where there is no room for more. */
const brief: readonly (readonly [RegExp, string])[] = [
  [/a finding on it is open/, 'finding'],
  [/a broken piece is in it/, 'piece in it'],
  [/^a working fastener is in it$/, ''],
  [/^empty on arrival$/, ''],
  [/^its fastener is /, ''],
  [/^touched and not called tight$/, 'not tight'],
  [/^wants another .*/, 'wants another'],
];
function briefly(words: string): string[] {
  const [says, short] = brief.find(([long]) => long.test(words)) ?? [];
  if (says === undefined || short === undefined) return [words];
  const said = short === '' || says.source.startsWith('^') ? words.replace(says, short) : short;
  return said === '' ? [] : [said];
}

/** Parts held in the area in use and connections that belong to it, below its holes; nothing points at them. */
export function belongingsHere(desk: Desk): Listed[] {
  const { area } = desk.facing;
  if (area === undefined) return [];
  const held = stateOf(desk.ledger, 'area', area)?.parts ?? [];
  const row = (key: string, mark: Mark, name: string, text: string, end = ''): Listed => ({
    key,
    mark,
    name,
    text,
    end,
    picks: {},
  });
  // What nothing holds, as a belt, is where work was when it came off.
  const cameOff = [...every(desk.ledger, 'part')].filter(
    (p) => !held.includes(p.part) && (p.declared?.heldBy.length ?? 0) === 0 && wasAt(desk.ledger, p.removedAt) === area,
  );
  const parts = [...held.flatMap((name) => stateOf(desk.ledger, 'part', name) ?? []), ...cameOff];
  const connections = [...every(desk.ledger, 'connection')].filter((c) => areaOfJoint(desk.ledger, c) === area);
  const temporaries = [...every(desk.ledger, 'temporary')].filter((t) => t.in && isAt(t.at, area));
  return [
    ...parts.map((p) =>
      p.off
        ? row(`part ${p.part}`, 'open', 'part', p.part, p.declared?.renew ? 'off, to be renewed' : 'off')
        : p.removedAt > 0
          ? row(`part ${p.part}`, p.forNow ? 'half' : 'done', 'part', p.part, p.forNow ? 'on for now' : 'back')
          : row(`part ${p.part}`, 'found', 'part', p.part, isFreed(desk.ledger, p) ? 'loose, still on' : 'as found'),
    ),
    ...connections.map((c) =>
      row(
        `connection ${c.connection}`,
        c.parted ? 'open' : c.partedAt > 0 ? 'done' : 'found',
        'joint',
        c.connection,
        c.parted ? 'parted' : c.partedAt > 0 ? 'made again' : 'as found',
      ),
    ),
    ...temporaries.map((t) => row(`temporary ${t.temporary}`, 'half', t.sort, t.temporary, 'is in')),
  ];
}
const wasAt = (ledger: Ledger, n: number): string | undefined => lineAt(ledger, n)?.facing.area;
function isAt(at: string | undefined, area: string): boolean {
  if (at === undefined) return false;
  const hole = named('hole', at);
  return hole === undefined ? named('area', at) === area : areaOf(hole) === area;
}

const shownAreas = ({ ledger }: Desk): AreaState[] =>
  [...every(ledger, 'area')].filter((a) => !isWithdrawn(ledger, `area:${a.area}`));

/** Areas for the overview beside the holes. @param building what stands open and can not be closed yet is gated */
export const areasListed = (desk: Desk, building = false): Listed[] =>
  shownAreas(desk).map((a) => {
    const t = tallyOf(desk.ledger, a.area);
    const gated = building && t.open > 0 && gatedBy(desk.ledger, a.area) !== undefined;
    const out = outOf(t);
    const wants = [
      out > 0 ? `${out} off` : '',
      t.slack > 0 ? `${t.slack} slack` : '',
      t.empty > 0 ? `${t.empty} empty` : '',
      t.open > t.off + t.slack ? `${t.open - t.off - t.slack} open` : '',
    ].filter(Boolean);
    const parted = namedAsParted(desk.ledger, a.area);
    const [rest] = t.touched === 0 ? [] : [...restOf(desk.ledger, a.area), ...parted];
    const isClosed = t.open === 0 && keepsOpen(desk.ledger, a.area).length === 0 && parted.length === 0;
    const mark = t.touched === 0 ? 'found' : isClosed ? 'done' : t.off > 0 ? 'open' : 'half';
    const words = wants[0] ?? rest?.short ?? 'closed';
    return {
      key: a.area,
      mark: gated ? 'gated' : mark,
      name: a.area,
      text: t.touched === 0 ? 'as found' : gated ? `${t.open} gated` : words,
      picks: { area: a.area },
    };
  });
