// What is asked and said about the steps of a thread repair: which is next, whether a figure is meant that no drill can have,
// what stands in the way before a figure is typed, and that a whole repair leaves its finding to be put right.
import { blocked } from '../job/decide.ts';
import type { Entry } from '../job/entry.ts';
import { type Ledger, lastLine, stateOf } from '../job/ledger.ts';
import { repairOf, stepLacking } from '../job/repair.ts';
import { drilledWrong, figureProposed, noDrillAcross } from '../job/repair-figures.ts';
import type { Said } from '../job/said.ts';
import { areaOf, type Hole, named, subjectText, withinArea } from '../job/subjects.ts';
import type { Desk } from './desk.ts';
import type { Args } from './form.ts';
import type { Besides, No, Once, Otherwise } from './row.ts';
import { wayOut } from './ways-out.ts';

const asked: Readonly<Record<string, string>> = {
  depth: 'how deep the material is there, mm',
  drilled: 'the drill, how wide across, mm',
  insert: 'how long the insert is, mm',
};
/** The step that comes next; undefined once the repair is whole, when only a new depth begins another. */
export function nextStep(ledger: Ledger, hole: unknown): string | undefined {
  if (typeof hole !== 'string') return undefined;
  return repairOf(ledger, hole).length === 0 ? 'depth' : stepLacking(ledger, hole);
}
const stepOf = ({ ledger }: Desk, { hole, step }: Args): string | undefined =>
  (step as string | undefined) ?? nextStep(ledger, hole);
const withinOrWhole = (hole: unknown, area: string | undefined): string =>
  typeof hole !== 'string' ? 'thread repair' : areaOf(hole) === area ? withinArea(hole) : subjectText(`hole:${hole}`);

export const askedMillimetres = (args: Args, desk: Desk): string =>
  `${withinOrWhole(args.hole, desk.facing.area)}: ${asked[stepOf(desk, args) ?? ''] ?? 'millimetres'}`;
/** With a step to be chosen the repair is whole. */
export const askedStep = ({ hole }: Args, { facing }: Desk): string =>
  `${withinOrWhole(hole, facing.area)} is repaired, and put right comes next; begun anew with`;

export function figureStanding(desk: Desk, slot: string, args: Args): string | undefined {
  const { hole } = args;
  if (slot !== 'millimetres' || typeof hole !== 'string') return undefined;
  return figureProposed(desk.ledger, hole, stepOf(desk, args))?.toString();
}

/** F6: no figure is asked for where the works stand open and not masked. */
export function notYetCut(desk: Desk, args: Args): No | undefined {
  const step = stepOf(desk, args);
  if (step !== 'drilled' && step !== 'tapped') return undefined;
  const stop = blocked(desk.ledger, { verb: 'repair-thread', hole: args.hole, step }, desk.now);
  if (!stop) return undefined;
  const by = wayOut(stop);
  return { because: stop.because, instead: stop.instead, ...(by !== undefined && { by }) };
}

export function askedOnDrill(desk: Desk, args: Args): Besides | undefined {
  const { hole, millimetres, late } = args;
  if (late !== undefined || typeof hole !== 'string' || typeof millimetres !== 'number') return undefined;
  const why = stepOf(desk, args) === 'drilled' ? noDrillAcross(desk.ledger, hole, millimetres) : undefined;
  if (why === undefined) return undefined;
  return {
    key: 'late',
    title: `${subjectText(`hole:${hole}`)}: ${why}; is that the drill, across?`,
    choices: [
      { value: 'no', text: 'no: the drill is measured across, and called anew' },
      { value: 'all the same', text: 'right: the drill is as wide as that' },
    ],
    givesUp: 'no',
    inWords: 'say how wide the drill is; or say it with "all the same" at its end',
  };
}

/** F5: a hole drilled wider than an insert holds in is no better for one; of what the hole held, and not its thread, the drill says nothing. */
export function askedOnDrilledWrong({ ledger }: Desk, { finding }: Said): Once | undefined {
  const f = typeof finding === 'string' ? stateOf(ledger, 'finding', finding) : undefined;
  const why = f?.fastener === undefined ? drilledWrong(ledger, named('hole', f?.at ?? '') ?? '') : undefined;
  return f && why
    ? {
        because: `${subjectText(f.at)} was drilled so: ${why}`,
        instead: 'repaired anew, from its depth',
        by: 'repair',
        again: 'calls it put right all the same',
      }
    : undefined;
}
/** F3: it speaks of the fastener that came out, and is put right by another one in the hole. */
export const waitsForAnother = (ledger: Ledger, hole: Hole, fastener: string | undefined): boolean =>
  fastener !== undefined && stateOf(ledger, 'hole', hole)?.called.occupant === undefined;
const openAt = (ledger: Ledger, holes: readonly Hole[]) =>
  holes.flatMap((hole) => (stateOf(ledger, 'hole', hole)?.called.findings ?? []).map((id) => ({ hole, id })));
/** F3: the thread is mended, and what was found there is open until somebody says so. */
export function wholeNow(entries: readonly Entry[], ledger: Ledger): Otherwise | undefined {
  const whole = entries.flatMap((e) => (e.kind === 'repair-step' && !stepLacking(ledger, e.hole) ? [e.hole] : []));
  const open = openAt(ledger, whole);
  if (open.length === 0) return undefined;
  const mended = open.find((one) => isMended(ledger, one));
  if (!mended) return { words: 'The repair is whole; a new one in, and then put right', by: 'new' };
  const which = open.length > 1 ? `put ${mended.id} right` : 'put right';
  return { words: `The repair is whole; ${which}`, by: 'put-right' };
}
const isMended = (ledger: Ledger, { hole, id }: { hole: Hole; id: string }): boolean =>
  !waitsForAnother(ledger, hole, stateOf(ledger, 'finding', id)?.fastener);
/** The finding that the last call's repair has mended, where the one picked waits for another fastener yet. */
export function mendedNow(ledger: Ledger, picked: string | undefined): string | undefined {
  const whole = (lastLine(ledger)?.entries ?? []).flatMap((e) =>
    e.kind === 'repair-step' && !stepLacking(ledger, e.hole) ? [e.hole] : [],
  );
  const mended = openAt(ledger, whole).filter((one) => isMended(ledger, one));
  return mended.some(({ id }) => id === picked) ? picked : mended[0]?.id;
}
