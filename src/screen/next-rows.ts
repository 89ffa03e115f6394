// What the next call speaks of, in a few rows below the cardboard.

import { areHolesKnown, leftToSlacken } from '../calls/desk.ts';
import { keyOf, waySaid } from '../calls/key-names.ts';
import type { Listed } from '../calls/listed.ts';
import { belongingsHere, holeRow } from '../calls/lists/holes.ts';
import { holeDetails } from '../calls/lists/map.ts';
import { nextArea } from '../calls/next-area.ts';
import { suspectedHere, suspectedNext } from '../calls/rows/findings.ts';
import { takenForIt } from '../calls/taken-next.ts';
import { isBack } from '../calls/tally-words.ts';
import { namedAsParted, type Rest, restOf } from '../job/area-rest.ts';
import { freedIn } from '../job/freed.ts';
import { unpartedOf } from '../job/in-front.ts';
import { every, type Ledger, lineAt, stateOf, tallyOf } from '../job/ledger.ts';
import { mayLeave } from '../job/open-points.ts';
import { areaOf, numberOf, subjectText, withinArea } from '../job/subjects.ts';
import { suspectedAt, suspicionText } from '../job/suspicions.ts';
import { plainText } from '../trade/plain-text.ts';
import { firstOnRows, firstRows, gatedRows, gateWords, mindedBackRows, mindedRows, mostMinded } from './before-next.ts';
import { fitted, inPieces, wrapped } from './cells.ts';
import { nextWordsLook, quietLook } from './colours.ts';
import { comingWords, isUntouched } from './coming.ts';
import type { Scene } from './frame.ts';
import { keyThatIsNext } from './key-next.ts';
import { plainRow, type Row } from './rows.tsx';
import { tighteningRows } from './tightening-rows.ts';

const quietRows = 3;
/** Beside the list the sheet is narrow, and high: what the keys would take stands there in whole. */
const quietRowsWithRoom = 6;
const mostWithRoom = 18;
/** Rows that each of the rest gets besides its own. */
const moreWithRoom = 2;
/**
 * The next hole in words, what is suspected, how it is tightened, and what the other keys would take.
 * @param listBeside parts and connections are named there already
 * @param most rows there are for all of it before what is to be minded gives way
 * @param mostWithKeys and before what the other keys would take gives way, but for a row of it
 */
