// The trays on the bench: in which of them nothing lies, and the number one more gets where all are used.
import { countStands, uncounted } from '../job/counts.ts';
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import type { TrayState } from '../job/states.ts';
import { perhaps } from '../trade/perhaps.ts';
import type { Desk } from './desk.ts';

export const isEmptyTray = ({ ledger }: Desk, tray: string): boolean =>
  (stateOf(ledger, 'tray', tray)?.contents.length ?? 0) === 0;

/** The first number above those of the bench in which nothing lies; nothing while a tray of the bench is empty. */
export function oneMoreTray(desk: Desk): string | undefined {
  const { trays = [] } = desk;
  if (trays.length === 0 || trays.some((tray) => isEmptyTray(desk, tray))) return undefined;
  const numbers = trays.map(Number).filter(Number.isInteger);
  let number = Math.max(trays.length, ...numbers) + 1;
  while (!isEmptyTray(desk, String(number))) number += 1;
  return String(number);
}
/** A slip of the finger makes a tray that nobody has: what is to be minded of one that nothing was laid into yet. */
export function unknownTray(desk: Desk, tray: string): string | undefined {
  const { ledger, trays = [] } = desk;
  if (trays.length === 0 || trays.includes(tray) || isOneMore(desk, tray)) return undefined;
  if (stateOf(ledger, 'tray', tray)?.everUsed) return undefined;
  // One number is as near to another as any.
  const meant = /^\d+$/.test(tray) ? '' : perhaps(tray, trays);
  return `no tray of the bench is called ${tray}${meant}: ${trays.join(', ')}`;
}
export const isOneMore = (desk: Desk, tray: string): boolean => oneMoreTray(desk) === tray;

/** K2: whoever counts goes on behind the tray counted last, and round again. */
export function uncountedInTurn(ledger: Ledger): TrayState[] {
  const waiting = uncounted(ledger);
  const trays = [...every(ledger, 'tray')];
  const [last] = trays.filter(countStands).toSorted((a, b) => (b.counted?.n ?? 0) - (a.counted?.n ?? 0));
  const behind = last === undefined ? [] : trays.slice(trays.indexOf(last));
  return [...waiting.filter((t) => behind.includes(t)), ...waiting.filter((t) => !behind.includes(t))];
}
