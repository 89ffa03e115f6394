// What is still to do on a job, service by service: to take off, to judge, to fit; what its plans buy against what was
// bought; the tools its awkward holes want. Reads the job alone. A place of several services stands under the first.

import type { NewPart } from '../job/entries/declared.ts';
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import type { Stamp } from '../job/line.ts';
import { numbersText } from '../job/numbers-text.ts';
import type { OpenPoint, OpenPointCode } from '../job/open-point.ts';
import { openPoints } from '../job/open-points.ts';
import { specText } from '../job/spec.ts';
import type { BoxState } from '../job/states.ts';
import { areaOf, named, nameOf, type Subject, sortOf, withinArea } from '../job/subjects.ts';
import { declaredOn } from './declared-on-job.ts';
import { mustComeOff, type Step, stepsOf } from './need.ts';
import { areaOfUnit } from './strip-order.ts';
import { unionOf, wasOff } from './together.ts';
import { holeOfUnit, type Unit, type Works, worksFrom } from './works.ts';

export type Place = { at: Subject; words: string };
export type ServiceToDo = {
  /** Without one: of no service that is ordered. */
  service?: string;
  /** No plan said what it is about. */
  unknown?: true;
  takeOff: readonly Step[];
  judge: readonly Place[];
  fit: readonly Place[];
};
export type Bought = NewPart & { bought: number };
export type ToolWanted = { tool: string; at: Subject; words: string };
export type StillToDo = {
  services: readonly ServiceToDo[];
  newParts: readonly Bought[];
  tools: readonly ToolWanted[];
  works: Works;
};

/** Under which head an open point of a service stands; the rest is of the car as a whole, and told when it leaves. */
const heads: Record<OpenPointCode, 'judge' | 'fit' | 'neither'> = {
  'hole-open': 'fit',
  'for-now': 'fit',
  'working-in': 'fit',
  'finding-open': 'judge',
  suspicion: 'judge',
  lost: 'judge',
  'condemned-about': 'judge',
  'broken-about': 'judge',
  stray: 'judge',
  'part-off': 'fit',
  'part-not-judged': 'judge',
  companions: 'fit',
  'blind-holes': 'fit',
  direction: 'fit',
  'connection-parted': 'fit',
  'temporary-in': 'fit',
  masked: 'neither',
  'holes-not-counted': 'neither',
  'bead-missing': 'fit',
  'bead-curing': 'neither',
  'rotation-needed': 'fit',
  'circuit-empty': 'fit',
  'circuit-unchecked': 'neither',
  'tray-not-empty': 'neither',
  'tray-uncounted': 'neither',
  'scrap-differs': 'neither',
  'box-differs': 'neither',
  tools: 'neither',
  'box-left': 'neither',
  'service-open': 'neither',
  'second-look': 'neither',
  pedal: 'neither',
  'road-test': 'neither',
  odometer: 'neither',
  waiting: 'neither',
  misfit: 'neither',
  books: 'neither',
};

export function stillToDo(ledger: Ledger, now: Stamp): StillToDo {
  const works = worksFrom(unionOf([declaredOn(ledger)]));
  const points = openPoints(ledger, now);
  const ordered = [...every(ledger, 'service')].filter((s) => s.state === 'ordered');
  const claimed = new Set<Subject>();
  const claim = (subject: Subject): boolean => !claimed.has(subject) && claimed.add(subject) !== undefined;
  const services = ordered.map(({ service, brings = [] }): ServiceToDo => {
    const units = mustComeOff(works, brings.filter(comesOff));
    const about = new Set([...brings, ...[...units].flatMap((unit) => withArea(works, unit))]);
    const takeOff = new Set([...units].filter((unit) => !wasOff(ledger, unit) && claim(unit)));
    const here = points.filter((one) => about.has(placeOf(ledger, one)) && claim(keyOf(one)));
    return {
      service,
      ...(brings.length === 0 && { unknown: true }),
      takeOff: stepsOf(works, takeOff, []).filter(({ units: some }) => some.length > 0),
      ...sorted(ledger, works, here),
    };
  });
  const rest = sorted(
    ledger,
    works,
    points.filter((one) => claim(keyOf(one))),
  );
  const loose: ServiceToDo[] = rest.judge.length + rest.fit.length > 0 ? [{ takeOff: [], ...rest }] : [];
  return {
    services: [...services, ...loose],
    newParts: bought(
      ledger,
      ordered.flatMap((s) => s.newParts ?? []),
    ),
    tools: toolsFor(
      ledger,
      points,
      services.flatMap((s) => s.takeOff.flatMap((step) => step.units)),
    ),
    works,
  };
}

