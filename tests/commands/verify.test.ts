// verify: what it says of a log that was changed anywhere, had a line taken out, moved, put in or cut off, and of one
// whose chain was computed anew.
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { parse } from '../../src/commands/answer.ts';
import { verify } from '../../src/commands/verify.ts';
import { beforeFirst, linked } from '../../src/store/chain.ts';
import { sealOf } from '../../src/store/seal.ts';
import { type Bench, benchWithJob, steersNothing } from './run.ts';

let bench: Bench;
let whole: Buffer;
let sheetFile: string;
beforeAll(async () => {
  bench = await benchWithJob();
  const { exit } = await bench.run(['take', 'hatchback'], { input: 'off 2\noff 3\noff 4\nnote found so\n' });
  expect(exit).toBe(0);
  whole = readFileSync(bench.fileOf('hatchback'));
  sheetFile = join(bench.folder, 'sheet.txt');
  expect(await bench.run(['sheet', 'hatchback', '-o', sheetFile])).toMatchObject({ exit: 0, complaint: '' });
});
afterAll(() => bench.remove());

/** The command on these bytes, in a folder without copies. */
async function verified(bytes: Uint8Array, ...more: string[]): Promise<{ exit: number; out: string }> {
  const path = join(bench.folder, 'alone', 'other.countback.jsonl');
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, bytes);
  const args = parse([path, ...more], verify.options);
  if (typeof args === 'string') throw new Error(args);
  let out = '';
  const write = (text: string) => {
    out += text;
  };
  const exit = await verify.run(args, { write, complain: write, isUnread: () => false }, new URL('file:///'));
  return { exit, out };
}
const linesOf = (bytes: Buffer): string[] => bytes.toString('utf8').split(/(?<=\n)/);
const joined = (lines: readonly string[]): Buffer => Buffer.from(lines.join(''));
/** Line numbers count from 1. */
const without = (...gone: number[]): Buffer => joined(linesOf(whole).filter((_, i) => !gone.includes(i + 1)));
/** What a forger with the program's own code would write. */
function chainedAnew(lines: readonly string[], change: (text: string) => string): Buffer {
  let reached = beforeFirst;
  return Buffer.concat(
    lines.map((line) => {
      const { link, ...value } = JSON.parse(change(line)) as { link: string };
      expect(link).toMatch(/^[0-9a-f]{16}$/);
      const next = linked(value, reached);
      reached = next.reached;
      return next.bytes;
    }),
  );
}

it('[X3] a log as it was written is unaltered, and the sheet printed from it agrees', async () => {
  const calls = linesOf(whole).length - 1;
  const { exit, out } = await verified(whole);
  expect(exit).toBe(0);
  expect(out).toMatch(
    new RegExp(`^UNALTERED: ${calls} calls, digest [0-9a-f]{64}\\nA chain computed anew.* only beside`),
  );
  expect(out).toContain('it is no signature');
  expect(await verified(whole, '--sheet', sheetFile)).toMatchObject({
    exit: 0,
    out: expect.stringContaining(`The sheet was printed from this log after call ${calls}, its last.`),
  });
  const digest = /digest ([0-9a-f]{64})/.exec(out)?.[1];
  expect(readFileSync(sheetFile, 'utf8')).toContain(`Log digest      ${digest}\n`);
});

/** What the seal of every byte is asked, the whole command is asked of one byte in so many: they are no multiple of a line. */
const bytesApart = 37;

it('[X3] each byte of the log: one changed is found, and its line named', async () => {
  let line = 1;
  for (let at = 0; at < whole.length; at++) {
    const bytes = Buffer.from(whole);
    bytes[at] = (bytes[at] ?? 0) ^ 1;
    // A line end that is gone joins two lines, and the first of the two is named.
    expect({ at, line: sealOf(bytes).alterations[0]?.line }).toEqual({ at, line });
    if (at % bytesApart === 0 || whole[at] === 0x0a) {
      const { exit, out } = await verified(bytes);
      expect({ at, exit, told: out.startsWith('ALTERED: ') }).toEqual({ at, exit: 1, told: true });
      expect(out.split('\n')[1]).toMatch(new RegExp(`^- line ${line}, byte`));
    }
    if (whole[at] === 0x0a) line++;
  }
  expect(line).toBe(linesOf(whole).length + 1);
});

