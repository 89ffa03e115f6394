// What the keys would take by themselves now, and what is offered to be taken, a few words each, in the order they are read.
import type { Keymap } from '../calls/bindings.ts';
import type { Desk } from '../calls/desk.ts';
import { keyOf, waySaid } from '../calls/key-names.ts';
import { nextTrays } from '../calls/next-of-kind.ts';
import { methodThere, specThere } from '../calls/other-side.ts';
import { arePistonsAwaited } from '../calls/pistons.ts';
import type { Otherwise } from '../calls/row.ts';
import { specWords } from '../calls/spec-words.ts';
import { rowById } from '../calls/table.ts';
import { isEmptyTray } from '../calls/trays.ts';
import { upNext } from '../calls/up-next.ts';
import { missingWhereOpen } from '../job/first-in.ts';
import { type Ledger, tallyOf } from '../job/ledger.ts';
import { isTensionerToCall } from '../job/rotation.ts';
import { methodWords } from '../job/tightening.ts';
import { metric } from '../trade/units-shown.ts';
import type { ScreenId } from '../view/screens.ts';
import type { Scene } from './frame.ts';

export const isUntouched = (ledger: Ledger, area: string | undefined): boolean =>
  area !== undefined && tallyOf(ledger, area).touched === 0;
/** What the other keys would take; what closes an opening or carries a part goes before all that may be cut. */
export const comingWords = ({ desk, keymap, view }: Scene): string[] => [
  ...trayWords(desk, view.screen === 'strip' ? keyOf(keymap, 'strip', 'tray') : ''),
  ...(view.screen === 'build' ? liveWords(desk, keyOf(keymap, 'build', 'live')) : []),
  ...pistonsWords(desk, keyOf(keymap, view.screen, 'pistons')),
  ...otherSideWords(desk, keyOf(keymap, view.screen, 'other-side'), view.screen),
  ...inOrderOf(view.screen, upNext(desk, keymap.keysOn(view.screen))).flatMap(({ bound, name, unasked }) =>
    bound.row.id === 'put-in' && isSaidAlready(desk, view.screen, name)
      ? []
      : [
          `${keyOf(keymap, view.screen, bound.row.id)} ${bound.row.label}: ${name}${unasked ? unaskedWords(unasked, keymap, view.screen) : ''}`,
        ],
  ),
];
function inOrderOf(screen: ScreenId, offered: ReturnType<typeof upNext>): ReturnType<typeof upNext> {
  if (screen === 'build') return offered;
  return offered.toSorted((a, b) => Number(b.bound.row.id === 'put-in') - Number(a.bound.row.id === 'put-in'));
}
/** It has a row of its own; on the way back nothing goes in for the coming off of what never came off. */
const isSaidAlready = ({ ledger, facing: { area } }: Desk, screen: ScreenId, name: string): boolean =>
  screen === 'build'
    ? isUntouched(ledger, area)
    : area !== undefined && missingWhereOpen(ledger).some(({ temporary }) => temporary === name);
const liveWords = ({ ledger, facing: { area } }: Desk, key: string): string[] =>
  area !== undefined && isTensionerToCall(ledger, area) ? [`${key} tensioner live`] : [];
const pistonsWords = (desk: Desk, key: string): string[] =>
  key !== '' && arePistonsAwaited(desk) ? [`${key} ${rowById.get('pistons')?.label}`] : [];
/** What is known of the other side and not of this one, in its words: the key confirms it. */
function otherSideWords(desk: Desk, key: string, screen: ScreenId): string[] {
  if (key === '' || (screen !== 'strip' && screen !== 'build')) return [];
  const figure = screen === 'build' ? methodThere(desk) : undefined;
  if (figure) return [`${key} as ${figure.from}: ${methodWords(figure.method, desk.units ?? metric)}`];
  const there = screen === 'strip' ? specThere(desk) : undefined;
  return there ? [`${key} as ${there.from}: ${specWords(there.spec)}`] : [];
}
/** ", old one worn (else P j)" */
function unaskedWords({ words, by }: Otherwise, keymap: Keymap, screen: ScreenId): string {
  const way = waySaid(keymap, screen, by);
  return `, ${words}${way && ` (else ${way})`}`;
}
/** Before the first of an area comes off: another area's lies in the tray in use. */
function trayWords(desk: Desk, key: string): string[] {
  const { area } = desk.facing;
  if (key === '' || area === undefined || tallyOf(desk.ledger, area).off > 0) return [];
  const [tray] = isEmptyTray(desk, desk.facing.tray) ? [] : nextTrays(desk);
  return tray === undefined ? [] : [`${key} tray: ${tray}, empty`];
}
