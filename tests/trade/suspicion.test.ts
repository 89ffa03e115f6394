// Suspicion about one fastener: where it must speak, where it must be quiet, and how much of planted wrongness it sees.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { headTables } from '../../src/trade/head-tables.ts';
import { type Called, suspicionsOf } from '../../src/trade/suspicion.ts';

const bolt = (head: string, thread: string, lengthMm?: number, grade?: string): Called => ({
  kind: 'bolt',
  head,
  thread,
  ...(lengthMm !== undefined && { lengthMm }),
  ...(grade !== undefined && { class: grade }),
});
const several = (count: number, one: Called): Called[] => Array.from({ length: count }, () => one);

/** Areas of an honest engine, longer bolts and odd pairs and all. */
const honest: Called[][] = [
  [...several(4, { kind: 'screw', head: 'hex 10', thread: 'M6', lengthMm: 16 }), ...several(3, { kind: 'clip' })],
  [
    ...several(3, bolt('hex 14', 'M10x1.25', 60, '10.9')),
    ...several(2, { kind: 'nut', head: 'hex 17', thread: 'M12x1.25' }),
  ],
  [...several(4, bolt('hex 10', 'M6', 25)), bolt('hex 10', 'M6', 45)],
  several(6, bolt('hex 10', 'M6', 20)),
  [bolt('hex 12', 'M8x1.25', 40), bolt('hex 14', 'M10x1.25', 45)],
  [...several(4, bolt('hex 10', 'M6', 25)), ...several(2, bolt('hex 10', 'M6', 55))],
  several(10, bolt('hex 8', 'M6', 35)),
  [...several(4, bolt('hex 13', 'M8', 30, '8.8')), ...several(2, bolt('hex 16', 'M10', 90, '8.8'))],
];
const besides = (area: readonly Called[], at: number): Called[] => area.filter((_, other) => other !== at);

describe('an honest engine', () => {
  it('raises nothing, longer corner bolts included', () => {
    const raised = honest.flatMap((area) =>
      area.flatMap((one, at) => suspicionsOf(one, { neighbours: besides(area, at), plan: one })),
    );
    const unplanned = honest.flatMap((area) =>
      area.flatMap((one, at) => suspicionsOf(one, { neighbours: besides(area, at) })),
    );
    expect([...raised, ...unplanned]).toEqual([]);
  });
});

