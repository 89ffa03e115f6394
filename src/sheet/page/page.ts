// The job sheet as one page that needs nothing beside it: no script, no font from elsewhere, nothing fetched.
import type { Ledger } from '../../job/ledger.ts';
import type { Copy } from '../area-text.ts';
import { type BenchDay, daysToTell } from '../bench-time.ts';
import { type SheetFacts, type SheetOptions, sheetFacts } from '../facts.ts';
import { fastenersPoints, lossPoints } from '../goods-text.ts';
import { cautionPoints, notePoints, openSentences, wayOutPoints } from '../points.ts';
import { fluidPoints } from '../proof-text.ts';
import { notAskedSentences } from '../standing-text.ts';
import { cautions } from '../words.ts';
import { areasMarkup, repairsMarkup, replacedMarkup } from './areas.ts';
import { dueMarkup, findingsMarkup } from './findings.ts';
import { headMarkup } from './head.ts';
import { html, list, type Markup, section } from './markup.ts';
import { photosMarkup, showsPictures } from './photos.ts';
import { pageFoot, style } from './style.ts';
import {
  benchTimeMarkup,
  logMarkup,
  orderMarkup,
  partsMarkup,
  rotationMarkup,
  sealantMarkup,
  servicesMarkup,
} from './works.ts';

/** `copy` as for the text; `benchTime` adds the time at the bench by day, to a workshop's copy alone. */
export type PageOptions = SheetOptions & { copy?: Copy; benchTime?: boolean };

export function sheetPage(ledger: Ledger, options: PageOptions): string {
  const copy = options.copy ?? 'workshop';
  return pageOf(sheetFacts(ledger, options), copy, daysToTell(ledger, options));
}

export function pageOf(facts: SheetFacts, copy: Copy, days: readonly BenchDay[] = []): string {
  return html`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'${showsPictures(facts) ? '; img-src data:' : undefined}">
<title>Job sheet: ${facts.vehicle.label || 'not named'}</title>
<style>${style}${pageFoot(facts.digest)}</style>
</head>
<body>
${headMarkup(facts, copy)}<main>
${sections(facts, copy, days)}</main>
</body>
</html>
`.text;
}

const sections = (facts: SheetFacts, copy: Copy, days: readonly BenchDay[]): (Markup | undefined)[] => [
  section('open', 'What is open', list(openSentences(facts), openSentences(facts).length > 8 ? 'columns' : undefined)),
  section('not-asked', 'Not asked on this job', copy === 'workshop' ? list(notAskedSentences(facts)) : undefined),
  section('services', 'Services', servicesMarkup(facts)),
  section('findings', 'Findings', findingsMarkup(facts)),
  section('due', 'Re-checks and next service', dueMarkup(facts)),
  section('parts', 'Parts', partsMarkup(facts, copy)),
  section('fasteners', 'Fasteners', html`${list(fastenersPoints(facts))}${replacedMarkup(facts.areas)}`),
  section('areas', 'Tightening record', areasMarkup(facts.areas, copy)),
  section('repairs', 'Thread repairs', repairsMarkup(facts.areas)),
  section('sealant', 'Sealant', sealantMarkup(facts)),
  section('rotation', 'Check rotation', rotationMarkup(facts)),
  section('fluids', 'Fluids and leak checks', list(fluidPoints(facts))),
  section('losses', 'Lost, and not of this vehicle', list(lossPoints(facts, copy))),
  section('order', 'Done out of order', orderMarkup(facts, copy)),
  section('way-out', 'Start and road', list(wayOutPoints(facts))),
  section('notes', 'Notes', list(notePoints(facts))),
  section('photos', 'Photographs', photosMarkup(facts, copy)),
  section('bench-time', 'Time at the bench', benchTimeMarkup(days)),
  section('log', 'Log', logMarkup(facts, copy)),
  section('mind', 'Mind', mindMarkup(facts, copy)),
];

const mindMarkup = (facts: SheetFacts, copy: Copy): Markup =>
  html`${list(cautionPoints(facts, copy), 'columns')}${cautions.map(
    (one) => html`<p>${one}</p>
`,
  )}`;