it('[X3] each byte of the log taken out or written twice is found', async () => {
  for (let at = 0; at < whole.length; at++) {
    const before = whole.subarray(0, at);
    const gone = Buffer.concat([before, whole.subarray(at + 1)]);
    const twice = Buffer.concat([before, whole.subarray(at, at + 1), whole.subarray(at)]);
    const found = [gone, twice].map((bytes) => sealOf(bytes).alterations.length > 0);
    expect({ at, found }).toEqual({ at, found: [true, true] });
    if (at % bytesApart !== 0) continue;
    for (const bytes of [gone, twice]) expect({ at, exit: (await verified(bytes)).exit }).toEqual({ at, exit: 1 });
  }
});

it('[X3] a line taken out is missed by its number, whichever but the last it was', async () => {
  const { length } = linesOf(whole);
  for (let line = 2; line < length; line++) {
    const { exit, out } = await verified(without(line));
    expect({ line, exit }).toEqual({ line, exit: 1 });
    expect(out).toContain(`- line ${line}, byte `);
    expect(out).toContain(`: call ${line - 1} was taken out before it\n`);
  }
  expect((await verified(without(3, 4, 5))).out).toContain(': calls 2 to 4 were taken out before it\n');
  expect((await verified(without(1))).out).toContain(': the header was taken out\n');
});

it('[X3] two lines that changed places are told, with the place where they belong', async () => {
  const lines = linesOf(whole);
  for (let i = 1; i + 1 < lines.length; i++) {
    const [a, b] = [lines[i] as string, lines[i + 1] as string];
    const { exit, out } = await verified(joined(lines.toSpliced(i, 2, b, a)));
    expect(exit).toBe(1);
    expect(out).toMatch(
      new RegExp(
        `^ALTERED: .*\\n- line ${i + 1}, byte \\d+: this line was moved here; it belongs at line ${i + 2}\\n$`,
      ),
    );
  }
});

it('[X3] a line put in is told, and what is behind it still holds', async () => {
  const lines = linesOf(whole);
  const { exit, out } = await verified(joined(lines.toSpliced(3, 0, lines[2] as string)));
  expect(exit).toBe(1);
  expect(out.split('\n').slice(1)).toEqual([
    expect.stringMatching(/^- line 4, byte \d+: this line was put in, or written twice$/),
    '',
  ]);
});

it('[X3] cut off inside a line it is told by itself; at a line end only beside the sheet, and it says so', async () => {
  const lines = linesOf(whole);
  const inside = await verified(whole.subarray(0, whole.length - 20));
  expect(inside.exit).toBe(1);
  expect(inside.out).toMatch(
    /: the end was cut off, or never written: nothing ends these \d+ bytes; opening the job leaves them out, or asks, and keeps a copy\n/,
  );
  const noNewline = await verified(whole.subarray(0, whole.length - 1));
  expect(noNewline.exit).toBe(1);

  for (let kept = 2; kept < lines.length; kept++) {
    const cut = joined(lines.slice(0, kept));
    const alone = await verified(cut);
    expect(alone.exit).toBe(0);
    expect(alone.out).toContain('calls cut off at the end of a line, show only beside a sheet');
    const beside = await verified(cut, '--sheet', sheetFile);
    expect(beside.exit).toBe(1);
    expect(beside.out).toContain(
      `the sheet counts ${lines.length - 1} calls and ${kept - 1} hold here: calls were cut off at the end`,
    );
  }
  expect((await verified(Buffer.alloc(0))).out).toContain('the whole log is gone');
});

it('[X3] a chain computed anew is caught beside the sheet alone, and it says so', async () => {
  const forged = chainedAnew(linesOf(whole), (line) => line.replace('found so', 'found otherwise'));
  const alone = await verified(forged);
  expect(alone.exit).toBe(0);
  expect(alone.out).toContain(
    'A chain computed anew, and calls cut off at the end of a line, show only beside a sheet',
  );
  const beside = await verified(forged, '--sheet', sheetFile);
  expect(beside.exit).toBe(1);
  expect(beside.out).toContain(
    'the digest on the sheet is not of this log: the log was changed and its chain computed anew',
  );
});

it('[X3] the dated copies are witnesses too', async () => {
  const copy = join(bench.dataDir, 'jobs', 'copies', 'hatchback.2026-02-03.countback.jsonl');
  writeFileSync(copy, joined(linesOf(whole).slice(0, 3)));
  expect(await bench.run(['verify', 'hatchback'])).toMatchObject({ exit: 0 });
  writeFileSync(bench.fileOf('hatchback'), joined(linesOf(whole).slice(0, 2)));
  const cut = await bench.run(['verify', 'hatchback']);
  expect(cut.exit).toBe(1);
  expect(cut.out).toMatch(/copies\/hatchback\.\d{4}-\d\d-\d\d\.countback\.jsonl holds 2 calls, the file 1: /);
  writeFileSync(
    bench.fileOf('hatchback'),
    chainedAnew(linesOf(whole), (line) => line.replace('grey', 'blue')),
  );
  const anew = await bench.run(['verify', 'hatchback']);
  expect(anew.exit).toBe(1);
  expect(anew.out).toMatch(/copies\/hatchback.2026-02-03\..* says otherwise from call \d+ on: /);
  writeFileSync(bench.fileOf('hatchback'), whole);
});

