// What is to be done or minded before the next one is touched, in rows over it and below it, each with its key.

import { nextSlack } from '../calls/desk.ts';
import { keyOf, waySaid } from '../calls/key-names.ts';
import { mindedBack } from '../calls/minded-back.ts';
import { facesAwaited, mindedHere } from '../calls/sent-to.ts';
import { isBack } from '../calls/tally-words.ts';
import { upNext } from '../calls/up-next.ts';
import { unseenBetween } from '../job/before-faces-meet.ts';
import { isOff } from '../job/closed.ts';
import { holesUncounted } from '../job/counts.ts';
import { missingBefore, missingToBringUp, missingWhereOpen, slackBeforeBelt } from '../job/first-in.ts';
import { inFrontOf } from '../job/in-front.ts';
import { type Ledger, stateOf, tallyOf } from '../job/ledger.ts';
import { gatedBy } from '../job/order.ts';
import { driveLockedAt, isOffItsMarks } from '../job/rotation.ts';
import { areaOf, named, numberOf, type Subject, sortOf, subjectText } from '../job/subjects.ts';
import { plainText } from '../trade/plain-text.ts';
import { acting } from '../view/view.ts';
import { fitted, inPieces, wrapped } from './cells.ts';
import { nextWordsLook, quietLook } from './colours.ts';
import type { Scene } from './frame.ts';
import { plainRow, type Row } from './rows.tsx';
import { cellsOf } from './width.ts';

export const mostMinded = 2;
/** What a lock would lock beside its marks: its timing would be lost with the belt. Common practice, no source. */
const offMarksUnder = (ledger: Ledger, temporaries: readonly string[]): string[] => [
  ...new Set(
    temporaries.flatMap((name) => {
      const t = stateOf(ledger, 'temporary', name);
      const drive = t?.sort === 'lock' || t?.sort === 'pin' ? driveLockedAt(ledger, t.at) : undefined;
      return drive && isOffItsMarks(ledger, drive) ? [drive.drive] : [];
    }),
  ),
];
/** Until it is done, each with its key: what goes in, or comes away, before the next of the area in use is touched. */
function firstSaid({ desk, keymap }: Scene, next: string | undefined): string[] {
  const { ledger, facing } = desk;
  if (facing.area === undefined) return [];
  const offered = upNext(desk, keymap.keysOn('strip'));
  const withKey = (call: string, names: readonly string[]) => {
    const by = offered.find(({ bound, name }) => bound.row.id === call && names.includes(name));
    return by ? ` ${keyOf(keymap, 'strip', by.bound.row.id)}: ${names.join(', ')}` : `: ${names.join(', ')}`;
  };
  const isDone = next === undefined && isBack(tallyOf(ledger, facing.area));
  const missing = isDone ? [] : missingBefore(ledger, facing.area);
  const front = next === undefined ? [] : inFrontOf(ledger, `area:${facing.area}`);
  const parts = front.flatMap((one) => named('part', one) ?? []);
  const others = front.filter((one) => named('part', one) === undefined).map(subjectText);
  const turn = missing.length > 0 ? 'then' : 'first';
  const tight = parts.length > 0 ? slackBeforeBelt(ledger, facing.area) : [];
  const slack = tight[0] === nextSlack(desk) ? ` ${keyOf(keymap, 'strip', 'slack')}` : '';
  const loosened = tight.length > 0 ? `${slack}: ${tight.map(numberOf).join(', ')} slack, then` : '';
  const toMarks = offMarksUnder(ledger, missing);
  const marks =
    toMarks.length > 0 ? ` ${waySaid(keymap, 'strip', 'to-marks')}: ${toMarks.join(', ')} to its marks, then` : '';
  return [
    ...(missing.length > 0 ? [`first${marks}${withKey('put-in', missing)}`] : []),
    ...(parts.length > 0 ? [`${turn}${loosened}${withKey('part-off', parts)}`] : []),
    ...(others.length > 0 ? [`first: ${others.join(', ')}`] : []),
    ...missingWhereOpen(ledger)
      .filter(({ temporary }) => !missing.includes(temporary))
      .map(({ temporary, at }) => `now${withKey('put-in', [temporary])}, ${subjectText(at as Subject)} is open`),
  ];
}
export const firstRows = (scene: Scene, next: string | undefined, columns: number): Row[] =>
  inPieces(
    firstSaid(scene, next).map((one) => `! ${one}`),
    columns - 2,
  ).map((text) => plainRow(fitted(` ${text}`, columns), nextWordsLook));
