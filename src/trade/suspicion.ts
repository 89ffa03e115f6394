// What is odd about one fastener as called: by itself, beside its neighbours, beside the plan. Specs in, ranked lines out;
// which of them is already answered, and what is asked of whom, is the job's. Length alone is never odd.
import { isRefused } from './answer.ts';
import { cited, commonPractice } from './cited.ts';
import { headCarries, isJudgedByHead } from './heads.ts';
import { nearMiss } from './near-miss.ts';
import { threadDifference } from './thread-compared.ts';
import { hasListedDiameter, isSameThread, nameOfThread, type Thread, threadNamed } from './threads.ts';

/** A fastener as far as it is known: "bolt", "hex 14", "M10x1.25", mm, "10.9". */
export type Called = { kind?: string; head?: string; thread?: string; lengthMm?: number; class?: string };

/** Gravest first: what strips a thread, then what will not go in, then what only looks wrong. */
const codes = [
  'near-miss',
  'other-system',
  'other-pitch',
  'other-diameter',
  'no-such-thread',
  'head-and-thread',
  'other-kind',
  'other-class',
  'other-head',
  'head-asked',
] as const;
export type SuspicionCode = (typeof codes)[number];
export type Suspicion = { code: SuspicionCode; against: 'itself' | 'neighbours' | 'plan'; line: string };

/** How many neighbours must agree before one of another mind is odd, and what part of those who are known. */
const agreement = cited({ neighbours: 2, part: 2 / 3 }, '–', commonPractice).value;

export type Beside = {
  neighbours?: readonly Called[];
  plan?: Called;
  /** A wheel nut or a crank bolt: its head follows no table, and is its own. */
  headIsItsOwn?: boolean;
};

/**
 * What is odd about a fastener, gravest first, one line each; empty where nothing is.
 * @param called as it was called; what is unknown is not judged
 * @param beside its neighbours in the area and what the plan says of its hole, as far as there are any
 * Limits: each kind is compared with its own; plugs, unions, bleeders, sensors, studs, clips and their like are compared with
 * the plan alone, and never by head. Where the plan says the same as was called, neither neighbours nor tables are asked; where two
 * neighbours have the same head and thread, no table is.
 * Sources: as `headCarries` and `nearMiss`; how many neighbours make a rule is common practice, no source.
 */
export function suspicionsOf(
  called: Called,
  { neighbours = [], plan, headIsItsOwn = false }: Beside = {},
): Suspicion[] {
  const hasTable = isJudgedByHead(called.kind);
  const judged = hasTable && !headIsItsOwn ? called : withoutHead(called);
  const own = neighbours.filter(({ kind }) => kind === called.kind);
  const found = [
    ...(hasTable && !isAsPlanned(judged, plan) && !isAsTheOthers(judged, own) ? byItself(judged) : []),
    ...(plan ? against('plan', judged, plan) : []),
    ...(hasTable ? against('neighbours', judged, unlikeAll(judged, own, plan)) : []),
  ];
  const once = found.filter(({ line }, at) => found.findIndex((one) => one.line === line) === at);
  return once.sort((a, b) => codes.indexOf(a.code) - codes.indexOf(b.code));
}
/** Several of one head and thread that no table puts together are a maker's own, not several wrong ones. */
const isAsTheOthers = ({ head, thread }: Called, own: readonly Called[]): boolean =>
  thread !== undefined &&
  own.filter((one) => one.head === head && one.thread !== undefined && isSameThread(one.thread, thread)).length >=
    agreement.neighbours;
const withoutHead = ({ head: _, ...rest }: Called): Called => rest;
const isAsPlanned = (called: Called, plan: Called | undefined): boolean =>
  plan?.thread !== undefined &&
  called.thread !== undefined &&
  plan.head === called.head &&
  isSameThread(plan.thread, called.thread);

