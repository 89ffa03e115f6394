// Reading places from words: holes, trays, piles, and whatever else a call may be about.
import { stateOf } from '../job/ledger.ts';
import { holeIn, isLevel } from '../job/subjects.ts';
import type { Token } from './form.ts';
import { joined, knownAtStart, lengths, missing, named, names, none, type Read, readName } from './slot-names.ts';

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
  if (!isLevel(under)) return [alone];
  const withLevel = { number: `${number} ${under}`, used: at + 2 };
  return isKnown(withLevel.number) ? [withLevel, alone] : [alone, withLevel];
}
export const readHole: Read = (desk, rest) => {
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
export const readHoles: Read = (desk, rest) => {
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

export const readTray: Read = (desk, rest, stops) => {
  if (rest.length === 0) return missing('a tray');
  const known = knownAtStart(names(desk.ledger, 'tray'), rest);
  if (known.length > 0) return known;
  const fresh = lengths(rest, stops).map((used) => ({ value: joined(rest, used), used }));
  return named([{ value: rest[0]?.text as string, used: 1 }, ...fresh], 'a tray');
};
export const piles = ['scrap', 'owner', 'supplier'];
/** "tray 2", "part cam cover" (captive), a pile, or "stays": in its hole. */
export const readPlace: Read = (desk, rest, stops, args) => {
  const first = rest[0]?.text.toLowerCase() ?? '';
  if (piles.includes(first) || first === 'stays') return [{ value: first, used: 1 }];
  const at = ['tray', 'part', 'bag', 'dish'].includes(first) && rest.length > 1 ? 1 : 0;
  const reading =
    at && first === 'part'
      ? readName('part', 'the name of the part')(desk, rest.slice(1), stops, args)
      : readTray(desk, rest.slice(at), stops, args);
  if (!reading || 'why' in reading) return reading ?? missing('a place');
  return reading.map(({ value, used }) => ({ value: `tray:${value}`, used: used + at }));
};

const subjectSorts = ['area', 'part', 'connection', 'face', 'drive', 'circuit', 'temporary'] as const;
/** "hole 7", "cam cover 7", "rotation timing belt", a sort and a name, or a known name alone. */
export const readSubject: Read = (desk, rest, stops, args) => {
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
