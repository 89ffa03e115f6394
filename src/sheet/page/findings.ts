// Findings on the page, what the owner must know first: open ones, declined, accepted, then what was put right; and what
// is due.
import type { SheetFacts } from '../facts.ts';
import type { FindingFact } from '../finding-facts.ts';
import { dueTimes, findingEnd, findingGroups, isDeclinedSafety, repairedUnfound, repairsUnfound } from '../points.ts';
import { declinedCaution, timeText } from '../words.ts';
import { cautioned } from './head.ts';
import { critical, flowing, html, list, type Markup, table } from './markup.ts';

export function findingsMarkup(facts: SheetFacts): Markup {
  const repaired = repairsUnfound(facts);
  if (facts.findings.length === 0 && repaired.length === 0)
    return html`<p>none</p>
`;
  return html`${findingGroups(facts.findings).map(
    ({
      title,
      findings: some,
    }) => html`<h3 class="group${title === 'Put right' || title === 'Accepted as it is' ? '' : ' warn'}">${title}</h3>
<ul class="found">
${some.map(
  (one) => html`<li>${findingMarkup(one)}</li>
`,
)}</ul>
`,
  )}${
    repaired.length > 0
      ? html`<h3 class="group">${repairedUnfound}</h3>
${list(repaired)}`
      : undefined
  }`;
}
function findingMarkup(f: FindingFact): Markup {
  const end = findingEnd(f);
  return html`<strong>${f.place}: ${f.what}</strong>${critical(f.critical)} <small>${flowing(`found ${f.when}, ${timeText(f.made)}`)}</small>${end ? html`<br>${flowing(end)}` : undefined}${isDeclinedSafety(f) ? cautioned(declinedCaution) : undefined}`;
}

export const dueMarkup = (facts: SheetFacts): Markup =>
  html`${list(facts.forOwner)}${dueTable(facts) ?? (facts.forOwner.length > 0 ? undefined : noneNoted)}`;
const noneNoted = html`<p>none noted</p>
`;
const dueTable = (facts: SheetFacts): Markup | undefined =>
  table(
    'by date or distance, whichever comes first',
    ['what', 'by', 'at'],
    dueTimes(facts).map(({ what, on, at }) => [what, on ?? '-', at ?? '-']),
  );