export function nextRows(
  scene: Scene,
  next: string | undefined,
  columns: number,
  listBeside: boolean,
  most: number,
  mostWithKeys: number,
): Row[] {
  const { desk, view } = scene;
  const h = next === undefined ? undefined : stateOf(desk.ledger, 'hole', next);
  const row = h && holeRow(desk, h);
  const more = next === undefined ? [] : holeDetails(desk, next);
  const itsKey = h && view.screen === 'build' ? keyThatIsNext(scene, h) : '';
  const traded = row && view.screen === 'build' ? tradedFirst(scene, row) : '';
  const released = stateOf(desk.ledger, 'vehicle', 'vehicle')?.releasedAt;
  const said = released
    ? `Released in line ${released}. ${waySaid(scene.keymap, view.screen, 'reopen')} opens the job again.`
    : next === undefined
      ? view.screen === 'build'
        ? restWords(scene)
        : doneWords(scene)
      : row
        ? `> ${traded}${row.name} ${row.text.replace(/ +/g, ' ').trimEnd()}${row.end ? `, ${row.end}` : ''}${more.length > 1 ? `. At this hole: ${more.join(', ')}` : ''}${itsKey}`
        : withinArea(next).includes(' ')
          ? `> ${subjectText(`hole:${next}`)} is next, under what came off there`
          : view.screen === 'strip' && tallyOf(desk.ledger, areaOf(next)).touched > 0
            ? `> another one: ${keyOf(scene.keymap, 'strip', 'off')} (${subjectText(`hole:${next}`)}). That was all: ${keyOf(scene.keymap, 'strip', 'holes')} counts the holes`
            : `> ${subjectText(`hole:${next}`)} is next`;
  const others = (listBeside ? [] : belongingsHere(desk)).map((one) => `${one.text} ${one.end}`);
  const coming = comingWords(scene);
  const roomy = most >= mostWithRoom ? moreWithRoom : 0;
  const before = [
    ...(view.screen === 'build' ? firstOnRows(scene, next, columns) : firstRows(scene, next, columns)),
    ...wrapped(plainText(said), columns - 2, (listBeside || traded !== '' ? 3 : 2) + roomy).map((text) =>
      plainRow(fitted(` ${text}`, columns), next === undefined ? quietLook : nextWordsLook),
    ),
    ...suspectedRows(scene, columns, 3 + roomy),
  ];
  const how = [
    ...(view.screen === 'build' ? gatedRows(scene, columns, 2 + roomy) : hintRows(scene, columns, 2 + roomy)),
    ...(next !== undefined && view.screen === 'build' ? tighteningRows(scene, next, columns, 3 + roomy) : []),
  ];
  const usual = roomy > 0 ? quietRowsWithRoom : quietRows;
  const quietMost = Math.max(1, Math.min(usual, mostWithKeys - before.length - how.length));
  const quiet = [coming, others].flatMap((some) => inPieces(some, columns - 2, quietMost));
  const keys = [...quiet.slice(0, quietMost).map((text) => plainRow(fitted(` ${text}`, columns), quietLook))];
  const room = most - before.length - how.length - keys.length;
  return [
    ...before,
    ...(next === undefined || view.screen === 'build' ? [] : mindedRows(scene, columns, room)),
    ...how,
    ...(view.screen === 'build' ? mindedBackRows(scene, columns, room) : []),
    ...keys,
  ];
}
/** "9: Enter takes the bolt hex 8 M6x35 that came out of 5. ": said before what the hole had, since it is what goes in. */
function tradedFirst({ desk, keymap }: Scene, { key, name }: Listed): string {
  const words = takenForIt(desk.ledger, key);
  return words === undefined ? '' : `${name}: ${keyOf(keymap, 'build', 'back')} takes ${words}. `;
}
/** No hole of it can be brought further; what of it waits besides, each with its key. */
function restWords(scene: Scene): string {
  const { ledger, facing } = scene.desk;
  const { keymap } = scene;
  const rest = facing.area === undefined ? [] : [...restOf(ledger, facing.area), ...namedAsParted(ledger, facing.area)];
  if (rest.length === 0)
    return `Nothing of it ${isUntouched(ledger, facing.area) ? 'came off' : 'waits'}. ${onwardsWords(scene)}`;
  const key = (by: string) => keyOf(keymap, 'build', by) || keyOf(keymap, 'build', 'to-findings');
  // A key stands only beside what it does now; what waits for the rest comes after it.
  const isToDo = ({ what, now }: Rest) => now || what === 'finding' || what === 'working';
  const said = (one: Rest) => (one.by === undefined || !isToDo(one) ? one.words : `${one.words}: ${key(one.by)}`);
  const [first, later] = [rest.filter(isToDo), rest.filter((one) => !isToDo(one))];
  return `It waits: ${[...first, ...later].map(said).join('; ')}`;
}
/** Where the way back goes on: in the next area, else with what keeps the car besides its fasteners; at last it leaves. */
function onwardsWords(scene: Scene): string {
  const next = nextArea(scene.desk, true);
  if (next !== undefined) {
    const gate = gateWords(scene, next);
    return `${keyOf(scene.keymap, 'build', 'next-area')} is the next area: ${next}${gate && `, ${gate}`}.`;
  }
  return leavesWords(scene, 'build');
}
const leavesWords = ({ desk, keymap }: Scene, screen: 'strip' | 'build'): string =>
  mayLeave(desk.ledger, desk.now)
    ? `Nothing is open: ${waySaid(keymap, screen, 'release')} releases the car.`
    : `${keyOf(keymap, screen, 'to-leaving')} lists what else keeps the car here.`;
/** F2: the suspicion that the two keys would answer, as long as one of the area in use stands; it gives way, the keys do not. */
function suspectedRows({ desk, keymap, view }: Scene, columns: number, most: number): Row[] {
  if (suspectedHere(desk.ledger, desk.facing.area).length === 0) return [];
  const hole = suspectedNext(desk);
  const suspected = hole === undefined ? undefined : suspectedAt(desk.ledger, hole);
  if (hole === undefined || !suspected || areaOf(hole) !== desk.facing.area) return [];
  const [right, meant] = ['wrong-indeed', 'meant-so'].map((call) => waySaid(keymap, view.screen, call));
  const said = plainText(`? ${withinArea(hole)} ${suspicionText(suspected.suspicions)}.`);
  const keys = `${right} wrong indeed, ${meant} meant so`;
  const whole = wrapped(`${said} ${keys}`, columns - 2, most + 1);
  const rows = whole.length <= most ? whole : [...wrapped(said, columns - 2, most - 1), keys];
  return rows.map((text) => plainRow(fitted(` ${text}`, columns), nextWordsLook));
}
/** What bolts held lies loose; a belt is held by what tensions it, whatever came off in front. Common practice, no source. */
function stillOnWords(ledger: Ledger, parts: readonly string[]): string {
  const isHeld = (part: string) => (stateOf(ledger, 'part', part)?.declared?.heldBy.length ?? 0) > 0;
  if (parts.every(isHeld)) return 'loose, and still on';
  const drives = [...every(ledger, 'drive')].flatMap(({ declared }) => declared ?? []);
  const isTensioned = drives.some((d) => d.tensioner !== 'none' && parts.some((part) => d.parts.includes(part)));
  return `free in front, and still on${isTensioned ? '; its tension off first' : ''}`;
}
const isAllBack = (ledger: Ledger): boolean =>
  isBack(ledger.tallies.all) &&
  ![...every(ledger, 'part')].some((p) => p.off) &&
  ![...every(ledger, 'connection')].some((c) => c.parted);
