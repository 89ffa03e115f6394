// Reads the text of a plan file: its shape, and whether it is sound. What is wrong comes back as a value that says what,
// where in the file, and what to do; nothing is repaired.
import { plainText } from '../trade/plain-text.ts';
import { type Plan, planSchema, planVersion } from './plan.ts';
import { unsoundIn } from './sound.ts';

export type PlanFault = { what: string; where: string; next: string };
export type ReadPlan = { ok: true; plan: Plan } | { ok: false; fault: PlanFault };
/** Where a text stops being JSON, for whoever can tell. */
export type BreaksAt = (text: string) => { line: number; column: number } | undefined;

/** A plan written by hand has a few hundred lines; two million characters are something else. */
export const longestPlan = 2_000_000;

/** @param file as it is to be named to the person who wrote it */
export function readPlan(text: string, file: string, breaksAt?: BreaksAt): ReadPlan {
  const no = (what: string, next: string, path: readonly PropertyKey[] = []): ReadPlan => ({
    ok: false,
    fault: { what: plainText(what, 600), where: plainText(file + pathText(path), 600), next },
  });
  if (text.length > longestPlan) return no('the file is larger than 2 MB', 'name the plan file itself');
  if (text.trim() === '') return no('the file is empty', 'take it from a copy');
  const value = parsed(text);
  if (value === undefined) {
    const at = breaksAt?.(text);
    const place = at ? ` in line ${at.line}, column ${at.column}` : '';
    return no(`this is not JSON${place}`, 'put a missing comma, quote or bracket right');
  }
  const other = notAPlan(value);
  if (other) return no(other.what, other.next);
  const shape = planSchema.safeParse(value);
  if (!shape.success) {
    const issue = shape.error.issues[0];
    return no(issue?.message ?? 'not the shape of a plan', 'correct it, or leave it out', issue?.path);
  }
  const steering = steeringText(shape.data, []);
  if (steering) return no('a control character or an escape sequence', 'write plain text', steering);
  const unsound = unsoundIn(shape.data);
  return unsound ? no(unsound.what, unsound.next, unsound.path) : { ok: true, plan: shape.data };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.startsWith('\u{FEFF}') ? text.slice(1) : text);
  } catch {
    return undefined;
  }
}

function notAPlan(value: unknown): { what: string; next: string } | undefined {
  const { countback, version } = (value ?? {}) as { countback?: unknown; version?: unknown };
  if (countback !== 'plan') return { what: 'this is no plan file', next: 'a plan begins with "countback": "plan"' };
  if (typeof version === 'number' && version > planVersion) {
    return {
      what: `the plan is of version ${version}`,
      next: `this program reads version ${planVersion}: take a newer one`,
    };
  }
  return undefined;
}

/** The path to the first text that is not plain. */
function steeringText(value: unknown, path: readonly PropertyKey[]): readonly PropertyKey[] | undefined {
  if (typeof value === 'string') return plainText(value) === value ? undefined : path;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [field, inside] of Object.entries(value)) {
    const here = [...path, Array.isArray(value) ? Number(field) : field];
    const found = plainText(field) === field ? steeringText(inside, here) : here;
    if (found) return found;
  }
  return undefined;
}

/** "areas[2].holes[0].numbers", after the name of the file. */
function pathText(path: readonly PropertyKey[]): string {
  const text = path.map((p) => (typeof p === 'number' ? `[${p}]` : `.${String(p)}`)).join('');
  return text === '' ? '' : `: ${text.replace(/^\./, '')}`;
}
