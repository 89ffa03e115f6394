// A fastener's spec in words: "bolt hex 10 M6x25 8.8 one-use". Reads as many words as belong to it.
import { coatings, fastenerKinds, makes, type Spec, specSchema, specText } from '../job/spec.ts';
import { isRefused } from '../trade/answer.ts';
import { readDesignation, readFastener } from '../trade/designation.ts';
import { readHead } from '../trade/heads.ts';
import { perhaps } from '../trade/perhaps.ts';
import type { Token } from './form.ts';

/** Head shapes in use on vehicles; the number after them is a size in mm or inches, except star, a size number. */
const headShapes = ['hex', 'hexkey', 'star', 'outer-star', 'twelve-point', 'triple-square', 'cross', 'slot'] as const;
const needNoSize = new Set(['cross', 'slot']);
const kinds: readonly string[] = fastenerKinds;
const shapes: readonly string[] = headShapes;
/** Property classes of ISO 898-1 (bolts) and ISO 898-2 (nuts), and of stainless steel in ISO 3506. */
const classText = /^(4\.6|4\.8|5\.6|5\.8|6\.8|8\.8|9\.8|10\.9|12\.9|A[24]-(50|70|80)|class(\d{1,2}))$/i;

/** Of a nut one figure alone, as it is stamped: ISO 898-2, from memory. */
const nutClass = /^(5|6|8|9|10|12)$/;

/** The spec in the first words and how many they are; `used` is 0 when the first word belongs to no spec. */
export function readSpec(words: readonly Token[]): { spec: Spec; used: number } {
  let spec: Spec = {};
  let used = 0;
  while (used < words.length) {
    const more = readWord(spec, words.slice(used));
    if (!more) break;
    // A coating comes beside how it is made in no entry: what tells more of it stays.
    const made = makes.includes(spec.coating ?? '') ? { coating: spec.coating } : {};
    spec = { ...spec, ...more.spec, ...made };
    used += more.used;
  }
  return { spec, used };
}

function readWord(sofar: Spec, words: readonly Token[]): { spec: Spec; used: number } | null {
  const word = words[0]?.text ?? '';
  const low = word.toLowerCase();
  const beforeItsKind = sofar.kind === undefined ? inFrontOfKind(low, words[1]) : undefined;
  if (beforeItsKind) return beforeItsKind;
  if (makes.includes(low)) return { spec: { coating: low }, used: 1 };
  if (kinds.includes(low) && sofar.kind === undefined) return { spec: { kind: low as Spec['kind'] }, used: 1 };
  if (shapes.includes(low)) return headIn(low, words);
  const sizeFirst = headSaidBehind(words);
  if (sizeFirst) return sizeFirst;
  if (low === 'one-use' || low === 'stretch') return { spec: { oneUse: true }, used: 1 };
  if (coatings.includes(low)) return { spec: { coating: low }, used: 1 };
  if (low === 'coated') return readCoating(words[1]);
  if (low === 'shouldered') return { spec: { shouldered: true }, used: 1 };
  if (classText.test(word)) return { spec: { class: word.replace(/^class/i, '') }, used: 1 };
  if (sofar.kind === 'nut' && sofar.thread && !sofar.class && nutClass.test(word))
    return { spec: { class: word }, used: 1 };
  const length = /^x(\d+(?:\.\d+)?)(?:mm)?$/.exec(low);
  if (length) return { spec: { lengthMm: Number(length[1]) }, used: 1 };
  const designation = readDesignation(word);
  return designation ? { spec: designation, used: 1 } : null;
}

/** Said by the trade in front of a kind, and what it says of one; what says only where it goes is in no spec. Common practice, no source. */
const saidBefore: Readonly<Record<string, Spec>> = {
  shoulder: { shouldered: true },
  flange: { coating: 'flanged' },
  lock: { coating: 'locking' },
  'self-locking': { coating: 'locking', oneUse: true },
  crush: { oneUse: true },
  split: { oneUse: true },
  cap: {},
  wheel: {},
  lug: {},
  hub: {},
  axle: {},
  drain: {},
  sump: {},
  spark: {},
  hose: {},
  pipe: {},
  cylinder: {},
};
/** Of two kinds the first says what it is: a stud bolt is a stud, the nut of a union its union. */
const firstOfTwo: ReadonlySet<string> = new Set(['stud', 'union', 'bleeder']);
function inFrontOfKind(low: string, next: Token | undefined): { spec: Spec; used: number } | undefined {
  const kind = next?.text.toLowerCase() ?? '';
  if (!kinds.includes(kind) || next?.quoted) return undefined;
  if (firstOfTwo.has(low)) return { spec: { kind: low as Spec['kind'] }, used: 2 };
  const said = makes.includes(low) ? { coating: low } : saidBefore[low];
  return said && { spec: { ...said, kind: kind as Spec['kind'] }, used: 2 };
}

