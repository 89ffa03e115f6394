// One thing by two names: a part that is held by the very holes of another, a stand at the same place. What is known already
// keeps its name, and a plan that calls it otherwise speaks of it by that.
import { every, type Ledger } from '../job/ledger.ts';
import type { Subject } from '../job/subjects.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import { holesIn } from './holes-written.ts';
import type { Plan } from './plan.ts';
import { type AreaNames, renamedSubject } from './renamed.ts';

/** What is known, by its subject, and what tells it from others: its holes, or what it carries. */
export type Known = ReadonlyMap<Subject, string>;

const byHoles = (heldBy: readonly string[]): string => `held by ${heldBy.toSorted().join(' ')}`;
/** Of masks and rags there may be several at one place. */
const isStand = ({ sort, at }: { sort: string; at?: string | undefined }): boolean =>
  sort === 'stand' && at !== undefined;
const byPlace = (at: string): string => `stands at ${at}`;

/** @param named a subject of the plan as the job names it */
export function knownOf(plan: Plan, named = (subject: Subject): Subject => subject): Known {
  const hole = (one: string) => named(`hole:${one}`).slice('hole:'.length);
  const parts = (plan.parts ?? []).map(({ part, heldBy }): [Subject, string] => [
    `part:${part}`,
    byHoles(holesIn(heldBy ?? {}).map(hole)),
  ]);
  const temporaries = (plan.temporaries ?? [])
    .filter(isStand)
    .map(({ temporary, at = '' }): [Subject, string] => [`temporary:${temporary}`, byPlace(named(at))]);
  return new Map([...parts.filter(([, by]) => by !== byHoles([])), ...temporaries]);
}
function knownOn(ledger: Ledger): Known {
  const parts = [...every(ledger, 'part')].flatMap(({ part, declared }): [Subject, string][] =>
    declared && declared.heldBy.length > 0 ? [[`part:${part}`, byHoles(declared.heldBy)]] : [],
  );
  const temporaries = [...every(ledger, 'temporary')]
    .filter(isStand)
    .map(({ temporary, at = '' }): [Subject, string] => [`temporary:${temporary}`, byPlace(at)]);
  return new Map([...parts, ...temporaries].filter(([subject]) => !isWithdrawn(ledger, subject)));
}

/** The plan in the names that are known; where several may be meant, or it has both names, each is a thing of its own. */
export function namedAlike(plan: Plan, own: Known, known: Known): Plan {
  const names = new Map<Subject, Subject>();
  for (const [subject, by] of own) {
    const isOnly = [...own.values()].filter((one) => one === by).length === 1;
    const [there, second] = [...known].filter(([, one]) => one === by).map(([one]) => one);
    if (isOnly && there !== undefined && !second && !known.has(subject) && !own.has(there)) names.set(subject, there);
  }
  return names.size === 0 ? plan : (renamedIn(plan, names) as Plan);
}

/** The plan in the names of a job. @param areas the job's own names for areas of the plan */
export const asNamedOn = (ledger: Ledger, plan: Plan, areas: AreaNames): Plan =>
  namedAlike(
    plan,
    knownOf(plan, (subject) => renamedSubject(areas, subject)),
    knownOn(ledger),
  );

/** Lists and fields in which a part or a temporary stands by its name alone. */
const bare: Readonly<Record<string, 'part' | 'temporary'>> = {
  part: 'part',
  parts: 'part',
  replaces: 'part',
  temporary: 'temporary',
};
function renamedIn(one: unknown, names: ReadonlyMap<Subject, Subject>, field = ''): unknown {
  if (typeof one === 'string') {
    const sort = bare[field];
    const alone = sort && names.get(`${sort}:${one}`)?.slice(sort.length + 1);
    return alone ?? names.get(one) ?? one;
  }
  if (Array.isArray(one)) return one.map((each) => renamedIn(each, names, field));
  if (typeof one !== 'object' || one === null) return one;
  return Object.fromEntries(Object.entries(one).map(([key, value]) => [key, renamedIn(value, names, key)]));
}
