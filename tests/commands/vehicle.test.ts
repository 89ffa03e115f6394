// What is remembered of a vehicle: kept when a job is closed, told when the next one opens on it, taken out as a whole,
// and forgotten so that nothing of it is left.
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { type Bench, newBench, steersNothing } from './run.ts';

let bench: Bench;
beforeEach(() => {
  bench = newBench();
});
afterEach(() => bench.remove());

const opening = (label: string, registration?: string) =>
  `job "${label}"${registration ? ` registration ${registration}` : ''}\n`;
/** A job with something of each sort that is remembered; released it is not. */
const work = `odometer 84210 km
service pump
area mount
bolt hex 14 M10x1.25x60 10.9
off 1
off 2
finding at mount rubber cracked
owner told d6.1 said not this year
declined d6.1 by owner because not this year
due mount bolts on 2027-01-05 at 85000
`;
async function take(job: string, input: string, fresh = true) {
  const ended = await bench.run(['take', job, ...(fresh ? ['--new'] : [])], { input });
  expect(ended).toMatchObject({ exit: 0, complaint: '' });
  return ended;
}
const memoryFile = () => join(bench.dataDir, 'vehicles.json');
const remembered = () =>
  JSON.parse(readFileSync(memoryFile(), 'utf8')) as { vehicles: { label: string; jobs: { job: string }[] }[] };
/** Every file under the data folder that holds these words. */
function filesWith(words: string): string[] {
  const files = readdirSync(bench.dataDir, { recursive: true, withFileTypes: true }).filter((f) => f.isFile());
  return files.map((f) => join(f.parentPath, f.name)).filter((path) => readFileSync(path, 'utf8').includes(words));
}

it('a job that opens on a vehicle that was here is told what was left, due and done', async () => {
  const first = await take('red one', opening('red estate', 'AB-12') + work);
  expect(first.out).not.toContain('here before');
  const { exit, out } = await take('red again', opening('estate, red', 'ab 12'));
  expect(exit).toBe(0);
  expect(out).toMatch(/Mind: here before, 1 job, the last "red one" of \d{4}-\d\d-\d\d at 84210 km/);
  expect(out).toContain('left as it was: area mount: rubber cracked (declined)');
  expect(out).toContain('due: mount bolts 2027-01-05 or at 85000 km');
  const other = await take('blue', opening('red estate', 'CD-34'));
  expect(other.out).not.toContain('here before');
});

it('without a registration the label is what it goes by', async () => {
  await take('van one', `${opening('Long Van')}note squeaks\n`);
  expect((await take('van two', opening('long  van'))).out).toContain('here before, 1 job, the last "van one"');
  expect((await take('van three', opening('long van', 'EF-56'))).out).toContain('here before, 2 jobs');
  expect((await take('short', opening('short van'))).out).not.toContain('here before');
});

it('a registration that is said later is what the vehicle goes by from then on, and tells what was left of it', async () => {
  await take('red one', opening('red estate', 'AB-12') + work);
  await take('other', `${opening('old estate')}note squeaks\n`);
  const { out } = await take('other', 'registration ab 12\n', false);
  expect(out).toMatch(/registration ab 12\. Mind: here before, 1 job, the last "red one"/);
  expect(remembered().vehicles).toMatchObject([
    { registration: 'ab 12', jobs: [{ job: 'red one' }, { job: 'other' }] },
  ]);
  // One that was wrong is said anew; what the job left itself is no news to it.
  const anew = await take('other', 'registration GH 78\n', false);
  expect(anew.out).toBe('    4  registration GH 78\n');
  expect(remembered().vehicles).toMatchObject([
    { registration: 'ab 12', jobs: [{ job: 'red one' }] },
    { label: 'old estate', registration: 'GH 78', jobs: [{ job: 'other' }] },
  ]);
  expect((await bench.run(['sheet', 'other'])).out).toMatch(/^Registration +GH 78$/m);
  expect((await bench.run(['vehicle', 'show', 'GH78'])).out).toContain('other');
});

