// One program writes a job. The lock is a file beside the job file, made whole and given its name by link(2), so that
// nobody ever sees half of one. A dead process's lock is taken over; another host's is named and left alone.
//
// Taking over: who first links a claim named after the dead lock's own key may replace that lock, and nobody else. A
// thief killed half-way leaves a claim that is dead in turn; the next thief claims that claim. Keys never come twice, so
// a late thief acting on what it read long ago finds that the lock has another key now, and starts again.
import { randomBytes } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import * as z from 'zod';
import { type Disk, readFile } from './disk.ts';
import { type Fault, fault, hasCode } from './fault.ts';
import type { Mark, Processes } from './processes.ts';
import { unlinkIfThere, writeDraft } from './whole-file.ts';

export type Lock = {
  release(): Promise<void>;
  /** The fault when it is no longer this one's. */
  stillMine(): Promise<Fault | undefined>;
};

const claimSchema = () =>
  z.strictObject({
    lock: z.literal('countback'),
    host: z.string().max(300),
    pid: z.number().int().positive(),
    began: z.string().max(300),
    key: z.string().regex(/^[0-9a-f]{24}$/),
  });
type Claim = z.infer<ReturnType<typeof claimSchema>>;

const rounds = 50;

/** The lock of `jobPath`, or the fault that names who holds it. Throws what the disk throws. */
export async function takeLock(disk: Disk, processes: Processes, jobPath: string): Promise<Lock | Fault> {
  for (let drafts = 3; ; drafts--) {
    try {
      return await takeWithDraft(disk, processes, `${jobPath}.lock`);
    } catch (thrown) {
      // Who holds the lock clears half-written drafts away, and ours was one a moment ago.
      if (drafts === 1 || !hasCode(thrown, 'ENOENT')) throw thrown;
    }
  }
}

async function takeWithDraft(disk: Disk, processes: Processes, lockPath: string): Promise<Lock | Fault> {
  const self = await processes.self();
  const mine: Claim = { lock: 'countback', ...self, key: randomBytes(12).toString('hex') };
  const draft = `${lockPath}.new-${mine.key}`;
  try {
    await writeDraft(disk, draft, Buffer.from(`${JSON.stringify(mine)}\n`));
    for (let round = 0; round < rounds; round++) {
      if (await linkIfFree(disk, draft, lockPath)) return await taken(disk, processes, lockPath, mine);
      const held = await claimAt(disk, lockPath);
      if (held === undefined) continue;
      if (held === 'unreadable') return unreadable(lockPath);
      if (!(await isDead(processes, self, held))) return inUse(lockPath, held, self);
      if (await takeOver(disk, processes, lockPath, draft, held, mine))
        return await taken(disk, processes, lockPath, mine);
    }
    return fault('in-use', 'other programs are taking this job just now', lockPath, 'try again');
  } finally {
    // The lock stands or does not: a draft left lying changes nothing.
    await disk.unlink(draft).catch(() => undefined);
  }
}

const claimOn = (lockPath: string, key: string) => `${lockPath}.steal-${key}`;

/** True when the lock is `mine` now. False: look again. */
async function takeOver(disk: Disk, processes: Processes, lockPath: string, draft: string, dead: Claim, mine: Claim) {
  const chain: Claim[] = [dead];
  for (let victim = dead; ; ) {
    const claim = claimOn(lockPath, victim.key);
    if (await linkIfFree(disk, draft, claim)) break;
    const thief = await claimAt(disk, claim);
    if (thief === undefined || thief === 'unreadable') return false;
    // A living thief is about to hold the lock: the next look at it will tell.
    if (!(await isDead(processes, mine, thief))) return pause();
    chain.push(thief);
    victim = thief;
  }
  const claimed = claimOn(lockPath, (chain.at(-1) ?? dead).key);
  let done = false;
  try {
    if (await stands(disk, lockPath, chain)) {
      await disk.rename(draft, lockPath);
      done = true;
    }
    return done;
  } finally {
    // A claim of the living that is not used would keep everyone else waiting.
    if (!done) await unlinkIfThere(disk, claimed);
  }
}

/** Whether each of `chain` still is where it was read: the dead lock, its dead thief, that one's dead thief. */
async function stands(disk: Disk, lockPath: string, chain: readonly Claim[]): Promise<boolean> {
  let at = lockPath;
  for (const { key } of chain) {
    const there = await claimAt(disk, at);
    if (there === undefined || there === 'unreadable' || there.key !== key) return false;
    at = claimOn(lockPath, key);
  }
  return true;
}

async function taken(disk: Disk, processes: Processes, lockPath: string, mine: Claim): Promise<Lock> {
  // Left for the next who takes the lock, where it cannot be done now.
  await clearLeftOvers(disk, processes, lockPath, mine).catch(() => undefined);
  const isMine = async () => {
    const there = await claimAt(disk, lockPath);
    return there !== undefined && there !== 'unreadable' && there.key === mine.key;
  };
  return {
    async release() {
      if (await isMine()) await unlinkIfThere(disk, lockPath);
    },
    async stillMine() {
      if (await isMine()) return undefined;
      return fault('in-use', 'the lock is no longer ours', lockPath, 'leave, and open the job again');
    },
  };
}

/** While the lock is held by the living, every claim is void; whole drafts stay while who made them lives. */
async function clearLeftOvers(disk: Disk, processes: Processes, lockPath: string, mine: Claim): Promise<void> {
  const folder = dirname(lockPath);
  const name = basename(lockPath);
  for (const found of await disk.readdir(folder)) {
    const path = join(folder, found);
    if (found.startsWith(`${name}.steal-`)) await unlinkIfThere(disk, path);
    if (!found.startsWith(`${name}.new-`) || found.endsWith(mine.key)) continue;
    const made = await claimAt(disk, path);
    if (made === undefined) continue;
    if (made === 'unreadable' || (await isDead(processes, mine, made))) await unlinkIfThere(disk, path);
  }
}

async function linkIfFree(disk: Disk, draft: string, path: string): Promise<boolean> {
  try {
    await disk.link(draft, path);
    return true;
  } catch (thrown) {
    if (hasCode(thrown, 'EEXIST')) return false;
    throw thrown;
  }
}

async function claimAt(disk: Disk, path: string): Promise<Claim | 'unreadable' | undefined> {
  try {
    return claimSchema().parse(JSON.parse((await readFile(disk, path, 4096)).toString('utf8')));
  } catch (thrown) {
    if (hasCode(thrown, 'ENOENT')) return undefined;
    if (thrown instanceof SyntaxError || thrown instanceof z.ZodError) return 'unreadable';
    throw thrown;
  }
}

const isDead = async (processes: Processes, self: Mark, other: Mark) =>
  other.host === self.host && !(await processes.isAlive(other));

async function pause(): Promise<false> {
  await new Promise((resolve) => setTimeout(resolve, 5));
  return false;
}

const unreadable = (lockPath: string) =>
  fault(
    'lock-unreadable',
    'the lock of this job cannot be read',
    lockPath,
    'make sure that no other countback has the job open, then delete the lock',
  );

function inUse(lockPath: string, held: Claim, self: Mark): Fault {
  const here = held.host === self.host;
  const next = here
    ? 'look on here, or close it there and open it here again'
    : `look on here; if countback is not running on ${held.host}, delete the lock`;
  const who = `countback, process ${held.pid}${here ? '' : ` on ${held.host}`}`;
  return fault('in-use', `the job is open in another ${who}`, lockPath, next);
}
