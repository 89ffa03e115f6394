// Where a job file is refused: the way back that is told is one that is there, and a torn end that was cut off stays in
// a copy.
import { describe, expect, it } from 'vitest';
import { createJob } from '../../src/store/open-job.ts';
import { commandBack } from '../../src/store/way-back.ts';
import { linesTo, newJobOn, openOn } from './practice.ts';

const path = '/jobs/blue.countback.jsonl';
const copyOf = (day: string) => `/jobs/copies/blue.${day}.countback.jsonl`;
const of = (day: number) => ({ now: () => new Date(2026, 2, day, 9) });

async function twoDays() {
  const disk = await newJobOn();
  for (const day of [4, 5]) {
    const job = await openOn(disk, of(day));
    const n = job.lines().length + 1;
    await job.append(linesTo(n)[n - 1] ?? { n, said: '' });
    await job.close();
  }
  return disk;
}

it('[D4] a damaged file is refused with its newest good copy and the command that brings it back', async () => {
  const disk = await twoDays();
  disk.put(path, Buffer.from('a picture'));
  const told = await openOn(disk).catch((thrown: Error) => thrown.message);
  expect(told).toContain('this is no job file, or its beginning is damaged; the file was left as it is');
  const name = 'blue.countback.jsonl';
  expect(told).toContain(
    `2 calls, and comes back with: cd /jobs && mv ${name} ${name}.broken && cp copies/blue.2026-03-05.countback.jsonl ${name}`,
  );
  // A copy that is broken too, or holds no call, is no way back.
  disk.put(copyOf('2026-03-05'), Buffer.from('a picture'));
  await expect(openOn(disk)).rejects.toMatchObject({ next: expect.stringContaining(`has 1 call, and comes back`) });
  disk.put(copyOf('2026-03-04'), (disk.bytesAt(copyOf('2026-03-04')) as Buffer).subarray(0, 75));
  await expect(openOn(disk)).rejects.toMatchObject({
    next: expect.stringContaining('no dated copy of it holds a call'),
  });
});

it('[D2] a torn end that is cut off the file stays in a copy, which is told, and the copy of the day goes on', async () => {
  const disk = await twoDays();
  const torn = Buffer.concat([disk.bytesAt(path) as Buffer, Buffer.from('{"n":3,"said":')]);
  disk.put(path, torn);
  const job = await openOn(disk, of(5));
  const aside = '/jobs/copies/blue.2026-03-05-090000-before-cut.countback.jsonl';
  expect(job.notices.map((one) => one.next)).toEqual([expect.stringContaining(`lies in ${aside}`)]);
  expect(disk.bytesAt(aside)).toEqual(torn);
  await job.append(linesTo(3)[2] ?? { n: 3, said: '' });
  await job.close();
  expect(disk.bytesAt(copyOf('2026-03-05'))).toEqual(disk.bytesAt(path));
});

it('[D4] of an end cut off what was whole a copy that holds more is told, with the command that goes on from it', async () => {
  const disk = await twoDays();
  const whole = disk.bytesAt(path) as Buffer;
  disk.put(path, whole.subarray(0, whole.length - 9));
  const way =
    'cd /jobs && mv blue.countback.jsonl blue.countback.jsonl.cut && cp copies/blue.2026-03-05.countback.jsonl';
  for (const how of [{ look: true }, of(6)]) {
    const job = await openOn(disk, how);
    expect(job.notices.map((one) => one.next)).toEqual([
      expect.stringContaining(`a copy holds 1 call more: leave, and go on from it: ${way}`),
    ]);
    await job.close();
  }
  // By whole lines nothing of the file itself shows it.
  disk.put(path, whole.subarray(0, whole.lastIndexOf(0x0a, whole.length - 2) + 1));
  const older = await openOn(disk, of(6));
  expect(older.notices.map((one) => one.message)).toEqual([
    expect.stringMatching(
      /a copy holds 1 call more: the end of the file was cut off, or it is an older one; leave, and go/,
    ),
  ]);
  await older.append(linesTo(2)[1] ?? { n: 2, said: '' });
  await older.close();
  expect((await openOn(disk, of(6))).notices).toEqual([]);
  // So of a last line that is not as it was written.
  const changed = Buffer.from(whole);
  changed[whole.length - 12] = (changed[whole.length - 12] ?? 0) ^ 1;
  disk.put(path, changed);
  const doubtful = await openOn(disk, of(6));
  expect(doubtful.doubt?.fault.what).toContain('the last line is not as it was written');
  expect(doubtful.notices.map((one) => one.message)).toEqual([expect.stringContaining('a copy holds 1 call more: ')]);
  // One that says otherwise holds nothing of it.
  const other = await newJobOn();
  for (const day of ['2026-03-05', '2026-03-06']) disk.put(copyOf(day), other.bytesAt(path) as Buffer);
  disk.put(path, whole.subarray(0, whole.length - 9));
  expect((await openOn(disk, of(7))).notices.map((one) => one.next)).toEqual([expect.not.stringContaining('more')]);
});

it('a command quotes what a shell would read otherwise', () => {
  const copy = { path: "/my jobs/copies/o'x", calls: 1, changedMs: 0 };
  expect(commandBack('/my jobs/x', copy, 'linux', 'x.broken')).toBe(
    "cd '/my jobs' && mv x x.broken && cp 'copies/o'\\''x' x",
  );
  expect(commandBack('/j/x', copy, 'win32', 'x.broken')).toMatch(
    /^cd \/d "\/j" & move "x" "x.broken" & copy "copies.o'x" "x"$/,
  );
});

describe('a copy', () => {
  it('[D2] is only looked at, whatever opens it, and says how to go on from it', async () => {
    const disk = await twoDays();
    const copy = copyOf('2026-03-04');
    const before = disk.names();
    const asked = await openOn(disk, { path: copy, withoutLineAt: 5 });
    expect(asked.mode).toBe('look');
    expect(await asked.append(linesTo(2)[1] ?? { n: 2, said: '' })).toMatchObject({ saved: false, taken: false });
    await asked.close();
    expect(disk.names()).toEqual(before);
    const name = 'blue.countback.jsonl';
    const back = `cp copies/blue.2026-03-04.countback.jsonl ${name}`;
    expect(asked.whyLook?.next).toBe(`to go on from it: cd /jobs && mv ${name} ${name}.aside && ${back}`);
    disk.remove(path);
    expect((await openOn(disk, { path: copy })).whyLook?.next).toBe(`to go on from it: cd /jobs && ${back}`);
    await expect(createJob('/jobs/copies/new.countback.jsonl', 'new', disk)).rejects.toMatchObject({
      kind: 'bad-name',
    });
  });
  it('[D2 D4] with an end that does not hold tells it, and asks nothing', async () => {
    const disk = await twoDays();
    const whole = disk.bytesAt(path) as Buffer;
    const cut = '/jobs/copies/blue.2026-03-05-090000-before-cut.countback.jsonl';
    disk.put(cut, whole.subarray(0, -4));
    expect((await openOn(disk, { path: cut })).notices.map(({ kind }) => kind)).toEqual(['torn']);
    const changed = Buffer.from(whole);
    changed[whole.length - 10] = (changed[whole.length - 10] ?? 0) ^ 1;
    disk.put(cut, changed);
    const doubted = await openOn(disk, { path: cut });
    expect([doubted.doubt, doubted.notices.map(({ kind }) => kind)]).toEqual([undefined, ['last-line-bad']]);
  });
});