it('a job gone on with is remembered once, as it stands now; looking at one changes nothing', async () => {
  await take('red one', opening('red estate', 'AB-12'));
  await take('red one', 'odometer 90000 km\n', false);
  expect(remembered().vehicles).toMatchObject([{ jobs: [{ job: 'red one', odometer: { distance: 90000 } }] }]);
  const before = readFileSync(memoryFile());
  await bench.run(['standing', 'red one']);
  await bench.run(['sheet', 'red one']);
  await take('red one', 'area mount\n', false);
  expect(readFileSync(memoryFile()).equals(before)).toBe(true);
});

it('a job is remembered from its opening and its release on, however the program ends', async () => {
  const { type, child, ended } = bench.begin(['take', 'red one', '--new']);
  type(opening('red estate', 'AB-12'));
  await vi.waitFor(() => expect(remembered().vehicles).toMatchObject([{ jobs: [{ standing: 'here' }] }]), 10_000);
  type('tools out\nodometer 5000 km\nrelease by Io\n');
  await vi.waitFor(() => expect(remembered().vehicles).toMatchObject([{ jobs: [{ standing: 'released' }] }]), 10_000);
  child.kill('SIGKILL');
  await ended;
  expect((await bench.run(['vehicle', 'list'])).out).toBe('red estate, AB-12: 1 job\n');
});

it('what an end from outside left unremembered is made up for when the job is closed; what was forgotten stays so', async () => {
  await take('red one', opening('red estate', 'AB-12'));
  const before = readFileSync(memoryFile());
  await take('red one', 'odometer 90000 km\n', false);
  const whole = readFileSync(memoryFile());
  writeFileSync(memoryFile(), before);
  await take('red one', '', false);
  expect(readFileSync(memoryFile()).equals(whole)).toBe(true);
  await bench.run(['vehicle', 'forget', 'AB-12']);
  await take('red one', '', false);
  expect(remembered().vehicles).toEqual([]);
  const shown = await bench.run(['vehicle', 'show', 'AB-12']);
  expect(shown).toMatchObject({ exit: 0, complaint: '' });
  expect(shown.out).toMatch(/^nothing is remembered of it; a call in one of its jobs is remembered anew:\n.*red-one/);
});

it('a job that lies elsewhere is not remembered', async () => {
  await take(join(bench.folder, 'away.countback.jsonl'), opening('red estate', 'AB-12') + work);
  expect(existsSync(memoryFile())).toBe(false);
});

it('show and list tell what is remembered, and who is not known is told', async () => {
  await take('red one', opening('red estate', 'AB-12') + work);
  expect((await bench.run(['vehicle', 'list'])).out).toBe('red estate, AB-12: 1 job\n');
  const { exit, out } = await bench.run(['vehicle', 'show', 'ab12']);
  expect(exit).toBe(0);
  expect(out).toMatch(
    /^red estate, AB-12\n\d{4}-\d\d-\d\d {2}"red one", not released, 84210 km\n {2}service: pump, ordered\n/,
  );
  const nobody = await bench.run(['vehicle', 'show', 'ZZ-1']);
  expect(nobody).toMatchObject({ exit: 2, out: '' });
  expect(nobody.complaint).toContain('no vehicle goes by this registration or label');
  for (const args of [[], ['show'], ['list', 'x'], ['forget'], ['toString', 'x'], ['show', 'a', 'b']])
    expect(await bench.run(['vehicle', ...args])).toMatchObject({ exit: 64 });
});

