// Which key brings the next hole of the way back further, where it is another than the one pressed for each fastener.

import { lacksIts, nextNew, nextTight } from '../calls/desk.ts';
import { keyOf } from '../calls/key-names.ts';
import { rowById } from '../calls/table.ts';
import { isOff } from '../job/closed.ts';
import { missingToBringUp } from '../job/first-in.ts';
import type { HoleState } from '../job/hole-states.ts';
import { gatedBy } from '../job/order.ts';
import { areaOf, numberOf, withinArea } from '../job/subjects.ts';
import type { Scene } from './frame.ts';

/** ". n a new one for 1 nut", ". "." all snug, t this one"; nothing where its own fastener goes in by the usual key. */
export function keyThatIsNext({ desk, keymap }: Scene, h: HoleState): string {
  const { ledger } = desk;
  const { hole } = h;
  const key = (call: string) => keyOf(keymap, 'build', call).replace(/^\.$/, '"."');
  const isOut = isOff(h);
  const lacking = nextNew(desk);
  const isHere = lacking !== undefined && numberOf(lacking) === numberOf(hole);
  if (lacking !== undefined && lacksIts(ledger, lacking) && (isHere || !isOut))
    return `. ${key('new')} a new one ${lacking === hole ? 'from the box' : `for ${withinArea(lacking)}`}`;
  const waits = gatedBy(ledger, areaOf(hole)) !== undefined || missingToBringUp(ledger, hole).length > 0;
  if (isOut || waits || desk.facing.hole !== undefined || nextTight(desk) !== hole) return '';
  const all = rowById.get('pass')?.labelNow?.(desk);
  return all === undefined ? '' : `. ${key('pass')} ${all}, ${key('tight')} this one`;
}
