// Strip and build: all areas on the left, the cardboard of the one in use beside them, and where there is room its holes
// one by one. Below the cardboard stands what the next call speaks of.

import { nextHole } from '../calls/desk.ts';
import type { Args } from '../calls/form.ts';
import type { Listed } from '../calls/listed.ts';
import { areasListed, belongingsHere, holesHere } from '../calls/lists/holes.ts';
import { areaDrawn, type DrawnArea, type DrawnHole } from '../calls/lists/map.ts';
import { nextArea } from '../calls/next-area.ts';
import { plainText } from '../trade/plain-text.ts';
import { fitted, spread, windowFrom, wrapped } from './cells.ts';
import { chosenLook, type Look, lookOf, nextLook, shapeOf, takenLook, uncoloured, wordsLook } from './colours.ts';
import type { Scene } from './frame.ts';
import { keyOf } from './key-names.ts';
import { listedRow } from './list-rows.ts';
import { mapRows, type Tag } from './map.ts';
import { aroundRows, nextRows } from './next-rows.ts';
import { filled, plainRow, type Row } from './rows.tsx';

/** Wide enough for the holes one by one beside the cardboard, and for their specs unshortened. */
const widthWithList = 110;
const widthWithAll = 160;
const areaCellsOf = (columns: number): number => (columns >= widthWithAll ? 36 : 27);
const listCellsOf = (columns: number): number => (columns >= widthWithAll ? 66 : columns >= widthWithList ? 46 : 0);
/** In no look of its own: a change of look costs more than a cell, and there are two on every row. */
const rule: Row = [{ text: '│' }];

export function benchRows(scene: Scene, rows: number): Row[] {
  const { desk, view, columns } = scene;
  const building = view.screen === 'build';
  const areas = areasListed(desk, building);
  if (areas.length === 0 && desk.facing.area === undefined) return firstHints(scene);
  const next = nextHole(desk, view.screen);
  const areaCells = areaCellsOf(columns);
  const listCells = listCellsOf(columns);
  const room = columns - areaCells - 1 - (listCells > 0 ? listCells + 1 : 0);
  const left = areaRows(areas, desk.facing.area, rows, areaCells);
  const drawn = areaDrawn(desk, next, building);
  const sheet = drawn ? sheetRows(scene, drawn, next, room, rows) : noAreaRows(scene, room);
  const beside = [left, filled(sheet, rows, room)];
  if (listCells > 0) beside.push(filled(holeRows(scene, next, listCells, rows), rows, listCells));
  return Array.from({ length: rows }, (_, i) =>
    beside.flatMap((column, at) => [...(at > 0 ? rule : []), ...(column[i] as Row)]),
  );
}

function areaRows(areas: readonly Listed[], inUse: string | undefined, rows: number, areaCells: number): Row[] {
  const at = Math.max(
    0,
    areas.findIndex((a) => a.name === inUse),
  );
  const from = windowFrom(at, areas.length, rows);
  const shown = areas.slice(from, from + rows).map((area): Row => {
    const used = area.name === inUse;
    const words = ` ${spread(plainText(area.name), area.text, areaCells - 3)}`;
    if (used) return plainRow(`>${shapeOf(area.mark)}${words}`, chosenLook);
    return [
      { text: ' ' },
      { text: shapeOf(area.mark), look: lookOf(area.mark) },
      { text: words, look: wordsLook(area.mark) },
    ];
  });
  return filled(shown, rows, areaCells);
}

function noAreaRows(scene: Scene, columns: number): Row[] {
  const { desk, keymap, view } = scene;
  const { area } = desk.facing;
  const first = nextArea(desk, view.screen === 'build');
  const words =
    area === undefined
      ? [
          first === undefined
            ? `No area is in use. Press ${keyOf(keymap, 'strip', 'area')} and name one.`
            : `${keyOf(keymap, 'strip', 'next-area')} begins with ${plainText(first)}, ${keyOf(keymap, 'strip', 'area')} with another.`,
        ]
      : [
          `Nothing of ${plainText(area)} was called yet.`,
          `${keyOf(keymap, 'strip', 'off')}: the first of it came off.`,
        ];
  return [
    plainRow(fitted('', columns)),
    ...words.flatMap((words) => wrapped(words, columns - 3, 2).map((text) => plainRow(fitted(`  ${text}`, columns)))),
    plainRow(fitted('', columns)),
    ...aroundRows(scene, columns),
  ];
}

