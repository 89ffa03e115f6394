// Where job files lie, what a name or a path means, and what is on the shelf.
import { expect, it } from 'vitest';
import { isFault } from '../../src/store/fault.ts';
import { createJob } from '../../src/store/open-job.ts';
import { type JobPlace, jobPlace, placesOn, slugOf } from '../../src/store/places.ts';
import { jobsIn } from '../../src/store/shelf.ts';
import { diskDouble } from './disk-double.ts';
import { jobOf, linesTo, newJobOn, openOn } from './practice.ts';

const linux = { platform: 'linux', home: '/home/mo', env: {} };
const places = placesOn(linux);
const placeOf = (named: string): JobPlace => {
  const place = jobPlace(places, named);
  if (isFault(place)) throw place;
  return place;
};

it('finds the data folder by the convention of each platform', () => {
  expect(placesOn(linux).jobs).toBe('/home/mo/.local/share/countback/jobs');
  expect(placesOn({ ...linux, env: { XDG_DATA_HOME: '/xdg' } }).jobs).toBe('/xdg/countback/jobs');
  expect(placesOn({ ...linux, env: { XDG_DATA_HOME: 'not/absolute' } }).data).toBe('/home/mo/.local/share/countback');
  const mac = { platform: 'darwin', home: '/Users/mo', env: { XDG_DATA_HOME: '/xdg' } };
  expect(placesOn(mac).settings).toBe('/Users/mo/Library/Application Support/countback/settings.json');
  const windows = { platform: 'win32', home: 'C:\\Users\\mo', env: { APPDATA: 'D:\\Roaming' } };
  expect(placesOn(windows).jobs).toBe('D:\\Roaming\\countback\\jobs');
  expect(placesOn({ ...windows, env: {} }).jobs).toBe('C:\\Users\\mo\\AppData\\Roaming\\countback\\jobs');
});

it('lets COUNTBACK_DATA override the convention on every platform', () => {
  for (const platform of ['linux', 'darwin', 'freebsd'])
    expect(placesOn({ platform, home: '/h', env: { COUNTBACK_DATA: '/bench', XDG_DATA_HOME: '/x' } }).data).toBe(
      '/bench',
    );
  const env = { COUNTBACK_DATA: 'E:\\bench', APPDATA: 'D:\\Roaming' };
  expect(placesOn({ platform: 'win32', home: 'C:\\', env }).data).toBe('E:\\bench');
});

it('never lets a name lead out of the folder of jobs', () => {
  const names = [
    '..',
    '.',
    '…',
    '. .',
    '..\u0000',
    'C:',
    '~',
    '$HOME',
    '%APPDATA%',
    '-rf',
    'a\u202eb',
    '\u001b[2J',
    'aux',
    'x..y',
    '*',
  ];
  for (const name of names) {
    const place = jobPlace(places, name);
    if (isFault(place)) expect(place.kind).toBe('bad-name');
    else expect(place.path).toMatch(/^\/home\/mo\/\.local\/share\/countback\/jobs\/[\p{L}\p{N}-]+\.countback\.jsonl$/u);
  }
  expect(jobPlace(places, '..')).toMatchObject({ kind: 'bad-name' });
  expect(slugOf('AUX')).toBe('job-aux');
  expect(jobPlace(places, 'x'.repeat(61))).toMatchObject({ kind: 'bad-name' });
});

it('makes one file name of a job’s name, the same each time', () => {
  expect(slugOf('  Blue Estate: belt, 2nd try ')).toBe('blue-estate-belt-2nd-try');
  expect(slugOf('Größter Käfer')).toBe('großter-kafer');
  expect(slugOf('青い車 1')).toBe('青い車-1');
  expect(placeOf('Blue Estate')).toEqual({ path: `${places.jobs}/blue-estate.countback.jsonl`, job: 'Blue Estate' });
  expect(placeOf('blue-estate').path).toBe(placeOf('Blue Estate').path);
});

it('takes a path wherever a job’s name is taken', () => {
  expect(placeOf('/mnt/stick/van.countback.jsonl')).toEqual({ path: '/mnt/stick/van.countback.jsonl', job: 'van' });
  expect(placeOf('/mnt/stick/van')).toEqual({ path: '/mnt/stick/van', job: 'van' });
  expect(placeOf('van.jsonl').path).toBe(`${process.cwd()}/van.jsonl`);
  expect(jobPlace(places, '/\u0000')).toMatchObject({ kind: 'bad-name' });
});

