// How the page looks: on a screen light or dark, on a phone, and on A4 or Letter paper, always black on white there.
// Colour is never alone; what stands out does so by words, weight and lines as well.
import { html, type Markup } from './markup.ts';

export const style: Markup = html`
:root { color-scheme: light dark; --ink: #1a1a1a; --paper: #fff; --faint: #595959; --line: #b3b3b3; --wash: #f2f2f0; --warn: #8f1d00; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #ececec; --paper: #161616; --faint: #b0b0b0; --line: #5c5c5c; --wash: #242424; --warn: #ff9d80; }
}
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1rem; max-width: 60rem; color: var(--ink); background: var(--paper);
  font: 1rem/1.45 "Liberation Sans", Arial, Helvetica, sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 1.6rem; margin: 0; }
h2 { font-size: 1.15rem; margin: 1.6rem 0 .4rem; border-bottom: 2px solid var(--ink); }
h3 { font-size: 1rem; margin: 1rem 0 .3rem; }
p, ul, dl { margin: .3rem 0; }
ul { padding-left: 1.2rem; }
.whose, .faint, caption, figcaption { color: var(--faint); font-size: .9rem; }
.verdict { font-weight: bold; border: 2px solid; padding: .5rem .7rem; margin: .7rem 0; }
.warn { color: var(--warn); }
.caution { border-left: .35rem solid var(--warn); padding: .3rem .7rem; margin: .4rem 0; background: var(--wash); }
dl { display: grid; grid-template-columns: max-content minmax(0, 1fr); gap: .1rem 1rem; }
dt { color: var(--faint); }
dd { margin: 0; }
table { width: 100%; border-collapse: collapse; margin: .3rem 0 .6rem; }
caption { text-align: left; }
th, td { text-align: left; vertical-align: top; padding: .2rem .5rem .2rem 0; border-bottom: 1px solid var(--line); font-weight: normal; }
thead th { color: var(--faint); font-size: .9rem; }
tbody th { font-weight: bold; }
.area { display: grid; grid-template-columns: minmax(0, 1fr) 15rem; gap: 0 1.2rem; align-items: start; }
.area > .all { grid-column: 1 / -1; }
figure { margin: .3rem 0; }
svg { display: block; width: 100%; max-height: 15rem; }
svg .outline { fill: var(--wash); stroke: var(--line); }
svg .hole { fill: var(--paper); stroke: var(--ink); }
svg .open { stroke: var(--warn); }
svg text { fill: var(--ink); text-anchor: middle; dominant-baseline: central; }
code { font: .85em/1.3 "Liberation Mono", monospace; }
@media (max-width: 40rem) {
  body { padding: .7rem; }
  .area { display: block; }
  figure { max-width: 18rem; }
  dl { grid-template-columns: minmax(0, 1fr); gap: 0; }
  dd { margin-bottom: .3rem; }
}
@page { margin: 13mm 14mm; }
@media print {
  :root { color-scheme: light; --ink: #000; --paper: #fff; --faint: #444; --line: #999; --wash: #fff; --warn: #000; }
  body { max-width: none; padding: 0; font-size: 9pt; line-height: 1.3; }
  h1 { font-size: 15pt; }
  h2 { font-size: 11pt; margin-top: 10pt; }
  .area { display: grid; grid-template-columns: minmax(0, 1fr) 50mm; }
  svg { max-height: 42mm; }
  h2, h3, caption { break-after: avoid; }
  tr, li, figure, .caution, .verdict { break-inside: avoid; }
  thead { display: table-header-group; }
}
`;
