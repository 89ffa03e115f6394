// The area in use as it is drawn: its outline and, for each numbered hole, where it sits and how it stands. Levels under
// a number are one tag, which stands as the one of them that wants most.
import { isOwnLost, isTouched, openBecause } from '../../job/closed.ts';
import type { HoleState } from '../../job/hole-states.ts';
import { stateOf } from '../../job/ledger.ts';
import { levelsOf } from '../../job/levels.ts';
import { dueIn, inOrder, orderBy, passesOf } from '../../job/passes.ts';
import { type Hole, numberOf, withinArea } from '../../job/subjects.ts';
import { suspectedAt } from '../../job/suspicions.ts';
import { gridOf, outlineOf, type Point } from '../../trade/layout.ts';
import type { Desk } from '../desk.ts';
import { ofOtherLength } from '../like-neighbours.ts';
import type { Mark } from '../listed.ts';
import { holeMark, holeWord } from './holes.ts';

export type DrawnHole = {
  hole: Hole;
  number: string;
  at: Point;
  mark: Mark;
  word: string;
  /** How many come under this number. */
  levels: number;
  /** Its place in the order, from 1, while the running pass is due on it. */
  turn?: number;
  finding?: true;
  /** What is in it, or was, is suspected and nobody has answered. */
  suspected?: true;
  /** What came out of it lies nobody knows where. */
  lost?: true;
  /** Longer or shorter than most of its kind there. */
  otherLength?: true;
  /** Awkward to reach: the tool it wants. */
  tool?: string;
};
export type DrawnArea = {
  area: string;
  outline: readonly Point[];
  holes: readonly DrawnHole[];
  /** The pass that runs, with how many of the holes have had it. */
  pass?: { name: string; done: number; of: number };
  /** O3: the order shown is only proposed, from where the holes sit. */
  proposed?: 'ring' | 'cover' | 'line';
};

const wantsMost: readonly Mark[] = [
  'open',
  'empty',
  'slack',
  'on',
  'snug',
  'half',
  'done',
  'stays',
  'found',
  'plain',
  'struck',
];

/** @param next a hole that nobody has called yet is drawn too when it is the next one */
export function areaDrawn(desk: Desk, next: Hole | undefined, building: boolean): DrawnArea | undefined {
  const { ledger, facing } = desk;
  const a = facing.area === undefined ? undefined : stateOf(ledger, 'area', facing.area);
  if (!a) return undefined;
  const levels = Map.groupBy([...a.holes, ...(next ? [next] : [])], numberOf);
  const inTurn = [...levels.keys()].map((number) => ({ number, at: Number.parseInt(number, 10) }));
  const numbers = inTurn.sort((x, y) => x.at - y.at).map(({ number }) => number);
  const placed = numbers.map((n) => stateOf(ledger, 'hole', `${a.area}/${n}`)?.declared?.at);
  const grid = gridOf(numbers.length);
  const isPlaced = placed.some((at) => at !== undefined);
  const points = placed.map((at, i) => at ?? (grid.holes[i] as Point));
  const pass = building ? runningPass(desk, a.area) : undefined;
  // By number the places are the numbers.
  const ordered = orderBy(ledger, a.area) === 'number' ? [] : (pass?.holes ?? []);
  const otherLengths = ofOtherLength(ledger, a.area);
  const turns = new Map(ordered.flatMap((hole, i) => (pass?.due.includes(hole) ? [[hole, i + 1] as const] : [])));
  return {
    area: a.area,
    outline: isPlaced ? (a.declared?.outline ?? outlineOf(points)) : grid.outline,
    holes: numbers.map((n, i) => ({
      ...drawn(
        desk,
        n,
        [...new Set(levels.get(n))].flatMap((h) => stateOf(ledger, 'hole', h) ?? []),
        a.area,
      ),
      at: desk.facing.placing?.hole === `${a.area}/${n}` ? desk.facing.placing.at : (points[i] as Point),
      ...turnOf(turns, `${a.area}/${n}`),
      ...((levels.get(n) ?? []).some((h) => otherLengths.has(h)) && { otherLength: true as const }),
    })),
    ...(pass && { pass: { name: pass.name, done: pass.done, of: pass.holes.length } }),
    ...proposedBy(desk, a.area),
  };
}

function drawn({ ledger }: Desk, number: string, levels: readonly HoleState[], area: string): Omit<DrawnHole, 'at'> {
  const hole = `${area}/${number}`;
  const marks = levels.map((h) => holeMark(ledger, h));
  const mark = wantsMost.find((one) => marks.includes(one));
  const worst = mark && levels[marks.indexOf(mark)];
  if (!worst) return { hole, number, mark: 'plain', word: '', levels: 0 };
  const tool = levels.find((h) => h.declared?.tool)?.declared?.tool;
  const word = holeWord(ledger, worst);
  return {
    hole,
    number,
    mark,
    // One that stays in its hole is not told from the others by where it is drawn.
    word: word !== 'as found' ? word : worst.declared?.slackOnly ? 'to slacken' : '',
    levels: levels.length,
    ...(levels.some((h) => h.called.findings.length > 0) && { finding: true as const }),
    ...(levels.some((h) => isOwnLost(ledger, h)) && { lost: true as const }),
    ...(levels.some((h) => suspectedAt(ledger, h.hole)) && { suspected: true as const }),
    ...(tool && { tool }),
  };
}
function proposedBy({ ledger }: Desk, area: string): Pick<DrawnArea, 'proposed'> {
  const by = orderBy(ledger, area);
  return by === 'number' || by === "the maker's" ? {} : { proposed: by };
}
const turnOf = (turns: ReadonlyMap<Hole, number>, hole: Hole) => {
  const turn = turns.get(hole);
  return turn === undefined ? {} : { turn };
};

type RunningPass = { name: string; due: readonly Hole[]; holes: readonly Hole[]; done: number };
/** The earliest pass that is due somewhere, once a fastener is in; of all holes that want one, back or not. */
function runningPass({ ledger }: Desk, area: string): RunningPass | undefined {
  const levels = (hole: Hole) => levelsOf(ledger, hole).flatMap((level) => stateOf(ledger, 'hole', level) ?? []);
  const wantsOne = (h: HoleState): boolean => isTouched(h) && !h.called.leftEmpty;
  const holes = inOrder(ledger, area).filter((hole) => levels(hole).some(wantsOne));
  for (const name of passesOf(ledger, area)) {
    const due = dueIn(ledger, area, name);
    if (due.length === 0) continue;
    const isIn = (h: HoleState): boolean => h.called.occupant !== undefined && !h.called.occupant.working;
    const had = holes.filter((hole) => !due.includes(hole) && levels(hole).filter(wantsOne).every(isIn));
    return { name, due, holes, done: had.length };
  }
  return undefined;
}

/** What is to be said of one hole in a line: its levels, what is or was in it, and why it is open. */
export function holeDetails(desk: Desk, hole: Hole): string[] {
  const area = stateOf(desk.ledger, 'area', hole.slice(0, hole.lastIndexOf('/')));
  const levels = (area?.holes ?? []).filter((h) => numberOf(h) === numberOf(hole));
  return levels.flatMap((level) => {
    const h = stateOf(desk.ledger, 'hole', level);
    if (!h) return [];
    const because = openBecause(desk.ledger, h);
    const word = holeWord(desk.ledger, h);
    return [
      `${withinArea(level)} ${word}${because && because !== (word === 'lost' ? 'off' : word) ? ` (${because})` : ''}`,
    ];
  });
}
