// What a wide window has room for, and what is told however little room there is: an arm of a job without a plan, its last
// bolt unlike its neighbours.
import { expect, it } from 'vitest';
import { linesOfScript, playLines } from '../jobs/lines.ts';
import { demoDesk, sceneOf, textOf } from './scene.ts';

const area = 'right lower control arm';
const { ledger, now } = playLines(
  linesOfScript(`job estate
area ${area}
use bolt hex 16 M10x1.25x60 10.9
off 1
off 2
use bolt hex 16 M10x1.25x55 10.9
off 3
use nut hex 18 M12x1.5 one-use
off 4 nut
use bolt hex 18 M12x1.5x90 10.9
off 4
holes 4
connection left wheel speed lead off the strut in ${area}
parted left wheel speed lead off the strut`),
);
const shown = (columns: number, rows: number, screen: 'strip' | 'build' = 'strip') =>
  textOf(sceneOf({ screen }, { desk: { ...demoDesk({ area, tray: '1' }), ledger, now }, columns, rows }));
const inOneRow = (text: string) => text.replaceAll(/[\s│]+/g, ' ');

it.each([
  [90, 24],
  [80, 24],
  [120, 40],
])('[F2] tells at %i by %i which keys answer a suspicion, whatever of it is cut', (columns, rows) => {
  const sheet = shown(columns, rows)
    .split('\n')
    .map((row) => row.split('│')[1] ?? '');
  expect(inOneRow(sheet.join(' '))).toContain('u wrong indeed, z meant so');
});
it('[F2] tells on the way back the way to them, where the same letter is another call', () => {
  expect(inOneRow(shown(80, 24, 'build'))).toContain('S u wrong indeed, S z meant so');
});
it('leaves the list beside a few holes the room for fastener, tray and state', () => {
  const wide = shown(120, 40);
  expect(wide).toMatch(/4 nut {2}off nut hex 18 M12x1.5 one-use +tray 1/);
  expect(wide).toMatch(/ 1 +off bolt hex 16 M10x1.25x60 10.9 +tray 1/);
  expect(wide).toMatch(/joint {2}left wheel speed lead off the strut +parted/);
});
it('leaves a joint its state where its name has no room', () => {
  expect(shown(112, 40)).toMatch(/joint {2}left wheel speed lead .*… +parted/);
});
it('leaves the figures of an area out for no name that stands beside them', () => {
  expect(shown(120, 40)).toContain('│ 5 off of 5 ');
});
