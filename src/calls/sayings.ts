// What may be said out loud: each row's spoken forms, and what can stand in their slots on this job now. The voice's
// grammar is made from it, and what is said or typed is read by it, in read-said.ts: one list, the very same words.
import { every } from '../job/ledger.ts';
import { areaOf, subjectText, withinArea } from '../job/subjects.ts';
import { choicesFor } from './choices.ts';
import { areHolesKnown, type Desk } from './desk.ts';
import { type Args, isChoice, type Node, parseForm } from './form.ts';
import type { Row } from './row.ts';
import { asSaid, digitWords, numberInWords } from './spoken-words.ts';
import { rows } from './table.ts';

/** One way to say a row. */
export type Saying = { row: Row; nodes: readonly Node[] };
export const sayings: readonly Saying[] = rows.flatMap((row) =>
  (row.spoken ?? []).map((form): Saying => ({ row, nodes: parseForm(form) })),
);

/** Words that may fill a slot, and the typed words they stand for. */
export type Way = { say: string; as: string };
/** Slots said figure by figure instead of from a list. */
export const figureByFigure = 'figures';

const same = (written: readonly string[]): Way[] => written.map((as) => ({ say: asSaid(as), as }));
const numbers = (from: number, to: number, as = (n: number) => String(n)): Way[] =>
  Array.from({ length: to - from + 1 }, (_, i) => ({ say: numberInWords(from + i), as: as(from + i) }));
const metricHeads = [5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 21, 22, 24, 27, 30, 32, 36];
const starHeads = [10, 15, 20, 25, 27, 30, 40, 45, 50, 55, 60];
const sized = (shape: string, sizes: readonly number[]): Way[] =>
  sizes.map((size) => ({ say: numberInWords(size), as: `${shape} ${size}` }));
/** Said in parts that are written as one: "bolt hex ten em six by twenty five class eight point eight". */
export const compounds: Readonly<Record<string, { nodes: readonly Node[]; written(parts: Args): string }>> = {
  spec: {
    nodes: parseForm(
      '<kind:kind> [hex <hex:size>] [em <thread:thread> [<pitch:pitch>] by <long:length>] [class <class:class>]',
    ),
    written: ({ kind, hex, thread, pitch, long, class: strength }) =>
      [kind, hex && `hex ${hex}`, thread && `M${thread}${pitch ? `x${pitch}` : ''}x${long}`, strength]
        .filter(Boolean)
        .join(' '),
  },
};
/**
 * A number that settles a call is said with the one before it, "number six after five". Said once or twice over, a figure
 * is lost the same way each time: in noise six was heard as three by every decoder alike, and seven as ten.
 */
const counted = (ways: readonly Way[]): Way[] => ways.map(({ say, as }) => ({ say: countedOn(say, as), as }));
export function countedOn(say: string, as: string): string {
  const [, n, level = ''] = /^(?:[a-z]+ )?(\d+)( .*)?$/.exec(as) ?? [];
  if (n === undefined) return `${say} ${say}`;
  if (Number(n) === 0) return 'none at all';
  return `${numberInWords(Number(n))} after ${numberInWords(Number(n) - 1)}${level && ` ${asSaid(level)}`}`;
}
/** Sixteen was heard as sixty time and again: those that have such a double are counted on, the others stay short. */
export const lengthInWords = (n: number): string =>
  (n > 12 && n < 20) || (n > 20 && n < 100 && n % 10 === 0) ? countedOn('', String(n)) : numberInWords(n);
const isNumber = ({ as }: Way): boolean => /^\d/.test(as);
const mostFreeHoles = 20;
const mostTrays = 12;
const mostLinesBack = 20;

/** What may fill a slot now. A way of saying that two things share means the first. */
export function waysToSay(desk: Desk, saying: Saying, slot: string, type: string, args: Args = {}): Way[] {
  const told = saying.row.spokenFor?.[slot];
  const ways = told ? same(told) : waysOfType(desk, type, args);
  const seen = new Set<string>();
  return ways.filter(({ say }) => say !== '' && !seen.has(say) && seen.add(say));
}
function waysOfType(desk: Desk, type: string, args: Args): Way[] {
  if (isChoice(type)) return same(type.split('|'));
  switch (type) {
    case 'hole':
      return holeWays(desk);
    case 'tray':
      return [...same(choicesFor(desk, 'tray')), ...numbers(1, mostTrays)].flatMap((way) =>
        isNumber(way) ? counted([way]) : way,
      );
    case 'place':
      return [
        ...waysOfType(desk, 'tray', args).map(({ say, as }) => ({ say: `tray ${say}`, as: `tray ${as}` })),
        { say: 'scrap pile', as: 'scrap' },
      ];
    case 'fastener':
      return holeWays(desk).map(({ say, as }) => ({ say: `of hole ${say}`, as }));
    case 'finding':
      return findingWays(desk);
    case 'count':
      return counted(numbers(0, 99));
    case 'number':
    case 'hours':
    case 'litres':
    case 'mm':
      return [...counted(numbers(0, 99)), ...tenths];
    case 'few':
      return counted(numbers(1, 10));
    case 'size':
      return numbers(4, 150);
    case 'length':
      return numbers(4, 150).map(({ as }) => ({ say: lengthInWords(Number(as)), as }));
    case 'kind':
      return same(['bolt', 'nut', 'screw', 'stud']);
    case 'thread':
      return numbers(4, 24);
    case 'pitch':
      return ['0.75', '1', '1.25', '1.5', '1.75', '2'].map((as) => ({ say: `pitch ${asSaid(as)}`, as }));
    case 'class':
      return same(['8.8', '9.8', '10.9', '12.9']);
    case 'socket':
      return counted(sized('hex', metricHeads));
    case 'star':
      return counted(sized('star', starHeads));
    case 'lines':
      return latestLines(desk);
    case 'who':
      return same(['the mechanic', 'the owner', 'the foreman']);
    default:
      return same(choicesFor(desk, type, args));
  }
}
const tenths: readonly Way[] = Array.from({ length: 200 }, (_, i) => ({
  say: `${numberInWords(Math.floor(i / 10))} point ${digitWords[i % 10]}`,
  as: `${Math.floor(i / 10)}.${i % 10}`,
}));
/** Holes of the area in use; where not all of them are known, numbers that may come next. */
function holeWays(desk: Desk): Way[] {
  const { area } = desk.facing;
  if (area === undefined) return [];
  const known = choicesFor(desk, 'hole');
  return counted(areHolesKnown(desk.ledger, area) ? same(known) : [...same(known), ...numbers(1, mostFreeHoles)]);
}
/** The last lines of the log by their numbers, figure by figure. */
const latestLines = ({ ledger: { lines } }: Desk): Way[] =>
  Array.from({ length: Math.min(mostLinesBack, lines.length) }, (_, i) => {
    const as = String(lines.length - i);
    return { say: [...as].map((figure) => digitWords[Number(figure)]).join(' '), as };
  });
/** An open finding by what it is about, where that has one only; a hole of the area in use by its number. */
function findingWays({ ledger, facing }: Desk): Way[] {
  const open = [...every(ledger, 'finding')].filter((f) => !f.closed);
  return open
    .filter((f) => open.filter((other) => other.at === f.at).length === 1)
    .flatMap(({ id, at }) => {
      const hole = at.startsWith('hole:') ? at.slice('hole:'.length) : undefined;
      const here = hole !== undefined && areaOf(hole) === facing.area ? [`hole ${withinArea(hole)}`] : [];
      return [...here, subjectText(at)].map((words) => ({ say: asSaid(words), as: id }));
    });
}
