// The command plans as a shell runs it: the list, checking plan files, what must come off, the schema for editors.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Bench, newBench, steersNothing } from './run.ts';

const shippedFolder = fileURLToPath(new URL('../../jobs/', import.meta.url));
const shipped = readdirSync(shippedFolder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => join(shippedFolder, name));
const reference = join(shippedFolder, 'inline-four-belt-service.json');

let bench: Bench;
beforeEach(() => {
  bench = newBench();
});
afterEach(() => bench.remove());

const fileOf = (name: string, text: string): string => {
  const path = join(bench.folder, name);
  writeFileSync(path, text);
  return path;
};
type Json = ReturnType<typeof JSON.parse>;
const changed = (change: (plan: Json) => void): string => {
  const plan = JSON.parse(readFileSync(reference, 'utf8'));
  change(plan);
  return JSON.stringify(plan);
};

describe('plans', () => {
  it('lists each plan with its services and how much comes off, those of one own as well', async () => {
    mkdirSync(join(bench.dataDir, 'plans'), { recursive: true });
    const own = changed((plan) => {
      plan.name = 'our own way';
    });
    writeFileSync(join(bench.dataDir, 'plans', 'own.json'), own);
    writeFileSync(join(bench.dataDir, 'plans', 'broken.json'), '{');
    const { exit, out, complaint } = await bench.run(['plans']);
    expect(out).toContain('inline-four belt service\n');
    expect(out).toContain('our own way\n');
    expect(out).toContain('    own.json, of your own\n');
    expect(out).toContain('    inline-four-belt-service.json\n');
    expect(out).toMatch(/To take one on a job: O on the bench, .*\nin a line: plan ".+" for ".+"\n$/);
    expect(out).toContain('    timing belt: 29 fasteners, 2 slackened, 10 parts, 2 connections\n');
    expect(complaint).toMatch(
      /^countback: .*broken\.json: this is not JSON in line 1, column 2; .*; the plan is left out until then\n$/,
    );
    expect(exit).toBe(1);
  });

  it('tells with what must come off which plans were left out', async () => {
    mkdirSync(join(bench.dataDir, 'plans'), { recursive: true });
    writeFileSync(join(bench.dataDir, 'plans', 'broken.json'), '{');
    const { exit, complaint } = await bench.run(['plans', 'need', 'timing belt']);
    expect(exit).toBe(0);
    expect(complaint).toMatch(
      /broken\.json: this is not JSON in line 1, column 2; .*; the plan is left out until then\n$/,
    );
  });

  it('answers what it does not know with one line and 64', async () => {
    const misused = [
      ['plans', 'sideways'],
      ['plans', 'toString'],
      ['plans', '--json'],
      ['plans', '--sideways'],
      ['plans', 'check'],
      ['plans', 'check', reference, '--off', 'x'],
      ['plans', 'check', reference, '--sideways'],
      ['plans', 'need'],
      ['plans', 'need', 'timing belt', '--off'],
      ['plans', 'need', 'timing belt', '--sideways'],
      ['plans', 'schema', 'x'],
      ['plans', 'save'],
      ['plans', 'save', 'a', 'b', '-o', 'x'],
    ];
    for (const [i, { exit, out, complaint }] of (await Promise.all(misused.map((args) => bench.run(args)))).entries()) {
      expect({ args: misused[i], exit, out }).toEqual({ args: misused[i], exit: 64, out: '' });
      expect(complaint).toMatch(/^countback: .+\n$/);
      expect(complaint).toMatch(steersNothing);
    }
  });
});

