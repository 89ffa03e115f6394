// What the signs of a screen say: told first where help is asked for on it. The shapes are those of colours.ts.
import type { Mark } from '../calls/listed.ts';
import type { ScreenId } from '../view/screens.ts';
import { fitted, wrapped } from './cells.ts';
import { quietLook, shapeOf } from './colours.ts';
import { plainRow, type Row } from './rows.tsx';

type Signs = readonly (readonly [Mark, string])[];
const ofHoles: Signs = [
  ['found', 'as found'],
  ['stays', 'only to be slackened'],
  ['slack', 'slack'],
  ['open', 'off'],
  ['empty', 'empty'],
  ['on', 'in by hand'],
  ['snug', 'snug'],
  ['half', 'on its way'],
  ['gated', 'gated: what is behind it first'],
  ['done', 'closed'],
];
/** About the number of a hole on the cardboard. */
const flags: readonly (readonly [string, string])[] = [
  ['> <', 'the next one'],
  ['+', 'several at one hole'],
  ['!', 'a finding'],
  ['*', 'its own is lost'],
  ['?', 'suspected'],
  ['^', 'of another length'],
  ['~', 'own tool'],
];
const ofLists: Partial<Record<ScreenId, Signs>> = {
  findings: [
    ['half', 'suspected'],
    ['open', 'open'],
    ['done', 'closed'],
  ],
  rotation: [
    ['found', 'as found'],
    ['open', 'called for, off, or failed'],
    ['half', 'to be called'],
    ['done', 'right, passed'],
  ],
  sealing: [
    ['found', 'as found'],
    ['open', 'wants something'],
    ['half', 'on its way'],
    ['done', 'cured, filled and tight'],
  ],
  box: [
    ['open', 'to be settled'],
    ['half', 'lies there, or to be counted'],
    ['done', 'settled'],
  ],
  leaving: [
    ['open', 'can be closed now'],
    ['gated', 'waits for another'],
  ],
  log: [
    ['half', 'done already, out of its order'],
    ['struck', 'struck'],
  ],
  services: [
    ['found', 'offered'],
    ['open', 'chosen'],
    ['half', 'ordered'],
    ['done', 'done'],
    ['struck', 'dropped'],
  ],
  todo: [
    ['found', 'to take off'],
    ['open', 'to judge, to buy'],
    ['half', 'to fit'],
    ['done', 'nothing left'],
  ],
};
/** Of the calls themselves, as help lists them. */
const ofCalls: Signs = [
  ['half', 'not now'],
  ['found', 'without a key here'],
];

const inWords = (signs: readonly (readonly [string, string])[]): string =>
  signs.map(([sign, words]) => `${sign} ${words}`.replaceAll(' ', '\u00a0')).join(' \u00a0');
const shaped = (signs: Signs) => signs.map(([mark, words]) => [shapeOf(mark), words] as const);

/** @param before the screen that help was asked for on */
export function signRows(before: ScreenId, columns: number): Row[] {
  const isDrawn = before === 'strip' || before === 'build';
  const there = isDrawn ? [...shaped(ofHoles), ...flags] : shaped(ofLists[before] ?? []);
  const said = there.length === 0 ? [] : wrapped(inWords(there), columns - 2, 4);
  return [...said, `of the calls below: ${inWords(shaped(ofCalls))}`].map((text) =>
    plainRow(fitted(` ${text.replaceAll('\u00a0', ' ').trim()}`, columns), quietLook),
  );
}
