// Leaves each line of a script of calls out once and says what becomes of the job: release stops and the open points
// name a place, or a later line is refused, or it does no harm. Run by itself it prints the table:
// npx tsx tests/jobs/leave-one-out.ts reference-planned.calls
import { pathToFileURL } from 'node:url';
import { stateOf } from '../../src/job/ledger.ts';
import { openPoints } from '../../src/job/open-points.ts';
import { subjectText } from '../../src/job/subjects.ts';
import { type PlayedLines, plansAtHand, playLines, type ScriptLine, scriptLines } from './lines.ts';

export type Outcome = 'stops' | 'refused' | 'harmless';
export type LeftOut = {
  at: number;
  line: string;
  outcome: Outcome;
  /** The places named when release stops; the first refusal when only that came of it. */
  because: readonly string[];
  overridden: boolean;
};

const released = ({ ledger }: PlayedLines): boolean => (stateOf(ledger, 'vehicle', 'vehicle')?.releasedAt ?? 0) > 0;

/** What becomes of the job without these lines of the file. */
export function leftOut(script: readonly ScriptLine[], whole: PlayedLines, lines: readonly ScriptLine[]): LeftOut {
  const first = lines[0] as ScriptLine;
  const from = whole.openings.findLast((opening) => opening.at <= first.at);
  const rest = script.filter((line) => !lines.includes(line) && line.at >= (from?.at ?? 0));
  const played = playLines(rest, plansAtHand(), { whole, ...(from && { from }) });
  const overridden = played.ledger.lines.all.some((line) => line.overrides !== undefined);
  const about = { at: first.at, line: lines.map((line) => line.text).join(' · '), overridden };
  if (!released(played)) {
    const places = openPoints(played.ledger, played.now).map((point) => `${subjectText(point.at)}: ${point.because}`);
    return { ...about, outcome: 'stops', because: places };
  }
  const [refused] = played.refused;
  return refused
    ? { ...about, outcome: 'refused', because: [`"${refused.line.text}": ${refused.because}`] }
    : { ...about, outcome: 'harmless', because: [] };
}

/** One row for every call line of the script. */
export function leaveEachOut(name: string): LeftOut[] {
  const script = scriptLines(name);
  const whole = playLines(script, plansAtHand());
  return script.filter((line) => line.call).map((line) => leftOut(script, whole, [line]));
}

export const tableOf = (rows: readonly LeftOut[]): string =>
  rows
    .map((row) => `${String(row.at).padStart(4)}  ${row.outcome.padEnd(8)}  ${row.line}  ->  ${row.because[0] ?? ''}`)
    .join('\n');

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  for (const name of process.argv.slice(2)) process.stdout.write(`${name}\n${tableOf(leaveEachOut(name))}\n`);
}