describe('one wrong bolt', () => {
  const mount = several(2, bolt('hex 14', 'M10x1.25', 60, '10.9'));

  it('speaks of head, class and length against its neighbours', () => {
    const found = suspicionsOf(bolt('hex 17', 'M10x1.25', 50, '8.8'), { neighbours: mount });
    expect(found).toEqual([
      { code: 'other-class', against: 'neighbours', line: 'class 8.8, not 10.9 as its neighbours; 10 mm shorter' },
      { code: 'other-head', against: 'neighbours', line: 'hex 17, not hex 14 as its neighbours' },
    ]);
    expect(
      suspicionsOf(mount[0] as Called, { neighbours: [mount[1] as Called, bolt('hex 17', 'M10x1.25', 50, '8.8')] }),
    ).toEqual([]);
  });

  it.each<[string, Called, { neighbours?: Called[]; plan?: Called }, string, RegExp]>([
    [
      'an inch bolt that will strip',
      bolt('hex 14', '3/8-24'),
      { plan: bolt('hex 14', 'M10x1') },
      'near-miss',
      /5.1 turns, feels right and strips/,
    ],
    [
      'an inch bolt that binds',
      bolt('hex 13', '5/16-18'),
      { neighbours: several(3, bolt('hex 13', 'M8')) },
      'other-system',
      /binds within the first turn/,
    ],
    [
      'the same diameter, other pitch',
      bolt('hex 14', 'M10'),
      { neighbours: mount },
      'other-pitch',
      /M10, not M10x1.25 as its neighbours: M10 in M10x1.25 binds/,
    ],
    [
      'another diameter',
      bolt('hex 10', 'M6'),
      { plan: bolt('hex 13', 'M8') },
      'other-diameter',
      /M6, not M8 as planned/,
    ],
    ['a head with another thread', bolt('hex 12', 'M10'), {}, 'head-and-thread', /hex 12 goes on M8/],
    ['a head with no thread', bolt('hex 25', 'M8'), {}, 'head-and-thread', /no standard known/],
    ['a thread there is not', bolt('hex 13', 'M8x1.3'), {}, 'no-such-thread', /pitches of M8 are/],
    [
      'another kind',
      { kind: 'screw', head: 'hex 10', thread: 'M6' },
      { plan: bolt('hex 10', 'M6') },
      'other-kind',
      /screw, not bolt as planned/,
    ],
    ['a star on a thread it is seldom on', bolt('star 40', 'M10'), {}, 'head-asked', /on M10\?/],
    [
      'a nut among others, from the stud’s side',
      { kind: 'nut', head: 'hex 13', thread: 'M8' },
      { plan: { kind: 'nut', thread: '5/16-18' } },
      'other-system',
      /5\/16-18 in M8 binds/,
    ],
  ])('%s', (_what, called, beside, code, line) => {
    const [gravest] = suspicionsOf(called, beside);
    expect(gravest?.code).toBe(code);
    expect(gravest?.line).toMatch(line);
  });

  it.each<[string, Called, { neighbours?: Called[]; plan?: Called }]>([
    [
      'length alone',
      bolt('hex 10', 'M6', 55),
      { neighbours: several(5, bolt('hex 10', 'M6', 25)), plan: bolt('hex 10', 'M6', 25) },
    ],
    ['one neighbour alone', bolt('hex 14', 'M10x1.25'), { neighbours: [bolt('hex 12', 'M8')] }],
    [
      'two of a sort among others',
      bolt('hex 13', 'M8'),
      { neighbours: [bolt('hex 13', 'M8'), ...several(4, bolt('hex 10', 'M6'))] },
    ],
    [
      'the odd one the plan wants',
      bolt('hex 13', 'M8'),
      { neighbours: several(5, bolt('hex 10', 'M6')), plan: bolt('hex 13', 'M8x1.25') },
    ],
    ['one thread written two ways', bolt('hex 13', 'M8x1.25'), { neighbours: several(3, bolt('hex 13', 'M8')) }],
    [
      'other kinds',
      { kind: 'nut', head: 'hex 17', thread: 'M12x1.25' },
      { neighbours: several(3, bolt('hex 14', 'M10x1.25')) },
    ],
    [
      'plugs',
      { kind: 'plug', head: 'hex 10', thread: 'M14x1.5' },
      { neighbours: several(3, { kind: 'plug', head: 'hex 8', thread: 'M10' }) },
    ],
    [
      'a head no standard knows, as two of its neighbours have it',
      bolt('hex 12', 'M10'),
      { neighbours: several(2, bolt('hex 12', 'M10x1.5')) },
    ],
    ['pipe threads', bolt('hex 19', 'G1/4'), {}],
    ['a size beyond the tables', { kind: 'nut', head: 'hex 36', thread: 'M27x1.5' }, {}],
    ['a head no standard knows, as planned', bolt('hex 12', 'M10'), { plan: bolt('hex 12', 'M10x1.5') }],
    [
      'a plug of another head than planned',
      { kind: 'plug', head: 'hexkey 8' },
      { plan: { kind: 'plug', head: 'hex 13' } },
    ],
    ['star 40 on M8', bolt('star 40', 'M8'), {}],
    ['nothing known', { kind: 'bolt' }, { neighbours: several(3, bolt('hex 10', 'M6')) }],
  ])('is not suspected for %s', (_what, called, beside) => expect(suspicionsOf(called, beside)).toEqual([]));

  it.each<[string, Called, Parameters<typeof suspicionsOf>[1], RegExp]>([
    [
      'a plug of another thread than planned',
      { kind: 'plug', thread: 'M16x1.5' },
      { plan: { kind: 'plug', thread: 'M14x1.5' } },
      /M16x1.5, not M14x1.5 as planned/,
    ],
    [
      'a wheel nut of another thread, by whatever head',
      { kind: 'nut', head: 'hex 19', thread: 'M12x1.25' },
      { neighbours: several(4, { kind: 'nut', head: 'hex 21', thread: 'M12x1.5' }), headIsItsOwn: true },
      /^M12x1.25, not M12x1.5 as its neighbours/,
    ],
  ])('%s is suspected for its thread alone', (_what, called, beside, line) => {
    const found = suspicionsOf(called, beside);
    expect(found).toHaveLength(1);
    expect(found[0]?.line).toMatch(line);
  });

  it('is seen nine times in ten where it can be, planted at random with no plan', () => {
    const pairs = headTables
      .filter(({ met }) => !met)
      .flatMap(({ shape, sizes }) =>
        Object.entries(sizes.value).map(([thread, size]): [string, string] => [`${shape} ${size}`, thread]),
      )
      .filter(([, thread]) => /^M/.test(thread));
    let [planted, seen] = [0, 0];
    fc.assert(
      fc.property(fc.nat(), fc.nat(), fc.constantFrom(...pairs), fc.boolean(), (a, h, [head, thread], fine) => {
        const area = honest[a % honest.length] as Called[];
        const at = h % area.length;
        const own = area[at] as Called;
        const fellows = besides(area, at).filter(({ kind }) => kind === own.kind);
        // Visible in what was called: one stands against several of its kind, all alike.
        const alone = fellows.length >= 2 && fellows.every((one) => one.head === own.head && one.thread === own.thread);
        const wrong = { ...own, head, thread: fine && thread === 'M10' ? 'M10x1' : thread };
        if (!alone || own.head === undefined || (wrong.head === own.head && wrong.thread === own.thread)) return;
        planted++;
        if (suspicionsOf(wrong, { neighbours: besides(area, at) }).length > 0) seen++;
      }),
      { numRuns: 3000, seed: 4 },
    );
    expect(planted).toBeGreaterThan(1000);
    expect(seen / planted).toBeGreaterThanOrEqual(0.9);
  });
});

describe('suspicions', () => {
  it('are ranked, the gravest first, and each is one line', () => {
    const anyone = fc.record({
      kind: fc.constantFrom('bolt', 'nut'),
      head: fc.constantFrom('hex 10', 'hex 13', 'hex 14', 'hex 25', 'star 40', 'outer-star 12'),
      thread: fc.constantFrom('M6', 'M8', 'M10x1.25', '5/16-18', '3/8-24', 'M8x1.3', 'G1/4'),
      class: fc.constantFrom('8.8', '10.9'),
    });
    fc.assert(
      fc.property(anyone, fc.array(anyone, { maxLength: 6 }), anyone, (called, neighbours, plan) => {
        const found = suspicionsOf(called, { neighbours, plan });
        for (const { line } of found) expect(line).not.toMatch(/undefined|NaN|\n/);
        const grave = found.map(({ code }) => ['near-miss', 'other-system', 'other-pitch'].includes(code));
        expect(grave).toEqual(grave.toSorted((a, b) => Number(b) - Number(a)));
      }),
    );
  });
});
