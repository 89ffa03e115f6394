// What a slot could be filled with now, for choosing from a list, and how each choice is shown.
import { every, isStruck, stateOf } from '../job/ledger.ts';
import { isOfTheCar } from '../job/of-the-car.ts';
import type { Sort } from '../job/states.ts';
import { areaOf, named, sortOf, subjectText, withinArea } from '../job/subjects.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import { howFar } from './days-on.ts';
import type { Desk } from './desk.ts';
import { type Args, isChoice } from './form.ts';
import { boxProposals, proposalText } from './proposals.ts';
import { names } from './slot-names.ts';
import { piles } from './slot-places.ts';
import { plannedServices } from './slots.ts';
import { specWords } from './spec-words.ts';

/** Names a slot could take now, for choosing from a list; empty when they are typed. */
export function choicesFor(desk: Desk, type: string, args: Args = {}): string[] {
  if (isChoice(type)) return type.split('|');
  if (type === 'who') return namesSaid(desk);
  if (type === 'plan') return desk.plans().map((p) => p.name);
  if (type === 'planned') return [...plannedServices(desk, args)];
  if (type === 'place') return [...names(desk.ledger, 'tray').map((t) => `tray ${t}`), ...piles];
  if (type === 'finding') {
    const open = [...every(desk.ledger, 'finding')].filter((f) => !f.closed).map((f) => f.id);
    return [...open.filter((id) => isHere(desk, 'finding', id)), ...open.filter((id) => !isHere(desk, 'finding', id))];
  }
  if (type === 'tray') return [...new Set([...(desk.trays ?? []), ...names(desk.ledger, 'tray')])];
  if (type === 'stray') return [...every(desk.ledger, 'stray')].filter((s) => !s.settled).map((s) => s.id);
  if (type === 'piece') return [...every(desk.ledger, 'piece')].filter((p) => p.place !== 'scrap').map((p) => p.id);
  if (type === 'fastener') return lyingAbout(desk);
  if (type === 'bought') return boxProposals(desk).map((one) => one.name);
  if (type === 'hole') return holesInUse(desk);
  if (type === 'spec') return specsAtHand(desk);
  if (type === 'lost') {
    const lost = [...every(desk.ledger, 'fastener'), ...every(desk.ledger, 'piece')].filter(
      (one) => one.loss && !one.loss.ruledOut,
    );
    return lost.map((one) => one.id);
  }
  const sorts: Record<string, Sort> = {
    area: 'area',
    part: 'part',
    connection: 'connection',
    temporary: 'temporary',
    face: 'face',
    drive: 'drive',
    circuit: 'circuit',
    box: 'box',
    service: 'service',
    product: 'product',
  };
  const sort = sorts[type];
  if (!sort) return [];
  const known = [...names(desk.ledger, sort), ...(sort === 'area' ? areasWorkedAt(desk) : [])];
  const all = [...new Set(known)].filter((name) => !isWithdrawn(desk.ledger, `${sort}:${name}`));
  const others = all.filter((name) => !isHere(desk, sort, name));
  const isLast = (name: string): boolean => {
    const c = sort === 'connection' ? stateOf(desk.ledger, 'connection', name) : undefined;
    return c !== undefined && isOfTheCar(c);
  };
  // What belongs to no area, as the battery's earth, is joined last.
  return [
    ...all.filter((name) => isHere(desk, sort, name)),
    ...others.filter((name) => !isLast(name)),
    ...others.filter(isLast),
  ];
}
/** Areas where something was called that is of no hole, as a pin that went in there or a part. */
const areasWorkedAt = ({ ledger }: Desk): string[] =>
  ledger.lines.all
    .slice(0, ledger.lines.length)
    .flatMap(({ n, facing: { area } }) => (area === undefined || isStruck(ledger, n) ? [] : [area]));
