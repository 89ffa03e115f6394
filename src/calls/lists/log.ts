// The log, newest line first. A row is made when it is looked at: there may be 20,000.
import type { Entry } from '../../job/entry.ts';
import { isStruck, lineAt } from '../../job/ledger.ts';
import type { Line } from '../../job/line.ts';
import { leaningOn, losesFooting, unstrikable } from '../../job/striking.ts';
import { subjectText } from '../../job/subjects.ts';
import { civilTime, timeOfDayText } from '../../trade/civil-time.ts';
import { lineWords } from '../call-words.ts';
import type { Desk } from '../desk.ts';
import { type Listed, type Rows, rowsMadeBy } from '../listed.ts';

export function logRows(desk: Desk): Rows {
  const { ledger, units } = desk;
  const { length } = ledger.lines;
  return rowsMadeBy(length, (i): Listed => {
    const n = length - i;
    const line = lineAt(ledger, n);
    const struck = isStruck(ledger, n);
    const hole = line && holeOf(line);
    return {
      key: String(n),
      mark: struck ? 'struck' : line?.overrides ? 'half' : 'plain',
      name: String(n),
      text: lineWords(ledger, line?.entries ?? [], units),
      end: [struck ? 'struck' : '', line?.overrides ? 'done already' : '', line ? whenWords(line, desk) : '']
        .filter(Boolean)
        .join(', '),
      picks: { lines: struckBy(line) ?? [n], ...(hole !== undefined && { one: hole }) },
      ...(hole !== undefined && { leads: `hole:${hole}` }),
      more: () => fallsWith(desk, n, struck),
    };
  });
}

/** On the line of a strike one means what it struck. */
function struckBy(line: Line | undefined): number[] | undefined {
  const [entry] = line?.entries ?? [];
  return entry?.kind === 'calls-struck' ? [...entry.lines] : undefined;
}

/** U2: what else no longer stands, before the key is pressed. */
function fallsWith({ ledger, now }: Desk, n: number, struck: boolean): string {
  if (unstrikable(ledger, n)) return '';
  const kind = struck ? 'calls-restored' : 'calls-struck';
  const leaning = leaningOn(ledger, [n], kind);
  if (leaning.length > 0) return `Leaning on it: line ${leaning.join(', ')}.`;
  const open = losesFooting(ledger, [n], kind, now).map((p) => `${subjectText(p.at)} (${p.because})`);
  return open.length > 0 ? `${struck ? 'Restored' : 'Struck'}, it opens: ${open.join(', ')}.` : '';
}

function whenWords({ atMs, zoneMin }: Line, desk: Desk): string {
  const time = timeOfDayText(atMs, zoneMin);
  const then = civilTime(atMs, zoneMin);
  const now = civilTime(desk.now.atMs, desk.now.zoneMin);
  const today = then.day === now.day && then.month === now.month && then.year === now.year;
  return today ? time : `${then.weekday.slice(0, 3)} ${then.day}. ${time}`;
}

/** The hole a line speaks of first. */
function holeOf(line: Line): string | undefined {
  for (const entry of line.entries) {
    if (speaksOfHole(entry)) return entry.hole;
  }
  return undefined;
}
const spoken = new Set([
  'fastener-removed',
  'fastener-slackened',
  'fastener-fitted',
  'fastener-tightened',
  'hole-found-empty',
]);
const speaksOfHole = (entry: Entry): entry is Entry & { hole: string } => spoken.has(entry.kind);

/** The hole of the last standing call that speaks of one: what "it was another" is about unless said. */
export function lastHoleCalled(desk: Desk): string | undefined {
  const { ledger } = desk;
  for (let n = ledger.lines.length; n > 0; n--) {
    const line = isStruck(ledger, n) ? undefined : lineAt(ledger, n);
    const hole = line && holeOf(line);
    if (hole !== undefined) return hole;
  }
  return undefined;
}
