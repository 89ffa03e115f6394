// K2: what could explain a tray, or the scrap pile, whose count by eye differs from the ledger, likeliest first. It only names; what is
// short is called lost, what is over is a stray.
import { isOff, isTouched, wantsOf } from './closed.ts';
import { countDiffers, pileDiffersBy, pileOf } from './counts.ts';
import { pick } from './drawers.ts';
import type { FastenerState } from './hole-states.ts';
import { every, isStruck, type Ledger, lineAt, stateOf } from './ledger.ts';
import { contradictions } from './spec.ts';
import type { TrayState } from './states.ts';
import { areaOf, type Hole, inTray, named } from './subjects.ts';

export type CouldExplain = { short: number; over: number; holes: Hole[]; fasteners: string[] };

/** Undefined where no count differs. */
export function whatCouldExplain(ledger: Ledger, t: TrayState): (CouldExplain & { tray: string }) | undefined {
  if (!t.counted || !countDiffers(t)) return undefined;
  const by = t.contents.length - t.counted.count;
  const why = by > 0 ? notThere(ledger, t) : stillThere(ledger, t);
  return { tray: t.tray, short: Math.max(0, by), over: Math.max(0, -by), ...why };
}

/** The same of the scrap pile. What is over there is one that was called elsewhere, or nowhere: of that no hole is named. */
export function whatCouldExplainPile(ledger: Ledger): CouldExplain | undefined {
  const over = pileDiffersBy(ledger);
  if (over === 0) return undefined;
  const why = over < 0 ? notThere(ledger, pileOf(ledger)) : { holes: [], fasteners: [] };
  return { short: Math.max(0, -over), over: Math.max(0, over), ...why };
}

type Lying = Pick<TrayState, 'contents'>;
const lyingIn = (ledger: Ledger, t: Lying): FastenerState[] =>
  t.contents.flatMap((id) => stateOf(ledger, 'fastener', id) ?? []);

/** Short: one of those booked here is back in a hole that was not called, its own before any other it would suit. */
function notThere(ledger: Ledger, t: Lying): Pick<CouldExplain, 'holes' | 'fasteners'> {
  const booked = lyingIn(ledger, t);
  const own = new Set(booked.flatMap((f) => named('hole', f.origin) ?? []));
  const empty = [...every(ledger, 'hole')].filter(isOff);
  const suits = empty.filter((h) => {
    const wants = wantsOf(ledger, h);
    return own.has(h.hole) || (wants && booked.some((f) => contradictions(wants, f.spec).length === 0));
  });
  const first = suits.filter((h) => own.has(h.hole));
  const holes = [...first, ...suits.filter((h) => !own.has(h.hole))].map((h) => h.hole);
  return { holes, fasteners: booked.map((f) => f.id) };
}

/** Over: one called out of here is here still, or one came off that was never called. */
function stillThere(ledger: Ledger, t: TrayState): Pick<CouldExplain, 'holes' | 'fasteners'> {
  const left = leftTray(ledger, t.tray).filter((id) => stateOf(ledger, 'fastener', id)?.place !== inTray(t.tray));
  const filled = left.flatMap((id) => named('hole', stateOf(ledger, 'fastener', id)?.place ?? '') ?? []);
  const areas = new Set(
    lyingIn(ledger, t)
      .flatMap((f) => named('hole', f.origin) ?? [])
      .map(areaOf),
  );
  const neverOff = [...every(ledger, 'hole')].filter(
    (h) => areas.has(areaOf(h.hole)) && h.called.occupant && (!isTouched(h) || h.called.occupant.level === 'slack'),
  );
  return { holes: [...new Set([...filled, ...neverOff.map((h) => h.hole)])], fasteners: left };
}

/** Fasteners called out of a tray, the latest first. */
function leftTray(ledger: Ledger, tray: string): string[] {
  const chain = pick(ledger.chains, inTray(tray));
  const left: string[] = [];
  for (let i = (chain?.length ?? 0) - 1; i >= 0; i--) {
    const n = chain?.all[i] as number;
    if (isStruck(ledger, n)) continue;
    for (const entry of lineAt(ledger, n)?.entries ?? []) {
      if ((entry.kind === 'fastener-fitted' || entry.kind === 'fastener-moved') && entry.from === inTray(tray)) {
        left.push(entry.fastener);
      }
    }
  }
  return [...new Set(left)];
}
