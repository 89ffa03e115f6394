// What a call that was taken is to be minded for: what stood beside it, what became odd by it, a tray nobody has.
import type { Desk } from '../calls/desk.ts';
import { unknownTray } from '../calls/trays.ts';
import type { Ledger } from '../job/ledger.ts';
import type { Line } from '../job/line.ts';
import { named } from '../job/subjects.ts';
import { newlySuspected } from '../job/suspicions.ts';
import { newlyDoubted } from '../job/tightening.ts';

/** The trays that something was laid into by this call. */
const traysOf = ({ entries }: Line): string[] => [
  ...new Set(entries.flatMap((e) => ('to' in e && typeof e.to === 'string' ? (named('tray', e.to) ?? []) : []))),
];

type Around = {
  /** As the call was made. */
  before: Desk;
  after: Ledger;
  warnings: readonly string[];
  /** What earlier jobs left of the vehicle it names. */
  remembered: readonly string[];
};

export const mindOf = (line: Line, { before, after, warnings, remembered }: Around): string[] => [
  // What was minded instead of asked once is warned of too.
  ...new Set(warnings),
  ...newlySuspected(before.ledger, after, line.entries),
  ...newlyDoubted(before.ledger, after, line.entries),
  ...traysOf(line).flatMap((tray) => (tray === before.facing.tray ? [] : (unknownTray(before, tray) ?? []))),
  ...remembered,
];
