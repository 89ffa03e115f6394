// What a job file that is not as it was written is taken for: kept, dropped and told, opened to look, or refused and
// left exactly as it is.
import { expect, it } from 'vitest';
import { readLine as readJobLine } from '../../src/job/line.ts';
import { beforeFirst, linked, type Reached } from '../../src/store/chain.ts';
import { type Fault, fault, isFault } from '../../src/store/fault.ts';
import { headerLine } from '../../src/store/journal.ts';
import { type OpenJob, openJob } from '../../src/store/open-job.ts';
import { type DiskDouble, diskDouble } from './disk-double.ts';
import {
  diskWith,
  jobOf,
  jobPath,
  lineNo,
  linesTo,
  noon,
  openOn,
  type PracticeLine,
  processesDouble,
} from './practice.ts';

async function opened(disk: DiskDouble): Promise<OpenJob<PracticeLine> | Fault> {
  try {
    return await openOn(disk);
  } catch (thrown) {
    if (isFault(thrown)) return thrown;
    throw thrown;
  }
}

async function refused(bytes: Uint8Array): Promise<Fault> {
  const disk = diskWith(bytes);
  const touched: string[] = [];
  disk.watching = (op) => {
    if (op.name === 'truncate' || (op.path === jobPath && (op.name === 'write' || op.how === 'write')))
      touched.push(op.name);
    if (op.name === 'link') touched.push('lock');
  };
  const found = await opened(disk);
  disk.watching = undefined;
  if (!isFault(found)) throw new Error('the file was opened');
  expect(disk.bytesAt(jobPath)?.equals(bytes)).toBe(true);
  expect(disk.names()).toEqual([jobPath]);
  // Only what is wrong behind the header is found after the lock is taken, and that is given back.
  const known = ['damaged', 'newer'].includes(found.kind) ? ['lock', 'lock'] : [];
  expect(known).toEqual(expect.arrayContaining(touched));
  expect(found.where).toContain(jobPath);
  expect(found.next.length).toBeGreaterThan(5);
  return found;
}

const isDoubtful = (job: OpenJob<PracticeLine>) => job.doubt !== undefined;

it('[D2] the last line cut at every byte: dropped and told, or kept where only its newline is missing', async () => {
  const { bytes, starts } = await jobOf(4);
  const last = starts[4] ?? 0;
  for (let end = last; end <= bytes.length; end++) {
    const disk = diskWith(bytes.subarray(0, end));
    const job = await openOn(disk);
    const whole = end >= bytes.length - 1;
    expect(job.lines(), `cut at ${end}`).toEqual(linesTo(whole ? 4 : 3));
    expect(
      job.notices.map((n) => n.kind),
      `cut at ${end}`,
    ).toEqual(end === last || whole ? [] : ['torn']);
    if (!whole && end > last) expect(job.notices[0]?.where).toBe(`${jobPath}, line 5, byte ${last}`);
    const next = lineNo(job.lines().length + 1);
    expect(await job.append(next), `cut at ${end}`).toEqual({ saved: true });
    expect((await openOn(disk, { look: true })).lines(), `cut at ${end}`).toEqual(linesTo(whole ? 5 : 4));
  }
});

it('[D2] a whole last line followed by rubbish without a newline is kept', async () => {
  const { bytes } = await jobOf(3);
  for (const rubbish of ['\0\0\0\0\0', 'x', '{"n":4,"said":"bol']) {
    const disk = diskWith(Buffer.concat([bytes.subarray(0, -1), Buffer.from(rubbish)]));
    const job = await openOn(disk);
    expect(job.lines()).toEqual(linesTo(3));
    expect(job.notices.map((n) => n.kind)).toEqual(['torn']);
    await job.append(lineNo(4));
    expect((await openOn(disk, { look: true })).lines()).toEqual(linesTo(4));
  }
});

it('[D4] every byte of a small log changed, in several ways: never another content, never a changed file', async () => {
  const { bytes, starts } = await jobOf(4);
  const last = starts[4] ?? 0;
  const seen = { refused: 0, doubtful: 0, kept: 0 };
  for (let at = 0; at < bytes.length; at++) {
    const was = bytes[at] ?? 0;
    for (const now of new Set([was ^ 1, was ^ 0x20, was ^ 0x80, 0, 10, 34])) {
      if (now === was) continue;
      const changed = Buffer.from(bytes);
      changed[at] = now;
      const disk = diskWith(changed);
      const found = await opened(disk);
      const where = `byte ${at} from ${was} to ${now}`;
      if (isFault(found)) {
        seen.refused++;
        expect(disk.names(), where).toEqual([jobPath]);
        expect(['damaged', 'foreign', 'newer'], where).toContain(found.kind);
      } else if (isDoubtful(found)) {
        seen.doubtful++;
        expect(at, where).toBeGreaterThanOrEqual(starts[3] ?? 0);
        expect(found.mode, where).toBe('look');
        expect(found.lines(), where).toEqual(linesTo(3));
      } else {
        seen.kept++;
        // Only the last newline: the line before it proves itself.
        expect(at, where).toBe(bytes.length - 1);
        expect(found.lines(), where).toEqual(linesTo(4));
      }
      if (at < last - 1) expect(isFault(found) || isDoubtful(found), where).toBe(true);
      if (isFault(found) || isDoubtful(found)) expect(disk.bytesAt(jobPath)?.equals(changed), where).toBe(true);
    }
  }
  expect(Math.min(seen.refused, seen.doubtful, seen.kept)).toBeGreaterThan(2);
}, 20_000);

