// A fastener that was dropped (L9): which one it likely is, whether it may lie in the works, and where it is laid when found.
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import { openBehind } from '../job/order.ts';
import { areaOf, named, type Subject } from '../job/subjects.ts';
import { trayBeforeLost } from '../job/towards-lost.ts';
import type { Desk } from './desk.ts';
import type { Args } from './form.ts';
import type { Besides } from './row.ts';

/** What came off last is what falls. */
export function lastOffFirst({ ledger }: Desk, fasteners: readonly string[]): string[] {
  const offAt = (id: string): number => {
    const hole = named('hole', stateOf(ledger, 'fastener', id)?.origin ?? '');
    return hole === undefined ? 0 : (stateOf(ledger, 'hole', hole)?.called.openedAt ?? 0);
  };
  return fasteners.toSorted((one, other) => offAt(other) - offAt(one));
}

const works: ReadonlySet<string> = new Set(['engine', 'drive']);
/** Head, sump, pump, belt: what lies open there is no place for a bolt. */
function isOfTheWorks(ledger: Ledger, area: string): boolean {
  const declared = stateOf(ledger, 'area', area)?.declared;
  const isOfADrive = [...every(ledger, 'drive')].some((d) => d.declared?.areas.includes(area));
  return isOfADrive || declared?.keepClean === true || works.has(declared?.role ?? '');
}
/** Of the works itself, or in front of works that stand open: what is dropped there falls in. */
function isNearWorks(ledger: Ledger, area: string): boolean {
  if (isOfTheWorks(ledger, area)) return true;
  if (stateOf(ledger, 'area', area)?.declared?.role === 'wheel') return false;
  return openBehind(ledger, [`area:${area}`]).some(({ subject }) => isOpenWorks(ledger, subject));
}
function isOpenWorks(ledger: Ledger, subject: Subject): boolean {
  const part = named('part', subject);
  if (part !== undefined) return [...every(ledger, 'drive')].some((d) => d.declared?.parts.includes(part));
  const hole = named('hole', subject);
  const area = hole === undefined ? named('area', subject) : areaOf(hole);
  return area === undefined ? named('rotation', subject) !== undefined : isOfTheWorks(ledger, area);
}

/** L9: asked beside it by its key or aloud, as no statement closes it there without the search. */
export function askedOnLosing({ ledger, facing }: Desk, { fastener, reaches, reachable }: Args): Besides | undefined {
  if (reaches !== undefined || reachable !== undefined) return undefined;
  const f = stateOf(ledger, 'fastener', String(fastener));
  const hole = f && named('hole', f.origin);
  const area = hole === undefined ? facing.area : areaOf(hole);
  if (!f || area === undefined || !isNearWorks(ledger, area)) return undefined;
  return {
    key: 'reachable',
    title: 'lost: can it reach belt, gears, valves, cylinders or sump?',
    choices: [
      { value: 'yes', text: 'yes, or nobody knows: it is searched for' },
      { value: 'no', text: 'no, it fell outside' },
    ],
    inWords: 'say it with "reaches the works" where it can',
    notInWords: true,
  };
}

/** Where it lay before, else in the tray in use. */
export const laidAgainIn = ({ ledger, facing }: Desk, fastener: string): string =>
  trayBeforeLost(ledger, fastener) ?? facing.tray;
