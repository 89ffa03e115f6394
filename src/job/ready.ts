// When a bead has reached a label time, in words: a day and an hour by the clock of the bench, or what is wanting first.
import { civilTime, dateText, lengthOfTimeText, timeOfDayText } from '../trade/civil-time.ts';
import { millisecondsPerHour } from '../trade/definitions.ts';
import type { BeadStanding, Stage } from './beads.ts';
import type { Stamp } from './line.ts';

const minute = 60_000;
const weekMs = 7 * 24 * 60 * minute;

/** "ready Thursday 19:26"; within a week the day is enough. */
export function readyText(bead: BeadStanding, stage: Stage, { atMs, zoneMin }: Stamp): string {
  if (bead.togetherAt === 0) return 'the face is not together';
  const ready = bead.readyAtMs[stage];
  if (ready === undefined) return 'ready once bench conditions it cures under are told';
  // Said to the minute it is over, never one before.
  const at = Math.ceil(ready / minute) * minute;
  const day = at - atMs < weekMs - 60 * minute ? civilTime(at, zoneMin).weekday : dateText(at, zoneMin);
  return `ready ${day} ${timeOfDayText(at, zoneMin)}`;
}

/** Less than a minute away changes no cure. */
export const worthAsking = 1 / 60;
/** S7: why the time slides on from minute to minute, and what the clock has to do with it. */
export function awayText({ awayHours }: BeadStanding): string {
  if (awayHours <= worthAsking) return '';
  return `; ${lengthOfTimeText(awayHours * millisecondsPerHour.value)} away count only once the clock is called right`;
}
