// Names of things on the job, as plain strings: which hole, where a fastener lies, what a finding is about.
// A name never holds "/" or ":"; both are ours.
import * as z from 'zod';

export const nameSchema = z
  .string()
  .min(1)
  .max(60)
  .regex(/^[^/:\p{Cc}]+$/u, 'a name has no "/", ":" or control characters');

/** "cam cover/7", "cam cover/7 nut": an area and a hole number with its level. */
export const holeSchema = z
  .string()
  .max(100)
  .regex(/^[^/:\p{Cc}]+\/\d{1,4}( [a-z]+( \d)?)?$/u, 'a hole is written area/number, with a level where it has one');
export type Hole = string;

/** L1: a fastener is in exactly one of these. `box:` is where new ones come from and is no whereabouts once taken. */
export const placeSchema = z
  .string()
  .max(120)
  .regex(/^(hole:.+\/.+|tray:[^/:]+|box:[^/:]+|scrap|owner|supplier|lost)$/u);
export type Place = string;

export const subjectSchema = z
  .string()
  .max(120)
  .regex(
    /^((hole|area|part|connection|face|drive|circuit|rotation|tray|temporary):.+|vehicle)$/u,
    'a place is written with what it is before it: "area:cam cover", "part:belt", "hole:cam cover/7", or "vehicle"',
  );
export type Subject = string;

export const areaOf = (hole: Hole): string => hole.slice(0, hole.indexOf('/'));
/** "7 nut" of "cam cover/7 nut". */
export const withinArea = (hole: Hole): string => hole.slice(hole.indexOf('/') + 1);
/** "7" of "cam cover/7 nut". */
export const numberOf = (hole: Hole): string => withinArea(hole).split(' ')[0] as string;
export const holeIn = (area: string, number: string): Hole => `${area}/${number}`;

/** What may share a number with another: "7 nut". */
export const isLevel = (word: string): boolean =>
  /^(nut|washer|pin|bolt|stud|sleeve|clip|cap|spacer|clamp|lock)$/.test(word);

export const inHole = (hole: Hole): Place => `hole:${hole}`;
export const inTray = (tray: string): Place => `tray:${tray}`;
export const fromBox = (named: string): Place => `box:${named}`;

/** The name after the first ":" of a place or subject, else undefined when it is of another sort. */
export function named(sort: string, of: Place | Subject): string | undefined {
  return of.startsWith(`${sort}:`) ? of.slice(sort.length + 1) : undefined;
}
export const sortOf = (of: Place | Subject): string => of.split(':')[0] as string;
export const nameOf = (of: Place | Subject): string => of.slice(of.indexOf(':') + 1);
/** For people: "cam cover 7 nut", "tray 2". */
export function subjectText(of: Place | Subject): string {
  const sort = sortOf(of);
  if (sort === of) return of === 'scrap' ? 'scrap pile' : of;
  const name = nameOf(of).replace('/', ' ');
  return sort === 'tray' ? `tray ${name}` : name;
}

/** "1 hole", "2 holes". */
export const holesSaid = (many: number): string => `${many} hole${many === 1 ? '' : 's'}`;
