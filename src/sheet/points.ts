// Sentences of the sheet, one a fact, the same in the text and on the page: findings, what is due, order overridden, the
// way out, notes, the log. It lays out nothing.
import { byArea } from '../job/area-of-place.ts';
import { named, withinArea } from '../job/subjects.ts';
import type { Copy } from './area-text.ts';
import type { SheetFacts } from './facts.ts';
import type { FindingFact } from './finding-facts.ts';
import { leftUndone, type ServiceFact } from './service-facts.ts';
import { by, distanceText, spanText, timeText, toldText, why } from './words.ts';

export const serviceText = (one: ServiceFact): string =>
  one.state === 'ordered'
    ? `${one.service}: NEITHER DONE NOR DROPPED`
    : `${[`${one.service}: ${one.state}`, ...leftUndone(one)].join('; ')}${why(one.because)}`;

/** What is open, area by area, holes of which the same is said together: "cam cover 1, 2, 4: off". */
export function openSentences({ open }: Pick<SheetFacts, 'open'>): string[] {
  const said = Map.groupBy(
    byArea(open, ({ area }) => area),
    ({ at, area, because }) => (named('hole', at) === undefined ? at : `${area}: ${because}`),
  );
  return [...said.values()].flatMap((some) => {
    const holes = some.flatMap(({ at }) => named('hole', at) ?? []);
    const [first] = some;
    if (!first || holes.length < 2) return some.map((one) => `${one.place}: ${one.because}`);
    return [`${first.area} ${holes.map(withinArea).join(', ')}: ${first.because}`];
  });
}

/** What the owner must know first (X4). */
export function findingGroups(findings: readonly FindingFact[]): { title: string; findings: FindingFact[] }[] {
  const closedBy = (how: string) => findings.filter((f) => f.closed?.how === how);
  return [
    { title: 'Open', findings: findings.filter((f) => !f.closed) },
    { title: 'Declined by the owner', findings: closedBy('declined') },
    { title: 'Accepted as it is', findings: closedBy('accepted') },
    { title: 'Put right', findings: closedBy('put right') },
  ].filter((group) => group.findings.length > 0);
}
export const repairedUnfound = 'Thread repaired, and no finding called of it';
/** F5: what was wrong there nobody said, and the owner is to read of it all the same. */
export function repairsUnfound({ areas, findings }: Pick<SheetFacts, 'areas' | 'findings'>): string[] {
  const found = new Set(findings.map(({ place }) => place));
  return areas.flatMap((a) =>
    a.holes.flatMap((h) => {
      const place = `${a.area} ${h.number}`;
      if (h.repair.length === 0 || found.has(place)) return [];
      const how = h.repair.at(-1)?.step === 'tried' ? 'thread repaired' : 'thread repair begun';
      return [`${place}${h.critical ? ' (critical)' : ''}: ${how}, ${spanText(h.repair)}; see Thread repairs`];
    }),
  );
}
/** "cam cover 7 (critical): thread torn" */
export const findingText = ({ place, critical, what }: FindingFact): string =>
  `${place}${critical ? ' (critical)' : ''}: ${what}`;
/** The owner's say, and how it ended. */
export function findingEnd({ told, closed }: FindingFact): string {
  const end = closed ? [`${closed.how}${by(closed.by)} ${timeText(closed)}${why(closed.because)}`] : [];
  return [...told.map(toldText), ...end].join('; ');
}
/** Left as it was on the owner's word, where steering, braking, wheels or the engine hang on it. */
export const isDeclinedSafety = ({ critical, closed }: FindingFact): boolean => critical && closed?.how === 'declined';

/** When, as far as it was said: "2026-12-01", "at 85000 km". */
export function dueTimes({ due, vehicle }: SheetFacts): { what: string; on?: string; at?: string }[] {
  const unit = vehicle.odometer?.unit ?? 'km';
  return due.map(({ what, on, atDistance }) => ({
    what,
    ...(on && { on }),
    ...(atDistance !== undefined && { at: distanceText(atDistance, unit) }),
  }));
}

/** O5: of reasons the owner is told nothing, and of places only the critical ones. */
export function outOfOrderForOwner({ overrides }: SheetFacts): string[] {
  const places = new Set(overrides.filter((o) => o.critical).flatMap((o) => o.places));
  return places.size > 0 ? [`critical, and done out of order: ${[...places].join(', ')}`] : [];
}
export const overridePlace = ({ places, critical }: SheetFacts['overrides'][number]): string =>
  `${places.join(', ') || 'the job'}${critical ? ' (critical)' : ''}`;
export const isMarked = (pass: { outOfOrder: boolean }, hole: { critical: boolean }, copy: Copy): boolean =>
  pass.outOfOrder && (copy === 'workshop' || hole.critical);

export function wayOutPoints({ car }: SheetFacts): string[] {
  const { started, lowered, moved, pedal, tools, road, waiting } = car;
  const until = waiting?.until ? `, until ${waiting.until}` : '';
  return [
    ...(tools ? [`tools called out ${timeText(tools)}`] : []),
    ...(started ? [`engine last started ${timeText(started)}`] : []),
    ...(pedal ? [`brake pedal called firm ${timeText(pedal)}`] : []),
    ...(lowered ? [`last lowered onto its wheels ${timeText(lowered)}${standsText(lowered)}`] : []),
    ...(moved ? [`last moved ${timeText(moved)}`] : []),
    ...(road && !road.waived ? [`road test made ${timeText(road)}`] : []),
    ...(road?.waived ? [`NO ROAD TEST: ${road.waived.because} (${road.waived.who}, ${timeText(road)})`] : []),
    ...(waiting ? [`WAITING since ${timeText(waiting)} on ${waiting.on}${why(waiting.because)}${until}`] : []),
  ];
}

export const notePoints = ({ notes }: SheetFacts): string[] =>
  notes.map((n) => `${timeText(n)}${n.place ? ` ${n.place}` : ''}: ${n.words}`);

/** What its plans say to mind while the work is done: said to those who do it. */
export const cautionPoints = (facts: SheetFacts, copy: Copy): string[] =>
  (copy === 'owner' ? [] : facts.cautions).map((c) => `${c.place ? `${c.place}: ` : ''}${c.words}`);

const hows = { released: 'released', said: 'a release that was none', reopened: 'reopened', left: 'left unreleased' };
/** What stands behind the number of lines. */
export const struckText = ({ log }: SheetFacts): string =>
  `${log.struck} struck${log.misfits > 0 ? `, ${log.misfits} THAT DO NOT FIT WHAT WAS THERE` : ''}`;
const standsText = ({ standsOut: out }: NonNullable<SheetFacts['car']['lowered']>): string =>
  out ? `; the last stand out ${timeText(out)}` : '';
export const logPoints = ({ corrections, leavings, struck }: SheetFacts, copy: Copy): string[] => [
  ...(copy === 'workshop' ? struck.map((s) => `struck again, line ${s.n}, called ${timeText(s)}: ${s.what}`) : []),
  ...corrections.map((c) => `${c.confirmed ? 'confirmed' : 'corrected'} ${timeText(c)}: ${c.what}: ${c.because}`),
  ...leavings.map((l) => `${hows[l.how]} by ${l.by}, ${timeText(l)}, line ${l.n}${why(l.because)}`),
];
