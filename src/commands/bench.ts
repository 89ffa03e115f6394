// The program on the screen: the shelf, or a job opened by its name. What paints is handed in.
import { callWords } from '../calls/call-words.ts';
import { type Line, readLine } from '../job/line.ts';
import { readLog } from '../job/log.ts';
import { type Bench, createBench, type OnTheShelf } from '../session/bench.ts';
import { realDisk } from '../store/disk.ts';
import { isFault } from '../store/fault.ts';
import { openJob } from '../store/open-job.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { jobsIn } from '../store/shelf.ts';
import { plainText } from '../trade/plain-text.ts';
import { exits, type Out } from './answer.ts';
import { ringBells } from './bells.ts';
import { habitsAtHand } from './habits.ts';
import { keysOf } from './keys.ts';
import { type ByVoice, joinVoice, voiceDoors } from './listening.ts';
import { openSession } from './opening.ts';
import { exitAfter, type Shown, takeTerminal } from './terminal.ts';

export type Show = (bench: Bench, keys: ReturnType<typeof keysOf>, options: { colours: boolean }) => Shown;
/** The screen, read from the disk only when it is wanted. */
export type ShowAtHand = () => Promise<Show>;

async function jobsOnShelf(): Promise<readonly OnTheShelf[]> {
  const { jobs } = placesOn(thisMachine());
  const found = await jobsIn(realDisk, jobs).catch((thrown: unknown) => {
    if (!isFault(thrown)) throw thrown;
    return [{ path: jobs, fault: thrown }];
  });
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
    return released ? 'released' : `${ledger.tallies.all.off} off, ${ledger.tallies.all.open} holes open`;
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

/** Why nothing can be painted here, if so. */
export function noScreen(): string | undefined {
  const { stdin, stdout, env } = process;
  const instead = 'from a script use "countback take JOB"';
  if (!stdin.isTTY || !stdout.isTTY) return `the screen needs a terminal; ${instead}`;
  if (env.TERM === 'dumb')
    return `the screen needs a terminal that can move its cursor, and TERM is "dumb"; ${instead}`;
  return undefined;
}

/** Shows the shelf, or the job named, until the program is left. */
export async function runBench(
  named: string | undefined,
  packageRoot: URL,
  showAtHand: ShowAtHand,
  out: Out,
  byVoice: ByVoice = {},
): Promise<number> {
  const why = noScreen();
  if (why !== undefined) {
    out.complain(`countback: ${why}`);
    return exits.usage;
  }
  const coming = showAtHand();
  const { habits, wrong, keep, file } = await habitsAtHand();
  const unkept: string[] = [];
  const bench = createBench({
    jobs: jobsOnShelf,
    open: (job, how) => openSession(job, packageRoot, { ...how, tell: (line) => unkept.push(line) }),
    habits,
    settingsFile: file,
    word: wrong[0],
    keep,
    ...voiceDoors(),
  });
  ringBells(bench, () => process.stdout.write('\u0007'));
  if (named !== undefined) await bench.open(named);
  // Whatever ends the program, a bug too: what is not on the disk is told.
  process.on('exit', () => {
    const unsaved = bench.store.getState().session?.job.unsaved() ?? [];
    if (unsaved.length === 0) return;
    tellUnsaved(unsaved, out);
    process.exitCode = exits.notSaved;
  });
  const show = await coming;
  const endVoice = joinVoice(bench, byVoice);
  const terminal = takeTerminal(process.stdin, process.stdout, bench.quit);
  try {
    const shown = show(bench, keysOf(process.stdin, terminal.stop), { colours: !process.env.NO_COLOR });
    terminal.shows(shown);
    await shown.left;
  } finally {
    endVoice();
    terminal.giveBack();
  }
  await bench.store.getState().session?.close();
  for (const line of unkept) out.complain(`countback: ${line}`);
  const ended = terminal.endedBy();
  return ended ? exitAfter(ended) : exits.fine;
}

function tellUnsaved(lines: readonly Line[], out: Out): void {
  out.complain(`countback: NOT SAVED, ${lines.length} call${lines.length === 1 ? '' : 's'}; write them down:`);
  for (const line of lines) out.complain(`  ${line.n}  ${callWords(line.entries)}`);
}
