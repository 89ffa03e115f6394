// Short words for the calls a script says over and over. No job of its own.
import type { Ledger } from '../../src/job/ledger.ts';
import { every, stateOf } from '../../src/job/ledger.ts';
import type { Said } from '../../src/job/said.ts';
import type { Spec } from '../../src/job/spec.ts';

export const off = (hole: string, tray: string, spec?: Spec): Said => ({
  verb: 'remove',
  hole,
  to: `tray:${tray}`,
  ...(spec && { spec }),
});
export const slack = (hole: string, spec?: Spec): Said => ({ verb: 'slacken', hole, ...(spec && { spec }) });
export const back = (hole: string): Said => ({ verb: 'fit', hole });
export const fresh = (hole: string, box: string): Said => ({ verb: 'fit', hole, box });
export const tight = (hole: string): Said => ({ verb: 'tighten', hole });
export const pass = (area: string): Said => ({ verb: 'complete-pass', area });
export const part = (connection: string): Said => ({ verb: 'part-connection', connection });
export const make = (connection: string): Said => ({ verb: 'make-connection', connection });
export const putIn = (temporary: string, sort?: string, at?: string): Said => ({
  verb: 'put-in',
  temporary,
  ...(sort && { sort }),
  ...(at && { at }),
});
export const takeOut = (temporary: string): Said => ({ verb: 'take-out', temporary });
export const removePart = (named: string, heldBy?: readonly string[]): Said => ({
  verb: 'remove-part',
  part: named,
  ...(heldBy && { heldBy }),
});
export const replace = (named: string): Said => ({ verb: 'replace-part', part: named });
export const bought = (name: string, what: { spec?: Spec; replaces?: string } = {}): Said => ({
  verb: 'fill-box',
  name,
  ...what,
});
export const countTrays = (counts: Readonly<Record<string, number>>): Said => ({
  verb: 'count-trays',
  counts: Object.entries(counts).map(([tray, count]) => ({ tray, count })),
});
export const numbered = (area: string, numbers: readonly number[]): string[] => numbers.map((n) => `${area}/${n}`);
export const upTo = (last: number): number[] => Array.from({ length: last }, (_, i) => i + 1);

/** The open finding on a hole, by the place it is about. */
export const putRight =
  (at: string) =>
  (ledger: Ledger): Said => {
    const open = [...every(ledger, 'finding')].find((f) => !f.closed && f.at === at);
    return { verb: 'close-finding', finding: open?.id ?? 'd0.0', how: 'put right' };
  };
/** The fastener that belongs to a hole, wherever it is. */
export const fastenerOf = (ledger: Ledger, hole: string): string => stateOf(ledger, 'hole', hole)?.called.own ?? 'f0.0';
