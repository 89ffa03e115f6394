// How each sort of slot in a call's form is read from words, and how a value is said back in the same words.

import { likeInTray as likeIn } from '../job/choose.ts';
import { type Ledger, stateOf } from '../job/ledger.ts';
import type { Spec } from '../job/spec.ts';
import type { Sort } from '../job/states.ts';
import { areaOf, holeIn, nameOf, nameSchema, sortOf, subjectText, withinArea } from '../job/subjects.ts';
import { type Desk, fastenerOf, findingsOn } from './desk.ts';
import { type Args, isChoice, type Reading, type ReadSlot, type Token } from './form.ts';
import { readTemperatureIn, readTorqueIn, showMeasure } from './measures.ts';
import { readSpec, specWords } from './spec-words.ts';

type Read = (desk: Desk, rest: readonly Token[], stops: readonly string[], args: Args) => Reading;

const none = (why: string): Reading => ({ why });
const missing = (what: string): Reading => none(`${what} is missing`);
const joined = (rest: readonly Token[], used: number): string =>
  rest
    .slice(0, used)
    .map((t) => t.text)
    .join(' ');

/** How many tokens a name or text may take: up to the next word of the form, then all. */
function lengths(rest: readonly Token[], stops: readonly string[]): number[] {
  const stop = rest.findIndex((t, i) => i > 0 && !t.quoted && stops.includes(t.text.toLowerCase()));
  if (rest[0]?.quoted) return [1];
  return stop > 0 ? [stop, rest.length] : [rest.length];
}

export function names(ledger: Ledger, sort: Sort): string[] {
  const { all, length } = ledger.names[sort];
  return all.slice(0, length).filter((name) => stateOf(ledger, sort, name) !== undefined);
}

// What is faced goes into every line, and no verb looks at it: what is no name must not become an area or a tray here.
const isName = ({ value }: { value: string }): boolean => value.trim() !== '' && nameSchema.safeParse(value).success;
const named = <T extends { value: string }>(found: readonly T[], sort: string): T[] | { why: string } => {
  const fit = found.filter(isName);
  return fit.length > 0 ? fit : { why: `the name of ${sort} has 1 to 60 characters, and no "/" or ":" among them` };
};

/** A name of a sort: the longest known one that the words begin with, else a new one up to the next word of the form. */
function readName(sort: Sort, what: string): Read {
  return (desk, rest, stops) => {
    if (rest.length === 0) return missing(what);
    const known = knownAtStart(names(desk.ledger, sort), rest);
    const fresh = lengths(rest, stops).map((used) => ({ value: joined(rest, used), used }));
    const all = [...known, ...fresh.filter((one) => !known.some((k) => k.used === one.used))];
    return sort === 'area' ? named(all, 'an area') : all;
  };
}
function knownAtStart(known: readonly string[], rest: readonly Token[]): { value: string; used: number }[] {
  const found = known.flatMap((value) => {
    const used = rest[0]?.quoted ? 1 : value.split(' ').length;
    return joined(rest, used).toLowerCase() === value.toLowerCase() && used <= rest.length ? [{ value, used }] : [];
  });
  return found.sort((a, b) => b.used - a.used);
}

const level = /^(nut|washer|pin|bolt|stud|sleeve|clip|cap|spacer|clamp|lock)$/;
/** A level is read as one where it is known; else only where the number alone leads nowhere ("off 7 nut"). */
function holeNumber(
  rest: readonly Token[],
  at: number,
  isKnown: (number: string) => boolean,
): { number: string; used: number }[] {
  const number = rest[at]?.text ?? '';
  if (!/^\d{1,4}$/.test(number) || rest[at]?.quoted) return [];
  const alone = { number, used: at + 1 };
  const under = rest[at + 1]?.text.toLowerCase() ?? '';
  if (!level.test(under)) return [alone];
  const withLevel = { number: `${number} ${under}`, used: at + 2 };
  return isKnown(withLevel.number) ? [withLevel, alone] : [alone, withLevel];
}
const readHole: Read = (desk, rest) => {
  if (rest.length === 0) return missing('a hole');
  const areas = knownAtStart(names(desk.ledger, 'area'), rest);
  const knownIn = (area: string) => (number: string) =>
    stateOf(desk.ledger, 'hole', holeIn(area, number)) !== undefined;
  const elsewhere = areas.flatMap(({ value, used }) =>
    holeNumber(rest, used, knownIn(value)).map((h) => ({ value: holeIn(value, h.number), used: h.used })),
  );
  const { area } = desk.facing;
  const here = holeNumber(rest, 0, area === undefined ? () => false : knownIn(area));
  if (here.length > 0 && area === undefined && elsewhere.length === 0)
    return none('no area is in use: say which, "area NAME"');
  const inUse = area === undefined ? [] : here.map((h) => ({ value: holeIn(area, h.number), used: h.used }));
  const all = [...elsewhere, ...inUse];
  return all.length > 0 ? all : none(`"${rest[0]?.text}" is no hole: a number, or area and number`);
};

