// What the last call came to, under a rule: in words, and beside them, where there is room, the next hole in large figures.
import type { Keymap } from '../calls/bindings.ts';
import { type Desk, nextHole } from '../calls/desk.ts';
import { cap } from '../calls/key-caps.ts';
import { keyOf, waySaid } from '../calls/key-names.ts';
import { rowById } from '../calls/table.ts';
import { outOf, outParts } from '../calls/tally-words.ts';
import { areaOf, numberOf } from '../job/subjects.ts';
import type { Answer } from '../session/session-shape.ts';
import { plainText } from '../trade/plain-text.ts';
import type { ScreenId } from '../view/screens.ts';
import { typedLine, type View } from '../view/view.ts';
import { fitted, wrapped } from './cells.ts';
import { alarmLook, type Look, quietLook, refusedLook, takenLook } from './colours.ts';
import { canBeDrawn, figureCells, figureHeight, figureRows } from './figures.ts';
import type { Scene } from './frame.ts';
import { isOnHoles } from './head.ts';
import { filled, plainRow, type Row } from './rows.tsx';

const fewestAnswerRows = 2;
const mostAnswerRows = 4;
/** A long refusal takes the rows it needs. */
export function answerRows(scene: Scene): Row[] {
  const { columns, rows, session } = scene;
  const rule = plainRow('─'.repeat(columns), quietLook);
  const isLarge = rows >= largeFrom.rows && columns >= largeFrom.columns && isOnHoles(scene.view.screen);
  if (session && isLarge && !scene.view.asking) return [rule, ...largeAnswer(scene)];
  const words = answerWordRows(scene, columns);
  return [rule, ...filled(words, Math.max(words.length, fewestAnswerRows), columns)];
}
function answerWordRows(scene: Scene, columns: number, most = mostAnswerRows): Row[] {
  const { text, look } = answerOf(scene);
  return wrapped(plainText(text), columns - 2, most).map((row) => plainRow(fitted(` ${row}`, columns), look));
}
const largeFrom = { columns: 110, rows: 36 } as const;
/** Beside the words, read from two metres: the next hole with its area; without one, how many are off. */
function largeAnswer(scene: Scene): Row[] {
  const { desk, view, columns } = scene;
  const next = nextHole(desk, view.screen);
  const off = outOf(desk.ledger.tallies.all);
  const height = figureHeight(1);
  const figure = next === undefined ? String(off) : numberOf(next);
  const after = next === undefined ? ' off ' : ' next ';
  const area = next === undefined ? undefined : plainText(areaOf(next));
  const used = figureCells(figure, 1) + after.length;
  const areaCells = area !== undefined && canBeDrawn(area) ? figureCells(area, 'narrow') + areaGap : 0;
  // A long answer goes before it.
  const beside = columns - used - areaCells;
  const isShort = beside >= fewestWordCells && answerWordRows(scene, beside, height + 1).length <= height;
  const fits = areaCells > 0 && isShort;
  const room = columns - used - (fits ? areaCells : 0);
  const words = filled(answerWordRows(scene, room, height), height, room);
  const drawnArea = fits && area !== undefined ? figureRows(area, 'narrow', areaCells, {}) : undefined;
  const drawnFigure = figureRows(figure, 1, figureCells(figure, 1), {});
  return Array.from({ length: height }, (_, i) => [
    ...(words[i] as Row),
    ...(drawnArea?.[i] ?? []),
    ...(drawnFigure[i] as Row),
    { text: i === height - 1 ? after : ' '.repeat(after.length) },
  ]);
}
/** Between the area and the figure, half of it on either side of the area. */
const areaGap = 6;
const fewestWordCells = 20;
export function answerOf({ session, word, note, desk, view, keymap }: Scene): { text: string; look: Look } {
  if (session?.notSaved) {
    const again = keyOf(keymap, view.screen, 'retry');
    return { text: `NOT SAVED: ${session.notSaved.message}. Press ${again} to save again.`, look: alarmLook };
  }
  if (word) return { text: word, look: refusedLook };
  if (note) return { text: note, look: takenLook };
  if (!session?.answer) return { text: '', look: quietLook };
  return answerWords(session.answer, desk, keymap, view);
}
/** Its key here, else the keys of the screen that has it and then its own: "P i"; where none has, the line: "/ searched". */
function wayWords(keymap: Keymap, screen: ScreenId, call: string): string {
  const [typed = ''] = rowById.get(call)?.words ?? [];
  return waySaid(keymap, screen, call) || `${keyOf(keymap, screen, 'line')} ${typed}`.trim();
}
/** Of what was asked for in a list the key pressed last was another: the call's own is named. */
function againKey(keymap: Keymap, screen: ScreenId, call: string | undefined): string {
  const key = call === undefined ? '' : keyOf(keymap, screen, call);
  return key === '' ? 'The same key again' : `${key === '.' ? '"."' : key} again`;
}
const quickWords = ({ tooQuick }: { tooQuick?: true }): string =>
  tooQuick ? ' Too quick to have been read: once more.' : '';
type Instead = { instead: string; by?: string; or?: Instead };
/** What to do instead, each way with its key where the screen has one. */
function insteadWords({ instead, by, or }: Instead, keymap: Keymap, screen: ScreenId): string {
  const key = by === undefined ? '' : wayWords(keymap, screen, by);
  // A full stop behind a full stop is no key.
  const words = key === '' ? instead : `${instead}: ${key.replace(/(^| )\.$/, '$1"."')}`;
  return or === undefined ? words : `${words}, ${insteadWords(or, keymap, screen)}`;
}
function answerWords(
  answer: Answer,
  desk: Desk,
  keymap: Keymap,
  { screen, asking }: View,
): { text: string; look: Look } {
  switch (answer.kind) {
    case 'taken': {
      const { otherwise } = answer;
      // A comma or a full stop alone is read as one.
      const way = otherwise === undefined ? '' : waySaid(keymap, screen, otherwise.by);
      const or = way && `. ${otherwise?.words}: ${way.replace(/(^| )([.,])(?= |$)/g, '$1"$2"')}`;
      return { text: `${answer.text}${or}   (${outParts(desk.ledger.tallies.all).join(', ')})`, look: takenLook };
    }
    case 'faced':
      return { text: answer.text, look: takenLook };
    case 'refused': {
      // Last, where it may be cut off: to whoever reads it from two metres it says nothing.
      const rule = answer.refusal ? ` (${answer.refusal.rule})` : '';
      const again = answer.againSays ? ` ${againKey(keymap, screen, answer.againSays)}: it is done already.` : '';
      const instead = insteadWords(answer, keymap, screen);
      // "NO no stand is in" would read as a slip.
      const text = answer.text.replace(/^no /, '');
      return { text: `NO ${text}; ${instead}.${again}${quickWords(answer)}${rule}`, look: refusedLook };
    }
    case 'asked': {
      // Over the question of another call, or a line opened since, its Enter and its letters answer that one.
      const isAskedOfLine = asking?.slot === typedLine && asking.why !== undefined;
      const isOther = asking !== undefined && !isAskedOfLine && asking.row !== answer.call;
      if (isOther) return { text: `${answer.text}.`, look: refusedLook };
      const instead = insteadWords(answer, keymap, screen);
      // A line that was typed stands there still, and its letters are no keys.
      const key = asking ? `${cap.take} again` : againKey(keymap, screen, answer.call);
      const text = `${answer.text}; ${instead}. ${key} ${answer.again}.${quickWords(answer)}`;
      return { text, look: refusedLook };
    }
    case 'step':
      return { text: '', look: quietLook };
  }
}
