// O1: what sits behind what. Edges run front to behind and are followed through; the nearest open place is named first.
import { areaStandsOpen, holesOf, isClosedForOrder, isTouched, openBecause, partsOf, unsaidOf } from './closed.ts';
import { snugOrBetter } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { oncePerLedger } from './once-per-ledger.ts';
import { rotationNeeded } from './rotation.ts';
import type { Edge, TemporaryState } from './states.ts';
import { areaOf, type Hole, nameOf, type Subject, sortOf, subjectText } from './subjects.ts';

const noEdges: readonly Edge[] = [];
export const edgesOf = (ledger: Ledger): readonly Edge[] => stateOf(ledger, 'behind', '')?.edges ?? noEdges;

const byFront = new WeakMap<readonly Edge[], Map<Subject, Edge[]>>();
function graphOf(ledger: Ledger): Map<Subject, Edge[]> {
  const edges = edgesOf(ledger);
  let graph = byFront.get(edges);
  if (!graph) {
    graph = Map.groupBy(edges, (e) => e.front);
    byFront.set(edges, graph);
  }
  return graph;
}

/** The subjects in front of which a hole stands: itself, its area, the parts it holds. */
export function frontsOf(ledger: Ledger, hole: Hole): Subject[] {
  const parts = stateOf(ledger, 'area', areaOf(hole))?.parts ?? [];
  const held = parts.filter((p) => stateOf(ledger, 'part', p)?.declared?.heldBy.includes(hole));
  return [`hole:${hole}`, `area:${areaOf(hole)}`, ...held.map((p) => `part:${p}`)];
}

export type OpenBehind = { subject: Subject; because: string; gate: boolean };

/** T1: what holds its area open while it is in; a strap may stay while the area's own fasteners are brought up. */
const holding: ReadonlySet<string> = new Set(['plug', 'rag', 'mask', 'strap']);
const lyingAt = (ledger: Ledger, subject: Subject): TemporaryState[] =>
  [...every(ledger, 'temporary')].filter((t) => t.in && holding.has(t.sort) && t.at === subject);

/** Plugs, rags and masks lying in what these fronts close. */
function* leftInside(ledger: Ledger, fronts: readonly Subject[]): Generator<OpenBehind> {
  for (const front of fronts) {
    if (sortOf(front) === 'hole') continue;
    for (const { temporary, sort } of lyingAt(ledger, front)) {
      if (sort !== 'strap') yield { subject: `temporary:${temporary}`, because: `${sort} is in`, gate: false };
    }
  }
}

/** Everything behind these fronts that is neither closed (or snug, where that is enough) nor as found; nearest first. */
export const openBehind = (ledger: Ledger, fronts: readonly Subject[]): readonly OpenBehind[] =>
  openBehindAll(ledger, fronts.join('\n'));
/** Asked by several guards of one call, and for every hole of a pass: worked out once. */
const openBehindAll = oncePerLedger((ledger, joined): readonly OpenBehind[] => {
  const fronts = joined.split('\n') as Subject[];
  const graph = graphOf(ledger);
  const seen = new Set<Subject>(fronts);
  const open: OpenBehind[] = [...leftInside(ledger, fronts)];
  let ring: readonly Subject[] = fronts;
  while (ring.length > 0) {
    const edges = ring.flatMap((front) => graph.get(front) ?? []).filter((e) => !seen.has(e.behind));
    for (const edge of edges) {
      if (seen.has(edge.behind)) continue;
      seen.add(edge.behind);
      const because = subjectOpen(ledger, edge.behind, edge.until);
      if (because) open.push({ subject: edge.behind, because, gate: edge.gate === true });
    }
    ring = edges.map((e) => e.behind);
  }
  return open;
});

function subjectOpen(ledger: Ledger, subject: Subject, until: 'closed' | 'snug'): string | null {
  const name = nameOf(subject);
  switch (sortOf(subject)) {
    case 'hole':
      return holeOpen(ledger, name, until);
    case 'area':
      return until === 'snug' ? areaNotSnug(ledger, name) : areaNotClosed(ledger, name);
    case 'part': {
      const p = stateOf(ledger, 'part', name);
      return p?.off ? 'off' : p?.forNow ? 'on for now' : null;
    }
    case 'connection': {
      const c = stateOf(ledger, 'connection', name);
      return c?.parted ? 'parted' : c?.forNow ? 'made for now' : null;
    }
    case 'rotation': {
      const d = stateOf(ledger, 'drive', name);
      return d && rotationNeeded(ledger, d) ? 'check rotation not passed' : null;
    }
    default:
      return null;
  }
}

function holeOpen(ledger: Ledger, hole: Hole, until: 'closed' | 'snug'): string | null {
  const h = stateOf(ledger, 'hole', hole);
  if (!h || !isTouched(h) || isClosedForOrder(ledger, h)) return null;
  const o = h.called.occupant;
  if (until === 'snug' && o && snugOrBetter(o.level) && !o.forNow && !o.working) return null;
  return openBecause(ledger, h);
}

/** Asked for every hole in front of it: worked out once. */
const areaNotClosed = oncePerLedger((ledger, area) => areaOpen(ledger, area, 'closed'));
const areaNotSnug = oncePerLedger((ledger, area) => areaOpen(ledger, area, 'snug'));
function areaOpen(ledger: Ledger, area: string, until: 'closed' | 'snug'): string | null {
  const a = stateOf(ledger, 'area', area);
  if (!a) return null;
  for (const h of holesOf(ledger, a)) {
    const because = holeOpen(ledger, h.hole, until);
    if (because) return `${subjectText(`hole:${h.hole}`)} ${because}`;
  }
  const [inside] = [area, ...a.holes].flatMap((at) => lyingAt(ledger, at === area ? `area:${area}` : `hole:${at}`));
  if (inside) return `${inside.temporary} is in`;
  const part = partsOf(ledger, a).find((p) => stateOf(ledger, 'part', p)?.off || stateOf(ledger, 'part', p)?.forNow);
  if (part) return `${part} ${stateOf(ledger, 'part', part)?.off ? 'off' : 'on for now'}`;
  const unsaid = unsaidOf(ledger, a)[0];
  return unsaid ? `${unsaid.replace('-', ' ')} not called` : null;
}

/** F6: areas that must stay clean, stand open, and are not masked. */
export const openUnmasked = (ledger: Ledger, areas: Iterable<string>): string[] =>
  [...areas].filter((name) => {
    const a = stateOf(ledger, 'area', name);
    return a?.declared?.keepClean === true && a.maskedAt === 0 && areaStandsOpen(ledger, a);
  });

/** What stands open behind an area or a part of it, the nearest first. */
export const openUnder = oncePerLedger((ledger, area): readonly OpenBehind[] => {
  const parts = stateOf(ledger, 'area', area)?.parts ?? [];
  return openBehind(ledger, [`area:${area}`, ...parts.map((part) => `part:${part}`)]);
});
/** The nearest of it: as long as it stands open, nothing of the area can be closed. */
export const gatedBy = (ledger: Ledger, area: string): OpenBehind | undefined => openUnder(ledger, area)[0];
