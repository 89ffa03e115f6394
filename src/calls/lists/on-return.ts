// What is said first when a job is opened again (T8), and whether the clock is to be asked for (S7).
import { type BeadStanding, beadsOn } from '../../job/beads.ts';
import { every, lastLine, tallyOf } from '../../job/ledger.ts';
import { subjectText } from '../../job/subjects.ts';
import { type Hanging, whatHangs } from '../../job/what-hangs.ts';
import { civilTime, timeOfDayText } from '../../trade/civil-time.ts';
import { type Desk, nextOff } from '../desk.ts';
import { nextArea } from '../next-area.ts';
import { openSaid, outParts } from '../tally-words.ts';
import { beadWords } from './sealing.ts';

/** How much is out, and where work would go on: the first thing one asks on the second day. */
export function whereItStands(desk: Desk): string {
  const { all } = desk.ledger.tallies;
  // In the middle of an area work goes on there.
  const isHalf = nextOff(desk) !== undefined && desk.facing.area !== undefined;
  const strip =
    isHalf && tallyOf(desk.ledger, desk.facing.area ?? '').touched > 0 ? desk.facing.area : nextArea(desk, false);
  const build = nextArea(desk, true);
  const next = [
    ...(strip === undefined ? [] : [`next to take off: ${strip}`]),
    ...(build === undefined ? [] : [`next to put back: ${build}`]),
  ];
  return [[...outParts(all), openSaid(all)].join(', '), ...next].join('; ');
}

/** What there may be many of is told in one line a kind: "off: wheel, arch liner". */
const gathered = { 'part-off': 'off', in: 'in', parted: 'parted', drained: 'drained' } as const;
const isGathered = (what: Hanging['what']): what is keyof typeof gathered => what in gathered;

/** Only snug, on for now, curing, hanging: one line each, then what is off, in, parted and drained. */
export function hangingWords(desk: Desk): string[] {
  const all = whatHangs(desk.ledger, desk.now);
  const lines = all
    .filter(({ what }) => !isGathered(what))
    .map((one) =>
      one.bead && !one.bead.void && one.bead.togetherAt > 0 ? `${one.words}, ${beadWords(one.bead, desk)}` : one.words,
    );
  const kinds = (['part-off', 'in', 'parted', 'drained'] as const).flatMap((what) => {
    const names = all.filter((one) => one.what === what).map(({ at }) => subjectText(at));
    return names.length > 0 ? [`${gathered[what]}: ${names.join(', ')}`] : [];
  });
  return [...lines, ...kinds];
}

const leastAwayHours = 1 / 60;
/**
 * "Thursday 14:20", to be confirmed while something cures and time passed that nobody saw; else undefined. Opened anew,
 * however soon: until a call is made in this run its minutes are time away as well.
 */
export function timeToConfirm(desk: Desk): string | undefined {
  const beads = [...every(desk.ledger, 'face')].flatMap((face) => beadsOn(desk.ledger, face, desk.now));
  const isAnew = lastLine(desk.ledger)?.run !== desk.now.run;
  const isEarning = (b: BeadStanding): boolean => b.readyAtMs.full !== undefined;
  const waits = beads.some(
    (b) => !b.void && !b.reached.full && (b.awayHours > leastAwayHours || (isAnew && isEarning(b))),
  );
  if (!waits) return undefined;
  const { weekday } = civilTime(desk.now.atMs, desk.now.zoneMin);
  return `${weekday} ${timeOfDayText(desk.now.atMs, desk.now.zoneMin)}`;
}
