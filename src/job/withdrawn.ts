// P3: what a dropped service alone had brought and nobody touched. It stays declared, since what is as found asks for
// nothing; it is no longer shown as a place of this job.
import { every, type Ledger, stateOf, tallyOf } from './ledger.ts';
import { nameOf, type Subject, sortOf } from './subjects.ts';

const known = new WeakMap<Ledger, ReadonlySet<Subject>>();
const nothing: ReadonlySet<Subject> = new Set();

export const isWithdrawn = (ledger: Ledger, subject: Subject): boolean => withdrawnOn(ledger).has(subject);

export function withdrawnOn(ledger: Ledger): ReadonlySet<Subject> {
  const there = known.get(ledger) ?? worked(ledger);
  known.set(ledger, there);
  return there;
}

function worked(ledger: Ledger): ReadonlySet<Subject> {
  const services = [...every(ledger, 'service')];
  const dropped = services.filter((s) => s.state === 'dropped').flatMap((s) => s.brings ?? []);
  if (dropped.length === 0) return nothing;
  const wanted = new Set(services.filter((s) => s.state !== 'dropped').flatMap((s) => s.brings ?? []));
  return new Set(dropped.filter((one) => !wanted.has(one) && isAsFound(ledger, one)));
}

/** Nobody touched it, nor what belongs to it. */
function isAsFound(ledger: Ledger, subject: Subject): boolean {
  const name = nameOf(subject);
  const areaIsAsFound = (area: string): boolean =>
    tallyOf(ledger, area).touched === 0 &&
    (stateOf(ledger, 'area', area)?.parts ?? []).every((part) => isAsFound(ledger, `part:${part}`));
  switch (sortOf(subject)) {
    case 'area':
      return areaIsAsFound(name);
    case 'part': {
      const p = stateOf(ledger, 'part', name);
      return !p || (p.removedAt === 0 && p.fittedAt === 0 && p.replacedAt === 0);
    }
    case 'connection': {
      const c = stateOf(ledger, 'connection', name);
      return !c || (c.partedAt === 0 && c.madeAt === 0);
    }
    case 'temporary':
      return (stateOf(ledger, 'temporary', name)?.putInAt ?? 0) === 0;
    case 'circuit': {
      const c = stateOf(ledger, 'circuit', name);
      return !c || (c.drainedAt === 0 && c.filledAt === 0 && c.checkedAt === 0);
    }
    case 'face': {
      const f = stateOf(ledger, 'face', name);
      return !f || (f.cleanedAt === 0 && f.beads.length === 0 && areaIsAsFound(f.declared?.area ?? ''));
    }
    case 'drive': {
      const d = stateOf(ledger, 'drive', name);
      const { areas = [], parts = [] } = d?.declared ?? {};
      return (
        (d?.tries.length ?? 0) === 0 &&
        areas.every(areaIsAsFound) &&
        parts.every((part) => isAsFound(ledger, `part:${part}`))
      );
    }
    default:
      return true;
  }
}