function byItself({ head, thread }: Called): Suspicion[] {
  const known = thread === undefined ? undefined : threadNamed(thread);
  if (known !== undefined && isRefused(known)) {
    // A pipe thread, a maker's own or a size beyond the tables is not judged; M10x1.35 is a slip or a wrong gauge.
    return hasListedDiameter(thread ?? '') ? [{ code: 'no-such-thread', against: 'itself', line: known.refused }] : [];
  }
  const judged = head === undefined || thread === undefined ? undefined : headCarries(head, thread);
  if (judged === undefined || isRefused(judged) || judged.because === '') return [];
  const { verdict, because, carries } = judged;
  if (verdict === 'other-thread' || verdict === 'no-thread')
    return [{ code: 'head-and-thread', against: 'itself', line: because }];
  return verdict === 'met' && !carries.includes(nominalOf(known as Thread))
    ? [{ code: 'head-asked', against: 'itself', line: because }]
    : [];
}
const nominalOf = ({ name }: Thread): string => name.split(/[x-]/)[0] as string;

/** What most neighbours are, in each field where the called one stands alone and the plan does not take its side. */
function unlikeAll(called: Called, neighbours: readonly Called[], plan: Called | undefined): Called {
  const common = <F extends 'head' | 'thread' | 'class'>(field: F): Called[F] => {
    const as = field === 'thread' ? nameOfThread : (value: string) => value;
    const mine = called[field];
    const planned = plan?.[field];
    if (mine === undefined || (planned !== undefined && as(planned) === as(mine))) return undefined;
    const said = neighbours.flatMap((one) => one[field] ?? []);
    const groups = Map.groupBy(said, as);
    if (groups.has(as(mine))) return undefined;
    const most = [...groups.values()].reduce((best, group) => (group.length > best.length ? group : best), []);
    return most.length >= agreement.neighbours && most.length >= said.length * agreement.part
      ? (most[0] as Called[F])
      : undefined;
  };
  const lengths = new Set(neighbours.flatMap(({ lengthMm }) => lengthMm ?? []));
  const [length] = lengths.size === 1 ? lengths : [];
  return { head: common('head'), thread: common('thread'), class: common('class'), lengthMm: length };
}

function against(whom: 'neighbours' | 'plan', called: Called, other: Called): Suspicion[] {
  const asWhom = whom === 'plan' ? 'as planned' : 'as its neighbours';
  const differs = (field: 'kind' | 'head' | 'class', code: SuspicionCode): Suspicion[] => {
    const [mine, theirs] = [called[field], other[field]];
    return mine === undefined || theirs === undefined || mine === theirs
      ? []
      : [{ code, against: whom, line: `${field === 'class' ? 'class ' : ''}${mine}, not ${theirs} ${asWhom}` }];
  };
  const found = [
    ...threadAgainst(whom, called, other, asWhom),
    ...differs('kind', 'other-kind'),
    ...differs('class', 'other-class'),
    ...differs('head', 'other-head'),
  ];
  return found.map((one, at) => (at === 0 ? { ...one, line: one.line + lengthToo(called, other) } : one));
}

function threadAgainst(whom: 'neighbours' | 'plan', called: Called, other: Called, asWhom: string): Suspicion[] {
  if (called.thread === undefined || other.thread === undefined || isSameThread(other.thread, called.thread)) return [];
  const [mine, theirs] = [threadNamed(called.thread), threadNamed(other.thread)];
  const plain = `${called.thread}, not ${other.thread} ${asWhom}`;
  if (isRefused(mine) || isRefused(theirs)) return [{ code: 'other-diameter', against: whom, line: plain }];
  const near = called.kind === 'nut' ? nearMiss(theirs, mine) : nearMiss(mine, theirs);
  if (near?.feel === 'feels right, then strips')
    return [{ code: 'near-miss', against: whom, line: `${plain}: ${near.text}` }];
  const difference = threadDifference(mine, theirs);
  const code = difference === 'system' ? 'other-system' : difference === 'pitch' ? 'other-pitch' : 'other-diameter';
  return [{ code, against: whom, line: near ? `${plain}: ${near.text}` : plain }];
}

/** Never odd by itself, but told beside what is. */
function lengthToo({ lengthMm: mine }: Called, { lengthMm: theirs }: Called): string {
  if (mine === undefined || theirs === undefined || Math.abs(mine - theirs) < 1) return '';
  return `; ${Number(Math.abs(mine - theirs).toFixed(1))} mm ${mine > theirs ? 'longer' : 'shorter'}`;
}
