// The job sheet as text, eighty columns wide: what was done, what was not, and what the owner must know.
import type { Ledger } from '../job/ledger.ts';
import { offsetText } from '../trade/civil-time.ts';
import { areaText, type Copy, repairText } from './area-text.ts';
import { type BenchDay, daysToTell } from './bench-time.ts';
import { type FindingFact, type SheetFacts, type SheetOptions, sheetFacts } from './facts.ts';
import { fastenersText, lossesText, partsText } from './goods-text.ts';
import { columns, labelled, point, section, under, wrapped } from './layout.ts';
import { fluidText, rotationText, sealantText } from './proof-text.ts';
import { standingLines } from './standing-text.ts';
import {
  by,
  cautions,
  counted,
  dayText,
  declinedCaution,
  distanceText,
  minutesText,
  timeText,
  toldText,
  why,
} from './words.ts';

/** `copy` says whose it is: reasons for overridden order are the workshop's (O5). */
export const sheetText = (ledger: Ledger, options: SheetOptions & { copy?: Copy; benchTime?: boolean }): string =>
  factsText(sheetFacts(ledger, options), options.copy ?? 'workshop', daysToTell(ledger, options));

export function factsText(facts: SheetFacts, copy: Copy, days: readonly BenchDay[] = []): string {
  return `${[
    ...head(facts, copy),
    ...section(
      'WHAT IS OPEN',
      facts.open.flatMap((o) => point(`${o.place}: ${o.because}`)),
    ),
    ...section('SERVICES', servicesText(facts)),
    ...section('FINDINGS', findingsText(facts)),
    ...section('RE-CHECKS AND NEXT SERVICE', dueText(facts)),
    ...section('FASTENERS', fastenersText(facts)),
    ...section('AREAS', areasText(facts, copy)),
    ...section('THREAD REPAIRS', facts.areas.flatMap(repairText)),
    ...section('SEALANT', sealantText(facts.faces)),
    ...section('CHECK ROTATION', rotationText(facts.drives)),
    ...section('FLUIDS AND LEAK CHECKS', fluidText(facts.circuits, facts.oil)),
    ...section('PARTS', partsText(facts)),
    ...section('LOST, AND NOT OF THIS VEHICLE', lossesText(facts)),
    ...section('DONE OUT OF ORDER', outOfOrderText(facts, copy)),
    ...section('START AND ROAD', carText(facts)),
    ...section(
      'NOTES',
      facts.notes.flatMap((n) => point(`${timeText(n)}${n.place ? ` ${n.place}` : ''}: ${n.words}`)),
    ),
    ...section(
      'TIME AT THE BENCH',
      days.flatMap((d) => point(`${d.day}: ${minutesText(d.minutes)}, ${counted(d.calls, 'call')}`)),
    ),
    ...section('LOG', logText(facts)),
    ...section('MIND', [
      ...facts.cautions.flatMap((c) => point(`${c.place ? `${c.place}: ` : ''}${c.words}`)),
      ...cautions.flatMap((one) => wrapped('', one)),
    ]),
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
    ...labelled('Odometer', v.odometer ? distanceText(v.odometer.distance, v.odometer.unit) : 'not noted'),
    ...(v.notes ? labelled('Remarks', v.notes) : []),
    ...(opened ? labelled('Job opened', dayText(opened)) : []),
    ...labelled('As it stands', `${dayText(printed)} (${offsetText(printed.zoneMin)})`),
    ...(digest ? labelled('Log digest', digest) : []),
    '',
    ...standingLines(facts),
  ];
}

const servicesText = ({ services }: SheetFacts): string[] =>
  services.flatMap(({ service, state, because }) =>
    point(state === 'ordered' ? `${service}: NEITHER DONE NOR DROPPED` : `${service}: ${state}${why(because)}`),
  );

function findingsText({ findings }: SheetFacts): string[] {
  const closedBy = (how: string) => findings.filter((f) => f.closed?.how === how);
  const groups = [
    ['OPEN', findings.filter((f) => !f.closed)],
    ['ACCEPTED AS IT IS', closedBy('accepted')],
    ['DECLINED BY THE OWNER', closedBy('declined')],
    ['Put right', closedBy('put right')],
  ] as const;
  const lines = groups.flatMap(([title, some]) => (some.length > 0 ? [title, ...some.flatMap(findingText)] : []));
  return lines.length > 0 ? lines : ['none'];
}
function findingText({ place, critical, what, when, made, told, asked, closed }: FindingFact): string[] {
  const said = told === undefined ? [] : [toldText(told, asked)];
  const end = closed ? [`${closed.how}${by(closed.by)} ${timeText(closed)}${why(closed.because)}`] : [];
  const rest = [...said, ...end].join('; ');
  return [
    ...point(`${place}${critical ? ' (critical)' : ''}: ${what}; found ${when}, ${timeText(made)}`),
    ...(rest ? under(rest) : []),
    ...(critical && closed?.how === 'declined' ? under(declinedCaution) : []),
  ];
}

function dueText({ due, vehicle }: SheetFacts): string[] {
  const unit = vehicle.odometer?.unit ?? 'km';
  const lines = due.flatMap(({ what, on, atDistance }) => {
    const when = [...(on ? [on] : []), ...(atDistance === undefined ? [] : [`at ${distanceText(atDistance, unit)}`])];
    const first = when.length > 1 ? ', whichever first' : '';
    return point(when.length > 0 ? `${what}: ${when.join(' or ')}${first}` : what);
  });
  return lines.length > 0 ? lines : ['none noted'];
}

function areasText({ areas }: SheetFacts, copy: Copy): string[] {
  const marked = areas.some((a) =>
    a.holes.some((h) => (copy === 'workshop' || h.critical) && h.passes.some((p) => p.outOfOrder)),
  );
  return [
    ...areas.flatMap((area) => areaText(area, copy)),
    ...(marked ? ['  * taken out of the order of its pass'] : []),
  ];
}

function outOfOrderText({ overrides }: SheetFacts, copy: Copy): string[] {
  if (copy === 'owner') {
    const places = new Set(overrides.filter((o) => o.critical).flatMap((o) => o.places));
    return places.size > 0 ? point(`critical, and done out of order: ${[...places].join(', ')}`) : [];
  }
  return overrides.flatMap((o) =>
    point(
      `${o.places.join(', ') || 'the job'}${o.critical ? ' (critical)' : ''}, ${timeText(o)}${by(o.who)}, ` +
        `line ${o.n}, rule ${o.rule}: ${o.because}`,
    ),
  );
}

function carText({ car }: SheetFacts): string[] {
  const { started, pedal, tools, road, waiting } = car;
  return [
    ...(tools ? point(`tools called out ${timeText(tools)}`) : []),
    ...(started ? point(`engine last started ${timeText(started)}`) : []),
    ...(pedal ? point(`brake pedal called firm ${timeText(pedal)}`) : []),
    ...(road && !road.waived ? point(`road test made ${timeText(road)}`) : []),
    ...(road?.waived ? point(`NO ROAD TEST: ${road.waived.because} (${road.waived.who}, ${timeText(road)})`) : []),
    ...(waiting
      ? point(
          `WAITING since ${timeText(waiting)} on ${waiting.on}${why(waiting.because)}${waiting.until ? `, until ${waiting.until}` : ''}`,
        )
      : []),
  ];
}

function logText({ log, corrections, leavings }: SheetFacts): string[] {
  const hows = { released: 'released', said: 'a release that was none', reopened: 'reopened', left: 'left unreleased' };
  return [
    ...point(
      `${counted(log.lines, 'line')}, ${log.struck} struck` +
        (log.misfits > 0 ? `, ${log.misfits} THAT DO NOT FIT WHAT WAS THERE` : ''),
    ),
    ...corrections.flatMap((c) => point(`corrected ${timeText(c)}: ${c.what}: ${c.because}`)),
    ...leavings.flatMap((l) => point(`${hows[l.how]} by ${l.by}, ${timeText(l)}, line ${l.n}${why(l.because)}`)),
  ];
}
