// What a date on a part says of its age: a code or marking as typed, read in every way it can be meant. A part cannot have
// been fitted before it was made, and how long it lay on a shelf nobody knows.
import { type Answer, isRefused, refused } from './answer.ts';
import {
  addDays,
  dateOf,
  earlier,
  lastOfMonth,
  later,
  mondayOfIsoWeek,
  readDate,
  soundDate,
  sundayOfFullWeek,
} from './calendar.ts';
import { cited, commonPractice } from './cited.ts';
import type { CivilDate } from './civil-time.ts';
import { daysPerWeek, hundred, monthsPerYear } from './definitions.ts';

export type Reading = { as: string; from: string; to: string };
export type Made = {
  /** Made no earlier: the earliest date it can have been fitted. */
  earliest: string;
  /** Made no later. */
  latest: string;
  /** Every way the marking can be read, the likelier first. */
  readings: Reading[];
};

/** No part still on a vehicle is older than that. */
const oldestYears = cited(40, 'years', commonPractice).value;

type Span = { as: string; from: CivilDate; to: CivilDate };
/** The marking, and the figures in it as far as the form has them. */
type Figures = readonly [whole: string, first: string, second: string, third: string];
type Ask = (figures: Figures, today: CivilDate) => (Span | undefined)[];

/** In which forms a marking is looked for; the first that fits is taken, with all its readings. */
const forms: readonly [RegExp, Ask][] = [
  [/^(\d{4})-(\d{2})-(\d{2})$/, (p) => [day('date', +p[1], +p[2], +p[3])]],
  [/^(\d{4})-?W(\d{1,2})(?:-?\d)?$/i, (p) => [isoWeek(+p[1], +p[2])]],
  [/^(?:w|kw|week|wk) ?(\d{1,2})[ ./-](\d{4}|\d{2})$/i, (p, today) => [isoWeek(full(p[2], today), +p[1])]],
  [
    /^(\d{1,2})[ ./-](\d{1,2})[ ./-](\d{4}|\d{2})$/,
    (p, today) => [
      day('day, month, year', full(p[3], today), +p[2], +p[1]),
      day('month, day, year', full(p[3], today), +p[1], +p[2]),
    ],
  ],
  [/^(\d{1,2})[ ./-](\d{4})$/, (p) => [month(+p[2], +p[1]), isoWeek(+p[2], +p[1])]],
  [/^(\d{4})[ ./-](\d{1,2})$/, (p) => [month(+p[1], +p[2]), isoWeek(+p[1], +p[2])]],
  [
    /^(\d{2})[ ./-](\d{2})$/,
    (p, today) => [
      month(full(p[2], today), +p[1]),
      isoWeek(full(p[2], today), +p[1]),
      month(full(p[1], today), +p[2], 'year, month'),
      isoWeek(full(p[1], today), +p[2], 'year, week'),
    ],
  ],
  [
    /^(\d{2})(\d{2})$/,
    (p, today) => [
      tyreWeek(full(p[2], today), +p[1]),
      isoWeek(full(p[1], today), +p[2], 'year, week'),
      month(full(p[2], today), +p[1]),
      month(full(p[1], today), +p[2], 'year, month'),
      year(+`${p[1]}${p[2]}`),
    ],
  ],
];

/**
 * When a part was made, by what is written on it.
 * @param marking "2319" (as on tyres), "06/19", "W23 2019", "2019-06-14", "14.06.2019", "2019" @param today "2026-11-25"
 * @returns earliest and latest date over every reading that does not lie in the future or long ago; the earliest is the
 * earliest date of fitting. Refused: no marking known, three figures (they do not tell the decade), nothing but the future
 * Source: 49 CFR 574.5 for four figures on tyres; ISO 8601-1:2019 for weeks; the rest is common practice, no source.
 */
export function madeFrom(marking: string, today: string): Answer<Made> {
  const now = readDate(today);
  if (isRefused(now)) return now;
  const plain = marking
    .trim()
    .replace(/^dot\s*/i, '')
    .replace(/\s+/g, ' ');
  if (/^\d{3}$/.test(plain)) return refused(`"${plain}" has three figures: they do not tell the decade`);
  for (const [form, ask] of forms) {
    const parts = form.exec(plain);
    if (parts) return spanned(plain, ask(parts as unknown as Figures, now), now);
  }
  return refused(`"${marking.trim()}" is no date on a part: 2319, 06/19, W23 2019 or 2019-06-14`);
}

function spanned(plain: string, asked: readonly (Span | undefined)[], now: CivilDate): Answer<Made> {
  const oldest = { ...now, year: now.year - oldestYears };
  const spans = asked.flatMap((span) =>
    span && earlier(span.from, now) === span.from && later(span.to, oldest) === span.to ? [span] : [],
  );
  const [first] = spans;
  if (!first) return refused(`"${plain}" is no date up to ${dateOf(now)}`);
  const from = spans.reduce((least, span) => earlier(least, span.from), first.from);
  const to = spans.reduce((most, span) => later(most, span.to), first.to);
  return {
    earliest: dateOf(from),
    latest: dateOf(earlier(to, now)),
    readings: spans.map((span) => ({ as: span.as, from: dateOf(span.from), to: dateOf(span.to) })),
  };
}

/** 19 is 2019 while that is not to come, else 1919. */
const full = (figures: string, today: CivilDate): number => {
  if (figures.length > 2) return Number(figures);
  const century = Math.floor(today.year / hundred.value) * hundred.value;
  const inThis = century + Number(figures);
  return inThis <= today.year ? inThis : inThis - hundred.value;
};

const ofDate = <T>(answer: Answer<T>): T | undefined => (isRefused(answer) ? undefined : answer);

function day(as: string, ofYear: number, ofMonth: number, ofDay: number): Span | undefined {
  const date = ofDate(soundDate({ year: ofYear, month: ofMonth, day: ofDay }));
  return date && { as, from: date, to: date };
}
function month(ofYear: number, ofMonth: number, as = 'month, year'): Span | undefined {
  const from = ofMonth <= monthsPerYear.value ? ofDate(soundDate({ year: ofYear, month: ofMonth, day: 1 })) : undefined;
  return from && { as, from, to: lastOfMonth(from) };
}
function isoWeek(ofYear: number, ofWeek: number, as = 'week, year'): Span | undefined {
  const from = ofDate(mondayOfIsoWeek(ofYear, ofWeek));
  return from && { as, from, to: addDays(from, daysPerWeek.value - 1) };
}
function tyreWeek(ofYear: number, ofWeek: number): Span | undefined {
  const from = ofDate(sundayOfFullWeek(ofYear, ofWeek));
  return from && { as: 'week, year, as on tyres', from, to: addDays(from, daysPerWeek.value - 1) };
}
function year(ofYear: number): Span | undefined {
  const from = ofDate(soundDate({ year: ofYear, month: 1, day: 1 }));
  return from && { as: 'year', from, to: addDays({ ...from, year: ofYear + 1 }, -1) };
}
