// One frame of the program as rows of text: head, body, last answer, keys. Pure: the same state gives the same rows,
// exactly as many and as wide as the screen.
import { type Keymap, screenIds, wayTo } from '../calls/bindings.ts';
import { type Desk, nextHole } from '../calls/desk.ts';
import type { Rows } from '../calls/listed.ts';
import { specWords } from '../calls/spec-words.ts';
import { rowById } from '../calls/table.ts';
import { openSaid, outOf, outParts } from '../calls/tally-words.ts';
import { stateOf } from '../job/ledger.ts';
import type { Spec } from '../job/spec.ts';
import { areaOf, numberOf } from '../job/subjects.ts';
import type { Answer, SessionState } from '../session/session-shape.ts';
import { plainText } from '../trade/plain-text.ts';
import type { ScreenId } from '../view/screens.ts';
import type { View } from '../view/view.ts';
import { bodyOf } from './body.ts';
import { cellsOf, fitted, spread, wrapped } from './cells.ts';
import { alarmLook, type Look, quietLook, refusedLook, takenLook } from './colours.ts';
import { canBeDrawn, figureCells, figureHeight, figureRows } from './figures.ts';
import { footOf } from './footer.ts';
import { keyName, keyOf } from './key-names.ts';
import { endRow, filled, plainRow, type Row } from './rows.tsx';

export type Scene = {
  view: View;
  desk: Desk;
  session?: Pick<SessionState, 'answer' | 'savedTo' | 'notSaved' | 'looking'>;
  listed: Rows;
  /** The shelf is not read yet. */
  reading?: boolean;
  keymap: Keymap;
  word?: string;
  note?: string;
  greeting?: readonly string[];
  greetingHead?: string;
  columns: number;
  rows: number;
};

export const smallest = { columns: 80, rows: 24 } as const;

export const titles: Record<ScreenId, string> = {
  shelf: 'Shelf of jobs',
  services: 'Services',
  todo: 'Still to do',
  strip: 'Strip',
  build: 'Build',
  findings: 'Findings',
  rotation: 'Check rotation',
  sealing: 'Sealing and cure',
  box: 'Parts box and trays',
  leaving: 'Before it leaves',
  log: 'Log',
  settings: 'Settings',
  glance: 'Glance',
  help: 'Calls',
};

export const frame = (scene: Scene): Row[] => framed(scene, bodyOf, footOf);

/** Frames one after the other: while only the answer or "saved" differs, body and keys are those of the frame before. */
export function rememberingFrames(): (scene: Scene) => Row[] {
  const body = whileSame(bodyOf);
  const foot = whileSame(footOf);
  return (scene) => framed(scene, body, foot);
}
function whileSame<More extends unknown[]>(make: (scene: Scene, ...more: More) => Row[]): typeof make {
  let from: readonly unknown[] = [];
  let made: Row[] = [];
  return (scene, ...more) => {
    const { view, desk, listed, reading, keymap, greeting, columns, rows } = scene;
    const now = [view, desk, listed, reading, keymap, greeting, columns, rows, ...more];
    if (now.length !== from.length || now.some((one, i) => one !== from[i])) made = make(scene, ...more);
    from = now;
    return made;
  };
}

function framed(scene: Scene, bodyOf: (scene: Scene, rows: number) => Row[], footOf: (scene: Scene) => Row[]): Row[] {
  const { columns, rows } = scene;
  if (columns < smallest.columns || rows < smallest.rows) return tooSmall(columns, rows);
  const head = headRows(scene);
  const answer = answerRows(scene);
  const foot = footOf(scene);
  const body = bodyOf(scene, rows - head.length - answer.length - foot.length);
  return [...head, ...body, ...answer, ...foot];
}

function tooSmall(columns: number, rows: number): Row[] {
  const text = `The window is ${columns} x ${rows}; it needs ${smallest.columns} x ${smallest.rows}. Nothing is lost.`;
  const said = wrapped(text, Math.max(1, columns), Math.max(1, rows)).map((line) => plainRow(fitted(line, columns)));
  return filled(said, rows, columns);
}

const longList = 12;
/** "12 of 80": where the picked row stands in its list. */
function placeIn({ view, listed, keymap }: Scene): string {
  const showsNoList = isOnHoles(view.screen) || view.screen === 'glance';
  if (view.asking || showsNoList || listed.length === 0) return '';
  // Where a list goes on below, one need not go through all of it.
  const across = listed.length > longList ? keyOf(keymap, view.screen, 'next-group') : '';
  const far = across === '' ? '' : `${across} next group   `;
  return `${far}${Math.min(listed.length, (view.at[view.screen] ?? 0) + 1)} of ${listed.length} `;
}

