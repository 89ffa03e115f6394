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

it('[D2 D4] a damaged file is put beside what was put there before, and the calls behind its copy are named', async () => {
  const disk = await twoDays();
  const name = 'blue.countback.jsonl';
  const job = await openOn(disk, of(6));
  for (const line of linesTo(4).slice(2)) await job.append(line);
  // Ended from outside: the copy of the day is of the opening.
  const bytes = disk.bytesAt(path) as Buffer;
  bytes[bytes.indexOf(0x0a) + 40] = 0;
  disk.put(path, bytes);
  disk.put(`/jobs/${name}.broken`, Buffer.from('of another day'));
  disk.put(`/jobs/${name}.broken-2`, Buffer.from('and another'));
  await expect(openOn(disk, of(6))).rejects.toMatchObject({
    next: expect.stringMatching(
      /newest good copy has 2 calls, .* mv blue\.countback\.jsonl blue\.countback\.jsonl\.broken-3 && cp .*; 2 calls that came after it stay in blue\.countback\.jsonl\.broken-3/,
    ),
  });
  disk.put(`/jobs/${name}.aside`, Buffer.from('put away'));
  expect((await openOn(disk, { path: copyOf('2026-03-04') })).whyLook?.next).toContain(
    `mv ${name} ${name}.aside-2 && `,
  );
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

describe('a file of which a copy holds more', () => {
  const newest = copyOf('2026-03-05');
  const holdsMore = /a copy holds 1 call more.* open the job again: it asks .*\(.*2026-03-05\.countback\.jsonl\)/;
  const ends = {
    'within its last line': (whole: Buffer) => whole.subarray(0, whole.length - 9),
    'by whole lines': (whole: Buffer) => whole.subarray(0, whole.lastIndexOf(0x0a, whole.length - 2) + 1),
    'with a byte changed': (whole: Buffer) => {
      const changed = Buffer.from(whole);
      changed[whole.length - 12] = (changed[whole.length - 12] ?? 0) ^ 1;
      return changed;
    },
  };
  describe.each(Object.entries(ends))('%s', (_, cut) => {
    async function cutShort() {
      const disk = await twoDays();
      const whole = disk.bytesAt(path) as Buffer;
      const file = Buffer.from(cut(whole));
      disk.put(path, file);
      return { disk, whole, file };
    }
    const doubtAt = async (disk: Awaited<ReturnType<typeof twoDays>>) => (await openOn(disk, of(5))).doubt?.byte ?? 0;
    const keptOf = (disk: Awaited<ReturnType<typeof twoDays>>) =>
      disk.names().flatMap((name) => (name.includes('before-cut') ? [disk.bytesAt(name) as Buffer] : []));

    it('[D4] is asked about before anything is written to it', async () => {
      const { disk, file } = await cutShort();
      const before = disk.names();
      for (const how of [{ look: true }, of(6)]) {
        const job = await openOn(disk, how);
        expect([job.mode, job.notices]).toEqual(['look', []]);
        expect(job.doubt).toMatchObject({ fault: { message: expect.stringMatching(holdsMore) }, copy: newest });
        expect(await job.append(linesTo(2)[1] ?? { n: 2, said: '' })).toMatchObject({ saved: false });
        await job.close();
      }
      expect(disk.names()).toEqual(before);
      expect(disk.bytesAt(path)).toEqual(file);
    });
    it('[D2] is gone on with from the copy, and stays as it was in another', async () => {
      const { disk, whole, file } = await cutShort();
      const job = await openOn(disk, { ...of(5), fromCopy: newest, goOnFrom: await doubtAt(disk) });
      expect([job.mode, job.lines().length, job.doubt]).toEqual(['write', 2, undefined]);
      expect(job.notices.map(({ message }) => message)).toEqual([
        expect.stringMatching(/the copy stands in the place of the file now; the file as it was lies in .*-before-cut/),
      ]);
      expect(disk.bytesAt(path)).toEqual(whole);
      expect(keptOf(disk)).toEqual([file]);
      await job.append(linesTo(3)[2] ?? { n: 3, said: '' });
      await job.close();
      expect(disk.bytesAt(newest)).toEqual(disk.bytesAt(path));
    });
    it('[D2] is gone on with as it is, and what the copy held stays, with a copy of the day beside it', async () => {
      const { disk, whole } = await cutShort();
      const { doubt } = await openOn(disk, of(5));
      const job = await openOn(disk, { ...of(5), ...(doubt && { goOnFrom: doubt.byte }) });
      expect([job.mode, job.lines().length, job.doubt]).toEqual(['write', 1, undefined]);
      expect(job.notices[0]?.message).toMatch(
        /it goes on with this file; what the copy of it held lies in .*-before-cut/,
      );
      await job.close();
      // It was answered once.
      const again = await openOn(disk, of(6));
      expect([again.mode, again.doubt, again.notices]).toEqual(['write', undefined, []]);
      expect(keptOf(disk)).toContainEqual(whole);
      await again.append({ n: 2, said: 'another' });
      await again.close();
      expect(keptOf(disk)).toContainEqual(whole);
      expect(disk.bytesAt(copyOf('2026-03-06'))).toEqual(disk.bytesAt(path));
      // It parted from the copy: nothing is asked any more.
      expect(await openOn(disk, of(7))).toMatchObject({ mode: 'write', notices: [] });
    });
    it('[D2] is asked about anew where another program went on with it meanwhile', async () => {
      const { disk } = await cutShort();
      const { doubt } = await openOn(disk, of(6));
      const other = await openOn(disk, { ...of(6), ...(doubt && { goOnFrom: doubt.byte }) });
      await other.append({ n: 2, said: 'another' });
      await other.close();
      const late = await openOn(disk, { ...of(6), fromCopy: newest, goOnFrom: doubt?.byte ?? 0 });
      expect(late.lines()).toMatchObject([{ n: 1 }, { n: 2, said: 'another' }]);
    });
    it('[D2] keeps one of the two whole and in its place wherever the power goes', async () => {
      const { disk, whole, file } = await cutShort();
      const byte = await doubtAt(disk);
      let cuts = 0;
      const fallen: ReturnType<typeof disk.cut>[] = [];
      disk.watching = () => {
        fallen.push(disk.cut(++cuts));
      };
      await openOn(disk, { ...of(5), fromCopy: newest, goOnFrom: byte });
      expect(fallen.length).toBeGreaterThan(20);
      for (const after of fallen) {
        const there = after.bytesAt(path) as Buffer;
        expect(there.equals(whole) || there.equals(file)).toBe(true);
        expect(after.bytesAt(newest)).toEqual(whole);
        if (there.equals(whole)) expect(keptOf(after)).toEqual([file]);
      }
    });
  });
  it.each(['the last newline', 'nothing'])('[D2] is none where %s of the file is gone', async (gone) => {
    const disk = await twoDays();
    const whole = disk.bytesAt(path) as Buffer;
    disk.put(path, gone === 'nothing' ? whole : whole.subarray(0, -1));
    const job = await openOn(disk, of(5));
    expect([job.mode, job.lines().length, job.notices]).toEqual(['write', 2, []]);
    await job.close();
    expect(disk.bytesAt(path)).toEqual(whole);
    expect(disk.names().filter((name) => name.includes('before-cut'))).toEqual([]);
    expect(disk.bytesAt(newest)).toEqual(whole);
  });
  it('[D4] is none where the copy holds nothing that is not in it', async () => {
    const disk = await twoDays();
    const whole = disk.bytesAt(path) as Buffer;
    const other = await newJobOn();
    for (const day of ['2026-03-05', '2026-03-06']) disk.put(copyOf(day), other.bytesAt(path) as Buffer);
    disk.put(path, whole.subarray(0, whole.length - 9));
    const job = await openOn(disk, of(7));
    expect([job.doubt, job.notices.map((one) => one.what)]).toEqual([undefined, [expect.not.stringContaining('more')]]);
  });
});

describe('a file that another laptop went on with, laid over this one', () => {
  /** Two days here, and from the first of them on another second day, there. */
  async function parted() {
    const disk = await twoDays();
    const here = disk.bytesAt(path) as Buffer;
    const there = await newJobOn();
    there.put(path, disk.bytesAt(copyOf('2026-03-04')) as Buffer);
    const job = await openOn(there, of(5));
    await job.append({ n: 2, said: 'done there' });
    await job.append({ n: 3, said: 'and more' });
    await job.close();
    const laid = there.bytesAt(path) as Buffer;
    disk.put(path, laid);
    return { disk, here, laid };
  }
  const copy = copyOf('2026-03-05');
  it('[D2 D4] is asked about before anything is written to it, though it holds more calls than the copy', async () => {
    const { disk, laid } = await parted();
    for (const how of [{ look: true }, of(6)]) {
      const { mode, doubt } = await openOn(disk, how);
      expect(mode).toBe('look');
      expect(doubt).toMatchObject({
        copy,
        fault: {
          kind: 'copy-differs',
          what: expect.stringMatching(
            /^a copy says otherwise from call 2 on: it holds 1 call that this file does not, and this file 2 that it does not; /,
          ),
        },
      });
    }
    expect(disk.bytesAt(path)).toEqual(laid);
  });
  it.each(['copy', 'file'])('[D2] is answered once for the %s, and the other stays in a copy', async (choice) => {
    const { disk, here, laid } = await parted();
    const byte = (await openOn(disk, of(6))).doubt?.byte ?? 0;
    const how = choice === 'copy' ? { fromCopy: copy, goOnFrom: byte } : { goOnFrom: byte };
    const job = await openOn(disk, { ...of(6), ...how });
    expect([job.mode, job.doubt, job.lines().length]).toEqual(['write', undefined, choice === 'copy' ? 2 : 3]);
    await job.close();
    const [taken, left] = choice === 'copy' ? [here, laid] : [laid, here];
    expect(disk.bytesAt(path)).toEqual(taken);
    const kept = disk.names().filter((name) => name.includes('before-cut'));
    expect(kept.map((name) => disk.bytesAt(name))).toEqual([left]);
    expect(await openOn(disk, of(7))).toMatchObject({ mode: 'write', notices: [] });
  });
  it.each(['copy', 'file'])(
    '[D2] of another job altogether is said to be one, and the %s answered is told how both stay',
    async (choice) => {
      const { disk, here } = await parted();
      const other = await newJobOn();
      const job = await openOn(other, of(5));
      await job.append({ n: 1, said: 'another car' });
      await job.close();
      disk.put(path, other.bytesAt(path) as Buffer);
      const { doubt } = await openOn(disk, of(6));
      expect(doubt?.fault.what).toBe(
        'a copy of this name is of another job from its first call on, and holds 2 calls; another file was put in its place',
      );
      const byte = doubt?.byte ?? 0;
      const again = await openOn(disk, { ...of(6), goOnFrom: byte, ...(choice === 'copy' && { fromCopy: copy }) });
      const told = again.notices.map(({ next }) => next).join();
      expect(told).toMatch(
        /; beside this one it stands after: cd \/jobs && cp copies\/blue\..*-before-cut.*jsonl blue-2\.countback\.jsonl/,
      );
      const kept = disk.names().find((name) => name.includes('before-cut')) ?? '';
      expect(disk.bytesAt(kept)).toEqual(choice === 'copy' ? other.bytesAt(path) : here);
    },
  );
  it('[D3] of a copy that cannot be read nothing is asked', async () => {
    const { disk } = await parted();
    disk.put(copy, Buffer.from('a picture'));
    expect((await openOn(disk, of(6))).mode).toBe('write');
  });
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
    const asked = await openOn(disk, { path: copy, goOnFrom: 5 });
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
