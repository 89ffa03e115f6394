// Beads and their clock in the second ledger. Everything is worked out from the stamps of all lines, struck or not, and
// from what the holes of the face looked like after each line that stands.
import type { PlainEntry, PlainLabel, PlainLine, PlainStamp } from './plain.ts';
import { type BeadNow, faceWasClean, type World } from './world.ts';

const hour = 3_600_000;

/** Pa over water. Magnus form with the constants 17.62 and 243.12 °C: WMO, Guide to Instruments and Methods of Observation (WMO-No. 8), annex on humidity formulae. */
export const saturationPa = (celsius: number): number => 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));

/** How many label hours pass in one hour of the bench, 0 when nothing is earned. */
export function rate(label: PlainLabel, at: { celsius: number; humidityPct?: number } | undefined): number {
  if (at === undefined) return 0;
  if (label.lowestCelsius !== undefined && at.celsius < label.lowestCelsius) return 0;
  const humidity = at.humidityPct ?? 40;
  if (at.celsius >= label.labelCelsius && humidity >= label.labelHumidityPct) return 1;
  let colder: { celsius: number; fullHours: number } | undefined;
  for (const figure of label.atCelsius ?? []) {
    if (figure.celsius <= at.celsius && (colder === undefined || figure.celsius > colder.celsius)) colder = figure;
  }
  if (colder !== undefined) return Math.min(1, fullHours(label) / colder.fullHours);
  if (label.kind !== 'moisture') return 1;
  const there = Math.min(humidity, label.labelHumidityPct) * saturationPa(Math.min(at.celsius, label.labelCelsius));
  return there / (label.labelHumidityPct * saturationPa(label.labelCelsius));
}

export const fullHours = (label: PlainLabel): number => label.fullHours ?? label.runHours ?? label.fillHours ?? 24;

const needsNoCure = (label: PlainLabel) => label.kind === 'non-setting' || label.kind === 'dry';

type Stretch = { from: PlainLine; to: PlainStamp; line?: number };

/** From a line on, each pair of neighbours, and from the last to now. */
function stretches(lines: PlainLine[], fromLine: number, now: PlainStamp): Stretch[] {
  const after = lines.filter((line) => line.n >= fromLine);
  return after.map((line, place) => {
    const next = after[place + 1];
    return { from: line, to: next ?? now, line: next?.n };
  });
}

const wallMs = (stretch: Stretch) => stretch.to.atMs - stretch.from.atMs;
const runningMs = (stretch: Stretch) =>
  stretch.to.run === stretch.from.run ? stretch.to.awakeMs - stretch.from.awakeMs : undefined;

/** Skin time is the longest it can have been. */
function longestMs(stretch: Stretch): number {
  const running = runningMs(stretch);
  return running === undefined ? Math.max(0, wallMs(stretch)) : Math.max(wallMs(stretch), running);
}

export function labelHoursEarned(
  world: World,
  lines: PlainLine[],
  label: PlainLabel,
  since: number,
  now: PlainStamp,
): number {
  let earned = 0;
  let away = 0;
  for (const stretch of stretches(lines, since, now)) {
    const running = runningMs(stretch);
    const base = running === undefined ? 0 : Math.max(0, Math.min(wallMs(stretch), running));
    let noted: { celsius: number; humidityPct?: number } | undefined;
    for (const [line, conditions] of world.conditions) if (line <= stretch.from.n) noted = conditions;
    const each = rate(label, noted);
    earned += base * each;
    away += (wallMs(stretch) - base) * each;
    // The time shown is right from here on, whatever it had been: a step back before it is owed no longer.
    if (stretch.line !== undefined && world.clockConfirmed.has(stretch.line)) {
      earned += Math.max(0, away);
      away = 0;
    }
  }
  return earned / hour;
}

/** What the hole looked like after a line: the last it was seen to be up to there. */
export function seenAfter(world: World, hole: string, line: number): string {
  let as = 'as found';
  for (const sight of world.holes.get(hole)?.seen ?? []) if (sight.line <= line) as = sight.as;
  return as;
}

const isSnug = (as: string) => ['snug', 'tight', 'as found', 'left empty'].includes(as);
const isLoose = (as: string) => as === 'slack' || as === 'off';

/** `together` is the line it first was (S2), `since` the line since which it is without a break (S3). */
export type BeadJudged = { bead: BeadNow; isVoid: boolean; cured: boolean; together?: number; since?: number };

function judgeBead(
  world: World,
  lines: PlainLine[],
  face: PlainEntry,
  bead: BeadNow,
  now: PlainStamp,
  patience: number,
): BeadJudged {
  const judged: BeadJudged = { bead, isVoid: false, cured: needsNoCure(bead.label) };
  if (!faceWasClean(world, face, bead)) judged.isVoid = true;
  if ((world.partsNow.get(face.part ?? '')?.removed ?? 0) > bead.at) judged.isVoid = true;
  for (const line of lines) {
    if (line.n < bead.line) continue;
    const holes = face.pressedBy.map((hole) => seenAfter(world, hole, line.n));
    if (judged.together !== undefined && holes.filter(isLoose).length >= 2) judged.isVoid = true;
    judged.since = holes.every(isSnug) ? (judged.since ?? line.n) : undefined;
    judged.together ??= judged.since;
  }
  if (bead.label.kind === 'moisture' && bead.label.skinMinutes !== undefined) {
    let ms = 0;
    for (const stretch of stretches(lines, bead.line, now)) {
      if (judged.together !== undefined && stretch.from.n >= judged.together) break;
      ms += longestMs(stretch);
    }
    if (ms > bead.label.skinMinutes * 60_000) judged.isVoid = true;
  }
  if (!judged.cured && judged.since !== undefined) {
    const earned = labelHoursEarned(world, lines, bead.label, judged.since, now);
    const asked = fullHours(bead.label) * (bead.label.kind === 'moisture' ? patience : 1);
    judged.cured = earned >= asked - 1e-9;
  }
  return judged;
}

/** Every bead ever laid on the face, in order; one laid before the last cleaning is `dropped`. */
export function judgeBeads(
  world: World,
  lines: PlainLine[],
  face: PlainEntry,
  now: PlainStamp,
  patience: number,
): (BeadJudged & { dropped: boolean })[] {
  const of = world.facesNow.get(face.face);
  return (of?.beads ?? []).map((bead) => ({
    ...judgeBead(world, lines, face, bead, now, patience),
    dropped: bead.cleaned !== of?.cleaned,
  }));
}
