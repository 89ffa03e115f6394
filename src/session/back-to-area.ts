// An area that was taken in use by mistake: choosing it is no call, so the key that strikes the last call leads back from
// it first, and writes nothing.
import type { Row } from '../calls/row.ts';
import type { Line } from '../job/line.ts';
import type { Facing } from '../view/facing.ts';
import type { Answer } from './session-shape.ts';

export function backToArea() {
  let chosen: { answer: Answer; before: Facing } | undefined;
  return {
    /** What was faced before, and the answer that told of the other area; a tray chosen for that area goes back with it. */
    chose(answer: Answer, shown: Answer | undefined, before: Facing, to: Partial<Facing>) {
      const isOther = to.area !== undefined && to.area !== before.area;
      const isForIt = chosen !== undefined && chosen.answer === shown && to.tray !== undefined;
      if (isOther) chosen = { answer, before };
      else chosen = isForIt && chosen ? { answer, before: chosen.before } : undefined;
    },
    /** Where this key leads back to, as long as nothing was answered since; in words the last call is meant. */
    leadsTo({ id }: Row, by: Line['by'], shown: Answer | undefined): Facing | undefined {
      return id === 'strike-last' && by !== 'line' && chosen?.answer === shown ? chosen?.before : undefined;
    },
  };
}
export const backWords = ({ area }: Facing): string =>
  `${area === undefined ? 'back: no area is in use' : `back at ${area}`}; nothing is struck, the same key again strikes the last call`;
