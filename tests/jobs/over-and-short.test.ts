// One too many and one too few in the same tray at once: the number by eye agrees, and hides both. Resolved by call
// lines alone to a release with nothing open, whichever way it turns out.
import { describe, expect, it } from 'vitest';
import { openPoints } from '../../src/job/open-points.ts';
import { isReleased } from './leave-one-out.ts';
import { linesOfScript, playLines } from './lines.ts';

/** Three bolts came away, two were called; one of those two rolled off, and the third lies in its stead. */
const inTheTray = `
odometer 118400
area bracket
by torque
use bolt hex 10 M6x20
off 1
off 2
count 1 is 2
short bolt hex 10 M6x20 in 1
stray bolt hex 10 M6x25 in 1
holes 3
`;
const closing = `
pass
pass
all trays empty
tools out
release by the mechanic
`;
const codes = (lines: string) => {
  const { ledger, now } = playLines(linesOfScript(lines));
  return openPoints(ledger, now).map((point) => `${point.code} ${point.at}`);
};

describe('over and short in one tray at once', () => {
  it('[K2 K3 K4] each is an open point of its own', () => {
    const open = codes(inTheTray);
    expect(open.filter((point) => point.startsWith('lost '))).toHaveLength(1);
    expect(open.filter((point) => point.startsWith('stray '))).toEqual(['stray stray:s7.1']);
    expect(open).toContain('holes-not-counted area:bracket');
  });

  const outcomes: [string, string][] = [
    [
      'the stray is the third, and the lost one turns up',
      `give s7.1 to bracket 3
       found again bracket 1 in tray 1
       back 1
       back 2`,
    ],
    [
      'the stray is the third, and the lost one is not in the vehicle',
      `box new bolt as bolt hex 10 M6x20
       give s7.1 to bracket 3
       ruled out bracket 1 by the mechanic because seen under the bench
       back 2
       new 1 from new bolt`,
    ],
    [
      'the stray is of another car, and the third is still in its hole',
      `not of this car s7.1 by the mechanic because from the van before
       found 3 as bolt hex 10 M6x25
       found again bracket 1 in tray 1
       back 1
       back 2`,
    ],
  ];
  it.each(outcomes)('[K2 K3 X1] %s: nothing is open, and the car leaves', (_, resolved) => {
    const job = playLines(linesOfScript(`${inTheTray}${resolved}${closing}`));
    expect(job.refused).toEqual([]);
    expect(openPoints(job.ledger, job.now)).toEqual([]);
    expect(isReleased(job)).toBe(true);
  });
});
