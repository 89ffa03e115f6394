// Designations as people write them: "M8x1.25x30 8.8", "M8", "M6×25", "5/16-18 x 1". `readDesignation` takes one word of
// a call and judges no size; `readFastener` takes the whole of it and says what is wrong with nonsense.
import { type Answer, absurd, isRefused, refused } from './answer.ts';
import { chosenHere, cited, commonPractice } from './cited.ts';
import { millimetresPerInch, thousand } from './definitions.ts';
import { type Thread, threadNamed } from './threads.ts';

export type Designation = { thread: string; lengthMm?: number };

/** No metric thread in use on vehicles has a coarser pitch. */
const coarsestPitchMm = cited(6, 'mm', 'ISO 261:1998, table 2: M64 x 6 is the coarsest').value;
/** A lone second number below it is a pitch, as is one with a fraction. */
const shortestLengthMm = cited(3, 'mm', commonPractice).value;
const lengthLimits = cited({ from: 2, to: 1000 }, 'mm', chosenHere);
/** As fine as a rule is divided. */
const inchParts = cited(32, 'parts of an inch', commonPractice).value;

/**
 * Reads a designation.
 * @param text one word; "x", "X", "*" and "×" separate
 * @returns the thread as this program writes it ("M10x1.25", "5/16-18") and the length in mm, if given; null when the
 * text is no designation. A lone second number is a pitch when it has a fraction or is under 3 (M10x1, M10x1.25), else
 * a length (M6x25). Behind an inch thread the length is in inches, over 12 in mm, as it is where it says so.
 */
