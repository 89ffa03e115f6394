// Of what a plan says is to be minded at an area: what is about the way back. Read from the words alone, it only chooses what
// is shown where things go on; the whole stands in its list.
import { every, stateOf, tallyOf } from '../job/ledger.ts';
import type { Desk } from './desk.ts';

const goingOn =
  /\b(new|back|goes on|fitted|final|tight(ening)?|torque|dry|bare|clean(ed)?|dowels?|gasket|o-ring|seal|seats?|faces?|bead|directions?|right way|by hand first|wetted|filled|stops?)\b/i;
const comingOff = /\b(lever|blade|reverse|lifted|pulling|caught)\b/i;

/** Each by its first words, as long as something of the area is not closed. */
export function mindedBack({ ledger, facing: { area } }: Desk): { words: string; brief: string }[] {
  const a = area === undefined ? undefined : stateOf(ledger, 'area', area);
  const isOpen = a && (tallyOf(ledger, a.area).open > 0 || a.parts.some((part) => stateOf(ledger, 'part', part)?.off));
  if (!isOpen) return [];
  const said = [...every(ledger, 'service')]
    .filter(({ state }) => state === 'ordered')
    .flatMap(({ cautions = [] }) => cautions)
    .filter(({ at, words }) => at === `area:${a.area}` && goingOn.test(words) && !comingOff.test(words));
  return [...new Set(said.map(({ words }) => words))].map((words) => ({ words, brief: briefly(words) }));
}
const briefly = (words: string): string => (words.split(/[;:]/)[0] ?? words).replace(/\.$/, '');
