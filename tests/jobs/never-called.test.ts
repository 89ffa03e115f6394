// The reference job, free, with a bolt never called at all: every line that speaks of it left out, for each of the 47.
import { beforeAll, describe, expect, it } from 'vitest';
import { touches } from '../../src/job/touches.ts';
import { type LeftOut, leftOut } from './leave-one-out.ts';
import { linesOf, playLines, type ScriptLine, scriptLines } from './lines.ts';

describe('free, a bolt never called at all', () => {
  const script = scriptLines('reference-free.calls');
  const whole = playLines(script);
  const written = (i: number) => {
    const from = whole.places[i]?.ledger.lines.length ?? 0;
    const to = whole.places[i + 1]?.ledger.lines.length ?? whole.ledger.lines.length;
    return linesOf(whole.ledger).slice(from, to);
  };
  /** The lines that speak of one hole and no other. */
  const linesOfHole = Map.groupBy(
    script.flatMap((line, i): { hole: string; line: ScriptLine }[] => {
      const about = written(i).flatMap(({ entries }) => entries.flatMap(touches));
      const holes = new Set(about.filter((at) => at.startsWith('hole:')));
      return holes.size === 1 ? [{ hole: [...holes][0] as string, line }] : [];
    }),
    ({ hole }) => hole,
  );
  const holes = [...linesOfHole.keys()];

  const without = (hole: string) => leftOut(script, whole, linesOfHole.get(hole)?.map(({ line }) => line) ?? []);
  let rows: [string, LeftOut][] = [];
  beforeAll(() => {
    rows = holes.map((hole) => [hole, without(hole)]);
  }, 300_000);

  it('[K4] is missed in the count of the holes, whichever of the 47 it is', () => {
    expect(holes).toHaveLength(47);
    const notCaught = rows.filter(([hole, { outcome, places }]) => {
      const area = hole.slice('hole:'.length, hole.indexOf('/'));
      return outcome !== 'stops' || !places.includes(`area:${area}`);
    });
    expect(notCaught.map(([hole]) => hole)).toEqual([]);
  });

  it('[K4] is shown there and nowhere else, where every other call was made', () => {
    expect(without('hole:cam cover/10')).toMatchObject({
      line: 'off 10 · back 10',
      outcome: 'stops',
      because: ['cam cover: 10 holes counted by eye, 9 called'],
    });
  });
});
