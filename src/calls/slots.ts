// How each sort of slot in a call's form is read from words, and how a value is said back in the same words.

import { stateOf } from '../job/ledger.ts';
import { numbersText } from '../job/numbers-text.ts';
import type { Spec } from '../job/spec.ts';
import { areaOf, nameOf, sortOf, subjectText, withinArea } from '../job/subjects.ts';
import { type Answer, isRefused, refused } from '../trade/answer.ts';
import { dateOf, readDate } from '../trade/calendar.ts';
import { withoutNought } from './days-on.ts';
import type { Desk } from './desk.ts';
import { type Args, isChoice, type Reading, type ReadSlot, type Token } from './form.ts';
import { readHours, readLitres, readTemperatureIn, readTorqueIn, showMeasure } from './measures.ts';
import { joined, knownAtStart, lengths, missing, none, type Read, readName } from './slot-names.ts';
import { readHole, readHoles, readPlace, readSubject, readTray } from './slot-places.ts';
import { readFastener, readFinding, readLost, readLying, readPiece, readStray } from './slot-things.ts';
import { readSpec, specTrouble, specWords } from './spec-words.ts';

const number =
  (what: string, test: (value: number) => boolean): Read =>
  (_desk, rest) => {
    const text = (rest[0]?.text ?? '').replace(',', '.');
    const value = Number(text);
    return text !== '' && Number.isFinite(value) && test(value)
      ? [{ value, used: 1 }]
      : none(text === '' ? `${what} is missing` : `"${text}" is no ${what}`);
  };
const readWords =
  (what: string): Read =>
  (_desk, rest, stops) =>
    rest.length === 0 ? missing(what) : lengths(rest, stops).map((used) => ({ value: joined(rest, used), used }));
/** A figure meant for something else signs nothing. */
const readWho: Read = (desk, rest, stops, args) => {
  const read = readWords('who')(desk, rest, stops, args);
  if ('why' in read) return read;
  const [said] = read.map(({ value }) => String(value));
  return said === undefined || /\p{L}/u.test(said) ? read : none(`"${said}" is no name of anybody`);
};
/**
 * A whole date is a day there is, written year first; "1.2.2030" has its day in front, and of "1/2/2030" nobody knows which
 * it is. Without a year it stands as it was said.
 */
const readDateSaid: Read = (desk, rest, stops, args) => {
  const read = readWords('the date')(desk, rest, stops, args);
  if ('why' in read) return read;
  const dates = read.map(({ value, used }) => ({ read: dateOfWords(withoutNought(String(value))), used }));
  const [whole] = dates;
  if (whole && isRefused(whole.read)) return none(whole.read.refused);
  return dates.flatMap(({ read: value, used }) => (isRefused(value) ? [] : [{ value, used }]));
};
export function dateOfWords(said: string): Answer<string> {
  const dayFirst = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(said);
  if (/^\d+\/\d+(\/\d+)?$/.test(said)) return refused(`"${said}" may be two days: year first, as 2031-02-01`);
  if (!dayFirst && !/^\d{4}-/.test(said)) return said;
  const date = readDate(dayFirst ? `${dayFirst[3]}-${dayFirst[2]}-${dayFirst[1]}` : said);
  return isRefused(date) ? date : dateOf(date);
}
/** "dowels, O-ring": names up to the next word of the form, parted by commas. */
const readList: Read = (_desk, rest, stops) =>
  rest.length === 0
    ? missing('a name')
    : lengths(rest, stops).map((used) => ({
        value: joined(rest, used)
          .split(/\s*,\s*/)
          .filter(Boolean),
        used,
      }));
const readLines: Read = (_desk, rest) => {
  const lines = rest.map((t) => Number(t.text)).filter((n) => Number.isInteger(n) && n > 0);
  return lines.length === rest.length && lines.length > 0
    ? [{ value: lines, used: rest.length }]
    : none('line numbers are missing');
};

export const plannedServices = (desk: Desk, args: Args): readonly string[] =>
  desk
    .plans()
    .filter((p) => args.plan === undefined || p.name === args.plan)
    .flatMap((p) => p.services);
function oneOf(known: readonly string[], what: string, rest: readonly Token[], stops: readonly string[]): Reading {
  if (rest.length === 0) return missing(`the name of the ${what}`);
  const found = knownAtStart(known, rest);
  const said = joined(rest, lengths(rest, stops)[0] ?? rest.length);
  return found.length > 0 ? found : none(`there is no ${what} "${said}"; there is: ${known.join(', ') || 'none'}`);
}

