// Hand-made jobs for the second ledger: short words for entries, and a bench clock that moves as told. A job here is
// lines as they would stand in the file; nothing is decided, nothing checked.
import type { PlainLine, PlainSpec, PlainStamp } from './plain.ts';

export type Fields = Record<string, unknown>;
type Said = Record<string, unknown> & { kind: string };
type Passing = { passes: true; wallMs: number; awakeMs: number; reopened: boolean };
export type Step = Said | Said[] | Passing;

const hour = 3_600_000;

/** The program runs. */
export const wait = (hours: number): Passing => ({
  passes: true,
  wallMs: hours * hour,
  awakeMs: hours * hour,
  reopened: false,
});
/** The program is closed and opened again. */
export const away = (hours: number): Passing => ({ passes: true, wallMs: hours * hour, awakeMs: 0, reopened: true });
/** The lid is shut, or the clock put on or back. */
export const clockMoves = (hours: number): Passing => ({
  passes: true,
  wallMs: hours * hour,
  awakeMs: 0,
  reopened: false,
});

export const minutes = (n: number): number => n / 60;

/** One step a line, no time between lines but what is told; line 1 opens the job and notes the odometer. */
export function job(...steps: Step[]): { lines: PlainLine[]; now: PlainStamp } {
  let clock = { atMs: Date.UTC(2026, 2, 2, 7), zoneMin: 60, run: 1, awakeMs: 1000 };
  const lines: unknown[] = [];
  const write = (entries: Said[]) =>
    lines.push({ n: lines.length + 1, ...clock, call: 'hand-made', by: 'line', facing: {}, entries });
  write([
    { kind: 'job-opened', vehicle: { label: 'blue one' } },
    { kind: 'odometer-noted', distance: 120_000, unit: 'km' },
  ]);
  for (const step of steps) {
    if ('passes' in step) {
      const { wallMs, awakeMs, reopened } = step as Passing;
      const run = reopened ? clock.run + 1 : clock.run;
      clock = { ...clock, atMs: clock.atMs + wallMs, run, awakeMs: reopened ? 1000 : clock.awakeMs + awakeMs };
    } else write(Array.isArray(step) ? step : [step as Said]);
  }
  return { lines: lines as PlainLine[], now: clock };
}

export const m6: PlainSpec = { kind: 'bolt', head: 'hex 10', thread: 'M6', lengthMm: 25 };
export const stretch: PlainSpec = { kind: 'bolt', head: 'hex 19', thread: 'M14x1.5', lengthMm: 65, oneUse: true };

const said = (kind: string, fields: Fields): Said => ({ ...fields, kind });
export const entry = said;

export const area = (name: string, more: Fields = {}) => said('area-declared', { area: name, planned: true, ...more });
export const hole = (name: string, more: Fields = {}) => said('hole-declared', { hole: name, ...more });
export const found = (at: string, fastener: string, spec: PlainSpec = m6) =>
  said('fastener-found', { hole: at, fastener, spec });
export const slack = (at: string, fastener: string) => said('fastener-slackened', { hole: at, fastener });
export const off = (at: string, fastener: string, to = 'tray:1') =>
  said('fastener-removed', { hole: at, fastener, to });
export const putIn = (at: string, fastener: string, more: Fields = {}) =>
  said('fastener-fitted', { hole: at, fastener, from: 'tray:1', spec: m6, ...more });
export const snug = (at: string, fastener: string) =>
  said('fastener-tightened', { hole: at, fastener, pass: 'snug', last: false });
export const tight = (at: string, fastener: string) =>
  said('fastener-tightened', { hole: at, fastener, pass: 'final', last: true });
export const back = (at: string, fastener: string, more: Fields = {}) => [
  putIn(at, fastener, more),
  tight(at, fastener),
];
export const toolsOut = said('tools-out', {});
export const count = (count: number, tray = '1') => said('tray-counted', { tray, count });
/** Nothing left about: what nearly every job ends with. */
export const cleared = [toolsOut, count(0)];
export const strike = (...lines: number[]) => said('calls-struck', { lines });
export const restore = (...lines: number[]) => said('calls-restored', { lines });
export const box = (name: string, spec: PlainSpec = m6, quantity = 1) =>
  said('box-filled', { name, sort: 'fastener', quantity, spec });
export const released = said('released', { who: 'Ada' });

export type Case = { name: string; job: { lines: PlainLine[]; now: PlainStamp }; open: string[]; released?: boolean };
