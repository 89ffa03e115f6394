// take, seen from a shell: its answers, its exit codes, the lock, and lists of calls that are not what they should be.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type Bench, benchWithJob, launcher, newBench, steersNothing } from './run.ts';

let begunOnce: Bench;
let bench: Bench;
beforeAll(async () => {
  begunOnce = await benchWithJob();
});
afterAll(() => begunOnce.remove());
beforeEach(() => {
  bench = newBench();
});
afterEach(() => bench.remove());

const take = (input: string | Uint8Array, ...more: string[]) => bench.run(['take', 'hatchback', ...more], { input });
const begun = () => bench.copy(begunOnce);

/** take from a shell of its own; "$0" is the bench's folder, "$@" the command. */
const inShell = (script: string, input?: string) =>
  spawnSync('/bin/sh', ['-c', script, bench.folder, process.execPath, launcher, 'take', 'hatchback'], {
    env: { ...process.env, COUNTBACK_DATA: bench.dataDir },
    encoding: 'utf8',
    ...(input !== undefined && { input }),
  });

describe('take', () => {
  it('answers every line, and ends with 0 when all were taken', async () => {
    expect(await take('job "grey hatchback"\narea "cam cover"\noff 1\n', '--new')).toEqual({
      exit: 0,
      out: '    1  grey hatchback on the bench\n       at cam cover\n    2  cam cover 1 off, to tray 1\n',
      complaint: '',
    });
    expect(bench.callsOf('hatchback')).toHaveLength(2);
  });

  it('ends with 3 when some were refused, names the rule, and takes the others', async () => {
    begun();
    const { exit, out, complaint } = await take('off 1\nsideways 2\ntihgt 1\nuse\noff 2\n');
    expect({ exit, complaint }).toEqual({ exit: 3, complaint: '' });
    expect(out).toMatch(/^ {3}no {2}off 1\n {7}\[L1\] cam cover 1 .*; .*\n/);
    expect(out).toContain('   no  sideways 2\n       "sideways" begins no call; see all words: "countback calls"\n');
    expect(out).toContain('"tihgt" begins no call, perhaps "tight"; ');
    expect(out).toContain('the fastener is missing, as "bolt hex 10 M6x25 8.8"; ');
    expect(out).toMatch(/\n {4}3 {2}cam cover 2 off, to tray 1\n$/);
  });

  it('stops with --stop at the first that is refused, and says so', async () => {
    begun();
    const { exit, out, complaint } = await take('off 2\nbolt T30 M6x16\noff 3\n', '--stop');
    expect({ exit, complaint }).toEqual({
      exit: 3,
      complaint: 'countback: stopped at what was refused; what follows it was not taken\n',
    });
    expect(out).toMatch(/cam cover 2 off, to tray 1\n {3}no {2}bolt T30 M6x16\n/);
    expect(out).not.toContain('cam cover 3');
  });

  it('answers each of several calls in one line, as on the screen, and leaves a name in quotes whole', async () => {
    const list = 'job van\narea left wheel; role wheel; off; off 2\nnote "grey; dented"; slack 3\n';
    const { exit, out } = await take(list, '--new');
    expect(exit).toBe(0);
    expect(out).toContain('left wheel 1 off, to tray 1. Mind');
    expect(out).toContain('left wheel 2 off, to tray 1\n');
    expect(out).toContain('grey; dented');
    expect(out).toContain('left wheel 3 slack');
  });

  it('[U3] takes no slip for a part nobody has named before, nor a part back that is not off for one', async () => {
    begun();
    const { exit, out } = await take(
      'part cover held by nothing\npart off cover\npart back coverr\npart coverr back\npart cover back\npart lid\n',
    );
    expect(exit).toBe(3);
    expect(out).toContain('coverr is not off, perhaps "cover"; call it off first');
    expect(out).toContain('no part "coverr back" is known, perhaps "cover"; as "part back NAME"; ');
    expect(out).toContain('no part "cover back" is known, perhaps "cover"; as "part back NAME"; ');
    expect(out).toMatch(/\d {2}part lid, held by nothing\n$/);
  });

  it('answers with one JSON value a line where that is asked for', async () => {
    begun();
    const { exit, out } = await take('off 2\noff 2\nshow log\n', '--json');
    const [taken, refused, step] = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(exit).toBe(3);
    expect(taken).toEqual({ line: 'off 2', ok: true, n: 3, said: 'cam cover 2 off, to tray 1' });
    expect(refused).toMatchObject({ line: 'off 2', ok: false, rule: 'L1' });
    expect(refused?.because).toEqual(expect.any(String));
    expect(refused?.instead).toEqual(expect.any(String));
    expect(step).toMatchObject({ line: 'show log', ok: false, because: 'that is a call of the screen' });
  });

  it('minds a number in front of what is found, and names the call behind a word that is one too many', async () => {
    begun();
    const { out } = await take('off 2\nfinding 2 thread worn\nfinding 9 thread worn\ncount holes 5\n');
    expect(out).toContain(
      'Mind: "2 thread worn" stands at cam cover as a whole; of hole 2 it is "finding at 2 thread worn"',
    );
    expect(out.match(/as a whole/g)).toHaveLength(1);
    expect(out).toContain('"is" is missing, perhaps "holes 5"; as: count TRAY is COUNT');
  });

  it('says of an area that was taken for a fastener how it is called', async () => {
    begun();
    const { out } = await take('use cam cover\n');
    expect(out).toContain('"cam cover" is an area: "area cam cover"');
  });

  it('ends with 2 where there is no such job, and with --new where there is one', async () => {
    const missing = await take('off 1\n');
    expect(missing).toMatchObject({ exit: 2, out: '' });
    expect(missing.complaint).toBe(
      `countback: there is no job "hatchback"; the folder ${bench.dataDir} is not there: is its disk plugged in?; "countback take NAME --new" makes a new one (${bench.fileOf('hatchback')})\n`,
    );
    mkdirSync(bench.dataDir);
    expect((await take('off 1\n')).complaint).toContain('"hatchback"; there is none yet; "countback take NAME --new"');
    begun();
    const there = await take('off 7\n', '--new');
    expect(there).toMatchObject({ exit: 2, out: '' });
    expect(there.complaint).toMatch(/^countback: there is a job of this name already; .* \(.*\)\n$/);
    expect(bench.callsOf('hatchback')).toHaveLength(2);
  });

  it.each([
    [[]],
    [['hatchback', 'van']],
    [['hatchback', '--sideways']],
    [['hatchback', '-new']],
    [['hatchback', '--json=3']],
  ])('ends with 64 and its usage for take %j', async (args) => {
    begun();
    const { exit, out, complaint } = await bench.run(['take', ...args], { input: 'off 2\n' });
    expect({ exit, out }).toEqual({ exit: 64, out: '' });
    expect(complaint).toMatch(/^countback: .*take JOB \[--new\] \[--stop\] \[--json\]\n$/);
    expect(bench.callsOf('hatchback')).toHaveLength(2);
  });

  it('opens a job whose name begins with a dash behind "--"', async () => {
    await bench.run(['take', '--new', '--', '-van'], { input: 'job "van"\n' });
    expect(bench.callsOf('van')).toHaveLength(1);
  });
});

