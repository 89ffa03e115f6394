// The command line as a whole: help, what it does not know, calls, and pipes and users that give way.
import { spawn } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { shelfRows } from '../../src/calls/lists/shelf.ts';
import { jobsOnShelf } from '../../src/commands/shelf.ts';
import { type Bench, benchWithJob, launcher, newBench, steersNothing } from './run.ts';

let begunOnce: Bench;
let bench: Bench;
beforeAll(async () => {
  begunOnce = await benchWithJob();
});
afterAll(() => begunOnce.remove());
beforeEach(() => {
  bench = newBench();
  bench.copy(begunOnce);
});
afterEach(() => bench.remove());

it('a job goes by one name on the shelf and at the head of its screens; its file is told where it is called otherwise', async () => {
  await bench.run(['take', 'grey two', '--new'], { input: 'job "grey hatchback"\n' });
  await bench.run(['take', 'red', '--new'], { input: 'job "red estate"\n' });
  await bench.run(['take', 'Blue van', '--new'], { input: 'area sump\n' });
  vi.stubEnv('COUNTBACK_DATA', bench.dataDir);
  try {
    const shown = shelfRows(await jobsOnShelf()).map(({ text, more }) => [text, more]);
    const called = (file: string) => `Its file, as a command takes it: ${file}`;
    expect(shown).toHaveLength(4);
    expect(shown).toEqual(
      expect.arrayContaining([
        ['grey hatchback, file hatchback', called('hatchback')],
        ['grey hatchback, file grey-two', called('grey-two')],
        ['red estate', called('red')],
        ['Blue van', undefined],
      ]),
    );
  } finally {
    vi.unstubAllEnvs();
  }
});

it('a file that was given a name of its own is found by it and by the name of its job, and one that is gone by its copy', async () => {
  const from = bench.fileOf('hatchback');
  const to = join(dirname(from), "Ma car's.countback.jsonl");
  renameSync(from, to);
  for (const name of ["Ma car's", 'hatchback']) {
    const { out, complaint } = await bench.run(['standing', name]);
    expect({ out: out.includes('open'), complaint }).toEqual({ out: true, complaint: '' });
  }
  rmSync(to);
  const { exit, complaint } = await bench.run(['standing', 'hatchback']);
  expect(exit).toBe(2);
  expect(complaint).toMatch(
    /there is no job "hatchback" any more; a copy of it has \d+ calls?, and comes back with: cd .* && cp copies\//,
  );
});

it('[T8] a job that waits says so on the shelf', async () => {
  await bench.run(['take', 'red', '--new'], { input: 'area sump\nwaiting for parts because ordered\n' });
  vi.stubEnv('COUNTBACK_DATA', bench.dataDir);
  try {
    expect((await jobsOnShelf()).find(({ file }) => file === 'red')?.said).toMatch(/ open, waits$/);
  } finally {
    vi.unstubAllEnvs();
  }
});

it('[D4] the shelf tells of a job whose file is gone while copies of it are there, and not of one called otherwise', async () => {
  for (const job of ['red', 'blue']) await bench.run(['take', job, '--new'], { input: 'area sump\noff\n' });
  const copy = readFileSync(bench.fileOf('red'));
  rmSync(bench.fileOf('red'));
  renameSync(bench.fileOf('blue'), bench.fileOf('green'));
  vi.stubEnv('COUNTBACK_DATA', bench.dataDir);
  try {
    const gone = (await jobsOnShelf()).filter(({ broken }) => broken !== undefined);
    expect(gone.map(({ file, said }) => [file, said])).toEqual([['red', 'the file is gone, copies of it are there']]);
    expect(gone[0]?.broken?.why).toMatch(
      /it comes back with: cd .* && cp copies\/red\..*\.jsonl red\.countback\.jsonl; /,
    );
    expect(readFileSync(gone[0]?.broken?.copy?.path ?? '')).toEqual(copy);
    expect((await jobsOnShelf()).map(({ file }) => file)).toEqual(expect.arrayContaining(['green', 'red']));
  } finally {
    vi.unstubAllEnvs();
  }
});

it('[D4] a job file that is called otherwise is told on the shelf and where a job is not found, with the name it wants', async () => {
  await bench.run(['take', 'red', '--new'], { input: 'area sump\noff\n' });
  const path = join(dirname(bench.fileOf('red')), 'red.countback (1).jsonl');
  renameSync(bench.fileOf('red'), path);
  rmSync(join(dirname(path), 'copies'), { recursive: true });
  writeFileSync(join(dirname(path), 'notes.jsonl'), '{"a":1}\n');
  vi.stubEnv('COUNTBACK_DATA', bench.dataDir);
  try {
    expect((await jobsOnShelf()).filter(({ broken }) => broken)).toEqual([
      expect.objectContaining({ name: 'red.countback (1).jsonl', said: 'a job, but its name is none of a job file' }),
    ]);
  } finally {
    vi.unstubAllEnvs();
  }
  const { exit, complaint } = await bench.run(['standing', 'van']);
  expect(exit).toBe(2);
  expect(complaint).toContain(
    'a job in "red.countback (1).jsonl", which is found once it is called red (1).countback.jsonl',
  );
});

