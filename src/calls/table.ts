// THE table of calls. Keys, words, footer, help, the tables of the documents and the spoken grammar come from it.
import { type Node, parseForm } from './form.ts';
import type { Row } from './row.ts';
import { fastenerRows } from './rows/fasteners.ts';
import { jobRows } from './rows/job.ts';
import { proofRows } from './rows/proofs.ts';
import { stepRows } from './rows/steps.ts';
import { whereaboutsRows } from './rows/whereabouts.ts';
import { workRows } from './rows/works.ts';

export const rows: readonly Row[] = [
  ...fastenerRows,
  ...workRows,
  ...proofRows,
  ...whereaboutsRows,
  ...jobRows,
  ...stepRows,
];

export const rowById: ReadonlyMap<string, Row> = new Map(rows.map((row) => [row.id, row]));
export const formOf: ReadonlyMap<string, readonly Node[]> = new Map(rows.map((row) => [row.id, parseForm(row.form)]));
