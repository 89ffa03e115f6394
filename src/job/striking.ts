// U1, U2: what leans on a line, and which proofs lose their footing with it. Found by trying: the lines that would become
// misfits if it were struck or restored, and what would then stand open.
import { everyKey } from './drawers.ts';
import { foldLines } from './fold.ts';
import { isStruck, type Ledger, lastLine, lineAt } from './ledger.ts';
import type { Line, Stamp } from './line.ts';
import type { OpenPoint } from './open-point.ts';
import { openPoints } from './open-points.ts';

const never = new Set(['job-opened', 'released', 'reopened', 'left-unreleased', 'calls-struck', 'calls-restored']);
export const struckAlready = (ledger: Ledger, n: number): boolean => isStruck(ledger, n);
/** X3: opening, release and reopening stay; a strike is answered by restoring. */
export const unstrikable = (ledger: Ledger, n: number): boolean =>
  lineAt(ledger, n)?.entries.some((e) => never.has(e.kind)) ?? true;

/** The ledger as it would stand with these lines struck or restored. Nothing is written. */
function tried(ledger: Ledger, lines: readonly number[], kind: 'calls-struck' | 'calls-restored'): Ledger {
  const last = lastLine(ledger);
  if (!last) return ledger;
  const line: Line = { ...last, n: last.n + 1, call: 'tried', entries: [{ kind, lines: [...lines] }] };
  return foldLines(ledger, [line], () => false);
}

export const asIfStruck = (ledger: Ledger, lines: readonly number[]): Ledger => tried(ledger, lines, 'calls-struck');

const misfitLines = (ledger: Ledger): Set<number> => new Set([...everyKey(ledger.misfits)].flatMap(([, ns]) => ns));

/** Nothing said after these lines stands, so nothing can lean on them. */
function isLastSaid(ledger: Ledger, lines: readonly number[]): boolean {
  for (let n = ledger.lines.length; n > 0; n--) {
    if (lines.includes(n)) return lines.length === 1;
    const strikes = lineAt(ledger, n)?.entries.every((e) => e.kind === 'calls-struck' || e.kind === 'calls-restored');
    if (!isStruck(ledger, n) && !strikes) return false;
  }
  return false;
}

/** Lines that would newly not fit, and what would lean on those, until nothing more does; without the lines given. */
export function leaningOn(ledger: Ledger, lines: readonly number[], kind: 'calls-struck' | 'calls-restored'): number[] {
  if (kind === 'calls-struck' && isLastSaid(ledger, lines)) return [];
  const before = misfitLines(ledger);
  if (kind === 'calls-restored') {
    return [...misfitLines(tried(ledger, lines, kind))].filter((n) => !before.has(n)).sort((a, b) => a - b);
  }
  const all = new Set(lines);
  for (;;) {
    const more = [...misfitLines(tried(ledger, [...all], kind))].filter((n) => !before.has(n) && !all.has(n));
    if (more.length === 0) break;
    for (const n of more) all.add(n);
  }
  return [...all].filter((n) => !lines.includes(n)).sort((a, b) => a - b);
}

/** What leaningOn names: striking is refused for it, not warned of. */
const refusedFor: ReadonlySet<string> = new Set(['misfit', 'books']);

/** U2: what would newly stand open if these lines were struck or restored, to be named before the key is pressed. */
export function losesFooting(
  ledger: Ledger,
  lines: readonly number[],
  kind: 'calls-struck' | 'calls-restored',
  now: Stamp,
): OpenPoint[] {
  const stamped = (p: OpenPoint): string => `${p.code} ${p.at}`;
  const already = new Set(openPoints(ledger, now).map(stamped));
  const then = openPoints(tried(ledger, lines, kind), now);
  return then.filter((p) => !already.has(stamped(p)) && !refusedFor.has(p.code));
}
