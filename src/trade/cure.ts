// When a sealant is cured: how long the air of the bench makes it, what has been earned through changing air, and how deep
// the skin has grown. It believes the times it is given; which clock they come from is not asked here.
import { type Answer, absurd, figure, isRefused, refused } from './answer.ts';
import { chosenHere, cited, commonPractice } from './cited.ts';
import { millisecondsPerHour } from './definitions.ts';
import { readTemperature } from './units.ts';
import { moistureCureFactor, unknownHumidityPct } from './vapour.ts';

export type Air = { celsius: number; humidityPct?: number };
export type CureLabel = {
  kind: 'moisture' | 'anaerobic' | 'non-setting' | 'dry';
  labelCelsius: number;
  labelHumidityPct: number;
  lowestCelsius?: number;
  /** The label's own hours for other temperatures. */
  atCelsius?: readonly { celsius: number; fullHours: number }[];
  /** Hours to full cure at the label's conditions. */
  fullHours?: number;
};

/** The trade's wait where a label gives none, hours. */
export const usualCureHours = cited(24, 'h', commonPractice);
const celsiusLimits = cited({ from: -40, to: 60 }, '°C', chosenHere);
const humidityLimits = cited({ from: 1, to: 100 }, '%', chosenHere);
const hoursLimits = cited({ from: 0, to: 1000 }, 'h', chosenHere);
const depthLimits = cited({ from: 0.01, to: 50 }, 'mm', chosenHere);

const absurdAir = ({ celsius, humidityPct }: Air) =>
  absurd('a bench of', celsius, celsiusLimits) ??
  (humidityPct === undefined ? undefined : absurd('a humidity of', humidityPct, humidityLimits));

const absurdLabel = (label: CureLabel) =>
  absurd('a label at', label.labelCelsius, celsiusLimits) ??
  absurd('a label at', label.labelHumidityPct, humidityLimits) ??
  (label.fullHours === undefined ? undefined : absurd('a label time of', label.fullHours, hoursLimits)) ??
  label.atCelsius?.map(({ fullHours }) => absurd('a label time of', fullHours, hoursLimits)).find(Boolean);

export type CureFactor = {
  /** How many times as long as on the label; Infinity below the lowest temperature. Never under 1. */
  factor: number;
  /** "10 °C, 40 %: 2.9 times as long". */
  because: string;
};

/**
 * How many times as long as on the label a product takes in this air.
 * @returns the factor and why; refused: air or label that cannot be
 * Source: the label's own figure first; else, curing by moisture, vapour pressures (J. Comyn, Int. J. Adhesion & Adhesives
 * 18 (1998) 247-253: at equal depth, time goes with 1/p). Anaerobic products go by their label alone.
 * Limits: air, not metal: between faces the moisture comes along the width of the flange, not through the bead.
 */
export function cureFactorIn(label: CureLabel, air: Air): Answer<CureFactor> {
  const wrong = absurdLabel(label) ?? absurdAir(air);
  if (wrong) return wrong;
  const humidityPct = air.humidityPct ?? unknownHumidityPct;
  const said = `${figure(air.celsius)} °C, ${air.humidityPct === undefined ? `humidity unknown, taken as ${humidityPct}` : figure(humidityPct)} %`;
  const of = (factor: number, by = ''): CureFactor => ({
    factor,
    because: factor > 1 ? `${said}: ${times(factor)} times as long${by}` : `${said}: as on the label`,
  });
  if (label.kind === 'non-setting' || label.kind === 'dry') return { factor: 1, because: 'has no cure' };
  if (label.lowestCelsius !== undefined && air.celsius < label.lowestCelsius) {
    return {
      factor: Number.POSITIVE_INFINITY,
      because: `${said}: below ${figure(label.lowestCelsius)} °C nothing cures`,
    };
  }
  if (air.celsius >= label.labelCelsius && humidityPct >= label.labelHumidityPct) return of(1);
  const printed = colderFigure(label, air.celsius);
  if (printed) {
    const full = label.fullHours ?? usualCureHours.value;
    return of(
      full > 0 ? Math.max(1, printed.fullHours / full) : 1,
      `, by the label's own figure for ${figure(printed.celsius)} °C`,
    );
  }
  if (label.kind === 'anaerobic') return { factor: 1, because: `${said}: the label gives no other time` };
  return of(
    moistureCureFactor(
      { celsius: air.celsius, humidityPct },
      { celsius: label.labelCelsius, humidityPct: label.labelHumidityPct },
    ),
  );
}

