// Job files that are not as they should be, seen from a shell: refused with what, where and what to do, never touched,
// and nothing in them reaches the terminal.
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { readLine } from '../../src/job/line.ts';
import { beforeFirst, linked } from '../../src/store/chain.ts';
import { openJob } from '../../src/store/open-job.ts';
import { type Bench, benchWithJob, newBench, steersNothing } from './run.ts';

let whole: Buffer;
let bench: Bench;
beforeAll(async () => {
  const begun = await benchWithJob();
  whole = readFileSync(begun.fileOf('hatchback'));
  begun.remove();
});
beforeEach(() => {
  bench = newBench();
});
afterEach(() => bench.remove());

const put = (bytes: Uint8Array | string, job = 'van'): string => {
  const path = bench.fileOf(job);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, bytes);
  return path;
};
/** A file whose links hold, whatever it says. */
function forged(...values: object[]): Buffer {
  let reached = beforeFirst;
  return Buffer.concat(
    values.map((value) => {
      const next = linked(value, reached);
      reached = next.reached;
      return next.bytes;
    }),
  );
}
const steering = '\u001b[31m\u001b]0;mine\u0007\u009b2J\u{202e}';
const header = { countback: 'job', format: 0, job: 'van' };
const stamp = { atMs: 0, zoneMin: 0, run: 1, awakeMs: 0 };
const call = { n: 1, ...stamp, call: 'open', by: 'line', facing: { tray: '1' } };
const opened = { ...call, entries: [{ kind: 'job-opened', vehicle: { label: `van${steering}` } }] };
const lineEnds = () => [...whole.toString('latin1').matchAll(/\n/g)].map((m) => m.index);
const withByte = (at: number): Buffer => {
  const bytes = Buffer.from(whole);
  bytes[at] = (bytes[at] ?? 0) ^ 1;
  return bytes;
};

const files: [string, () => Uint8Array | string, RegExp][] = [
  ['damaged in the middle', () => withByte((lineEnds()[0] ?? 0) + 20), /, line 2, byte \d+: line 2 is not as it was/],
  ['with a damaged header', () => withByte(30), /, line 1, byte 0: the header is not as it was written; the file was/],
  [
    'of a newer format',
    () => forged({ ...header, format: 7 }),
    /, line 1: the file's format is 7, .*; open it with a n/,
  ],
  [
    'with an entry of a newer program',
    () => forged(header, { ...call, entries: [{ kind: `rocket${steering}` }] }),
    /, line 2: this line says what this program does not know .*; open it with a newer countback/,
  ],
  [
    'with a field of a newer program',
    () => forged(header, { ...opened, [`rocket${steering}`]: 1 }),
    /, line 2: this line says what this program does not know/,
  ],
  ['of another program', () => `# ${steering}\nroot:x:0:0\n`, /: this is no job file, or its beginning is damaged; /],
  ['full of NUL bytes', () => Buffer.alloc(5000), /: this is no job file, or its beginning is damaged; /],
  [
    'that is empty',
    () => '',
    /: the job file is empty; the file was left as it is; no dated copy of it holds a call: bring it back from your own/,
  ],
];

