// What a strike leaves open though no list asks for it: a hole that nobody has called any more, under a part that is off.
import { isTouched } from './closed.ts';
import { every, type Ledger, lineAt, stateOf } from './ledger.ts';
import { asIfStruck } from './striking.ts';
import { type Hole, subjectText } from './subjects.ts';

/** As found a hole asks for nothing (L3), but its part came off: what was in it then is known to nobody. */
export function asFoundUnderOff(ledger: Ledger, lines: readonly number[]): string[] {
  const spoken = lines.flatMap((n) => lineAt(ledger, n)?.entries ?? []);
  const holes = new Set(spoken.flatMap((e) => ('hole' in e && typeof e.hole === 'string' ? [e.hole] : [])));
  if (holes.size === 0) return [];
  const after = asIfStruck(ledger, lines);
  const isAsFound = (hole: Hole): boolean => {
    const h = stateOf(after, 'hole', hole);
    return h === undefined || !isTouched(h);
  };
  return [...every(after, 'part')].flatMap(({ part, off, declared }) => {
    const under = off ? (declared?.heldBy ?? []).filter((hole) => holes.has(hole) && isAsFound(hole)) : [];
    if (under.length === 0) return [];
    const [are, it] = under.length === 1 ? ['is', 'it'] : ['are', 'them'];
    return [
      `${under.map((hole) => subjectText(`hole:${hole}`)).join(', ')} ${are} as found again though ${part}, held by ${it}, is off: call what came out, or that nothing was in ${it}`,
    ];
  });
}
