// Leaves each line of a script of calls out once and says what becomes of the job: release stops and the open points
// name a place, or a later line is refused, or it does no harm. Run by itself it prints the table:
// npx tsx tests/jobs/leave-one-out.ts reference-planned.calls
import { pathToFileURL } from 'node:url';
import { stateOf } from '../../src/job/ledger.ts';
import { openPoints } from '../../src/job/open-points.ts';
import { subjectText } from '../../src/job/subjects.ts';
import { linesOf, type PlayedLines, plansAtHand, playLines, type ScriptLine, scriptLines } from './lines.ts';

export type Outcome = 'stops' | 'refused' | 'harmless';
export type LeftOut = {
  at: number;
  /** The area in use when it would have been said. */
  area: string;
  line: string;
  outcome: Outcome;
  /** The places named when release stops; the first refusal when only that came of it. */
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
    const places = openPoints(played.ledger, played.now).map((point) => `${subjectText(point.at)}: ${point.because}`);
    return { ...about, outcome: 'stops', because: places };
  }
  const [refused] = played.refused;
  return refused
    ? { ...about, outcome: 'refused', because: [`"${refused.line.text}": ${refused.because}`] }
    : { ...about, outcome: 'harmless', because: [] };
}

/** One row for every call line of the script. */
export function leaveEachOut(script: readonly ScriptLine[], whole = playLines(script)): LeftOut[] {
  const plans = plansAtHand();
  return script.filter((line) => line.call).map((line) => leftOut(script, whole, [line], plans));
}

export const tableOf = (rows: readonly LeftOut[]): string =>
  rows
    .map((row) => `${String(row.at).padStart(4)}  ${row.outcome.padEnd(8)}  ${row.line}  ->  ${row.because[0] ?? ''}`)
    .join('\n');

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  for (const name of process.argv.slice(2))
    process.stdout.write(`${name}\n${tableOf(leaveEachOut(scriptLines(name)))}\n`);
}
