// How the page looks: on a screen light or dark, on a phone, and on A4 or Letter paper, always black on white there.
// Headings stand beside what they head, so that a page reads down one edge. Colour is never alone; what stands out does
// so by words, weight and lines as well, and nothing is told by a painted ground, which printers leave out.
import { html, type Markup } from './markup.ts';

export const style: Markup = html`
:root { color-scheme: light dark; --ink: #1b1d1f; --paper: #fdfdfc; --faint: #5a5f63; --line: #d3d5d3; --mark: #1f5560; --wash: #f1f3f1; --warn: #932200; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #e6e7e5; --paper: #17191a; --faint: #a8adaf; --line: #3d4143; --mark: #8cc4cf; --wash: #212526; --warn: #ffa488; }
}
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 2.2rem 1.6rem 3rem; max-width: 66rem; color: var(--ink); background: var(--paper);
  font: 1rem/1.5 "Liberation Sans", Arial, Helvetica, sans-serif; font-variant-numeric: tabular-nums; overflow-wrap: anywhere; }
h1, h2, h3, p, ul, dl, figure { margin: 0; }
h1 { font: 700 2.1rem/1.15 "Liberation Serif", Georgia, serif; }
h2 { font-size: .95rem; line-height: 1.35; color: var(--mark); }
h3 { font-size: 1.08rem; line-height: 1.35; }
.group { font-size: .86rem; color: var(--faint); margin-top: 1rem; }
.group:first-child { margin-top: 0; }
.group.warn { color: var(--warn); }
h3 small { font-weight: normal; color: var(--faint); }
ul { padding-left: 1.05rem; }
li { margin-bottom: .2rem; }
li::marker { color: var(--faint); }
p + p { margin-top: .4rem; }
a { color: inherit; }
small, .faint, caption, figcaption { color: var(--faint); font-size: .86rem; }
.warn { color: var(--warn); }
.tag { border: 1px solid; border-radius: .2rem; padding: 0 .3rem; font-size: .75rem; font-weight: bold; white-space: nowrap; vertical-align: .1em; }

.sort { color: var(--mark); font-weight: bold; margin-bottom: .3rem; }
.plate { display: inline-block; border: 2px solid; border-radius: .3rem; padding: .05rem .5rem; font: bold 1.05rem/1.4 "Liberation Sans", Arial, Helvetica, sans-serif; letter-spacing: .05em; vertical-align: .25em; }
.facts { display: flex; flex-wrap: wrap; gap: .5rem 2.4rem; margin: 1rem 0 1.2rem; }
dt { color: var(--faint); font-size: .86rem; }
dd { margin: 0; }
.verdict { border: 2px solid; border-left-width: .7rem; padding: .6rem 1rem; font-weight: bold; font-size: 1.12rem; }
.verdict.not { border: 5px double; color: var(--warn); }
.verdict + .verdict { margin-top: .5rem; }
.mind { display: grid; grid-template-columns: 1.7rem minmax(0, 1fr); gap: 0 .7rem; align-items: start; border: 2px solid var(--warn); padding: .5rem .8rem; margin: .5rem 0; break-inside: avoid; }
.mind svg { width: 1.7rem; fill: none; stroke: var(--warn); stroke-width: 2; stroke-linejoin: round; stroke-linecap: round; }
header .mind { margin: .7rem 0 0; }

section { display: grid; grid-template-columns: 9.5rem minmax(0, 1fr); gap: 0 1.6rem; border-top: 1px solid var(--line); margin-top: 1.5rem; padding-top: .9rem; }
section > div { min-width: 0; }
.found { list-style: none; padding: 0; }
.found li { margin: .15rem 0 .6rem; }

table { width: 100%; border-collapse: collapse; }
table + ul, ul + table, p + table { margin-top: .6rem; }
caption { text-align: left; padding-bottom: .2rem; }
th, td { overflow-wrap: break-word; text-align: left; vertical-align: top; padding: .28rem .9rem .28rem 0; border-bottom: 1px solid var(--line); font-weight: normal; }
th:last-child, td:last-child { padding-right: 0; }
thead th { border-bottom: 1.5px solid var(--ink); font-size: .86rem; line-height: 1.35; vertical-align: bottom; }
thead small { display: block; }
tbody th { font-weight: bold; }
tbody tr:last-child > * { border-bottom-color: var(--faint); }
td em { color: var(--mark); font-style: normal; font-weight: bold; font-size: .9rem; }

.area { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: .2rem 1.8rem; align-items: start; }
.area + .area { margin-top: 1.9rem; }
.area > h3, .area > .wide { grid-column: 1 / -1; }
.holes thead th:first-child { white-space: nowrap; }
.holes td:nth-child(2) { width: 44%; }
.t { white-space: nowrap; }
.area ul { margin-top: .4rem; }
.map { max-width: 13rem; padding-top: .3rem; }
.legend { display: flex; flex-wrap: wrap; gap: .2rem 1.4rem; color: var(--faint); font-size: .86rem; margin-bottom: .9rem; }
.legend span { display: inline-flex; align-items: center; gap: .4rem; }
.map.wide { max-width: none; padding-bottom: .6rem; }
.map figcaption { margin-top: .3rem; }
svg { display: block; max-width: 100%; height: auto; }
.outline { fill: var(--wash); stroke: var(--line); }
.hole { fill: var(--paper); stroke: var(--ink); }
.ring { fill: none; stroke: var(--ink); }
.hole.open { stroke: var(--warn); }
.map text { fill: var(--ink); text-anchor: middle; dominant-baseline: central; }

.columns { columns: 18rem 2; column-gap: 2rem; margin-bottom: .6rem; }

.photos { display: flex; flex-wrap: wrap; gap: 1rem; }
.photos figure { max-width: 15rem; break-inside: avoid; }
.photos img { display: block; max-width: 100%; max-height: 15rem; border: 1px solid var(--line); }
code { font: .82em/1.4 "Liberation Mono", monospace; }

@media screen and (max-width: 46rem) {
  body { padding: 1.1rem 1rem 2rem; }
  h1 { font-size: 1.6rem; }
  section { display: block; margin-top: 1.4rem; }
  h2 { margin-bottom: .5rem; font-size: 1.05rem; }
  .facts { gap: .5rem 1.6rem; }
  .area { display: block; }
  .map { padding: .5rem 0 .4rem; }
  th, td { padding-right: .5rem; }
  .t { white-space: normal; }
  table { font-size: .92rem; }
  .holes td:nth-child(2) { width: 38%; }
}
/* Letters differ from machine to machine: a word gives way before the page does. */
@media screen and (max-width: 24rem) {
  th, td { overflow-wrap: anywhere; }
}
@page { margin: 14mm 15mm 16mm; }
@media print {
  :root { color-scheme: light; --ink: #000; --paper: #fff; --faint: #444; --line: #aaa; --mark: #000; --wash: #fff; --warn: #000; }
  :root { font-size: 9pt; }
  body { max-width: none; padding: 0; line-height: 1.35; }
  h1 { font-size: 19pt; }
  section { display: grid; grid-template-columns: 27mm minmax(0, 1fr); gap: 0 5mm; margin-top: 9pt; padding-top: 6pt; }
  .area { display: grid; grid-template-columns: minmax(0, 1fr) auto; }
  .area + .area { margin-top: 11pt; }
  .map { max-width: 46mm; }
  .holes td:nth-child(2) { width: 50%; }
  .legend { break-after: avoid; }
  th, td { padding-top: 1.5pt; padding-bottom: 1.5pt; }
  h3, caption { break-after: avoid; }
  section.short, .area.short, tr, li, .map, .verdict { break-inside: avoid; }
  thead { display: table-header-group; }
  p { orphans: 3; widows: 3; }
}
`;

/** At the foot of each printed page, so that the pages of one sheet are known to belong together. */
export function pageFoot(digest: string | undefined): Markup {
  const start = /^[0-9a-f]{16}/.exec(digest ?? '')?.[0];
  const left = start ? html`@bottom-left { content: "log ${start}"; }` : undefined;
  return html`@page { font: 7.5pt "Liberation Sans", Arial, Helvetica, sans-serif; ${left} @bottom-right { content: counter(page) " of " counter(pages); } }
`;
}