const comesOff = (subject: Subject): boolean => ['area', 'part', 'connection'].includes(sortOf(subject));
const keyOf = ({ code, at }: OpenPoint): string => `${code} ${at}`;
function withArea(works: Works, unit: Unit): Subject[] {
  const area = areaOfUnit(works, unit);
  return area === undefined ? [unit] : [unit, `area:${area}`];
}

/** What a point is about, as a service brings it: the area of a hole, the place of a finding, where a fastener is from. */
function placeOf(ledger: Ledger, { at }: OpenPoint): Subject {
  const name = nameOf(at);
  switch (sortOf(at)) {
    case 'hole':
      return `area:${areaOf(name)}`;
    case 'finding':
      return placeOf(ledger, { at: stateOf(ledger, 'finding', name)?.at ?? 'vehicle' } as OpenPoint);
    case 'fastener':
      return placeOf(ledger, { at: stateOf(ledger, 'fastener', name)?.origin ?? 'vehicle' } as OpenPoint);
    case 'piece':
      return placeOf(ledger, { at: `fastener:${stateOf(ledger, 'piece', name)?.fastener ?? ''}` } as OpenPoint);
    case 'temporary': {
      const where = stateOf(ledger, 'temporary', name)?.at;
      return where === undefined || where === 'vehicle' ? at : placeOf(ledger, { at: where } as OpenPoint);
    }
    default:
      return at;
  }
}

function sorted(ledger: Ledger, works: Works, points: readonly OpenPoint[]): Pick<ServiceToDo, 'judge' | 'fit'> {
  const fit = points.filter((one) => heads[one.code] === 'fit');
  const judge = points.filter((one) => heads[one.code] === 'judge');
  /** A part goes back with its area. */
  const goesBackWith = (one: OpenPoint): Subject => {
    const area = sortOf(one.at) === 'part' ? areaOfUnit(works, one.at) : undefined;
    return area === undefined ? placeOf(ledger, one) : `area:${area}`;
  };
  return {
    judge: judge.map(({ at, because }) => ({ at, words: because })),
    fit: [...Map.groupBy(fit, goesBackWith)].map(([at, some]) => ({ at, words: wordsOf(at, some) })),
  };
}
/** "1-3 off, 4 5 slack, companions not called seen, cover off". */
function wordsOf(place: Subject, points: readonly OpenPoint[]): string {
  return [...Map.groupBy(points, (one) => one.because)]
    .map(([because, some]) => {
      const numbers = some.flatMap(({ at }) => named('hole', at) ?? []).map(withinArea);
      const others = some.flatMap(({ at }) => (at === place || sortOf(at) !== 'part' ? [] : [nameOf(at)]));
      const inTurn = numbers.sort((one, other) => Number.parseInt(one, 10) - Number.parseInt(other, 10));
      const names = [...(inTurn.length > 0 ? [numbersText(inTurn)] : []), ...others].join(' and ');
      return names === '' ? because : `${names} ${because}`;
    })
    .join(', ');
}

/** By what it replaces, by its spec, or by its name. */
export const isBoughtAs = (one: NewPart, box: BoxState): boolean =>
  box.name === one.name ||
  (one.replaces !== undefined && box.replaces === one.replaces) ||
  (one.spec !== undefined && box.spec !== undefined && specText(box.spec) === specText(one.spec));

function bought(ledger: Ledger, wanted: readonly NewPart[]): Bought[] {
  const boxes = [...every(ledger, 'box')];
  const once = new Map<string, NewPart>();
  for (const one of wanted) {
    const before = once.get(one.name);
    once.set(one.name, { ...one, quantity: Math.max(one.quantity, before?.quantity ?? 0) });
  }
  return [...once.values()].map((one) => {
    const there = boxes.filter((box) => isBoughtAs(one, box));
    return { ...one, bought: there.reduce((sum, box) => sum + box.bought, 0) };
  });
}

function toolsFor(ledger: Ledger, points: readonly OpenPoint[], takeOff: readonly Unit[]): ToolWanted[] {
  const open = points.flatMap(({ at, code }) => (heads[code] === 'fit' ? (named('hole', at) ?? []) : []));
  const holes = [...new Set([...takeOff.flatMap((unit) => holeOfUnit(unit) ?? []), ...open])];
  const wanting = holes.flatMap((hole) => {
    const tool = stateOf(ledger, 'hole', hole)?.declared?.tool;
    return tool === undefined ? [] : [{ tool, hole }];
  });
  return [...Map.groupBy(wanting, ({ tool, hole }) => `${areaOf(hole)}\n${tool}`).values()].map((some) => {
    const [{ tool, hole }] = some as [{ tool: string; hole: string }];
    return {
      tool,
      at: `area:${areaOf(hole)}`,
      words: `${areaOf(hole)} ${numbersText(some.map((one) => withinArea(one.hole)))}`,
    };
  });
}
