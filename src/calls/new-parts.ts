// Which part takes its new one from the parts box, and what is said where none lies there.
import { isRenewed } from '../job/guards.ts';
import { every, stateOf } from '../job/ledger.ts';
import type { BoxState } from '../job/states.ts';
import type { Desk } from './desk.ts';
import { boughtTitle } from './new-ones.ts';
import type { No } from './row.ts';
import { areasOfPart, inTurnToGoBack } from './where-parts-are.ts';

/** Of what is off, first what is to be new. */
export function newOnesFirst({ ledger }: Desk, known: readonly string[]): readonly string[] {
  const off = known.filter((name) => stateOf(ledger, 'part', name)?.off);
  const isNew = (name: string): boolean => {
    const part = stateOf(ledger, 'part', name);
    return part !== undefined && isRenewed(ledger, part);
  };
  return off.length === 0 ? known : [...off.filter(isNew), ...off.filter((name) => !isNew(name))];
}

/** What is off and nothing new lies there for: the line that puts it in the box, of the area in use before another, is begun. */
export function noneRenewed(desk: Desk): No | undefined {
  const { ledger } = desk;
  const isThere = ({ left, replaces }: BoxState): boolean =>
    left > 0 && replaces !== undefined && stateOf(ledger, 'part', replaces)?.off === true;
  // Where one is off and its new one is there, each says what is in its way.
  if ([...every(ledger, 'box')].some(isThere)) return undefined;
  const off = [...every(ledger, 'part')].filter((p) => p.off).map(({ part }) => part);
  const isHere = (part: string): boolean => areasOfPart(ledger, part).includes(desk.facing.area ?? '');
  const [first] = newOnesFirst(desk, inTurnToGoBack(desk, off.filter(isHere)));
  const part = first ?? (off.length === 1 ? off[0] : undefined);
  const because =
    part === undefined ? 'no part that is off has its new one in the parts box' : `no new ${part} is in the parts box`;
  const no: No = { because, instead: 'put it in the box first', by: 'box' };
  return part === undefined ? no : { ...no, ready: { line: newOneLine(part), title: boughtTitle(because) } };
}
const newOneLine = (part: string): string => `box "${`new ${part}`.slice(0, 60)}" for ${part}`;
