// One thread: read from its name, printed, and its diameters and areas. Metric threads and unified inch threads share
// their profile, 60°; what an inch thread differs in is said where it does.
import { type Answer, isRefused, refused } from './answer.ts';
import { cited } from './cited.ts';
import { millimetresPerInch } from './definitions.ts';
import { metricPitches, unifiedThreads } from './thread-series.ts';

export type Thread = {
  /** As this program writes it: "M8" (coarse), "M10x1.25", "5/16-18". */
  readonly name: string;
  readonly system: 'metric' | 'inch';
  readonly series: 'coarse' | 'fine';
  readonly majorMm: number;
  readonly pitchMm: number;
};

const metricThread = (size: number, pitchMm: number, coarse: boolean): Thread => ({
  name: coarse ? `M${size}` : `M${size}x${pitchMm}`,
  system: 'metric',
  series: coarse ? 'coarse' : 'fine',
  majorMm: size,
  pitchMm,
});
const inchThread = (size: string, inches: number, perInch: number, coarse: boolean): Thread => ({
  name: `${size}-${perInch}`,
  system: 'inch',
  series: coarse ? 'coarse' : 'fine',
  majorMm: inches * millimetresPerInch.value,
  pitchMm: millimetresPerInch.value / perInch,
});

/** Every thread of the tables, by rising diameter. Sources: ISO 261:1998, table 2; ASME B1.1-2003, table 1. */
export const everyThread: readonly Thread[] = Object.freeze(
  [
    ...Object.entries(metricPitches.value).flatMap(([size, pitches]) =>
      pitches.flatMap((pitchMm, at) => (pitchMm === null ? [] : [metricThread(Number(size), pitchMm, at === 0)])),
    ),
    ...Object.entries(unifiedThreads.value).flatMap(([size, { inches, unc, unf }]) => [
      inchThread(size, inches, unc, true),
      inchThread(size, inches, unf, false),
    ]),
  ].sort((a, b) => a.majorMm - b.majorMm || b.pitchMm - a.pitchMm),
);

const byName: ReadonlyMap<string, Thread> = new Map(everyThread.map((thread) => [thread.name, thread]));

/**
 * The thread of that name: "M8", "M8x1.25", "m10 × 1,25", "5/16-18", "No.10-32", "3/8 UNF".
 * @returns the thread; refused when it is no designation, or there is no such thread between M3 and M24, No.6 and 3/4 in
 * Sources: ISO 261:1998, table 2; ASME B1.1-2003, table 1.
 */
export function threadNamed(written: string): Answer<Thread> {
  const before = asWritten.get(written);
  if (before) return before;
  const thread = threadRead(written);
  asWritten.set(written, thread);
  return thread;
}
/** A job writes few threads, and each of them thousands of times. */
const asWritten = new Map<string, Answer<Thread>>();