describe('plans check', () => {
  it('shows how a place is written that is not', async () => {
    const file = fileOf(
      'behind.json',
      changed((plan) => {
        plan.behind[0].behind = ['cam cover'];
      }),
    );
    const { exit, out } = await bench.run(['plans', 'check', file]);
    expect(exit).toBe(1);
    expect(out).toMatch(/behind\[0\]\.behind\[0\]: a place is written with what it is before it: "area:cam cover", /);
  });
  it('finds every plan sound that comes with the program', async () => {
    const { exit, out, complaint } = await bench.run(['plans', 'check', ...shipped]);
    expect({ exit, complaint }).toEqual({ exit: 0, complaint: '' });
    expect(out.trimEnd().split('\n')).toHaveLength(shipped.length);
  });

  it('tells every error of every file with its place, and goes on to the next', async () => {
    const several = fileOf(
      'several.json',
      changed((plan) => {
        plan.services[0].areas.push('gearbox');
        plan.behind[0].behind.push('area:gearbox');
        plan.areas[0].order = '1 3 9';
      }),
    );
    const shape = fileOf(
      'shape.json',
      changed((plan) => {
        plan.areas[1].holes[0].wants.lengthMm = 1e12;
        plan.areas[2].hole = [];
        plan.drives[0].turns = 3;
      }),
    );
    const { exit, out } = await bench.run(['plans', 'check', several, reference, shape]);
    expect(exit).toBe(1);
    const lines = out.trimEnd().split('\n');
    expect(lines.map((line) => line.replaceAll(`${bench.folder}/`, '').split('; ')[0])).toEqual([
      'several.json: services[0].areas[7]: the plan has no area "gearbox"',
      'several.json: behind[0].behind[1]: the plan has no area "gearbox"',
      'several.json: areas[0].order: right front wheel has no hole 9',
      `${reference}: sound: inline-four belt service, services 3, areas 9`,
      expect.stringMatching(/^shape\.json: areas\[1\]\.holes\[0\]\.wants\.lengthMm: .*2000/),
      'shape.json: areas[2].hole: there is no such field, perhaps "holes"',
      expect.stringMatching(/^shape\.json: drives\[0\]\.turns: /),
    ]);
  });

  it('reads heads and threads as the bench does, and only minds what no standard knows', async () => {
    const checked = (name: string, wants: object) => {
      const file = fileOf(
        `${name}.json`,
        changed((plan) => Object.assign(plan.areas[1].holes[0].wants, wants)),
      );
      return bench.run(['plans', 'check', file]);
    };
    const place = 'areas[1].holes[0].wants';
    expect(await checked('ten', { head: 'hex ten' })).toMatchObject({
      exit: 1,
      out: expect.stringContaining(`ten.json: ${place}.head: "ten" is no size of a head`),
    });
    const fine = await checked('fine', { thread: 'fine' });
    expect(fine).toMatchObject({ exit: 1, out: expect.stringContaining(`${place}.thread: "fine" is no thread`) });
    const odd = await checked('odd', { kind: 'bolt', head: 'hex 11.5', thread: 'M66' });
    expect(odd.exit).toBe(0);
    expect(odd.out.replaceAll(`${bench.folder}/`, '').split('\n').slice(0, 3)).toEqual([
      expect.stringMatching(/^odd\.json: sound: /),
      `Mind: odd.json: ${place}.head: no standard known puts hex 11.5 on any thread; see that it is meant`,
      expect.stringMatching(/^Mind: odd\.json: areas\[1\]\.holes\[0\]\.wants\.thread: there is no M66 among /),
    ]);
    expect((await checked('plug', { kind: 'plug', head: 'hex 11.5', thread: 'M8' })).out).not.toContain('Mind');
  });

  const cut = (text: string) => text.slice(0, 200);
  it.each<[string, () => string | Uint8Array, RegExp]>([
    [
      'an order that goes round',
      () => changed((plan) => plan.behind.push({ front: 'area:arch liner', behind: ['area:right front wheel'] })),
      /: behind\[\d+\]: .* in front of .*: that goes round; /,
    ],
    [
      'an order that goes round through the holes of an area',
      () => changed((plan) => plan.behind.push({ front: 'area:arch liner', behind: ['hole:right front wheel/2'] })),
      /: behind\[\d+\]: .*that goes round; /,
    ],
    [
      'a name of nothing',
      () => changed((plan) => plan.temporaries.push({ temporary: 'rag', sort: 'rag', at: 'area:attic' })),
      /: temporaries\[6\]\.at: the plan has no area "attic"; /,
    ],
    [
      'a hole twice',
      () => changed((plan) => plan.areas[0].holes.push({ numbers: '5 6' })),
      /: areas\[0\]\.holes\[1\]\.numbers: hole 5 of right front wheel is there twice; /,
    ],
    [
      'numbers beyond reason',
      () => changed((plan) => Object.assign(plan.areas[0].holes[0], { numbers: '1-9999' })),
      /: areas\[0\]\.holes\[0\]\.numbers: more than 500 holes at once; /,
    ],
    [
      'a coordinate beyond reason',
      () => changed((plan) => Object.assign(plan.areas[0], { outline: [[1e300, 0]] })),
      /: areas\[0\]\.outline\[0\]\[0\]: /,
    ],
    ['another version', () => changed((plan) => Object.assign(plan, { version: 2 })), /: the plan is of version 2; /],
    ['an older version', () => changed((plan) => Object.assign(plan, { version: 0 })), /: version: /],
    [
      'an escape sequence',
      () => changed((plan) => Object.assign(plan, { notes: ['\u001b[2J'] })),
      /: notes\[0\]: a control character or an escape sequence; /,
    ],
    ['what is no plan', () => '{"countback":"job"}', /: this is no plan file; /],
    ['half a plan', () => cut(readFileSync(reference, 'utf8')), /: this is not JSON in line 5, column \d+; /],
    ['nothing', () => '', /: the file is empty; /],
    ['50 MB', () => Buffer.alloc(50 * 1024 * 1024, '['), /: the file is larger than 2 MB; /],
    ['bytes that are no text', () => Uint8Array.from([0xff, 0xfe, 0x00, 0x80]), /: this is not JSON/],
  ])('refuses %s with its place', async (_, text, says) => {
    const path = join(bench.folder, 'bad.json');
    writeFileSync(path, text());
    const { exit, out, complaint } = await bench.run(['plans', 'check', path]);
    expect({ exit, complaint }).toEqual({ exit: 1, complaint: '' });
    expect(out.trimEnd().split('\n')).toHaveLength(1);
    expect(out.startsWith(path)).toBe(true);
    expect(out).toMatch(says);
    expect(out).toMatch(steersNothing);
  });

  it('refuses a folder and a file that is not there', async () => {
    const { exit, out } = await bench.run(['plans', 'check', bench.folder, join(bench.folder, 'none.json')]);
    expect(exit).toBe(1);
    expect(out).toMatch(/: this is a folder .*\n.*none\.json: there is no such file or folder .*; /);
  });
});

