// T5: whether a circuit was looked at so soon after the start that a leak hides, being under no pressure yet.
import { lengthOfTimeText } from '../trade/civil-time.ts';
import { millisecondsPerMinute } from '../trade/definitions.ts';
import type { Stamp } from './line.ts';

/** Minutes: until about then a circuit is cold, and under no pressure to leak by. Common practice, no source. */
const coldFor = 5;

/** In milliseconds; undefined where a clock set back says nothing of it. */
export function ranFor(started: Stamp, at: Stamp): number | undefined {
  const ranMs = started.run === at.run ? at.awakeMs - started.awakeMs : at.atMs - started.atMs;
  return ranMs < 0 ? undefined : ranMs;
}
/** "16 s", "4 min": how long it had run; undefined where that is long enough, or where a clock set back says nothing of it. */
export function ranCold(started: Stamp, at: Stamp): string | undefined {
  const ranMs = ranFor(started, at);
  if (ranMs === undefined || ranMs >= coldFor * millisecondsPerMinute.value) return undefined;
  return ranMs < millisecondsPerMinute.value ? `${Math.round(ranMs / 1000)} s` : lengthOfTimeText(ranMs);
}
