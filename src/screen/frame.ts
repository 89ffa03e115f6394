// One frame of the program as rows of text: head, body, last answer, keys. Pure: the same state gives the same rows,
// exactly as many and as wide as the screen.
import type { Keymap } from '../calls/bindings.ts';
import type { Desk } from '../calls/desk.ts';
import type { Rows } from '../calls/listed.ts';
import type { SessionState } from '../session/session-shape.ts';
import type { View } from '../view/view.ts';
import { answerRows } from './answer.ts';
import { bodyOf } from './body.ts';
import { fitted, wrapped } from './cells.ts';
import { footOf } from './footer.ts';
import { headRows } from './head.ts';
import { filled, plainRow, type Row } from './rows.tsx';
import { whileSame } from './while-same.ts';

export type Scene = {
  view: View;
  desk: Desk;
  session?: Pick<SessionState, 'answer' | 'savedTo' | 'notSaved' | 'looking'>;
  /** The name the job was begun under. */
  begunAs?: string;
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

export const frame = (scene: Scene): Row[] =>
  framed(scene, {
    answer: () => answerRows(scene),
    body: (room) => bodyOf(scene, room),
    foot: () => footOf(scene),
  });

/** Frames one after the other: while only "saved" differs, all but the head is of the frame before. */
export function rememberingFrames(): (scene: Scene) => Row[] {
  const [answer, body, foot] = [whileSame<Row[]>(), whileSame<Row[]>(), whileSame<Row[]>()];
  return (scene) => {
    const { view, desk, session, listed, reading, keymap, word, note, greeting, columns, rows } = scene;
    const shown = [view, desk, listed, reading, keymap, greeting, columns, rows];
    return framed(scene, {
      answer: () => answer([...shown, session?.answer, session?.notSaved, word, note], () => answerRows(scene)),
      body: (room) => body([...shown, room], () => bodyOf(scene, room)),
      foot: () => foot(shown, () => footOf(scene)),
    });
  };
}

type Pieces = { answer(): Row[]; body(room: number): Row[]; foot(): Row[] };

function framed(scene: Scene, pieces: Pieces): Row[] {
  const { columns, rows } = scene;
  if (columns < smallest.columns || rows < smallest.rows) return tooSmall(columns, rows);
  const head = headRows(scene);
  const answer = pieces.answer();
  const foot = pieces.foot();
  const body = pieces.body(rows - head.length - answer.length - foot.length);
  return [...head, ...body, ...answer, ...foot];
}

function tooSmall(columns: number, rows: number): Row[] {
  const text = `The window is ${columns} x ${rows}; it needs ${smallest.columns} x ${smallest.rows}. Nothing is lost.`;
  const said = wrapped(text, Math.max(1, columns), Math.max(1, rows)).map((line) => plainRow(fitted(line, columns)));
  return filled(said, rows, columns);
}
