// What the key asks that calls a circuit dry after running (asked-once.ts): how long ago the engine was started.

import { ranCold } from '../job/cold-run.ts';
import { every, lineAt, stateOf } from '../job/ledger.ts';
import { isOfBrakes } from '../job/roles.ts';
import type { Said } from '../job/said.ts';
import type { Desk } from './desk.ts';
import type { Once } from './row.ts';

/** Brakes are under pressure without it. Whoever called one circuit dry since it was started was asked. */
export function askedOnLeaks({ ledger, now }: Desk, { circuit, how }: Said): Once | undefined {
  const started = lineAt(ledger, stateOf(ledger, 'vehicle', 'vehicle')?.startedAt ?? 0);
  const c = typeof circuit === 'string' ? stateOf(ledger, 'circuit', circuit) : undefined;
  if (how === 'under pressure' || !started || !c || isOfBrakes(c)) return undefined;
  if ([...every(ledger, 'circuit')].some((one) => one.checkedAt > started.n)) return undefined;
  const ago = ranCold(started, now);
  if (ago === undefined) return undefined;
  return {
    because: `the engine was called started ${ago} ago: cold, it hides a leak`,
    instead: 'let it get warm, and look then',
    again: `calls ${c.circuit} dry all the same`,
  };
}
