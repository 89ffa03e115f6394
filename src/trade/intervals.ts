// When a service is next due: by date and by distance, whichever comes first. Usual intervals are common practice and may be
// replaced row by row; for a timing belt there is none but the maker's.
import { type Answer, absurd, figure, isRefused, refused } from './answer.ts';
import { addMonths, dateOf, readDate } from './calendar.ts';
import { chosenHere, cited, commonPractice } from './cited.ts';
import { dayNumber } from './civil-time.ts';
import { monthsPerYear } from './definitions.ts';
import { type DistanceUnit, distanceIn, kilometresOf } from './units.ts';

export type Distance = { distance: number; unit: DistanceUnit };
/** At least one of the two. */
export type Interval = { months?: number; distance?: Distance };
export type NextDue = {
  date?: string;
  /** In the unit of the odometer. */
  odometer?: Distance;
  /** "by 2029-05-01 or at 96000 mi, whichever first". */
  text: string;
};

const monthLimits = cited({ from: 1, to: 480 }, 'months', chosenHere);

/**
 * Next due after a service.
 * @param doneOn "2026-11-25" @param at the odometer then; its unit is the answer's
 * @returns date, distance or both, rounded down to whole km or miles. Refused: no interval at all, absurd figures, a distance
 * without the odometer's, no such date
 * Source: arithmetic; a day the month lacks becomes its last. Miles and kilometres NIST SP 811, exact.
 */
export function nextDue(doneOn: string, at: Distance | undefined, { months, distance }: Interval): Answer<NextDue> {
  const done = readDate(doneOn);
  if (isRefused(done)) return done;
  if (months === undefined && distance === undefined) return refused('an interval is months, a distance, or both');
  const wrong = months === undefined ? undefined : wholeMonths(months);
  if (wrong) return wrong;
  const odometer = distance && odometerDue(at, distance);
  if (odometer && isRefused(odometer)) return odometer;
  const date = months === undefined ? undefined : dateOf(addMonths(done, months));
  return { ...(date !== undefined && { date }), ...(odometer && { odometer }), text: textOf(date, odometer) };
}

const wholeMonths = (months: number) =>
  absurd('an interval of', months, monthLimits) ??
  (Number.isInteger(months) ? undefined : refused(`${figure(months)} months are no interval`));

function odometerDue(at: Distance | undefined, interval: Distance): Answer<Distance> {
  if (!at) return refused('a distance wants the odometer at which it begins');
  const began = kilometresOf(at.distance, at.unit);
  const length = kilometresOf(interval.distance, interval.unit);
  if (isRefused(began)) return began;
  if (isRefused(length)) return length;
  if (length === 0) return refused('an interval of no distance');
  // Exact where both are in one unit; else rounded down, so that nobody drives past it.
  const sum =
    at.unit === interval.unit ? at.distance + interval.distance : Math.floor(distanceIn(began + length, at.unit));
  return { distance: sum, unit: at.unit };
}

function textOf(date: string | undefined, odometer: Distance | undefined): string {
  const parts = [date && `by ${date}`, odometer && `at ${odometer.distance} ${odometer.unit}`].filter(Boolean);
  return parts.length === 2 ? `${parts.join(' or ')}, whichever first` : parts.join('');
}

export type DueNow = {
  /** What has come first; null while neither has. */
  by: 'date' | 'distance' | 'both' | null;
  daysLeft?: number;
  left?: Distance;
};

/** Whether it is due. @param today "2026-11-25" @param odometer as read now, in either unit. Refused: no such date, absurd distance. */
export function dueNow(due: Pick<NextDue, 'date' | 'odometer'>, today: string, odometer?: Distance): Answer<DueNow> {
  const now = readDate(today);
  if (isRefused(now)) return now;
  const by = due.date === undefined ? undefined : readDate(due.date);
  if (by && isRefused(by)) return by;
  const daysLeft = by && dayNumber(by) - dayNumber(now);
  const left = due.odometer && odometer && distanceLeft(due.odometer, odometer);
  if (left && isRefused(left)) return left;
  const [dated, driven] = [daysLeft !== undefined && daysLeft <= 0, left !== undefined && left.distance <= 0];
  return {
    by: dated && driven ? 'both' : dated ? 'date' : driven ? 'distance' : null,
    ...(daysLeft !== undefined && { daysLeft }),
    ...(left && { left }),
  };
}

