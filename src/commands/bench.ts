// The program on the screen: the shelf, or a job opened by its name. What paints is handed in.
import { readLine } from '../job/line.ts';
import { readLog } from '../job/log.ts';
import { type Bench, createBench, type OnTheShelf } from '../session/bench.ts';
import { realDisk } from '../store/disk.ts';
import { openJob } from '../store/open-job.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { jobsIn } from '../store/shelf.ts';
import { plainText } from '../trade/plain-text.ts';
import { exits, type Out } from './answer.ts';
import { keysOf } from './keys.ts';
import { openSession } from './opening.ts';

export type Show = (bench: Bench, keys: ReturnType<typeof keysOf>, options: { colours: boolean }) => Promise<void>;

async function jobsOnShelf(): Promise<readonly OnTheShelf[]> {
  const found = await jobsIn(realDisk, placesOn(thisMachine()).jobs);
  return Promise.all(
    found.map(async (one): Promise<OnTheShelf> => {
      if ('fault' in one) return { name: plainText(one.path), path: one.path, said: plainText(one.fault.what) };
      return { name: plainText(one.job), path: one.path, said: await standingOf(one.path) };
    }),
  );
}
/** How a job stands, for its row on the shelf. */
async function standingOf(path: string): Promise<string> {
  try {
    const job = await openJob({ path, readLine, look: true });
    const ledger = readLog(job.lines());
    await job.close();
    const released = ledger.lines.length > 0 && vehicleReleased(ledger);
    return released ? 'released' : `${ledger.tallies.all.off} off, ${ledger.tallies.all.open} open`;
  } catch (thrown) {
    return plainText(thrown instanceof Error ? thrown.message : String(thrown), 60);
  }
}
const vehicleReleased = (ledger: ReturnType<typeof readLog>): boolean => {
  for (let i = ledger.lines.length - 1; i >= 0; i--) {
    const kinds = ledger.lines.all[i]?.entries.map((e) => e.kind) ?? [];
    if (kinds.includes('reopened')) return false;
    if (kinds.includes('released')) return ledger.verdicts[i + 1] === true;
  }
  return false;
};

/** Shows the shelf, or the job named, until the program is left. */
export async function runBench(named: string | undefined, packageRoot: URL, show: Show, out: Out): Promise<number> {
  const { stdin, stdout } = process;
  if (!stdin.isTTY || !stdout.isTTY) {
    out.complain('countback: the screen needs a terminal; from a script use "countback take JOB"');
    return exits.usage;
  }
  const bench = createBench({ jobs: jobsOnShelf, open: (job, how) => openSession(job, packageRoot, how) });
  if (named !== undefined) await bench.open(named);
  const leave = () => bench.quit();
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP', 'SIGQUIT'] as const) process.on(signal, leave);
  await show(
    bench,
    keysOf(stdin, (text) => stdout.write(text)),
    { colours: !process.env.NO_COLOR },
  );
  const unsaved = (await bench.store.getState().session?.close()) ?? [];
  if (unsaved.length === 0) return exits.fine;
  out.complain(`countback: NOT SAVED, ${unsaved.length} call${unsaved.length === 1 ? '' : 's'}:`);
  for (const line of unsaved) out.complain(`  ${line.n} ${line.call}`);
  return exits.unreadable;
}
