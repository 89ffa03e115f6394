// What the keys that move the car ask the first time, though no rule stands against it (asked-once.ts).
import { toolsStandOut } from '../job/counts.ts';
import { every } from '../job/ledger.ts';
import { wantsLeakCheck } from '../job/open-points.ts';
import type { Desk } from './desk.ts';
import type { Once } from './row.ts';

/** With a chock under it or a tool on the engine no car moves. Common practice, no source. */
export function askedOnMoving({ ledger }: Desk): Once | undefined {
  const again = 'calls it all the same';
  const [put] = [...every(ledger, 'temporary')].filter((t) => t.in);
  if (put) return { because: `${put.temporary} is in`, instead: 'take it away first', by: 'taken-out', again };
  return toolsStandOut(ledger)
    ? undefined
    : { because: 'tools not called out since the last work', instead: 'count them first', by: 'tools', again };
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