it('export gives everything of one vehicle and nothing of another', async () => {
  await take('red one', opening('red estate', 'AB-12') + work);
  await take('red two', `${opening('red estate', 'AB-12')}note second visit\n`);
  await take('blue', `${opening('blue estate', 'CD-34')}note secret of blue\n`);
  const { exit, out } = await bench.run(['vehicle', 'export', 'AB-12']);
  expect(exit).toBe(0);
  const all = JSON.parse(out) as {
    remembered: { jobs: unknown[] }[];
    jobs: { job: string; copies: string[]; lines: object[] }[];
  };
  expect(all.remembered).toMatchObject([{ label: 'red estate', jobs: [{ job: 'red one' }, { job: 'red two' }] }]);
  expect(all.jobs.map((j) => j.job).sort()).toEqual(['red one', 'red two']);
  for (const { job, lines, copies } of all.jobs) {
    const slug = job.replace(' ', '-');
    const onDisk = bench.callsOf(slug).map((line) => JSON.parse(line) as { link?: string });
    expect(lines).toEqual(onDisk.map(({ link: _, ...line }) => line));
    expect(copies).toHaveLength(1);
  }
  expect(out).not.toMatch(/blue|CD-34/);
  const file = join(bench.folder, 'all.json');
  expect((await bench.run(['vehicle', 'export', 'AB-12', '-o', file])).exit).toBe(0);
  expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(all);
  expect((await bench.run(['vehicle', 'export', 'AB-12', '-o', file])).exit).toBe(2);
});

it('forget takes it out of the memory, keeps the job files and names them', async () => {
  await take('red one', opening('red estate', 'AB-12') + work);
  await take('blue', opening('blue estate', 'CD-34'));
  const { exit, out } = await bench.run(['vehicle', 'forget', 'AB-12']);
  expect(exit).toBe(0);
  expect(out).toContain(`still tells of it, and a call in it is remembered anew: ${bench.fileOf('red-one')}\n`);
  expect(remembered().vehicles.map((v) => v.label)).toEqual(['blue estate']);
  // Opened and left without a call, it stays forgotten.
  await take('red one', 'area mount\n', false);
  expect(readFileSync(memoryFile(), 'utf8')).not.toMatch(/AB-12|red|rubber/);
  expect((await take('red two', opening('red estate', 'AB-12'))).out).not.toContain('here before');
});

it('forget --with-jobs leaves nothing of it in the data folder, and everything of the others', async () => {
  await take('red one', opening('red estate', 'AB-12') + work);
  await take('red two', opening('red estate', 'AB-12'));
  await take('blue', opening('blue estate', 'CD-34'));
  const copies = join(bench.dataDir, 'jobs', 'copies');
  copyFileSync(bench.fileOf('red-one'), join(copies, 'red-one.2026-02-03.countback.jsonl'));
  copyFileSync(bench.fileOf('red-two'), join(copies, 'red-two.2026-02-03-101010-before-cut.countback.jsonl'));
  // The memory, the two jobs, their copies of the day and these two.
  expect(filesWith('AB-12')).toHaveLength(7);
  const blue = readFileSync(bench.fileOf('blue'));
  const open = await bench.run(['vehicle', 'forget', 'red estate', '--with-jobs']);
  expect(open).toMatchObject({ exit: 2, out: '' });
  expect(open.complaint).toMatch(/: 2 jobs of it are not released, and nothing was deleted; --force deletes /);
  expect(existsSync(bench.fileOf('red-one'))).toBe(true);
  const { exit, out } = await bench.run(['vehicle', 'forget', 'red estate', '--with-jobs', '--force']);
  expect(exit).toBe(0);
  expect(out).toContain(`deleted: ${bench.fileOf('red-one')}\n`);
  expect([...filesWith('AB-12'), ...filesWith('red estate'), ...filesWith('rubber')]).toEqual([]);
  expect(existsSync(bench.fileOf('red-two'))).toBe(false);
  expect(readdirSync(copies)).toEqual([expect.stringMatching(/^blue\./)]);
  expect(readFileSync(bench.fileOf('blue')).equals(blue)).toBe(true);
  expect(await bench.run(['vehicle', 'show', 'AB-12'])).toMatchObject({ exit: 2 });
});

it('says that none is remembered, and what an export holds', async () => {
  expect((await bench.run(['vehicle', 'list'])).out).toBe(
    'no vehicle is remembered yet: one is once a job on it is closed\n',
  );
  await take('red one', opening('red estate', 'AB-12'));
  const file = join(bench.folder, 'AB-12.json');
  expect((await bench.run(['vehicle', 'export', 'AB-12', '-o', file])).out).toBe(`${file}: 1 job\n`);
});

