// The job sheet as one page that needs nothing beside it: no script, no picture, no font from elsewhere.
import type { Ledger } from '../../job/ledger.ts';
import { offsetText } from '../../trade/civil-time.ts';
import type { Copy } from '../area-text.ts';
import { type BenchDay, daysToTell } from '../bench-time.ts';
import { type FindingFact, type SheetFacts, type SheetOptions, sheetFacts } from '../facts.ts';
import { fastenersPoints } from '../goods-text.ts';
import { standingPoints } from '../standing-text.ts';
import {
  by,
  cautions,
  dayText,
  declinedCaution,
  distanceText,
  minutesText,
  timeText,
  toldText,
  why,
} from '../words.ts';
import { areasMarkup, repairsMarkup, replacedMarkup } from './areas.ts';
import { html, list, type Markup, section, table } from './markup.ts';
import { style } from './style.ts';
import { fluidsMarkup, lossesMarkup, partsMarkup, rotationMarkup, sealantMarkup, wayOutMarkup } from './works.ts';

/** `copy` as for the text; `benchTime` adds the time at the bench by day, to a workshop's copy alone. */
export type PageOptions = SheetOptions & { copy?: Copy; benchTime?: boolean };

export function sheetPage(ledger: Ledger, options: PageOptions): string {
  const copy = options.copy ?? 'workshop';
  return pageOf(sheetFacts(ledger, options), copy, daysToTell(ledger, options));
}

export function pageOf(facts: SheetFacts, copy: Copy, days: readonly BenchDay[] = []): string {
  const { areas } = facts;
  return html`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>Job sheet: ${facts.vehicle.label || 'not named'}</title>
<style>${style}</style>
</head>
<body>
${head(facts, copy)}<main>
${section('open', 'What is open', list(facts.open.map((o) => `${o.place}: ${o.because}`)))}${section('services', 'Services', servicesMarkup(facts))}${section('findings', 'Findings', findingsMarkup(facts))}${section('due', 'Re-checks and next service', dueMarkup(facts))}${section('fasteners', 'Fasteners', html`${list(fastenersPoints(facts))}${replacedMarkup(areas)}`)}${section('areas', 'Areas', areasMarkup(areas, copy))}${section('repairs', 'Thread repairs', repairsMarkup(areas))}${section('sealant', 'Sealant', sealantMarkup(facts))}${section('rotation', 'Check rotation', rotationMarkup(facts))}${section('fluids', 'Fluids and leak checks', fluidsMarkup(facts))}${section('parts', 'Parts', partsMarkup(facts))}${section('losses', 'Lost, and not of this vehicle', lossesMarkup(facts))}${section('order', 'Done out of order', orderMarkup(facts, copy))}${section('way-out', 'Start and road', wayOutMarkup(facts))}${section('notes', 'Notes', list(facts.notes.map((n) => `${timeText(n)}${n.place ? ` ${n.place}` : ''}: ${n.words}`)))}${section('bench-time', 'Time at the bench', benchTimeMarkup(days))}${section('log', 'Log', logMarkup(facts))}${section('mind', 'Mind', mindMarkup(facts))}</main>
</body>
</html>
`.text;
}
function head(facts: SheetFacts, copy: Copy): Markup {
  const { vehicle: v, opened, printed } = facts;
  const lines: [string, string][] = [
    ['Vehicle', v.label || 'not named'],
    ...(v.registration ? [['Registration', v.registration] as [string, string]] : []),
    ['Odometer', v.odometer ? distanceText(v.odometer.distance, v.odometer.unit) : 'not noted'],
    ...(v.notes ? [['Remarks', v.notes] as [string, string]] : []),
    ...(opened ? [['Job opened', dayText(opened)] as [string, string]] : []),
    ['As it stands', `${dayText(printed)} (${offsetText(printed.zoneMin)})`],
  ];
  return html`<header>
<h1>Job sheet</h1>
<p class="whose">${copy === 'owner' ? "owner's" : "workshop's"} copy</p>
<dl>
${lines.map(
  ([term, said]) => html`<dt>${term}</dt><dd>${said}</dd>
`,
)}</dl>
${standingPoints(facts).map(
  (one) => html`<p class="verdict">${one}</p>
`,
)}</header>
`;
}

