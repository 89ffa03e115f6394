// Strip and build: all areas on the left, the cardboard of the one in use beside them, and where there is room its holes
// one by one. Below the cardboard stands what the next call speaks of.

import { nextHole } from '../calls/desk.ts';
import type { Args } from '../calls/form.ts';
import { keyOf } from '../calls/key-names.ts';
import type { Listed } from '../calls/listed.ts';
import { areasListed, belongingsHere, holesHere } from '../calls/lists/holes.ts';
import { areaDrawn, type DrawnArea, type DrawnHole } from '../calls/lists/map.ts';
import { nextArea } from '../calls/next-area.ts';
import { outOf } from '../calls/tally-words.ts';
import { tallyOf } from '../job/ledger.ts';
import { numberOf } from '../job/subjects.ts';
import { plainText } from '../trade/plain-text.ts';
import { fitted, fittedApart, spread, windowFrom, wrapped } from './cells.ts';
import { chosenLook, type Look, lookOf, nextLook, shapeOf, takenLook, uncoloured, wordsLook } from './colours.ts';
import type { Scene } from './frame.ts';
import { listedRow } from './list-rows.ts';
import { mapRows, type Tag } from './map.ts';
import { aroundRows, nextRows } from './next-rows.ts';
import { filled, plainRow, type Row } from './rows.tsx';
import { cellsOf } from './width.ts';

/** Wide enough for the holes one by one beside the cardboard. */
const widthWithList = 110;
/** What the cardboard keeps beside the areas. */
const sheetAlone = 50;
/** And beside the areas and the holes: for all that is said of them, and where a fastener would be cut off otherwise. */
const sheetBesideList = { fewHoles: 30, manyHoles: 38 };
const sheetBesideSpecs = { fewHoles: 28, manyHoles: 32 };
/** So many are told apart on a narrow cardboard. */
const fewHoles = 8;
/** As wide as the longest name and what is said of it, as far as the cardboard leaves room; no narrower than a few words. */
function areaCellsOf(areas: readonly Listed[], columns: number): number {
  const wanted = Math.max(0, ...areas.map((a) => cellsOf(plainText(a.name)) + 1 + cellsOf(a.text) + 3));
  return Math.max(20, Math.min(wanted, columns >= widthWithList ? 36 : columns - 1 - sheetAlone));
}
/** As wide as the longest of the holes shown, as far as the cardboard leaves room. */
function listCellsOf(rows: readonly Listed[], columns: number, areaCells: number, drawn: number): number {
  const many = drawn > fewHoles ? 'manyHoles' : 'fewHoles';
  if (columns < widthWithList) return 0;
  const wanted = Math.max(0, ...rows.map((one) => cellsOf(one.text) + (one.end ? 1 + cellsOf(one.end) : 0)));
  const specs = Math.max(0, ...rows.map((one) => cellsOf(one.text)));
  const upTo = (cells: number, sheet: number) =>
    Math.min(cells + listNameCells + 7, listCellsMost, columns - areaCells - 2 - sheet);
  return Math.max(40, upTo(wanted, sheetBesideList[many]), upTo(specs, sheetBesideSpecs[many]));
}
const listNameCells = 6;
const listCellsMost = 80;
/** In no look of its own: a change of look costs more than a cell, and there are two on every row. */
const rule: Row = [{ text: '│' }];

