// Leaves each line of a script of calls out once and says what becomes of the job: release stops and the open points
// name a place, or a later line is refused, or it does no harm. Run by itself it prints the table:
// npx tsx tests/jobs/leave-one-out.ts reference-planned.calls
import { basename } from 'node:path';
import { pathToFileURL } from 'node:url';
import { stateOf } from '../../src/job/ledger.ts';
import { openPoints } from '../../src/job/open-points.ts';
import { areaOf, nameOf, type Subject, sortOf, subjectText } from '../../src/job/subjects.ts';
import { touches } from '../../src/job/touches.ts';
import { awkwardHarmless, awkwardRefused } from './awkward-reasons.ts';
import { linesOf, type PlayedLines, plansAtHand, playLines, type ScriptLine, scriptLines } from './lines.ts';
import { type Reasons, reasonOf } from './reasons.ts';
import { freeHarmless, plannedHarmless } from './reference-reasons.ts';

export type Outcome = 'stops' | 'refused' | 'harmless';
export type LeftOut = {
  at: number;
  /** The area in use when it would have been said. */
  area: string;
  line: string;
  outcome: Outcome;
  /** Where release stops: what is open, nearest to what the line was about first. */
  places: readonly Subject[];
  /** The open points in words; the first refusal when only that came of it. */
  because: readonly string[];
  overridden: boolean;
};

export const isReleased = ({ ledger }: PlayedLines): boolean =>
  (stateOf(ledger, 'vehicle', 'vehicle')?.releasedAt ?? 0) > 0;

/** What becomes of the job without these lines of the file. */
export function leftOut(
  script: readonly ScriptLine[],
  whole: PlayedLines,
  lines: readonly ScriptLine[],
  plans = plansAtHand(),
): LeftOut {
  const first = lines[0] as ScriptLine;
  const from = whole.places.find((place) => place.at === first.at);
  const rest = script.filter((line) => line.at >= first.at && !lines.includes(line));
  const played = playLines(rest, plans, from);
  const about = {
    at: first.at,
    area: from?.facing.area ?? '',
    line: lines.map((line) => line.text).join(' · '),
    overridden: linesOf(played.ledger).some((line) => line.overrides !== undefined),
  };
  if (!isReleased(played)) {
    const open = nearestFirst(openPoints(played.ledger, played.now), spokenOf(whole, first));
    const because = open.map((point) => `${subjectText(point.at)}: ${point.because}`);
    return { ...about, outcome: 'stops', places: open.map((point) => point.at), because };
  }
  const because = played.refused.map(({ line, because: why }) => `"${line.text}": ${why}`);
  return { ...about, outcome: because.length > 0 ? 'refused' : 'harmless', places: [], because };
}

/** What a line spoke of when nothing was left out. */
function spokenOf(whole: PlayedLines, line: ScriptLine): ReadonlySet<Subject> {
  const i = whole.places.findIndex((place) => place.at === line.at);
  const { lines } = whole.places[i]?.ledger ?? whole.ledger;
  const after = whole.places[i + 1]?.ledger.lines ?? whole.ledger.lines;
  const wrote = after.length > lines.length ? after.all[lines.length] : undefined;
  return new Set(wrote?.entries.flatMap(touches));
}
export const areaOfPlace = (place: Subject): string => {
  if (sortOf(place) === 'area') return nameOf(place);
  return sortOf(place) === 'hole' ? areaOf(nameOf(place)) : '';
};
function nearestFirst<T extends { at: Subject }>(points: readonly T[], about: ReadonlySet<Subject>): T[] {
  const areas = new Set([...about].map(areaOfPlace).filter((area) => area !== ''));
  const distance = ({ at }: T) => (about.has(at) ? 0 : areas.has(areaOfPlace(at)) ? 1 : 2);
  return [...points].sort((a, b) => distance(a) - distance(b));
}

/** One row for every call line of the script. */
export function leaveEachOut(script: readonly ScriptLine[], whole = playLines(script)): LeftOut[] {
  const plans = plansAtHand();
  return script.filter((line) => line.call).map((line) => leftOut(script, whole, [line], plans));
}

type Excused = { harmless: Reasons; refused: Reasons };
const excused: Readonly<Record<string, Excused>> = {
  'reference-planned.calls': { harmless: plannedHarmless, refused: {} },
  'reference-free.calls': { harmless: freeHarmless, refused: {} },
  'awkward.calls': { harmless: awkwardHarmless, refused: awkwardRefused },
};

const outcomes = { stops: 'release stops', refused: 'line refused', harmless: 'harmless' } as const;
function tableOf(rows: readonly LeftOut[], { harmless, refused }: Excused = { harmless: {}, refused: {} }): string {
  const why = (row: LeftOut): string => {
    if (row.outcome === 'stops') return row.because[0] ?? 'nobody called it released';
    if (row.outcome === 'harmless') return reasonOf(harmless, row) ?? 'NO REASON';
    return [row.because[0], reasonOf(refused, row)].filter(Boolean).join(' -- ');
  };
  const row = (one: LeftOut) =>
    `| ${one.at} | ${one.area} | ${one.line} | ${outcomes[one.outcome]} | ${why(one).replaceAll('|', '/')} |`;
  return ['| line | area | left out | | |', '|---|---|---|---|---|', ...rows.map(row)].join('\n');
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  for (const name of process.argv.slice(2)) {
    process.stdout.write(`${name}\n\n${tableOf(leaveEachOut(scriptLines(name)), excused[basename(name)])}\n\n`);
  }
}