/** The label's figure for this temperature or the nearest colder. */
const colderFigure = (label: CureLabel, celsius: number) =>
  label.atCelsius
    ?.filter((row) => row.celsius <= celsius)
    .reduce<{ celsius: number; fullHours: number } | undefined>(
      (best, row) => (best && best.celsius >= row.celsius ? best : row),
      undefined,
    );

/** Rounded up to a tenth: nobody is told that a wait is shorter than it is. */
const times = (factor: number): string => (Math.ceil(factor * tenths - 1 / tenths ** 2) / tenths).toFixed(1);
const tenths = cited(10, 'tenths', 'decimal notation').value;

export type AirNoted = { atMs: number; air: Air };
export type CureForecast = {
  /** Hours of the label's time already earned. */
  earnedHours: number;
  /** Hours of the label's time still wanted. */
  leftHours: number;
  /** When it is ready in the air noted last; undefined while nothing cures. Milliseconds UTC. */
  readyAtMs?: number;
  /** Of the air noted last. */
  factor: number;
  because: string;
};

/**
 * Ready when: each noted air counts from when it was noted to the next.
 * @param needHours at the label's conditions @param beganAtMs, nowMs milliseconds UTC @param notes in order of time; the first
 * holds from the beginning if it was noted before it
 * @returns what is earned, what is left and when it is ready. Refused: absurd air, label or hours, no air noted by the beginning,
 * notes out of order, a beginning that is still to come
 * Source: as `cureFactorIn`; hours under each air add up.
 */
export function cureForecast(
  label: CureLabel,
  needHours: number,
  beganAtMs: number,
  notes: readonly AirNoted[],
  nowMs: number,
): Answer<CureForecast> {
  const wrong = absurd('a time of', needHours, hoursLimits);
  if (wrong) return wrong;
  if (nowMs < beganAtMs) return refused('the cure begins later than now');
  if (notes.some(({ atMs }, at) => at > 0 && atMs < (notes[at - 1] as AirNoted).atMs))
    return refused('the air was noted out of order');
  const before = notes.findLastIndex(({ atMs }) => atMs <= beganAtMs);
  if (before < 0) return refused('no air was noted when the cure began: it earns nothing until it is told');
  const held = notes.slice(before).filter(({ atMs }) => atMs <= nowMs);
  let earnedHours = 0;
  let last: CureFactor = { factor: 1, because: '' };
  for (const [at, { atMs, air }] of held.entries()) {
    const factor = cureFactorIn(label, air);
    if (isRefused(factor)) return factor;
    const from = Math.max(atMs, beganAtMs);
    const to = held[at + 1]?.atMs ?? nowMs;
    earnedHours += (to - from) / millisecondsPerHour.value / factor.factor;
    last = factor;
  }
  const leftHours = Math.max(0, needHours - earnedHours);
  const readyAtMs = leftHours === 0 ? nowMs : nowMs + leftHours * last.factor * millisecondsPerHour.value;
  return { earnedHours, leftHours, ...last, ...(Number.isFinite(readyAtMs) && { readyAtMs }) };
}

/**
 * How deep a moisture-curing bead is cured after some hours, from what is known at one time.
 * @returns mm; refused: hours or depth absurd, a known time of nothing
 * Source: z = √(2·V·P·p·t), J. Comyn, Int. J. Adhesion & Adhesives 18 (1998) 247-253: depth goes with the root of time.
 * Limits: open beads; in one air.
 */
export function cureDepthMm(known: { depthMm: number; hours: number }, hours: number): Answer<number> {
  const wrong =
    absurd('a depth of', known.depthMm, depthLimits) ??
    absurd('a time of', known.hours, hoursLimits) ??
    absurd('a time of', hours, hoursLimits);
  if (wrong) return wrong;
  return known.hours > 0
    ? known.depthMm * Math.sqrt(hours / known.hours)
    : refused('a depth after no time says nothing');
}

/** Reads the air of a bench: "10 °C, 40 %", "50F 40%", "10". Refused: temperature or humidity that cannot be. */
export function readAir(text: string): Answer<Air> {
  const parts = /^\s*(.*?)[\s,;]*(?:(\d+(?:[.,]\d+)?)\s*(?:%|pct|percent)(?:\s*rh)?)?\s*$/i.exec(text);
  const celsius = readTemperature(parts?.[1] ?? '');
  if (isRefused(celsius)) return celsius;
  const air: Air = { celsius, ...(parts?.[2] !== undefined && { humidityPct: Number(parts[2].replace(',', '.')) }) };
  return absurdAir(air) ?? air;
}