export function benchRows(scene: Scene, rows: number): Row[] {
  const { desk, view, columns } = scene;
  const building = view.screen === 'build';
  const areas = areasListed(desk, building);
  if (areas.length === 0 && desk.facing.area === undefined) return firstHints(scene);
  const next = nextHole(desk, view.screen);
  const areaCells = areaCellsOf(areas, columns);
  const holes = columns < widthWithList ? [] : holesBeside(scene, next, rows);
  const drawn = areaDrawn(desk, next, building);
  const listCells = listCellsOf(holes, columns, areaCells, drawn?.holes.length ?? 0);
  const room = columns - areaCells - 1 - (listCells > 0 ? listCells + 1 : 0);
  const left = areaRows(areas, desk.facing.area, rows, areaCells);
  const sheet = drawn ? sheetRows(scene, drawn, next, room, rows) : noAreaRows(scene, room);
  const beside = [left, filled(sheet, rows, room)];
  if (listCells > 0) beside.push(filled(holeRows(holes, next, listCells), rows, listCells));
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
  const names = areas.map(({ name }) => plainText(name));
  const apart = (name: string, cells: number) => fittedApart(name, names, cells);
  const shown = areas.slice(from, from + rows).map((area): Row => {
    const used = area.name === inUse;
    const words = ` ${spread(plainText(area.name), area.text, areaCells - 3, apart)}`;
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
          `No fastener of ${plainText(area)} was called yet.`,
          view.screen === 'build'
            ? `What came off is called on Strip: ${keyOf(keymap, 'build', 'to-strip')}.`
            : `${keyOf(keymap, 'strip', 'off')}: the first of it came off.`,
        ];
  return [
    plainRow(fitted('', columns)),
    ...words.flatMap((words) => wrapped(words, columns - 3, 2).map((text) => plainRow(fitted(`  ${text}`, columns)))),
    plainRow(fitted('', columns)),
    ...aroundRows(scene, columns),
  ];
}

const rowsWithRoom = 24;
const detailRows = 11;
const fewestMapRows = 3;
/** What is only to be minded leaves it so many. */
const rowsForMap = 5;
/** Below so many two holes above one another fall into one row, or on the outline; a ring has no end of them. */
const rowsToDraw = ({ holes }: DrawnArea): number =>
  Math.min(rowsForMap + 1, Math.max(fewestMapRows, new Set(holes.map(({ at: [, y] }) => y)).size + 2));
/** The title, the cardboard, and what the next call speaks of. */
function sheetRows(scene: Scene, drawn: DrawnArea, next: string | undefined, columns: number, rows: number): Row[] {
  const forDetails = (mapRows: number) => rows - 1 - mapRows;
  const forKeys = forDetails(rowsToDraw(drawn));
  const details = nextRows(scene, next, columns, scene.columns >= widthWithList, forDetails(rowsForMap), forKeys);
  // So much is kept for them that the drawing stands as it is from one screen to the other.
  const kept = Math.max(details.length, rows >= rowsWithRoom ? detailRows : 0);
  const height = Math.max(fewestMapRows, rows - 1 - kept);
  const tags = drawn.holes.map((hole) => ({
    ...tagOf(hole, next !== undefined && hole.number === numberOf(next)),
    at: hole.at,
  }));
  return [
    plainRow(fitted(` ${plainText(titleOf(scene, drawn, columns))}`, columns), takenLook),
    ...mapRows({ outline: drawn.outline, tags }, columns, height),
    ...details,
  ];
}
function titleOf({ desk }: Scene, { area, holes, pass, proposed }: DrawnArea, columns: number): string {
  const order = proposed ? `, order proposed: ${proposed}` : '';
  // Half an order proposed says nothing; the name stands in the list and over it, the figures here alone.
  const whole = (all: readonly string[], least: string) =>
    all.find((one) => cellsOf(plainText(one)) <= columns - 1) ?? least;
  const passed = pass && `${pass.name} ${pass.done} of ${pass.of}`;
  if (passed !== undefined) return whole([`${area}: ${passed}${order}`, `${area}: ${passed}`], passed);
  const t = tallyOf(desk.ledger, area);
  const rest = [...(t.slack > 0 ? [`${t.slack} slack`] : []), ...(t.empty > 0 ? [`${t.empty} empty`] : [])];
  const others = rest.map((one) => `, ${one}`).join('');
  const figures = `${outOf(t)} off${others}${others && ','} of ${holes.reduce((sum, { levels }) => sum + levels, 0)}`;
  const said = `${area}: ${figures}`;
  return whole([`${said}${order && `${order}, loosened the other way round`}`, `${said}${order}`, said], figures);
}

const nth = (n: number): string => {
  const end = n % 100 > 10 && n % 100 < 14 ? 0 : n % 10;
  return `${n}${['th', 'st', 'nd', 'rd'][end] ?? 'th'}`;
};
function tagOf(
  { number, mark, word, levels, finding, lost, suspected, otherLength, tool, turn }: DrawnHole,
  isNext: boolean,
): Omit<Tag, 'at'> {
  const flags = `${levels > 1 ? '+' : ''}${finding ? '!' : ''}${lost ? '*' : ''}${suspected ? '?' : ''}${otherLength ? '^' : ''}${tool ? '~' : ''}`;
  const short = `${shapeOf(mark)}${number}${flags}`;
  const order = turn === undefined ? '' : `, ${nth(turn)}`;
  const look: Look = isNext ? nextLook : lookOf(mark);
  const whole = `>${short} ${word || 'next'}<`;
  if (isNext) return { texts: [whole, whole, `>${short}<`, '>'], look, first: true };
  const said = word === '' ? short : `${short} ${word}`;
  return { texts: [`${said}${order}`, said, short, shapeOf(mark)], look, wordsLook: uncoloured(look) };
}

/** The holes, and behind them the parts and connections, as many as have room; the state in a column as wide as it need be. */
function holesBeside(scene: Scene, next: string | undefined, rows: number): Listed[] {
  const { listed, desk, view } = scene;
  const others = belongingsHere(desk);
  const at = holesHere(desk, view.screen === 'build' ? 'tightening' : 'loosening').findIndex((h) => h.hole === next);
  const from = windowFrom(Math.max(0, at), listed.length + others.length, rows);
  const holes = listed.slice(from, from + rows);
  const shortened = Math.min(...holes.map(({ text }) => stateColumn(text)));
  return [
    ...holes.map((one) => ({ ...one, text: withoutBlanks(one.text, shortened) })),
    ...others.slice(Math.max(0, from - listed.length), Math.max(0, from + rows - listed.length)),
  ];
}
/** How many blanks stand between the state and the fastener, but one. */
const stateColumn = (text: string): number =>
  Math.max(0, (/^[^ ]+(?: [^ ]+)*?( {2,})/.exec(text)?.[1]?.length ?? 1) - 1);
const withoutBlanks = (text: string, many: number): string =>
  Number.isFinite(many) ? text.replace(/ {2,}/, (blanks) => ' '.repeat(blanks.length - many)) : text;

const holeRows = (shown: readonly Listed[], next: string | undefined, columns: number): Row[] =>
  shown.map((one) => {
    // The fastener stays whole; what is said at the end gives way, by whole words. Of a part or a joint its state stays.
    const room = columns - listNameCells - 8 - cellsOf(one.text);
    const ends = endsOf(one);
    const last = one.picks.hole === undefined ? (ends.at(-1) ?? '') : '';
    const end = ends.find((words) => cellsOf(words) <= room) ?? last;
    const { brief: _, ...whole } = one;
    return listedRow({ ...whole, end }, one.key === next, columns, listNameCells);
  });
/** What may stand at the end of a row, the most telling first: all of it, in short, and in short without what comes last. */
function endsOf({ end = '', brief }: Listed): string[] {
  const pieces = (brief?.end ?? end).split(', ');
  return [end, ...pieces.map((_, i) => pieces.slice(0, pieces.length - i).join(', '))];
}

function firstHints({ keymap, columns }: Scene): Row[] {
  const strip = (call: string, args?: Args) => keyOf(keymap, 'strip', call, args);
  const [bolt, ten] = [strip('use', { spec: { kind: 'bolt' } }), strip('head', { spec: { head: 'hex 10' } })];
  const hints = [
    '',
    '  Nothing was called yet.',
    '',
    `  ${strip('area')}   name the area you begin with: "cam cover"`,
    keymap.pad
      ? `  ${strip('use')}   the fastener in use, from a list; it stays until you change it`
      : `  ${bolt} ${ten}   the fastener in use: a bolt, head 10; it stays until you change it`,
    `  ${strip('off')}   one came off; it lies in the tray in use`,
    `  ${strip('strike-last')}   strike the last call`,
    `  ${strip('to-services')}   or choose services from the plans, which name all there is`,
    `  ${strip('to-leaving')}   what must be closed before the car leaves, with the next call for each`,
    '',
    '  The maker\u2019s manual comes first. Stands, not jacks. Battery off first.',
  ];
  return hints.map((text) => plainRow(fitted(text, columns)));
}
