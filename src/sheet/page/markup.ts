// Markup of a page: whatever is put into it is text and stays text, unless it was made here. It knows no job.

declare const made: unique symbol;
/** Only `html` and `joined` make it. */
export type Markup = { readonly [made]: true; readonly text: string };
type Part = Markup | string | number | undefined | readonly (Markup | string | undefined)[];

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
  '`': '&#96;',
};
/** Also for an attribute's value in quotes. What no page may hold is shown as the sign for what can't be shown. */
const escaped = (text: string): string =>
  text
    .toWellFormed()
    .replace(/[\p{Cc}\p{Noncharacter_Code_Point}]/gu, '\u{fffd}')
    .replace(/[&<>"'`]/g, (character) => entities[character] as string);

const markup = (text: string): Markup => ({ text }) as Markup;
function written(part: Part): string {
  if (part === undefined) return '';
  if (typeof part === 'string') return escaped(part);
  if (typeof part === 'number') return String(part);
  return 'text' in part ? part.text : part.map(written).join('');
}

export const html = (texts: TemplateStringsArray, ...parts: readonly Part[]): Markup =>
  markup(texts.map((text, i) => `${text}${i < parts.length ? written(parts[i]) : ''}`).join(''));

/**
 * Text that runs on: no date is broken at a line's end, and a word too long for a column may be, so that no column of a
 * table has to be wide for a word's sake.
 */
export const flowing = (text: Markup | string): Markup =>
  typeof text !== 'string'
    ? text
    : joined(
        text
          .split(/(\d{4}-\d\d-\d\d(?: \d\d:\d\d)?)/)
          .map((one, i) => (i % 2 === 0 ? breakable(one) : html`<span class="t">${one}</span>`)),
        html``,
      );
const breakable = (text: string): Markup => joined(text.match(longestUnbroken) ?? [], html`<wbr>`);
/** The start of a long word, or everything up to one. */
const longestUnbroken = /[^\s]{12}(?=[^\s])|(?:(?![^\s]{13}).)+/gsu;

export const joined = (parts: readonly (Markup | string)[], between: Markup): Markup =>
  markup(parts.map(written).join(between.text));

/** A section with its heading, or nothing when it is empty. A short one is kept on one page of paper. */
export function section(id: string, title: string, body: Markup | undefined): Markup | undefined {
  if (!body || body.text.trim() === '') return undefined;
  const isShort = body.text.length < 2500;
  return html`<section aria-labelledby="${id}"${isShort ? html` class="short"` : undefined}>
<h2 id="${id}">${title}</h2>
<div>
${body}</div>
</section>
`;
}
export const critical = (is: boolean): Markup | undefined =>
  is ? html` <span class="tag">critical</span>` : undefined;

export const list = (points: readonly (Markup | string)[], how?: 'columns'): Markup | undefined =>
  points.length === 0
    ? undefined
    : html`<ul${how ? html` class="${how}"` : undefined}>
${points.map(
  (one) => html`<li>${flowing(one)}</li>
`,
)}</ul>
`;

export function table(
  caption: string | { label: string },
  heads: readonly (Markup | string)[],
  rows: readonly (readonly (Markup | string)[])[],
): Markup | undefined {
  if (rows.length === 0) return undefined;
  return html`${
    typeof caption === 'string'
      ? html`<table>
<caption>${caption}</caption>`
      : html`<table class="holes" aria-label="${caption.label}">`
  }
<thead><tr>${heads.map((head) => html`<th scope="col">${flowing(head)}</th>`)}</tr></thead>
<tbody>
${rows.map(
  ([
    first,
    ...rest
  ]) => html`<tr><th scope="row">${flowing(first ?? '')}</th>${rest.map((cell) => html`<td>${flowing(cell)}</td>`)}</tr>
`,
)}</tbody>
</table>
`;
}
