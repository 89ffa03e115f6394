// The played jobs themselves: the same for the same number, sound in the ledger, and every kind of mistake among them; and
// what the ranking proposes on them is taken.
import { describe, expect, it } from 'vitest';
import { decide } from '../../src/job/decide.ts';
import { everyKey } from '../../src/job/drawers.ts';
import { every, stateOf } from '../../src/job/ledger.ts';
import { whose } from '../../src/job/whose.ts';
import { settlingCalls } from '../../src/job/whose-calls.ts';
import { rankOf } from './answer.ts';
import { knownFieldsAndTray, openWithThisHead } from './baselines.ts';
import { type Leftovers, leftoversOf } from './leftover.ts';
import { mistakeKinds } from './mistakes.ts';
import { newScore, scoreOn } from './scoring.ts';
import { mustSay, say, type Told } from './told.ts';

const slowMs = 9000;
const jobs: readonly Leftovers[] = Array.from({ length: 80 }, (_, i) => leftoversOf(i + 1));
const strays = jobs.flatMap((job) => job.strays.map((stray) => ({ job, stray })));

describe('a played job with fasteners left over', () => {
  it('is the same for the same number, and another for another', () => {
    expect(JSON.stringify(leftoversOf(7))).toBe(JSON.stringify(leftoversOf(7)));
    expect(leftoversOf(7).ledger.lines.all).not.toEqual(leftoversOf(8).ledger.lines.all);
  });

  it('has 20 to 400 fasteners or little more, with a plan and without', () => {
    const counts = jobs.map((job) => job.fasteners);
    expect(Math.min(...counts)).toBeLessThan(30);
    expect(Math.max(...counts)).toBeGreaterThan(250);
    expect(Math.max(...counts)).toBeLessThan(430);
    expect(new Set(jobs.map((job) => job.planned)).size).toBe(2);
  });

  it('leaves something over by every kind of mistake, and no entry of it is a misfit', () => {
    expect(new Set(strays.map(({ stray }) => stray.kind))).toEqual(new Set(mistakeKinds));
    for (const { ledger } of jobs) expect([...everyKey(ledger.misfits)]).toEqual([]);
  });

  it.each([
    ['left out, hole open', 'open'],
    ['call too many', 'closed'],
    ['back with the wrong area current', 'closed'],
    ['one call for two', 'never called'],
    ['never called', 'never called'],
    ['off with the wrong area current', 'never called'],
    ['strike too many', 'never called'],
    ['wrong size set', 'open'],
    ['old one kept', 'old one'],
  ])('%s: its hole stands %s in the ledger', (kind, as) => {
    const answers = strays.filter(({ stray }) => stray.kind === kind).map(({ stray }) => stray.answer.as);
    expect(new Set(answers)).toEqual(new Set([as]));
  });

  it('has an answer that is found first when it is named, whatever its kind', () => {
    for (const { job, stray } of strays) {
      const { as, area, holes = [], box } = stray.answer;
      const place = box
        ? `box:${box}`
        : as === 'not of this job'
          ? 'vehicle'
          : holes[0]
            ? `hole:${holes[0]}`
            : `area:${area}`;
      expect(rankOf(job.ledger, stray.answer, [{ as, place }])).toBe(1);
    }
  });

  it('is not won by naming a hole of another area, nor by naming every hole there is', () => {
    for (const { job, stray } of strays.filter((one) => one.stray.answer.as === 'closed')) {
      const all = [...every(job.ledger, 'hole')].map((h) => ({ as: 'closed' as const, place: `hole:${h.hole}` }));
      const elsewhere = all.filter(({ place }) => !place.startsWith(`hole:${stray.answer.area}/`));
      expect(rankOf(job.ledger, stray.answer, elsewhere)).toBe(Number.POSITIVE_INFINITY);
      const last = all.toSorted(
        (a, b) =>
          (a.place.includes(`${stray.answer.area}/`) ? 1 : 0) - (b.place.includes(`${stray.answer.area}/`) ? 1 : 0),
      );
      expect(rankOf(job.ledger, stray.answer, last)).toBeGreaterThan(1);
    }
  });

  it('is answered by either baseline now and then, and by neither mostly', () => {
    for (const baseline of [openWithThisHead, knownFieldsAndTray]) {
      const score = newScore();
      for (const job of jobs) scoreOn(job, baseline, score);
      expect(score.all.first / score.all.strays).toBeGreaterThan(0.05);
      expect(score.all.first / score.all.strays).toBeLessThan(0.6);
    }
  });
});

describe('whose the leftovers of a played job are', () => {
  it('[K3 X5] the call of the likeliest is one the job takes', () => {
    for (const { seed, ledger, strays } of jobs.slice(0, 40)) {
      const hands = strays.map((one) => one.asked);
      for (const [i, [best]] of whose(ledger, hands).entries()) {
        const hand = hands[i] as (typeof hands)[number];
        for (const said of best ? settlingCalls(ledger, best, hand) : []) {
          const told: Told = { ledger, facing: {}, atMs: Date.UTC(2026, 1, 1) };
          const answer = decide(ledger, said, { atMs: told.atMs, zoneMin: 0, run: 2, awakeMs: 0 });
          expect(answer, `seed ${seed}: ${JSON.stringify(said)} for ${JSON.stringify(best)}`).not.toHaveProperty(
            'refused',
          );
        }
      }
    }
  });

  it('[K3 X5] called a stray before, the calls of the likeliest are taken one after the other', () => {
    let settled = 0;
    for (const { ledger, strays } of jobs.slice(40, 70)) {
      const told: Told = { ledger, facing: {}, atMs: Date.UTC(2026, 1, 1) };
      const hand = strays[0]?.asked;
      if (!hand) continue;
      const spec = Object.keys(hand.spec).length === 0 ? { kind: 'bolt' as const } : hand.spec;
      mustSay(told, { verb: 'find-stray', spec, tray: hand.tray ?? '1' }, slowMs);
      const stray = `s${told.ledger.lines.length}.1`;
      const [best] = whose(told.ledger, [hand])[0] ?? [];
      if (!best) continue;
      const calls = settlingCalls(told.ledger, best, hand, stray);
      for (const said of calls) expect(say(told, said, slowMs), JSON.stringify(said)).toBe(true);
      if (calls.length > 0 && stateOf(told.ledger, 'stray', stray)?.settled !== undefined) settled++;
      else if (!stateOf(told.ledger, 'stray', stray)) settled++;
    }
    expect(settled).toBeGreaterThan(20);
  });
});
