// One job held against the second model: the ledger kept line by line, the log read all at once, and the log with its
// struck lines blanked out must each have the same open points and the same release as the model, at every moment asked;
// and both must find the same lines leaned on.
import { emptyLedger, isStruck, type Ledger } from '../../src/job/ledger.ts';
import type { Line, Stamp } from '../../src/job/line.ts';
import { appendLine, readLog } from '../../src/job/log.ts';
import { leaningOn, unstrikable } from '../../src/job/striking.ts';
import { type Difference, differenceOf } from '../model/agree.ts';
import { judge } from '../model/judge.ts';
import { leaningOn as modelLeaningOn } from '../model/leaning.ts';
import type { PlainLine } from '../model/plain.ts';
import { chanceFrom } from './chance.ts';
import { hasLeft, openOf } from './program.ts';
import { type Sequence, sequenceFrom } from './sequences.ts';

const ways = ['kept line by line', 'read all at once', 'struck lines blanked out', 'one line struck'] as const;
export type Way = (typeof ways)[number];
export type Job = { lines: readonly Line[]; now: Stamp };
export type Disagreement = Job & { way: Way; difference: Difference };
/** `strike`: the lines of which it is asked whether others lean on them; all when left out. */
type Moment = Job & { ledger: Ledger; strike?: readonly number[] };

export const blank: Line['entries'] = [{ kind: 'note-made', words: 'blank' }];
const speaksOfLines = (line: Line): boolean =>
  line.entries.some((entry) => entry.kind === 'calls-struck' || entry.kind === 'calls-restored');

/** U1: as if the struck lines had never been; only their stamps are left, as witnesses of the clock. */
const blanked = ({ ledger, lines }: Moment): Line[] =>
  lines.map((line) => (isStruck(ledger, line.n) || speaksOfLines(line) ? { ...line, entries: blank } : line));

const standing = (moment: Moment, way: Exclude<Way, 'one line struck'>): Ledger => {
  if (way === 'kept line by line') return moment.ledger;
  return readLog(way === 'read all at once' ? moment.lines : blanked(moment));
};

/** U2: a line on which others lean for the one and not for the other. Where something does not fit, nothing is asked. */
function leanedOnApart({ ledger, lines, now, strike }: Moment): Difference | null {
  const plain = lines as unknown as readonly PlainLine[];
  if (openOf(ledger, now).some((point) => point.startsWith('misfit '))) return null;
  for (const n of strike ?? lines.map((line) => line.n)) {
    if (isStruck(ledger, n) || unstrikable(ledger, n)) continue;
    const asked = leaningOn(ledger, [n], 'calls-struck').length > 0;
    const model = modelLeaningOn(plain, n).length > 0;
    const point = [`leaned-on line:${n}`];
    if (asked !== model) {
      return { lines: plain, now, onlyAsked: asked ? point : [], onlyModel: model ? point : [], releasedModel: false };
    }
  }
  return null;
}

/** The first way in which the program and the second model part here; null when they agree in all. */
function partedAt(moment: Moment, asked: readonly Way[]): Disagreement | null {
  const { lines, now } = moment;
  const plain = lines as unknown as readonly PlainLine[];
  const model = judge(plain, now);
  for (const way of asked) {
    if (way === 'one line struck') {
      const difference = leanedOnApart(moment);
      if (difference) return { lines: [...lines], now, way, difference };
      continue;
    }
    const ledger = standing(moment, way);
    // A release is judged where it stands, over what was struck by then: blanked out, that is another job.
    const left = way === 'struck lines blanked out' ? undefined : hasLeft(ledger);
    const difference = differenceOf({ open: openOf(ledger, now), released: left }, model, plain, now);
    if (difference) return { lines: [...lines], now, way, difference };
  }
  return null;
}

const keptByLine = (lines: readonly Line[]): Ledger => lines.reduce(appendLine, emptyLedger);

/** Asked once, at the end of a job. */
export const disagreementAtEnd = ({ lines, now }: Job, asked: readonly Way[] = ways): Disagreement | null =>
  partedAt({ ledger: keptByLine(lines), lines, now }, asked);

/** Asked after every line of a job, in every way, and at its end: the shortest beginning at which they part. */
export function disagreementIn({ lines, now }: Job): Disagreement | null {
  let ledger = emptyLedger;
  for (const [at, line] of lines.entries()) {
    ledger = appendLine(ledger, line);
    const parted = partedAt({ ledger, lines: lines.slice(0, at + 1), now: line }, ways);
    if (parted) return parted;
  }
  return partedAt({ ledger, lines, now }, ways);
}

/** How often out of one a line is a moment to compare at, and in all ways. The end always is, and a later look. */
export type Often = { atLines: number; inAllWays: number };
/** `beginnings`: after how many lines, each a sequence of calls of its own, the two were held against one another. */
export type Compared = { sequence: Sequence; disagreement: Disagreement | null; beginnings: number };

/** A later look at the same lines: the bead that cures, the skin that forms, with nobody calling. */
function later(now: Stamp, hours: number, reopened: boolean): Stamp {
  const ms = hours * 3_600_000;
  return reopened
    ? { ...now, atMs: now.atMs + ms, run: now.run + 1, awakeMs: 0 }
    : { ...now, atMs: now.atMs + ms, awakeMs: now.awakeMs + ms };
}

/**
 * Plays a seed and compares on the way.
 * @throws when calls alone brought about a misfit or books that differ: the guards let through what they must not
 */
export function compared(seed: number, often: Often): Compared {
  const moments = chanceFrom(seed ^ 0x5eed);
  let disagreement: Disagreement | null = null;
  let last: Moment | undefined;
  const beginnings = new Set<number>();
  const look = (moment: Moment, inAllWays: boolean): void => {
    beginnings.add(moment.lines.length);
    disagreement ??= partedAt(moment, inAllWays ? ways : ways.slice(0, 1));
  };
  const sequence = sequenceFrom(seed, (ledger, lines, now) => {
    last = { ledger, lines, now };
    if (moments.maybe(often.atLines)) {
      look({ ...last, strike: [moments.whole(1, lines.length)] }, moments.maybe(often.inAllWays));
    }
  });
  if (last) {
    look({ ...last, strike: moments.some(last.lines, 0.02).map((line) => line.n) }, true);
    look({ ...last, now: later(last.now, moments.whole(1, 60), moments.maybe(0.4)) }, false);
    const broken = openOf(last.ledger, last.now).filter((point) => /^(misfit|books) /.test(point));
    if (sequence.forged === 0 && broken.length > 0) {
      throw new Error(`calls alone, nothing forged, brought about: ${broken.join(', ')}`);
    }
  }
  return { sequence, disagreement, beginnings: beginnings.size };
}

/** The shortest beginning of the seed's job at which the two part, where its moments have shown that they do. */
export const shortestOf = (found: Disagreement): Disagreement => disagreementIn(found) ?? found;
