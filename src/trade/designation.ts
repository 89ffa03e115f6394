// Thread designations as people write them: "M8", "M8x1.25x30", "M6×25", "5/16-18 x 1". Sizes are not judged here.

import { cited } from './cited.ts';
import { millimetresPerInch } from './definitions.ts';

export type Designation = { thread: string; lengthMm?: number };

/** No metric thread in use on vehicles has a coarser pitch. */
const coarsestPitchMm = cited(6, 'mm', 'ISO 261:1998, table 2: M64 x 6 is the coarsest').value;
/** A lone second number below it is a pitch, as is one with a fraction. */
const shortestLengthMm = cited(3, 'mm', 'common practice, no source').value;

/**
 * Reads a designation.
 * @param text one word; "x", "X", "*" and "×" separate
 * @returns the thread as this program writes it ("M10x1.25", "5/16-18") and the length in mm, if given; null when the
 * text is no designation. A lone second number is a pitch when it has a fraction or is under 3 (M10x1, M10x1.25), else
 * a length (M6x25).
 */
export function readDesignation(text: string): Designation | null {
  const plain = text.replace(/[×*X]/g, 'x').replace(/,/g, '.');
  const metric = /^[mM](\d{1,2}(?:\.\d)?)(?:x(\d+(?:\.\d+)?))?(?:x(\d+(?:\.\d+)?))?$/.exec(plain);
  if (metric) return readMetric(metric[1] as string, metric[2], metric[3]);
  const inch = /^(#\d{1,2}|\d+\/\d+|\d)-(\d{1,2})(?:x(\d+(?:\.\d+)?))?$/.exec(plain);
  if (!inch) return null;
  const lengthMm = inch[3] === undefined ? undefined : Number(inch[3]) * millimetresPerInch.value;
  return { thread: `${inch[1]}-${inch[2]}`, ...(lengthMm !== undefined && { lengthMm }) };
}

function readMetric(diameter: string, second?: string, third?: string): Designation | null {
  const thread = `M${Number(diameter)}`;
  if (Number(diameter) === 0) return null;
  if (third !== undefined) {
    const lengthMm = Number(third);
    return Number(second) <= coarsestPitchMm && lengthMm > 0
      ? { thread: `${thread}x${Number(second)}`, lengthMm }
      : null;
  }
  if (second === undefined) return { thread };
  const value = Number(second);
  if (value <= 0) return null;
  const isPitch = value < shortestLengthMm || (second.includes('.') && value <= coarsestPitchMm);
  return isPitch ? { thread: `${thread}x${value}` } : { thread, lengthMm: value };
}
