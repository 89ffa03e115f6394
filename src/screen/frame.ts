// One frame of the program as rows of text: head, body, last answer, keys. Pure: the same state gives the same rows,
// exactly as many and as wide as the screen.
import { keysOn } from '../calls/bindings.ts';
import type { Desk } from '../calls/desk.ts';
import { nextBack, nextOff, nextTight } from '../calls/desk.ts';
import type { Listed, Rows } from '../calls/listed.ts';
import { areasListed, belongingsHere } from '../calls/lists/holes.ts';
import { whyNot } from '../calls/pressing.ts';
import { specWords } from '../calls/spec-words.ts';
import { every } from '../job/ledger.ts';
import { subjectText } from '../job/subjects.ts';
import type { Answer, SessionState } from '../session/session.ts';
import { plainText } from '../trade/plain-text.ts';
import type { ScreenId } from '../view/screens.ts';
import { type Asking, offered, type View } from '../view/view.ts';
import { cellsOf, fitted, spread, windowFrom, wrapped } from './cells.ts';
import { alarmLook, chosenLook, type Look, lookOf, quietLook, refusedLook, shapeOf, takenLook } from './colours.ts';
import { plainRow, type Row } from './rows.tsx';

export type Scene = {
  view: View;
  desk: Desk;
  session?: Pick<SessionState, 'answer' | 'savedTo' | 'notSaved' | 'looking'>;
  listed: Rows;
  word?: string;
  columns: number;
  rows: number;
};

export const smallest = { columns: 80, rows: 24 } as const;
const footerRows = 2;
const answerRows = 3;

export const titles: Record<ScreenId, string> = {
  shelf: 'Shelf of jobs',
  strip: 'Strip',
  build: 'Build',
  findings: 'Findings',
  rotation: 'Check rotation',
  sealing: 'Sealing and cure',
  box: 'Parts box and trays',
  leaving: 'Before it leaves',
  log: 'Log',
  help: 'Calls',
};

export function frame(scene: Scene): Row[] {
  const { columns, rows } = scene;
  if (columns < smallest.columns || rows < smallest.rows) return tooSmall(columns, rows);
  const head = headRows(scene);
  const answer = answerOf(scene);
  const foot = footOf(scene);
  const body = bodyOf(scene, rows - head.length - answer.length - foot.length);
  return [...head, ...body, ...answer, ...foot];
}

function tooSmall(columns: number, rows: number): Row[] {
  const text = `The window is ${columns} x ${rows}; it needs ${smallest.columns} x ${smallest.rows}. Nothing is lost.`;
  const said = wrapped(text, Math.max(1, columns), Math.max(1, rows)).map((line) => plainRow(fitted(line, columns)));
  return filled(said, rows, columns);
}
const filled = (rows: readonly Row[], many: number, columns: number): Row[] => [
  ...rows.slice(0, many),
  ...Array.from({ length: Math.max(0, many - rows.length) }, () => plainRow(' '.repeat(columns))),
];

function headRows({ view, desk, session, columns }: Scene): Row[] {
  const vehicle = [...every(desk.ledger, 'vehicle')][0];
  const t = desk.ledger.tallies.all;
  const counts = session ? `${t.off} off  ${t.slack} slack  ${t.open} open` : '';
  const saved = savedWords(session, desk.ledger.lines.length);
  const left = ` ${titles[view.screen]}${vehicle?.label ? `  ${vehicle.label}` : ''}${vehicle?.releasedAt ? '  RELEASED' : ''}`;
  const first = spread(left, `${counts}  ${saved} `, columns);
  const { area, tray, spec } = desk.facing;
  const inUse = session
    ? `${area === undefined ? ' no area in use' : ` at ${area}`}   into tray ${tray}   ${specWords(spec) === 'unknown' ? '' : specWords(spec)}`
    : '';
  return [
    plainRow(first, session?.notSaved ? alarmLook : { inverse: true, bold: true }),
    tabsRow(view, columns),
    plainRow(fitted(inUse, columns)),
  ];
}
/** Every screen with the letter that leads to it; the one that is up stands out. */
function tabsRow(view: View, columns: number): Row {
  const tabs = keysOn(view.screen).flatMap(({ row, binding }) =>
    row.id.startsWith('to-') ? [{ key: binding.key, label: row.label, up: row.id === `to-${view.screen}` }] : [],
  );
  const runs = tabs.map((tab) => ({
    text: ` ${tab.key} ${tab.label}`,
    look: tab.up ? { bold: true as const } : quietLook,
  }));
  const used = runs.reduce((sum, run) => sum + cellsOf(run.text), 0);
  return used <= columns
    ? endRow(runs, used, columns)
    : [{ text: fitted(runs.map((r) => r.text).join(''), columns), look: quietLook }];
}
function savedWords(session: Scene['session'], lines: number): string {
  if (!session) return '';
  if (session.notSaved) return 'NOT SAVED';
  if (session.looking) return 'to look only';
  return session.savedTo >= lines ? 'saved' : 'saving';
}