describe('plans need', () => {
  it('says what must come off for several services together and each alone, and in what order', async () => {
    const { exit, out, complaint } = await bench.run([
      'plans',
      'need',
      'timing belt',
      'inline-four belt service: coolant pump',
    ]);
    expect({ exit, complaint }).toEqual({ exit: 0, complaint: '' });
    expect(out.split('\n')[0]).toBe('timing belt + coolant pump: 35 fasteners, 2 slackened, 11 parts, 3 connections');
    const inOrder = [
      'coolant pump: 35 fasteners, 2 slackened, 11 parts, 3 connections',
      'beside the others: 6 fasteners, 1 part, 1 connection more',
      'comes off, in this order:',
      '1  battery earth apart',
      '4  mount bracket: off 1-3; slacken 4 5; bracket away',
      'coolant pump: off 1-6; pump away',
      'goes back, in this order:',
      'before coolant pump closes: dowel one, dowel two, O-ring seen',
      'gate: tensioner and idler 1 tight, then check rotation of timing drive',
      'lower belt cover: lower cover back, 6 fasteners',
      'gate: fill coolant',
      'while you are there:',
      'cam cover gasket: 10 fasteners, 2 parts, 4 connections more',
    ];
    let at = 0;
    for (const words of inOrder) {
      const found = out.indexOf(words, at);
      expect({ words, found: found > at }).toEqual({ words, found: true });
      at = found;
    }
  });

  it('says a caution of both sides once, with its places', async () => {
    const { out } = await bench.run(['plans', 'need', 'front struts', 'front pads and discs']);
    const lines = out.split('\n');
    const cautions = lines.slice(lines.indexOf('cautions:') + 1, lines.indexOf('to have ready:') - 1);
    expect(new Set(cautions).size).toBe(cautions.length);
    expect(cautions).toContainEqual(
      expect.stringMatching(/^ {4}A caliper is never hung on its hose: .* \(right caliper, left caliper\)$/),
    );
    expect(cautions).toContainEqual('    Dust is washed off wet, never blown off.');
  });

  it('given what is off, says how much more it is, and what is off for nothing', async () => {
    const args = ['plans', 'need', 'cam cover gasket', '--off', 'lower belt cover', '--off=upper belt cover', '--json'];
    const { exit, out } = await bench.run(args);
    const { each, more, needless, strip, back, nearby } = JSON.parse(out);
    expect(exit).toBe(0);
    expect(back).toBe(undefined);
    expect(more).toEqual({ fasteners: 10, slack: 0, parts: 2, connections: 5 });
    expect(each).toHaveLength(1);
    expect(needless).toContain('hole:lower belt cover/6');
    expect(strip.map((step: { at: string }) => step.at)).not.toContain('area:upper belt cover');
    expect(nearby.map((one: { service: string }) => one.service)).toEqual(['timing belt', 'coolant pump']);
  });

  it('merges the plans the services come from, and refuses what they say differently with both places', async () => {
    const other = (wants: string) =>
      fileOf(
        'other.json',
        changed((plan) => {
          plan.name = 'other';
          for (const service of plan.services) service.service = `other ${service.service}`;
          delete plan.newParts;
          plan.areas[1].holes[0].wants.head = wants;
        }),
      );
    const args = (file: string) => [
      'plans',
      'need',
      'timing belt',
      'other coolant pump',
      '--plan',
      reference,
      '--plan',
      file,
    ];
    const same = await bench.run(args(other('hex 10')));
    expect(same.exit).toBe(0);
    expect(same.out).toContain('timing belt + other coolant pump: 35 fasteners');
    const { exit, out, complaint } = await bench.run(args(other('hex 8')));
    expect({ exit, out }).toEqual({ exit: 2, out: '' });
    const [first, ...more] = complaint.trimEnd().split('\n');
    expect(first).toBe(
      `countback: arch liner 1: two say different wants head: ${reference}: areas[1].holes[0] and ${join(bench.folder, 'other.json')}: areas[1].holes[0]`,
    );
    expect(more).toHaveLength(3);
  });

  it.each<[string[], RegExp]>([
    [['gearbox'], /no plan has a service "gearbox"; /],
    [['timing bolt'], /no plan has a service "timing bolt", perhaps "timing belt"; /],
    [['nowhere: timing belt'], /no plan has a service "nowhere: timing belt"/],
    [['timing belt', '--off', 'gearbox'], /has no area "gearbox"; it has right front wheel, /],
    [['timing belt', '--plan', reference, '--plan', reference], /several plans have a service "timing belt"; write /],
    [['timing belt', '--plan', 'none.json'], /none\.json: there is no such file or folder/],
  ])('%j is answered with one line', async (args, says) => {
    const { exit, out, complaint } = await bench.run(['plans', 'need', ...args]);
    expect({ exit, out }).toEqual({ exit: 2, out: '' });
    expect(complaint).toMatch(says);
    expect(complaint.trimEnd().split('\n')).toHaveLength(1);
  });
});

