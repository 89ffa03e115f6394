// A second program on the same job: it looks, sees what comes, and cannot write.
import { expect, it, vi } from 'vitest';
import { readChain } from '../../src/store/chain.ts';
import { followJob } from '../../src/store/follow.ts';
import {
  diskWith,
  jobOf,
  jobPath,
  lineNo,
  linesTo,
  newJobOn,
  openOn,
  type PracticeLine,
  processesDouble,
  readLine,
} from './practice.ts';

const listening = () => {
  const lines: PracticeLine[] = [];
  const faults: string[] = [];
  return {
    lines,
    faults,
    line: (l: PracticeLine) => lines.push(l),
    fault: (f: { kind: string }) => faults.push(f.kind),
  };
};

it('[D3] a second program opens the job to look, names the first, and cannot write', async () => {
  const disk = await newJobOn();
  const living = new Set([1, 2]);
  const first = await openOn(disk, { processes: processesDouble(1, living) });
  await first.append(lineNo(1));
  const second = await openOn(disk, { processes: processesDouble(2, living) });
  expect(second.mode).toBe('look');
  expect(second.whyLook).toMatchObject({ kind: 'in-use', what: expect.stringContaining('process 1') });
  expect(second.lines()).toEqual(linesTo(1));
  const before = disk.bytesAt(jobPath);
  expect(await second.append(lineNo(2))).toMatchObject({ saved: false, taken: false, fault: { kind: 'in-use' } });
  expect(await second.retry()).toMatchObject({ saved: false });
  await second.close();
  expect(disk.bytesAt(jobPath)?.equals(before ?? Buffer.alloc(0))).toBe(true);
  expect(await first.append(lineNo(2))).toEqual({ saved: true });
  await first.close();
  expect((await openOn(disk, { processes: processesDouble(2, living) })).mode).toBe('write');
});

it('[D3] new lines show within two seconds without being asked for', async () => {
  const disk = await newJobOn();
  const first = await openOn(disk);
  await first.append(lineNo(1));
  const second = await openOn(disk, { look: true });
  const heard = listening();
  vi.useFakeTimers();
  try {
    second.onLine(heard);
    for (let n = 2; n < 12; n++) {
      await first.append(lineNo(n));
      await vi.advanceTimersByTimeAsync(2000);
      expect(heard.lines.at(-1)).toEqual(lineNo(n));
    }
    expect(second.lines()).toEqual(linesTo(11));
    expect(second.digest()).toBe(first.digest());
    await second.close();
    await first.append(lineNo(12));
    await vi.advanceTimersByTimeAsync(10_000);
    expect(heard.lines.length).toBe(10);
  } finally {
    vi.useRealTimers();
  }
});

it('[D3] looking on shows whole lines only, and waits for the rest of one', async () => {
  const { bytes, starts } = await jobOf(3);
  const reached = readChain(bytes.subarray(0, starts[2])).reached;
  const disk = diskWith(bytes.subarray(0, starts[2]));
  const { inode } = await disk.stat(jobPath);
  const looking = followJob({ disk, path: jobPath }, { reached, lines: 1, inode, newlineMissing: false }, readLine);
  const file = await disk.open(jobPath, 'write');
  const seen: PracticeLine[] = [];
  for (let at = starts[2] ?? 0; at < bytes.length; at++) {
    await file.write(bytes.subarray(at, at + 1), at);
    seen.push(...(await looking.look()));
    const whole = starts.filter((start) => start <= at + 1).length - 3;
    expect(seen, `at byte ${at}`).toEqual(linesTo(3).slice(1, 1 + whole));
  }
  expect(seen.length).toBe(2);
});

it('[D3] a last line without its newline is shown, and not twice when the newline comes', async () => {
  const { bytes } = await jobOf(3);
  const disk = diskWith(bytes.subarray(0, -1));
  const look = await openOn(disk, { look: true });
  expect(look.lines()).toEqual(linesTo(3));
  const heard = listening();
  look.onLine(heard, 1);
  const job = await openOn(disk);
  await job.append(lineNo(4));
  await vi.waitFor(() => expect(look.lines()).toEqual(linesTo(4)));
  expect(heard.lines).toEqual([lineNo(4)]);
  await look.close();
});

it('[D3] [D4] looking on at a file that is replaced, cut, damaged or from a newer program: told, and ended', async () => {
  const { bytes, starts } = await jobOf(4);
  const start = bytes.subarray(0, starts[3]);
  const bad = Buffer.from(bytes);
  bad[(starts[3] ?? 0) + 5] = 0;
  for (const [kind, now, replaced] of [
    ['changed-underneath', bytes, true],
    ['changed-underneath', start.subarray(0, -9), false],
    ['damaged', bad, false],
  ] as const) {
    const disk = diskWith(start);
    const look = await openOn(disk, { look: true });
    const heard = listening();
    look.onLine(heard, 1);
    if (replaced) disk.put(jobPath, now);
    else {
      const file = await disk.open(jobPath, 'write');
      await file.truncate(now.length);
      await file.write(now, 0);
    }
    await vi.waitFor(() => expect(heard.faults).toEqual([kind]));
    expect(look.lines()).toEqual(linesTo(2));
    await look.close();
  }
});
