// The command that names where a leftover belongs, run as a shell runs it.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Bench, newBench, steersNothing } from './run.ts';

const strip = `job "grey hatchback"
area "cam cover"
tray 1
use bolt hex 8 M6x35
off 1
off 2
off 3
off 4
holes 4
area pump
tray 2
use bolt hex 12 M8x25
off 1
off 2
use bolt hex 12 M8x40
off 3
holes 3
back 1
back 2
pass complete
pass complete
`;
let bench: Bench;
beforeAll(async () => {
  bench = newBench();
  const { exit, complaint } = await bench.run(['take', 'hatchback', '--new'], { input: strip });
  if (exit !== 0) throw new Error(`take ended with ${exit}: ${complaint}`);
});
afterAll(() => bench.remove());

const whose = (...args: string[]) => bench.run(['whose', 'hatchback', ...args]);
type Told = { place: string; verdict: string; because: string; call: string };
const told = (out: string): Told[] => JSON.parse(out) as Told[];

describe('whose, behind a gap in the numbers', () => {
  it('[L6] says that nobody called the numbers before it, until they are counted', async () => {
    const input = 'job "blue"\narea lid\nuse bolt hex 10 M6x25\noff 1\noff 2\noff 99\n';
    await bench.run(['take', 'blue', '--new'], { input });
    const lines = async () => (await bench.run(['whose', 'blue', '--head', '10', '--thread', 'M6'])).out.split('\n');
    const last = () => lines().then((all) => all.filter((line) => line.includes('never called')));
    expect(await last()).toEqual([
      expect.stringMatching(/lid.* 99.*; 3 to 98 never called: is 99 meant\? Else: strike 4/),
    ]);
    await bench.run(['take', 'blue'], { input: 'holes 3\n' });
    expect(await last()).toEqual([]);
  });
});

describe('whose, by coating', () => {
  const coated = `job "red estate"
area lid
tray 1
use bolt hex 10 M6x25 zinc
off 1
off 2
use bolt hex 10 M6x25 black
off 3
use bolt hex 10 M6x25 coated bronze
off 4
holes 4
`;
  const estate = (...args: string[]) => bench.run(['whose', 'estate', ...args]);
  beforeAll(async () => {
    const { exit, complaint } = await bench.run(['take', 'estate', '--new'], { input: coated });
    if (exit !== 0) throw new Error(`take ended with ${exit}: ${complaint}`);
  });

  it('[L6] tells two apart by what is on them', async () => {
    const first = async (coating: string) => (await estate('--head', '10', '--coating', coating)).out.split('\n')[0];
    expect(await first('black')).toMatch(/^likely: lid 3: /);
    expect(await first('Bronze')).toMatch(/^likely: lid 4: /);
    const [, zinc] = /^likely: lid (\d) \(or (\d)\)/.exec((await first('zinc')) ?? '') ?? [];
    expect(['1', '2']).toContain(zinc);
  });

  it('[L5] another coating goes in all the same, and is said', async () => {
    const { out } = await estate('--hole', 'lid 3', '--json');
    expect(told(out)[0]).toMatchObject({ verdict: 'likely', because: 'its own' });
    const other = told(out).filter((one) => one.because.startsWith('zinc'));
    expect(other).toMatchObject([
      { verdict: 'possible', because: 'zinc, it wants black; nothing else known speaks against it' },
    ]);
  });

  it('takes one word for a coating', async () => {
    const { exit, complaint } = await estate('--coating', 'a b');
    expect(exit).toBe(64);
    expect(complaint).toContain('"a b" is no coating: one word, as zinc');
  });
});

