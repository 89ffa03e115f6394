// What the log tells of a leftover beside the standing: where each fastener was laid, which calls back came too fast or in
// the midst of another area's, and what was struck. It reads; it weighs nothing.
import { isStruck, type Ledger } from './ledger.ts';
import type { Line } from './line.ts';
import type { Spec } from './spec.ts';
import { areaOf, type Hole, named } from './subjects.ts';

/** One fastener called back into its hole. */
export type CalledBack = {
  hole: Hole;
  n: number;
  /** Since the call back before it; Infinity for the first. */
  gapMs: number;
  /** Too soon after the one before to have been two fasteners, and sooner than this area's other calls. */
  fast?: true;
  /** The area whose calls stand before and after it. */
  amid?: string;
};
export type CalledOff = { spec: Spec; tray?: string; n: number };
export type LogTold = {
  /** Fastener → the tray it was last laid in. */
  trays: ReadonlyMap<string, string>;
  /** Area → its calls back in order. */
  back: ReadonlyMap<string, readonly CalledBack[]>;
  /** Hole → it was called off, the line was struck, and it was not called off since. */
  struckOff: ReadonlyMap<Hole, CalledOff>;
  /** Area → the one called off just before it: a size that was set there may have stayed. */
  areaBefore: ReadonlyMap<string, string>;
  /** Hole → its call back was struck and made again. */
  redone: ReadonlySet<Hole>;
};

/** No hand puts two in so soon after one another: chosen here, beside the area's own pace. */
const tooSoonMs = 1300;
const ofItsPace = 0.5;
/** Calls that went to the wrong area are noticed before there are more of them. */
const longestSlip = 3;

export function readTold(ledger: Ledger): LogTold {
  const trays = new Map<string, string>();
  const struckOff = new Map<Hole, CalledOff>();
  const struckBack = new Set<Hole>();
  const sequence: CalledBack[] = [];
  const areaBefore = new Map<string, string>();
  const seen = new Set<string>();
  let areaOff: string | undefined;
  let before: Line | undefined;
  for (let i = 0; i < ledger.lines.length; i++) {
    const line = ledger.lines.all[i] as Line;
    const struck = isStruck(ledger, line.n);
    for (const entry of line.entries) {
      if (entry.kind === 'fastener-removed') {
        const tray = named('tray', entry.to);
        if (struck) struckOff.set(entry.hole, { spec: foundIn(line, entry.fastener), tray, n: line.n });
        else {
          struckOff.delete(entry.hole);
          if (tray !== undefined) trays.set(entry.fastener, tray);
        }
        const area = areaOf(entry.hole);
        if (!seen.has(area) && areaOff !== undefined) areaBefore.set(area, areaOff);
        seen.add(area);
        areaOff = area;
      }
      if (struck) {
        if (entry.kind === 'fastener-fitted') struckBack.add(entry.hole);
        continue;
      }
      if (entry.kind === 'fastener-moved') {
        const tray = named('tray', entry.to);
        if (tray !== undefined) trays.set(entry.fastener, tray);
      }
      if (entry.kind === 'fastener-fitted' && !entry.working) {
        sequence.push({ hole: entry.hole, n: line.n, gapMs: gapBefore(before, line) });
        before = line;
      }
    }
  }
  const back = Map.groupBy(withAmid(sequence), (one) => areaOf(one.hole));
  for (const [area, calls] of back) back.set(area, withFast(calls));
  const redone = new Set(sequence.flatMap(({ hole }) => (struckBack.has(hole) ? [hole] : [])));
  return { trays, back, struckOff, areaBefore, redone };
}

function foundIn({ entries }: Line, fastener: string): Spec {
  const found = entries.find((e) => e.kind === 'fastener-found' && e.fastener === fastener);
  return found?.kind === 'fastener-found' ? found.spec : {};
}

/** Only keys are pressed one time too many: typed lines come as fast as they are pasted. One call may speak of several. */
function gapBefore(before: Line | undefined, line: Line): number {
  const pressed = line.by === 'key' || line.by === 'pad';
  return before && before.n !== line.n && pressed ? between(before, line) : Number.POSITIVE_INFINITY;
}

/** By the running clock within one opening of the program: the wall clock may be set in between. */
const between = (one: Line, other: Line): number =>
  one.run === other.run ? other.awakeMs - one.awakeMs : other.atMs - one.atMs;

/** Short runs of calls apart from the rest of their area, or with one other area's before and after. */
function withAmid(sequence: readonly CalledBack[]): CalledBack[] {
  const runs: CalledBack[][] = [];
  for (const one of sequence) {
    const last = runs.at(-1);
    if (last?.[0] && areaOf(last[0].hole) === areaOf(one.hole)) last.push(one);
    else runs.push([one]);
  }
  const areaOfRun = (i: number): string | undefined => runs[i]?.[0] && areaOf((runs[i][0] as CalledBack).hole);
  const lastOf = new Map(runs.map((_, i) => [areaOfRun(i), i]));
  return runs.flatMap((run, i) => {
    const amid = areaOfRun(i - 1);
    const goesOnLater = (lastOf.get(areaOfRun(i)) ?? i) > i;
    const isSlip = run.length <= longestSlip && amid !== undefined && (goesOnLater || amid === areaOfRun(i + 1));
    return isSlip ? run.map((one) => ({ ...one, amid })) : run;
  });
}

function withFast(calls: readonly CalledBack[]): CalledBack[] {
  const gaps = calls.map((one) => one.gapMs).toSorted((a, b) => a - b);
  const pace = gaps[Math.floor(gaps.length / 2)] ?? 0;
  return calls.map((one, i) =>
    i > 0 && one.gapMs < tooSoonMs && one.gapMs < pace * ofItsPace ? { ...one, fast: true } : one,
  );
}
