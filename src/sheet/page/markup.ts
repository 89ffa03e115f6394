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
export const escaped = (text: string): string =>
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

export const joined = (parts: readonly (Markup | string)[], between: Markup): Markup =>
  markup(parts.map(written).join(between.text));

/** A section with its heading, or nothing when it is empty. */
export function section(id: string, title: string, body: Markup | undefined): Markup | undefined {
  if (!body || body.text.trim() === '') return undefined;
  return html`<section aria-labelledby="${id}">
<h2 id="${id}">${title}</h2>
${body}</section>
`;
}

export const list = (points: readonly (Markup | string)[]): Markup | undefined =>
  points.length === 0
    ? undefined
    : html`<ul>
${points.map(
  (one) => html`<li>${one}</li>
`,
)}</ul>
`;

export function table(
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly (Markup | string)[])[],
): Markup | undefined {
  if (rows.length === 0) return undefined;
  return html`<table>
<caption>${caption}</caption>
<thead><tr>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
<tbody>
${rows.map(
  ([first, ...rest]) => html`<tr><th scope="row">${first}</th>${rest.map((cell) => html`<td>${cell}</td>`)}</tr>
`,
)}</tbody>
</table>
`;
}