it('[D4] a line changed in the middle is refused with line and byte', async () => {
  const { bytes, starts } = await jobOf(5);
  const at = (starts[2] ?? 0) + 9;
  bytes[at] = (bytes[at] ?? 0) ^ 1;
  const found = await refused(bytes);
  expect(found).toMatchObject({ kind: 'damaged', where: `${jobPath}, line 3, byte ${starts[2]}` });
});

it('[D4] a block of zeros, lines in another order, a line left out, a line twice: refused', async () => {
  const { bytes, starts } = await jobOf(6);
  const line = (i: number) => bytes.subarray(starts[i], starts[i + 1]);
  const all = [0, 1, 2, 3, 4, 5, 6];
  const zeroed = Buffer.from(bytes).fill(0, 100, 228);
  const made = (order: number[]) => Buffer.concat(order.map(line));
  expect(made(all).equals(bytes)).toBe(true);
  for (const changed of [zeroed, made([0, 1, 3, 2, 4, 5, 6]), made([0, 1, 2, 4, 5, 6]), made([0, 1, 2, 2, 3, 4, 5, 6])])
    expect((await refused(changed)).kind).toBe('damaged');
});

it('[D4] a line that holds in another job does not hold in this one', async () => {
  const line = (said: string, before: Reached) => linked({ n: before.line, said }, before);
  const header = headerLine('blue');
  const first = line('bolt 1 off', header.reached);
  const other = line('bolt 1 back', header.reached);
  const second = line('bolt 2 off', first.reached);
  const third = line('bolt 3 off', second.reached);
  const whole = [header, first, second, third].map(({ bytes }) => bytes);
  expect((await openOn(diskWith(Buffer.concat(whole)))).lines().length).toBe(3);
  const exchanged = [header, other, second, third].map(({ bytes }) => bytes);
  expect(await refused(Buffer.concat(exchanged))).toMatchObject({
    kind: 'damaged',
    where: expect.stringContaining('line 3'),
  });
});

it('[D4] no control character passes through a fault, whatever it tells of', () => {
  const told = fault('damaged', 'x\u001b[2Jy', '/jobs/\u009b31m\nz', 'a\u0007b\u202e');
  expect([told.what, told.where, told.next]).toEqual(['xy', '/jobs/ z', 'ab']);
  expect(told.message).toBe('/jobs/ z: xy; ab');
});

it('[D2] only the last line bad: opened to look, gone on without after one confirmation, a copy kept of what was', async () => {
  const { bytes, starts } = await jobOf(4);
  bytes[bytes.length - 50] = 0;
  const disk = diskWith(bytes);
  const look = await openOn(disk);
  expect(look.mode).toBe('look');
  expect(look.whyLook).toMatchObject({ kind: 'last-line-bad', where: `${jobPath}, line 5, byte ${starts[4]}` });
  expect(look.lines()).toEqual(linesTo(3));
  expect(await look.append(lineNo(4))).toMatchObject({ saved: false, taken: false });
  await look.close();
  expect(disk.bytesAt(jobPath)?.equals(bytes)).toBe(true);

  expect((await openOn(disk, { goOnFrom: (starts[4] ?? 0) + 1 })).mode).toBe('look');
  const job = await openOn(disk, { goOnFrom: look.doubt?.byte });
  expect(job.mode).toBe('write');
  expect(await job.append(lineNo(4))).toEqual({ saved: true });
  await job.close();
  expect((await openOn(disk)).lines()).toEqual(linesTo(4));
  const copy = disk.names().find((name) => name.includes('before-cut')) ?? '';
  expect(disk.bytesAt(copy)?.equals(bytes)).toBe(true);
});

it('[D2] the confirmation cannot be given without a copy of what is cut off', async () => {
  const { bytes, starts } = await jobOf(4);
  bytes[bytes.length - 50] = 0;
  const disk = diskWith(bytes);
  disk.failing = (op) => (op.path.includes('copies') ? { code: 'ENOSPC' } : undefined);
  await expect(openOn(disk, { goOnFrom: starts[4] })).rejects.toMatchObject({ kind: 'disk-full' });
  expect(disk.bytesAt(jobPath)?.equals(bytes)).toBe(true);
});

it('[D2] two calls run together by one lost newline: the first of them stays', async () => {
  const { bytes, starts } = await jobOf(4);
  bytes[(starts[4] ?? 0) - 1] = 32;
  const disk = diskWith(bytes);
  const look = await openOn(disk);
  expect(look.lines()).toEqual(linesTo(3));
  const job = await openOn(disk, { goOnFrom: look.doubt?.byte });
  expect(await job.append(lineNo(4))).toEqual({ saved: true });
  expect((await openOn(disk, { look: true })).lines()).toEqual(linesTo(4));
});

