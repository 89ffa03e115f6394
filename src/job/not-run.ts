// What wants the engine to have run: a drive that was opened, a circuit that was opened or filled and not found tight since.
// And the oil level, which is seen before it runs.
import { every, type Ledger, stateOf } from './ledger.ts';
import { circuitOpenedAt } from './open-points.ts';
import { driveOpenedAt } from './rotation.ts';
import type { Subject } from './subjects.ts';

const vehicle = (ledger: Ledger) => stateOf(ledger, 'vehicle', 'vehicle');

/** The first such, and whether a check under pressure does as well. */
export function notRunSince(ledger: Ledger): { at: Subject; name: string; orPressure: boolean } | undefined {
  const started = vehicle(ledger)?.startedAt ?? 0;
  const drive = [...every(ledger, 'drive')].find((d) => driveOpenedAt(ledger, d) > started);
  if (drive) return { at: `drive:${drive.drive}`, name: drive.drive, orPressure: false };
  const circuit = [...every(ledger, 'circuit')].find((c) => {
    const closed = Math.max(c.filledAt, circuitOpenedAt(ledger, c));
    return closed > started && c.checkedAt <= closed;
  });
  return circuit && { at: `circuit:${circuit.circuit}`, name: circuit.circuit, orPressure: !isOil(circuit) };
}

/** By its name or by what is in it. Its pump is the engine's: with that at rest it is under no pressure. Common practice, no source. */
export const isOil = ({ circuit, fluid }: { circuit: string; fluid?: string }): boolean =>
  /\boil|oil\b/i.test(`${circuit} ${fluid ?? ''}`);

/** Never looked at is never good enough, whatever the job speaks of: an engine has oil. */
export function isOilToSee(ledger: Ledger): boolean {
  const ofOil = [...every(ledger, 'circuit')].filter(isOil);
  const opened = Math.max(0, ...ofOil.map((c) => circuitOpenedAt(ledger, c)));
  return (vehicle(ledger)?.oilAt ?? 0) <= opened;
}