/** "1 2 4-6", of the area in use. */
const readHoles: Read = (desk, rest) => {
  const { area } = desk.facing;
  if (area === undefined) return none('no area is in use: say which, "area NAME"');
  const holes: string[] = [];
  let used = 0;
  for (const token of rest) {
    const range = /^(\d{1,4})(?:-(\d{1,4}))?,?$/.exec(token.text);
    if (!range || token.quoted) break;
    const from = Number(range[1]);
    const to = Number(range[2] ?? range[1]);
    if (to < from || to - from > 500) return none(`"${token.text}" is no range of holes`);
    for (let n = from; n <= to; n++) holes.push(holeIn(area, String(n)));
    used++;
  }
  return used > 0 ? [{ value: holes, used }] : none('hole numbers are missing');
};

const readTray: Read = (desk, rest, stops) => {
  if (rest.length === 0) return missing('a tray');
  const known = knownAtStart(names(desk.ledger, 'tray'), rest);
  if (known.length > 0) return known;
  const fresh = lengths(rest, stops).map((used) => ({ value: joined(rest, used), used }));
  return named([{ value: rest[0]?.text as string, used: 1 }, ...fresh], 'a tray');
};
export const piles = ['scrap', 'owner', 'supplier'];
/** "tray 2", "part cam cover" (captive), a pile, or "stays": in its hole. */
const readPlace: Read = (desk, rest, stops, args) => {
  const first = rest[0]?.text.toLowerCase() ?? '';
  if (piles.includes(first) || first === 'stays') return [{ value: first, used: 1 }];
  const at = ['tray', 'part', 'bag', 'dish'].includes(first) && rest.length > 1 ? 1 : 0;
  const reading =
    at && first === 'part'
      ? readers.part?.(desk, rest.slice(1), stops, args)
      : readTray(desk, rest.slice(at), stops, args);
  if (!reading || 'why' in reading) return reading ?? missing('a place');
  return reading.map(({ value, used }) => ({ value: `tray:${value}`, used: used + at }));
};

const subjectSorts = ['area', 'part', 'connection', 'face', 'drive', 'circuit', 'temporary'] as const;
/** "hole 7", "cam cover 7", "rotation timing belt", a sort and a name, or a known name alone. */
const readSubject: Read = (desk, rest, stops, args) => {
  const first = rest[0]?.text.toLowerCase() ?? '';
  if (first === 'vehicle' || first === 'car') return [{ value: 'vehicle', used: 1 }];
  const holes = readHole(desk, first === 'hole' ? rest.slice(1) : rest, stops, args);
  const byHole =
    'why' in holes
      ? []
      : holes.map(({ value, used }) => ({ value: `hole:${value}`, used: used + (first === 'hole' ? 1 : 0) }));
  const sort = first === 'rotation' ? 'drive' : subjectSorts.find((one) => one === first);
  const named = sort ? readName(sort, `the name of the ${sort}`)(desk, rest.slice(1), stops, args) : [];
  const bySort = 'why' in named ? [] : named.map(({ value, used }) => ({ value: `${first}:${value}`, used: used + 1 }));
  const bare = subjectSorts.flatMap((one) =>
    knownAtStart(names(desk.ledger, one), rest).map(({ value, used }) => ({ value: `${one}:${value}`, used })),
  );
  const all = [...byHole, ...bySort, ...bare.sort((a, b) => b.used - a.used)];
  return all.length > 0 ? all : none(`"${rest[0]?.text ?? ''}" is nothing known on this job`);
};