describe('take while another program has the job', () => {
  it('[D3] ends with 75, names it, and writes nothing; after it was killed the job is free at once', async () => {
    begun();
    const other = bench.begin(['take', 'hatchback']);
    other.type('off 2\n');
    await other.says('cam cover 2 off');
    const locked = await take('off 3\n');
    expect(locked).toMatchObject({ exit: 75, out: '' });
    expect(locked.complaint).toBe(
      `countback: the job is open in another countback, process ${other.child.pid}; nothing was taken: close it there first (${bench.fileOf('hatchback')}.lock)\n`,
    );
    expect(bench.callsOf('hatchback')).toHaveLength(3);
    other.child.kill('SIGKILL');
    await other.ended;
    expect(await take('off 3\n')).toMatchObject({ exit: 0, complaint: '' });
    expect(bench.callsOf('hatchback')).toHaveLength(4);
  });

  it('[D3] knows the job by a link to its file as well, and a copy by a link to it', async () => {
    begun();
    const link = join(bench.folder, 'by-another-name.countback.jsonl');
    symlinkSync(bench.fileOf('hatchback'), link);
    const other = bench.begin(['take', 'hatchback']);
    other.type('off 2\n');
    await other.says('cam cover 2 off');
    const locked = await bench.run(['take', link], { input: 'off 3\n' });
    expect(locked).toMatchObject({ exit: 75, out: '' });
    other.child.kill('SIGKILL');
    await other.ended;
    const copies = join(dirname(bench.fileOf('hatchback')), 'copies');
    const [copy = ''] = readdirSync(copies);
    const toCopy = join(bench.folder, 'an-old-one.countback.jsonl');
    symlinkSync(join(copies, copy), toCopy);
    const looked = await bench.run(['take', toCopy], { input: 'off 3\n' });
    expect(looked.complaint).toContain('this is a copy, opened to look only');
  });

  it('[D2] kills cost no line that was answered', async () => {
    begun();
    for (let round = 0; round < 3; round++) {
      const other = bench.begin(['take', 'hatchback']);
      for (let i = 0; i < 40; i++) other.type(`off ${round * 100 + i + 2}\n`);
      await other.says(`cam cover ${round * 100 + 12} off`);
      other.child.kill('SIGKILL');
      const { out } = await other.ended;
      const answered = [...out.matchAll(/^ +(\d+) {2}/gm)].map((m) => Number(m[1]));
      expect(answered.length).toBeGreaterThan(10);
      const { exit } = await take('');
      expect(exit).toBe(0);
      expect(bench.callsOf('hatchback').length).toBeGreaterThanOrEqual(answered.at(-1) as number);
    }
  });
});