it('a released job stands on the shelf under the time it was released, and its sheet is told with the release and there', async () => {
  const input = 'job "red van"\nodometer 100\nrelease by Ann\n';
  // As it is called in the shell it was started from.
  const way = 'Its sheet: npm start -- sheet van-two --html -o FILE';
  for (const [name, value] of Object.entries({ package_name: 'countback', command: 'start', lifecycle_event: 'start' }))
    vi.stubEnv(`npm_${name}`, value);
  try {
    const { out } = await bench.run(['take', 'van two', '--new'], { input });
    expect(out).toContain(`released by Ann. ${way}`);
    vi.stubEnv('COUNTBACK_DATA', bench.dataDir);
    const shown = async () => shelfRows(await jobsOnShelf()).find(({ text }) => text === 'red van');
    const first = await shown();
    expect(first).toMatchObject({ more: `Its file, as a command takes it: van-two. ${way}` });
    expect(first?.end).toMatch(/^released {3}\d+ \w{3} \d+:\d\d$/);
    // As opening it may do.
    utimesSync(bench.fileOf('van-two'), 86_400, 86_400);
    expect(await shown()).toEqual(first);
  } finally {
    vi.unstubAllEnvs();
  }
});

it('[D4] the shelf tells a last line that was changed from an end that was cut off, and a folder from a file', async () => {
  const path = bench.fileOf('hatchback');
  const whole = readFileSync(path);
  const changed = Buffer.from(whole);
  changed[whole.length - 30] = (changed[whole.length - 30] ?? 0) ^ 1;
  writeFileSync(path, changed);
  writeFileSync(bench.fileOf('torn'), whole.subarray(0, whole.length - 40));
  mkdirSync(bench.fileOf('folder'));
  vi.stubEnv('COUNTBACK_DATA', bench.dataDir);
  try {
    const shelf = await jobsOnShelf();
    const of = (file: string) => shelf.find((one) => one.file === file);
    expect(of('hatchback')?.said).toMatch(/^last line changed; \d+ off/);
    expect(of('torn')?.said).toMatch(/^end cut off; \d+ off/);
    expect(of('folder')?.broken?.why).toMatch(
      /: a folder stands in the place of a job file; move it out of the folder of jobs$/,
    );
  } finally {
    vi.unstubAllEnvs();
  }
});

const commands = ['open', 'demo', 'take', 'standing', 'sheet', 'calls', 'plans', 'reckon'];

