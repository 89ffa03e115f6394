// O4 as it is typed: torques in any unit, stages, an adapter, and the torque read at the end.
import { describe, expect, it } from 'vitest';
import type { Desk } from '../../src/calls/desk.ts';
import { readLine } from '../../src/calls/line-reader.ts';
import { meantBy } from '../../src/calls/row.ts';
import { firstFacing } from '../../src/view/facing.ts';
import { bench, m8 } from '../job/bench.ts';

function meant(text: string) {
  const on = bench();
  on.off('head/1', m8);
  const facing = { ...firstFacing, area: 'head' };
  const desk: Desk = { ledger: on.ledger(), facing, now: on.now(), plans: () => [] };
  const read = readLine(desk, text);
  if ('why' in read) return { no: { because: read.why } };
  return meantBy(read.row, desk, read.args);
}
const declared = (entry: object) => ({ say: { verb: 'declare', entries: [entry] } });
const ofArea = (method: object) => declared({ kind: 'area-declared', area: 'head', method });

it('makes no new area of a name with a slip', () => {
  expect(meant('critical haed')).toMatchObject({ no: { because: 'there is no area "haed"' } });
  expect(meant('critical head')).toMatchObject(declared({ kind: 'area-declared', area: 'head', critical: true }));
});
it('[O3] takes the name of a pass for no area', () => {
  expect(meant('pass final')).toMatchObject({ no: { because: '"final" is a pass, and no area' } });
  expect(meant('pass')).toMatchObject({ say: { verb: 'complete-pass', area: 'head' } });
});
describe('a method as it is typed', () => {
  it.each([
    ['by torque 40', { by: 'torque', newtonMetres: 40 }],
    ['by torque 25 lbf ft', { by: 'torque', newtonMetres: 33.9 }],
    ['by torque with oil 20 Nm', { by: 'torque', newtonMetres: 20, with: 'oil' }],
    ['by torque into aluminium 9.5', { by: 'torque', newtonMetres: 9.5, into: 'aluminium' }],
    [
      'by torque-angle 40 +90 +90',
      { by: 'torque-angle', stages: [{ newtonMetres: 40 }, { degrees: 90 }, { degrees: 90 }] },
    ],
    [
      'by torque-angle 30 +90 accept 60-110',
      {
        by: 'torque-angle',
        stages: [{ newtonMetres: 30 }, { degrees: 90 }, { acceptFromNewtonMetres: 60, acceptToNewtonMetres: 110 }],
      },
    ],
    ['by shoulder', { by: 'shoulder' }],
  ])('[O4] %s', (text, method) => expect(meant(text)).toEqual(ofArea(method)));

  it.each([
    ['by torque banana', /no stage/],
    ['by torque 40 20', /turns nothing/],
    ['by torque-angle +90', /before any torque/],
  ])('[O4] %s is no method', (text, because) =>
    expect(meant(text)).toMatchObject({ no: { because: expect.stringMatching(because) } }),
  );
});

describe('an adapter as it is typed', () => {
  it('[O4] has its length, the wrench it sits on, and an angle where it is not straight out', () => {
    const adapter = { wrenchLengthMm: 400, adapterLengthMm: 50 };
    const ofHole = (more: object) =>
      declared({ kind: 'hole-declared', hole: 'head/1', adapter: { ...adapter, ...more } });
    expect(meant('adapter 1 50 on 400')).toEqual(ofHole({}));
    expect(meant('adapter 1 50 on 400 at 45')).toEqual(ofHole({ angleDegrees: 45 }));
    expect(meant('adapter 1 380 on 400 at 180')).toMatchObject({
      no: { because: expect.stringMatching(/the hand is over the fastener/) },
    });
  });
});

it('[O4] the torque read at the end goes with the call', () => {
  expect(meant('tight 1 read 80')).toEqual({ say: { verb: 'tighten', hole: 'head/1', readNewtonMetres: 80 } });
  expect(meant('tight 1')).toEqual({ say: { verb: 'tighten', hole: 'head/1' } });
});
