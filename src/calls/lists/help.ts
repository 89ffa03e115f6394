// The calls: those with a key on the screen that was left for help first, each with why it is refused just now.
import type { ScreenId } from '../../view/screens.ts';
import type { Bound, Keymap } from '../bindings.ts';
import type { Desk } from '../desk.ts';
import { usage } from '../line-reader.ts';
import type { Listed } from '../listed.ts';
import { whyNot } from '../pressing.ts';
import type { Row } from '../row.ts';
import { rows } from '../table.ts';

const mostKeys = 3;
export function helpRows(desk: Desk, before: ScreenId, keymap: Keymap): Listed[] {
  const byRow = Map.groupBy(keymap.keysOn(before), (bound) => bound.row.id);
  const bound = rows.filter((row) => byRow.has(row.id));
  // The shelf's own are the last of the table, and the first that whoever asks there looks for.
  const isLater = ({ id }: Row) => before === 'shelf' && byRow.get(id)?.every(({ binding }) => binding.on === 'any');
  const here = [...bound.filter((row) => !isLater(row)), ...bound.filter(isLater)];
  const others = rows.filter((row) => !byRow.has(row.id));
  return [...here, ...others].map((row): Listed => {
    const bound = byRow.get(row.id) ?? [];
    const stop = bound[0] && before !== 'shelf' ? whyNot(bound[0] as Bound, desk, {}) : null;
    return {
      key: row.id,
      mark: bound.length === 0 ? 'found' : stop ? 'half' : 'plain',
      name: keysInWords(bound),
      text: row.label,
      // The answer to a question that is rarely asked makes no room for itself.
      end: usage(row).replace(' [all the same]', ''),
      more: `${usage(row)}: ${row.help}${stop ? ` Not now: ${stop.because}; ${stop.instead}.` : ''}`,
      picks: {},
    };
  });
}
const keysInWords = (bound: readonly Bound[]): string => {
  const keys = bound.map((b) => b.binding.key);
  return keys.length > mostKeys ? `${keys.slice(0, mostKeys).join(' ')} …` : keys.join(' ');
};
