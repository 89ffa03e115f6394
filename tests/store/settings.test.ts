// Settings: defaults where there is no file, one clear line for each fault, and a broken file left as it is.
import { expect, it } from 'vitest';
import { whereJsonBreaks } from '../../src/store/json-place.ts';
import { defaultSettings, openSettings, type Settings } from '../../src/store/settings.ts';
import { diskDouble } from './disk-double.ts';

const path = '/settings.json';

function diskSaying(text: string) {
  const disk = diskDouble(['/']);
  disk.put(path, Buffer.from(text));
  return disk;
}
const faultsOf = async (value: unknown) => {
  const disk = diskSaying(JSON.stringify(value));
  const { faults, settings } = await openSettings(path, disk);
  if (faults.length > 0) expect(settings()).toEqual(defaultSettings());
  return faults.map(({ where, what }) => `${where.replace(`${path}, `, '')}: ${what}`);
};

const grey = {
  product: 'grey',
  kind: 'moisture',
  skinMinutes: 10,
  runHours: 4,
  fullHours: 24,
  labelCelsius: 23,
  labelHumidityPct: 50,
  lowestCelsius: 5,
} as const;
const mine: Settings = {
  name: 'Mo',
  trays: ['left', 'right'],
  sounds: false,
  colours: false,
  units: { distance: 'mi', temperature: 'F', torque: 'lbf ft' },
  keypad: true,
  keys: [{ call: 'off', key: 'j', on: 'strip' }],
  pedals: { again: 'f9' },
  intervals: { coolant: { months: 48, distance: { distance: 60_000, unit: 'km' } } },
  sealants: [grey],
};

it('a missing file means the defaults, and saving makes it', async () => {
  const disk = diskDouble(['/']);
  const settings = await openSettings(path, disk);
  expect(settings.settings()).toEqual(defaultSettings());
  expect(settings.faults).toEqual([]);
  expect(await settings.save(mine)).toBeUndefined();
  expect(await settings.save({ ...mine, sounds: true })).toBeUndefined();
  expect((await openSettings(path, disk)).settings()).toEqual({ ...mine, sounds: true });
  expect(disk.names()).toEqual([path]);
});

it('says one clear line for each fault, naming its place', async () => {
  expect(
    await faultsOf({
      trays: ['1', 2, 'a/b'],
      sounds: 'loud',
      paint: 'blue',
      intervals: { coolant: {} },
      sealants: [
        { ...grey, kind: 'glue', skinMinutes: -1, shade: 'red' },
        { product: 'black', kind: 'dry', labelCelsius: 23 },
      ],
    }),
  ).toEqual([
    'trays[1]: this must be a text, not 2',
    'trays[2]: a name has no "/", ":" or control characters',
    'sounds: this must be true or false, not "loud"',
    'intervals.coolant: months, a distance, or both',
    'sealants[0].kind: this must be one of moisture, anaerobic, non-setting, dry, not "glue"',
    'sealants[0].skinMinutes: -1 is too little: more than 0',
    'sealants[0].shade: there is no such setting',
    'sealants[1].labelHumidityPct: this is missing',
    'paint: there is no such setting',
  ]);
  expect(await faultsOf([])).toEqual([`${path}: this must be a set of fields, not a list`]);
});

it('says which setting was perhaps meant, and which tray is there twice beside another fault', async () => {
  expect(await faultsOf({ unit: {}, units: { distanse: 'mi' }, trays: ['1', '2', '1'] })).toEqual([
    'trays[2]: "1" is there twice',
    'units.distanse: there is no such setting, perhaps "distance"',
    'unit: there is no such setting, perhaps "units"',
  ]);
});

it('a sealant that cures has the times that its cure is reckoned from', async () => {
  const { skinMinutes, runHours, fullHours, ...bare } = grey;
  expect(await faultsOf({ sealants: [bare] })).toEqual([
    'sealants[0].skinMinutes: a moisture-curing product needs its skin time',
    'sealants[0].fullHours: a product that cures needs one time of its label',
  ]);
  expect(await faultsOf({ sealants: [{ ...bare, kind: 'anaerobic', runHours }] })).toEqual([]);
  expect(await faultsOf({ sealants: [{ ...bare, kind: 'non-setting' }] })).toEqual([]);
  expect(await faultsOf({ sealants: [grey, grey] })).toEqual(['sealants[1].product: "grey" is in the list twice']);
  expect(skinMinutes + fullHours).toBeGreaterThan(0);
});

