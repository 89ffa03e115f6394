// When a bead has reached a label time, in words: a day and an hour by the clock of the bench, or what is wanting first.
import { civilTime, dateText, lengthOfTimeText, timeOfDayText } from '../trade/civil-time.ts';
import { millisecondsPerHour } from '../trade/definitions.ts';
import { type BeadStanding, everyBead, type Stage } from './beads.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import type { OpenPoint } from './open-point.ts';
import { named } from './subjects.ts';

const minute = 60_000;
const weekMs = 7 * 24 * 60 * minute;

/** Said to the minute it is over, never one before; all that says it says the same. */
export const wholeMinuteMs = (atMs: number): number => Math.ceil(atMs / minute) * minute;

/** "ready Thursday 19:26"; within a week the day is enough. */
export function readyText(bead: BeadStanding, stage: Stage, now: Stamp): string {
  if (bead.togetherAt === 0) return 'the face is not together';
  const ready = bead.readyAtMs[stage];
  if (ready === undefined) return 'ready once bench conditions it cures under are told';
  const onceRight = onceRightAtMs(bead, stage);
  if (onceRight === undefined) return `ready ${dayAndHour(ready, now)}`;
  return `nothing is earned until the clock is called right, then ${reachedWords(onceRight, now)}`;
}
const reachedWords = (atMs: number, now: Stamp): string =>
  atMs <= now.atMs ? 'it is ready' : `ready ${dayAndHour(atMs, now)}`;
/**
 * S7: when a stage is reached if the time shown is called right, where nothing counts before that: what is left would
 * slide on from minute to minute. Undefined where it counts already.
 */
export function onceRightAtMs(
  { readyAtMs, awayHours, factor, unwitnessed }: BeadStanding,
  stage: Stage,
): number | undefined {
  const ready = readyAtMs[stage];
  if (!unwitnessed || ready === undefined || awayHours <= worthAsking) return undefined;
  return ready - awayHours * factor * millisecondsPerHour.value;
}

/** The same of a bead that is to cure to the end, and when the engine may run before that. */
export function curingText(bead: BeadStanding, now: Stamp): string {
  const [run, full] = (['run', 'full'] as const).map((stage) => onceRightAtMs(bead, stage) ?? bead.readyAtMs[stage]);
  const before = run !== undefined && run !== full && !bead.reached.run ? `, may be run ${dayAndHour(run, now)}` : '';
  return `${readyText(bead, 'full', now)}${before}`;
}
function dayAndHour(readyAtMs: number, { atMs, zoneMin }: Stamp): string {
  const at = wholeMinuteMs(readyAtMs);
  const day = at - atMs < weekMs - 60 * minute ? civilTime(at, zoneMin).weekday : dateText(at, zoneMin);
  return `${day} ${timeOfDayText(at, zoneMin)}`;
}

const stageOf: Readonly<Record<string, Stage>> = {
  'bead-curing': 'full',
  'circuit-empty': 'fill',
  'circuit-unchecked': 'run',
  'road-test': 'run',
};
/** S5: what only time closes, or leads on to: "wait till Thursday 19:26". Nothing where another thing is wanting first. */
export function waitWords(ledger: Ledger, { code, at }: Pick<OpenPoint, 'code' | 'at'>, now: Stamp): string {
  const stage = stageOf[code];
  if (stage === undefined) return '';
  const face = named('face', at);
  const circuit = stage === 'fill' ? named('circuit', at) : undefined;
  const keeps = (one: string): boolean => {
    const keepsIn = stateOf(ledger, 'face', one)?.declared?.keepsIn ?? [];
    return circuit === undefined || keepsIn.length === 0 || keepsIn.includes(circuit);
  };
  const beads = everyBead(ledger, now).filter(
    (b) => !b.void && !b.reached[stage] && (face === undefined ? keeps(b.face) : b.face === face),
  );
  const times = beads.map((b) => b.readyAtMs[stage]);
  if (times.length === 0 || times.includes(undefined)) return '';
  return `wait till ${dayAndHour(Math.max(...times.map(Number)), now)}`;
}

/** Less than a minute away changes no cure. */
export const worthAsking = 1 / 60;
/** S7: what the clock has to do with the time told. */
export function awayText(bead: BeadStanding): string {
  const { awayHours } = bead;
  if (awayHours <= worthAsking || onceRightAtMs(bead, 'full') !== undefined) return '';
  return `; ${lengthOfTimeText(awayHours * millisecondsPerHour.value)} away count only once the clock is called right`;
}
