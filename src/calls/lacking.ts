// What a call lacks that was not said and that nothing at the desk fills: its area, its hole or its drive, and what to say.
import { every } from '../job/ledger.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import type { Desk } from './desk.ts';
import type { Args } from './form.ts';
import { nextArea } from './next-area.ts';
import type { No, OrElse, Row } from './row.ts';

/** It begins with the one that is next, or with any other. */
function noAreaInUse(desk: Desk, building: boolean): No {
  const next = nextArea(desk, building);
  const because = 'no area is in use';
  if (next === undefined) return { because, instead: 'name one', by: 'area' };
  return { because, instead: `begin with ${next}`, by: 'next-area', or: { instead: 'with another', by: 'area' } };
}

/** Nothing of the area in use is left for a key: work goes on in the next one; after the last, in what is left besides. */
export function whereNext({ group }: Pick<Row, 'group'>, desk: Desk): OrElse {
  const next = nextArea(desk, group !== 'strip');
  if (next !== undefined) return { instead: `go on with ${next}`, by: 'next-area' };
  return group === 'strip'
    ? { instead: 'see what goes back', by: 'to-build' }
    : { instead: 'see what keeps the car here', by: 'to-leaving' };
}

/** Of several drives a line names the one meant; where none is known, that too is said in a line. */
function noDrive({ ledger }: Desk, row: Row): No {
  const [word] = row.words;
  const names = [...every(ledger, 'drive')]
    .map(({ drive }) => drive)
    .filter((one) => !isWithdrawn(ledger, `drive:${one}`));
  return names.length === 0
    ? {
        because: 'no drive is declared',
        instead: 'of a belt with marks say so first, as "drive timing belt over front"',
        by: 'line',
      }
    : { because: `${names.join(' or ')} may be meant`, instead: `say which, as "${word} ${names[0]}"`, by: 'line' };
}
/** Left out, it is what is at the desk: "[<area>]", "[in <area>]". */
const saysItself = ({ form }: Row, slot: string): boolean =>
  form.includes(`[<${slot}>]`) || form.includes(`[in <${slot}>]`);
/** A call about a hole, an area or a drive that was not said and could not be filled by itself. */
export function lackingIn(row: Row, desk: Desk, filled: Args): No | undefined {
  if (!row.verb || !row.fills) return undefined;
  const slot = ['hole', 'area', 'drive'].find((one) => saysItself(row, one) && filled[one] === undefined);
  if (slot === undefined) return undefined;
  if (slot === 'drive') return noDrive(desk, row);
  if (desk.facing.area === undefined) return noAreaInUse(desk, row.group === 'build');
  const none = (typeof row.none === 'function' ? row.none(desk) : row.none) ?? 'no hole is pointed at';
  if (typeof none !== 'string') return none;
  const { instead, by } = whereNext(row, desk);
  return { because: none, instead: `say which ${slot}`, or: { instead: `or ${instead}`, by } };
}