describe('the command line', () => {
  it('helps everywhere', async () => {
    const whole = await bench.run(['--help']);
    expect(whole).toMatchObject({ exit: 0, complaint: '' });
    expect(await bench.run(['-h'])).toEqual(whole);
    expect((await bench.run(['take', 'hatchback', '-h'])).out).toContain('countback take');
    const ones = await Promise.all(commands.map((command) => bench.run([command, '--help'])));
    for (const [i, one] of ones.entries()) {
      const command = commands[i];
      expect(one).toMatchObject({ exit: 0, complaint: '' });
      const usage = one.out.split('\n')[0] ?? '';
      expect(usage).toMatch(new RegExp(`^countback ${command}`));
      expect(whole.out).toContain(usage);
    }
    for (const { out } of [whole, ...ones])
      for (const row of out.split('\n')) expect([...row].length, row).toBeLessThan(81);
  });

  it('answers what it does not know with one line and 64', async () => {
    const unknown = [
      ['sideways'],
      ['--sideways'],
      ['\u001b[31m\u009b2J'],
      ['open', '-x'],
      ['calls', 'job'],
      ['demo', 'job'],
    ];
    const misused = [['open'], ['open', 'a', 'b']];
    const all = [...unknown, ...misused];
    const ended = await Promise.all(all.map((args) => bench.run(args)));
    for (const [i, { exit, out, complaint }] of ended.entries()) {
      expect({ args: all[i], exit, out }).toEqual({ args: all[i], exit: 64, out: '' });
      expect(complaint).toMatch(/^countback: .+\n$/);
      expect(complaint).toMatch(steersNothing);
    }
  });

  it('says what is missing or too much, and what a slipped word may have meant', async () => {
    const slips: [string[], string][] = [
      [['standin'], 'unknown command "standin", perhaps "standing"; '],
      [['show'], 'unknown command "show", perhaps "vehicle show"; '],
      [['lsit'], 'unknown command "lsit", perhaps "vehicle list"; '],
      [['need', 'belt'], 'unknown command "need", perhaps "plans need"; '],
      [['hatchback'], 'unknown command "hatchback"; the job is opened by "countback open hatchback"; '],
      [['sideways'], 'unknown command "sideways"; see countback --help'],
      [['standing'], 'no job is named; standing JOB '],
      [['standing', 'a', 'b'], '"b" is too much here; standing JOB '],
      [['standing', 'a', '--jsn'], 'unknown option "--jsn", perhaps "--json"; '],
      [['calls', 'x', 'y'], '"x" and 1 more words are too much here; calls '],
      [['vehicle', 'shwo', 'x'], 'vehicle does not know "shwo", perhaps "show"; '],
      [['vehicle', 'show'], 'no vehicle is named; vehicle list'],
      [['plans', 'nede'], 'plans does not know "nede", perhaps "need"; '],
      [['reckon', 'torqe'], 'no topic "torqe", perhaps "torque"; '],
      [['reckon', 'torque'], 'say reckon torque "25 Nm"'],
      [['verify', 'nowhere'], 'there is no job "nowhere"; there is "hatchback"'],
    ];
    const ended = await Promise.all(slips.map(([args]) => bench.run(args)));
    for (const [i, { complaint }] of ended.entries())
      expect(complaint.startsWith(`countback: ${slips[i]?.[1]}`), complaint).toBe(true);
    const [asked, wanted] = await Promise.all([bench.run(['help', 'take']), bench.run(['take', '--help'])]);
    expect(asked).toEqual(wanted);
    expect((await bench.run(['help'])).out).toContain('the shelf of jobs, on the screen');
  });

  it.each([[[]], [['open', 'hatchback']], [['demo']]])(
    'says that %j needs a terminal, and what does not',
    async (args) => {
      expect(await bench.run(args)).toEqual({
        exit: 64,
        out: '',
        complaint: 'countback: the screen needs a terminal; from a script use "countback take JOB"\n',
      });
    },
  );
});

describe('the built program', () => {
  it.each([
    [['--version']],
    [['standing', 'hatchback', '--json']],
    [['standing', 'nowhere']],
    [['sheet', 'hatchback', '--csv', '-o', 'sheet.csv']],
    [['verify', 'hatchback']],
    [['whose', 'hatchback', '--head', '10']],
    [['vehicle', 'list']],
    [['calls', '--json']],
    [['plans', 'need', 'timing belt']],
    [['reckon', 'torque']],
    [['take', 'hatchback', '--json'], 'off 2\nsideways\n'],
  ])('answers %j as the command line does that the other tests call', async (args, input = '') => {
    const called = newBench();
    called.copy(begunOnce);
    const said = await called.run(args, { input });
    const told = ({ exit, out, complaint }: typeof said, { folder }: Bench) =>
      JSON.stringify({ exit, out, complaint }).replaceAll(folder, 'FOLDER');
    expect(told(await bench.runProgram(args, { input }), bench)).toBe(told(said, called));
    called.remove();
  });
});

describe('calls', () => {
  type Row = {
    id: string;
    words: string[];
    form: string;
    guards: { rule: string; kind: string; overridable: boolean }[];
  };
  const table = async () => JSON.parse((await bench.run(['calls', '--json'])).out) as Row[];

  it('[O5] may override nothing but O1, O2 and O3; O3 refuses no hole, it takes and marks', async () => {
    const guards = (await table()).flatMap((row) => row.guards);
    const rules = (overridable: boolean) =>
      new Set(guards.filter((g) => g.overridable === overridable).map((g) => g.rule));
    expect([...rules(true)].sort()).toEqual(['O1', 'O2']);
    expect(guards.filter((g) => g.overridable && g.kind !== 'order')).toEqual([]);
    expect(guards.filter((g) => g.kind === 'order' && !g.overridable)).toEqual([]);
    expect(rules(false).size).toBeGreaterThan(10);
  });

  it('prints every row of the same table as text', async () => {
    const { exit, out, complaint } = await bench.run(['calls']);
    expect({ exit, complaint }).toEqual({ exit: 0, complaint: '' });
    const rows = await table();
    expect(rows.length).toBeGreaterThan(80);
    for (const row of rows) expect(out).toContain(`\n  ${row.form}\n`);
  });

  it('gives every row an id that a line may begin with', async () => {
    const rows = await table();
    const ids = rows.map((row) => row.id);
    expect(new Set(ids).size).toBe(ids.length);
    const { out } = await bench.run(['take', 'hatchback', '--json'], { input: ids.join('\n') });
    const answers = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as { because?: string });
    expect(answers).toHaveLength(ids.length);
    expect(answers.filter((one) => one.because?.includes('begins no call'))).toEqual([]);
  });
});