it('[D4] a file that is no JSON is told with line and column, and never written over', async () => {
  const text = '{\n  "name": "Mo",\n  "trays": ["1" "2"]\n}\n';
  const disk = diskSaying(text);
  const settings = await openSettings(path, disk);
  expect(settings.faults.map((f) => f.where)).toEqual([`${path}, line 3, column 17`]);
  expect(settings.settings()).toEqual(defaultSettings());
  expect(await settings.save(mine)).toMatchObject({ kind: 'bad-settings' });
  expect(disk.bytesAt(path)?.toString()).toBe(text);
  expect(disk.names()).toEqual([path]);
});

it('[D4] a file changed by another hand, made meanwhile or gone is not written over', async () => {
  const disk = diskSaying('{}');
  const settings = await openSettings(path, disk);
  disk.put(path, Buffer.from('{"name":"Jo"}'));
  expect(await settings.save(mine)).toMatchObject({ kind: 'changed-underneath' });
  expect(settings.settings()).toEqual(defaultSettings());
  expect(disk.bytesAt(path)?.toString()).toBe('{"name":"Jo"}');

  const empty = diskDouble(['/']);
  const fresh = await openSettings(path, empty);
  empty.put(path, Buffer.from('{}'));
  expect(await fresh.save(mine)).toMatchObject({ kind: 'changed-underneath' });
});

it('[D2] a power cut at any operation of saving leaves the old settings or the new', async () => {
  const disk = diskSaying(JSON.stringify({ name: 'before' }));
  const settings = await openSettings(path, disk);
  const left: (string | undefined)[] = [];
  let seed = 1;
  disk.watching = () => {
    for (let i = 0; i < 8; i++, seed++) left.push(disk.cut(seed).bytesAt(path)?.toString());
  };
  await settings.save({ ...mine, name: 'after' });
  disk.watching = undefined;
  const names = left.map((text) => (JSON.parse(text ?? 'null') as { name: string }).name);
  expect(new Set(names)).toEqual(new Set(['before', 'after']));
  expect((await openSettings(path, disk.cut(0))).settings().name).toBe('after');
});

it('[D5] a full disk, a short write, a failed fsync or rename while saving: told, and the old file is whole', async () => {
  for (const [name, failure] of [
    ['write', { code: 'ENOSPC', afterBytes: 9 }],
    ['write', { afterBytes: 0 }],
    ['sync', { code: 'EIO' }],
    ['rename', { code: 'EROFS' }],
  ] as const) {
    const disk = diskSaying('{"name":"before"}');
    const settings = await openSettings(path, disk);
    disk.failing = (op) => (op.name === name ? failure : undefined);
    expect(await settings.save(mine)).toHaveProperty('kind');
    expect(settings.settings().name).toBe('before');
    disk.failing = undefined;
    expect(disk.bytesAt(path)?.toString()).toBe('{"name":"before"}');
    expect(disk.names()).toEqual([path]);
    expect(await settings.save(mine)).toBeUndefined();
  }
  const disk = diskDouble(['/']);
  disk.failing = (op) => (op.name === 'write' ? { afterBytes: 5 } : undefined);
  expect(await (await openSettings(path, disk)).save(mine)).toBeUndefined();
  disk.failing = undefined;
  expect((await openSettings(path, disk)).settings()).toEqual(mine);
});

it('a mark of byte order before the text is no fault, and control characters in it go no further', async () => {
  const settings = await openSettings(path, diskSaying('\u{FEFF}{"name":"M\\u001b[31mo"}'));
  expect(settings.faults).toEqual([]);
  expect(settings.settings().name).toBe('Mo');
});

it('finds the place where a text stops being JSON, exactly where JSON.parse finds it none', () => {
  const texts: [string, number, number][] = [
    ['', 1, 1],
    ['{"a":1,}', 1, 8],
    ['[1,2', 1, 5],
    ['[1,,2]', 1, 4],
    ['{"a" 1}', 1, 6],
    ['{"a":tru}', 1, 6],
    ['{"a":01}', 1, 6],
    ['[1] 2', 1, 5],
    ['{\n"a": "b\n"}', 2, 6],
    ["{'a':1}", 1, 2],
    ['{a:1}', 1, 2],
    ['[1.]', 1, 2],
    ['"\\x"', 1, 1],
    ['[[[]]', 1, 6],
    ['}', 1, 1],
  ];
  for (const [text, line, column] of texts) {
    expect(() => JSON.parse(text), text).toThrow();
    expect(whereJsonBreaks(text), text).toEqual({ line, column });
  }
  const good = [
    '{}',
    ' [ ] ',
    '{"a":[1,-2.5e+3,true,null,{"b":"\\u00e9\\n\u007f"}],"c":{}}',
    '"x"',
    '0',
    '[[[],[]],{}]',
  ];
  for (const text of good) {
    JSON.parse(text);
    expect(whereJsonBreaks(text), text).toBeUndefined();
  }
});