function headRows(scene: Scene): Row[] {
  const { view, desk, session, columns } = scene;
  const vehicle = session && stateOf(desk.ledger, 'vehicle', 'vehicle');
  const { all } = desk.ledger.tallies;
  const counts = session
    ? `${[...outParts(all), openSaid(all)].join('  ')}  ${savedWords(session, desk.ledger.lines.length)} `
    : '';
  const label = vehicle?.label ? `  ${plainText(vehicle.label)}` : '';
  const left = ` ${titles[view.screen]}${label}${vehicle?.releasedAt ? '  RELEASED' : ''}`;
  return [
    plainRow(spread(left, counts, columns), session?.notSaved ? alarmLook : { inverse: true, bold: true }),
    session ? tabsRow(scene) : plainRow(fitted('', columns)),
    plainRow(spread(session ? inUseWords(desk) : '', placeIn(scene) || headKeys(scene), columns)),
  ];
}
/** "hex 8:8 0:10 2:12": which figure sets which head; the figures alone where the row has room for no more. */
function headKeys({ view, desk, session, columns, keymap }: Scene): string {
  if (!session || view.asking || view.screen !== 'strip') return '';
  const heads = keymap.keysOn('strip').filter(({ row, binding: { key } }) => row.id === 'head' && /^\d$/.test(key));
  if (heads.length === 0) return '';
  const sizes = heads.map(({ binding: { key, args } }) => {
    const spec = (args?.spec ?? {}) as Spec;
    return `${key}:${spec.head?.replace('hex ', '')}`;
  });
  const room = columns - cellsOf(inUseWords(desk)) - 2;
  const said = [`hex ${sizes.join(' ')} `, `heads ${heads.map(({ binding }) => binding.key).join(' ')} `];
  return said.find((one) => cellsOf(one) <= room) ?? '';
}
export function inUseWords({ facing: { area, tray, spec } }: Desk): string {
  const fastener = specWords(spec);
  return ` ${area === undefined ? 'no area in use' : `at ${plainText(area)}`}   into tray ${plainText(tray)}   ${fastener === 'unknown' ? '' : fastener}`;
}
const withoutTab = new Set(['to-glance', 'to-todo', 'to-settings']);
const isTab = (id: string): boolean => id.startsWith('to-') && !withoutTab.has(id);
/** Every screen with the letter that leads to it; the one that is up stands out. */
function tabsRow({ view, columns, keymap }: Scene): Row {
  const all = screenIds(keymap);
  const runs = keymap.keysOn(view.screen).flatMap(({ row, binding }) => {
    const look: Look = row.id === `to-${view.screen}` ? { bold: true } : quietLook;
    // By the keypad its number in the list of the screens, as far as that is one key.
    const nth = all.indexOf(row.id) + 1;
    const said = keymap.pad ? (nth <= 9 ? String(nth) : ' ') : keyName(binding.key);
    return row.group === 'the screen' && isTab(row.id) ? [{ text: ` ${said} ${row.label}`, look }] : [];
  });
  const text = runs.map((run) => run.text).join('');
  return cellsOf(text) <= columns ? endRow(runs, columns) : plainRow(fitted(text, columns), quietLook);
}
export function savedWords(session: NonNullable<Scene['session']>, lines: number): string {
  if (session.notSaved) return 'NOT SAVED';
  if (session.looking) return 'to look only';
  return session.savedTo >= lines ? 'saved' : 'saving';
}

const fewestAnswerRows = 2;
const mostAnswerRows = 4;
/** What the last call came to, under a rule. A long refusal takes the rows it needs. */
function answerRows(scene: Scene): Row[] {
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
const isOnHoles = (screen: ScreenId): boolean => screen === 'strip' || screen === 'build';
export function answerOf({ session, word, note, desk, view, keymap }: Scene): { text: string; look: Look } {
  if (session?.notSaved) {
    const again = keyOf(keymap, view.screen, 'retry');
    return { text: `NOT SAVED: ${session.notSaved.message}. Press ${again} to save again.`, look: alarmLook };
  }
  if (word) return { text: word, look: refusedLook };
  if (note) return { text: note, look: takenLook };
  if (!session?.answer) return { text: '', look: quietLook };
  return answerWords(session.answer, desk, keymap, view.screen);
}
/** Its key here, else the keys of the screen that has it and then its own: "P i"; where none has, the line: "/ searched". */
function wayWords(keymap: Keymap, screen: ScreenId, call: string): string {
  const [typed = ''] = rowById.get(call)?.words ?? [];
  const byKey = keyOf(keymap, screen, call) || wayTo(keymap, screen, call).map(keyName).join(' ');
  return byKey || `${keyOf(keymap, screen, 'line')} ${typed}`.trim();
}
type Instead = { instead: string; by?: string; or?: Instead };
/** What to do instead, each way with its key where the screen has one. */
function insteadWords({ instead, by, or }: Instead, keymap: Keymap, screen: ScreenId): string {
  const key = by === undefined ? '' : wayWords(keymap, screen, by);
  const words = key === '' ? instead : `${instead}: ${key}`;
  return or === undefined ? words : `${words}, ${insteadWords(or, keymap, screen)}`;
}
function answerWords(answer: Answer, desk: Desk, keymap: Keymap, screen: ScreenId): { text: string; look: Look } {
  switch (answer.kind) {
    case 'taken': {
      const { otherwise } = answer;
      const keys = otherwise === undefined ? [] : wayTo(keymap, screen, otherwise.by).map(keyName);
      const or = otherwise === undefined || keys.length === 0 ? '' : `. ${otherwise.words}: ${keys.join(' ')}`;
      return { text: `${answer.text}${or}   (${outParts(desk.ledger.tallies.all).join(', ')})`, look: takenLook };
    }
    case 'faced':
      return { text: answer.text, look: takenLook };
    case 'refused': {
      const rule = answer.refusal ? `[${answer.refusal.rule}] ` : '';
      const again = answer.againSays ? ' The same key again: it is done already.' : '';
      const instead = insteadWords(answer, keymap, screen);
      return { text: `NO ${rule}${answer.text}; ${instead}.${again}`, look: refusedLook };
    }
    case 'asked': {
      const instead = insteadWords(answer, keymap, screen);
      return { text: `${answer.text}; ${instead}. The same key again ${answer.again}.`, look: refusedLook };
    }
    case 'step':
      return { text: '', look: quietLook };
  }
}