/** Whether something belongs to the area in use: it is offered first. */
export function isHere({ ledger, facing: { area } }: Desk, sort: string, name: string): boolean {
  if (area === undefined) return false;
  const within = (subject: string | undefined): boolean => {
    const hole = named('hole', subject ?? '');
    return hole === undefined ? named('area', subject ?? '') === area : areaOf(hole) === area;
  };
  switch (sort) {
    case 'connection':
      return stateOf(ledger, 'connection', name)?.declared?.area === area;
    case 'face':
      return stateOf(ledger, 'face', name)?.declared?.area === area;
    case 'part':
      return stateOf(ledger, 'part', name)?.declared?.heldBy.some((hole) => areaOf(hole) === area) === true;
    case 'finding':
      return within(stateOf(ledger, 'finding', name)?.at);
    case 'temporary':
      return within(stateOf(ledger, 'temporary', name)?.at);
    default:
      return false;
  }
}

/**
 * Specs in use before and those met on this job, the last one first, then the one in use, then the plain bolt, nut and
 * screw of each head, which keep their numbers whichever of them is in use.
 */
function specsAtHand({ ledger, facing }: Desk): string[] {
  const met = [...every(ledger, 'fastener')].map((f) => specWords(f.spec)).reverse();
  const kinds = [...new Set([facing.spec.kind ?? 'bolt', 'bolt', 'nut', 'screw'])];
  const plain = kinds.flatMap((kind) => usualHeads.map((size) => `${kind} hex ${size}`));
  const inUse = specWords(facing.spec);
  const before = (facing.specsBefore ?? []).map(specWords);
  // A kind without a head says nothing that its own key does not.
  const isOwn = (words: string) => ![...plain, ...kinds, 'unknown'].includes(words);
  const others = [...before, ...met].filter((words) => words !== inUse && isOwn(words));
  // So few that the heads used most stand on the same page: a head is then two keys, on a keypad too.
  const first = [...[...new Set(others)].slice(0, mostFirst - 1), ...[inUse].filter(isOwn)];
  return [...new Set([...first, ...plain, ...others])];
}
const mostFirst = 4;
/** By size; the commonest five are the smallest (common practice, no source), so that they stand on the first page. */
const usualHeads = [8, 10, 12, 13, 14, 16, 17, 19];

/** Whoever works here, and who signed something that stands, the last one first; whom the job waited for signed nothing. */
function namesSaid({ ledger, name }: Desk): string[] {
  const { all, length } = ledger.lines;
  const entries = all.slice(0, length).flatMap(({ n, entries: of }) => (isStruck(ledger, n) ? [] : of));
  const said = entries.flatMap((e) => ('who' in e && e.who && e.kind !== 'job-waiting' ? [e.who] : []));
  return [...new Set([...(name === undefined ? [] : [name]), ...said.reverse()])];
}

/** Holes of the area in use as they are said there, in the order of their numbers. */
function holesInUse({ ledger, facing }: Desk): string[] {
  const holes = facing.area === undefined ? undefined : stateOf(ledger, 'area', facing.area)?.holes;
  const number = (name: string) => Number.parseInt(name, 10) || 0;
  return (holes ?? []).map(withinArea).sort((a, b) => number(a) - number(b));
}
/** Fasteners in trays, those of the area in use first. */
function lyingAbout({ ledger, facing }: Desk): string[] {
  const all = [...every(ledger, 'fastener')].filter((f) => sortOf(f.place) === 'tray');
  const here = (f: { origin: string }) => {
    const hole = named('hole', f.origin);
    return hole !== undefined && areaOf(hole) === facing.area;
  };
  return [...all.filter(here), ...all.filter((f) => !here(f))].map((f) => f.id);
}
/** A choice as it is shown, where its value alone says too little. */
export function textOfChoice(desk: Desk, type: string, value: string): string {
  if (type === 'finding') {
    const f = stateOf(desk.ledger, 'finding', value);
    return f ? `${value}  ${subjectText(f.at)}: ${f.what}` : value;
  }
  if (type === 'bought') return proposalText(desk, value);
  if (type === 'date') return [howFar(desk, value), value].filter(Boolean).join(', ');
  if (type === 'fastener' || type === 'lost') {
    const f = stateOf(desk.ledger, 'fastener', value);
    return f ? `${value}  ${specWords(f.spec)}, of ${subjectText(f.origin)}, ${subjectText(f.place)}` : value;
  }
  if (type === 'stray') {
    const s = stateOf(desk.ledger, 'stray', value);
    return s ? `${value}  ${specWords(s.spec)}` : value;
  }
  return value;
}
