// A job that is only looked at: its lines as they are, those that another program adds as it saves them, and no way to
// write one.
import type { Low } from 'lowdb';
import type { Disk } from './disk.ts';
import { type Fault, fault, faultFrom } from './fault.ts';
import { everySoOften, followJob } from './follow.ts';
import type { ReadLine } from './journal.ts';
import type { AsRead, JobFile } from './journal-adapter.ts';
import type { Saved } from './saving.ts';

/** D3: well under the two seconds a second program may lag behind. */
const lookEveryMs = 500;

export function lookingOn<L extends { n: number }>(
  disk: Disk,
  path: string,
  readLine: ReadLine<L>,
  { bytes, inode, reached }: AsRead<L>,
  { data }: Low<JobFile<L>>,
  whyLook: Fault | undefined,
) {
  const newlineMissing = bytes[reached.end - 1] !== 0x0a;
  const follower = followJob({ disk, path }, { reached, lines: data.lines.length, inode, newlineMissing }, readLine);
  const refused: Saved = {
    saved: false,
    taken: false,
    fault: whyLook ?? fault('in-use', 'the job is open only to look', path, 'open it again to write'),
  };
  let stop = () => {};
  return {
    mode: 'look' as const,
    append: async () => refused,
    trouble: () => undefined,
    unsaved: () => [],
    retry: async () => refused,
    digest: () => follower.reached().digest.toString('hex'),
    onLine(told: { line(line: L): void; fault(fault: Fault): void }, everyMs: number = lookEveryMs) {
      stop();
      const onLines = (lines: L[]) => {
        for (const line of lines) {
          data.lines.push(line);
          told.line(line);
        }
      };
      stop = everySoOften(follower, everyMs, onLines, (thrown) => told.fault(faultFrom(thrown, path)));
      return stop;
    },
    parted: () => undefined,
    async close() {
      stop();
      return [];
    },
  };
}