it('two vehicles of one label are not forgotten together, and a job in use not deleted', async () => {
  await take('red one', opening('red estate', 'AB-12'));
  await take('red other', opening('red estate', 'CD-34'));
  const both = await bench.run(['vehicle', 'forget', 'red estate']);
  expect(both).toMatchObject({ exit: 2, out: '' });
  expect(both.complaint).toContain('say which: ');
  const open = bench.begin(['take', 'red one']);
  open.type('note still here\n');
  await open.says('still here');
  const inUse = await bench.run(['vehicle', 'forget', 'AB-12', '--with-jobs', '--force']);
  expect(inUse).toMatchObject({ exit: 2, out: '' });
  expect(existsSync(bench.fileOf('red-one'))).toBe(true);
  expect(remembered().vehicles).toHaveLength(2);
  open.child.stdin?.end();
  await open.ended;
});

it('a broken memory is told, left as it is, and keeps no job from its work', async () => {
  await take('red one', opening('red estate', 'AB-12'));
  writeFileSync(memoryFile(), '{"countback":"vehicles",\n');
  const { exit, complaint } = await bench.run(['take', 'red two', '--new'], { input: opening('red estate', 'AB-12') });
  expect(exit).toBe(0);
  expect(complaint).toMatch(/vehicles\.json, line 2, column 1: this is no JSON from here on; put it right/);
  expect(readFileSync(memoryFile(), 'utf8')).toBe('{"countback":"vehicles",\n');
  expect(await bench.run(['vehicle', 'list'])).toMatchObject({ exit: 2, out: '' });
  writeFileSync(memoryFile(), '{"countback":"vehicles","vehicles":[{"label":"x","jobs":[{"rocket":1}]}]}');
  expect(await bench.run(['vehicle', 'list'])).toMatchObject({ exit: 2, out: '' });
});

it('nothing in the memory steers a terminal', async () => {
  await take('red one', opening('red estate', 'AB-12') + work);
  const evil = JSON.stringify('\u001b[31m\u202e');
  writeFileSync(memoryFile(), readFileSync(memoryFile(), 'utf8').replaceAll('rubber', evil.slice(1, -1)));
  const shown = await bench.run(['vehicle', 'show', 'AB-12']);
  expect(shown.exit).toBe(0);
  expect(shown.out).toMatch(steersNothing);
  expect((await take('red two', opening('red estate', 'AB-12'))).out).toMatch(steersNothing);
});

const unkept = 'countback: what is remembered of this vehicle was not kept: ';
const complaints = (complaint: string): string[] => complaint.split('\n').filter((line) => line !== '');

it('what can not be kept when the job is closed is told in one line, and the job itself is saved', async () => {
  const { says, type, child, ended } = bench.begin(['take', 'red', '--new']);
  type(opening('red estate', 'AB-12'));
  await says('red estate');
  // The vehicle itself is kept at once; what stands in its place then is met at the closing.
  await expect.poll(() => existsSync(memoryFile())).toBe(true);
  rmSync(memoryFile());
  mkdirSync(memoryFile());
  child.stdin?.end('note squeaks\n');
  const { exit, complaint } = await ended;
  expect({ exit, calls: bench.callsOf('red').length }).toEqual({ exit: 0, calls: 2 });
  expect(complaints(complaint)).toEqual([expect.stringContaining(unkept)]);
  expect(complaint).toContain(memoryFile());
});

it('where it could not be read either, both are told, once each; without a call there is nothing to keep', async () => {
  mkdirSync(memoryFile(), { recursive: true });
  const { exit, complaint } = await bench.run(['take', 'red one', '--new'], { input: opening('red estate') });
  expect(exit).toBe(0);
  expect(complaints(complaint)).toEqual([expect.stringContaining(memoryFile()), expect.stringContaining(unkept)]);
  const looked = await bench.run(['take', 'red one'], { input: '' });
  expect(complaints(looked.complaint)).toEqual([expect.not.stringContaining(unkept)]);
});
