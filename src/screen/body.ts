// The middle of the screen: a list, the areas beside their holes, or what is being asked. Pure, like the frame.

import { dueUnsaid } from '../calls/due-unsaid.ts';
import { cap, keyName, padQuestionKeys } from '../calls/key-caps.ts';
import { keyOf } from '../calls/key-names.ts';
import { stateOf } from '../job/ledger.ts';
import { notAsked, notAskedText } from '../job/not-asked.ts';
import { plainText } from '../trade/plain-text.ts';
import { type Asking, areNumbered, helped, offered } from '../view/view.ts';
import { benchRows } from './bench-rows.ts';
import { fitted, spread, wrapped } from './cells.ts';
import { chosenLook, quietLook, refusedLook } from './colours.ts';
import type { Scene } from './frame.ts';
import { glanceRows } from './glance.ts';
import { givingWay, listRows, moreRows } from './list-rows.ts';
import { filled, plainRow, type Row } from './rows.tsx';
import { signRows } from './signs.ts';

export function bodyOf(scene: Scene, rows: number): Row[] {
  const { view, columns, listed } = scene;
  if (view.asking) return filled(askingRows(view.asking, columns, rows, scene.keymap.pad), rows, columns);
  if (scene.greeting) return filled(greetingRows(scene, scene.greeting, columns, rows), rows, columns);
  if (view.screen === 'glance') return glanceRows(scene, rows);
  if (view.screen === 'strip' || view.screen === 'build') return filled(benchRows(scene, rows), rows, columns);
  if (listed.length === 0) {
    const released = Boolean(stateOf(scene.desk.ledger, 'vehicle', 'vehicle')?.releasedAt);
    const words = nothingOn(scene, released);
    return filled(
      [
        ...['', ...wrapped(words, columns - 4, 3)].map((text) => plainRow(fitted(`  ${text}`, columns))),
        ...dueRows(scene, released),
        ...notAskedRows(scene),
      ],
      rows,
      columns,
    );
  }
  const at = view.at[view.screen] ?? 0;
  const signs = view.screen === 'help' ? signRows(helped(view), columns) : [];
  const more = moreRows(listed.at(Math.min(at, listed.length - 1)), columns);
  const room = rows - signs.length - more.length;
  return [...signs, ...filled(listRows(listed, at, columns, room), room, columns), ...more];
}

function nothingOn({ view: { screen }, desk, keymap, reading }: Scene, released: boolean): string {
  switch (screen) {
    case 'shelf':
      if (reading) return 'The jobs are being read.';
      return `No job yet. Press ${keyOf(keymap, screen, 'new-job')} for a new one; ${keyOf(keymap, screen, 'to-settings')} shows the settings.`;
    case 'services':
      return `No plan is at hand. Order a service by its name: ${keyOf(keymap, screen, 'service')}.`;
    case 'todo': {
      const { chosen = [] } = desk.facing;
      const waits = chosen.length > 0 ? ` ${chosen.length} chosen and not ordered yet.` : '';
      return `Nothing is left to take off, to judge or to fit.${waits} Services are ordered on the screen ${keyOf(keymap, screen, 'to-services')}.`;
    }
    case 'findings':
      return 'Nothing was found wrong so far.';
    case 'rotation':
      return `No drive is declared. Take a plan, or say it: ${keyOf(keymap, screen, 'line')} drive NAME over AREAS …`;
    case 'sealing':
      return `No sealing face or circuit is known. ${keyOf(keymap, screen, 'face')} asks for a face.`;
    case 'box':
      return 'The parts box and the trays are empty.';
    case 'leaving':
      return released
        ? `The car was released. The shelf, ${keyOf(keymap, screen, 'to-shelf')}, names the command that prints its sheet.`
        : `Nothing is open. The car may leave: press ${keyOf(keymap, screen, 'release')}.`;
    case 'log':
      return 'Nothing was called yet.';
    default:
      return '';
  }
}

/** X1: what nobody declared and so nothing asked for, where the car may leave. */
function notAskedRows({ view, desk, columns }: Scene): Row[] {
  const all = view.screen === 'leaving' ? notAsked(desk.ledger) : [];
  if (all.length === 0) return [];
  const said = all.flatMap((one) =>
    wrapped(plainText(notAskedText(one)), columns - 8, 3).map((row, i) => `    ${i === 0 ? '- ' : '  '}${row}`),
  );
  return ['', '  Not asked on this job, since nobody declared it; look yourself:', ...said].map((text) =>
    plainRow(fitted(text, columns)),
  );
}

