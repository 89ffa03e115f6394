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
