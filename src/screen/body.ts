// The middle of the screen: a list, the areas beside their holes, or what is being asked. Pure, like the frame.

import { keysOn } from '../calls/bindings.ts';
import { nextBack, nextOff, nextTight } from '../calls/desk.ts';
import type { Args } from '../calls/form.ts';
import type { Listed, Rows } from '../calls/listed.ts';
import { areasListed, belongingsHere } from '../calls/lists/holes.ts';
import { stateOf } from '../job/ledger.ts';
import { subjectText } from '../job/subjects.ts';
import { plainText } from '../trade/plain-text.ts';
import type { ScreenId } from '../view/screens.ts';
import { type Asking, areNumbered, offered } from '../view/view.ts';
import { fitted, spread, windowFrom, wrapped } from './cells.ts';
import { chosenLook, type Look, lookOf, quietLook, refusedLook, shapeOf } from './colours.ts';
import type { Scene } from './frame.ts';
import { keyName } from './key-names.ts';
import { filled, plainRow, type Row } from './rows.tsx';

export function bodyOf(scene: Scene, rows: number): Row[] {
  const { view, columns, listed } = scene;
  if (view.asking) return filled(askingRows(view.asking, columns, rows), rows, columns);
  if (scene.greeting) return filled(greetingRows(scene.greeting, columns, rows), rows, columns);
  if (view.screen === 'strip' || view.screen === 'build') return filled(benchRows(scene, rows), rows, columns);
  if (listed.length === 0) {
    const released = Boolean(stateOf(scene.desk.ledger, 'vehicle', 'vehicle')?.releasedAt);
    const words = nothingOn(view.screen, released);
    return filled([plainRow(''), plainRow(fitted(`  ${words}`, columns))], rows, columns);
  }
  const at = view.at[view.screen] ?? 0;
  const more = moreRows(listed.at(Math.min(at, listed.length - 1)), columns);
  return [...filled(listRows(listed, at, columns, rows - more.length), rows - more.length, columns), ...more];
}

/** The key of a call on a screen, as it is named there. */
const keyOf = (screen: ScreenId, call: string, args?: Args): string => {
  const keys = keysOn(screen).filter((bound) => bound.row.id === call);
  const found = args ? keys.find((bound) => JSON.stringify(bound.binding.args) === JSON.stringify(args)) : keys[0];
  return found ? keyName(found.binding.key) : '';
};
function nothingOn(screen: ScreenId, released: boolean): string {
  switch (screen) {
    case 'shelf':
      return `No job yet. Press ${keyOf(screen, 'new-job')} for a new one.`;
    case 'findings':
      return 'Nothing was found wrong so far.';
    case 'rotation':
      return `No drive is declared. Take a plan, or say it: ${keyOf(screen, 'line')} drive NAME over AREAS …`;
    case 'sealing':
      return `No sealing face or circuit is known. Say one: ${keyOf(screen, 'line')} face NAME pressed by HOLES …`;
    case 'box':
      return 'The parts box and the trays are empty.';
    case 'leaving':
      return released
        ? 'The car was released.'
        : `Nothing is open. The car may leave: press ${keyOf(screen, 'release')}.`;
    case 'log':
      return 'Nothing was called yet.';
    default:
      return '';
  }
}

const nameCells = 11;
function listRows(listed: Rows, at: number, columns: number, rows: number): Row[] {
  const from = windowFrom(at, listed.length, rows);
  return listed.slice(from, from + rows).map((one, i) => listedRow(one, from + i === at, columns));
}
const mostMoreRows = 3;
/** What the picked row has to say beyond its own line. */
function moreRows(picked: Listed | undefined, columns: number): Row[] {
  const more = typeof picked?.more === 'function' ? picked.more() : picked?.more;
  if (!more) return [];
  return wrapped(plainText(more), columns - 4, mostMoreRows).map((text) =>
    plainRow(fitted(`  ${text}`, columns), quietLook),
  );
}
function listedRow(one: Listed, chosen: boolean, columns: number, cells = nameCells): Row {
  const name = one.name === '' ? '' : fitted(one.name, cells);
  const text = spread(plainText(` ${name}${name && ' '}${one.text}`), plainText(one.end ?? ''), columns - 4);
  const look: Look = chosen ? chosenLook : lookOf(one.mark);
  return [
    { text: chosen ? ' > ' : '   ', look: chosen ? { bold: true } : {} },
    { text: shapeOf(one.mark), look },
    { text, look },
  ];
}