it('lists the shelf by headers alone, the latest first, and tells what is wrong with the others', async () => {
  const disk = diskDouble(['/', '/jobs', '/jobs/copies', '/jobs/folder.countback.jsonl']);
  expect(await jobsIn(disk, '/nowhere')).toEqual([]);
  await createJob('/jobs/a.countback.jsonl', 'first', disk);
  disk.put('/jobs/b.countback.jsonl', Buffer.from('rubbish\n'));
  disk.put('/jobs/c.countback.jsonl', Buffer.alloc(0));
  disk.put('/jobs/d.countback.jsonl', Buffer.from('{"countback":"job","format":9}\n'));
  disk.put('/jobs/notes.txt', Buffer.from('x'));
  disk.makeOther('/jobs/pipe.countback.jsonl');
  const read: number[] = [];
  disk.watching = (op, when) => {
    if (op.name === 'read' && when === 'before') read.push(1);
  };
  const shelf = await jobsIn(disk, '/jobs');
  const told = shelf.map((on) => [on.path.slice(6, -16), 'job' in on ? on.job : on.fault.kind]);
  expect(Object.fromEntries(told)).toEqual({
    a: 'first',
    b: 'foreign',
    c: 'empty',
    d: 'newer',
    folder: 'foreign',
    pipe: 'foreign',
  });
  // The empty one has nothing to be read, folder and pipe are not opened.
  expect(read.length).toBe(3);
});

it('[D2] brings the copy of the day up to date by more of the same, and writes over nothing else', async () => {
  const disk = await newJobOn();
  const copy = '/jobs/copies/blue.2026-03-04.countback.jsonl';
  const openAndCall = async () => {
    const job = await openOn(disk, { now: () => new Date(2026, 2, 4, 9) });
    const n = job.lines().length + 1;
    await job.append(linesTo(n)[n - 1] ?? { n, said: '' });
    await job.close();
  };
  await openAndCall();
  const afterOne = disk.bytesAt('/jobs/blue.countback.jsonl');
  // Also when it is closed: a job of one day has a copy of all that was called.
  expect(disk.bytesAt(copy)).toEqual(afterOne);
  await openAndCall();
  expect(disk.bytesAt(copy)).toEqual(disk.bytesAt('/jobs/blue.countback.jsonl'));
  const other = Buffer.concat([afterOne?.subarray(0, -2) ?? Buffer.alloc(0), Buffer.from('!\n')]);
  disk.put(copy, other);
  await openAndCall();
  // What says otherwise makes way for what the job is now, and stays.
  expect(disk.bytesAt(copy)).toEqual(disk.bytesAt('/jobs/blue.countback.jsonl'));
  expect(disk.bytesAt('/jobs/copies/blue.2026-03-04-090000-before-cut.countback.jsonl')).toEqual(other);
});

it('[D2] makes one dated copy a day, at opening and at closing, and keeps the last seven', async () => {
  const disk = await newJobOn();
  disk.put('/jobs/other.countback.jsonl', Buffer.from('x'));
  const copies = () => disk.names().filter((name) => name.startsWith('/jobs/copies/'));
  const kept: Buffer[] = [];
  for (let day = 1; day <= 10; day++)
    for (const hour of [8, 20]) {
      const job = await openOn(disk, { now: () => new Date(2026, 1, 20 + day, hour) });
      const n = job.lines().length + 1;
      await job.append(linesTo(n)[n - 1] ?? { n, said: '' });
      await job.close();
      if (hour === 20) kept.push(disk.bytesAt('/jobs/blue.countback.jsonl') ?? Buffer.alloc(0));
      if (day === 1) {
        disk.put('/jobs/copies/blue.notes.countback.jsonl', Buffer.from('mine'));
        disk.put('/jobs/copies/blue.2.2026-01-01.countback.jsonl', Buffer.from('of another job'));
      }
    }
  const days = ['02-24', '02-25', '02-26', '02-27', '02-28', '03-01', '03-02'];
  expect(copies()).toEqual([
    '/jobs/copies/blue.2.2026-01-01.countback.jsonl',
    ...days.map((day) => `/jobs/copies/blue.2026-${day}.countback.jsonl`),
    '/jobs/copies/blue.notes.countback.jsonl',
  ]);
  for (const [i, day] of days.entries())
    expect(disk.bytesAt(`/jobs/copies/blue.2026-${day}.countback.jsonl`)).toEqual(kept[i + 3]);
});

it('[D4] a refused file is not copied, and looking makes no copy', async () => {
  const { bytes } = await jobOf(2);
  const disk = diskDouble();
  disk.put('/jobs/blue.countback.jsonl', bytes);
  await openOn(disk, { look: true });
  disk.put('/jobs/bad.countback.jsonl', bytes.fill(0, 20, 30));
  await expect(openOn(disk, { path: '/jobs/bad.countback.jsonl' })).rejects.toMatchObject({ kind: 'damaged' });
  expect(disk.names()).toEqual(['/jobs/bad.countback.jsonl', '/jobs/blue.countback.jsonl']);
});
