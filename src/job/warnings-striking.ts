// What a strike leaves open where nobody looks for it: a hole that nobody has called any more, under a part that is off, and
// what is open again behind an area that stands shut.
import { isTouched } from './closed.ts';
import { every, type Ledger, lineAt, stateOf, tallyOf } from './ledger.ts';
import { gatedBy } from './order.ts';
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

/** O1: with the call that it rests on what is in front stays as it was called: shut over something that is open. */
export function openBehindShut(ledger: Ledger, lines: readonly number[]): string[] {
  const after = asIfStruck(ledger, lines);
  const gates = [...every(after, 'area')].flatMap(({ area }) => {
    const gate = tallyOf(after, area).open === 0 && !gatedBy(ledger, area) ? gatedBy(after, area) : undefined;
    return gate ? [{ area, of: `${subjectText(gate.subject)}: ${gate.because}` }] : [];
  });
  return [...Map.groupBy(gates, ({ of }) => of)].map(
    ([of, fronts]) =>
      `${fronts.map(({ area }) => area).join(', ')} ${fronts.length === 1 ? 'stands' : 'stand'} shut in front of ${of}`,
  );
}