const readers: Record<string, Read> = {
  hole: readHole,
  holes: readHoles,
  area: readName('area', 'the name of the area'),
  part: readName('part', 'the name of the part'),
  connection: readName('connection', 'the name of the connection'),
  temporary: readName('temporary', 'the name of it'),
  face: readName('face', 'the name of the sealing face'),
  drive: readName('drive', 'the name of the drive'),
  circuit: readName('circuit', 'the name of the circuit'),
  box: readName('box', 'the name of what is in the box'),
  bought: readName('box', 'the name of what was bought'),
  service: readName('service', 'the name of the service'),
  product: readName('product', 'the name of the product'),
  plan: (desk, rest, stops) =>
    oneOf(
      desk.plans().map((p) => p.name),
      'plan',
      rest,
      stops,
    ),
  planned: (desk, rest, stops, args) => oneOf(plannedServices(desk, args), 'service', rest, stops),
  tray: readTray,
  place: readPlace,
  subject: readSubject,
  fastener: readFastener,
  lying: readLying,
  finding: readFinding,
  stray: readStray,
  piece: readPiece,
  lost: readLost,
  spec: ({ ledger }, rest, stops) => {
    const { spec, used } = readSpec(rest);
    const next = rest[used];
    const isWhole = next === undefined || next.quoted || stops.includes(next.text.toLowerCase());
    if (used > 0 && isWhole) return [{ value: spec, used }];
    const area = rest.map(({ text }) => text).join(' ');
    if (stateOf(ledger, 'area', area)) return none(`"${area}" is an area: "area ${area}"`);
    const like = 'as "bolt hex 10 M6x25 8.8"';
    return none(next === undefined ? `the fastener is missing, ${like}` : `${specTrouble(rest.slice(used))}; ${like}`);
  },
  number: number('number', () => true),
  count: number('count', (n) => Number.isInteger(n) && n >= 0),
  mm: number('size in mm', (n) => n > 0),
  distance: number('distance', (n) => n >= 0),
  temperature: ({ units }, rest) => readTemperatureIn(units, rest),
  litres: (_desk, rest) => readLitres(rest),
  hours: (_desk, rest) => readHours(rest),
  torque: ({ units }, rest) => readTorqueIn(units, rest),
  words: readWords('this'),
  day: readWords('until when'),
  date: readDateSaid,
  path: readWords('the file'),
  who: readWho,
  why: readWords('why'),
  list: readList,
  lines: readLines,
};

export const readSlot =
  (desk: Desk): ReadSlot =>
  (type, rest, stops, args) => {
    if (isChoice(type)) return readChoice(type.split('|'), rest);
    const read = readers[type];
    if (!read) throw new Error(`no reader for slot type "${type}"`);
    return read(desk, rest, stops, args);
  };
function readChoice(choices: readonly string[], rest: readonly Token[]): Reading {
  const found = knownAtStart(choices, rest);
  return found.length > 0
    ? found
    : none(`${rest[0] ? `"${rest[0].text}" is none of` : 'one is missing of'}: ${choices.join(', ')}`);
}

/** Says a value in the words its reader takes. */
export function showSlot(desk: Desk, type: string, value: unknown): string | undefined {
  if (value === undefined) return undefined;
  if (type === 'hole') return holeWords(desk, value as string);
  if (type === 'holes') return numbersText((value as string[]).map(withinArea));
  if (type === 'place')
    return sortOf(value as string) === 'tray' ? `tray ${nameOf(value as string)}` : (value as string);
  if (type === 'subject') return subjectWords(value as string);
  if (type === 'spec') return specWords(value as Spec);
  if (type === 'list') return (value as string[]).join(', ');
  if (type === 'lines') return (value as number[]).join(' ');
  return showMeasure(desk.units, type, value as number) ?? String(value);
}
const holeWords = (desk: Desk, hole: string): string =>
  areaOf(hole) === desk.facing.area ? withinArea(hole) : subjectText(`hole:${hole}`);
const subjectWords = (subject: string): string => {
  const sort = sortOf(subject);
  if (sort === 'hole' || subject === 'vehicle') return subjectText(subject);
  return `${sort} ${nameOf(subject)}`;
};
