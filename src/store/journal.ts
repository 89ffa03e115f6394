// What the bytes of a job file say: a header line, then one line a call. Decides what is refused, what is dropped and
// what is doubtful. It opens nothing and changes nothing; the lines' own shape comes from whoever reads them.
import * as z from 'zod';
import { isPlainJson, plainDeep } from '../trade/plain-text.ts';
import { beforeFirst, type Chain, linked, type Reached, readChain } from './chain.ts';
import { type Fault, fault, isFault } from './fault.ts';

/** One line's value judged; `newer` when a name or field in it is unknown. */
export type ReadLine<L> = (value: unknown) => { ok: true; line: L } | { ok: false; what: string; newer: boolean };

/** Stays 0 until the program is whole. */
const fileFormat = 0;

export const longestJobName = 60;
const headerSchema = z.strictObject({
  countback: z.literal('job'),
  format: z.literal(fileFormat),
  job: z.string().min(1).max(longestJobName),
});
export const headerStart = Buffer.from('{"countback":"job"');
/** More than any header of ours; enough to know a job file by. */
export const headerBytesMost = 4096;

export type Journal<L> = {
  job: string;
  lines: L[];
  /** After the last verified line. */
  reached: Reached;
  /** Where the last verified line begins. */
  lastFrom: number;
  /** A half-written end that was left out, to be told. */
  torn?: Fault;
  /** The last line does not hold: to be looked at, and gone on without only when that is confirmed. */
  doubt?: { fault: Fault; byte: number };
};

const untouched = 'the file was left as it is';

export function headerLine(job: string) {
  return linked({ countback: 'job', format: fileFormat, job }, beforeFirst);
}

/** The job's name from the beginning of its file. Throws a fault where it is none of ours. */
export function readHeader(bytes: Buffer, path: string): string {
  const newline = bytes.indexOf(0x0a);
  const first = newline < 0 ? bytes : bytes.subarray(0, newline + 1);
  return headerFrom(readChain(first), first, path);
}

/** Everything `bytes` say. Throws a fault where they are refused. */
export function readJournal<L extends { n: number }>(bytes: Buffer, path: string, readLine: ReadLine<L>): Journal<L> {
  const chain = readChain(bytes);
  const job = headerFrom(chain, bytes, path);
  const { tail, reached } = chain;
  if (tail.kind === 'damaged')
    throw fault('damaged', `line ${tail.line} is not as it was written`, placeIn(path, tail), untouched);
  const lines = chain.texts.slice(1).map((text, i) => lineFrom(text, i + 1, path, readLine));
  const journal: Journal<L> = { job, lines, reached, lastFrom: chain.beforeLast.end };
  if (tail.kind === 'torn')
    journal.torn = fault(
      'torn',
      `the last line was half written and is left out: ${tail.bytes} bytes, of a call that was not saved or was cut off later`,
      placeIn(path, tail),
      'look at the last call and go on from there',
    );
  if (tail.kind === 'newline-missing' && tail.dropped > 0)
    journal.torn = fault(
      'torn',
      `behind the last line were ${tail.dropped} bytes that belong to no call; they are left out`,
      placeIn(path, { line: reached.line, byte: reached.end - 1 }),
      'look at the last call and go on from there',
    );
  if (tail.kind === 'last-line-bad')
    journal.doubt = {
      byte: tail.byte,
      fault: fault(
        'last-line-bad',
        'the last line is not as it was written; everything before it is',
        placeIn(path, tail),
        'look at the job, then confirm to go on without that line',
      ),
    };
  return journal;
}

/** The calls of a damaged file that stand before its first fault, to look at. */
export function callsBeforeFault<L extends { n: number }>(bytes: Buffer, path: string, readLine: ReadLine<L>): L[] {
  const { texts } = readChain(bytes);
  const lines: L[] = [];
  for (const [i, text] of texts.slice(1).entries()) {
    try {
      lines.push(lineFrom(text, i + 1, path, readLine));
    } catch (thrown) {
      if (!isFault(thrown)) throw thrown;
      break;
    }
  }
  return lines;
}

/** One line's value from its text. Throws a fault where it is none, or a newer program's. */
export function lineFrom<L extends { n: number }>(text: string, n: number, path: string, readLine: ReadLine<L>): L {
  const place = `${path}, line ${n + 1}`;
  const value = jsonOf(text);
  if (value === undefined) throw fault('damaged', 'this line is no JSON', place, untouched);
  const read = readLine(isPlainJson(text) ? value : plainDeep(value));
  if (!read.ok && read.newer) throw newer(`this line says what this program does not know (${read.what})`, place);
  if (!read.ok) throw fault('damaged', `this line is no call (${read.what})`, place, untouched);
  if (read.line.n !== n) throw fault('damaged', `call ${n} is called ${read.line.n} here`, place, untouched);
  return read.line;
}

export const placeIn = (path: string, at: { line: number; byte: number }) =>
  `${path}, line ${at.line}, byte ${at.byte}`;

const newer = (what: string, place: string) =>
  fault('newer', what, place, 'open it with a newer countback; the file was left as it is');

function headerFrom(chain: Chain, bytes: Buffer, path: string): string {
  if (bytes.length === 0) throw fault('empty', 'the job file is empty', path, untouched);
  if (!bytes.subarray(0, headerStart.length).equals(headerStart))
    throw fault('foreign', 'this is no job file, or its beginning is damaged', path, untouched);
  const [verified] = chain.texts;
  // A newer format may chain its lines otherwise: its header is read even where our link does not hold.
  const text = verified ?? bytes.subarray(0, headerBytesMost).toString('utf8').split('\n')[0] ?? '';
  const value = plainDeep(jsonOf(text));
  const format = value !== null && typeof value === 'object' && 'format' in value ? value.format : undefined;
  if (typeof format === 'number' && format > fileFormat)
    throw newer(`the file's format is ${format}, this program knows ${fileFormat}`, `${path}, line 1`);
  const header = headerSchema.safeParse(value);
  if (verified && header.success) return header.data.job;
  if (verified && header.error?.issues.some((issue) => issue.code === 'unrecognized_keys'))
    throw newer('the header says what this program does not know', `${path}, line 1`);
  throw fault('damaged', 'the header is not as it was written', placeIn(path, { line: 1, byte: 0 }), untouched);
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