function distanceLeft(due: Distance, read: Distance): Answer<Distance> {
  const kilometres = kilometresOf(read.distance, read.unit);
  if (isRefused(kilometres)) return kilometres;
  const here = due.unit === read.unit ? read.distance : distanceIn(kilometres, due.unit);
  return { distance: Math.floor(due.distance - here), unit: due.unit };
}

export type UsualInterval = Interval & { service: string; note: string };

/** What mechanics go by where no maker's sheet is at hand. A row of one's own replaces the row of its name. */
export const usualIntervals = cited<readonly UsualInterval[]>(
  [
    { service: 'coolant, plain', months: 36, distance: { distance: 36_000, unit: 'mi' }, note: 'cautious' },
    {
      service: 'coolant, long-life',
      months: 96,
      distance: { distance: 80_000, unit: 'mi' },
      note: 'cautious; the label says 10 years or 100 000 miles',
    },
    { service: 'dampers', distance: { distance: 60_000, unit: 'mi' }, note: 'about' },
    { service: 'brake fluid', months: 24, note: 'takes up water' },
  ],
  'months, miles',
  commonPractice,
);
const withoutDefault = /\b(timing|cam|toothed) ?belt\b/i;
/** A timing belt, by whatever name: only the maker's distance and years will do. */
export const isMakersAlone = (service: string): boolean => withoutDefault.test(service);

export type IntervalHeld = Interval & { service: string; source: string; note: string };

/** Every row that holds: one's own, and the usual ones none of them replaces. @param own rows by name, as edited */
export function intervalsHeld(own: Readonly<Record<string, Interval>> = {}): IntervalHeld[] {
  const mine = Object.entries(own).map(([service, row]) => ({ ...row, service, source: 'as entered', note: '' }));
  const isMine = ({ service }: UsualInterval) => mine.some((one) => plainName(one.service) === plainName(service));
  const { source, value } = usualIntervals;
  return [...mine, ...value.filter((row) => !isMine(row)).map((row) => ({ ...row, source }))];
}

export type IntervalFound = { interval: Interval; source: string; note: string };

/**
 * The interval of a service: one's own row first, else the usual one.
 * @param own rows by name, as edited
 * @returns refused: a timing belt without a row of its own (the maker's distance and years), a service without any
 * Source: common practice, no source.
 */
export function intervalFor(service: string, own: Readonly<Record<string, Interval>> = {}): Answer<IntervalFound> {
  const name = plainName(service);
  const mine = Object.entries(own).find(([key]) => plainName(key) === name)?.[1];
  if (mine) return { interval: mine, source: 'as entered', note: '' };
  if (isMakersAlone(name)) return refused(`${service}: no usual interval; the maker's distance and years`);
  const usual = usualIntervals.value.find((row) => plainName(row.service) === name);
  if (!usual) {
    const more = usualIntervals.value.filter((row) => plainName(row.service).startsWith(`${name} `));
    const which =
      more.length > 0 ? `say which: ${more.map((row) => `"${row.service}"`).join(', ')}` : "enter the maker's";
    return refused(`${service}: no interval known; ${which}`);
  }
  const { months, distance, note } = usual;
  return {
    interval: { ...(months !== undefined && { months }), ...(distance && { distance }) },
    source: usualIntervals.source,
    note,
  };
}

/** "Coolant, long-life" and "coolant long-life" are one service. */
const plainName = (service: string): string =>
  service
    .trim()
    .toLowerCase()
    .replace(/[,\s]+/g, ' ');

/** Whole years as months. */
export const months = (years: number): number => years * monthsPerYear.value;
