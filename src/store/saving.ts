// The lines of an open job on their way to the disk: one after the other, in the order they were called, and none taken
// while an earlier one is not saved. It knows no lock and no file; the adapter behind `Low` does the writing.
import type { Low } from 'lowdb';
import { plainDeep } from '../trade/plain-text.ts';
import { type Fault, faultFrom } from './fault.ts';
import type { JobFile } from './journal-adapter.ts';

/** `taken` false: the call was not accepted at all, and is not among the lines. */
export type Saved = { saved: true } | { saved: false; taken: boolean; fault: Fault };

export type Saving<L> = {
  append(line: L): Promise<Saved>;
  trouble(): Fault | undefined;
  retry(): Promise<Saved>;
  /** Back when nothing is on its way any more. */
  idle(): Promise<void>;
  /** To be told of every line that is on the disk. */
  onSaved(n: number): void;
};

export function savingOf<L extends { n: number }>(low: () => Low<JobFile<L>>, path: string): Saving<L> {
  const waiting = new Map<number, { resolve(saved: Saved): void; reject(bug: unknown): void }>();
  let trouble: Fault | undefined;
  let queue: Promise<void> = Promise.resolve();

  function answer(n: number, saved: Saved) {
    waiting.get(n)?.resolve(saved);
    waiting.delete(n);
  }

  async function save(again: boolean) {
    if (trouble && !again) return;
    try {
      await low().write();
      trouble = undefined;
    } catch (thrown) {
      try {
        trouble = faultFrom(thrown, path);
      } catch (bug) {
        for (const { reject } of waiting.values()) reject(bug);
        waiting.clear();
        throw bug;
      }
      for (const n of [...waiting.keys()]) answer(n, { saved: false, taken: true, fault: trouble });
    }
  }

  function enqueue(again = false): Promise<void> {
    const done = queue.then(() => save(again));
    queue = done.catch(() => undefined);
    return done;
  }

  return {
    async append(line) {
      if (trouble) return { saved: false, taken: false, fault: trouble };
      const { lines } = low().data;
      const n = lines.length + 1;
      if (line.n !== n) throw new Error(`line ${n} is due, not ${line.n}`);
      lines.push(plainDeep(line));
      const saved = new Promise<Saved>((resolve, reject) => waiting.set(n, { resolve, reject }));
      // A bug is told to whoever waits for the line.
      enqueue().catch(() => undefined);
      return saved;
    },
    trouble: () => trouble,
    async retry() {
      await queue;
      // The trouble stands until it is over: what is called meanwhile is not taken.
      await enqueue(true);
      return trouble ? { saved: false, taken: true, fault: trouble } : { saved: true };
    },
    idle: () => queue,
    onSaved: (n) => answer(n, { saved: true }),
  };
}
