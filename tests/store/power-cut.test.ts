// Power cuts on the disk double: before and after every operation, with the unsynced bytes dropped, torn and reordered.
import { expect, it } from 'vitest';
import { createJob } from '../../src/store/open-job.ts';
import { type DiskDouble, diskDouble } from './disk-double.ts';
import { jobPath, linesTo, newJobOn, noon, openOn } from './practice.ts';

type Fallen = { after: DiskDouble; acknowledged: number; begun: number; at: string };

/** Pulls the plug around every operation while `work` runs, each time in several manners. */
function pullingThePlug(disk: DiskDouble, counts: { acknowledged: number; begun: number }, manners: number): Fallen[] {
  const all: Fallen[] = [];
  let seed = 1;
  disk.watching = (op, when) => {
    for (let i = 0; i < manners; i++, seed++)
      all.push({ after: disk.cut(seed), ...counts, at: `${when} ${op.name} ${op.path}, seed ${seed}` });
  };
  return all;
}

type Found = 'whole' | 'torn' | 'doubt';

/** Opens what is left as a mechanic would, confirming where that is asked. */
async function openFallen(disk: DiskDouble) {
  const first = await openOn(disk);
  const found: Found = first.doubt ? 'doubt' : first.notices.length > 0 ? 'torn' : 'whole';
  if (!first.doubt) return { job: first, found };
  await first.close();
  return { job: await openOn(disk, { goOnFrom: first.doubt.byte }), found };
}

async function fillWatched(disk: DiskDouble, last: number, manners: number, from = 0): Promise<Fallen[]> {
  const counts = { acknowledged: from, begun: from };
  const fallen = pullingThePlug(disk, counts, manners);
  const job = await openOn(disk);
  const lines = linesTo(last).slice(from);
  while (lines.length > 0) {
    // A burst now and then: several calls on their way at once.
    const burst = lines.splice(0, 1 + (counts.begun % 3));
    await Promise.all(
      burst.map(async (line) => {
        counts.begun = line.n;
        const saved = await job.append(line);
        if (saved.saved) counts.acknowledged = line.n;
      }),
    );
  }
  await job.close();
  disk.watching = undefined;
  expect(counts.acknowledged).toBe(last);
  return fallen;
}

it('[D1] [D2] a power cut at any operation keeps every line shown as saved, whole lines only, and the job goes on', async () => {
  const fallen = await fillWatched(await newJobOn(), 100, 3);
  expect(fallen.length).toBeGreaterThan(1500);
  const seen = { whole: 0, torn: 0, doubt: 0 };
  for (const { after, acknowledged, begun, at } of fallen) {
    const { job, found } = await openFallen(after);
    seen[found]++;
    const kept = job.lines().length;
    expect(job.mode, at).toBe('write');
    expect(kept, at).toBeGreaterThanOrEqual(acknowledged);
    expect(kept, at).toBeLessThanOrEqual(begun);
    expect(job.lines(), at).toEqual(linesTo(kept));
    expect(job.trouble(), at).toBeUndefined();
  }
  // The cuts were worth it: each way of ending was met.
  expect(Math.min(seen.whole, seen.torn, seen.doubt)).toBeGreaterThan(20);
});

it('[D2] a power cut while a cut job is opened again and goes on loses nothing either', async () => {
  const first = (await fillWatched(await newJobOn(), 6, 4)).filter((_, i) => i % 37 === 0);
  let cuts = 0;
  for (const { after, at } of first) {
    const kept = (await openOn(after.cut(1), { look: true })).lines().length;
    const counts = { acknowledged: kept, begun: kept + 1 };
    const again = pullingThePlug(after, counts, 2);
    const { job } = await openFallen(after);
    const saved = await job.append({ n: kept + 1, said: 'after the cut' });
    expect(saved, at).toEqual({ saved: true });
    counts.acknowledged = kept + 1;
    await job.close();
    after.watching = undefined;
    for (const twice of again) {
      const { job: last } = await openFallen(twice.after);
      const where = `${at}; then ${twice.at}`;
      expect(last.lines().length, where).toBeGreaterThanOrEqual(twice.acknowledged);
      expect(last.lines().slice(0, kept), where).toEqual(linesTo(kept));
      cuts++;
    }
  }
  expect(cuts).toBeGreaterThan(500);
});

it('[D1] a line left in memory by an earlier end whose fsync failed is on the disk once it is shown', async () => {
  const disk = await newJobOn();
  const job = await openOn(disk);
  await job.append({ n: 1, said: 'one' });
  disk.failing = (op) => (op.name === 'sync' ? { code: 'EIO' } : undefined);
  expect((await job.append({ n: 2, said: 'two' })).saved).toBe(false);
  disk.failing = undefined;
  expect((await openOn(disk.cut(0))).lines().length).toBe(1);

  const next = await openOn(disk);
  expect(next.lines().length).toBe(2);
  expect((await openOn(disk.cut(0))).lines().length).toBe(2);
});

it('[D2] a new job is there whole or not at all, whenever the power goes', async () => {
  const disk = diskDouble();
  const fallen = pullingThePlug(disk, { acknowledged: 0, begun: 0 }, 8);
  await createJob(jobPath, 'blue estate', disk);
  disk.watching = undefined;
  let there = 0;
  for (const { after, at } of fallen) {
    if (!after.bytesAt(jobPath)) continue;
    there++;
    expect((await openOn(after)).job, at).toBe('blue estate');
  }
  expect(there).toBeGreaterThan(5);
  expect((await openOn(disk.cut(0))).job).toBe('blue estate');
});

it('[D2] the dated copy and the copy before a cut are whole when the power goes', async () => {
  const disk = await newJobOn();
  const job = await openOn(disk);
  for (const line of linesTo(5)) await job.append(line);
  await job.close();
  const bytes = disk.bytesAt(jobPath) ?? Buffer.alloc(0);
  bytes[bytes.length - 60] = 0;
  disk.put(jobPath, bytes);
  disk.remove('/jobs/copies/blue.2026-03-04.countback.jsonl');
  const look = await openOn(disk);
  const holding = bytes.subarray(0, look.doubt?.byte);
  const fallen = pullingThePlug(disk, { acknowledged: 0, begun: 0 }, 4);
  await openOn(disk, { goOnFrom: look.doubt?.byte, now: noon });
  let copies = 0;
  for (const { after, at } of fallen) {
    const found = after.names().filter((name) => name.startsWith('/jobs/copies/') && !name.includes('.new-'));
    for (const name of found) {
      const whole = name.includes('before-cut') ? bytes : holding;
      expect(after.bytesAt(name)?.equals(whole), `${name} ${at}`).toBe(true);
    }
    copies += found.length;
    const file = after.bytesAt(jobPath) ?? Buffer.alloc(0);
    if (!file.equals(bytes))
      expect(
        found.some((n) => n.includes('before-cut')),
        at,
      ).toBe(true);
  }
  expect(copies).toBeGreaterThan(10);
});