function bodyOf(scene: Scene, rows: number): Row[] {
  const { view, columns } = scene;
  if (view.asking) return filled(askingRows(view.asking, columns, rows), rows, columns);
  if (view.screen === 'strip' || view.screen === 'build') return filled(benchRows(scene, rows), rows, columns);
  if (scene.listed.length === 0)
    return filled([plainRow(''), plainRow(fitted(`  ${nothing[view.screen]}`, columns))], rows, columns);
  return filled(listRows(scene.listed, view.at[view.screen] ?? 0, columns, rows), rows, columns);
}
const nothing: Record<ScreenId, string> = {
  shelf: 'No job yet. Press n for a new one.',
  strip: '',
  build: '',
  findings: 'Nothing was found wrong so far.',
  rotation: 'No drive is declared. Take a plan, or say it: / drive NAME over AREAS …',
  sealing: 'No sealing face or circuit is known. Say one: / face NAME pressed by HOLES …',
  box: 'The parts box and the trays are empty.',
  leaving: 'Nothing is open. The car may leave: press x.',
  log: 'Nothing was called yet.',
  help: '',
};

const nameCells = 11;
function listRows(listed: Rows, at: number, columns: number, rows: number): Row[] {
  const from = windowFrom(at, listed.length, rows);
  return listed.slice(from, from + rows).map((one, i) => listedRow(one, from + i === at, columns));
}
function listedRow(one: Listed, chosen: boolean, columns: number, cells = nameCells): Row {
  const name = one.name === '' ? '' : fitted(one.name, Math.max(cells, 0));
  const text = spread(plainText(` ${name}${name && ' '}${one.text}`), plainText(one.end ?? ''), columns - 4);
  const look: Look = chosen ? chosenLook : lookOf(one.mark);
  return [
    { text: chosen ? ' > ' : '   ', look: chosenOr(chosen) },
    { text: shapeOf(one.mark), look },
    { text, look },
  ];
}
const chosenOr = (chosen: boolean): Look => (chosen ? { bold: true } : {});

const areaCells = 30;
/** Areas on the left, the holes of the one in use on the right; the hole the next call speaks of is pointed at. */
function benchRows(scene: Scene, rows: number): Row[] {
  const { desk, view, columns } = scene;
  const areas = areasListed(desk);
  if (areas.length === 0) return firstHints(columns);
  const atArea = Math.max(
    0,
    areas.findIndex((a) => a.name === desk.facing.area),
  );
  const left = areas.slice(windowFrom(atArea, areas.length, rows)).slice(0, rows);
  const holes = [...scene.listed.slice(0, scene.listed.length), ...belongingsHere(desk)];
  const next = view.screen === 'strip' ? nextOff(desk) : (nextBack(desk) ?? nextTight(desk));
  const atHole = Math.max(
    0,
    holes.findIndex((h) => h.key === next),
  );
  const from = windowFrom(atHole, holes.length, rows);
  const right = holes.slice(from, from + rows);
  const room = columns - areaCells - 1;
  const untold = next !== undefined && !holes.some((h) => h.key === next) ? next : undefined;
  return Array.from({ length: Math.min(rows, Math.max(left.length, right.length + (untold ? 1 : 0))) }, (_, i) => {
    const area = left[i];
    const hole = right[i];
    const areaLook: Look = area
      ? area.name === desk.facing.area
        ? { ...lookOf(area.mark), bold: true }
        : lookOf(area.mark)
      : {};
    const areaText = area
      ? `${area.name === desk.facing.area ? '>' : ' '}${shapeOf(area.mark)} ${spread(area.name, area.text, areaCells - 3)}`
      : ' '.repeat(areaCells);
    const holeRow = hole
      ? listedRow(hole, hole.key === next, room, 7)
      : i === right.length && untold
        ? [{ text: fitted(` > ${subjectText(`hole:${untold}`)} is next`, room), look: chosenLook }]
        : [{ text: ' '.repeat(room) }];
    return [{ text: areaText, look: areaLook }, { text: '│', look: quietLook }, ...holeRow];
  });
}
function firstHints(columns: number): Row[] {
  const hints = [
    '',
    '  Nothing was called yet.',
    '',
    '  a   name the area you begin with: "cam cover"',
    '  b 0   the fastener in use: a bolt, head 10; it stays until you change it',
    '  enter   one came off; it lies in the tray in use',
    '  backspace   strike the last call',
    '  L   what must be closed before the car leaves, with the next call for each',
    '',
    '  The maker\u2019s manual comes first. Stands, not jacks. Battery off before the work.',
  ];
  return hints.map((text) => plainRow(fitted(text, columns)));
}

