// The head of the page: whose car, as of when, whether it may go, and what was left against safety. What an owner reads
// if nothing else.
import { offsetText } from '../../trade/civil-time.ts';
import type { Copy } from '../area-text.ts';
import type { SheetFacts } from '../facts.ts';
import { odometerText } from '../odometer-facts.ts';
import { isDeclinedSafety } from '../points.ts';
import { standingPoints } from '../standing-text.ts';
import { counted, dayText } from '../words.ts';
import { html, type Markup } from './markup.ts';

export function headMarkup(facts: SheetFacts, copy: Copy): Markup {
  const { vehicle: v, opened, printed } = facts;
  const said: [string, string][] = [
    ['Odometer', odometerText(v)],
    ...(opened ? [['Job opened', dayText(opened)] as [string, string]] : []),
    ['As it stands', `${dayText(printed)} (${offsetText(printed.zoneMin)})`],
    ...(v.notes ? [['Remarks', v.notes] as [string, string]] : []),
  ];
  return html`<header>
<p class="sort">Job sheet, ${copy === 'owner' ? "owner's" : "workshop's"} copy</p>
<h1>${v.label || 'Vehicle not named'}${v.registration ? html` <span class="plate">${v.registration}</span>` : undefined}</h1>
<dl class="facts">
${said.map(
  ([term, one]) => html`<div><dt>${term}</dt><dd>${one}</dd></div>
`,
)}</dl>
${standingPoints(facts).map(
  (one) => html`<p class="${one.startsWith('RELEASED') ? 'verdict' : 'verdict not'}">${one}</p>
`,
)}${declinedMarkup(facts)}</header>
`;
}

function declinedMarkup({ findings }: SheetFacts): Markup | undefined {
  const declined = findings.filter(isDeclinedSafety);
  if (declined.length === 0) return undefined;
  const places = declined.map((f) => `${f.place} (${f.what})`).join(', ');
  const points = counted(declined.length, 'point');
  return cautioned(
    html`<strong>${points} that safety hangs on, left as it was on the owner's word:</strong> ${places}. See <a href="#findings">Findings</a>.`,
  );
}

/** A sign beside it that needs neither colour nor a font. */
export const cautioned = (words: Markup | string): Markup =>
  html`<div class="mind"><svg viewBox="0 0 24 22" aria-hidden="true"><path d="M 12 2 L 22.5 20 H 1.5 Z M 12 8.5 V 13.5 M 12 16.6 V 16.8"/></svg><div>${words}</div></div>`;