describe('whose', () => {
  it('[K3] names the place, why, and the call that settles it', async () => {
    const { exit, out, complaint } = await whose('--head', '12', '--thread', 'M8', '--length', '40');
    expect({ exit, complaint }).toEqual({ exit: 0, complaint: '' });
    expect(out.split('\n')[0]).toBe('likely: pump 3: it alone is open there -> back pump 3');
    expect(out).toMatch(steersNothing);
  });

  it('[K3] gives the same as a list of place, verdict, because and call', async () => {
    const { out } = await whose('--head', 'hex 12', '--thread', 'M8x1.25', '--length', '40', '--tray', '2', '--json');
    const [first] = told(out);
    expect(first).toMatchObject({
      place: 'hole:pump/3',
      verdict: 'likely',
      because: 'it alone is open there',
      call: 'back pump 3',
    });
  });

  it('[K3] lines that were typed at one go are no key pressed twice', async () => {
    const { out } = await whose('--head', '12', '--thread', 'M8', '--length', '25');
    expect(out).not.toContain('apart');
  });

  it('[L1] proposes nothing for a hole that one is in, and says so', async () => {
    const input = 'job "red"\narea lid\nuse bolt hex 10 M6x25\noff 1\noff 2\nslack 3\n';
    await bench.run(['take', 'red', '--new'], { input });
    const { out } = await bench.run(['whose', 'red', '--hole', 'lid 3']);
    expect(out).toMatch(/^possible: .*like it in every known field; but one is in there, called slack\n/);
    expect(out).not.toContain('->');
    expect((await bench.run(['whose', 'red', '--hole', 'lid 2'])).out).toMatch(/^likely: .* -> back lid 2\n/);
    const stray = await bench.run(['whose', 'red', '--head', '10', '--thread', 'M6']);
    expect(stray.out).toContain('only if no place on this job misses it: then other work left it here');
  });

  it('[K2] says what is left over for a hole, and what goes in and must not stay', async () => {
    const { exit, out } = await whose('--hole', 'Pump 3', '--json');
    expect(exit).toBe(0);
    expect(told(out)).toMatchObject([{ place: 'tray:2', verdict: 'likely', because: 'its own', call: 'back pump 3' }]);
    const none = await whose('--hole', 'cam cover 1');
    expect(none.out).toBe(
      'likely: bolt hex 8 M6x35, tray 1: its own -> back cam cover 1\n' +
        `likely: 3 x bolt hex 8 M6x35, tray 1: like it in every known field -> back cam cover 1 with ${secondOf(none.out)}\n`,
    );
  });

  it('[K3] with nothing said of a fastener it goes through every stray called', async () => {
    expect((await whose()).out).toBe('no stray was called: say what is known of the fastener in the hand\n');
    const other = newBench();
    other.copy(bench);
    await other.run(['take', 'hatchback'], { input: 'stray bolt hex 12 M8x40 in 2\nstray screw star 30 M5x12 in 1\n' });
    const { out } = await other.run(['whose', 'hatchback']);
    expect(out.split('\n').filter((line) => line.startsWith('stray '))).toEqual([
      expect.stringMatching(/^stray s\d+\.1: bolt hex 12 M8x40$/),
      expect.stringMatching(/^stray s\d+\.1: screw star 30 M5x12$/),
    ]);
    expect(out).toMatch(/likely: pump 3: it alone is open there -> strike \d+; back pump 3/);
    expect(out).toMatch(/likely: no part of this job: .* -> not of this car s\d+\.1 by … because …/);
    const listed = told((await other.run(['whose', 'hatchback', '--json'])).out) as (Told & { stray: string })[];
    expect(new Set(listed.map((one) => one.stray)).size).toBe(2);
    other.remove();
  });

  it('writes nothing', async () => {
    const before = bench.callsOf('hatchback');
    await whose('--head', '12');
    await whose('--hole', 'pump 3');
    expect(bench.callsOf('hatchback')).toEqual(before);
  });

  it.each([
    [['--head', 'round'], /"round" is no head/],
    [['--thread', 'M8x9'], /M8/],
    [['--length', 'long'], /"long" is no length in millimetres/],
    [['--length', '-3'], /"-3" is no length in millimetres/],
    [['--kind', 'rivet'], /"rivet" is no kind: bolt, nut/],
    [['--class', 'a b'], /"a b" is no property class/],
    [['--tray', '2'], /a tray alone tells nothing/],
    [['--head', '12', '--tray', '9'], /no tray "9" on this job; there are 1, 2/],
    [['--hole', 'pump 30'], /"pump 30" is no hole of this job: of pump 1, 2, 3.* are called so far/],
    [['--hole', ''], /"" is no hole of this job: say an area and a number; the areas are .*pump/],
    [['--hole', 'pump 3', '--head', '12'], /--hole asks what is left over for it/],
    [['--colour', 'red'], /unknown option/],
    [['another'], /whose JOB/],
  ])('answers %j with one clear line and 64', async (args, why) => {
    const { exit, out, complaint } = await whose(...args);
    expect({ exit, out }).toEqual({ exit: 64, out: '' });
    expect(complaint).toMatch(why);
    expect(complaint.trimEnd().split('\n')).toHaveLength(1);
  });

  it('answers a job there is none of with 2', async () => {
    const { exit, complaint } = await bench.run(['whose', 'nobody', '--head', '12']);
    expect(exit).toBe(2);
    expect(complaint).toContain('there is no job "');
  });
});
const secondOf = (out: string): string => /with (f\d+\.\d+)/.exec(out)?.[1] ?? 'none';
