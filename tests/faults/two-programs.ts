// Several programs after one job: on the disk double, where both would write; and as real processes that race for a dead
// program's job, one of them killed while it takes the lock over.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createJob, openJob } from '../../src/store/open-job.ts';
import { chance } from '../store/disk-double.ts';
import { readLine } from '../store/practice.ts';
import { freeLines, hasLines, newJob, openOn } from './reference.ts';
import { type Row, type Size, trialsOf } from './row.ts';
import { runChild } from './store-child.ts';

export async function secondWriter({ long, seed }: Size): Promise<Row> {
  const trials = trialsOf('disk double: a second program on the job of a first that writes');
  const lines = freeLines();
  for (let round = 0; round < (long ? 200 : 10); round++)
    await trials.one(`seed ${seed + round}`, async () => {
      const next = chance(seed + round);
      const disk = await newJob();
      const living = new Set<number>();
      const first = await openOn(disk, { living });
      const upTo = 1 + Math.floor(next() * 20);
      for (const line of lines.slice(0, upTo)) await first.append(line);
      const second = await openOn(disk, { living });
      deepEqual([first.mode, second.mode], ['write', 'look']);
      const [line] = lines.slice(upTo);
      if (!line) throw new Error('the job is too short');
      equal((await second.append(line)).saved, false);
      equal((await first.append(line)).saved, true);
      await second.close();
      await first.close();
      hasLines((await openOn(disk)).lines(), lines, { atLeast: upTo + 1, atMost: upTo + 1 });
    });
  return trials;
}

/** @param child the bundle of tests/store/child.ts */
export async function races({ races: many, seed }: Size, child: string): Promise<Row> {
  const trials = trialsOf('races of two programs for a dead one’s job, a third killed while taking over its lock');
  const folder = mkdtempSync(join(tmpdir(), 'countback-races-'));
  const killed = { stealing: 0, anywhere: 0, late: 0 };
  try {
    for (let round = 0; round < many; round++)
      await trials.one(`round ${round}, seed ${seed + round}`, async () => {
        const next = chance(seed + round);
        const path = join(folder, String(round), 'van.countback.jsonl');
        await createJob(path, 'van');
        const dead = await runChild(child, [path, 'die', 'say']);
        const third = next() < 0.5 ? ['die-stealing', 'say'] : ['die-at', String(1 + Math.floor(next() * 40))];
        const racing = [third, ['once', 'say'], ['once', 'say']];
        // The third is ahead by as much as is drawn, so that it meets the dead lock often enough; nothing rests on it.
        const aheadMs = next() * 80;
        const ended = await Promise.all(
          racing.map(async (args) => {
            if (args !== third) await new Promise((resolve) => setTimeout(resolve, aheadMs));
            return runChild(child, [path, ...args]);
          }),
        );
        const all = [dead, ...ended];
        for (const { output } of all) ok(!output.includes('two owners'), 'two programs wrote at once');
        for (const [i, { signal, code }] of ended.entries())
          if (racing[i] !== third) deepEqual({ signal, code }, { signal: null, code: 0 });
        const last = ended[racing.indexOf(third)];
        if (last?.output.includes('saved')) killed.late++;
        else killed[third[0] === 'die-at' ? 'anywhere' : 'stealing']++;
        const job = await openJob({ path, readLine });
        try {
          equal(job.mode, 'write');
          const saved = all.flatMap(({ output }) => /by \d+/.exec(output) ?? []);
          const there = job.lines().map(({ said }) => said);
          for (const line of saved) ok(there.includes(line), `the line ${line} is lost`);
          equal(new Set(there).size, there.length);
        } finally {
          await job.close();
        }
        const left = readdirSync(join(path, '..')).filter((name) => name.includes('.lock'));
        deepEqual(left, []);
      });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  trials.remark = `the third killed with its claim made ${killed.stealing}, at any operation ${killed.anywhere}, with the lock ${killed.late}`;
  return trials;
}
