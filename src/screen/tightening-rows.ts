// O4: how a fastener is brought up, below the cardboard: the next one, and the one that is pulled up while another is next.

import { nextTight } from '../calls/desk.ts';
import { keyOf, waySaid } from '../calls/key-names.ts';
import { rowById } from '../calls/table.ts';
import { type Ledger, stateOf } from '../job/ledger.ts';
import { broughtUpAt, methodFor, passesOf } from '../job/passes.ts';
import { areaOf, type Hole, withinArea } from '../job/subjects.ts';
import { isByFeel, specAt, tighteningWords, wantsFigure } from '../job/tightening.ts';
import { plainText } from '../trade/plain-text.ts';
import { fitted, wrapped } from './cells.ts';
import type { Scene } from './frame.ts';
import { plainRow, type Row } from './rows.tsx';

/** @param most rows for the next one; the other has two of its own */
export const tighteningRows = (scene: Scene, next: string, columns: number, most: number): Row[] => [
  ...rowsOf(ofTheNext(scene, next), columns, most),
  ...rowsOf(ofThePulledUp(scene, next), columns, 2),
];
const rowsOf = (words: string, columns: number, most: number): Row[] =>
  words === '' ? [] : wrapped(words, columns - 2, most).map((text) => plainRow(fitted(` ${plainText(text)}`, columns)));

const wordsOf = ({ desk: { ledger, units } }: Scene, hole: string): string =>
  tighteningWords(ledger, hole, units).join('. ');
/** How it is brought up, what to set on the wrench, what of it is doubtful, and how a figure is said. */
function ofTheNext(scene: Scene, next: string): string {
  const { ledger } = scene.desk;
  const words = wordsOf(scene, next);
  const says = waySaid(scene.keymap, 'build', 'figure');
  if (words === '') return isFinalUnsaid(ledger, next) ? `no torque figure was said; ${says} says it` : '';
  return `tighten: ${words}${wantsFigure(methodFor(ledger, next)) ? `; ${says} says it` : ''}`;
}
/** Nobody said how its final is done, and that comes next. */
function isFinalUnsaid(ledger: Ledger, hole: Hole): boolean {
  const o = stateOf(ledger, 'hole', hole)?.called.occupant;
  if (!o || o.level === 'tight' || o.working || isByFeel(specAt(ledger, hole))) return false;
  return broughtUpAt(ledger, hole).pass === passesOf(ledger, areaOf(hole)).at(-1);
}
/** "t tight: 2, 48 N·m", where that is another than what stands above it. */
function ofThePulledUp(scene: Scene, next: string): string {
  const hole = nextTight(scene.desk);
  if (hole === undefined || hole === next) return '';
  const words = wordsOf(scene, hole);
  if (words === wordsOf(scene, next)) return '';
  const label = rowById.get('tight')?.labelNow?.(scene.desk) ?? 'tight';
  return `${keyOf(scene.keymap, 'build', 'tight')} ${label}: ${withinArea(hole)}, ${words || 'no figure was said'}`;
}
