// Sockets that nearly fit: metric ones on inch heads and the other way round. They round corners, and they hide an inch
// bolt among metric ones.
import { cited, commonPractice } from './cited.ts';
import { millimetresPerInch } from './definitions.ts';
import { inchText } from './designation.ts';
import { nearlyFits } from './head-tables.ts';

/** Socket sizes in the usual cases. */
const metricSockets = cited(
  [5.5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 27, 30, 32, 34, 36],
  'mm',
  commonPractice,
).value;
/** Sixteenths of an inch, and the 32nds that are made. */
const inchSockets = cited(
  [7, 8, 9, 10, 11, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 38, 40, 44].map((parts) => parts / 32),
  'in',
  commonPractice,
).value;

export type NearSocket = {
  /** "13 mm", "1/2 in". */
  socket: string;
  sizeMm: number;
  /** Socket less head: above nothing it is loose, below it will not go on without force. */
  looseByMm: number;
};

/**
 * Sockets of the other system that nearly fit a head.
 * @param acrossFlatsMm of the head, mm
 * @returns nearest first; at most 0.35 mm apart. Arithmetic of the exact inch; the limit is common practice, no source
 */
export function socketsThatNearlyFit(acrossFlatsMm: number): NearSocket[] {
  const isMetric = metricSockets.some((size) => size === acrossFlatsMm);
  const others: readonly NearSocket[] = isMetric
    ? inchSockets.map((inches) =>
        socketOf(`${inchText(inches * millimetresPerInch.value)} in`, inches * millimetresPerInch.value, acrossFlatsMm),
      )
    : metricSockets.map((size) => socketOf(`${size} mm`, size, acrossFlatsMm));
  return others
    .filter(({ looseByMm }) => Math.abs(looseByMm) <= nearlyFits.value)
    .sort((a, b) => Math.abs(a.looseByMm) - Math.abs(b.looseByMm));
}

const socketOf = (socket: string, sizeMm: number, headMm: number): NearSocket => ({
  socket,
  sizeMm,
  looseByMm: sizeMm - headMm,
});
