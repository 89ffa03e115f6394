// One job held against the second model: the ledger kept line by line, the log read all at once, and the log with its
// struck lines blanked out must each have the same open points and the same release as the model, at every moment asked.
import { isStruck, type Ledger } from '../../src/job/ledger.ts';
import type { Line, Stamp } from '../../src/job/line.ts';
import { readLog } from '../../src/job/log.ts';
import { type Difference, differenceOf } from '../model/agree.ts';
import { judge } from '../model/judge.ts';
import type { PlainLine } from '../model/plain.ts';
import { chanceFrom } from './chance.ts';
import { hasLeft, openOf } from './program.ts';
import { type Sequence, sequenceFrom } from './sequences.ts';

export type Way = 'kept line by line' | 'read all at once' | 'struck lines blanked out';
export type Disagreement = Difference & { seed: number; way: Way };

const speaksOfLines = (line: Line): boolean =>
  line.entries.some((entry) => entry.kind === 'calls-struck' || entry.kind === 'calls-restored');

/** U1: as if the struck lines had never been; only their stamps are left, as witnesses of the clock. */
function blanked(ledger: Ledger, lines: readonly Line[]): Line[] {
  return lines.map((line) =>
    isStruck(ledger, line.n) || speaksOfLines(line)
      ? { ...line, entries: [{ kind: 'note-made', words: 'struck' }] }
      : line,
  );
}

type Moment = { ledger: Ledger; lines: readonly Line[]; now: Stamp };

/** The first way in which the program and the second model part here; null when they agree in all. */
function disagreementAt(seed: number, { ledger, lines, now }: Moment, inAllWays: boolean): Disagreement | null {
  const plain = lines as unknown as readonly PlainLine[];
  const model = judge(plain, now);
  const ways: [Way, () => Ledger, boolean][] = [['kept line by line', () => ledger, true]];
  if (inAllWays) {
    ways.push(['read all at once', () => readLog(lines), true]);
    // A release is judged where it stands, over what was struck by then; blanked out, that is another job.
    ways.push(['struck lines blanked out', () => readLog(blanked(ledger, lines)), false]);
  }
  for (const [way, standing, withRelease] of ways) {
    const asked = standing();
    const difference = differenceOf(openOf(asked, now), withRelease ? hasLeft(asked) : undefined, model, plain, now);
    if (difference) return { ...difference, seed, way };
  }
  return null;
}

export type Compared = { sequence: Sequence; disagreement: Disagreement | null };

class Parted extends Error {
  readonly at: Disagreement;
  constructor(at: Disagreement) {
    super('the ledgers part');
    this.at = at;
  }
}

const hourMs = 3_600_000;
/** A later look at the same lines: the bead that cures, the skin that forms, with nobody calling. */
function later(now: Stamp, hours: number, reopened: boolean): Stamp {
  const ms = Math.round(hours * hourMs);
  return reopened
    ? { ...now, atMs: now.atMs + ms, run: now.run + 1, awakeMs: 0 }
    : { ...now, atMs: now.atMs + ms, awakeMs: now.awakeMs + ms };
}

/** How often out of one a line is a moment to compare at, and in all ways. The end always is, and a later look. */
export type Often = { atLines: number; inAllWays: number };
export const everyLine: Often = { atLines: 1, inAllWays: 1 };

/** Plays a seed and compares on the way. At every line, a disagreement is the one at the shortest beginning. */
export function compared(seed: number, often: Often): Compared {
  const moments = chanceFrom(seed ^ 0x5eed);
  let last: Moment | undefined;
  const look = (moment: Moment, inAllWays: boolean): void => {
    const parted = disagreementAt(seed, moment, inAllWays);
    if (parted) throw new Parted({ ...parted, lines: [...parted.lines] });
  };
  try {
    const sequence = sequenceFrom(seed, (ledger, lines, now) => {
      last = { ledger, lines, now };
      if (moments.maybe(often.atLines)) look(last, moments.maybe(often.inAllWays));
    });
    if (last) {
      look(last, true);
      look({ ...last, now: later(last.now, moments.whole(1, 60), moments.maybe(0.4)) }, false);
    }
    return { sequence, disagreement: null };
  } catch (parted) {
    if (!(parted instanceof Parted)) throw parted;
    return { sequence: sequenceFrom(seed), disagreement: parted.at };
  }
}

/** The shortest beginning of the seed's job at which the two part; the later looks come after the whole. */
export const shortestOf = (seed: number): Disagreement | null => compared(seed, everyLine).disagreement;
