// Services, sealant and its cure, check rotations, fluids and parts on the page; order overridden, the time at the bench
// and the log.
import type { Copy } from '../area-text.ts';
import type { BenchDay } from '../bench-time.ts';
import type { SheetFacts } from '../facts.ts';
import { boughtAs, goodsPoints, oldText } from '../goods-text.ts';
import { logPoints, outOfOrderForOwner, overridePlace, serviceText, struckText } from '../points.ts';
import { conditionsOf, driveText, earlierBeads, endText, laidText, tryText } from '../proof-text.ts';
import { by, minutesText, timeText } from '../words.ts';
import { flowing, html, joined, list, type Markup, table } from './markup.ts';

export const servicesMarkup = ({ services }: SheetFacts): Markup | undefined =>
  list(
    services.map((s) =>
      s.state === 'ordered' ? html`<strong class="warn">${serviceText(s)}</strong>` : serviceText(s),
    ),
  );

export const sealantMarkup = ({ faces }: SheetFacts): Markup | undefined =>
  html`${table(
    'each bead on its face',
    ['face', 'bead', 'conditions', 'cure'],
    faces.flatMap(({ beads }) =>
      beads.map((bead) => [
        bead.face,
        laidText(bead),
        joined(conditionsOf(bead).map(flowing), html`<br>`),
        endText(bead),
      ]),
    ),
  )}${list(faces.flatMap(earlierBeads))}`;

export const rotationMarkup = ({ drives }: SheetFacts): Markup =>
  html`${drives.map(
    (d) => html`<h3>${driveText(d)}</h3>
${list(d.tries.map((t, i) => tryText(t, i + 1)))}`,
  )}`;

export function partsMarkup(facts: SheetFacts, copy: Copy): Markup {
  const rows = facts.parts.renewed.map((p) => {
    const from = boughtAs(p);
    return [p.part, `${from && `${from}, `}${timeText(p)}`, oldText(p.old, copy)] as const;
  });
  // A column with nothing in it would say that nobody knows.
  const told = rows.some(([, , old]) => old !== '');
  const caption = told ? 'new parts, and what became of the old ones' : 'new parts';
  const heads = ['part', 'fitted', ...(told ? ['old part'] : [])];
  return html`${table(
    caption,
    heads,
    rows.map((row) => row.slice(0, heads.length)),
  )}${list(goodsPoints(facts))}`;
}

/** O5 */
export const orderMarkup = (facts: SheetFacts, copy: Copy): Markup | undefined =>
  copy === 'owner'
    ? list(outOfOrderForOwner(facts))
    : table(
        'order overridden, with the reason',
        ['place', 'rule', 'because', 'when'],
        facts.overrides.map((o) => [overridePlace(o), o.rule, o.because, `${timeText(o)}${by(o.who)}, line ${o.n}`]),
      );

export const benchTimeMarkup = (days: readonly BenchDay[]): Markup | undefined =>
  table(
    'while the program ran, breaks of more than half an hour left out',
    ['day', 'time', 'calls'],
    days.map(({ day, minutes, calls }) => [day, minutesText(minutes), String(calls)]),
  );

export function logMarkup(facts: SheetFacts, copy: Copy): Markup {
  const { lines } = facts.log;
  const points = list([
    html`<span id="log-lines">${lines}</span> ${lines === 1 ? 'line' : 'lines'}, ${struckText(facts)}`,
    ...logPoints(facts, copy),
  ]);
  return html`${points}${
    facts.digest
      ? html`<p>Log digest <code id="log-digest">${facts.digest}</code></p>
<p class="faint">It shows whether the log was altered since; it is no signature.</p>
`
      : undefined
  }`;
}
