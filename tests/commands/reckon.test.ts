// reckon: each topic answers in lines and as data, bad input in one line and 64. What the figures are held to stands in
// tests/published; here a figure of each topic shows that the command asks the right computation.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { parse } from '../../src/commands/answer.ts';
import { reckon, topics } from '../../src/commands/reckon.ts';
import { newBench, steersNothing } from './run.ts';

const bench = newBench();
afterAll(() => {
  vi.unstubAllEnvs();
  bench.remove();
});

async function said(...words: string[]): Promise<{ exit: number; out: string; complaint: string }> {
  const args = parse(words, reckon.options);
  if (typeof args === 'string') throw new Error(args);
  const told = { out: '', complaint: '' };
  const out = {
    write(text: string) {
      told.out += text;
    },
    complain(text: string) {
      told.complaint += `${text}\n`;
    },
    isUnread: () => false,
  };
  return { exit: await reckon.run(args, out, new URL('file:///')), ...told };
}

describe('reckon', () => {
  it.each([
    [
      ['thread', 'M8x1.25x30', '8.8'],
      /^M8x30 8.8: pitch 1.25 mm.*stress area 36.6 mm².*proof load of class 8.8: 21.2 kN/s,
    ],
    [['thread', '5/16-18 x 1'], /pitch 1.411 mm, inch coarse/],
    [['head', 'hex', '14'], /^hex 14: M10 \(JIS small hex\)\na socket of 9\/16 in nearly fits: 0.29 mm loose\n$/],
    [['head', 'hex 14', 'M8'], /not on M8/],
    [['head', 'hex', '13', 'M8'], /hex 13 goes with M8/],
    [['threads', '5/16-18', 'M8'], /inch thread among metric ones.*\n.*binds within the first turn \(0.6 free\)/],
    [['threads', 'M8x1.25', 'M8'], /^one and the same thread\n$/],
    [
      ['odd', 'bolt hex 17 M10x1.25x50 8.8', 'bolt hex 14 M10x1.25x60 10.9', 'bolt hex 14 M10x1.25x60 10.9'],
      /^class 8.8, not 10.9 as its neighbours; 10 mm shorter\nhex 17, not hex 14 as its neighbours\n$/,
    ],
    [['odd', 'bolt hex 10 M6x45', '--plan', 'bolt hex 10 M6x25'], /^nothing is odd about bolt hex 10 M6x45\n$/],
    [
      ['odd', 'bolt hex 17 M10x1.25x50 8.8', 'bolt hex 14 M10x1.25x60 10.9'],
      /^nothing is odd about .*\none neighbour tells nothing: name two or more\n$/,
    ],
    [['torque', '25 lbf ft'], /^33.9 N·m, 25 lbf·ft, 3.456 kgf·m\n$/],
    [['torque', '60 Nm', 'M8x30 8.8'], /would stretch for good/],
    [['torque', '60 Nm', 'M8', '8.8', '--by', 'torque-angle'], /passes proof load by design/],
    [['torque', '10 Nm', 'M8', '8.8', '--by', 'shoulder'], /carries no figure/],
    [['wrench', '40 Nm', '400', '50'], /^set 35.56 N·m/],
    [['wrench', '40 Nm', '400', '50', '45'], /^set 36.75 N·m/],
    [['stages', '20 40 +60 +80'], /^20 N·m, 40 N·m, \+60°, \+80°\n.*moves 140°/],
    [['order', 'ring', '8'], /^tighten 1 5 3 7 2 6 4 8\nloosen 8 4 6 2 7 3 5 1\n/],
    [['order', '0,0', '10,0', '20,0'], /^tighten 2 1 3\n.*\nline: /],
    [
      ['insert', 'M8', '12', '--depth', '20', '--drill', '6.75'],
      // Nothing is said first that would bore through a boss of 20.
      /^drill 8.27 to 8.48 .*\ndrill 17 mm deep of the 20 .*bottoming tap.*\nno plug tap: that wants 23.5 mm.*\n.*is the drill for M8 itself/,
    ],
    [['torque', '60', 'M8'], /\nno class known of M8; with its class, as "M8 8.8", it is judged\n/],
    [['cure', '10 C 40 %'], /^10 °C, 40 %: 2.9 times as long\n24 h on the label are 68.7 h here\n$/],
    [
      ['cure', '50F 40%', '12', '--label', '23 C 50 %'],
      /^10 °C, 40 %: 2.9 times as long\n12 h on the label are 34.3 h here\n$/,
    ],
    [
      ['belt', '20', '107', '--off', '2'],
      /^one tooth: 18° at the crank, 9° at the cam\n2 teeth off: 36° .*\n.*after 214 turns/,
    ],
    [
      ['due', '2026-11-25', 'coolant, plain', '--at', '118400 km'],
      /^coolant, plain due by 2029-11-25 or at 176336 km, whichever first \(common practice, no source; cautious\)\n$/,
    ],
    [['due', '2026-01-31', '--months', '1'], /^next due by 2026-02-28 \(as said\)\n$/],
    [['due', '2026-01-31', '--distance', '10000 mi', '--at', '90000 mi'], /^next due at 100000 mi \(as said\)\n$/],
    [['intervals'], /^coolant, plain: 36 months or 36000 mi \(common practice, no source; cautious\)\n/],
    [['made', '2319'], /fitted no earlier than 2019-06-09/],
  ] as [string[], RegExp][])('answers %j', async (words, lines) => {
    const { exit, out, complaint } = await said(...words);
    expect({ exit, complaint }).toEqual({ exit: 0, complaint: '' });
    expect(out).toMatch(lines);
    const data = JSON.parse((await said(...words, '--json')).out);
    expect(data).toMatchObject({ topic: words[0], lines: out.trimEnd().split('\n') });
    expect(Object.keys(data).length).toBeGreaterThan(2);
    expect(JSON.stringify(data)).not.toMatch(/null,"freeTurns"|NaN|undefined/);
  });

  it.each([
    [['thread'], /say reckon thread/],
    [['thread', 'M8x1.35'], /there is no M8x1.35/],
    [['thread', 'banana'], /is no thread/],
    [['thread', 'M8', '7.7'], /no designation/],
    [['thread', 'M8', '--into', 'steel'], /--into says nothing to thread/],
    [['head', 'hex 900'], /no size of a head/],
    [['head', 'oval 3'], /no head/],
    [['threads', 'M8'], /say reckon threads/],
    [['threads', 'M8', 'M9x9x9'], /no thread has a pitch/],
    [['odd'], /say reckon odd/],
    [['odd', 'a big one'], /is no fastener/],
    [['torque', '40 furlongs'], /no unit of torque/],
    [['torque', '--', '-5 Nm'], /a torque of -5/],
    [['torque', '25 Nm', 'M8 8.8', '--into', 'cheese'], /none of aluminium, steel, iron/],
    [['wrench', '40 Nm', '400'], /length of the adapter is missing/],
    [['wrench', '40 Nm', '400', '380', '180'], /the hand is over the fastener/],
    [['wrench', '40 Nm', '400', '50', '270'], /an angle of 270/],
    [['stages', '+90 40'], /before any torque/],
    [['stages', '40 20'], /turns nothing/],
    [['order', 'ring', '2.5'], /no count of holes/],
    [['order', '0,0', '0'], /no place/],
    [['order', 'ring', '100000'], /a count of 100000/],
    [['insert', 'M8', '12', '--depth', '10'], /there are 10 mm/],
    [['insert', '5/16-18', '12'], /the drill is the kit's/],
    [['insert', 'M8', 'x'], /no length/],
    [['due', 'tomorow', 'coolant'], /tomorow.* is no date/],
    [['due', 'today', 'coolant'], /coolant: no interval known; say which: "coolant, plain", "coolant, long-life"/],
    [['cure', '900'], /a temperature of 900/],
    [['cure', '10 C 140 %'], /a humidity of 140/],
    [['belt', '20', '30'], /does not go round|a belt of 30/],
    [['belt', 'x', '107'], /no count of teeth/],
    [['due', 'today', 'timing belt'], /no usual interval; the maker's distance and years/],
    [['due', '2026-02-30', '--months', '1'], /there is no 2026-02-30/],
    [['due', '2026-02-28', '--distance', '100 leagues'], /no unit of distance/],
    [['due', '2026-02-28', '--distance', '10000 km'], /wants the odometer/],
    [['made', '319'], /three figures/],
    [['sideways'], /no topic "sideways"; there are thread, head/],
    [['--json'], /no topic; there are/],
  ] as [string[], RegExp][])('answers %j in one line and 64', async (words, why) => {
    const { exit, out, complaint } = await said(...words);
    expect({ exit, out }).toEqual({ exit: 64, out: '' });
    expect(complaint).toMatch(/^countback: [^\n]+\n$/);
    expect(complaint).toMatch(why);
  });

  it('alone lists every topic with what it takes', async () => {
    const { exit, out } = await said();
    expect(exit).toBe(0);
    for (const { usage, help } of topics) expect(out).toContain(`reckon ${usage}\n      ${help}\n`);
  });

  it('is a command of the program', async () => {
    const [fine, helped, wrong, steering] = await Promise.all([
      bench.run(['reckon', 'belt', '24', '123']),
      bench.run(['reckon', '--help']),
      bench.run(['reckon', 'belt', '24']),
      bench.run(['reckon', 'thread', '\u001b[31mM8']),
    ]);
    expect(fine).toMatchObject({ exit: 0, complaint: '' });
    expect(fine.out).toMatch(/after 82 turns/);
    expect(helped.out).toMatch(/^countback reckon TOPIC/);
    expect(wrong).toMatchObject({ exit: 64, out: '' });
    expect(wrong.complaint).toMatch(/^countback: [^\n]+\n$/);
    expect(steering.exit).toBe(64);
    expect(steering.complaint).toMatch(steersNothing);
  });
});

it('due and intervals go by the rows of the settings before the usual ones', async () => {
  const own = { 'coolant, plain': { months: 12 }, coolant: { months: 48, distance: { distance: 60_000, unit: 'km' } } };
  vi.stubEnv('COUNTBACK_DATA', bench.dataDir);
  mkdirSync(bench.dataDir, { recursive: true });
  const settings = join(bench.dataDir, 'settings.json');
  writeFileSync(settings, JSON.stringify({ intervals: own }));
  const { out } = await said('intervals');
  expect(out).toMatch(/^coolant, plain: 12 months \(as entered\)\ncoolant: 48 months or 60000 km \(as entered\)\n/);
  expect(out.match(/coolant, plain/g)).toHaveLength(1);
  expect(out).toContain('brake fluid: 24 months (common practice, no source; takes up water)');
  expect((await said('due', '2026-11-25', 'coolant', '--at', '1000 km')).out).toBe(
    'coolant due by 2030-11-25 or at 61000 km, whichever first (as entered)\n',
  );
  // A slip in the file is told, and the usual ones hold.
  writeFileSync(settings, '{ "intervals": 3 }');
  const slipped = await said('intervals');
  expect(slipped.complaint).toContain(settings);
  expect(slipped.out).toContain('coolant, plain: 36 months');
  // Who asks for another topic has no use for it.
  expect((await said('head', 'hex 10')).complaint).toBe('');
});
