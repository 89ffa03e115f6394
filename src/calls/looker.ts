// Who takes the second looks today: a name is asked for once a day, and stands from then on in each of them; left out, it
// is left out of them.
import { isStruck, lineAt } from '../job/ledger.ts';
import { oncePerLedger } from '../job/once-per-ledger.ts';
import { dateText } from '../trade/civil-time.ts';
import type { Desk } from './desk.ts';

/** A day at the bench is shorter; it is asked for with every frame. */
const farEnough = 2000;
const lookOn = oncePerLedger((ledger, day: string): { who?: string } | undefined => {
  let looked: { who?: string } | undefined;
  for (let n = ledger.lines.length; n > Math.max(0, ledger.lines.length - farEnough); n--) {
    const line = lineAt(ledger, n);
    if (!line || dateText(line.atMs, line.zoneMin) !== day) break;
    const look = isStruck(ledger, n) ? undefined : line.entries.find((e) => e.kind === 'looked-again');
    if (look?.kind !== 'looked-again') continue;
    if (look.who) return { who: look.who };
    looked = {};
  }
  return looked;
});
const lookToday = ({ ledger, now }: Desk) => lookOn(ledger, dateText(now.atMs, now.zoneMin));
/** Who looked again last, today, where a name was given. */
export const lookerToday = (desk: Desk): string | undefined => lookToday(desk)?.who;
export const wasAskedToday = (desk: Desk): boolean => lookToday(desk) !== undefined;