describe('plans save', () => {
  beforeEach(async () => {
    const input =
      'job "grey hatchback" registration "AB 123"\nservice reseal\narea "cam cover"\nuse bolt hex 10 M6x25\noff 1\noff 2\noff 3\n';
    const taken = await bench.run(['take', 'hatchback', '--new'], { input });
    expect(taken).toMatchObject({ exit: 0, complaint: '' });
  });

  it('writes a job as a plan that opens cleanly, and that a new job can be made from', async () => {
    const file = join(bench.dataDir, 'plans', 'own.json');
    mkdirSync(join(bench.dataDir, 'plans'), { recursive: true });
    const { exit, out, complaint } = await bench.run([
      'plans',
      'save',
      'hatchback',
      '-o',
      file,
      '--name',
      'own reseal',
    ]);
    expect({ exit, complaint, out }).toEqual({
      exit: 0,
      complaint: '',
      out: `${file}: own reseal, services 1, areas 1\n`,
    });
    expect(readFileSync(file, 'utf8')).not.toMatch(/hatchback|AB 123|tray/);
    expect((await bench.run(['plans', 'check', file])).exit).toBe(0);
    const input = 'job "blue one"\nplan "own reseal" for reseal\narea "cam cover"\noff\noff\noff\n';
    const next = await bench.run(['take', 'next', '--new'], { input });
    expect(next).toMatchObject({ exit: 0, complaint: '' });
    expect(bench.callsOf('next').join('\n')).toContain('"lengthMm":25');
  });

  it('never writes over what is there unless told to, and says what is missing', async () => {
    const file = fileOf('there.json', 'mine');
    const refused = await bench.run(['plans', 'save', 'hatchback', '-o', file]);
    expect(refused).toMatchObject({ exit: 2, out: '' });
    expect(refused.complaint).toMatch(/this is there already; .*--force/);
    expect(readFileSync(file, 'utf8')).toBe('mine');
    expect((await bench.run(['plans', 'save', 'hatchback', '-o', file, '--force'])).exit).toBe(0);
    expect((await bench.run(['plans', 'save', 'hatchback'])).exit).toBe(64);
    expect((await bench.run(['plans', 'save', 'nobody', '-o', 'x.json'])).exit).toBe(2);
    const badName = await bench.run([
      'plans',
      'save',
      'hatchback',
      '-o',
      join(bench.folder, 'x.json'),
      '--name',
      'a/b',
    ]);
    expect(badName).toMatchObject({ exit: 2, out: '' });
    expect(badName.complaint).toMatch(/x\.json: name: no plan can be made of it: a name has no "\/"/);
  });
});