/** Nothing of it comes off any more; what is only slackened may be left. */
function doneWords(scene: Scene): string {
  const { desk, keymap } = scene;
  const { ledger, facing } = desk;
  const left = facing.area === undefined ? [] : leftToSlacken(ledger, facing.area);
  const loose = facing.area === undefined ? [] : freedIn(ledger, facing.area);
  const joined = facing.area === undefined ? [] : unpartedOf(ledger, facing.area);
  if (left.length === 0 && joined.length > 0)
    return `> ${keyOf(keymap, 'strip', 'parted')} parted, not called yet: ${joined.join(', ')}`;
  if (left.length === 0 && loose.length > 0)
    return `> ${loose.join(', ')}: ${stillOnWords(ledger, loose)}. ${keyOf(keymap, 'strip', 'part-off')} takes it off`;
  return left.length > 0
    ? `> ${left.map(numberOf).join(', ')} ${left.length === 1 ? 'is' : 'are'} only slackened: ${keyOf(keymap, 'strip', 'slack')}`
    : isAllBack(ledger) && nextArea(desk, false) === undefined
      ? `All that came off is back. ${leavesWords(scene, 'strip')}`
      : isBack(tallyOf(ledger, facing.area ?? ''))
        ? `Nothing of it is off. One that comes off again is pointed at first: ${keyOf(keymap, 'strip', 'point')}.`
        : nextArea(desk, false) === undefined && areHolesKnown(ledger, facing.area ?? '')
          ? `Every fastener that comes off is off. ${keyOf(keymap, 'strip', 'to-todo')} lists what else comes off, ${keyOf(keymap, 'strip', 'to-build')} what goes back.`
          : `Every hole known of it has been called. ${keyOf(keymap, 'strip', 'next-area')} is the next area.`;
}
/** Before an area is in use: what is to be minded on the whole car, and what the keys would take. */
export const aroundRows = (scene: Scene, columns: number): Row[] => [
  ...mindedRows(scene, columns, mostMinded * 3),
  ...inPieces(comingWords(scene), columns - 2).map((text) => plainRow(fitted(` ${text}`, columns), quietLook)),
];
/** For the first ten minutes of a job without a plan, one hint at a time, as far as it has come. */
function hintRows({ desk: { ledger, now, facing }, keymap }: Scene, columns: number, most: number): Row[] {
  const first = lineAt(ledger, 1);
  if (stateOf(ledger, 'vehicle', 'vehicle')?.releasedAt) return [];
  if (!first || now.atMs - first.atMs > tenMinutesMs || [...every(ledger, 'service')].length > 0) return [];
  const key = (call: string) => keyOf(keymap, 'strip', call);
  const { touched, slack } = ledger.tallies.all;
  const isDrawn = stateOf(ledger, 'area', facing.area ?? '')?.declared?.outline !== undefined;
  const toDraw = isDrawn ? [] : [`${key('drawn')} draws the area as it looks`];
  const isPartOff = [...every(ledger, 'part')].some((p) => p.off);
  const toTakeOff = isPartOff ? [] : [`${key('part-off')} the part it held came off`];
  const hint =
    touched === 0
      ? `${key('off')} one came off, ${key('slack')} it is only slackened, ${key('missing')} the hole was empty`
      : touched < 3
        ? `one too many? ${key('strike-last')} strikes the last call; ${key('wrong-one')} it does not belong there`
        : touched < 6 && !(isDrawn && isPartOff)
          ? [...toDraw, ...toTakeOff].join('; ')
          : slack === 0 && touched < 10
            ? `${key('parted')} a plug or hose parted; ${key('put-in')} a jack, pin or rag went in; ${key('finding')} something is wrong`
            : `${key('area')} the next area; ${key('to-build')} what goes back; ${key('to-leaving')} what is still open`;
  return wrapped(hint, columns - 2, most).map((text) => plainRow(fitted(` ${text}`, columns), quietLook));
}
const tenMinutesMs = 10 * 60_000;