it('a sheet printed before the last calls agrees, and says how many came after', async () => {
  const later = join(bench.folder, 'early.txt');
  writeFileSync(bench.fileOf('early'), joined(linesOf(whole).slice(0, 3)));
  expect((await bench.run(['sheet', 'early', '-o', later])).exit).toBe(0);
  const { exit, out } = await verified(whole, '--sheet', later);
  expect(exit).toBe(0);
  expect(out).toContain('printed from this log after call 2; ');
});

it.each(['--text', '--csv', '--html'])('[X3] the words on a sheet are held to their own digest: %s', async (form) => {
  const file = join(bench.folder, `words${form}`);
  const said = (sheet: string) => {
    writeFileSync(file, sheet);
    return verified(whole, '--sheet', file);
  };
  writeFileSync(bench.fileOf('hatchback'), whole);
  const printed = await bench.run(['sheet', 'hatchback', form, '-o', file]);
  expect(printed.exit).toBe(0);
  const sheet = readFileSync(file, 'utf8');
  const onOut = (await bench.run(['sheet', 'hatchback', form])).out;
  const ends = sheet.replaceAll('\r\n', '\n').replaceAll('\n', ' \r\n');
  for (const same of [sheet, onOut, ends, sheet.trimEnd()])
    expect(await said(same)).toMatchObject({
      exit: 0,
      out: expect.stringMatching(/\nThe words on it are as they were printed\.\n/),
    });
  const changed = await said(sheet.replace('found so', 'found otherwise'));
  expect(changed.exit).toBe(1);
  expect(changed.out).toMatch(
    /^THE SHEET WAS CHANGED: it no longer reads as it was printed, .*\nThe sheet was printed from this log after call \d+, its last\.\nBy itself this log is unaltered/,
  );
  // Of a text it is known where.
  if (form === '--text') expect(changed.out).toMatch(/\. Look first at line \d+, "- .*: found otherwise"\n/);
  // As older programs printed it.
  const older = sheet.replace(/^.*sheet.digest.*\r?\n/im, '');
  expect(older).not.toBe(sheet);
  expect(await said(older)).toMatchObject({
    exit: 0,
    out: expect.stringMatching(
      /\nThe words on it were not compared, only the digest of the log: it carries none of its own\.\n/,
    ),
  });
});

it('[X3] a text sheet of another minute, zone, unit or copy has no line that its log would not print', async () => {
  const calls = 'area sump\nby torque 40\nbench 18 45\nodometer 118000 km\nphoto pump.jpg at sump\noff 1\n';
  writeFileSync(join(bench.folder, 'pump.jpg'), 'a picture');
  expect((await bench.run(['take', 'blue', '--new'], { input: `job blue\n${calls}` })).exit).toBe(0);
  const file = join(bench.folder, 'blue.txt');
  const settings = join(bench.dataDir, 'settings.json');
  for (const more of [[], ['--workshop'], ['--workshop', '--bench-time']]) {
    writeFileSync(settings, JSON.stringify({ units: { torque: 'lbf ft', temperature: 'F', distance: 'mi' } }));
    await bench.run(['sheet', 'blue', ...more, '-o', file, '--force'], { env: { TZ: 'Asia/Kolkata' } });
    renameSync(settings, `${settings}.away`);
    const sheet = readFileSync(file, 'utf8');
    writeFileSync(file, sheet.replace(/^Sheet digest.*\n/m, ''));
    const { exit, out } = await bench.run(['verify', 'blue', '--sheet', file]);
    expect({ exit, out }).toEqual({ exit: 0, out: expect.stringContaining('it carries none of its own.\n') });
  }
});

