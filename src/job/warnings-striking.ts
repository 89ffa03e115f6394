// What a strike leaves open where nobody looks for it: a hole that nobody has called any more, under a part that is off, and
// what is open again behind an area that stands shut.
import { isTouched } from './closed.ts';
import { every, type Ledger, lineAt, stateOf, tallyOf } from './ledger.ts';
import { edgesOf, gatedBy } from './order.ts';
import { asIfStruck } from './striking.ts';
import { areaOf, type Hole, named, type Subject, subjectText } from './subjects.ts';
import { touches } from './touches.ts';

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
  const fronts = areasInFront(ledger, lines);
  if (fronts.length === 0) return [];
  const after = asIfStruck(ledger, lines);
  const gates = fronts.flatMap((area) => {
    const gate = tallyOf(after, area).open === 0 && !gatedBy(ledger, area) ? gatedBy(after, area) : undefined;
    return gate ? [{ area, of: `${subjectText(gate.subject)}: ${gate.because}` }] : [];
  });
  return [...Map.groupBy(gates, ({ of }) => of)].map(
    ([of, fronts]) =>
      `${fronts.map(({ area }) => area).join(', ')} ${fronts.length === 1 ? 'stands' : 'stand'} shut in front of ${of}`,
  );
}
/** Areas in front of what the lines speak of, through whatever stands between: only there a strike opens something behind. */
function areasInFront(ledger: Ledger, lines: readonly number[]): string[] {
  const spoken = lines.flatMap((n) => lineAt(ledger, n)?.entries ?? []).flatMap(touches) as Subject[];
  const edges = edgesOf(ledger);
  const seen = new Set<Subject>(spoken);
  const fronts = new Set<Subject>();
  // What is found is looked in front of as well, in the order of finding.
  for (const behind of seen) {
    const held = stateOf(ledger, 'part', named('part', behind) ?? '')?.declared?.heldBy ?? [];
    const holding = held.map((hole): Subject => `area:${areaOf(hole)}`);
    for (const front of [...edges.flatMap((edge) => (edge.behind === behind ? edge.front : [])), ...holding]) {
      seen.add(front);
      fronts.add(front);
    }
  }
  return [...fronts].flatMap((one) => named('area', one) ?? []);
}
