// The program on the screen: the shelf, or a job opened by its name. What paints is handed in.
import { callWords } from '../calls/call-words.ts';
import type { Line } from '../job/line.ts';
import { createBench } from '../session/bench.ts';
import type { Bench } from '../session/bench-shape.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { exits, type Out } from './answer.ts';
import { asLeft } from './as-left.ts';
import { ringBells } from './bells.ts';
import { habitsAtHand } from './habits.ts';
import { keepHeapSmall } from './heap.ts';
import { keysOf } from './keys.ts';
import { type ByVoice, joinVoice, voiceDoors } from './listening.ts';
import { openSession } from './opening.ts';
import { jobsOnShelf } from './shelf.ts';
import { watchShelf } from './shelf-watch.ts';
import { startedAs } from './started-as.ts';
import { exitAfter, type Shown, takeTerminal } from './terminal.ts';

export type Show = (bench: Bench, keys: ReturnType<typeof keysOf>, options: { colours: boolean }) => Shown;
/** The screen, read from the disk only when it is wanted. */
export type ShowAtHand = () => Promise<Show>;

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
  if (named !== undefined) keepHeapSmall();
  const coming = showAtHand();
  const { habits, wrong, keep, file } = await habitsAtHand();
  const unkept: string[] = [];
  const firstFrame = Promise.withResolvers<void>();
  const bench = createBench({
    jobs: () => firstFrame.promise.then(jobsOnShelf),
    shelfLater: named !== undefined,
    open(job, how) {
      keepHeapSmall();
      return openSession(job, packageRoot, {
        ...how,
        tell: (line) => unkept.push(line),
        plansLater: (leftOut) => bench.tell(leftOut.message),
      });
    },
    habits,
    settingsFile: file,
    word: wrong,
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
  const terminal = takeTerminal(process.stdin, process.stdout, bench.quit, bench.inFront);
  let endWatch: (() => void) | undefined;
  try {
    const shown = show(bench, keysOf(process.stdin, terminal.stop), { colours: !process.env.NO_COLOR });
    terminal.shows(shown);
    setImmediate(firstFrame.resolve);
    void firstFrame.promise.then(() => {
      // Held small already while the first frame is made, what is old would be cleared before it is painted.
      if (named === undefined) keepHeapSmall();
      endWatch = watchShelf(() => bench.store.getState().view.screen === 'shelf', bench.inFront);
    });
    await shown.left;
  } finally {
    endWatch?.();
    endVoice();
    terminal.giveBack();
  }
  await bench.store.getState().session?.close();
  for (const line of unkept) out.complain(`countback: ${line}`);
  const ended = terminal.endedBy();
  const { session } = bench.store.getState();
  const parted = session?.job.parted();
  if (parted) {
    out.complain(`countback: ${parted.message}`);
    return ended ? exitAfter(ended) : exits.notSaved;
  }
  if (!ended && session && session.job.unsaved().length === 0) {
    const program = startedAs(process.env);
    out.write(`${asLeft(bench.desk(), session.job, placesOn(thisMachine()), process.stdout.columns, program)}\n`);
  }
  return ended ? exitAfter(ended) : exits.fine;
}

function tellUnsaved(lines: readonly Line[], out: Out): void {
  out.complain(`countback: NOT SAVED, ${lines.length} call${lines.length === 1 ? '' : 's'}; write them down:`);
  for (const line of lines) out.complain(`  ${line.n}  ${callWords(line.entries)}`);
}
