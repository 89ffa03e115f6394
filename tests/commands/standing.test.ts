// standing and sheet, seen from a shell: what they print, where they write, and how they end.
import { execFileSync } from 'node:child_process';
import { constants, existsSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type Bench, benchWithJob, newBench } from './run.ts';

const finished = fileURLToPath(new URL('../../demo-data/van-thermostat.countback.jsonl', import.meta.url));
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
const missing = () => `countback: there is no job "nowhere"; there is "hatchback" (${bench.fileOf('nowhere')})\n`;

describe('standing', () => {
  it('[X5] ends with 1 while anything is open, and names every place with the next call', async () => {
    const { exit, out, complaint } = await bench.run(['standing', 'hatchback']);
    expect({ exit, complaint }).toEqual({ exit: 1, complaint: '' });
    const [head, ...lines] = out.trimEnd().split('\n');
    const points = lines.filter((line) => line.startsWith('- '));
    expect(lines.slice(points.length)).toContain('not asked: check rotation (no belt or chain drive was declared)');
    expect(lines.filter((line) => line.startsWith('not asked: '))).toHaveLength(lines.length - points.length);
    expect(head).toBe(`NOT RELEASED, ${points.length} open points`);
    expect(points.length).toBeGreaterThan(3);
    for (const point of points) expect(point).toMatch(/^- .+: .+ -> .+$/);
    expect(points[0]).toContain('cam cover 1: off');
  });

  it.each([['standing'], ['sheet']])(
    '%s says what is wrong with the settings, and goes on with the usual ones',
    async (command) => {
      const well = await bench.run([command, 'hatchback']);
      writeFileSync(join(bench.dataDir, 'settings.json'), '{"trays": ["1"');
      const { exit, out, complaint } = await bench.run([command, 'hatchback']);
      expect({ exit, out }).toEqual({ exit: well.exit, out: well.out });
      expect(complaint).toMatch(/^countback: .*settings\.json, line 1, column 15: this is no JSON from here on; .*\n$/);
    },
  );
  it("[X4] goes by the workshop's own intervals", async () => {
    const settings = join(bench.dataDir, 'settings.json');
    writeFileSync(settings, JSON.stringify({ intervals: { 'valve clearance': { months: 48 } } }));
    await bench.run(['take', 'hatchback'], { input: 'service valve clearance\nservice done valve clearance\n' });
    expect((await bench.run(['standing', 'hatchback'])).out).toContain('next due, not said: due valve clearance');
  });

  it('finds a job by what it is called on the shelf, where one alone is called so', async () => {
    const near = (await bench.run(['standing', 'hatchbac'])).complaint;
    expect(near).toContain('there is no job "hatchbac", perhaps "hatchback"; there is no other (');
    await bench.run(['take', 'red', '--new'], { input: 'job "red estate"\narea lid\noff 1\n' });
    expect((await bench.run(['standing', 'red estate'])).out).toContain('- lid 1: off');
    expect((await bench.run(['verify', 'red estate'])).out).toMatch(/^UNALTERED: 2 calls/);
    await bench.run(['take', 'other', '--new'], { input: 'job "red estate"\n' });
    const { complaint } = await bench.run(['standing', 'red estate']);
    expect(complaint).toContain('there is no job "red estate"');
  });

  it('[K4 X5] leads from a bolt in a tray to the count of its area, not to a neighbour that is only slack', async () => {
    await bench.run(['take', 'hatchback'], { input: 'slack 2\n' });
    const { out } = await bench.run(['standing', 'hatchback']);
    expect(out).toContain('- cam cover 1: off; its holes are counted first -> holes … in cam cover\n');
    expect(out).toContain('- cam cover 2: slack -> tight cam cover 2 pass snug\n');
    await bench.run(['take', 'hatchback'], { input: 'tight cam cover 2 pass snug\n' });
    const snug = await bench.run(['standing', 'hatchback']);
    expect(snug.out).toContain('- cam cover 2: snug -> tight cam cover 2 pass final\n');
  });

  it('[X4] names what comes round again and nobody said when, until it is said', async () => {
    const belt = 'part off timing belt held by nothing\nbox new belt for timing belt\nrenewed timing belt\n';
    await bench.run(['take', 'hatchback'], { input: belt });
    const unsaid = 'next due, not said: due timing belt on DATE at DISTANCE\n';
    expect((await bench.run(['standing', 'hatchback'])).out).toContain(unsaid);
    await bench.run(['take', 'hatchback'], { input: 'due timing belt at 200000\n' });
    expect((await bench.run(['standing', 'hatchback'])).out).not.toContain('next due');
  });
  it('[X1] ends with 0 for a job that may leave', async () => {
    expect(await bench.run(['standing', finished])).toMatchObject({ exit: 0, complaint: '' });
    const { exit, out } = await bench.run(['standing', finished, '--json']);
    expect(exit).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ mayLeave: true, open: [] });
  });

  it('[X1 D2] is no answer that the car may leave where the end of the file is cut off', async () => {
    const whole = readFileSync(finished);
    const cut = bench.fileOf('cut');
    writeFileSync(cut, whole.subarray(0, whole.length - 60));
    // What is left may well have nothing open: the release was the last line.
    const { exit, out, complaint } = await bench.run(['standing', 'cut']);
    expect(exit).toBe(1);
    expect(out).toMatch(/^NOT SURE: the last line was half written and is left out: \d+ bytes/);
    expect(complaint).toContain('half written');
    const data = await bench.run(['standing', 'cut', '--json']);
    expect(data.exit).toBe(1);
    expect(JSON.parse(data.out)).toMatchObject({ mayLeave: false, fileEnd: expect.stringContaining('half written') });
  });

  it('names the jobs there are where there is none of that name, what is called alike first', async () => {
    for (const job of ['grey van', 'blue four']) await bench.run(['take', job, '--new'], { input: 'area sump\n' });
    const next = async (named: string) => (await bench.run(['standing', named])).complaint;
    expect(await next('blue')).toContain('there is "blue four", ');
    expect(await next('gray van')).toContain('no job "gray van", perhaps "grey van"; there is "grey van", ');
    expect(await next('hatchbak')).toContain('no job "hatchbak", perhaps "hatchback"; there is "hatchback", ');
    const { complaint } = await bench.run(['verify', 'gray van']);
    expect(complaint).toContain('perhaps "grey van"');
    expect(complaint).not.toContain('--new');
  });

  it('gives the same as data', async () => {
    const { exit, out } = await bench.run(['standing', 'hatchback', '--json']);
    expect(exit).toBe(1);
    const said = JSON.parse(out) as { open: { next: string }[]; totals: unknown; notAsked: unknown[] };
    expect(said).toMatchObject({ job: 'hatchback', mayLeave: false, totals: { off: 1 } });
    expect(said.open[0]).toEqual({
      code: expect.any(String),
      at: 'hole:cam cover/1',
      because: expect.any(String),
      next: expect.any(String),
    });
    const asText = await bench.run(['standing', 'hatchback']);
    expect(asText.out.trimEnd().split('\n')).toHaveLength(said.open.length + said.notAsked.length + 1);
    expect(said.notAsked).toContainEqual({ what: 'check rotation', because: 'no belt or chain drive was declared' });
  });

  it('lists by service what is still to do, as text and as data', async () => {
    const input = 'job "grey van"\nplan "front brakes" for front pads\narea "right front wheel"\noff\nservice wash\n';
    await bench.run(['take', 'van', '--new'], { input });
    const { exit, out, complaint } = await bench.run(['standing', 'van', '--by-service']);
    expect({ exit, complaint }).toEqual({ exit: 1, complaint: '' });
    const lines = out.trimEnd().split('\n');
    expect(lines[0]).toMatch(/^service +front pads +\(8 to take off, 1 to fit\)$/);
    expect(lines).toContainEqual(expect.stringMatching(/^ {2}take off +right caliper: off /));
    expect(lines).toContainEqual(expect.stringMatching(/^ {2}fit +right front wheel: 4 off$/));
    expect(lines).toContainEqual(expect.stringMatching(/^service +wash +\(no plan says what it takes off\)$/));
    expect(lines).toContainEqual(expect.stringMatching(/^buy +.*pad.*to buy\)$/));
    expect(lines).toContainEqual(expect.stringMatching(/^mind +On stands/));
    const asData = JSON.parse((await bench.run(['standing', 'van', '--by-service', '--json'])).out);
    expect(asData.services.map((one: { service: string }) => one.service)).toEqual(['front pads', 'wash']);
    expect(asData.newParts[0]).toMatchObject({ bought: 0 });
  });

  it('says so where nothing is left to do by service', async () => {
    const none = 'nothing is left to do by service';
    expect(await bench.run(['standing', finished, '--by-service'])).toMatchObject({ exit: 0, out: `${none}\n` });
    await bench.run(['take', 'van', '--new'], { input: 'job "grey van"\n' });
    const { exit, out } = await bench.run(['standing', 'van', '--by-service']);
    expect(exit).toBe(1);
    expect(out).toMatch(new RegExp(`^${none}; without --by-service: what else is open, \\d+\n$`));
  });

  it('ends with 2 for a job that is not there, and with 64 for what it does not know', async () => {
    expect(await bench.run(['standing', 'nowhere'])).toEqual({ exit: 2, out: '', complaint: missing() });
    for (const args of [[], ['hatchback', 'van'], ['hatchback', '--text']]) {
      const { exit, out, complaint } = await bench.run(['standing', ...args]);
      expect({ exit, out }).toEqual({ exit: 64, out: '' });
      expect(complaint).toMatch(/^countback: .*standing JOB \[--by-service\] \[--json\]\n$/);
    }
  });

  it('looks at a job that another program has, and leaves nothing beside it', async () => {
    const other = bench.begin(['take', 'hatchback']);
    other.type('off 2\n');
    await other.says('cam cover 2 off');
    const before = readdirSync(join(bench.dataDir, 'jobs')).sort();
    const { exit, out } = await bench.run(['standing', 'hatchback']);
    expect(exit).toBe(1);
    expect(out).toContain('cam cover 2: off');
    expect(readdirSync(join(bench.dataDir, 'jobs')).sort()).toEqual(before);
    other.child.stdin?.end();
    expect((await other.ended).exit).toBe(0);
  });
});