function askingRows(asking: Asking, columns: number, rows: number): Row[] {
  const choices = offered(asking);
  const head: Row[] = [
    plainRow(fitted('', columns)),
    plainRow(fitted(`  ${plainText(asking.title)}`, columns), { bold: true }),
    [{ text: '  > ' }, { text: fitted(`${plainText(asking.typed)}_`, columns - 4), look: { inverse: true } }],
    plainRow(fitted(asking.why ? `    ${plainText(asking.why)}` : '', columns), refusedLook),
  ];
  const room = rows - head.length - 1;
  const first = Math.floor(asking.at / 9) * 9;
  const shown = choices.slice(first, first + Math.min(9, room));
  const list = shown.map((choice, i): Row => {
    const chosen = first + i === asking.at;
    const text = spread(`  ${i + 1}  ${plainText(choice.text)}`, plainText(choice.blocked ?? ''), columns - 2);
    return plainRow(fitted(`  ${text}`, columns), chosen ? chosenLook : choice.blocked ? quietLook : undefined);
  });
  const more =
    choices.length > first + shown.length ? `    ${choices.length - first - shown.length} more: page down` : '';
  return [...head, ...list, plainRow(fitted(more, columns), quietLook)];
}

function answerOf({ session, word, columns, desk, view }: Scene): Row[] {
  const answer = session?.answer;
  const lines =
    answer && !word
      ? answerWords(answer, desk, view.screen)
      : { text: word ?? '', look: word ? refusedLook : quietLook };
  const said = session?.notSaved
    ? { text: `NOT SAVED: ${session.notSaved.message}. Press ! to save again.`, look: alarmLook }
    : lines;
  const rule = plainRow('─'.repeat(columns), quietLook);
  const words = wrapped(plainText(said.text), columns - 2, answerRows - 1).map((text) =>
    plainRow(fitted(` ${text}`, columns), said.look),
  );
  return [rule, ...filled(words, answerRows - 1, columns)];
}
function answerWords(answer: Answer, desk: Desk, _screen: ScreenId): { text: string; look: Look } {
  if (answer.kind === 'taken') {
    const { off, slack } = desk.ledger.tallies.all;
    return { text: `${answer.text}   (${off} off, ${slack} slack)`, look: takenLook };
  }
  if (answer.kind === 'faced') return { text: answer.text, look: takenLook };
  if (answer.kind === 'refused') {
    const rule = answer.refusal ? `[${answer.refusal.rule}] ` : '';
    const again = answer.refusal?.kind === 'order' ? ' The same key again: it is done already.' : '';
    return { text: `NO ${rule}${answer.text}; ${answer.instead}.${again}`, look: refusedLook };
  }
  return { text: '', look: quietLook };
}

const keyNames: Record<string, string> = {
  enter: 'Enter',
  space: 'Space',
  backspace: 'Bksp',
  escape: 'Esc',
  right: 'Right',
};
/** Keys of this screen in the order of the table; one that is refused just now is dim. */
function footOf({ view, desk, columns, listed }: Scene): Row[] {
  if (view.asking) {
    const text = ' Enter take   Esc leave it   1-9 choose   up/down move   type to name or filter';
    return filled([plainRow(fitted(text, columns), quietLook)], footerRows, columns);
  }
  const onHoles = view.screen === 'strip' || view.screen === 'build';
  const picks = onHoles ? {} : (listed.at(view.at[view.screen] ?? 0)?.picks ?? {});
  const pieces = keysOn(view.screen)
    .filter((b) => b.binding.footer !== false)
    .map((bound) => ({
      text: `${keyNames[bound.binding.key] ?? bound.binding.key} ${bound.row.label}`,
      look: whyNot(bound, desk, picks) ? quietLook : undefined,
    }));
  const rows: Row[] = [];
  let row: { text: string; look?: Look }[] = [];
  let used = 0;
  for (const piece of pieces) {
    const cells = cellsOf(piece.text) + 2;
    if (used + cells > columns) {
      rows.push(endRow(row, used, columns));
      row = [];
      used = 0;
      if (rows.length === footerRows) break;
    }
    row.push({ text: ` ${piece.text} `, ...(piece.look && { look: piece.look }) });
    used += cells;
  }
  if (rows.length < footerRows) rows.push(endRow(row, used, columns));
  return filled(rows, footerRows, columns);
}
const endRow = (row: Row, used: number, columns: number): Row => [
  ...row,
  { text: ' '.repeat(Math.max(0, columns - used)) },
];