describe('when what is written is not read', () => {
  const piped = (args: readonly string[], into: string) =>
    new Promise<string>((resolve) => {
      const words = [process.execPath, launcher, ...args].map((word) => `'${word}'`).join(' ');
      const shell = spawn('/bin/sh', ['-c', `{ ${words}; echo "exit $?" >&2; } ${into}`], {
        env: { ...process.env, COUNTBACK_DATA: bench.dataDir },
        stdio: ['ignore', 'ignore', 'pipe'],
      });
      let told = '';
      shell.stderr.setEncoding('utf8').on('data', (text: string) => {
        told += text;
      });
      shell.on('close', () => resolve(told));
    });

  it.each([
    [['calls', '--json'], 0],
    [['sheet', 'hatchback'], 0],
    [['standing', 'hatchback'], 1],
  ])('%j ends as it would have', async (args, exit) => {
    expect(await piped(args, '| true')).toBe(`exit ${exit}\n`);
  });

  it('says that a full disk took nothing of it', async () => {
    expect(await piped(['standing', 'hatchback'], '> /dev/full')).toBe(
      'countback: what was to be said could not be written (ENOSPC)\nexit 74\n',
    );
  });
});

// To root nothing is forbidden: a test that runs as root runs these commands as nobody.
describe('what is not allowed', () => {
  const uid = process.getuid?.() === 0 ? 65534 : undefined;
  const as = uid === undefined ? {} : { uid };
  const jobs = () => join(bench.dataDir, 'jobs');
  beforeEach(() => {
    chmodSync(bench.folder, 0o755);
    chmodSync(bench.dataDir, 0o755);
  });
  afterEach(() => {
    for (const path of [bench.dataDir, jobs(), bench.fileOf('hatchback')]) chmodSync(path, 0o755);
  });

  it('a job that may not be read is said to be so', async () => {
    chmodSync(bench.fileOf('hatchback'), 0o000);
    for (const command of ['standing', 'sheet', 'take']) {
      expect(await bench.runProgram([command, 'hatchback'], as)).toEqual({
        exit: 2,
        out: '',
        complaint: `countback: ${bench.fileOf('hatchback')}: permission is denied (EACCES); allow reading and writing here, then try again\n`,
      });
    }
  });

  it('a folder of jobs that may not be entered is said to be so', async () => {
    chmodSync(jobs(), 0o000);
    const { exit, complaint } = await bench.runProgram(['standing', 'hatchback'], as);
    expect(exit).toBe(2);
    expect(complaint).toMatch(/^countback: .*: permission is denied \(EACCES\); .*\n$/);
    expect((await bench.runProgram(['take', 'van', '--new'], { ...as, input: 'job "van"\n' })).exit).toBe(2);
  });

  it('a folder of jobs that may only be read lets a job be looked at, and no call be taken', async () => {
    chmodSync(bench.fileOf('hatchback'), 0o444);
    chmodSync(jobs(), 0o555);
    const before = readFileSync(bench.fileOf('hatchback'));
    expect((await bench.runProgram(['standing', 'hatchback'], as)).exit).toBe(1);
    const { exit, out, complaint } = await bench.runProgram(['take', 'hatchback'], { ...as, input: 'off 2\n' });
    expect({ exit, out }).toEqual({ exit: 2, out: '' });
    expect(complaint).toMatch(/^countback: .*permission is denied \(EACCES\); .*\n$/);
    expect(readFileSync(bench.fileOf('hatchback')).equals(before)).toBe(true);
  });

  it('data kept where a file is, or where no folder may be made, are said to be so', async () => {
    const file = join(bench.folder, 'file');
    writeFileSync(file, '');
    const inFile = await bench.runProgram(['take', 'van', '--new'], { env: { COUNTBACK_DATA: file } });
    expect(inFile).toMatchObject({ exit: 2, out: '' });
    expect(inFile.complaint).toMatch(
      /^countback: .*: (?:a part of this path is not a folder|this is there already).*\n$/,
    );
    const closed = join(bench.folder, 'closed');
    mkdirSync(closed, { mode: 0o555 });
    const inClosed = await bench.runProgram(['take', 'van', '--new'], {
      ...as,
      env: { COUNTBACK_DATA: join(closed, 'data') },
    });
    expect(inClosed).toMatchObject({ exit: 2, out: '' });
    expect(inClosed.complaint).toMatch(/^countback: .*: permission is denied \(EACCES\); .*\n$/);
  });
});