describe('plans save --into', () => {
  const input = [
    'job "grey hatchback"',
    'plan "inline-four belt service" for cam cover gasket',
    'area "upper belt cover"',
    'off',
    'wants upper belt cover 2 bolt hex 10 M6x30 because the boss is longer',
    'area "heat shield"',
    'bolt hex 10 M6x12',
    'off 1',
    '',
  ].join('\n');
  const save = (...args: string[]) => bench.run(['plans', 'save', 'hatchback', ...args]);
  let file: string;
  beforeEach(async () => {
    file = fileOf('own.json', readFileSync(reference, 'utf8'));
    expect(await bench.run(['take', 'hatchback', '--new'], { input })).toMatchObject({ exit: 0, complaint: '' });
  });

  it('shows what the job says otherwise, and writes nothing until it is chosen', async () => {
    const before = readFileSync(file, 'utf8');
    const { exit, out, complaint } = await save('--into', file);
    expect({ exit, complaint }).toEqual({ exit: 1, complaint: '' });
    expect(out.split('\n')).toEqual([
      '  1  upper belt cover 2: wants bolt hex 10 M6x25 -> bolt hex 10 M6x30',
      '  2  heat shield: new',
      '  3  heat shield 1: new',
      `${file}: nothing is written; take some with --take 1,2 or --take all`,
      '',
    ]);
    expect(readFileSync(file, 'utf8')).toBe(before);
  });

  it('takes what is chosen into the plan, then the rest, then nothing is left to take', async () => {
    const some = await save('--into', file, '--take', '1');
    expect(some).toMatchObject({ exit: 0, complaint: '' });
    expect(some.out).toMatch(/M6x30 taken\n.*heat shield: new\n[\s\S]*: 1 of 3 taken\n$/);
    expect((await bench.run(['plans', 'check', file])).exit).toBe(0);
    expect((await save('--into', file, '--take=all')).out).toMatch(/: 2 of 2 taken\n$/);
    expect(await save('--into', file)).toMatchObject({
      exit: 0,
      out: `${file}: the job says nothing more and nothing otherwise\n`,
    });
    expect(await save('--into', file, '--take', '1')).toMatchObject({
      exit: 64,
      complaint: expect.stringContaining('so there is nothing to take'),
    });
    const need = await bench.run(['plans', 'need', 'cam cover gasket', '--plan', file]);
    expect(need.out).toContain('heat shield: off 1');
  });

  it('takes nothing that would leave the plan unsound, nor what is not on the list', async () => {
    const before = readFileSync(file, 'utf8');
    const unsound = await save('--into', file, '--take', '2');
    expect(unsound).toMatchObject({ exit: 2, out: '' });
    expect(unsound.complaint).toContain(
      'nothing was taken: what was chosen leans on heat shield 1: new; --take 2,3, or --take all',
    );
    for (const take of ['4', '0', 'x', '1,9']) {
      expect(await save('--into', file, '--take', take)).toMatchObject({ exit: 64, out: '' });
    }
    expect(await save('--into', file, '-o', file)).toMatchObject({ exit: 64, out: '' });
    expect(await save('-o', join(bench.folder, 'x.json'), '--take', '1')).toMatchObject({ exit: 64, out: '' });
    expect((await save('--into', join(bench.folder, 'none.json'))).exit).toBe(2);
    expect(readFileSync(file, 'utf8')).toBe(before);
  });
});

describe('plans schema', () => {
  it('is the JSON Schema of a plan, made from what the program reads it with', async () => {
    const { exit, out } = await bench.run(['plans', 'schema']);
    const schema = JSON.parse(out);
    expect(exit).toBe(0);
    expect(schema.$schema).toMatch(/json-schema\.org/);
    expect(schema.required).toEqual(expect.arrayContaining(['countback', 'version', 'name', 'services', 'areas']));
    expect(schema.additionalProperties).toBe(false);
    const used = shipped.flatMap((file) => Object.keys(JSON.parse(readFileSync(file, 'utf8'))));
    expect(Object.keys(schema.properties)).toEqual(expect.arrayContaining(used));
  });
});