const areaCells = 30;
/** Areas on the left, the holes of the one in use on the right; the hole the next call speaks of is pointed at. */
function benchRows(scene: Scene, rows: number): Row[] {
  const { desk, view, columns, listed } = scene;
  const areas = areasListed(desk);
  if (areas.length === 0) return firstHints(columns);
  const at = areas.findIndex((a) => a.name === desk.facing.area);
  const left = areas.slice(windowFrom(Math.max(0, at), areas.length, rows)).slice(0, rows);
  const next = view.screen === 'strip' ? nextOff(desk) : (nextBack(desk) ?? nextTight(desk));
  const holes = listed.slice(0, listed.length);
  const untold: Listed[] =
    next !== undefined && !holes.some((h) => h.key === next)
      ? [{ key: next, mark: 'plain', name: '', text: `${subjectText(`hole:${next}`)} is next`, picks: {} }]
      : [];
  const all = [...holes, ...untold, ...belongingsHere(desk)];
  const from = windowFrom(
    Math.max(
      0,
      all.findIndex((h) => h.key === next),
    ),
    all.length,
    rows,
  );
  const right = all.slice(from, from + rows);
  const room = columns - areaCells - 1;
  return Array.from({ length: Math.min(rows, Math.max(left.length, right.length)) }, (_, i) => {
    const hole = right[i];
    return [
      areaRun(left[i], desk.facing.area),
      { text: '│', look: quietLook },
      ...(hole ? listedRow(hole, hole.key === next, room, 7) : [{ text: ' '.repeat(room) }]),
    ];
  });
}
function areaRun(area: Listed | undefined, inUse: string | undefined): Row[number] {
  if (!area) return { text: ' '.repeat(areaCells) };
  const used = area.name === inUse;
  const text = `${used ? '>' : ' '}${shapeOf(area.mark)} ${spread(area.name, area.text, areaCells - 3)}`;
  return { text, look: used ? { ...lookOf(area.mark), bold: true } : lookOf(area.mark) };
}
function firstHints(columns: number): Row[] {
  const strip = (call: string, args?: Args) => keyOf('strip', call, args);
  const [bolt, ten] = [strip('use', { spec: { kind: 'bolt' } }), strip('head', { spec: { head: 'hex 10' } })];
  const hints = [
    '',
    '  Nothing was called yet.',
    '',
    `  ${strip('area')}   name the area you begin with: "cam cover"`,
    `  ${bolt} ${ten}   the fastener in use: a bolt, head 10; it stays until you change it`,
    `  ${strip('off')}   one came off; it lies in the tray in use`,
    `  ${strip('strike-last')}   strike the last call`,
    `  ${strip('plan')}   or take a service from a plan, which names all there is`,
    `  ${strip('to-leaving')}   what must be closed before the car leaves, with the next call for each`,
    '',
    '  The maker\u2019s manual comes first. Stands, not jacks. Battery off first.',
  ];
  return hints.map((text) => plainRow(fitted(text, columns)));
}

function greetingRows(greeting: readonly string[], columns: number, rows: number): Row[] {
  const room = rows - 4;
  const left = greeting.length - room;
  const told = left > 0 ? [...greeting.slice(0, room - 1), `${left + 1} more`] : greeting;
  return [
    plainRow(fitted('', columns)),
    plainRow(fitted('  As it was left:', columns), { bold: true }),
    ...told.map((words) => plainRow(fitted(`    ${plainText(words)}`, columns))),
    plainRow(fitted('', columns)),
    plainRow(fitted('  Any key goes on.', columns), quietLook),
  ];
}

const choicesShown = 9;
function askingRows(asking: Asking, columns: number, rows: number): Row[] {
  const choices = offered(asking);
  const title = wrapped(plainText(asking.title), columns - 4, 3);
  const head: Row[] = [
    plainRow(fitted('', columns)),
    ...title.map((text) => plainRow(fitted(`  ${text}`, columns), { bold: true })),
    [{ text: '  > ' }, { text: fitted(`${plainText(asking.typed)}_`, columns - 4), look: { inverse: true } }],
    plainRow(fitted(asking.why ? `    ${plainText(asking.why)}` : '', columns), refusedLook),
  ];
  const first = Math.floor(asking.at / choicesShown) * choicesShown;
  const shown = choices.slice(first, first + Math.min(choicesShown, rows - head.length - 1));
  const list = shown.map((choice, i): Row => {
    const number = areNumbered(choices) ? '' : `${i + 1}  `;
    const text = spread(`  ${number}${plainText(choice.text)}`, plainText(choice.blocked ?? ''), columns - 2);
    const look = first + i === asking.at ? chosenLook : choice.blocked ? quietLook : undefined;
    return plainRow(fitted(`  ${text}`, columns), look);
  });
  const left = choices.length - first - shown.length;
  return [...head, ...list, plainRow(fitted(left > 0 ? `    ${left} more: page down` : '', columns), quietLook)];
}
