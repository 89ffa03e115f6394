// Reading plan files: what is wrong is told with its place in the file, and nothing wrong is taken.
import { describe, expect, it } from 'vitest';
import { readNumbers } from '../../src/plan/holes-written.ts';
import { longestPlan, readPlan } from '../../src/plan/read-plan.ts';
import { whereJsonBreaks } from '../../src/store/json-place.ts';
import { plainText } from '../../src/trade/plain-text.ts';
import { referencePlanText } from '../jobs/plan-of-reference.ts';

const small = {
  countback: 'plan',
  version: 1,
  name: 'cover off',
  vehicle: 'any with a cover',
  services: [{ service: 'reseal', areas: ['cover', 'bracket'], also: ['part:gasket', 'connection:earth'] }],
  areas: [
    { area: 'bracket', holes: [{ numbers: '1 2' }] },
    { area: 'cover', order: '3 1 2', holes: [{ numbers: '1-3', wants: { kind: 'bolt', head: 'hex 10' } }] },
  ],
  parts: [
    { part: 'lid', heldBy: { cover: '1-3' } },
    { part: 'gasket', renew: true },
  ],
  connections: [{ connection: 'earth' }, { connection: 'hose', area: 'cover', circuit: 'coolant' }],
  circuits: [{ circuit: 'coolant', fluid: 'mix' }],
  faces: [{ face: 'lid face', area: 'cover', pressedBy: { cover: '1-3' }, keepsIn: ['coolant'], part: 'lid' }],
  drives: [
    {
      drive: 'belt drive',
      areas: ['cover'],
      parts: ['gasket'],
      marks: ['crank'],
      turns: 2,
      tensioner: 'none',
      crankBolt: 'bracket/1',
      crankKeyed: true,
    },
  ],
  temporaries: [{ temporary: 'rag', sort: 'rag', at: 'area:cover' }],
  behind: [{ front: 'area:bracket', behind: ['area:cover', 'rotation:belt drive'] }],
};
type Small = typeof small;
/** The small plan with one thing changed. */
const changed = (change: (plan: Small & Record<string, unknown>) => void): string => {
  const plan = structuredClone(small);
  change(plan);
  return JSON.stringify(plan);
};
const faultOf = (text: string) => {
  const read = readPlan(text, 'p.json', whereJsonBreaks);
  return read.ok ? undefined : read.fault;
};
const first = <T>(all: readonly T[]): T => all[0] as T;

describe('a sound plan', () => {
  it('is read as it is written', () => {
    const read = readPlan(JSON.stringify(small), 'p.json');
    expect(read).toEqual({ ok: true, plan: small });
  });

  it('is read with a mark of byte order before it', () => {
    expect(readPlan(`\u{FEFF}${JSON.stringify(small)}`, 'p.json').ok).toBe(true);
  });

  it('is what the repository ships', () => {
    const read = readPlan(referencePlanText(), 'inline-four-belt-service.json');
    expect(read.ok ? read.plan.areas.map((a) => a.area) : read.fault).toHaveLength(9);
  });
});

