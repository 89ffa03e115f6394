// L6: which fastener goes into a hole when the call names none, and what stands against the one it names.
import { isCritical, wantsOf } from './closed.ts';
import { mayNotServe, unfit } from './guards.ts';
import type { FastenerState, HoleState } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { cannotBeToldApart, contradictions, type Spec } from './spec.ts';
import type { FindingState } from './states.ts';
import { areaOf, type Hole, nameOf, sortOf } from './subjects.ts';

const inHand = (f: FastenerState): boolean => f.place.startsWith('tray:');

/** L6: an open finding speaks of this fastener itself. */
export const openFindingOf = (ledger: Ledger, f: FastenerState): FindingState | undefined =>
  [...every(ledger, 'finding')].find((one) => one.fastener === f.id && !one.closed);

/**
 * The hole's own, else an equal from the same area, else from another if neither is critical.
 * @param except fasteners the same call has given to another level already
 */
export function chosenFor(
  ledger: Ledger,
  hole: Hole,
  { working = false, except }: { working?: boolean; except?: ReadonlySet<string> } = {},
): FastenerState | undefined {
  const h = stateOf(ledger, 'hole', hole);
  if (!h) return undefined;
  const wants = wantsOf(ledger, h);
  const serves = (f: FastenerState) =>
    inHand(f) &&
    !except?.has(f.id) &&
    !mayNotServe(f, working) &&
    (working || unfit(wants, f.spec, false).length === 0) &&
    !openFindingOf(ledger, f);
  const own = h.called.own ? stateOf(ledger, 'fastener', h.called.own) : undefined;
  if (own && serves(own)) return own;
  if (h.declared?.ownPlace) return undefined;
  const belongs = own && !(h.called.firstIsWrong && own.id === h.called.first);
  const like = belongs && unfit(wants, own.spec, false).length === 0 ? own.spec : wants;
  if (!like) return undefined;
  const equals = [...every(ledger, 'fastener')].filter(
    (f) => cannotBeToldApart(f.spec, like) && !isOwnPlace(ledger, f) && serves(f),
  );
  return equals.find((f) => originArea(f) === areaOf(hole)) ?? equals.find((f) => mayCross(ledger, f, h));
}

/** K2: the first fastener booked in a tray that contradicts nothing of a spec: which of its equals it was, nobody knows. */
export const likeInTray = (ledger: Ledger, tray: string, spec: Spec): FastenerState | undefined =>
  (stateOf(ledger, 'tray', tray)?.contents ?? [])
    .flatMap((id) => stateOf(ledger, 'fastener', id) ?? [])
    .find((f) => contradictions(f.spec, spec).length === 0);

const originArea = (f: FastenerState): string | undefined =>
  sortOf(f.origin) === 'hole' ? areaOf(nameOf(f.origin)) : undefined;

function isOwnPlace(ledger: Ledger, f: FastenerState): boolean {
  return sortOf(f.origin) === 'hole' && stateOf(ledger, 'hole', nameOf(f.origin))?.declared?.ownPlace === true;
}

function mayCross(ledger: Ledger, f: FastenerState, into: HoleState): boolean {
  const from = sortOf(f.origin) === 'hole' ? stateOf(ledger, 'hole', nameOf(f.origin)) : undefined;
  const critical = (h: HoleState) => isCritical(ledger, h, areaOf(h.hole));
  return !critical(into) && !(from && critical(from));
}

/** L6: why a fastener that is named may not trade into this hole; null when it may. */
export function mayNotTrade(ledger: Ledger, f: FastenerState, hole: Hole): string | null {
  const h = stateOf(ledger, 'hole', hole);
  if (!h || f.origin === `hole:${hole}` || h.called.own === f.id) return null;
  if (h.declared?.ownPlace) return 'the hole takes its own fastener only';
  if (isOwnPlace(ledger, f)) return 'the fastener belongs in its own place only';
  const crosses = originArea(f) !== undefined && originArea(f) !== areaOf(hole);
  return crosses && !mayCross(ledger, f, h) ? 'a critical area trades with no other' : null;
}
