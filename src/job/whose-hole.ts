// K2, the other way round: an open hole asks which of what is left over fits it, and which goes in and must not stay.
import { isRefused } from '../trade/answer.ts';
import { nearMiss } from '../trade/near-miss.ts';
import { threadDifference } from '../trade/thread-compared.ts';
import { threadNamed } from '../trade/threads.ts';
import { mayNotTrade } from './choose.ts';
import { wantsOf } from './closed.ts';
import { mayNotServe } from './guards.ts';
import type { FastenerState } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { levelToFill } from './levels.ts';
import type { Said } from './said.ts';
import { contradictions, isAlike, type Spec, seenFields } from './spec.ts';
import { fromBox, type Hole, type Place } from './subjects.ts';

export type FitVerdict = 'likely' | 'possible' | 'must not go';
export type Leftover = {
  /** Alike and in one place: fasteners, or a stray, or a name of the parts box. */
  of: readonly string[];
  spec: Spec;
  place: Place;
  verdict: FitVerdict;
  because: string;
  call?: Said;
};

const order: readonly FitVerdict[] = ['likely', 'possible', 'must not go'];

/** What is left over for a hole: its own first, then what fits, then what goes in and must not; the rest is left out. */
export function whatFits(ledger: Ledger, hole: Hole): Leftover[] {
  const h = stateOf(ledger, 'hole', hole);
  const own = h?.called.own ?? h?.called.first;
  const wants =
    (h && wantsOf(ledger, h)) ?? (own === undefined ? undefined : stateOf(ledger, 'fastener', own)?.spec) ?? {};
  const ofTrays = [...every(ledger, 'fastener')]
    .filter((f) => f.place.startsWith('tray:'))
    .flatMap((f) => judged({ of: [f.id], spec: f.spec, place: f.place }, wants, serving(ledger, f, hole, own)));
  const strays = [...every(ledger, 'stray')]
    .filter((s) => !s.settled)
    .flatMap((s) =>
      judged({ of: [s.id], spec: s.spec, place: s.place }, wants, { call: { verb: 'give-stray', stray: s.id, hole } }),
    );
  const bought = [...every(ledger, 'box')]
    .filter((b) => b.sort === 'fastener' && b.left > 0)
    .flatMap((b) =>
      judged({ of: [b.name], spec: b.spec ?? {}, place: fromBox(b.name) }, wants, {
        call: { verb: 'fit', hole, box: b.name },
      }),
    );
  const held = stateOf(ledger, 'hole', levelToFill(ledger, hole))?.called.occupant;
  const all = [...ofTrays, ...strays, ...bought];
  return together(held ? all.map((one) => whereOneIs(one, held.level)) : all).toSorted(
    (a, b) => order.indexOf(a.verdict) - order.indexOf(b.verdict) || Number(b.isOwn ?? 0) - Number(a.isOwn ?? 0),
  );
}

/** L1: nothing goes in where one is, however well it fits. */
function whereOneIs({ call: _, ...one }: Judged, level: string): Judged {
  if (one.verdict === 'must not go') return one;
  return { ...one, verdict: 'possible', because: `${one.because}; but one is in there, called ${level}` };
}

type Serving = { isOwn?: boolean; barred?: string; call?: Said };
type Judged = Leftover & { isOwn?: boolean };

function serving(ledger: Ledger, f: FastenerState, hole: Hole, own: string | undefined): Serving {
  const isOwn = f.id === own;
  const barred = mayNotServe(f, false)?.because ?? mayNotTrade(ledger, f, hole) ?? undefined;
  return { isOwn, ...(barred && { barred }), call: { verb: 'fit', hole, ...(!isOwn && { fastener: f.id }) } };
}

function judged(one: Pick<Leftover, 'of' | 'spec' | 'place'>, wants: Spec, { isOwn, barred, call }: Serving): Judged[] {
  const wrong = whyNot(one.spec, wants);
  if (wrong === 'does not go in') return [];
  const mustNot = barred ?? wrong;
  if (mustNot !== undefined) return [{ ...one, verdict: 'must not go', because: mustNot, ...(isOwn && { isOwn }) }];
  const unknown = seenFields.filter((field) => wants[field] !== undefined && one.spec[field] === undefined);
  const isFull = unknown.length === 0 && wants.thread !== undefined;
  const coated = otherCoating(one.spec, wants);
  const because = isOwn
    ? 'its own'
    : coated !== undefined
      ? coated
      : isFull
        ? 'like it in every known field'
        : unknown.length > 0
          ? `nothing known speaks against it; ${unknown.map(wordOf).join(', ')} not known`
          : 'nothing known speaks against it';
  return [
    {
      ...one,
      verdict: isOwn || (isFull && coated === undefined) ? 'likely' : 'possible',
      because,
      call,
      ...(isOwn && { isOwn }),
    },
  ];
}
/** It may go in all the same (L5 asks for no coating); whether it should is for whoever looks. */
const otherCoating = (spec: Spec, wants: Spec): string | undefined =>
  spec.coating === undefined || wants.coating === undefined || isAlike('coating', spec, wants)
    ? undefined
    : `${spec.coating}, it wants ${wants.coating}; nothing else known speaks against it`;
const wordOf = (field: string): string => (field === 'lengthMm' ? 'length' : field);

/** What stands against a fastener that goes in; undefined where nothing known does. */
function whyNot(spec: Spec, wants: Spec): string | undefined {
  const differs = contradictions(wants, spec);
  if (differs.length === 0) return undefined;
  if (differs.includes('kind')) return 'does not go in';
  const thread = differs.includes('thread') ? threadAgainst(spec, wants) : undefined;
  if (thread === 'does not go in') return thread;
  const [mine, theirs] = [spec.lengthMm ?? 0, wants.lengthMm ?? 0];
  const lines = [
    thread,
    differs.includes('lengthMm')
      ? mine > theirs
        ? `${mine - theirs} mm too long: it bottoms or reaches what is behind`
        : `${theirs - mine} mm too short: too little thread holds`
      : undefined,
    differs.includes('class') ? `class ${spec.class}, it wants ${wants.class}` : undefined,
    differs.includes('head') ? `head ${spec.head}, it wants ${wants.head}` : undefined,
  ];
  return lines.filter((line) => line !== undefined).join('; ');
}

function threadAgainst(spec: Spec, wants: Spec): string {
  const [mine, theirs] = [threadNamed(spec.thread ?? ''), threadNamed(wants.thread ?? '')];
  if (isRefused(mine) || isRefused(theirs)) return 'does not go in';
  const near = spec.kind === 'nut' ? nearMiss(theirs, mine) : nearMiss(mine, theirs);
  if (near?.starts) return near.text;
  return threadDifference(mine, theirs) === 'pitch'
    ? `${mine.name} for ${theirs.name}: another pitch`
    : 'does not go in';
}

/** Alike, in one place and of one verdict they are one row. */
function together(all: readonly Judged[]): Judged[] {
  const groups = Map.groupBy(all, (one) => JSON.stringify([one.spec, one.place, one.verdict, one.because]));
  return [...groups.values()].map((group) => ({
    ...(group[0] as Judged),
    of: group.flatMap((one) => one.of),
  }));
}
