// Text as it may reach a screen: no control characters, no escape sequences, no turned reading direction, no endless
// length. It judges no meaning, and what it returns it returns unchanged a second time.

import { chosenHere, cited } from './cited.ts';

const codes = cited(
  { esc: 0x1b, csi: 0x9b, openers: [0x90, 0x98, 0x9d, 0x9e, 0x9f], closers: [0x07, 0x9c] },
  'character codes',
  'ECMA-48, 5th edition 1991, 5.2, 5.3 and 5.6',
).value;
const esc = String.fromCharCode(codes.esc);
const csi = String.fromCharCode(codes.csi);
const stringOpeners = String.fromCharCode(...codes.openers);
const stringClosers = String.fromCharCode(...codes.closers);

// The bodies exclude every control character, so that no run of openers can make the search slow.
// Source of the grammar: ECMA-48, 5th edition 1991, 5.3 to 5.6 and 8.3.
const sequences = new RegExp(
  [
    `(?:${esc}\\[|${csi})[0-?]*[ -/]*[@-~]`,
    `(?:${esc}[PX\\]^_]|[${stringOpeners}])[^\\p{Cc}]*(?:[${stringClosers}]|${esc}\\\\)`,
    `${esc}[ -/]*[0-~]`,
  ].join('|'),
  'gu',
);
const breaks = /\r\n|[\t\n\v\f\r\u{85}\u{2028}\u{2029}]/gu;
// Direction overrides and isolates, marks nobody can see, and tag characters.
const unseen =
  /[\p{Cc}\u{61C}\u{200B}\u{200E}\u{200F}\u{202A}-\u{202E}\u{2060}-\u{206F}\u{FEFF}\u{FFF9}-\u{FFFB}\u{E0000}-\u{E007F}]/gu;

/** One look is enough for nearly every text; a job of 20,000 lines has half a million. */
const suspicious =
  /[\p{Cc}\p{Cs}\u{61C}\u{200B}\u{200E}\u{200F}\u{2028}-\u{202E}\u{2060}-\u{206F}\u{FEFF}\u{FFF9}-\u{FFFB}\u{E0000}-\u{E007F}]/u;

/** The longest text kept anywhere; each field's own limit is far below it. */
export const longestText: number = cited(4000, 'characters', chosenHere).value;

/** `text` without what could steer a terminal; line breaks and tabs become spaces. At most `max` characters. */
export function plainText(text: string, max: number = longestText): string {
  if (text.length <= max && !suspicious.test(text)) return text;
  const plain = text.toWellFormed().replace(sequences, '').replace(breaks, ' ').replace(unseen, '');
  if (plain.length <= max) return plain;
  return [...plain].slice(0, max).join('');
}

/** The same for every text inside a JSON value, names of fields too. Returns `value` itself where nothing changes;
 * what lies deeper than anything kept does is left out. */
export function plainDeep<T>(value: T): T {
  return cleaned(value, 0) as T;
}

/** Whether a JSON text says nothing that `plainDeep` would change; a text with escapes may say anything. */
export const isPlainJson = (json: string): boolean =>
  json.length <= longestText && !json.includes('\\') && !suspicious.test(json);

/** Nothing that is kept lies as deep; what does was made to exhaust whoever reads it. */
const deepest: number = cited(100, 'levels', chosenHere).value;

function cleaned(value: unknown, depth: number): unknown {
  if (typeof value === 'string') return plainText(value);
  if (value === null || typeof value !== 'object') return value;
  if (depth > deepest) return null;
  if (Array.isArray(value)) {
    const each = value.map((one) => cleaned(one, depth + 1));
    return each.every((v, i) => v === value[i]) ? value : each;
  }
  const fields = Object.entries(value);
  const each = fields.map(([name, v]) => [plainText(name), cleaned(v, depth + 1)] as const);
  return each.every(([name, v], i) => name === fields[i]?.[0] && v === fields[i]?.[1])
    ? value
    : Object.fromEntries(each);
}

/** A page made plain line by line, however long. */
export const plainLines = (page: string): string =>
  page
    .split('\n')
    // A table's lines end in CR LF, which steers nothing.
    .map((line) => (line.endsWith('\r') ? `${plainLine(line.slice(0, -1))}\r` : plainLine(line)))
    .join('\n');
const plainLine = (line: string): string => plainText(line, Number.POSITIVE_INFINITY);