describe('a job file', () => {
  it.each(files)('[D4] %s is refused, to look and to write, and left as it is', async (_, bytes, told) => {
    const path = put(bytes());
    const before = readFileSync(path);
    for (const command of ['standing', 'take']) {
      const { exit, out, complaint } = await bench.run([command, 'van'], { input: 'off 1\n' });
      expect({ exit, out }).toEqual({ exit: 2, out: '' });
      expect(complaint).toMatch(told);
      expect(complaint.startsWith(`countback: ${path}`)).toBe(true);
      expect(complaint.split('\n')).toHaveLength(2);
      expect(complaint).toMatch(steersNothing);
    }
    expect(readFileSync(path).equals(before)).toBe(true);
    expect(readdirSync(dirname(path))).toEqual(['van.countback.jsonl']);
  });

  it('that holds, with steering texts in it, steers nothing', async () => {
    put(
      forged({ ...header, job: `van${steering}` }, opened, {
        ...call,
        n: 2,
        call: `off${steering}`,
        facing: { area: 'cover' },
        entries: [
          { kind: 'area-declared', area: 'cover' },
          { kind: 'fastener-found', hole: 'cover/1', fastener: 'f2.1', spec: { head: `hex${steering} 10` } },
          { kind: 'fastener-removed', hole: 'cover/1', fastener: 'f2.1', to: 'tray:1' },
        ],
      }),
    );
    for (const args of [['standing'], ['standing', '--json'], ['sheet'], ['sheet', '--workshop'], ['take']]) {
      const { exit, out, complaint } = await bench.run([...args, 'van'], { input: 'off 2\n' });
      expect(exit).toBe(args[0] === 'standing' ? 1 : 0);
      expect(out).not.toBe('');
      expect(out).toMatch(steersNothing);
      expect(complaint).toBe('');
    }
  });

  it('[D2] whose last line was half written is read without it, and gone on with', async () => {
    const path = put(whole.subarray(0, whole.length - 40));
    for (const command of ['standing', 'sheet', 'whose']) {
      expect((await bench.run([command, 'van'])).complaint).toMatch(
        /^countback: .*, line 3, byte \d+: the last line was half/,
      );
    }
    const { exit, out, complaint } = await bench.run(['take', 'van'], { input: 'area "cam cover"\noff 1\n' });
    // What was left out stays told, although nothing of it is in the file any more.
    const verified = await bench.run(['verify', 'van']);
    expect(verified.out).toMatch(/^UNALTERED: [\s\S]*left out once; the file as it was: copies\/van\..*-before-cut/);
    expect({ exit, out }).toEqual({ exit: 0, out: '       at cam cover\n    2  cam cover 1 off, to tray 1\n' });
    expect(complaint).toMatch(
      /, line 3, byte \d+: the last line was half written and is left out: \d+ bytes, of a call that was not saved or was cut off later; look at the last call and go on from there; the file as it was lies in .*-before-cut/,
    );
    expect(complaint.split('\n')).toHaveLength(2);
    expect((await bench.run(['take', 'van'])).complaint).toBe('');
    expect(readFileSync(path, 'utf8').split('\n')).toHaveLength(4);
  });

  it('[X3 D2] whose last line was half written says so on every form of its sheet', async () => {
    put(whole.subarray(0, whole.length - 40));
    for (const form of ['--text', '--html', '--csv', '--workshop'])
      expect((await bench.run(['sheet', 'van', form])).out).toMatch(/NOT SURE: the last line was half\s+written/);
    put(whole);
    expect((await bench.run(['sheet', 'van'])).out).not.toContain('NOT SURE');
  });

  it('[D4] whose last line does not hold can be looked at; a list of calls is not gone on with', async () => {
    const path = put(withByte(whole.length - 30));
    const before = readFileSync(path);
    const looked = await bench.run(['standing', 'van']);
    expect(looked.exit).toBe(1);
    expect(looked.complaint).toMatch(/^countback: .*, line 3, byte \d+: the last line is not as it was written; .*\n$/);
    const { exit, out, complaint } = await bench.run(['take', 'van'], { input: 'off 2\n' });
    expect({ exit, out }).toEqual({ exit: 2, out: '' });
    expect(complaint).toMatch(/, line 3, byte \d+: the last line is not as it was written; .*"countback open" asks/);
    expect(readFileSync(path).equals(before)).toBe(true);
    expect(readdirSync(dirname(path))).toEqual(['van.countback.jsonl']);
  });

  it('[D2 D4] of which a copy holds more can be looked at; a list of calls is not gone on with', async () => {
    const path = put(whole);
    expect((await bench.run(['take', 'van'], { input: 'area "cam cover"\noff 2\n' })).exit).toBe(0);
    writeFileSync(path, whole);
    const { exit, out, complaint } = await bench.run(['take', 'van'], { input: 'off 2\n' });
    expect({ exit, out }).toEqual({ exit: 2, out: '' });
    expect(complaint).toMatch(
      /: a copy holds 1 call more: .*; open the job again: it asks whether .*\); nothing was taken\n$/,
    );
    expect(readFileSync(path).equals(whole)).toBe(true);
    expect((await bench.run(['standing', 'van'])).out).toMatch(/^NOT SURE: a copy holds 1 call more/);
    const way = 'the rest was cut off, or this is an older copy; opening it asks which to go on from';
    expect((await bench.run(['verify', 'van'])).out).toContain(way);
  });
  it('[X3 D2] that was gone on with without what its copy held is unaltered, and verify tells of it', async () => {
    const path = put(whole);
    expect((await bench.run(['take', 'van'], { input: 'area "cam cover"\noff 2\noff 3\n' })).exit).toBe(0);
    writeFileSync(path, whole);
    const { doubt } = await openJob({ path, readLine, look: true });
    await (await openJob({ path, readLine, goOnFrom: doubt?.byte ?? 0 })).close();
    const told =
      /^UNALTERED: 2 calls, .*\nIt was gone on without calls 3 to 4 of another file when it was opened: copies\/van\..*-before-cut/;
    expect(await bench.run(['verify', 'van'])).toMatchObject({ exit: 0, out: expect.stringMatching(told) });
    // The other way round nothing was left out.
    const other = put(whole, 'other');
    expect((await bench.run(['take', 'other'], { input: 'area "cam cover"\noff 2\n' })).exit).toBe(0);
    writeFileSync(other, whole);
    const asked = (await openJob({ path: other, readLine, look: true })).doubt;
    const { byte = 0, copy = '' } = asked ?? {};
    await (await openJob({ path: other, readLine, goOnFrom: byte, fromCopy: copy })).close();
    expect(await bench.run(['verify', 'other'])).toMatchObject({
      exit: 0,
      out: expect.stringMatching(
        /^UNALTERED: 3 calls, .*\nIt was gone on with from a copy that held more; the file as it was: /,
      ),
    });
    // Gone on with, it still is.
    expect((await bench.run(['take', 'van'], { input: 'area "cam cover"\noff 7\n' })).exit).toBe(0);
    expect(await bench.run(['verify', 'van'])).toMatchObject({
      exit: 0,
      out: expect.stringContaining('without calls 3 to 4'),
    });
  });
});

