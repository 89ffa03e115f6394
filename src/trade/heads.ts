// Which threads a head of this size can carry, and back: for suspicion, never for refusal. Wheel nuts and crank bolts
// are asked about by those who know that they are ones.
import { type Answer, figure, isRefused, refused } from './answer.ts';
import { cited } from './cited.ts';
import { millimetresPerInch } from './definitions.ts';
import { type HeadTable, headTables, kindsWithoutTable, nearlyFits, shapesWithoutTable } from './head-tables.ts';
import { everyThread, type Thread, threadNamed } from './threads.ts';

/** "hex 13", "star 45", "hex 1/2": shape, and size in mm, or its number where it is a star. */
export type Head = { readonly shape: string; readonly size?: number; readonly written: string };

/** No head on a vehicle is larger; a star's number neither. */
const largestSize = cited(100, 'mm', 'chosen here, to catch slips of the keys').value;
/** How far a written size may be from a table's: 11.11 for 7/16 in. */
const alike = cited(0.01, 'mm', 'chosen here: sizes are written to two places').value;

const shapes: ReadonlySet<string> = new Set([...headTables.map(({ shape }) => shape), ...shapesWithoutTable]);

/** Reads "hex 13", "hexkey 6", "star 45", "star T45", "hex 1/2", "hex 9/16 in", "slot". Refused: no such shape, no size where one is wanted. */
export function readHead(text: string): Answer<Head> {
  const written = text.trim().toLowerCase().replace(/\s+/g, ' ');
  const [shape = '', ...rest] = written.split(' ');
  if (!shapes.has(shape))
    return refused(`"${text.trim()}" is no head: hex 13, hexkey 6, star 45, ${shapesWithoutTable.join(', ')}`);
  const said = rest.join(' ').replace(/^[te](?=\d)/, '');
  if (said === '') {
    return shapesWithoutTable.includes(shape)
      ? { shape, written }
      : refused(`a ${shape} head wants a size: ${shape} 10`);
  }
  const size = readSize(said);
  return size !== undefined && size > 0 && size <= largestSize
    ? { shape, size, written }
    : refused(`"${said}" is no size of a head: millimetres, or a fraction of an inch like 1/2`);
}