it("another job's sheet is told as that first, by the job it was printed from or the vehicle it names", async () => {
  const input = 'job "blue van"\narea sump\noff 1\n';
  expect((await bench.run(['take', 'van', '--new'], { input })).exit).toBe(0);
  for (const form of ['--text', '--csv', '--html']) {
    const vans = join(bench.folder, `van${form}`);
    expect((await bench.run(['sheet', 'van', form, '-o', vans, '--force'])).exit).toBe(0);
    const args = ['verify', 'hatchback', '--sheet', vans];
    const known = await bench.run(args);
    expect(known.exit).toBe(1);
    expect(known.out).toMatch(
      /^THE SHEET IS OF ANOTHER JOB: it was printed from "van" after call \d \(.*van.countback.jsonl\)\nBy itself this log is unaltered: \d calls, .*\n$/,
    );
    renameSync(bench.fileOf('van'), join(bench.folder, 'van.away'));
    expect(await bench.run(args)).toMatchObject({
      exit: 1,
      out: expect.stringMatching(
        /^THE SHEET IS OF ANOTHER JOB: it names the vehicle "blue van", this log "grey hatchback"\n/,
      ),
    });
    renameSync(join(bench.folder, 'van.away'), bench.fileOf('van'));
  }
});

it('[X3] of a file whose end is missing, under another name, the sheet is not said to be of another job', async () => {
  writeFileSync(bench.fileOf('hatchback'), whole);
  writeFileSync(bench.fileOf('cut'), joined(linesOf(whole).slice(0, 4)));
  const { exit, out } = await bench.run(['verify', 'cut', '--sheet', sheetFile]);
  const calls = linesOf(whole).length - 1;
  expect(exit).toBe(1);
  expect(out).toBe(
    `ALTERED: ${bench.fileOf('cut')}\n- the end is missing here, or this is an older copy: the sheet was printed after call ${calls}, which ${bench.fileOf('hatchback')} holds\n`,
  );
  rmSync(bench.fileOf('cut'));
});

it('[D4] the calls before the first fault can be looked at, and where a job is refused that is told', async () => {
  const lines = linesOf(whole);
  const bad = lines.map((line, i) => (i === 4 ? line.replace('"n":4', '"n":9') : line));
  const { exit, out } = await verified(joined(bad), '--calls');
  expect(exit).toBe(1);
  expect(out).toMatch(
    /^ALTERED: [\s\S]*\nThe calls that hold, 3:\n {4}1 {2}grey hatchback .*\n {4}2 .*cam cover.*\n {4}3 .*\n$/,
  );
  expect(out).toMatch(steersNothing);
  const path = join(bench.folder, 'alone', 'other.countback.jsonl');
  expect((await bench.run(['standing', path])).complaint).toContain(
    `bring it back from your own backup; the 3 calls before the fault: countback verify ${path} --calls\n`,
  );
  expect((await verified(whole, '--calls')).out).toContain('The calls that hold, 6:\n');
});

it('an emptied file is said to hold nothing, beside a copy and beside a sheet', async () => {
  writeFileSync(bench.fileOf('hatchback'), '');
  const { exit, out } = await bench.run(['verify', 'hatchback', '--sheet', sheetFile]);
  writeFileSync(bench.fileOf('hatchback'), whole);
  expect(exit).toBe(1);
  expect(out).toMatch(/holds \d calls, the file none: /);
  expect(out).toMatch(/counts \d calls and none hold here: /);
});

it('no job, no sheet and no digest are told as they are, and nothing is steered', async () => {
  expect(await bench.run(['verify'])).toMatchObject({ exit: 64 });
  expect(await bench.run(['verify', 'nobody'])).toMatchObject({ exit: 2, out: '' });
  const empty = join(bench.folder, 'empty.txt');
  writeFileSync(empty, `Vehicle         Log digest      ${'a'.repeat(64)}\n`);
  const none = await bench.run(['verify', 'hatchback', '--sheet', empty]);
  expect(none).toMatchObject({ exit: 2, out: '' });
  expect(none.complaint).toContain('there is no log digest on this');
  const foreign = join(bench.folder, '\u001b[31mforeign.jsonl');
  writeFileSync(foreign, '\u001b[2J\nnothing of ours\n');
  const told = await bench.run(['verify', foreign]);
  expect(told).toMatchObject({
    exit: 2,
    out: '',
    complaint: expect.stringMatching(/: this is no job file; name a job/),
  });
  expect(told.complaint.trimEnd()).toMatch(steersNothing);
});

it('[X3] a log that was written over with something else is told as altered while a copy of it is there', async () => {
  writeFileSync(bench.fileOf('hatchback'), 'a shopping list\n');
  const { exit, out } = await bench.run(['verify', 'hatchback']);
  writeFileSync(bench.fileOf('hatchback'), whole);
  expect(exit).toBe(1);
  expect(out).toMatch(/^ALTERED: .*\n- line 1, .* or this is no job file\n/);
});