describe('sheet', () => {
  const printed = async () => (await bench.run(['sheet', 'hatchback', '--text'])).out;
  /** The moment it was printed stands on it. */
  const undated = (text: string) => text.replaceAll(/\d\d:\d\d/g, '');
  const sheetTo = (file: string, ...more: string[]) => bench.run(['sheet', 'hatchback', '-o', file, ...more]);

  it('prints the owner\u2019s copy, as text without being asked; the workshop\u2019s where that is asked for', async () => {
    const { exit, out, complaint } = await bench.run(['sheet', 'hatchback']);
    expect({ exit, complaint }).toEqual({ exit: 0, complaint: '' });
    expect(out).toMatch(/^JOB SHEET .*owner's copy\n/);
    expect(out.endsWith('\n')).toBe(true);
    expect(undated(out)).toBe(undated(await printed()));
    expect((await bench.run(['sheet', 'hatchback', '--workshop'])).out).toMatch(/^JOB SHEET .*workshop/);
  });

  it('writes it into a new file, and says whose copy, in which form, and how far it goes', async () => {
    const out = "sheet.txt: the owner's copy, as text, after call 2\n";
    expect(await sheetTo('sheet.txt')).toEqual({ exit: 0, out, complaint: '' });
    const written = readFileSync(join(bench.folder, 'sheet.txt'), 'utf8');
    expect(undated(written)).toBe(undated(await printed()));
    expect(readdirSync(bench.folder).sort()).toEqual(['data', 'sheet.txt']);
  });

  it('writes over nothing, unless forced', async () => {
    const path = join(bench.folder, 'sheet.txt');
    writeFileSync(path, 'mine');
    expect(await sheetTo('sheet.txt')).toEqual({
      exit: 2,
      out: '',
      complaint: 'countback: sheet.txt: this is there already; choose another name, or add --force\n',
    });
    expect(readFileSync(path, 'utf8')).toBe('mine');
    const out = "sheet.txt: the owner's copy, as text, after call 2\n";
    expect(await sheetTo('sheet.txt', '--force')).toEqual({ exit: 0, out, complaint: '' });
    expect(readFileSync(path, 'utf8')).toMatch(/^JOB SHEET/);
  });

  it('forced, writes through a link and into a pipe, and leaves both what they are', async () => {
    const path = join(bench.folder, 'sheet.txt');
    writeFileSync(path, 'mine');
    symlinkSync(path, join(bench.folder, 'link.txt'));
    expect((await sheetTo('link.txt', '--force')).exit).toBe(0);
    expect(readFileSync(path, 'utf8')).toMatch(/^JOB SHEET/);
    // A pipe of the test's own: were it replaced by a file, no device of the machine would suffer.
    const pipe = join(bench.folder, 'pipe');
    execFileSync('mkfifo', [pipe]);
    const reader = open(pipe, constants.O_RDONLY | constants.O_NONBLOCK);
    expect((await sheetTo('pipe', '--force')).exit).toBe(0);
    const { buffer, bytesRead } = await (await reader).read(Buffer.alloc(100));
    await (await reader).close();
    expect(buffer.toString('utf8', 0, bytesRead)).toMatch(/^JOB SHEET/);
    expect(statSync(pipe).isFIFO()).toBe(true);
  });

  it('says what is wrong with the place it is to be written to, and makes nothing', async () => {
    const nowhere = await sheetTo('no/sheet.txt');
    expect(nowhere).toMatchObject({ exit: 2, out: '' });
    expect(nowhere.complaint).toMatch(/^countback: no\/sheet\.txt: there is no such file or folder \(ENOENT\); .*\n$/);
    expect((await sheetTo('data')).complaint).toBe('countback: data: this is a folder; name a file in it\n');
    const folder = await sheetTo('data', '--force');
    expect(folder.complaint).toMatch(/^countback: data: this is a folder; name a file in it\n$/);
    const none = await bench.run(['sheet', 'hatchback', '-o']);
    expect(none).toMatchObject({ exit: 64, out: '' });
    expect(none.complaint).toMatch(/^countback: option -o wants a value; sheet JOB .*\n$/);
    expect(existsSync(join(bench.folder, 'no'))).toBe(false);
  });

  it('ends with 2 for a job that is not there, and with 64 for what it does not know', async () => {
    expect(await bench.run(['sheet', 'nowhere'])).toEqual({ exit: 2, out: '', complaint: missing() });
    for (const args of [[], ['hatchback', 'van'], ['hatchback', '--pdf'], ['hatchback', '--force=yes']]) {
      const { exit, out, complaint } = await bench.run(['sheet', ...args]);
      expect({ exit, out }).toEqual({ exit: 64, out: '' });
      expect(complaint).toMatch(/^countback: .*sheet JOB \[--text \| --html \| --csv\] .*\n$/);
    }
  });
});