const servicesMarkup = ({ services }: SheetFacts): Markup | undefined =>
  list(
    services.map(({ service, state, because }) =>
      state === 'ordered'
        ? html`${service}: <strong class="warn">NEITHER DONE NOR DROPPED</strong>`
        : `${service}: ${state}${why(because)}`,
    ),
  );

function findingsMarkup({ findings }: SheetFacts): Markup {
  const closedBy = (how: string) => findings.filter((f) => f.closed?.how === how);
  const groups = [
    ['Open', findings.filter((f) => !f.closed)],
    ['Declined by the owner', closedBy('declined')],
    ['Accepted as it is', closedBy('accepted')],
    ['Put right', closedBy('put right')],
  ] as const;
  if (findings.length === 0)
    return html`<p>none</p>
`;
  return html`${groups.map(([title, some]) =>
    some.length === 0
      ? undefined
      : html`<h3>${title}</h3>
${list(some.map(findingMarkup))}`,
  )}`;
}
function findingMarkup({ place, critical, what, when, made, told, asked, closed }: FindingFact): Markup {
  const end = closed ? [`${closed.how}${by(closed.by)} ${timeText(closed)}${why(closed.because)}`] : [];
  const rest = [...(told === undefined ? [] : [toldText(told, asked)]), ...end].join('; ');
  const caution = critical && closed?.how === 'declined';
  return html`<strong>${place}${critical ? ' (critical)' : undefined}: ${what}</strong>, found ${when}, ${timeText(made)}${rest ? html`<br>${rest}` : undefined}${caution ? html`<div class="caution">${declinedCaution}</div>` : undefined}`;
}

function dueMarkup({ due, vehicle }: SheetFacts): Markup {
  const unit = vehicle.odometer?.unit ?? 'km';
  const rows = due.map(({ what, on, atDistance }) => [
    what,
    on ?? '-',
    atDistance === undefined ? '-' : distanceText(atDistance, unit),
  ]);
  return (
    table('by date or distance, whichever comes first', ['what', 'by', 'at'], rows) ??
    html`<p>none noted</p>
`
  );
}

/** O5 */
function orderMarkup({ overrides }: SheetFacts, copy: Copy): Markup | undefined {
  if (copy === 'owner') {
    const places = new Set(overrides.filter((o) => o.critical).flatMap((o) => o.places));
    return places.size > 0 ? list([`critical, and done out of order: ${[...places].join(', ')}`]) : undefined;
  }
  return table(
    'order overridden, with the reason',
    ['place', 'rule', 'because', 'when'],
    overrides.map((o) => [
      `${o.places.join(', ') || 'the job'}${o.critical ? ' (critical)' : ''}`,
      o.rule,
      o.because,
      `${timeText(o)}${by(o.who)}, line ${o.n}`,
    ]),
  );
}

const benchTimeMarkup = (days: readonly BenchDay[]): Markup | undefined =>
  table(
    'while the program ran, breaks of more than half an hour left out',
    ['day', 'time', 'calls'],
    days.map(({ day, minutes, calls }) => [day, minutesText(minutes), String(calls)]),
  );

function logMarkup({ log, corrections, leavings, digest }: SheetFacts): Markup {
  const hows = { released: 'released', said: 'a release that was none', reopened: 'reopened', left: 'left unreleased' };
  const misfits = log.misfits > 0 ? `, ${log.misfits} THAT DO NOT FIT WHAT WAS THERE` : '';
  const points = list([
    html`<span id="log-lines">${log.lines}</span> ${log.lines === 1 ? 'line' : 'lines'}, ${log.struck} struck${misfits}`,
    ...corrections.map((c) => `corrected ${timeText(c)}: ${c.what}: ${c.because}`),
    ...leavings.map((l) => `${hows[l.how]} by ${l.by}, ${timeText(l)}, line ${l.n}${why(l.because)}`),
  ]);
  return html`${points}${
    digest
      ? html`<p>Log digest <code id="log-digest">${digest}</code></p>
<p class="faint">It shows whether the log was altered since; it is no signature.</p>
`
      : undefined
  }`;
}

const mindMarkup = (facts: SheetFacts): Markup =>
  html`${list(facts.cautions.map((c) => `${c.place ? `${c.place}: ` : ''}${c.words}`))}${cautions.map(
    (one) => html`<p>${one}</p>
`,
  )}`;