it('[D2] a file called otherwise is taken for the job named only where it has all that a copy of that name holds', async () => {
  expect((await bench.run(['take', 'van', '--new'], { input: 'area "cam cover"\noff 1\noff 2\n' })).exit).toBe(0);
  const whole = readFileSync(bench.fileOf('van'));
  renameSync(bench.fileOf('van'), bench.fileOf('blue'));
  expect((await bench.run(['standing', 'van'])).exit).toBe(1);
  // As where the program went on with it while it was renamed.
  writeFileSync(bench.fileOf('blue'), whole.subarray(0, whole.lastIndexOf(0x0a, whole.length - 2) + 1));
  for (const command of ['take', 'standing', 'verify', 'sheet']) {
    const { exit, complaint } = await bench.run([command, 'van'], { input: 'off 7\n' });
    expect([command, exit]).toEqual([command, 2]);
    expect(complaint).toMatch(/there is no job "van" any more; a copy of it has 2 calls, and comes back with: cd /);
  }
});

it('[D2] a name that a file had between two others leads to what it is called now, and to no second one', async () => {
  expect((await bench.run(['take', 'van', '--new'], { input: 'area "cam cover"\noff 1\n' })).exit).toBe(0);
  renameSync(bench.fileOf('van'), bench.fileOf('between'));
  expect((await bench.run(['take', 'between'], { input: 'off 2\n' })).exit).toBe(0);
  renameSync(bench.fileOf('between'), bench.fileOf('now'));
  const { exit, complaint } = await bench.run(['standing', 'between']);
  expect(exit).toBe(2);
  expect(complaint).toContain('all that a copy of it holds is in "now", which it was called since: name that one');
});