/** X4: what was done here and comes round again, with the line that says when. */
function dueRows({ view, desk, columns, keymap }: Scene, released: boolean): Row[] {
  const all = view.screen === 'leaving' && !released ? dueUnsaid(desk) : [];
  if (all.length === 0) return [];
  const [key, line] = ['due', 'line'].map((call) => keyOf(keymap, view.screen, call));
  const said = all.map((one) => `    - ${line} ${plainText(one.line)}`);
  return ['', `  Nobody said when it is next due; say it (${key}), and it stands on the sheet:`, ...said].map((text) =>
    plainRow(fitted(text, columns)),
  );
}

/** Above what a job that was left, or a vehicle that comes again, has to say. */
export const greetingHead = (scene: Scene): string => scene.greetingHead ?? 'As it was left:';

function greetingRows(scene: Scene, greeting: readonly string[], columns: number, rows: number): Row[] {
  const room = rows - 4;
  const all = greeting.flatMap((words) =>
    wrapped(plainText(words), columns - 6, room).map((row, i) => (i === 0 ? row : `  ${row}`)),
  );
  const left = all.length - room;
  const told = left > 0 ? [...all.slice(0, room - 1), `${left + 1} more`] : all;
  return [
    plainRow(fitted('', columns)),
    plainRow(fitted(`  ${greetingHead(scene)}`, columns), { bold: true }),
    ...told.map((words) => plainRow(fitted(`    ${words}`, columns))),
    plainRow(fitted('', columns)),
    plainRow(fitted('  Any key goes on.', columns), quietLook),
  ];
}

const choicesShown = 9;
/** What is filled in already and can be typed over. */
export const standingWords = `Typing replaces it; ${cap.erase} or an arrow changes what stands there.`;
/** Why the last answer could not be read, whole; one row stands there with nothing to say as well. */
function beneath(asking: Asking, columns: number): Row[] {
  const { why, standing } = asking;
  const said = why ?? (standing ? standingWords : notNow(asking));
  const rows = wrapped(plainText(said), columns - 5, 3);
  return (rows.length > 0 ? rows : ['']).map((text) =>
    plainRow(fitted(text === '' ? '' : `    ${text}`, columns), why ? refusedLook : quietLook),
  );
}
/** Of the choice pointed at, all of why it cannot be taken: beside it is room for a few words. */
function notNow(asking: Asking): string {
  const { blocked, way } = offered(asking)[asking.at] ?? {};
  return blocked === undefined ? '' : `not now: ${[blocked, way].filter(Boolean).join('; ')}`;
}
function askingRows(asking: Asking, columns: number, rows: number, pad: boolean): Row[] {
  const choices = offered(asking);
  const title = wrapped(plainText(asking.title), columns - 4, 3);
  const head: Row[] = [
    plainRow(fitted('', columns)),
    ...title.map((text) => plainRow(fitted(`  ${text}`, columns), { bold: true })),
    [
      { text: '  > ' },
      {
        text: fitted(`${plainText(asking.typed)}_${plainText(asking.tail ?? '')}`, columns - 4),
        look: { inverse: true },
      },
    ],
    ...beneath(asking, columns),
  ];
  const room = rows - head.length - 1;
  // What is chosen by the figure of its row has as many rows as there are figures.
  const most = areNumbered(choices) ? room : Math.min(choicesShown, room);
  const page = Math.floor(Math.max(0, asking.at) / choicesShown) * choicesShown;
  const first = areNumbered(choices) ? Math.max(0, Math.min(page, choices.length - room)) : page;
  const shown = choices.slice(first, first + most);
  const list = shown.map((choice, i): Row => {
    const number = areNumbered(choices) ? '' : `${i + 1}  `;
    const name = `  ${number}${plainText(choice.text)}`;
    const beside = plainText(choice.blocked ?? choice.beside ?? '');
    const text = spread(name, givingWay(beside, name, columns - 2), columns - 2);
    const look = first + i === asking.at ? chosenLook : choice.blocked ? quietLook : undefined;
    return plainRow(fitted(`${first + i === asking.at ? '>' : ' '} ${text}`, columns), look);
  });
  const left = choices.length - first - shown.length;
  const otherPage = left > 0 ? `${left} more` : first > 0 ? `${first} before` : '';
  return [
    ...head,
    ...list,
    plainRow(
      fitted(
        otherPage && `    ${otherPage}: ${pad ? padQuestionKeys.page : keyName(left > 0 ? 'page-down' : 'page-up')}`,
        columns,
      ),
      quietLook,
    ),
  ];
}
