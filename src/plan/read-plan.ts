// Reads the text of a plan file: its shape, and whether it is sound. What is wrong comes back as a value that says what,
// where in the file, and what to do; nothing is repaired.
import { plainText } from '../trade/plain-text.ts';
import { type Path, placeText } from './place.ts';
import { type Plan, planSchema, planVersion } from './plan.ts';
import { shapeFaults } from './shape-faults.ts';
import { type Unsound, unsoundIn } from './sound.ts';

export type PlanFault = { what: string; where: string; next: string };
/** `fault` is the first of `faults`. */
export type ReadPlan = { ok: true; plan: Plan } | { ok: false; fault: PlanFault; faults: readonly PlanFault[] };
/** Where a text stops being JSON, for whoever can tell. */
export type BreaksAt = (text: string) => { line: number; column: number } | undefined;

/** A plan written by hand has a few hundred lines; two million characters are something else. */
export const longestPlan = 2_000_000;
/** Whoever has put these right asks again. */
const mostFaults = 100;

/** @param file as it is to be named to the person who wrote it */
export function readPlan(text: string, file: string, breaksAt?: BreaksAt): ReadPlan {
  const told = ({ what, next, path }: Unsound): PlanFault => ({
    what: plainText(what, 600),
    where: plainText(placeText(file, path), 600),
    next,
  });
  const all = ([first, ...more]: readonly [Unsound, ...Unsound[]]): ReadPlan => {
    const faults = [told(first), ...more.slice(0, mostFaults - 1).map(told)] as const;
    return { ok: false, fault: faults[0], faults };
  };
  const no = (what: string, next: string): ReadPlan => all([{ what, next, path: [] }]);
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
  const shape = planSchema().safeParse(value);
  if (!shape.success) {
    const [first, ...more] = shapeFaults(planSchema(), shape.error.issues, value, 'field').map(
      ({ what, next, at }): Unsound => ({ what, next, path: at as Path }),
    );
    return all([first ?? { what: 'not the shape of a plan', next: 'see "countback plans schema"', path: [] }, ...more]);
  }
  const steering = steeringText(shape.data, []);
  if (steering) {
    return all([{ what: 'a control character or an escape sequence', next: 'write plain text', path: steering }]);
  }
  const [first, ...more] = unsoundIn(shape.data);
  return first ? all([first, ...more]) : { ok: true, plan: shape.data };
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
      next: `this program reads plans up to version ${planVersion}: a newer program reads this one`,
    };
  }
  return undefined;
}

/** The path to the first text that is not plain. */
function steeringText(value: unknown, path: Path): Path | undefined {
  if (typeof value === 'string') return plainText(value) === value ? undefined : path;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [field, inside] of Object.entries(value)) {
    const here = [...path, Array.isArray(value) ? Number(field) : field];
    const found = plainText(field) === field ? steeringText(inside, here) : here;
    if (found) return found;
  }
  return undefined;
}