describe('take with a list that is not as it should be', () => {
  it('takes nothing from an empty list, or one of blanks and remarks', async () => {
    begun();
    expect(await take('')).toEqual({ exit: 0, out: '', complaint: '' });
    expect(await take('\n   \n# off 7\n\t\n')).toEqual({ exit: 0, out: '', complaint: '' });
    expect(bench.callsOf('hatchback')).toHaveLength(2);
  });

  it('reads the lines of any system, with or without a mark at the beginning or an end behind the last', async () => {
    begun();
    const { exit, out } = await take('\u{feff}off 2\r\noff\t3\r\n\r\noff 4');
    expect({ exit, out }).toEqual({
      exit: 0,
      out: [2, 3, 4].map((n) => `    ${n + 1}  cam cover ${n} off, to tray 1\n`).join(''),
    });
  });

  it('guesses at nothing in a line with control or unseen characters, and sends none on to the terminal', async () => {
    begun();
    const lines = [
      'off 1\u00002',
      'note\u001b[31m 2',
      '\u001b]0;mine\u0007off 2',
      'off \u009b2J2',
      'off \u{202e}2',
      'off 1\u{200b}2',
      'off 2\u0008',
    ];
    for (const more of [[], ['--json']]) {
      const { exit, out } = await take(`${lines.join('\n')}\n`, ...more);
      expect(exit).toBe(3);
      expect(out.split('there are control or unseen characters in this line')).toHaveLength(lines.length + 1);
      expect(out).toMatch(steersNothing);
    }
    expect(bench.callsOf('hatchback')).toHaveLength(2);
  });

  it('says that a line is not in UTF-8', async () => {
    begun();
    const { exit, out } = await take(Buffer.from('area "caf\u00e9"\noff 2\n', 'latin1'));
    expect(exit).toBe(3);
    expect(out).toContain('this line is not in UTF-8; save the list as UTF-8');
    expect(out).toContain('cam cover 2 off');
  });

  it('says of a line of 100,000 characters that it is too long, and does not print it', async () => {
    begun();
    const { exit, out } = await take(`stray ${'x'.repeat(100_000)}\noff 2\n`);
    expect(exit).toBe(3);
    expect(out).toContain('this line has 100006 characters, a call at most 4000; say it shorter');
    expect(out.length).toBeLessThan(600);
    expect(out).toContain('cam cover 2 off');
  });

  it('refuses names of 1,000 characters, and says so', async () => {
    begun();
    const long = 'x'.repeat(1000);
    const { exit, out } = await take(`area "${long}"\ntray "${long}"\njob "${long}"\n`);
    expect(exit).toBe(3);
    expect(out).toMatch(/^(?: {3}no {2}.{200}…\n {7}\S.*; .*\n){3}$/);
    expect(bench.callsOf('hatchback')).toHaveLength(2);
  });

  it('lets no name close the job that it is called in', async () => {
    begun();
    const calls = ['front/left', 'front:left', '..', '', ' ', '.'.repeat(61)].flatMap((name) => [
      `area "${name}"`,
      'off 1',
      `tray "${name}"`,
      'off 2',
      `finding "${name}" "${name}"`,
    ]);
    await take([...calls, 'odometer 12 km', ''].join('\n'));
    const { exit, complaint } = await bench.run(['standing', 'hatchback']);
    expect({ exit, complaint }).toEqual({ exit: 1, complaint: '' });
    expect(bench.callsOf('hatchback').at(-1)).toContain('odometer-noted');
  });

  it.each([
    ['a folder', '< .', 'EISDIR'],
    ['only open to write', '0> list', 'EBADF'],
  ])('ends with 66 where standard input is %s', (_, redirection, code) => {
    begun();
    const { status, stdout, stderr } = inShell(`cd "$0"; exec "$@" ${redirection}`);
    expect({ status, stdout }).toEqual({ status: 66, stdout: '' });
    expect(stderr).toBe(`countback: standard input could not be read to its end (${code})\n`);
  });

  it('stops when nobody reads its answers any more, and says after which call', async () => {
    begun();
    const other = bench.begin(['take', 'hatchback']);
    other.type('off 2\n');
    await other.says('cam cover 2 off');
    other.child.stdout?.destroy();
    other.child.stdin?.end(Array.from({ length: 50 }, (_, i) => `off ${i + 3}\n`).join(''));
    const { exit, complaint } = await other.ended;
    const calls = bench.callsOf('hatchback').length;
    expect(exit).toBe(3);
    expect(calls).toBeLessThan(20);
    expect(complaint).toBe(
      `countback: nobody reads the answers any more; stopped after call ${calls}, the rest was not taken\n`,
    );
  });
});

