// What the mechanic faces: the area, tray and fastener in use, which stay set until changed. Read by the calls, never
// by the log.
import type { Spec } from '../job/spec.ts';

export type Facing = {
  area?: string;
  tray: string;
  /** The fastener in use: what comes off next is this, until another is said. */
  spec: Spec;
  /** Fasteners that were in use before it, the last one first: the next of a row is often one of them. */
  specsBefore?: readonly Spec[];
  /** A hole pointed at by hand ("cam cover/7"); forgotten after one call. */
  hole?: string;
  /** Areas gone past one after the other, up to the one in use, while nothing was called: so many lines stood in the log. */
  past?: { areas: readonly string[]; upTo: string; lines: number };
  /** Services chosen to be ordered together, each with its plan. */
  chosen?: readonly { plan: string; service: string }[];
  /** The hole whose place on the map is being moved, and where it is now. */
  placing?: { hole: string; at: readonly [number, number] };
};

export const firstFacing: Facing = { tray: '1', spec: {} };