/** The title, the cardboard, and what the next call speaks of. */
function sheetRows(scene: Scene, drawn: DrawnArea, next: string | undefined, columns: number, rows: number): Row[] {
  const details = nextRows(scene, next, columns, listCellsOf(scene.columns) > 0);
  const height = Math.max(3, rows - 1 - details.length);
  const tags = drawn.holes.map((hole) => ({ ...tagOf(hole, hole.hole === next), at: hole.at }));
  return [
    plainRow(fitted(` ${plainText(titleOf(scene, drawn))}`, columns), takenLook),
    ...mapRows({ outline: drawn.outline, tags }, columns, height),
    ...details,
  ];
}
function titleOf({ desk }: Scene, { area, holes, pass, proposed }: DrawnArea): string {
  const order = proposed ? `, order proposed: ${proposed}` : '';
  if (pass) return `${area}: ${pass.name} ${pass.done} of ${pass.of}${order}`;
  const off = desk.ledger.tallies.areas[area]?.off ?? 0;
  return `${area}: ${off} off of ${holes.filter((hole) => hole.levels > 0).length}`;
}

function tagOf(
  { number, mark, word, levels, finding, suspected, tool, turn }: DrawnHole,
  isNext: boolean,
): Omit<Tag, 'at'> {
  const flags = `${levels > 1 ? '+' : ''}${finding ? '!' : ''}${suspected ? '?' : ''}${tool ? '~' : ''}`;
  const short = `${shapeOf(mark)}${number}${flags}`;
  const order = turn === undefined ? '' : ` #${turn}`;
  const look: Look = isNext ? nextLook : lookOf(mark);
  const whole = `>${short} ${word || 'next'}<`;
  if (isNext) return { texts: [whole, whole, `>${short}<`, '>'], look, first: true };
  const said = word === '' ? short : `${short} ${word}`;
  return { texts: [`${said}${order}`, said, short, shapeOf(mark)], look, wordsLook: uncoloured(look) };
}

function holeRows(scene: Scene, next: string | undefined, columns: number, rows: number): Row[] {
  const { listed, desk, view } = scene;
  const others = belongingsHere(desk);
  const at = holesHere(desk, view.screen === 'build' ? 'tightening' : 'loosening').findIndex((h) => h.hole === next);
  const from = windowFrom(Math.max(0, at), listed.length + others.length, rows);
  const shown = [
    ...listed.slice(from, from + rows),
    ...others.slice(Math.max(0, from - listed.length), Math.max(0, from + rows - listed.length)),
  ];
  return shown.map((one) => listedRow(one, one.key === next, columns, 7));
}

function firstHints({ keymap, columns }: Scene): Row[] {
  const strip = (call: string, args?: Args) => keyOf(keymap, 'strip', call, args);
  const [bolt, ten] = [strip('use', { spec: { kind: 'bolt' } }), strip('head', { spec: { head: 'hex 10' } })];
  const hints = [
    '',
    '  Nothing was called yet.',
    '',
    `  ${strip('area')}   name the area you begin with: "cam cover"`,
    `  ${bolt} ${ten}   the fastener in use: a bolt, head 10; it stays until you change it`,
    `  ${strip('off')}   one came off; it lies in the tray in use`,
    `  ${strip('strike-last')}   strike the last call`,
    `  ${strip('to-services')}   or choose services from the plans, which name all there is`,
    `  ${strip('to-leaving')}   what must be closed before the car leaves, with the next call for each`,
    '',
    '  The maker\u2019s manual comes first. Stands, not jacks. Battery off first.',
  ];
  return hints.map((text) => plainRow(fitted(text, columns)));
}