export function readDesignation(text: string): Designation | null {
  const plain = text.replace(/[×*X]/g, 'x').replace(/,/g, '.');
  const metric = /^[mM](\d{1,2}(?:\.\d)?)(?:x(\d+(?:\.\d+)?))?(?:x(\d+(?:\.\d+)?))?$/.exec(plain);
  if (metric) return readMetric(metric[1] as string, metric[2], metric[3]);
  const inch = /^(#\d{1,2}|\d+\/\d+|\d)-(\d{1,2})(?:x(\d+(?:\.\d+)?)(mm)?)?$/.exec(plain);
  if (!inch) return null;
  const length = Number(inch[3]);
  const lengthMm = inch[3] === undefined ? undefined : inch[4] === undefined ? inchOrMm(length) : length;
  return { thread: `${inch[1]}-${inch[2]}`, ...(lengthMm !== undefined && { lengthMm }) };
}

/** Nothing of a car is held by a bolt of a foot: so large a number behind an inch thread is millimetres. */
const longestInches = cited(12, 'in', commonPractice).value;
const inchOrMm = (length: number): number => (length > longestInches ? length : fromInches(length));

function readMetric(diameter: string, second?: string, third?: string): Designation | null {
  const thread = `M${Number(diameter)}`;
  if (Number(diameter) === 0) return null;
  if (third !== undefined) {
    const lengthMm = Number(third);
    return Number(second) <= coarsestPitchMm && lengthMm > 0
      ? { thread: `${thread}x${Number(second)}`, lengthMm }
      : null;
  }
  if (second === undefined) return { thread };
  if (Number(second) <= 0) return null;
  return isPitch(second) ? { thread: `${thread}x${Number(second)}` } : { thread, lengthMm: Number(second) };
}

const isPitch = (second: string): boolean =>
  Number(second) < shortestLengthMm || (second.includes('.') && Number(second) <= coarsestPitchMm);

export type FastenerDesignation = { thread: Thread; lengthMm?: number; class?: string };

/** ISO 898-1 classes, nuts' single figures, stainless steel of ISO 3506, grades of SAE J429. */
const classText =
  /^(.*?)[\s-]+(?:class |cl\.? ?|grade |gr\.? ?)?(4\.6|4\.8|5\.6|5\.8|6\.8|8\.8|9\.8|10\.9|12\.9|A[24]-(?:50|70|80)|(?<=class |cl\.? ?|grade |gr\.? ?)(?:2|5|6|8|9|10|12))$/i;

/**
 * Reads a whole designation: thread, length, property class.
 * @param text "M8x1.25x30 8.8", "M8 x 30 - 10.9", "M8-1.25x30", "5/16-18 x 1 1/2 grade 5", "No.10-32 UNF x 3/4"
 * @returns thread, length in mm and class, as far as said; refused in one line: no such thread, a length that is none,
 * length and pitch exchanged, words that are no designation
 * Source: ISO 965-1:2013, clause 5, and ASME B1.1-2003, section 6, written as loosely as they are written.
 */
export function readFastener(text: string): Answer<FastenerDesignation> {
  const said = text.trim().replace(/\s+/g, ' ');
  const withClass = classText.exec(said.replace(/,/g, '.'));
  const grade = withClass?.[2]?.toUpperCase();
  const plain = (withClass?.[1] ?? said).replace(/[×*X]/g, 'x').replace(/,/g, '.').replace(/ ?x ?/g, 'x').trim();
  const read = /^m/i.test(plain) ? readMetricFastener(plain) : readInchFastener(plain);
  if (isRefused(read)) return read;
  const wrong = read.lengthMm === undefined ? undefined : absurd('a length of', read.lengthMm, lengthLimits);
  return wrong ?? { ...read, ...(grade !== undefined && { class: grade }) };
}

function readMetricFastener(plain: string): Answer<FastenerDesignation> {
  const parts = /^m ?(\d+(?:\.\d+)?)(?:[x-](\d+(?:\.\d+)?))?(?:x(\d+(?:\.\d+)?))?(?: ?mm)?$/i.exec(plain);
  if (!parts) return refused(`"${plain}" is no designation: write M8x1.25x30, M8x30 or M8, and the class after it`);
  const [, size, second, third] = parts as unknown as [string, string, string?, string?];
  const pitch = second !== undefined && (third !== undefined || isPitch(second)) ? second : undefined;
  const length = third ?? (pitch === undefined ? second : undefined);
  if (pitch !== undefined && Number(pitch) > coarsestPitchMm) {
    const turned = length !== undefined && Number(length) <= coarsestPitchMm;
    return refused(
      turned
        ? `M${size}x${pitch}x${length}: pitch before length, M${size}x${length}x${pitch}`
        : `M${size}x${pitch}x${length ?? ''}: no thread has a pitch of ${pitch} mm`,
    );
  }
  const thread = threadNamed(`M${size}${pitch === undefined ? '' : `x${pitch}`}`);
  if (isRefused(thread)) return thread;
  return { thread, ...(length !== undefined && { lengthMm: Number(length) }) };
}

function readInchFastener(plain: string): Answer<FastenerDesignation> {
  const [named, length, ...more] = plain.split('x') as [string, ...string[]];
  if (more.length > 0) return refused(`"${plain}" is no designation: write 5/16-18 x 1, and the grade after it`);
  const thread = threadNamed(named);
  if (isRefused(thread)) return thread;
  if (length === undefined) return { thread };
  const lengthMm = readInchLength(length);
  return lengthMm === undefined
    ? refused(`"${length}" is no length in inches: write 1, 3/4, 1 1/2 or 1.5`)
    : { thread, lengthMm };
}

/** "1", "3/4", "1 1/2", "1-1/2", "1.5", with "in" or a double stroke after it; "25 mm" too. */
function readInchLength(written: string): number | undefined {
  const metric = /^(\d+(?:\.\d+)?) ?mm$/.exec(written);
  if (metric) return Number(metric[1]);
  const parts = /^(\d+(?:\.\d+)?)?(?:(?:^|[ -])(\d+)\/(\d+))? ?(?:in\.?|")?$/.exec(written);
  if (!parts || (parts[1] === undefined && parts[2] === undefined)) return undefined;
  const part = parts[2] === undefined ? 0 : Number(parts[2]) / Number(parts[3]);
  return fromInches(Number(parts[1] ?? 0) + part);
}
function fromInches(inches: number): number {
  const finest = thousand.value ** 2;
  return Math.round(inches * millimetresPerInch.value * finest) / finest;
}

/** "M8x30 8.8", "M10x1.25x60 10.9", "5/16-18 x 1 1/2": coarse metric pitches are not written. */
export function printFastener({ thread, lengthMm, class: grade }: FastenerDesignation): string {
  const length = lengthMm === undefined ? '' : thread.system === 'metric' ? `x${lengthMm}` : ` x ${inchText(lengthMm)}`;
  return `${thread.name}${length}${grade === undefined ? '' : ` ${grade}`}`;
}

/** Whole inches and a fraction, to the 32nd; millimetres where it is none. */
export function inchText(lengthMm: number): string {
  const parts = (lengthMm / millimetresPerInch.value) * inchParts;
  if (Math.abs(parts - Math.round(parts)) > 1 / inchParts) return `${lengthMm} mm`;
  const whole = Math.floor(Math.round(parts) / inchParts);
  let top = Math.round(parts) % inchParts;
  let bottom = inchParts;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return String(whole);
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}
