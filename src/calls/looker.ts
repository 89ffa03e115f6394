// Who takes the second looks today: a name is asked for once a day, and stands from then on in each of them.
import { isStruck, lineAt } from '../job/ledger.ts';
import { oncePerLedger } from '../job/once-per-ledger.ts';
import { dateText } from '../trade/civil-time.ts';
import type { Desk } from './desk.ts';

/** A day at the bench is shorter; it is asked for with every frame. */
const farEnough = 2000;
const lookerOn = oncePerLedger((ledger, day: string): string | undefined => {
  for (let n = ledger.lines.length; n > Math.max(0, ledger.lines.length - farEnough); n--) {
    const line = lineAt(ledger, n);
    if (!line || dateText(line.atMs, line.zoneMin) !== day) return undefined;
    const look = isStruck(ledger, n) ? undefined : line.entries.find((e) => e.kind === 'looked-again');
    if (look?.kind === 'looked-again' && look.who) return look.who;
  }
  return undefined;
});
/** Who looked again last, today: a name is asked for once a day. */
export const lookerToday = ({ ledger, now }: Desk): string | undefined =>
  lookerOn(ledger, dateText(now.atMs, now.zoneMin));