const readFastener: Read = (desk, rest, stops, args) => {
  const first = rest[0]?.text ?? '';
  if (/^f\d+\.\d+$/.test(first)) return [{ value: first, used: 1 }];
  if (first.toLowerCase() === 'tray' && rest.length > 2) {
    const tray = readTray(desk, rest.slice(1), stops, args);
    const found =
      'why' in tray ? [] : tray.flatMap(({ value, used }) => likeInTray(desk, value as string, rest, used + 1));
    return found.length > 0 ? found : none('nothing like that lies in that tray');
  }
  const holes = readHole(desk, rest, stops, args);
  if ('why' in holes) return none(`"${first}" is no fastener: a hole, "tray NAME SPEC", or its f-number`);
  const found = holes.flatMap(({ value, used }) => {
    const id = fastenerOf(desk.ledger, value as string);
    return id ? [{ value: id, used }] : [];
  });
  return found.length > 0 ? found : none(`no fastener is known of ${joined(rest, 1)}`);
};
function likeInTray(desk: Desk, tray: string, rest: readonly Token[], at: number): { value: string; used: number }[] {
  const { spec, used } = readSpec(rest.slice(at));
  const id = likeIn(desk.ledger, tray, spec)?.id;
  return used > 0 && id ? [{ value: id, used: at + used }] : [];
}
/** By its d-number, or by what it is about when that has one open finding. */
const readFinding: Read = (desk, rest, stops, args) => {
  const first = rest[0]?.text ?? '';
  if (/^d\d+\.\d+$/.test(first)) return [{ value: first, used: 1 }];
  const about = readSubject(desk, rest, stops, args);
  if ('why' in about) return about;
  const found = about.flatMap(({ value, used }) => {
    const [only, second] = findingsOn(desk.ledger, value as string);
    return only && !second ? [{ value: only, used }] : [];
  });
  return found.length > 0
    ? found
    : none(`${joined(rest, rest.length)} has not one open finding: name it by its d-number`);
};

const readStray: Read = (_desk, rest) =>
  /^s\d+\.\d+$/.test(rest[0]?.text ?? '')
    ? [{ value: rest[0]?.text, used: 1 }]
    : none('a stray is named by its s-number, as s12.1');
/** By its p-number, or by the hole that holds it when that holds one. */
const readPiece: Read = (desk, rest, stops, args) => {
  const first = rest[0]?.text ?? '';
  if (/^p\d+\.\d+$/.test(first)) return [{ value: first, used: 1 }];
  const holes = readHole(desk, rest, stops, args);
  const found = ('why' in holes ? [] : holes).flatMap(({ value, used }) => {
    const [only, second] = stateOf(desk.ledger, 'hole', value as string)?.called.pieces ?? [];
    return only && !second ? [{ value: only, used }] : [];
  });
  return found.length > 0
    ? found
    : none('a piece is named by the hole that holds it and no other, or by its p-number, as p12.1');
};
/** A lost fastener or piece, by its number or by its hole; alone when only one is lost. */
const readLost: Read = (desk, rest, stops, args) => {
  const first = rest[0]?.text ?? '';
  if (/^[fp]\d+\.\d+$/.test(first)) return [{ value: first, used: 1 }];
  return readFastener(desk, rest, stops, args);
};

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
  desk.plans.filter((p) => args.plan === undefined || p.name === args.plan).flatMap((p) => p.services);
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
      desk.plans.map((p) => p.name),
      'plan',
      rest,
      stops,
    ),
  planned: (desk, rest, stops, args) => oneOf(plannedServices(desk, args), 'service', rest, stops),
  tray: readTray,
  place: readPlace,
  subject: readSubject,
  fastener: readFastener,
  finding: readFinding,
  stray: readStray,
  piece: readPiece,
  lost: readLost,
  spec: (_desk, rest) => {
    const { spec, used } = readSpec(rest);
    return used > 0 ? [{ value: spec, used }] : none(`"${rest[0]?.text ?? ''}" is no spec, as "bolt hex 10 M6x25 8.8"`);
  },
  number: number('number', () => true),
  count: number('count', (n) => Number.isInteger(n) && n >= 0),
  mm: number('size in mm', (n) => n > 0),
  distance: number('distance', (n) => n >= 0),
  temperature: ({ units }, rest) => readTemperatureIn(units, rest),
  torque: ({ units }, rest) => readTorqueIn(units, rest),
  words: readWords('what it is'),
  path: readWords('the file'),
  who: readWords('who'),
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
  return found.length > 0 ? found : none(`"${rest[0]?.text ?? ''}" is none of: ${choices.join(', ')}`);
}

/** Says a value in the words its reader takes. */
export function showSlot(desk: Desk, type: string, value: unknown): string | undefined {
  if (value === undefined) return undefined;
  if (type === 'hole') return holeWords(desk, value as string);
  if (type === 'holes') return (value as string[]).map((h) => withinArea(h)).join(' ');
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
