// What was done here comes round again, and nobody said when: belts by the maker's figures, coolant and brake fluid by the
// usual interval, a service by its plan's. Told where the car may leave; it judges nothing.
import { every, stateOf } from '../job/ledger.ts';
import { isMakersAlone } from '../trade/intervals.ts';
import type { Desk } from './desk.ts';
import { dueNext } from './next-due.ts';

/** Fluids by the name that the usual table knows them by. */
const fluids: readonly (readonly [RegExp, string])[] = [
  [/coolant|antifreeze/i, 'coolant, plain'],
  [/brake fluid/i, 'brake fluid'],
];

/** Each with the line that says it. */
export function dueUnsaid(desk: Desk): { what: string; line: string }[] {
  const said = (stateOf(desk.ledger, 'vehicle', 'vehicle')?.due ?? []).map((d) => d.what.toLowerCase());
  return comesRound(desk)
    .filter((what) => !said.some((one) => one.includes(shortOf(what))))
    .map((what) => ({ what, line: `due ${what}${isMakersAlone(what) ? ' on DATE at DISTANCE' : ''}` }));
}
/** What was done here and comes round again, said or not. */
export function comesRound(desk: Desk): string[] {
  const { ledger } = desk;
  const belts = [...every(ledger, 'part')].filter((p) => p.replacedAt > 0 && isMakersAlone(p.part)).map((p) => p.part);
  const filled = [...every(ledger, 'circuit')]
    .filter((c) => c.drainedAt > 0 && c.filledAt > c.drainedAt)
    .flatMap((c) => fluids.find(([name]) => name.test(`${c.circuit} ${c.fluid ?? ''}`))?.[1] ?? []);
  const services = [...every(ledger, 'service')]
    .filter((s) => s.state === 'done' && (isMakersAlone(s.service) || !('why' in dueNext(desk, s.service))))
    .map((s) => s.service);
  return [...new Set([...belts, ...filled, ...services])];
}
/** "coolant, long-life" said is coolant said. */
const shortOf = (what: string): string => what.toLowerCase().replace(/,.*/, '');
