// Which connections belong to the whole car and to no area of it, as the battery's earth does: they come off first and go
// on last. One that was only named as it was parted belongs somewhere; nobody said where.
import { every, type Ledger } from './ledger.ts';
import type { ConnectionState } from './states.ts';

export const isOfTheBattery = (name: string): boolean => /\b(battery|earth|ground)\b/i.test(name);
/** As it was declared, else by its name. Common practice, no source. */
export const isOfTheCar = ({ connection, declared }: ConnectionState): boolean =>
  declared === undefined ? isOfTheBattery(connection) : declared.area === undefined;

/** "2 off", "3 loose", "belt off": what it waits for, the nut of its own clamp apart. What is snug may wait for the weight on it. */
export function openBeforeIt(ledger: Ledger): string[] {
  const { tallies } = ledger;
  const sums = { off: 0, loose: 0 };
  for (const [area, { off, slack, on }] of Object.entries(tallies.areas)) {
    if (isOfTheBattery(area)) continue;
    sums.off += off;
    sums.loose += slack + on;
  }
  // What fasteners hold is off with them.
  const parts = [...every(ledger, 'part')].flatMap((p) =>
    p.off && (p.declared?.heldBy.length ?? 0) === 0 ? [`${p.part} off`] : [],
  );
  return [
    ...(sums.off > 0 ? [`${sums.off} off`] : []),
    ...(sums.loose > 0 ? [`${sums.loose} loose`] : []),
    ...(sums.off === 0 ? parts : []),
  ];
}

/** The area of the battery's clamps, as long as anything else is off or loose: it comes last, unasked at least. */
export const waitsForTheRest = (ledger: Ledger, area: string): boolean =>
  isOfTheBattery(area) && openBeforeIt(ledger).length > 0;
