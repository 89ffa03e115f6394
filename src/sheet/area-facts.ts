// What the sheet says of each area: how every touched fastener was brought up, what is new, what stayed empty, what was
// repaired. Plain values; their wording is the text's.
import { areaOpenedAt, holesOf, isCritical, isTouched, openBecause, wantsOf } from '../job/closed.ts';
import type { FastenerState, HoleState, Pass } from '../job/hole-states.ts';
import { every, type Ledger, lineAt, stateOf } from '../job/ledger.ts';
import { inOrder } from '../job/passes.ts';
import { type Method, specText } from '../job/spec.ts';
import type { AreaState } from '../job/states.ts';
import { areaOf, named, numberOf, sortOf, subjectText, withinArea } from '../job/subjects.ts';
import { readFarOff, wantsFigure } from '../job/tightening.ts';
import { type MapFact, mapFact } from './map-facts.ts';
import { type Moment, moment, type Reading } from './reading.ts';
import { methodText, torqueWords } from './words.ts';

export type PassFact = Moment & {
  pass: string;
  last: boolean;
  method?: Method;
  /** Its method in words, in the units of the workshop, empty where it is only snug; and what the wrench showed. */
  how: string;
  /** O4: said to be missing where it counts, with the last pass. */
  noFigure?: true;
  readWords?: string;
  tool?: string;
  readNewtonMetres?: number;
  /** O4: what was read is far from what its method ends in. */
  notTheFigure?: true;
  outOfOrder: boolean;
};
export type RepairFact = Moment & { step: string; millimetres?: number; words?: string };
export type HoleFact = {
  hole: string;
  /** Within its area: "7", "7 nut". */
  number: string;
  critical: boolean;
  /** Why it is open; absent when it is closed. */
  open?: string;
  /** What is in it now. */
  holds?: string;
  /** The passes of what is in it now, as called. */
  passes: PassFact[];
  /** From the parts box, a stray given to it, or the equal fastener of another hole; absent for its own. */
  came?: { how: 'new' | 'stray' | 'traded'; from: string };
  newPattern?: string[];
  substitute?: { because: string; wanted: string };
  leftEmpty?: { who: string; because: string };
  /** L7: serves again by measurement. */
  measured?: { what: string; measuredMm: number; limitMm: number };
  repair: RepairFact[];
  chased?: Moment;
  /** The second look that stands. */
  looked?: Moment;
};
export type AreaFact = {
  area: string;
  critical: boolean;
  touched: number;
  closed: number;
  /** Touched holes in tightening order. */
  holes: HoleFact[];
  map: MapFact;
  companions?: Moment & { seen: string[] };
  blindHolesDry?: Moment;
  directionRight?: Moment;
};

export const areaFacts = (of: Reading): AreaFact[] =>
  [...every(of.ledger, 'area')].flatMap((a) => {
    const fact = areaFact(of, a);
    return fact.touched > 0 ? [fact] : [];
  });

function areaFact(of: Reading, a: AreaState): AreaFact {
  const turn = new Map(inOrder(of.ledger, a.area).map((hole, i) => [withinArea(hole), i]));
  const turnOf = (h: HoleState) => turn.get(numberOf(h.hole)) ?? turn.size;
  const holes = holesOf(of.ledger, a)
    .filter(isTouched)
    .sort((one, other) => turnOf(one) - turnOf(other) || (one.hole < other.hole ? -1 : 1))
    .map((h) => holeFact(of, h));
  const opened = areaOpenedAt(of.ledger, a.area);
  const since = (n: number) => (opened > 0 && n > opened ? moment(of, n) : undefined);
  const seen = since(a.seenAt);
  const dry = since(a.dryAt);
  const direction = since(a.directionAt);
  return {
    area: a.area,
    critical: holes.some((h) => h.critical),
    touched: holes.length,
    closed: holes.filter((h) => h.open === undefined).length,
    holes,
    map: mapFact(of.ledger, a.area),
    ...(seen && { companions: { ...seen, seen: [...(a.declared?.companions ?? [])] } }),
    ...(dry && { blindHolesDry: dry }),
    ...(direction && { directionRight: direction }),
  };
}

function passFact(of: Reading, { n, pass, last, tool, readNewtonMetres, outOfOrder, ...call }: Pass): PassFact {
  // The figure is the last pass's: of one that is only snug nothing is said.
  const isSnug = pass === 'snug' && !last;
  const method = isSnug ? undefined : call.method;
  return {
    ...moment(of, n),
    pass,
    last,
    outOfOrder: outOfOrder === true,
    ...(method && { method }),
    ...(tool && { tool }),
    ...(last && readNewtonMetres === undefined && wantsFigure(method) && { noFigure: true as const }),
    how: method ? methodText(method, of.units) : isSnug ? '' : 'method not said',
    ...(readNewtonMetres !== undefined && {
      readNewtonMetres,
      readWords: torqueWords(readNewtonMetres, of.units),
      ...(last && readFarOff(method, readNewtonMetres) !== undefined && { notTheFigure: true as const }),
    }),
  };
}

function holeFact(of: Reading, h: HoleState): HoleFact {
  const c = h.called;
  const o = c.occupant;
  const f = o && stateOf(of.ledger, 'fastener', o.fastener);
  const open = openBecause(of.ledger, h);
  const came = f && cameFrom(f, h.hole);
  return {
    hole: h.hole,
    number: withinArea(h.hole),
    critical: isCritical(of.ledger, h, areaOf(h.hole)),
    ...(open !== null && { open }),
    ...(o && { holds: specText(f?.spec ?? o.spec) }),
    passes: c.passes.map((one) => passFact(of, one)),
    ...(came && { came }),
    ...(o?.newPattern && { newPattern: [...o.newPattern] }),
    ...(o?.substitute && { substitute: { because: o.substitute, wanted: specText(wantsOf(of.ledger, h) ?? {}) } }),
    ...(c.leftEmpty && !o && { leftEmpty: c.leftEmpty }),
    ...(f?.measured && { measured: f.measured }),
    repair: c.repair.map(({ n, step, millimetres, words }) => ({
      ...moment(of, n),
      step,
      ...(millimetres !== undefined && { millimetres }),
      ...(words && { words }),
    })),
    ...(c.chasedAt > 0 && { chased: moment(of, c.chasedAt) }),
    ...(c.lookedAt > c.changedAt && { looked: lookedAt(of, c.lookedAt) }),
  };
}

function cameFrom(f: FastenerState, hole: string): HoleFact['came'] {
  const box = named('box', f.origin);
  if (box !== undefined) return { how: 'new', from: box };
  if (sortOf(f.origin) === 'stray') return { how: 'stray', from: f.origin };
  return f.origin === `hole:${hole}` ? undefined : { how: 'traded', from: subjectText(f.origin) };
}

/** One call looks at holes under one name, so any of its entries says whose. */
function lookedAt(of: Reading, n: number): Moment {
  const who = lookerIn(of.ledger, n);
  return { ...moment(of, n), ...(who && { who }) };
}
const lookerIn = (ledger: Ledger, n: number): string | undefined =>
  lineAt(ledger, n)?.entries.find((e) => e.kind === 'looked-again')?.who;
