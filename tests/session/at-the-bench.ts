// A bench with a job kept in memory: keys go in, the lines come out, and the disk fills up or holds a bad last line when
// told to. No screen and no file.
import type { PlanOffer } from '../../src/calls/desk.ts';
import type { OnTheShelf } from '../../src/calls/lists/shelf.ts';
import type { Line, Stamp } from '../../src/job/line.ts';
import { createBench } from '../../src/session/bench.ts';
import type { Opener } from '../../src/session/bench-shape.ts';
import { type Habits, standardHabits } from '../../src/session/habits.ts';
import { createSession } from '../../src/session/session.ts';
import type { Session } from '../../src/session/session-shape.ts';
import { type Fault, fault, isFault } from '../../src/store/fault.ts';
import type { OpenJob } from '../../src/store/open-job.ts';
import type { Saved } from '../../src/store/saving.ts';
import { plansAtHand } from '../jobs/lines.ts';

export type Disk = { full: boolean; unsaved: Line[]; saved: Line[] };
export type Opened = {
  doubt?: OpenJob<Line>['doubt'];
  notices?: OpenJob<Line>['notices'];
  look?: true | Fault;
  shelf?: readonly OnTheShelf[];
  trays?: readonly string[];
  plans?: readonly PlanOffer[];
};

function jobInMemory(kept: Line[], disk: Disk, opened: Opened): OpenJob<Line> {
  const full = () => fault('disk-full', 'the disk is full', '/jobs/x', 'make room');
  const save = (): Saved => {
    if (disk.full) return { saved: false, taken: true, fault: full() };
    disk.saved.push(...disk.unsaved.splice(0));
    return { saved: true };
  };
  return {
    path: '/jobs/x',
    job: 'x',
    mode: opened.doubt || opened.look ? 'look' : 'write',
    ...(opened.doubt && { doubt: opened.doubt }),
    ...(isFault(opened.look) && { whyLook: opened.look }),
    notices: opened.notices ?? [],
    lines: () => [...kept],
    append: async (line) => {
      disk.unsaved.push(line);
      return save();
    },
    trouble: () => (disk.unsaved.length > 0 && disk.full ? full() : undefined),
    unsaved: () => disk.unsaved,
    retry: async () => save(),
    digest: () => '',
    onLine: () => () => undefined,
    parted: () => undefined,
    close: async () => disk.unsaved,
  };
}

/** So much later whenever it is asked, all in one run. */
export function ticking(from: Stamp, pace: { stepMs: number }): () => Omit<Stamp, 'run'> {
  let passedMs = 0;
  return () => {
    passedMs += pace.stepMs;
    const { zoneMin, atMs, awakeMs } = from;
    return { zoneMin, atMs: atMs + passedMs, awakeMs: awakeMs + passedMs };
  };
}
const monday: Stamp = { atMs: Date.UTC(2031, 2, 3, 8), zoneMin: 60, run: 1, awakeMs: 0 };

export type AtTheBench = Awaited<ReturnType<typeof atTheBench>>;
/** @param lines what was called before; with none the bench stands at the shelf */
export async function atTheBench(lines?: readonly Line[], opened: Opened = {}, habits: Partial<Habits> = {}) {
  const disk: Disk = { full: false, unsaved: [], saved: [] };
  /** How far apart the looks at the clock are. */
  const pace = { stepMs: 60_000 };
  const opens: { named: string; how: Parameters<Opener>[1] }[] = [];
  const sessions: Session[] = [];
  const shelf: readonly OnTheShelf[] = opened.shelf ?? [{ name: 'x', path: '/jobs/x', said: '' }];
  const kept: Habits[] = [];
  const bench = createBench({
    habits: { ...standardHabits, trays: opened.trays ?? [], ...habits },
    keep: async (all) => {
      kept.push(all);
      return undefined;
    },
    jobs: async () => [...shelf],
    open: async (named, how) => {
      opens.push({ named, how });
      if (named === 'broken') throw fault('damaged', 'line 3 is damaged', '/jobs/broken', 'take the copy');
      const before = opens.length > 1 && how.goOnFrom !== undefined ? {} : opened;
      const job = jobInMemory([...(lines ?? [])], disk, before);
      const session = createSession({
        job,
        clock: ticking(lines?.at(-1) ?? monday, pace),
        plans: () => opened.plans ?? plansAtHand(),
        ...(opened.trays && { workshop: { trays: opened.trays } }),
      });
      sessions.push(session);
      return session;
    },
  });
  if (lines) await bench.open('/jobs/x');
  const session = () => bench.store.getState().session as Session;
  return {
    bench,
    disk,
    pace,
    kept,
    opens,
    session,
    view: () => bench.store.getState().view,
    state: () => session().store.getState(),
    async press(...keys: string[]) {
      for (const key of keys) bench.press(key);
      await bench.store.getState().session?.settled();
    },
  };
}

/** The keys that type a text. */
export const lettersOf = (text: string): string[] => [...text].map((char) => (char === ' ' ? 'space' : char));
/** A job without a plan, made on the shelf by its keys. */
export async function newJob(...how: Parameters<typeof atTheBench>): ReturnType<typeof atTheBench> {
  const at = await atTheBench(...how);
  await at.press('n', ...lettersOf('estate'), 'enter');
  await new Promise(setImmediate);
  return at;
}