function threadRead(written: string): Answer<Thread> {
  const plain = written
    .trim()
    .replace(/[×*X]/g, 'x')
    .replace(/,/g, '.')
    .replace(/\s*x\s*/g, 'x');
  const metric = /^m ?(\d{1,3}(?:\.\d)?)(?:[x-](\d{1,2}(?:\.\d{1,3})?))?$/i.exec(plain);
  if (metric) return metricNamed(Number(metric[1]), metric[2] === undefined ? undefined : Number(metric[2]));
  const inch = /^(?:(?:#|no\.? ?)(\d{1,2})|(\d{1,2}\/\d{1,2}))(?:-(\d{1,2}))? ?(unc|unf)?$/i.exec(plain);
  if (!inch) return refused(`"${written.trim()}" is no thread: write M8, M10x1.25 or 5/16-18`);
  const size = inch[1] === undefined ? (inch[2] as string) : `#${Number(inch[1])}`;
  return inchNamed(size, inch[3] === undefined ? undefined : Number(inch[3]), inch[4]?.toLowerCase());
}

/** Whether a name that is no thread has at least a diameter of the tables: M10x1.35 has, a pipe thread or M27 has not. */
export function hasListedDiameter(written: string): boolean {
  const metric = /^m ?(\d{1,3}(?:\.\d)?)(?![\d.])/i.exec(written.trim());
  if (metric) return Object.hasOwn(metricPitches.value, String(Number(metric[1])));
  const inch = /^(?:(?:#|no\.? ?)(\d{1,2})|(\d{1,2}\/\d{1,2}))-/i.exec(written.trim());
  return (
    inch !== null &&
    Object.hasOwn(unifiedThreads.value, inch[1] === undefined ? (inch[2] as string) : `#${Number(inch[1])}`)
  );
}

/** M8 and M8x1.25 are one thread; what can't be read is compared as written. */
export function isSameThread(one: string, other: string): boolean {
  return one === other || nameOfThread(one) === nameOfThread(other);
}
/** The name by which a thread is compared. */
export function nameOfThread(written: string): string {
  const thread = threadNamed(written);
  return isRefused(thread) ? written : thread.name;
}

function metricNamed(size: number, pitchMm: number | undefined): Answer<Thread> {
  const pitches = metricPitches.value[String(size)];
  if (!pitches) return refused(`there is no M${size} among the metric threads from M3 to M24 (ISO 261)`);
  const wanted = pitchMm ?? pitches[0];
  if (wanted === null) return refused(`M${size} has no coarse pitch: say M${size}x${pitches[1]} or another (ISO 261)`);
  const thread = byName.get(`M${size}x${wanted}`) ?? (wanted === pitches[0] ? byName.get(`M${size}`) : undefined);
  const there = pitches.filter((pitch) => pitch !== null).join(', ');
  return thread ?? refused(`there is no M${size}x${wanted}: the pitches of M${size} are ${there} (ISO 261)`);
}

function inchNamed(size: string, perInch: number | undefined, series: string | undefined): Answer<Thread> {
  const known = Object.hasOwn(unifiedThreads.value, size) ? unifiedThreads.value[size] : undefined;
  if (!known) return refused(`there is no ${size} among the inch threads from No.6 to 3/4 (ASME B1.1)`);
  const { unc, unf } = known;
  if (perInch === undefined && series === undefined) {
    return refused(`${size} alone is no thread: ${size}-${unc} (coarse) or ${size}-${unf} (fine)`);
  }
  const ofSeries = series === undefined ? undefined : series === 'unc' ? unc : unf;
  if (perInch !== undefined && ofSeries !== undefined && perInch !== ofSeries) {
    return refused(`${size}-${perInch} is not ${series?.toUpperCase()}: that is ${size}-${ofSeries}`);
  }
  const thread = byName.get(`${size}-${perInch ?? ofSeries}`);
  return thread ?? refused(`there is no ${size}-${perInch}: ${size}-${unc} or ${size}-${unf} (ASME B1.1)`);
}

/** Parts of the pitch by which each diameter is less than the nominal one. */
const lessByPitches = cited(
  { pitch: 0.649519, minor: 1.082532, root: 1.226869 },
  'pitches',
  'ISO 68-1:1998 and ISO 724:1993, clause 4 (3/8, 5/8 and 17/24 of the triangle, twice)',
);
/** Parts of the pitch by which the diameter of the stress area is less than the nominal one. */
const stressByPitches = cited(
  { metric: 0.9381943, inch: 0.9743 },
  'pitches',
  'ISO 898-1:2013, 9.1.6.1; ASME B1.1-2003, appendix B (for steels up to 180 000 psi)',
);

type Profile = Pick<Thread, 'majorMm' | 'pitchMm'>;
/** d2, in mm, of bolt and nut alike. Source: ISO 724:1993; the same profile in ASME B1.1. */
export const pitchDiameterMm = ({ majorMm, pitchMm }: Profile): number => majorMm - lessByPitches.value.pitch * pitchMm;
/** D1, in mm: the bore of the nut thread. Source: ISO 724:1993; the same profile in ASME B1.1. */
export const minorDiameterMm = ({ majorMm, pitchMm }: Profile): number => majorMm - lessByPitches.value.minor * pitchMm;
/** d3, in mm: the core of the bolt, root rounded as by ISO 68-1. Metric bolts; an inch bolt's root is a little larger. */
export const rootDiameterMm = ({ majorMm, pitchMm }: Profile): number => majorMm - lessByPitches.value.root * pitchMm;

/**
 * Nominal stress area.
 * @returns mm². Rounded to three figures it is what ISO 898-1 prints
 * Source: ISO 898-1:2013, 9.1.6.1; inch threads ASME B1.1-2003, appendix B.
 */
export function stressAreaMm2({ majorMm, pitchMm, system }: Thread): number {
  const diameterMm = majorMm - stressByPitches.value[system] * pitchMm;
  return Math.PI * (diameterMm / 2) ** 2;
}

/** In inches, where a table is. */
export const inInches = (millimetres: number): number => millimetres / millimetresPerInch.value;
