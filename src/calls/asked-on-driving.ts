// What the keys that move the car ask the first time, though no rule stands against it (asked-once.ts).
import { holesOf } from '../job/closed.ts';
import { toolsStandOut } from '../job/counts.ts';
import { every, type Ledger } from '../job/ledger.ts';
import { wantsLeakCheck } from '../job/open-points.ts';
import { numberOf } from '../job/subjects.ts';
import type { Desk } from './desk.ts';
import type { Once } from './row.ts';

/** With a chock under it or a tool on the engine no car moves. Common practice, no source. */
export function askedOnMoving({ ledger }: Desk): Once | undefined {
  const again = 'calls it all the same';
  const [put] = [...every(ledger, 'temporary')].filter((t) => t.in);
  if (put) return { because: `${put.temporary} is in`, instead: 'take it away first', by: 'taken-out', again };
  const nuts = notFinal(ledger);
  if (!toolsStandOut(ledger)) {
    const because = ['tools not called out since the last work', ...nuts].join('; ');
    return { because, instead: 'count them first', by: 'tools', again };
  }
  return nuts.length > 0
    ? { because: nuts.join('; '), instead: 'drawn to their figure on the ground first', by: 'tight', again }
    : undefined;
}
/** T7 lets a wheel go that is only snug: across the yard, and no further. */
function notFinal(ledger: Ledger): string[] {
  const wheels = [...every(ledger, 'area')].filter((a) => a.declared?.role === 'wheel');
  return wheels.flatMap((a) => {
    const snug = holesOf(ledger, a).filter(({ called }) => called.occupant?.level === 'snug');
    return snug.length > 0 ? [`only snug: ${a.area} ${snug.map(({ hole }) => numberOf(hole)).join(', ')}`] : [];
  });
}
/** A hose that only drips in the workshop lets go on the road. Common practice, no source. */
export function askedOnDriving(desk: Desk): Once | undefined {
  const { ledger } = desk;
  const unseen = [...every(ledger, 'circuit')].filter((c) => wantsLeakCheck(ledger, c)).map((c) => c.circuit);
  const because = `${unseen.join(' and ')} not looked over for leaks since`;
  const leaks = {
    because,
    instead: 'look it over first',
    by: 'leak-check',
    again: 'calls the car driven all the same',
  };
  return askedOnMoving(desk) ?? (unseen.length > 0 ? leaks : undefined);
}