describe('a plan that can not be read', () => {
  it.each<[string, string, string]>([
    ['', 'the file is empty', 'p.json'],
    ['{"countback": "plan",\n "version": 1,\n}', 'this is not JSON in line 3, column 1', 'p.json'],
    ['[]', 'this is no plan file', 'p.json'],
    ['null', 'this is no plan file', 'p.json'],
    ['{"countback":"job","format":0}', 'this is no plan file', 'p.json'],
    ['{"countback":"plan","version":7}', 'the plan is of version 7', 'p.json'],
    [' '.repeat(longestPlan + 1), 'the file is larger than 2 MB', 'p.json'],
    [`${'['.repeat(900_000)}`, 'this is not JSON in line 1, column 900001', 'p.json'],
  ])('%.40s', (text, what, where) => {
    const fault = faultOf(text);
    expect(fault).toMatchObject({ what, where });
    expect(fault?.next.length).toBeGreaterThan(5);
  });
  it('of a newer version names what reads it', () => {
    expect(faultOf('{"countback":"plan","version":7}')?.next).toBe(
      'this program reads plans up to version 1: a newer program reads this one',
    );
  });

  it.each<[string, (plan: Small & Record<string, unknown>) => void, string, RegExp]>([
    [
      'an unknown field',
      (p) => Object.assign(first(p.areas), { colour: 'red' }),
      'p.json: areas[0].colour',
      /no such field$/,
    ],
    [
      'a head that is no text',
      (p) => Object.assign(first(first(p.areas).holes), { wants: { head: 10 } }),
      'p.json: areas[0].holes[0].wants.head',
      /must be a text/,
    ],
    [
      'numbers that are none',
      (p) => Object.assign(first(first(p.areas).holes), { numbers: '1-x' }),
      'p.json: areas[0].holes[0].numbers',
      /"1-x" is neither/,
    ],
    [
      'an escape sequence',
      (p) => Object.assign(p, { vehicle: 'a\u001b[2Jcar' }),
      'p.json: vehicle',
      /control character/,
    ],
    [
      'a turned reading direction',
      (p) => Object.assign(first(p.parts), { part: 'li\u{202e}d' }),
      'p.json: parts[0].part',
      /control character/,
    ],
    [
      'a control character in a name',
      (p) => Object.assign(first(p.areas), { area: 'a\u0007' }),
      'p.json: areas[0].area',
      /control character/,
    ],
  ])('%s', (_, change, where, what) => {
    const fault = faultOf(changed(change));
    expect(fault?.where).toBe(where);
    expect(fault?.what).toMatch(what);
    expect(fault?.what).toBe(plainText(fault?.what ?? ''));
  });

  it('says of a misspelt field what is missing and what was perhaps meant', () => {
    const read = readPlan(
      changed((p) => Object.assign(p, { services: [{ service: 'reseal', araes: ['cover'] }] })),
      'p.json',
    );
    expect(read.ok ? [] : read.faults).toEqual([
      { where: 'p.json: services[0].areas', what: 'this is missing', next: 'write it' },
      {
        where: 'p.json: services[0].araes',
        what: 'there is no such field, perhaps "areas"',
        next: 'correct its name, or leave it out',
      },
    ]);
  });

  it('names no field with what could steer a terminal', () => {
    const fault = faultOf(changed((p) => Object.assign(p, { 'x\u001b[2J': 1 })));
    expect(fault?.where).toContain('x');
    expect(JSON.stringify(fault)).not.toContain('u001b');
  });
});

