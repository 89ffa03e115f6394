// The numeric keypad of each screen as a picture of text: to be looked at, or printed and taped beside the pad.
import { type ScreenId, screens } from '../view/screens.ts';
import { keymapOf } from './bindings.ts';
import { keyName } from './key-caps.ts';

const layout = [
  ['', '/', '*', '-'],
  ['7', '8', '9', '+'],
  ['4', '5', '6', ''],
  ['1', '2', '3', 'enter'],
  ['0', '', '.', ''],
] as const;
const cells = 16;

const fitted = (text: string): string => (text.length > cells ? `${text.slice(0, cells - 1)}.` : text.padEnd(cells));

export function keypadPicture(screen: ScreenId): string {
  const map = keymapOf({ pad: true });
  const line = `+${Array.from({ length: 4 }, () => '-'.repeat(cells + 2)).join('+')}+`;
  const row = (texts: readonly string[]) => `|${texts.map((text) => ` ${fitted(text)} `).join('|')}|`;
  const rows = layout.map((keys) => {
    const labels = keys.map((key) => (key === '' ? '' : (map.boundTo(key, screen)?.row.label ?? '')));
    return `${row(keys.map(keyName))}\n${row(labels)}`;
  });
  return `${screen}\n${line}\n${rows.join(`\n${line}\n`)}\n${line}\n`;
}
const aside = new Set<ScreenId>(['glance', 'help']);
export const keypadPictures = (): string =>
  screens
    .filter((screen) => !aside.has(screen))
    .map(keypadPicture)
    .join('\n');
