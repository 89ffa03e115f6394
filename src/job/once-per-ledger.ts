// A reading of the ledger that is asked for many times between two calls, worked out once: a ledger never changes. What is
// read must not be changed by whoever asks.
import type { Ledger } from './ledger.ts';

export function oncePerLedger<T>(read: (ledger: Ledger, name: string) => T): (ledger: Ledger, name: string) => T {
  const known = new WeakMap<Ledger, Map<string, T>>();
  return (ledger, name) => {
    const here = known.get(ledger) ?? new Map<string, T>();
    known.set(ledger, here);
    if (!here.has(name)) here.set(name, read(ledger, name));
    return here.get(name) as T;
  };
}
