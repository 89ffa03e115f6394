// How a call that only says what there is comes to a declaration.
import type { Entry } from '../job/entry.ts';
import { stateOf } from '../job/ledger.ts';
import type { Desk } from './desk.ts';
import type { Args } from './form.ts';
import type { Meant } from './row.ts';

export const declare = (...entries: (Entry | undefined)[]): Meant => ({
  say: { verb: 'declare', entries: entries.filter((e) => e !== undefined) },
});
export const noArea: Meant = { no: { because: 'no area is in use', instead: 'say which, "area NAME"' } };

/** A declaration about the area in use, or the one that was said. */
export const ofArea =
  (more: (args: Args) => Record<string, unknown>) =>
  (desk: Desk, args: Args): Meant => {
    const area = (args.area as string | undefined) ?? desk.facing.area;
    if (area === undefined) return noArea;
    // A name with a slip would be an area of its own, and the one that was meant be without it.
    if (area !== desk.facing.area && stateOf(desk.ledger, 'area', area) === undefined)
      return { no: { because: `there is no area "${area}"`, instead: `"area ${area}" names a new one first` } };
    return declare({ kind: 'area-declared', area, ...more(args) } as Entry);
  };

export const ofHole =
  (more: (args: Args) => Record<string, unknown>) =>
  (desk: Desk, args: Args): Meant => {
    const hole = (args.hole as string | undefined) ?? desk.facing.hole;
    return hole === undefined
      ? { no: { because: 'no hole is pointed at', instead: 'say which hole' } }
      : declare({ kind: 'hole-declared', hole, ...more(args) } as Entry);
  };