describe('take on a disk that takes no more', () => {
  it('[D5] answers NOT SAVED from the first call on that was not, takes no further one, and ends with 3', async () => {
    begun();
    // A limit on the size of files, in units of 512 bytes, stands for the full disk.
    const input = Array.from({ length: 30 }, (_, i) => `off ${i + 2}\n`).join('');
    const { status, stdout } = inShell('ulimit -f 6; exec "$@"', input);
    const answers = stdout.split(/\n(?! {7})/).filter(Boolean);
    const saved = answers.filter((answer) => / off, to tray 1$/.test(answer));
    const unsaved = answers.slice(saved.length);
    expect(status).toBe(3);
    expect(answers).toHaveLength(30);
    expect(saved.length).toBeGreaterThan(3);
    expect(unsaved.length).toBeGreaterThan(3);
    for (const answer of unsaved)
      expect(answer).toMatch(
        /^ {3}no {2}off \d+\n {7}NOT SAVED: .*: the file may not grow further .*; mend it, and say it again$/,
      );
    expect(bench.callsOf('hatchback').length).toBe(2 + saved.length);
    expect(await take(`off ${saved.length + 2}\n`)).toMatchObject({ exit: 0 });
  });
});

describe('take beside broken settings and plans', () => {
  it('takes the lines, and tells what is left out and where', async () => {
    begun();
    const plans = join(bench.dataDir, 'plans');
    mkdirSync(join(plans, 'folder.json'), { recursive: true });
    writeFileSync(join(plans, 'broken.json'), '{ "countback": "plan", ]');
    writeFileSync(join(plans, 'steering.json'), '{ "countback": "plan", "\\u001b[31m": 1 }');
    writeFileSync(join(bench.dataDir, 'settings.json'), '{ "trays": ["\\u001b[2J/"] }');
    const { exit, out, complaint } = await take('off 2\n');
    expect({ exit, out }).toEqual({ exit: 0, out: '    3  cam cover 2 off, to tray 1\n' });
    expect(complaint).toMatch(steersNothing);
    const told = complaint.trimEnd().split('\n');
    expect(told).toHaveLength(4);
    expect(told[0]).toMatch(
      /settings\.json, trays\[0\]: .*; put it right and start again; until then none of it holds: N·m, km and °C are taken$/,
    );
    expect(told[1]).toMatch(
      /broken\.json: this is not JSON in line 1, column 24; .*; the plan is left out until then$/,
    );
    expect(told[2]).toMatch(/folder\.json: this is a folder \(EISDIR\); .*left out until then$/);
    expect(told[3]).toMatch(/steering\.json: version: .*left out until then$/);
    expect(readFileSync(join(bench.dataDir, 'settings.json'), 'utf8')).toContain('2J');
  });
});