it('[D4] empty, missing, a folder, no file at all, a foreign file: each refused by its name', async () => {
  expect((await refused(Buffer.alloc(0))).kind).toBe('empty');
  for (const text of ['hello\n', '{"name":"x"}\n', '\0\0\0\0', '[]', '{"countback":"plan","format":0}\n'])
    expect((await refused(Buffer.from(text))).kind).toBe('foreign');

  const disk = diskDouble(['/', '/jobs', jobPath]);
  expect(await opened(disk)).toMatchObject({ kind: 'foreign', what: expect.stringContaining('folder') });
  expect(await opened(diskDouble())).toMatchObject({ kind: 'missing' });
  const pipe = diskDouble();
  pipe.makeOther(jobPath);
  expect(await opened(pipe)).toMatchObject({ kind: 'foreign' });
});

it('[D4] [V1] a file from the future is refused as newer: format, header, field', async () => {
  const header = (more: object) => linked({ countback: 'job', format: 0, job: 'blue', ...more }, beforeFirst);
  expect((await refused(header({ format: 1 }).bytes)).kind).toBe('newer');
  expect((await refused(Buffer.from('{"countback":"job","format":3,"links":"otherwise"}\n'))).kind).toBe('newer');
  expect((await refused(header({ paint: 'blue' }).bytes)).kind).toBe('newer');

  const first = linked(lineNo(1), headerLine('blue').reached);
  const second = linked({ ...lineNo(2), hologram: true }, first.reached);
  const file = Buffer.concat([headerLine('blue').bytes, first.bytes, second.bytes]);
  expect(await refused(file)).toMatchObject({ kind: 'newer', where: `${jobPath}, line 3` });
});

it('[D4] [V1] a call with an unknown entry, an unknown field or an unknown field in an entry is newer, not damaged', async () => {
  const stamp = { n: 1, atMs: 0, zoneMin: 0, run: 1, awakeMs: 0 };
  const call = {
    ...stamp,
    call: 'open-job',
    by: 'key',
    facing: {},
    entries: [{ kind: 'job-opened', vehicle: { label: 'blue' } }],
  };
  const { bytes, reached } = headerLine('blue');
  const opening = (value: object) => {
    const disk = diskWith(Buffer.concat([bytes, linked(value, reached).bytes]));
    return openJob({ path: jobPath, disk, readLine: readJobLine, processes: processesDouble(1), now: noon });
  };
  expect((await opening(call)).lines()).toEqual([call]);
  const [entry] = call.entries;
  for (const newer of [
    { ...call, entries: [entry, { kind: 'hologram-shown' }] },
    { ...call, mood: 'good' },
    { ...call, entries: [{ ...entry, mood: 'good' }] },
  ])
    await expect(opening(newer)).rejects.toMatchObject({ kind: 'newer', where: `${jobPath}, line 2` });
  await expect(opening({ ...call, atMs: 'noon' })).rejects.toMatchObject({ kind: 'damaged' });
});

it('[D4] a well-chained line that is no call, or has another number, is refused', async () => {
  const { bytes, reached } = headerLine('blue');
  for (const value of [{ n: 'one', said: 'x' }, { n: 1 }, lineNo(2)])
    expect((await refused(Buffer.concat([bytes, linked(value, reached).bytes]))).kind).toBe('damaged');
});

it('[D4] control characters in a file never reach who reads it, neither in lines nor in faults', async () => {
  const { bytes, reached } = headerLine('blue\u001b[2J estate\u202e');
  const said = 'bolt\u001b]0;title\u0007 7\u009b31m\r\noff';
  const disk = diskWith(Buffer.concat([bytes, linked({ n: 1, said, more: ['\u001b[31mred'] }, reached).bytes]));
  const job = await openOn(disk);
  expect(job.job).toBe('blue estate');
  expect(job.lines()).toEqual([{ n: 1, said: 'bolt 7 off', more: ['red'] }]);
  await job.append({ n: 2, said: 'typed \u001b[5n too' });
  expect(job.lines()[1]).toEqual({ n: 2, said: 'typed  too' });
  expect((await openOn(disk, { look: true })).lines()).toEqual(job.lines());

  const unknown = await refused(
    Buffer.concat([bytes, linked({ n: 1, said: 'x', '\u001b[2Jfield': 1 }, reached).bytes]),
  );
  expect(unknown.kind).toBe('newer');
  expect(`${unknown.message}${unknown.what}${unknown.where}${unknown.next}`).not.toMatch(/\p{Cc}/u);
});

it('the digest stands for every byte before it, and is the same on reading', async () => {
  const { disk } = await jobOf(3);
  const job = await openOn(disk);
  const before = job.digest();
  expect(before).toMatch(/^[0-9a-f]{64}$/);
  await job.append(lineNo(4));
  expect(job.digest()).not.toBe(before);
  await job.close();
  const look = await openOn(disk, { look: true });
  expect(look.digest()).toBe(job.digest());
  expect((disk.bytesAt(jobPath) ?? Buffer.alloc(0)).toString().trimEnd().slice(-18, -2)).toBe(
    job.digest().slice(0, 16),
  );
});
