// The open points as they are told: a hole that only what was found at it keeps open is told with the finding, not twice, one
// with a working fastener in it once, and the second look that a hole wants once the hole itself is closed. All that lists or counts them for the eye goes by this; what may leave goes by
// all of them.
import { nothingElse, workingIn } from './closed.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { OpenPoint } from './open-point.ts';
import { nameOf } from './subjects.ts';

export function toldOnce(ledger: Ledger, all: readonly OpenPoint[]): readonly OpenPoint[] {
  const found = new Set(
    all.flatMap(({ code, at }) => (code === 'finding-open' ? (stateOf(ledger, 'finding', nameOf(at))?.at ?? []) : [])),
  );
  const working = new Set(all.flatMap(({ code, at }) => (code === 'working-in' ? [at] : [])));
  const once = all.filter(
    ({ code, at, because }) =>
      code !== 'hole-open' ||
      !((because === nothingElse && found.has(at)) || (because === workingIn && working.has(at))),
  );
  const open = new Set(once.flatMap(({ code, at }) => (code === 'hole-open' ? [at] : [])));
  return once.filter(({ code, at }) => code !== 'second-look' || !open.has(at));
}
