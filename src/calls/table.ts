// THE table of calls. Keys, words, footer, help, the tables of the documents and the spoken grammar come from it.
import { type Node, parseForm } from './form.ts';
import type { Binding, Row, ScreenId } from './row.ts';
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

const isOn = (binding: Binding, screen: ScreenId): boolean =>
  binding.on === 'any' || binding.on === screen || (Array.isArray(binding.on) && binding.on.includes(screen));

export type Bound = { row: Row; binding: Binding };
/** What a key means on a screen; a screen's own binding goes before one that holds anywhere. */
export function boundTo(key: string, screen: ScreenId): Bound | undefined {
  const all = rows.flatMap((row) =>
    row.keys.filter((b) => b.key === key && isOn(b, screen)).map((binding) => ({ row, binding })),
  );
  return all.find((one) => one.binding.on !== 'any') ?? all[0];
}

/** Every key of a screen, in the order of the table. */
export const keysOn = (screen: ScreenId): Bound[] =>
  rows.flatMap((row) => row.keys.filter((b) => isOn(b, screen)).map((binding) => ({ row, binding })));
