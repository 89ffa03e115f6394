// What is said of a key that means nothing where it was pressed: what stands on the screen is no answer to it.
import type { Bound, Keymap } from '../calls/bindings.ts';
import { keyOf } from '../calls/key-names.ts';
import { specWords } from '../calls/spec-words.ts';
import { rowById } from '../calls/table.ts';
import type { Spec } from '../job/spec.ts';
import type { ScreenId } from '../view/screens.ts';

/** A figure that sets none, among those that do. */
function noHead(figure: string, all: readonly Bound[]): string | undefined {
  const heads = all.filter(({ row, binding }) => row.id === 'head' && /^\d$/.test(binding.key));
  if (!/^\d$/.test(figure) || heads.length === 0) return undefined;
  const which = heads.map(({ binding }) => `${binding.key} ${specWords((binding.args?.spec ?? {}) as Spec)}`);
  return `${figure} sets no head: ${which.join(', ')}. Any other is typed: ${all.find(({ row }) => row.id === 'use')?.binding.key}.`;
}

/** Of a key that prints nothing nothing is said: it was meant for the terminal, or for nobody. */
export function noKey(key: string, screen: ScreenId, keymap: Keymap): string | undefined {
  if ([...key].length > 1) return undefined;
  const all = keymap.keysOn(screen);
  const of = rowById.get(`to-${screen}`)?.label ?? screen;
  return noHead(key, all) ?? `"${key}" is no key of ${of}: ${keyOf(keymap, screen, 'help')} lists those that are.`;
}
