// What of the parts box a job still needs, by what stands open now and what is still to come off; the rest is surplus. It
// is read for people: nothing is asked for by it (T4 asks that the box is empty).

import { openFindingOf } from './choose.ts';
import { isOff, isSpent, isTouched, wantsOf } from './closed.ts';
import { mayNotServe, unfit } from './guards.ts';
import type { FastenerState, HoleState } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { contradictions, type Spec, specText } from './spec.ts';
import type { BoxState } from './states.ts';
import { areaOf, fromBox, type Hole, named } from './subjects.ts';
import { isWithdrawn } from './withdrawn.ts';

export type BoxNeeds = {
  /** Holes that want one now, and those that will once their one-use fastener is off. */
  now: readonly Hole[];
  later: readonly Hole[];
  /** What is needed of a part or supply cannot be counted in holes. */
  part?: 'now' | 'later' | 'no';
  /** Of what is left, needed by nothing that is known. */
  surplus: number;
};

export function needsOfBox(ledger: Ledger, b: BoxState): BoxNeeds {
  if (b.sort === 'supply') return { now: [], later: [], surplus: 0 };
  if (b.sort === 'part') {
    const part = needOfPart(ledger, b);
    return { now: [], later: [], part, surplus: Math.max(0, b.left - (part === 'no' ? 0 : 1)) };
  }
  const wanting = [...every(ledger, 'hole')].flatMap((h) => {
    const when = wantsNew(ledger, h, b.spec ?? {});
    return when ? [{ hole: h.hole, when }] : [];
  });
  const mine = wanting.slice(alikeBefore(ledger, b));
  const at = (when: When) => mine.filter((one) => one.when === when).map((one) => one.hole);
  return { now: at('now'), later: at('later'), surplus: Math.max(0, b.left - mine.length) };
}

/** Another name with the same in it serves first. */
function alikeBefore(ledger: Ledger, b: BoxState): number {
  const all = [...every(ledger, 'box')];
  const alike = all
    .slice(0, all.indexOf(b))
    .filter((one) => one.sort === 'fastener' && specText(one.spec ?? {}) === specText(b.spec ?? {}));
  return alike.reduce((sum, one) => sum + one.left, 0);
}

type When = 'now' | 'later';

/** Whether a new one of this spec is wanted there, now or once what is in it comes off. */
export function wantsNew(ledger: Ledger, h: HoleState, spec: Spec): When | undefined {
  if (isWithdrawn(ledger, `area:${areaOf(h.hole)}`)) return undefined;
  const wants = wantsOf(ledger, h);
  if (!wants || unfit(wants, spec, true).length > 0) return undefined;
  // Of a hole nobody has touched only what its plan says is known: it comes off, or it does not.
  if (!isTouched(h)) return wants.oneUse && h.declared && !h.declared.slackOnly ? 'later' : undefined;
  const fastener = (id: string | undefined) => (id === undefined ? undefined : stateOf(ledger, 'fastener', id));
  const o = h.called.occupant;
  const inIt = fastener(o?.fastener);
  if (o && inIt) {
    const differs = !o.substitute && !o.newPattern && contradictions(wants, inIt.spec).length > 0;
    return o.working || differs || mayNotServe(inIt, false) ? 'now' : undefined;
  }
  return isOff(h) && isGone(ledger, wants, fastener(h.called.own)) ? 'now' : undefined;
}

/** It does not come back into its hole: away, spent or spoilt, the wrong one, or one that a finding speaks of. */
const isGone = (ledger: Ledger, wants: Spec, own: FastenerState | undefined): boolean =>
  own === undefined ||
  !own.place.startsWith('tray:') ||
  own.condemned !== undefined ||
  own.broken === true ||
  isSpent(own) ||
  contradictions(wants, own.spec).length > 0 ||
  openFindingOf(ledger, own) !== undefined;

function needOfPart(ledger: Ledger, { replaces }: BoxState): BoxNeeds['part'] {
  const p = replaces === undefined ? undefined : stateOf(ledger, 'part', replaces);
  if (!p) return undefined;
  if (p.off) return 'now';
  return p.declared?.renew && p.replacedAt === 0 && !isWithdrawn(ledger, `part:${p.part}`) ? 'later' : 'no';
}

/** K2: holes that hold one of it by the ledger: counted over, one of them may lie in the box still. */
export const fittedFrom = (ledger: Ledger, name: string): Hole[] =>
  [...every(ledger, 'fastener')].flatMap((f) => (f.origin === fromBox(name) ? (named('hole', f.place) ?? []) : []));

/** K2: by how much the last count of it was over what the ledger had left; below nothing is short. */
export const boxDiffersBy = ({ counted }: BoxState): number => (counted ? counted.count - counted.left : 0);
