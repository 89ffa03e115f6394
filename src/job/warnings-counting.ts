// What is said beside a count by eye that is taken.
import { holeNumbers, isOff } from './closed.ts';
import { countDiffers, straysElsewhere } from './counts.ts';
import type { EntryOf } from './entry.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { rotationNeeded } from './rotation.ts';
import { inHole, inTray, subjectText } from './subjects.ts';

export const besideCount = (ledger: Ledger, entry: EntryOf<'tray-counted'>): string[] => [
  ...differing(ledger, entry),
  ...turnsTheCrank(ledger, entry),
];

/** K4: of an area that no plan describes, and whose holes are called by now. */
export function besideHoles(ledger: Ledger, { area, count }: EntryOf<'holes-counted'>): string[] {
  const a = stateOf(ledger, 'area', area);
  if (!a && [...every(ledger, 'area')].length > 0) return [nobodyNamed(area, 'area')];
  const called = a && !a.declared?.planned ? holeNumbers(ledger, a).size : 0;
  if (called === 0 || called === count) return [];
  return called < count
    ? [`${called} of ${count} called: ${count - called} more to call, or to count again`]
    : [`${called} called, and ${count} counted: one is called that is none, or count again`];
}

/** A slip in a name makes another of it, and what was meant goes without. */
export const nobodyNamed = (name: string, what: 'area' | 'circuit'): string =>
  `nobody named ${what === 'area' ? 'an area' : 'a circuit'} "${name}" before; where it is a slip, strike it`;
/** A drive over an area of another name than the one that comes apart is never opened by it. */
export const overNoArea = (ledger: Ledger, areas: readonly string[]): string[] => {
  const known = [...every(ledger, 'area')].map((one) => one.area);
  return known.length === 0
    ? []
    : areas.filter((area) => !known.includes(area)).map((area) => `${nobodyNamed(area, 'area')}: ${known.join(', ')}`);
};

/** T5: with other circuits known. */
export const ofNoCircuit = (ledger: Ledger, circuit: string): string[] => {
  const known = [...every(ledger, 'circuit')].map((one) => one.circuit);
  return known.length === 0 || known.includes(circuit)
    ? []
    : [`${nobodyNamed(circuit, 'circuit')}: ${known.join(', ')}`];
};

/** K2: at first to count again, then what may be over. */
function differing(ledger: Ledger, { tray, count }: EntryOf<'tray-counted'>): string[] {
  const t = stateOf(ledger, 'tray', tray);
  const has = t?.contents.length ?? 0;
  if (has === count) return [];
  const should = `${has} should lie in tray ${tray} by the ledger`;
  if (!t || !countDiffers(t)) return [`${should}: count again`];
  const by = count - has;
  const [stray] = by > 0 ? straysElsewhere(ledger, t) : [];
  const over = stray ? `; stray ${stray.id}, called in ${subjectText(stray.place)}, may be it` : '';
  return [`${should}: counted again, ${Math.abs(by)} ${by > 0 ? 'over' : 'short'}${over}`];
}

/** K1: the old bolt of a crank that is to be turned comes out of its tray for the turns, and the count falls. */
function turnsTheCrank(ledger: Ledger, { tray }: EntryOf<'tray-counted'>): string[] {
  return [...every(ledger, 'drive')].flatMap((d) => {
    const bolt = d.declared?.crankBolt;
    const h = bolt === undefined ? undefined : stateOf(ledger, 'hole', bolt);
    const isTogether = (d.declared?.parts ?? []).every((part) => !stateOf(ledger, 'part', part)?.off);
    if (!h || !isOff(h) || !isTogether || !rotationNeeded(ledger, d)) return [];
    return stateOf(ledger, 'fastener', h.called.own ?? '')?.place === inTray(tray)
      ? [
          `the bolt of ${subjectText(inHole(h.hole))} lies in it: in as a working bolt for the turns first, or this count falls`,
        ]
      : [];
  });
}
