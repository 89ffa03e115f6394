// What several plans and a running job say of what there is, as one, for reckoning what must come off. The first to speak
// of a thing is believed; whether they contradict one another is the merging's to say.

import { isOff, isTouched } from '../job/closed.ts';
import type { Ledger } from '../job/ledger.ts';
import { every, stateOf } from '../job/ledger.ts';
import { type Declaration, subjectOf } from './declared-whole.ts';
import type { Unit } from './works.ts';

export function unionOf(all: readonly (readonly Declaration[])[]): Declaration[] {
  const there = new Map<string, Declaration>();
  for (const some of all) {
    for (const one of some) {
      if (one.kind === 'product-declared') continue;
      const key = one.kind === 'behind-declared' ? `${one.front}\n${one.behind}` : (subjectOf(one) as string);
      const before = there.get(key);
      there.set(key, before === undefined ? one : both(before, one));
    }
  }
  return [...there.values()];
}

function both(before: Declaration, one: Declaration): Declaration {
  if (before.kind === 'hole-declared' && one.kind === 'hole-declared' && before.slackOnly && !one.slackOnly) {
    const { slackOnly: _, ...comesOff } = before;
    return comesOff;
  }
  if (before.kind === 'drive-declared' && one.kind === 'drive-declared') {
    const joint = (a: readonly string[], b: readonly string[]) => [...new Set([...a, ...b])];
    return { ...before, areas: joint(before.areas, one.areas), parts: joint(before.parts, one.parts) };
  }
  return before;
}

/** What is off on the job just now. What is to be slackened only counts as off once it is slack. */
export function offNow(ledger: Ledger): Set<Unit> {
  const off = new Set<Unit>();
  for (const h of every(ledger, 'hole')) {
    const isSlack = h.called.occupant?.level === 'slack' && h.declared?.slackOnly === true;
    if (isOff(h) || isSlack) off.add(`hole:${h.hole}`);
  }
  for (const p of every(ledger, 'part')) if (p.off) off.add(`part:${p.part}`);
  for (const c of every(ledger, 'connection')) if (c.parted) off.add(`connection:${c.connection}`);
  return off;
}

/** It was off or slack once, whatever became of it since. */
export function wasOff(ledger: Ledger, unit: Unit): boolean {
  const name = unit.slice(unit.indexOf(':') + 1);
  if (unit.startsWith('part:')) return (stateOf(ledger, 'part', name)?.removedAt ?? 0) > 0;
  if (unit.startsWith('connection:')) return (stateOf(ledger, 'connection', name)?.partedAt ?? 0) > 0;
  const h = stateOf(ledger, 'hole', name);
  return h !== undefined && isTouched(h);
}
