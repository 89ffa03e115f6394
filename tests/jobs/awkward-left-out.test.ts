// The awkward job with each of its call lines left out once, and with each thing that is awkward about it left out whole.
// The table: npx tsx tests/jobs/leave-one-out.ts awkward.calls
import { beforeAll, describe, expect, it } from 'vitest';
import { awkwardHarmless, awkwardRefused } from './awkward-reasons.ts';
import { type LeftOut, leaveEachOut, leftOut } from './leave-one-out.ts';
import { playLines, type ScriptLine, scriptLines } from './lines.ts';
import { linesWithReasons } from './reasons.ts';

const script = scriptLines('awkward.calls');
const whole = playLines(script);
const told = (rows: readonly { area: string; line: string }[]) =>
  rows.map(({ area, line }) => `${area}: ${line}`).sort();

describe('a line left out of the awkward job', () => {
  let rows: LeftOut[] = [];
  beforeAll(() => {
    rows = leaveEachOut(script, whole);
  }, 300_000);
  const of = (outcome: string) => rows.filter((row) => row.outcome === outcome);

  it('[X1] stops release and names a place, but for the lines listed with their reasons', () => {
    expect(told(of('harmless'))).toEqual(told(linesWithReasons(awkwardHarmless)));
    expect(told(of('refused'))).toEqual(told(linesWithReasons(awkwardRefused)));
    expect(
      of('stops')
        .filter((row) => row.places.length === 0)
        .map((row) => row.line),
    ).toEqual(['release by the mechanic']);
    expect({ stops: of('stops').length, refused: of('refused').length, harmless: of('harmless').length }).toEqual({
      stops: 214,
      refused: 29,
      harmless: 58,
    });
    expect(rows.filter((row) => row.overridden)).toEqual([]);
  });
});

/** The lines of these texts, said while an area was in use; the last so many of each. */
function said(area: string, texts: readonly string[], last = 1): ScriptLine[] {
  const inUse = new Map(whole.places.map((place) => [place.at, place.facing.area ?? '']));
  return texts.flatMap((text) =>
    script.filter((line) => line.text === text && inUse.get(line.at) === area).slice(-last),
  );
}
const numbered = (call: string, last: number) => Array.from({ length: last }, (_, i) => `${call} ${i + 1}`);

describe('an awkward thing left out', () => {
  const things: [string, ScriptLine[], string][] = [
    ['the new crush washer', said('sump plug', ['new 1 washer from new sump washer']), 'hole:sump plug/1 washer'],
    ['the stud back with its nut', said('exhaust flange', ['back 2']), 'hole:exhaust flange/2 stud'],
    ['the captive bolts back', said('belt cover', numbered('back', 4)), 'tray:belt cover'],
    ['the new split pin', said('ball joint', ['new 1 pin from new split pin']), 'hole:ball joint/1 pin'],
    ['the trade', said('coil bracket', ['back 1 with hose bracket 1']), 'hole:coil bracket/1'],
    ['what the magnet found', said('hose bracket', ['found again hose bracket 2 in tray 2']), 'hole:hose bracket/2'],
    ['the piece drawn', said('manifold', ['piece out 3']), 'hole:manifold/3'],
    ['the wheel taken off again', said('left front wheel', numbered('off', 5)), 'hole:left front wheel/1'],
    ['coming back', said('idler plate', ['resumed']), 'vehicle'],
    ['the pedal', said('left front wheel', ['pedal firm']), 'vehicle'],
    [
      'both beads',
      said('sump plug', ['bead timing case face with joint sealant', 'bead timing case face with flange sealant']),
      'face:timing case face',
    ],
    ['the cold bench', said('sump plug', ['bench 6 60']), 'face:timing case face'],
    [
      'that 7 was 8',
      said('tensioner', ['was idler plate 7 really idler plate 8 because counted from the wrong end']),
      'hole:idler plate/7',
    ],
    ['the bolt never called', said('splash guard', ['off 6', 'back 6', 'tight 6'], 2), 'area:splash guard'],
  ];

  it.each(things)('%s: release stops and its place is named', (_, lines, place) => {
    expect(lines.length).toBeGreaterThan(0);
    const row = leftOut(script, whole, lines);
    expect(row.outcome).toBe('stops');
    expect(row.places).toContain(place);
  });
});
