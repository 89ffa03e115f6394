// The log of a job as a ledger: folding with the judgement of releases (X2) built in.
import { foldLines } from './fold.ts';
import { emptyLedger, type Ledger } from './ledger.ts';
import type { Line } from './line.ts';
import { mayLeave } from './open-points.ts';

export const appendLine = (ledger: Ledger, line: Line): Ledger => foldLines(ledger, [line], mayLeave);
export const readLog = (lines: readonly Line[]): Ledger => foldLines(emptyLedger, lines, mayLeave);
