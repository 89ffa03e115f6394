// How long the program ran beside the car, day by day: the workshop's own reckoning, never the owner's. A break is no
// work; what was done before the first call or after the last is not seen.
import { type Ledger, lineAt } from '../job/ledger.ts';
import { dateText } from '../trade/civil-time.ts';
import type { Copy } from './area-text.ts';

export type BenchDay = { day: string; minutes: number; calls: number };

const longestPauseMs = 30 * 60_000;

/** To a workshop's copy alone, and only when asked for. */
export const daysToTell = (
  ledger: Ledger,
  { copy = 'workshop', benchTime, zone }: { copy?: Copy; benchTime?: boolean; zone?: number },
): BenchDay[] => (benchTime && copy === 'workshop' ? benchDays(ledger, zone) : []);

/** @param zone as for the sheet; without it each call counts to the day at the offset it was called in */
function benchDays(ledger: Ledger, zone?: number): BenchDay[] {
  const days = new Map<string, { ms: number; calls: number }>();
  for (let n = 1; n <= ledger.lines.length; n++) {
    const line = lineAt(ledger, n);
    if (!line) continue;
    const before = lineAt(ledger, n - 1);
    // The lesser of both clocks, within one opening: a clock put forward is no work.
    const ran =
      before && before.run === line.run ? Math.min(line.atMs - before.atMs, line.awakeMs - before.awakeMs) : 0;
    const day = dateText(line.atMs, zone ?? line.zoneMin);
    const so = days.get(day) ?? { ms: 0, calls: 0 };
    days.set(day, { ms: so.ms + (ran > 0 && ran <= longestPauseMs ? ran : 0), calls: so.calls + 1 });
  }
  return [...days].map(([day, { ms, calls }]) => ({ day, minutes: Math.round(ms / 60_000), calls }));
}