/** S1: as long as a face of the area lies without its bead, or not called clean; O4: what holds a bolt while it is turned. */
function firstOnSaid({ desk, keymap }: Scene, next: string | undefined): string[] {
  const h = next === undefined ? undefined : stateOf(desk.ledger, 'hole', next);
  const cure = keyOf(keymap, 'build', 'to-sealing');
  const holding = h ? missingToBringUp(desk.ledger, h.hole) : [];
  const { toSeal, toClean } = facesAwaited(desk);
  // K4: without it nothing goes back there.
  const a = h && isOff(h) ? stateOf(desk.ledger, 'area', areaOf(h.hole)) : undefined;
  const toCount = a && !a.counted && holesUncounted(desk.ledger, a) !== null;
  const unseen = a ? unseenBetween(desk.ledger, a.area) : [];
  return [
    ...(toCount ? [`${keyOf(keymap, 'build', 'holes')}: its holes counted by eye`] : []),
    ...toSeal.map(({ face, because }) =>
      because === undefined ? `${cure}: bead on ${face}` : `${cure}: ${face} clean, bead anew: void, ${because}`,
    ),
    ...toClean.map((face) => `${cure}: ${face} clean`),
    ...unseen.map(({ what, words }) =>
      what === 'companions'
        ? `${keyOf(keymap, 'build', 'companions')}: ${words} seen`
        : `${keyOf(keymap, 'build', 'dry')}: blind holes dry`,
    ),
    ...(holding.length > 0 ? [`${keyOf(keymap, 'build', 'put-in')}: ${holding.join(', ')}`] : []),
  ].map((one) => `first ${one}`);
}
export const firstOnRows = (scene: Scene, next: string | undefined, columns: number): Row[] =>
  firstOnSaid(scene, next).flatMap((one) =>
    wrapped(plainText(`! ${one}`), columns - 2, 2).map((text) => plainRow(fitted(` ${text}`, columns), nextWordsLook)),
  );
/** Before the first of an area comes off, where it can hurt or spoil something: each in whole, else where it is read; later only where. */
export function mindedRows({ desk, keymap }: Scene, columns: number, room: number): Row[] {
  const { area } = desk.facing;
  const minded = mindedHere(desk);
  const begun = area !== undefined && tallyOf(desk.ledger, area).off > 0;
  const texts: string[] = [];
  let told = 0;
  for (const words of minded.slice(0, begun ? 0 : mostMinded)) {
    const rows = wrapped(plainText(`mind: ${words}`), columns - 2, 99);
    const isLast = told + 1 === minded.length;
    if (texts.length + rows.length + (isLast ? 0 : 1) > room) break;
    texts.push(...rows);
    told++;
  }
  const left = minded.length - told;
  const key = keyOf(keymap, 'strip', 'to-todo');
  if (left > 0) texts.push(`${left}${told > 0 ? ' more' : ''} to mind: ${key}`);
  return texts.map((text) => plainRow(fitted(` ${text}`, columns), begun ? quietLook : nextWordsLook));
}
/** On the way back one row, as many of them as it has room for, or the beginning of the first; the whole stands in its list. */
export function mindedBackRows({ desk, keymap }: Scene, columns: number, room: number): Row[] {
  const minded = mindedBack(desk).map(({ brief }) => brief);
  if (minded.length === 0 || room < 1) return [];
  const key = keyOf(keymap, 'build', 'to-todo');
  const tail = (told: number): string =>
    told < minded.length ? `${minded.length - told} more: ${key}` : `All: ${key}`;
  const said = (told: number): string => plainText(`mind: ${minded.slice(0, told).join('; ')}. ${tail(told)}`);
  const told = minded.findLastIndex((_, i) => cellsOf(said(i + 1)) <= columns - 2) + 1;
  const cut = plainText(`mind: ${minded[0]}`);
  const text = told > 0 ? said(told) : `${fitted(cut, columns - 3 - cellsOf(tail(1)))} ${tail(1)}`;
  return [plainRow(fitted(` ${text}`, columns), quietLook)];
}
/** "first R: timing drive (check rotation not passed)"; empty where nothing stands open behind the area. */
export function gateWords({ desk: { ledger }, keymap }: Scene, area: string): string {
  const gate = gatedBy(ledger, area);
  const key = gate && sortOf(gate.subject) === 'rotation' ? ` ${keyOf(keymap, 'build', 'to-rotation')}` : '';
  return gate ? `first${key}: ${subjectText(gate.subject)} (${gate.because})` : '';
}
/** O1: why nothing of the area in use can be closed yet. */
function gatedSaid(scene: Scene): string[] {
  const { area } = scene.desk.facing;
  const words = area === undefined || tallyOf(scene.desk.ledger, area).open === 0 ? '' : gateWords(scene, area);
  return words === '' ? [] : [words];
}
export const gatedRows = (scene: Scene, columns: number, most: number): Row[] =>
  gatedSaid(scene).flatMap((said) =>
    wrapped(plainText(said), columns - 2, most).map((text) => plainRow(fitted(` ${text}`, columns))),
  );
/** All of that in one row, for where the next one stands large: "! first C: bead on cam cover face; first: gasket (off)". */
export function firstInShort(scene: Scene, next: string): string | undefined {
  const isBack = acting(scene.view) === 'build';
  const said = isBack ? [...firstOnSaid(scene, next), ...gatedSaid(scene)] : firstSaid(scene, next);
  return said.length === 0 ? undefined : plainText(`! ${said.join('; ')}`);
}