function headIn(shape: string, words: readonly Token[]): { spec: Spec; used: number } | null {
  const number = words[1] === undefined ? Number.NaN : Number(words[1].text);
  // "hex 1 1/4" is one size; "hex 13 5/16-18" is a size and a thread.
  const inches = inchHead(shape, words, 2) ?? inchHead(shape, words, 1);
  if (inches) return inches;
  if (number > 0 && number < 100) return { spec: { head: `${shape} ${number}` }, used: 2 };
  return needNoSize.has(shape) ? { spec: { head: shape }, used: 1 } : null;
}
/** "7/16 hex", "10 hex M6": the size goes before the shape, where none goes behind it. */
function headSaidBehind([size, shape, after]: readonly Token[]): { spec: Spec; used: number } | null {
  const low = shape?.text.toLowerCase() ?? '';
  const isSize = (word: Token | undefined) => /^\d{1,2}(?:\/\d{1,2})?$/.test(word?.text ?? '');
  if (!size || !shape || !shapes.includes(low) || !isSize(size) || isSize(after)) return null;
  return headIn(low, [shape, size]);
}
/** A fraction of an inch, said with its unit or without. */
function inchHead(shape: string, words: readonly Token[], size: number): { spec: Spec; used: number } | null {
  const said = words.slice(1, 1 + size).map(({ text }) => text);
  const fraction = said.join(' ').replace(/in\.?$/i, '');
  if (said.length < size || !/^(\d )?\d{1,2}\/\d{1,2}$/.test(fraction) || isRefused(readHead(`${shape} ${fraction}`)))
    return null;
  const unit = /^in\.?$/i.test(words[1 + size]?.text ?? '') ? 1 : 0;
  return { spec: { head: `${shape} ${fraction}` }, used: 1 + size + unit };
}

const vocabulary: readonly string[] = [
  ...kinds,
  ...shapes,
  ...coatings,
  ...makes,
  ...['coated', 'one-use', 'stretch', 'shouldered'],
];
/** Why the first of these words is none of a fastener, where another was meant. */
export function specTrouble([first, second]: readonly Token[]): string {
  const word = first?.text ?? '';
  const low = word.toLowerCase();
  if (shapes.includes(low))
    return `"${second?.text ?? ''}" after "${low}" is no size of a head, as in ${low} 13 or ${low} 1/2`.replace(
      '"" after',
      'nothing after',
    );
  if (/^\d+(\.\d+)?$/.test(low)) return `"${word}" is a head with its shape, as hex ${word}, or a length as x${word}`;
  const read = /^m\d/.test(low) ? readFastener(word) : undefined;
  if (read && isRefused(read)) return read.refused;
  const meant = perhaps(low, vocabulary);
  const kind = second?.text.toLowerCase() ?? '';
  if (meant === '' && kinds.includes(kind)) return `"${word}" is no word of a fastener: say "${kind}" without it`;
  return `"${word}" is no word of a fastener${meant === '' ? `, which is a ${kinds.join(', ')}` : meant}`;
}

/** Any other coating, in one word: "coated bronze". */
function readCoating(word: Token | undefined): { spec: Spec; used: number } | null {
  const coating = specSchema.shape.coating.safeParse(word?.text.toLowerCase());
  return coating.success && coating.data !== undefined ? { spec: { coating: coating.data }, used: 2 } : null;
}

export const specWords = (spec: Spec): string =>
  spec.thread === undefined && spec.lengthMm !== undefined
    ? specText({ ...spec, lengthMm: undefined })
        .replace('unknown', '')
        .trim()
        .concat(` x${spec.lengthMm}`)
        .trim()
    : specText(spec);