it('[D2] a new job where one of that name was taken away begins with nothing of it, and keeps its copies', async () => {
  const path = bench.fileOf('van');
  expect((await bench.run(['take', 'van', '--new'], { input: 'area "cam cover"\noff 2\n' })).exit).toBe(0);
  const before = readFileSync(path);
  rmSync(path);
  const { exit, complaint } = await bench.run(['take', 'van', '--new'], { input: 'area "cam cover"\noff 7\n' });
  expect(exit).toBe(0);
  expect(complaint).toMatch(
    /^countback: .*: another job of this name lay here before; what the copy of it held lies in .*-before-cut.*\n$/,
  );
  expect(bench.callsOf('van')).toHaveLength(1);
  const copies = readdirSync(join(dirname(path), 'copies')).map((name) =>
    readFileSync(join(dirname(path), 'copies', name)),
  );
  expect(copies).toContainEqual(before);
  expect(copies).toContainEqual(readFileSync(path));
});

describe('where a job is named', () => {
  it('a folder is no job, and neither is a path in what is no folder', async () => {
    const path = put(whole);
    for (const command of ['standing', 'sheet', 'take']) {
      const folder = await bench.run([command, dirname(path)]);
      expect(folder).toEqual({
        exit: 2,
        out: '',
        complaint: `countback: ${dirname(path)}: this is a folder, not a job file; name the job file inside it\n`,
      });
      const under = await bench.run([command, `${path}/van.jsonl`]);
      expect(under).toMatchObject({ exit: 2, out: '' });
      expect(under.complaint).toMatch(
        /^countback: .*: a part of this path is not a folder \(ENOTDIR\); check the path\n$/,
      );
    }
  });

  it('nothing, dots, strokes, steering or 61 letters are no name', async () => {
    for (const name of ['', ' ', '..', '///', '\u001b[31m', 'x'.repeat(61)]) {
      const { exit, out, complaint } = await bench.run(['take', name]);
      expect({ exit, out }).toEqual({ exit: 2, out: '' });
      expect(complaint).toMatch(/^countback: .+: .+; .+\n$/);
      expect(complaint).toMatch(steersNothing);
    }
  });

  it('a new job whose name could be a path makes no file, anywhere', async () => {
    // Deep enough that a path which was followed after all would still end in the bench's own folder.
    const cwd = join(bench.folder, 'one', 'two', 'three');
    mkdirSync(cwd, { recursive: true });
    for (const name of ['front/rear', '../van', 'a/../../van', 'front\\rear', './van']) {
      const { exit, out, complaint } = await bench.run(['take', name, '--new'], { input: 'job "van"\n', cwd });
      expect({ exit, out }).toEqual({ exit: 2, out: '' });
      expect(complaint).toMatch(
        /^countback: .*: this is neither a name for a new job nor the path of a job file; .*\n$/,
      );
      expect(readdirSync(bench.folder, { recursive: true })).toEqual(['one', 'one/two', 'one/two/three']);
    }
  });

  it('a path is taken as it is, for a new job too, where its folder is there', async () => {
    const path = join(bench.folder, 'van.countback.jsonl');
    expect(await bench.run(['take', path, '--new'], { input: 'job "van"\n' })).toMatchObject({ exit: 0 });
    expect(await bench.run(['standing', './van.countback.jsonl'])).toMatchObject({ exit: 1, complaint: '' });
    const nowhere = await bench.run(['take', 'no/van.countback.jsonl', '--new']);
    expect(nowhere).toMatchObject({ exit: 2, out: '' });
    expect(nowhere.complaint).toMatch(/\/no: there is no such file or folder \(ENOENT\); /);
    expect(readdirSync(bench.folder).sort()).toEqual(['copies', 'van.countback.jsonl']);
  });
});
