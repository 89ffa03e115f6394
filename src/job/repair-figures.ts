// F5 in figures: what to drill and how deep for a wire insert in a hole, how long an insert, and whether a drill that was
// used is the one. The depth there is in the boss comes first; without the thread nothing is said.
import { figure, isRefused } from '../trade/answer.ts';
import {
  drillingDepthIn,
  insertBoreMm,
  insertDrillMm,
  insertLengthDiameters,
  isWiderThanAny,
  judgeInsertDrill,
  leastEngagementMm,
  longestInsertMm,
  weakestParentShear,
} from '../trade/thread-repair.ts';
import { type Thread, threadNamed } from '../trade/threads.ts';
import { wantsOf } from './closed.ts';
import type { Entry } from './entry.ts';
import { type Ledger, stateOf } from './ledger.ts';
import { repairOf, stepLacking } from './repair.ts';
import type { Spec } from './spec.ts';
import type { Hole } from './subjects.ts';

/** What the hole wants, else what first came out of it: the thread is cut for it either way. */
function specFor(ledger: Ledger, hole: Hole): Spec | undefined {
  const h = stateOf(ledger, 'hole', hole);
  const first = h?.called.first === undefined ? undefined : stateOf(ledger, 'fastener', h.called.first)?.spec;
  return (h && wantsOf(ledger, h)) ?? first;
}
function threadOf(ledger: Ledger, hole: Hole): Thread | undefined {
  const named = specFor(ledger, hole)?.thread;
  const thread = named === undefined ? undefined : threadNamed(named);
  return thread === undefined || isRefused(thread) ? undefined : thread;
}

const depthThere = (ledger: Ledger, hole: Hole): number | undefined =>
  repairOf(ledger, hole).find((one) => one.step === 'depth')?.millimetres;

const usualClass = '8.8';
/** The length a bolt of that class wants in the weakest parent printed, mm; what is stronger never wants more. */
function insertMm(thread: Thread, grade: string | undefined): { lengthMm: number; words: string } {
  const diameters = insertLengthDiameters(weakestParentShear, grade ?? usualClass);
  const usual = isRefused(diameters) ? insertLengthDiameters(weakestParentShear, usualClass) : diameters;
  const times = isRefused(usual) ? leastEngagementMm(thread, 'aluminium') / thread.majorMm : usual;
  return { lengthMm: times * thread.majorMm, words: `${figure(times * thread.majorMm)} mm long (${figure(times)} d)` };
}

/** The length that is wanted, or the longest that goes into the depth there is. */
function insertFor(ledger: Ledger, hole: Hole, thread: Thread): { lengthMm?: number; words: string } {
  const wanted = insertMm(thread, specFor(ledger, hole)?.class);
  const thereMm = depthThere(ledger, hole);
  if (thereMm === undefined || !isRefused(drillingDepthIn(thread, wanted.lengthMm, thereMm))) return wanted;
  const longest = longestInsertMm(thread, thereMm);
  if (isRefused(longest)) return { words: longest.refused };
  return {
    lengthMm: longest,
    words: `${figure(longest)} mm long (${figure(longest / thread.majorMm)} d), the longest that goes into ${figure(thereMm)} mm`,
  };
}

/** "drill 6.22 to 6.41 mm": the bore, or why none is known. */
function drillWords(thread: Thread): string {
  const bore = insertBoreMm(thread);
  return isRefused(bore)
    ? bore.refused
    : `drill ${bore.fromMm.toFixed(2)} to ${bore.toMm.toFixed(2)} mm for an insert of ${thread.name}`;
}

/** Once the depth is known, before anything is cut: what to drill, how long an insert, how deep. A line each. */
function afterDepth(ledger: Ledger, hole: Hole, thereMm: number): string[] {
  const thread = threadOf(ledger, hole);
  if (!thread) return [];
  const { lengthMm, words } = insertMm(thread, specFor(ledger, hole)?.class);
  const depth = drillingDepthIn(thread, lengthMm, thereMm);
  return [drillWords(thread), `insert ${words}: ${isRefused(depth) ? depth.refused : depth.because}`];
}

