// F2 over every shipped plan and the reference job: what is seen of one wrong bolt, and what is suspected without cause.
import { describe, expect, it } from 'vitest';
import { alarmsIn, cars, seenOver } from './wrong-bolts.ts';

describe.each([
  ['with its plan', true],
  ['with no plan', false],
])('a car called %s', (_, planned) => {
  it('[F2] nine in ten of the wrong bolts that can be seen in what was called are suspected, over 1,000 seeds', () => {
    const { jobs, visible, suspected, alarms } = seenOver(1000, planned);
    expect(jobs).toBe(1000);
    expect(visible).toBeGreaterThan(400);
    expect(suspected / visible).toBeGreaterThanOrEqual(0.9);
    expect(alarms / jobs).toBeLessThanOrEqual(1);
  });

  it.each(cars)('[F2] raises at most one suspicion without cause, and none at a longer bolt: $name', (car) => {
    const alarms = alarmsIn(car, planned);
    expect(alarms.length).toBeLessThanOrEqual(planned ? 0 : 1);
    const longer = alarms.filter((hole) => isLonger(car, hole));
    expect(longer).toEqual([]);
  });
});

/** Like its neighbours in all but its length. */
function isLonger({ holes }: (typeof cars)[number], hole: string): boolean {
  const own = holes.get(hole);
  const area = hole.slice(0, hole.indexOf('/') + 1);
  return [...holes].some(
    ([other, spec]) =>
      other !== hole &&
      other.startsWith(area) &&
      spec.thread === own?.thread &&
      (spec.lengthMm ?? 0) < (own?.lengthMm ?? 0),
  );
}
