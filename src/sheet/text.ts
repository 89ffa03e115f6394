// The job sheet as text, eighty columns wide: what was done, what was not, and what the owner must know.
import type { Ledger } from '../job/ledger.ts';
import { offsetText } from '../trade/civil-time.ts';
import { areaText, type Copy, repairText } from './area-text.ts';
import { type BenchDay, daysToTell } from './bench-time.ts';
import { type SheetFacts, type SheetOptions, sheetFacts } from './facts.ts';
import type { FindingFact } from './finding-facts.ts';
import { fastenersText, lossPoints, partsText } from './goods-text.ts';
import { columns, labelled, point, section, under, wrapped } from './layout.ts';
import { odometerText } from './odometer-facts.ts';
import { photoFile, photoWords } from './photo-facts.ts';
import {
  cautionPoints,
  dueTimes,
  findingEnd,
  findingGroups,
  findingText,
  isDeclinedSafety,
  isMarked,
  logPoints,
  notePoints,
  openSentences,
  outOfOrderForOwner,
  overridePlace,
  repairedUnfound,
  repairsUnfound,
  serviceText,
  struckText,
  wayOutPoints,
} from './points.ts';
import { fluidPoints, rotationText, sealantText } from './proof-text.ts';
import { notAskedSentences, standingLines } from './standing-text.ts';
import { by, cautions, counted, dayText, declinedCaution, minutesText, timeText } from './words.ts';

/** `copy` says whose it is: reasons for overridden order are the workshop's (O5). */
export const sheetText = (ledger: Ledger, options: SheetOptions & { copy?: Copy; benchTime?: boolean }): string =>
  factsText(sheetFacts(ledger, options), options.copy ?? 'workshop', daysToTell(ledger, options));

function factsText(facts: SheetFacts, copy: Copy, days: readonly BenchDay[] = []): string {
  return `${[
    ...head(facts, copy),
    ...section('WHAT IS OPEN', openSentences(facts).flatMap(point)),
    ...section('NOT ASKED ON THIS JOB', copy === 'workshop' ? notAskedSentences(facts).flatMap(point) : []),
    ...section('SERVICES', facts.services.map(serviceText).flatMap(point)),
    ...section('FINDINGS', findingsText(facts)),
    ...section('RE-CHECKS AND NEXT SERVICE', dueText(facts)),
    ...section('FASTENERS', fastenersText(facts)),
    ...section('AREAS', areasText(facts, copy)),
    ...section('THREAD REPAIRS', facts.areas.flatMap(repairText)),
    ...section('SEALANT', sealantText(facts.faces)),
    ...section('CHECK ROTATION', rotationText(facts.drives)),
    ...section('FLUIDS AND LEAK CHECKS', fluidPoints(facts).flatMap(point)),
    ...section('PARTS', partsText(facts, copy)),
    ...section('LOST, AND NOT OF THIS VEHICLE', lossPoints(facts, copy).flatMap(point)),
    ...section('DONE OUT OF ORDER', outOfOrderText(facts, copy)),
    ...section('START AND ROAD', wayOutPoints(facts).flatMap(point)),
    ...section('NOTES', notePoints(facts).flatMap(point)),
    ...section(
      'PHOTOGRAPHS',
      facts.photos.flatMap((p) => [...point(`${photoWords(p)}, ${timeText(p)}`), ...under(photoFile(p, copy))]),
    ),
    ...section(
      'TIME AT THE BENCH',
      days.flatMap((d) => point(`${d.day}: ${minutesText(d.minutes)}, ${counted(d.calls, 'call')}`)),
    ),
    ...section('LOG', logText(facts, copy)),
    ...section('MIND', [...cautionPoints(facts, copy).flatMap(point), ...cautions.flatMap((one) => wrapped('', one))]),
  ].join('\n')}\n`;
}

function head(facts: SheetFacts, copy: Copy): string[] {
  const { vehicle: v, opened, printed, digest } = facts;
  const whose = `${copy === 'owner' ? "owner's" : "workshop's"} copy`;
  return [
    `JOB SHEET${whose.padStart(columns - 9)}`,
    '='.repeat(columns),
    ...labelled('Vehicle', v.label || 'not named'),
    ...(v.registration ? labelled('Registration', v.registration) : []),
    ...labelled('Odometer', odometerText(v)),
    ...(v.notes ? labelled('Remarks', v.notes) : []),
    ...(opened ? labelled('Job opened', dayText(opened)) : []),
    ...labelled('As it stands', `${dayText(printed)} (${offsetText(printed.zoneMin)})`),
    ...(digest ? labelled('Log digest', digest) : []),
    '',
    ...standingLines(facts),
  ];
}

function findingsText(facts: SheetFacts): string[] {
  const found = findingGroups(facts.findings).flatMap(({ title, findings: some }) => [
    title === 'Put right' ? title : title.toUpperCase(),
    ...some.flatMap(findingLines),
  ]);
  const repaired = repairsUnfound(facts).flatMap(point);
  const lines = repaired.length > 0 ? [...found, repairedUnfound, ...repaired] : found;
  return lines.length > 0 ? lines : ['none'];
}
function findingLines(f: FindingFact): string[] {
  const end = findingEnd(f);
  return [
    ...point(`${findingText(f)}; found ${f.when}, ${timeText(f.made)}`),
    ...(end ? under(end) : []),
    ...(isDeclinedSafety(f) ? under(declinedCaution) : []),
  ];
}

function dueText(facts: SheetFacts): string[] {
  const lines = dueTimes(facts).flatMap(({ what, on, at }) => {
    const when = [...(on ? [on] : []), ...(at ? [`at ${at}`] : [])];
    const first = when.length > 1 ? ', whichever first' : '';
    return point(`${what}: ${when.length > 0 ? `${when.join(' or ')}${first}` : 'no date or distance said'}`);
  });
  const owner = facts.forOwner.flatMap((words) => point(words));
  return lines.length + owner.length > 0 ? [...owner, ...lines] : ['none noted'];
}

function areasText({ areas }: SheetFacts, copy: Copy): string[] {
  const marked = areas.some((a) => a.holes.some((h) => h.passes.some((p) => isMarked(p, h, copy))));
  return [
    ...areas.flatMap((area) => areaText(area, copy)),
    ...(marked ? ['  * taken out of the order of its pass'] : []),
  ];
}

function outOfOrderText(facts: SheetFacts, copy: Copy): string[] {
  if (copy === 'owner') return outOfOrderForOwner(facts).flatMap(point);
  return facts.overrides.flatMap((o) =>
    point(`${overridePlace(o)}, ${timeText(o)}${by(o.who)}, line ${o.n}, rule ${o.rule}: ${o.because}`),
  );
}

const logText = (facts: SheetFacts, copy: Copy): string[] =>
  [`${counted(facts.log.lines, 'line')}, ${struckText(facts)}`, ...logPoints(facts, copy)].flatMap(point);
