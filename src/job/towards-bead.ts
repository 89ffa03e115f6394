// What might be called towards the bead a face wants: what covers it off again, the face clean, the bead laid. Over what is
// on again nothing is cleaned, and a hole of such a face gets nothing before.
import { beadMissing, coveringHoles, faceOpenedAt, lastBeadVoid, partOver } from './beads.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import type { OpenPoint } from './open-point.ts';
import type { Said } from './said.ts';
import type { FaceState } from './states.ts';
import { type Hole, nameOf } from './subjects.ts';
import { facesWithoutBead } from './warnings-building.ts';

export function towardsBead(ledger: Ledger, face: string, now: Stamp): Said[] {
  const f = stateOf(ledger, 'face', face);
  // What is only slackened never comes off.
  const over = (f ? coveringHoles(ledger, f) : []).filter((h) => !stateOf(ledger, 'hole', h)?.declared?.slackOnly);
  if (over.length > 0) return over.toReversed().map((hole): Said => ({ verb: 'remove', hole, to: 'tray:1' }));
  const part = f && partOver(ledger, f);
  if (part !== undefined) return [{ verb: 'remove-part', part }];
  const product = productOf(ledger);
  const clean: Said = { verb: 'clean-face', face };
  if (!product || (f && lastBeadVoid(ledger, f, now) !== undefined)) return [clean];
  return [{ verb: 'lay-bead', face, product }, clean];
}
const productOf = (ledger: Ledger): string | undefined => [...every(ledger, 'product')].at(-1)?.label.product;

/** Before something goes back into a hole that presses a face without its bead, or is brought up there; nothing where only the product is wanting. */
export function beadBefore(ledger: Ledger, hole: Hole, now: Stamp): Said[] {
  const missing = [...every(ledger, 'face')].filter(
    (f) => f.declared?.pressedBy.includes(hole) && beadMissing(ledger, f, now) !== null,
  );
  const isClean = (f: FaceState) => f.cleanedAt > faceOpenedAt(ledger, f);
  return missing.flatMap((f) =>
    isClean(f) && productOf(ledger) === undefined ? [] : towardsBead(ledger, f.face, now),
  );
}

const ofTheBead: ReadonlySet<unknown> = new Set(['remove', 'clean-face', 'lay-bead']);
/** Said behind why a hole is open, where the call towards it is for the bead that is void under it. */
export function voidBeadWords(ledger: Ledger, { code, at, next }: OpenPoint, now: Stamp): string {
  if (code !== 'hole-open' || !ofTheBead.has(next?.verb)) return '';
  const bead = facesWithoutBead(ledger, nameOf(at), now).find(({ because }) => because !== undefined);
  return bead ? `; void bead on ${bead.face}, ${bead.because}` : '';
}
