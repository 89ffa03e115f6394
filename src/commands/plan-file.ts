// Reading a plan file from the disk: what the file itself is refused for comes back with what is wrong in it.
import { closeSync, fstatSync, openSync, readFileSync } from 'node:fs';
import { longestPlan, type ReadPlan, readPlan } from '../plan/read-plan.ts';
import { faultFrom } from '../store/fault.ts';
import { whereJsonBreaks } from '../store/json-place.ts';

/** No character of UTF-8 is longer. */
const longestBytes = 4 * longestPlan;

/** Never reads more of a file than a plan may be long. */
export function readPlanFile(file: string): ReadPlan {
  try {
    const open = openSync(file, 'r');
    try {
      const { size } = fstatSync(open);
      // One byte too many is told as all the rest would be.
      const text = size > longestBytes ? ' '.repeat(longestPlan + 1) : readFileSync(open, 'utf8');
      return readPlan(text, file, whereJsonBreaks);
    } finally {
      closeSync(open);
    }
  } catch (thrown) {
    const { what, where, next } = faultFrom(thrown, file);
    return { ok: false, fault: { what, where, next }, faults: [{ what, where, next }] };
  }
}
