// Reading a plan file from the disk: what the file itself is refused for comes back with what is wrong in it.
import { open } from 'node:fs/promises';
import { longestPlan, type ReadPlan, readPlan } from '../plan/read-plan.ts';
import { faultFrom } from '../store/fault.ts';
import { whereJsonBreaks } from '../store/json-place.ts';

/** No character of UTF-8 is longer. */
const longestBytes = 4 * longestPlan;

/** Never reads more of a file than a plan may be long. */
export async function readPlanFile(file: string): Promise<ReadPlan> {
  try {
    const handle = await open(file, 'r');
    try {
      const { size } = await handle.stat();
      // One byte too many is told as all the rest would be.
      const text = size > longestBytes ? ' '.repeat(longestPlan + 1) : await handle.readFile('utf8');
      return readPlan(text, file, whereJsonBreaks);
    } finally {
      await handle.close();
    }
  } catch (thrown) {
    const { what, where, next } = faultFrom(thrown, file);
    return { ok: false, fault: { what, where, next }, faults: [{ what, where, next }] };
  }
}
