// The keys of the screen that is up, in the order of the table, along the bottom. One that is refused just now is dim;
// help and the typed line are always there.

import { type Bound, padKeys } from '../calls/bindings.ts';
import { cap, keyName, padQuestionKeys, questionKeys } from '../calls/key-caps.ts';
import { choicesAPage, keyOf } from '../calls/key-names.ts';
import { pickedAt } from '../calls/listed.ts';
import { whyNot } from '../calls/pressing.ts';
import { numberOf } from '../job/subjects.ts';
import { callType } from '../session/answering.ts';
import { freshName } from '../session/fresh-name.ts';
import { acting, areNumbered, helped, isOfADay, offered } from '../view/view.ts';
import { fitted } from './cells.ts';
import { quietLook } from './colours.ts';
import type { Scene } from './frame.ts';
import { endRow, filled, plainRow, type Row, type Run } from './rows.tsx';
import { cellsOf } from './width.ts';

const placingLook = { bold: true } as const;
const always = new Set(['to-glance', 'help', 'line']);
const footerRows = 3;

export function footOf({ view, desk, columns, listed, keymap }: Scene): Row[] {
  if (view.asking) {
    const { choices, type, after } = view.asking;
    const how =
      choices.length === 0
        ? 'type it'
        : areNumbered(choices)
          ? numberWords(type, choices.length, view.asking.most)
          : isOfADay(view.asking) && !keymap.pad
            ? `a number and ${cap.take}, or a date`
            : '1-9 take at once';
    const goesBack = after ? `   ${keymap.pad ? padQuestionKeys.erase : cap.erase} back` : '';
    const freshKey = (keymap.pad ? padQuestionKeys : questionKeys).fresh;
    const fresh = freshName(desk, view.asking) === undefined ? '' : `   ${freshKey} a new one`;
    const page = offered(view.asking).length > choicesAPage ? `   ${padQuestionKeys.page} page` : '';
    const [leave, move] = keymap.pad
      ? [padQuestionKeys.leave, `${padQuestionKeys.erase} rubs out${page}`]
      : [cap.leave, 'up/down move'];
    const length = keymap.pad && type === 'spec' ? '   06.25 is M6x25' : '';
    // A pad's key is a character behind what was typed.
    const isTyped = keymap.pad && view.asking.typed !== '' && view.asking.typed !== view.asking.begun;
    const leaves = isTyped ? `${leave} leave it once that is rubbed out` : `${leave} leave it`;
    const isLeftOut = view.asking.optional && view.asking.at < 0 && view.asking.typed === '';
    const text = ` ${cap.take} ${isLeftOut ? (withoutIt[type] ?? 'leave it out') : 'take'}   ${leaves}${goesBack}   ${how}   ${move}${fresh}${length}`;
    return filled([plainRow(fitted(text, columns), quietLook)], footerRows, columns);
  }
  const { placing } = desk.facing;
  if (placing) {
    const number = numberOf(placing.hole);
    const text = ` the arrows move ${number}, at ${placing.at.join(' ')}   ${cap.take} keeps it there   ${cap.leave} leaves it where it was`;
    return filled([plainRow(fitted(text, columns), placingLook)], footerRows, columns);
  }
  const screen = acting(view);
  const onHoles = screen === 'strip' || screen === 'build';
  const picks = onHoles ? {} : (pickedAt(listed, view.at[screen])?.picks ?? {});
  // By the keypad the keys of the pad alone: letters go on working and stand in help.
  const isAtHand = ({ binding }: Bound) => !keymap.pad || (padKeys as readonly string[]).includes(binding.key);
  const shown = keymap.keysOn(screen).filter((b) => b.binding.footer !== false && isAtHand(b));
  const pieces = [...shown.filter((b) => !always.has(b.row.id)), ...shown.filter((b) => always.has(b.row.id))];
  // What is laid over a screen is taken away by the key that laid it there; a keypad goes to the screen below.
  const over = view.screen === 'glance' ? 'to-glance' : view.screen === 'help' ? 'help' : undefined;
  const runs = pieces.map((bound): Run & { id: string } => ({
    id: bound.row.id,
    text: ` ${bound.binding.footer ?? `${keyName(bound.binding.key)} ${bound.row.id === over ? 'back' : (bound.row.labelNow?.(desk) ?? bound.row.label)}`} `,
    ...(whyNot(bound, desk, picks) && { look: quietLook }),
  }));
  if (over && keymap.pad) runs.push({ id: over, text: ` ${keyOf(keymap, screen, `to-${helped(view)}`)} back ` });
  const most = keymap.boundTo(questionKeys.take, screen)?.row.id;
  const fittedIn = (keeps: (id: string) => boolean) => {
    const kept = runs.filter((run) => keeps(run.id));
    const others = runs.filter((run) => !keeps(run.id));
    const rows = packed(
      others,
      columns,
      kept.reduce((sum, run) => sum + cellsOf(run.text), 0),
    );
    const shown = [...rows.flat(), ...kept];
    const hasMost = shown.some(({ id }) => id === most) || !runs.some(({ id }) => id === most);
    return { kept, rows, hasMost, all: rows.flat().length === others.length };
  };
  // Where not every call has room, the key that shows the others has, and the one that is pressed most.
  const whole = fittedIn((id) => always.has(id));
  const some = whole.all ? whole : fittedIn((id) => always.has(id) || id === 'more');
  const { kept, rows } = some.hasMost ? some : fittedIn((id) => always.has(id) || id === 'more' || id === most);
  return filled(
    rows.map((row, i) => (i === rows.length - 1 ? endRow([...row, ...kept], columns) : endRow(row, columns))),
    footerRows,
    columns,
  );
}

/** What an answer is that is left out, where "it" says too little. */
const withoutIt: Readonly<Record<string, string>> = {
  who: 'goes on without a name',
  spec: 'goes on without saying which',
  why: 'goes on without a reason',
};
/** Runs in as many rows as there are; the last keeps room for what always stands at its end. */
function packed<R extends Run>(runs: readonly R[], columns: number, kept: number): R[][] {
  const rows: R[][] = [[]];
  let used = 0;
  for (const run of runs) {
    const cells = cellsOf(run.text);
    const isLast = rows.length === footerRows;
    if (used + cells > columns - (isLast ? kept : 0)) {
      if (isLast) continue;
      rows.push([]);
      used = 0;
    }
    rows.at(-1)?.push(run);
    used += cells;
  }
  const last = rows.at(-1) as R[];
  if (rows.length < footerRows && used + kept > columns) rows.push([]);
  return last.length === 0 && rows.length > 1 ? rows.slice(0, -1) : rows;
}
/** With nine known, or any number that may be meant, "1" may be the beginning of another: it waits for its Enter. */
const numberWords = (type: string, known: number, most = known): string =>
  type === callType || (known < 9 && most < 10)
    ? 'its number is taken at once'
    : `its number is taken; ${cap.take} where it could go on`;
