// The reference job with each of its call lines left out once, from its plan and free. The tables:
// npx tsx tests/jobs/leave-one-out.ts reference-planned.calls reference-free.calls
import { beforeAll, describe, expect, it } from 'vitest';
import { type LeftOut, leaveEachOut } from './leave-one-out.ts';
import { playLines, scriptLines } from './lines.ts';
import { linesWithReasons, type Reasons } from './reasons.ts';
import { freeHarmless, plannedHarmless } from './reference-reasons.ts';
import { standingOf } from './standing.ts';

/** Many whole jobs are played; being slow on a busy machine is no fault. */
const patience = 300_000;

const told = (rows: readonly { area: string; line: string }[]) =>
  rows.map(({ area, line }) => `${area}: ${line}`).sort();
const of = (rows: readonly LeftOut[], outcome: string) => rows.filter((row) => row.outcome === outcome);
const isOut = ({ line }: LeftOut) => /^(off|slack|missing|wrong one) /.test(line) && !line.startsWith('slack only');
const placesIn = (row: LeftOut, area: string) => row.places.filter((at) => at.startsWith(`hole:${area}/`));

const jobs: [string, Reasons, { stops: number; refused: number; harmless: number }][] = [
  ['reference-planned.calls', plannedHarmless, { stops: 217, refused: 20, harmless: 9 }],
  ['reference-free.calls', freeHarmless, { stops: 231, refused: 25, harmless: 75 }],
];

describe.each(jobs)('a line left out of %s', (name, harmless, counts) => {
  const script = scriptLines(name);
  const whole = playLines(script);
  let rows: LeftOut[] = [];
  beforeAll(() => {
    rows = leaveEachOut(script, whole);
  }, patience);

  it('release stops and names a place, or a later line is refused, or it is harmless', () => {
    const found = { stops: of(rows, 'stops').length, refused: of(rows, 'refused').length };
    expect({ ...found, harmless: of(rows, 'harmless').length }).toEqual(counts);
    const nowhere = of(rows, 'stops').filter((row) => row.places.length === 0);
    expect(nowhere.map((row) => row.line)).toEqual(['release by the mechanic']);
  });

  it('is harmless only where a reason is given, and for no other line is one given', () => {
    expect(told(of(rows, 'harmless'))).toEqual(told(linesWithReasons(harmless)));
  });

  it('never lets a later line through that is overridden', () => {
    expect(rows.filter((row) => row.overridden)).toEqual([]);
  });

  it('[X1] stops release where something is not called back, made, taken out, renewed, counted or proven', () => {
    const inward = /^(back|new|tight|pass|made|out|renewed|put right|count|turned|mark|filled|start|second look) /;
    const passed = rows.filter((row) => inward.test(`${row.line} `) && row.outcome !== 'stops');
    expect(told(passed)).toEqual([]);
  });

  if (name === 'reference-planned.calls') {
    it('[K4 X1] stops release at its area for every line by which a fastener comes out', () => {
      const out = rows.filter(isOut);
      expect(out).toHaveLength(48);
      const [again, ...others] = out.filter((row) => row.outcome !== 'stops' || placesIn(row, row.area).length === 0);
      expect(others).toEqual([]);
      // Called off a second time, as the working bolt, to the scrap pile: what stands at the end is the same.
      expect(again).toMatchObject({ area: 'crank pulley', line: 'off 1', outcome: 'refused' });
      expect(again?.because).toEqual([expect.stringContaining('crank pulley 1 is as found: nothing came out of it')]);
      const without = playLines(script.filter((line) => line.at !== again?.at));
      expect(standingOf(without.ledger, without.now)).toEqual(standingOf(whole.ledger, whole.now));
    });
  }
});