function readSize(said: string): number | undefined {
  if (/^\d+(\.\d+)?( ?mm)?$/.test(said)) return Number.parseFloat(said);
  const inch = /^(?:(\d) )?(\d{1,2})\/(\d{1,2}) ?(?:in\.?|")?$/.exec(said);
  return inch ? (Number(inch[1] ?? 0) + Number(inch[2]) / Number(inch[3])) * millimetresPerInch.value : undefined;
}

/** "M8" of M8x1, "5/16" of 5/16-18: what a head table goes by. */
export function nominalSize({ system, majorMm, name }: Thread): string {
  return system === 'metric' ? `M${majorMm}` : (name.split('-')[0] as string);
}

export type Carried = {
  /** "M8", "5/16": every pitch of it. */
  nominal: string;
  /** "ISO hex", "small flange". */
  by: string;
  source: string;
  /** In no standard, but often met. */
  met: boolean;
};

/**
 * The threads a head can carry, in any standard known.
 * @returns by rising diameter, each with the standard; empty where no table has that size or the shape has no table
 * Sources: ISO 272, DIN 931, JIS B 1180, ISO 15071, EN 1665, ASME B18.2.1, ISO 4762, ISO 7380-1, ISO 14579.
 */
export function threadsForHead({ shape, size }: Head): Carried[] {
  if (size === undefined) return [];
  return headTables
    .filter((table) => table.shape === shape)
    .flatMap((table) =>
      Object.entries(table.sizes.value)
        .filter(([, of]) => Math.abs(of - size) <= alike)
        .map(([nominal]) => carried(nominal, table)),
    )
    .sort((a, b) => majorOf(a.nominal) - majorOf(b.nominal));
}

const carried = (nominal: string, { name, sizes, met }: HeadTable): Carried => ({
  nominal,
  by: name,
  source: sizes.source,
  met: met === true,
});
const majors: ReadonlyMap<string, number> = new Map(everyThread.map((thread) => [nominalSize(thread), thread.majorMm]));
const majorOf = (nominal: string): number => majors.get(nominal) ?? 0;

/** The heads a thread is sold with: "hex 13" by ISO hex, "hexkey 6" … Refused as `threadNamed`. */
export function headsForThread(threadName: string): Answer<{ head: string; by: string; met: boolean }[]> {
  const thread = threadNamed(threadName);
  if (isRefused(thread)) return thread;
  const nominal = nominalSize(thread);
  return headTables.flatMap(({ name, shape, sizes, met }) => {
    const size = sizes.value[nominal];
    return size === undefined ? [] : [{ head: `${shape} ${figure(size)}`, by: name, met: met === true }];
  });
}

/** Kinds of which a head says nothing: studs have none, plugs and sensors have their own. */
export const isJudgedByHead = (kind: string | undefined): boolean => !kindsWithoutTable.includes(kind ?? '');

export type HeadJudgement = {
  /** 'no-thread': no table has the head at all. 'met': in no table, often seen. 'nearly': a head of the other system that its socket nearly fits. */
  verdict: 'carries' | 'nearly' | 'met' | 'other-thread' | 'no-thread' | 'not-judged';
  /** Nominal sizes the head does carry. */
  carries: string[];
  /** One line; empty where nothing is suspicious. */
  because: string;
};

/**
 * Whether a head goes with a thread in any standard known.
 * @param head "hex 14" @param threadName "M10x1.25"
 * @returns the verdict and one line; refused where head or thread cannot be read
 * Limits: kind and place are not asked here; wheel nuts, plugs, unions, sensors and crank bolts go by no table.
 */
export function headCarries(head: string, threadName: string): Answer<HeadJudgement> {
  const read = readHead(head);
  if (isRefused(read)) return read;
  const thread = threadNamed(threadName);
  if (isRefused(thread)) return thread;
  if (shapesWithoutTable.includes(read.shape)) return { verdict: 'not-judged', carries: [], because: '' };
  const nominal = nominalSize(thread);
  const can = threadsForHead(read);
  const own = can.filter((one) => one.nominal === nominal);
  const carries = [...new Set(can.map((one) => one.nominal))];
  if (own.some(({ met }) => !met)) return { verdict: 'carries', carries, because: '' };
  if (own.length > 0)
    return { verdict: 'met', carries, because: `${head} on ${nominal} is in no standard, but often met` };
  const near = nearHead(read, nominal);
  if (near) return { verdict: 'nearly', carries, because: near };
  if (can.length === 0)
    return { verdict: 'no-thread', carries, because: `no standard known puts ${head} on any thread` };
  // Heads only met have no say against others: star 40 sits on more than anyone lists.
  if (can.every(({ met }) => met))
    return { verdict: 'met', carries, because: `${head} is met on ${carries.join(', ')}; on ${nominal}?` };
  const list = can.map((one) => `${one.nominal} (${one.by})`).join(', ');
  return { verdict: 'other-thread', carries, because: `${head} goes on ${list}; not on ${nominal}` };
}

/** 13 mm called of a 1/2 in head: what the socket says, not what the head is. */
function nearHead({ shape, size }: Head, nominal: string): string | undefined {
  if (size === undefined || shape !== 'hex') return undefined;
  for (const { sizes, name, shape: of } of headTables) {
    const own = of === 'hex' ? sizes.value[nominal] : undefined;
    const apart = own === undefined ? Number.POSITIVE_INFINITY : Math.abs(own - size);
    const isInch = nominal.includes('/');
    if (isInch && apart <= nearlyFits.value) {
      return `a socket of ${figure(size)} mm nearly fits the ${name} head of ${nominal} (${figure(apart)} mm apart)`;
    }
  }
  return undefined;
}
