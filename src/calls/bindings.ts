// Which key means which call on which screen, read from the table.
import type { ScreenId } from '../view/screens.ts';
import type { Binding, Row } from './row.ts';
import { rows } from './table.ts';

const isOn = (binding: Binding, screen: ScreenId): boolean =>
  binding.on === 'any' || binding.on === screen || (Array.isArray(binding.on) && binding.on.includes(screen));

export type Bound = { row: Row; binding: Binding };
/** What a key means on a screen; a screen's own binding goes before one that holds anywhere. */
export function boundTo(key: string, screen: ScreenId): Bound | undefined {
  const all = rows.flatMap((row) =>
    row.keys.filter((b) => b.key === key && isOn(b, screen)).map((binding) => ({ row, binding })),
  );
  return all.find((one) => one.binding.on !== 'any') ?? all[0];
}

/** Every key of a screen, in the order of the table. */
export const keysOn = (screen: ScreenId): Bound[] =>
  rows.flatMap((row) => row.keys.filter((b) => isOn(b, screen)).map((binding) => ({ row, binding })));