/** Why a drill that was used is not the one for an insert here; undefined where it is, or nothing is known. */
function drillDoubted(ledger: Ledger, hole: Hole, drillMm: number): string | undefined {
  const thread = threadOf(ledger, hole);
  const judged = thread && judgeInsertDrill(thread, drillMm);
  return judged && !isRefused(judged) && judged.verdict !== 'fits' ? judged.because : undefined;
}

/** Why the drill of the repair last begun was not the one; a wider hole holds no insert. */
export function drilledWrong(ledger: Ledger, hole: Hole): string | undefined {
  const drilled = repairOf(ledger, hole).findLast(({ step }) => step === 'drilled');
  return drilled?.millimetres === undefined ? undefined : drillDoubted(ledger, hole, drilled.millimetres);
}
/** Why a figure is no drill's diameter: it says how deep, or is wider than any; undefined where it may be one. */
export function noDrillAcross(ledger: Ledger, hole: Hole, millimetres: number): string | undefined {
  const thereMm = depthThere(ledger, hole);
  const thread = threadOf(ledger, hole);
  const deep =
    thread && thereMm && drillingDepthIn(thread, insertMm(thread, specFor(ledger, hole)?.class).lengthMm, thereMm);
  const depths = [thereMm, deep && !isRefused(deep) ? deep.depthMm : undefined];
  if (depths.includes(millimetres)) return `${figure(millimetres)} mm is how deep, not how wide`;
  return thread && isWiderThanAny(thread, millimetres)
    ? `${figure(millimetres)} mm across is too wide for ${thread.name}`
    : undefined;
}
/** What is proposed at a step that is measured: the first drill that fits, the length of insert that a bolt wants at least. */
export function figureProposed(ledger: Ledger, hole: Hole, step: unknown): number | undefined {
  const thread = threadOf(ledger, hole);
  if (!thread) return undefined;
  if (step === 'insert') return insertFor(ledger, hole, thread).lengthMm;
  const drill = step === 'drilled' ? insertDrillMm(thread) : undefined;
  return drill === undefined || isRefused(drill) ? undefined : drill;
}

function afterInsert(ledger: Ledger, hole: Hole, lengthMm: number): string | undefined {
  const thread = threadOf(ledger, hole);
  if (!thread) return undefined;
  const wanted = insertMm(thread, specFor(ledger, hole)?.class);
  return lengthMm < wanted.lengthMm
    ? `${figure(lengthMm)} mm of insert is less than the bolt wants in a weak parent: ${wanted.words}`
    : undefined;
}

/** Why an insert so long does not go into the depth there is; undefined where it does, or nothing is known. */
export function tooDeep(ledger: Ledger, hole: Hole, insertLengthMm: number): string | undefined {
  const thereMm = depthThere(ledger, hole);
  if (thereMm === undefined) return undefined;
  if (insertLengthMm > thereMm)
    return `an insert of ${figure(insertLengthMm)} mm does not go into ${figure(thereMm)} mm`;
  const thread = threadOf(ledger, hole);
  const depth = thread && drillingDepthIn(thread, insertLengthMm, thereMm);
  return depth && isRefused(depth) ? depth.refused : undefined;
}

/** What is said beside a step that is called. */
export function besideStep(ledger: Ledger, entry: Entry): string[] {
  if (entry.kind !== 'repair-step' || entry.millimetres === undefined) return [];
  const { hole, step, millimetres } = entry;
  if (step === 'depth') return afterDepth(ledger, hole, millimetres);
  const said = step === 'drilled' ? drillDoubted(ledger, hole, millimetres) : undefined;
  const short = step === 'insert' ? afterInsert(ledger, hole, millimetres) : undefined;
  return [said, short].flatMap((line) => line ?? []);
}

/** "next: drilled, drill 6.22 to 6.41 mm …": the step a repair lacks, with its figure; undefined where none is begun. */
export function nextStepWords(ledger: Ledger, hole: Hole): string | undefined {
  const step = stepLacking(ledger, hole);
  if (!step) return undefined;
  const thread = threadOf(ledger, hole);
  if (step === 'drilled' && thread) return `next ${drillWords(thread)}`;
  if (step === 'insert' && thread) return `next insert, ${insertFor(ledger, hole, thread).words}`;
  return `next ${step}`;
}