describe('a plan that speaks of what it has not', () => {
  it.each<[string, (plan: Small & Record<string, unknown>) => void, string, string]>([
    ['service area', (p) => first(p.services).areas.push('sump'), 'services[0].areas[2]', 'no area "sump"'],
    ['service also', (p) => first(p.services).also.push('part:sump'), 'services[0].also[2]', 'no part "sump"'],
    [
      'held by area',
      (p) => Object.assign(first(p.parts), { heldBy: { sump: '1' } }),
      'parts[0].heldBy.sump',
      'no area "sump"',
    ],
    [
      'held by hole',
      (p) => Object.assign(first(p.parts), { heldBy: { cover: '1-4' } }),
      'parts[0].heldBy.cover',
      'no hole "cover/4"',
    ],
    [
      'connection area',
      (p) => Object.assign(first(p.connections), { area: 'sump' }),
      'connections[0].area',
      'no area "sump"',
    ],
    [
      'connection circuit',
      (p) => Object.assign(first(p.connections), { circuit: 'oil' }),
      'connections[0].circuit',
      'no circuit "oil"',
    ],
    ['face area', (p) => Object.assign(first(p.faces), { area: 'sump' }), 'faces[0].area', 'no area "sump"'],
    [
      'face holes',
      (p) => Object.assign(first(p.faces), { pressedBy: { cover: '9' } }),
      'faces[0].pressedBy.cover',
      'no hole "cover/9"',
    ],
    ['face circuit', (p) => first(p.faces).keepsIn.push('oil'), 'faces[0].keepsIn[1]', 'no circuit "oil"'],
    ['face part', (p) => Object.assign(first(p.faces), { part: 'sump' }), 'faces[0].part', 'no part "sump"'],
    ['drive area', (p) => first(p.drives).areas.push('sump'), 'drives[0].areas[1]', 'no area "sump"'],
    ['drive part', (p) => first(p.drives).parts.push('belt'), 'drives[0].parts[1]', 'no part "belt"'],
    [
      'crank bolt',
      (p) => Object.assign(first(p.drives), { crankBolt: 'bracket/7' }),
      'drives[0].crankBolt',
      'no hole "bracket/7"',
    ],
    [
      'temporary place',
      (p) => Object.assign(first(p.temporaries), { at: 'hole:cover/8' }),
      'temporaries[0].at',
      'no hole "cover/8"',
    ],
    ['front', (p) => Object.assign(first(p.behind), { front: 'part:belt' }), 'behind[0].front', 'no part "belt"'],
    ['behind', (p) => first(p.behind).behind.push('rotation:chain'), 'behind[0].behind[2]', 'no drive "chain"'],
  ])('%s', (_, change, where, what) => {
    expect(faultOf(changed(change))).toMatchObject({ where: `p.json: ${where}`, what: `the plan has ${what}` });
  });

  it.each<[string, (plan: Small & Record<string, unknown>) => void, string, RegExp]>([
    [
      'a hole twice in one group',
      (p) => Object.assign(first(first(p.areas).holes), { numbers: '1 2 1' }),
      'areas[0].holes[0].numbers',
      /hole 1 of bracket is there twice/,
    ],
    [
      'a hole twice in two groups',
      (p) => first(p.areas).holes.push({ numbers: '2-3', wants: { kind: 'bolt', head: 'hex 10' } }),
      'areas[0].holes[1].numbers',
      /hole 2 of bracket/,
    ],
    ['an area twice', (p) => p.areas.push({ ...first(p.areas) }), 'areas[2].area', /"bracket" is there twice/],
    ['a part twice', (p) => p.parts.push({ part: 'lid', renew: true }), 'parts[2].part', /"lid" is there twice/],
    [
      'places for some holes',
      (p) => Object.assign(first(first(p.areas).holes), { at: [[1, 1]] }),
      'areas[0].holes[0].at',
      /2 holes, and 1 places/,
    ],
    [
      'an order of other holes',
      (p) => Object.assign(p.areas[1] as object, { order: '1 4' }),
      'areas[1].order',
      /no hole 4/,
    ],
    [
      'an order with a hole twice',
      (p) => Object.assign(p.areas[1] as object, { order: '1 1' }),
      'areas[1].order',
      /twice/,
    ],
    [
      'an order that goes round',
      (p) => p.behind.push({ front: 'area:cover', behind: ['area:bracket'] }),
      'behind[0]',
      /goes round/,
    ],
    [
      'a place in front of itself',
      (p) => p.behind.push({ front: 'part:lid', behind: ['part:lid'] }),
      'behind[1]',
      /goes round/,
    ],
    ['an area no service brings', (p) => first(p.services).areas.pop(), 'services', /no service brings bracket/],
    ['a part no service brings', (p) => first(p.services).also.shift(), 'services', /no service brings gasket/],
  ])('%s', (_, change, where, what) => {
    const fault = faultOf(changed(change));
    expect(fault?.where).toBe(`p.json: ${where}`);
    expect(fault?.what).toMatch(what);
  });

  it('is too large when it declares more than one line of a log takes', () => {
    const areas = Array.from({ length: 10 }, (_, i) => ({ area: `a${i}`, holes: [{ numbers: '1-500' }] }));
    const services = [{ service: 'all', areas: areas.map((a) => a.area) }];
    const text = JSON.stringify({ countback: 'plan', version: 1, name: 'n', vehicle: 'v', services, areas });
    expect(faultOf(text)?.what).toBe('it declares 5010 things');
  });
});

describe('hole numbers', () => {
  it.each<[string, string[]]>([
    ['1-3', ['1', '2', '3']],
    ['1 2 4-6', ['1', '2', '4', '5', '6']],
    ['1, 3,5', ['1', '3', '5']],
    ['7, 7 washer, 7 nut 2', ['7', '7 washer', '7 nut 2']],
    ['07', ['7']],
  ])('%s', (written, numbers) => expect(readNumbers(written)).toEqual({ numbers }));

  it.each([
    ['3-1', 'runs backwards'],
    ['1-9999', 'more than 500'],
    ['1,,2', 'missing between'],
    ['a', 'neither a number'],
    ['1-2-3', 'neither a number'],
    ['-1', 'neither a number'],
  ])('%s is refused', (written, why) => {
    const read = readNumbers(written);
    expect('why' in read && read.why).toContain(why);
  });
});
