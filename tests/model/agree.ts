// Holds a ledger against the second one: same lines, same open points, same release, or a difference one can read. It
// knows the other ledger only by what that answers.
import { type Judged, judge } from './judge.ts';
import type { PlainEntry, PlainLine, PlainStamp } from './plain.ts';

/** What is open, and whether the car has left where that is asked. */
export type Standing = { open: readonly string[]; released?: boolean };

export type Difference = {
  lines: readonly PlainLine[];
  now: PlainStamp;
  onlyAsked: string[];
  onlyModel: string[];
  releasedAsked?: boolean;
  releasedModel: boolean;
};

/** Open points may carry a point twice on one side only: lists are compared as they are, not as sets. */
function only(these: readonly string[], those: readonly string[]): string[] {
  const left = [...those];
  return these.filter((one) => {
    const at = left.indexOf(one);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

const misfits = (open: readonly string[]) => open.filter((point) => point.startsWith('misfit '));
/**
 * Where both find that something does not fit, the file is forged or broken and the car does not leave. What else would
 * be open had it fitted is not compared; the first line that does not fit is.
 */
function comparable(open: readonly string[], other: readonly string[]): readonly string[] {
  const first = (points: readonly string[]) => Math.min(...points.map((point) => Number(point.split(':')[1])));
  const here = misfits(open);
  return here.length > 0 && misfits(other).length > 0 ? [`misfit line:${first(here)}`] : open;
}

function differenceFrom(
  asked: Standing,
  model: Judged,
  lines: readonly PlainLine[],
  now: PlainStamp,
): Difference | null {
  const { open, released } = asked;
  const onlyAsked = only(comparable(open, model.open), comparable(model.open, open));
  const onlyModel = only(comparable(model.open, open), comparable(open, model.open));
  const sameRelease = released === undefined || released === model.released;
  if (onlyAsked.length + onlyModel.length === 0 && sameRelease) return null;
  return { lines, now, onlyAsked, onlyModel, releasedAsked: released, releasedModel: model.released };
}

/**
 * The two take the pressure of vapour from formulae that differ by up to 0.4 %. A cure within that of its end may be
 * over for the one and not for the other.
 */
const edges = [0.996, 1.004];

export function differenceOf(
  asked: Standing,
  model: Judged,
  lines: readonly PlainLine[],
  now: PlainStamp,
): Difference | null {
  const difference = differenceFrom(asked, model, lines, now);
  const onTheEdge = () => edges.some((patience) => !differenceFrom(asked, judge(lines, now, patience), lines, now));
  return difference && !onTheEdge() ? difference : null;
}

const shown = (entry: PlainEntry): string => JSON.stringify(entry);
const subjects = (points: readonly string[]) => points.map((point) => point.slice(point.indexOf(':') + 1));

/** The difference in words, with the lines that speak of what it is about, and the last few. */
export function inWords({ lines, now, onlyAsked, onlyModel, releasedAsked, releasedModel }: Difference): string {
  const about = subjects([...onlyAsked, ...onlyModel]);
  const told = lines.filter(
    (line, place) => place >= lines.length - 3 || about.some((name) => JSON.stringify(line.entries).includes(name)),
  );
  return [
    `after ${lines.length} lines, at ${new Date(now.atMs).toISOString()}, run ${now.run}`,
    ...onlyAsked.map((point) => `  only the ledger:       ${point}`),
    ...onlyModel.map((point) => `  only the second model: ${point}`),
    ...(releasedAsked !== undefined && releasedAsked !== releasedModel
      ? [`  released: the ledger says ${releasedAsked}, the second model ${releasedModel}`]
      : []),
    ...told.map((line) => `  line ${line.n} (run ${line.run}): ${line.entries.map(shown).join(' ')}`),
  ].join('\n');
}
