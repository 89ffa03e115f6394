// Whether a number is meant that cannot well be: a hole of an area whose number of holes is known, and all of it without
// this one. A slipped figure would make a hole; an area may have one more than its plan says, so it is asked, not refused.
import { holeNumbers, holesOf } from '../job/closed.ts';
import { stateOf } from '../job/ledger.ts';
import type { AreaState } from '../job/states.ts';
import { areaOf, holesSaid, numberOf, subjectText } from '../job/subjects.ts';
import { type Desk, nextOff, nextSlack } from './desk.ts';
import type { Args } from './form.ts';
import type { Besides } from './row.ts';

/** How many holes it is known to have, and by what; undefined where nobody has said. */
function knownToHave({ ledger }: Desk, a: AreaState): { many: number; by: string } | undefined {
  if (a.counted) return { many: a.counted.count, by: 'counted' };
  const declared = new Set(holesOf(ledger, a).flatMap((h) => (h.declared ? [numberOf(h.hole)] : []))).size;
  if (declared === 0) return undefined;
  if (a.declared?.planned) return { many: declared, by: 'in its plan' };
  return a.declared?.outline ? { many: declared, by: 'drawn' } : undefined;
}

const askedOf =
  (next: (desk: Desk) => string | undefined) =>
  (desk: Desk, args: Args): Besides | undefined => {
    const hole = (args.hole as string | undefined) ?? next(desk);
    const a = hole === undefined ? undefined : stateOf(desk.ledger, 'area', areaOf(hole));
    if (hole === undefined || !a || args.late !== undefined) return undefined;
    const number = numberOf(hole);
    const declared = holesOf(desk.ledger, a).some((h) => h.declared && numberOf(h.hole) === number);
    const called = holeNumbers(desk.ledger, a);
    const known = knownToHave(desk, a);
    if (!known || declared || called.has(number)) return undefined;
    if (Number(number) <= known.many && called.size < known.many) return undefined;
    return {
      key: 'late',
      title: `${a.area} has ${holesSaid(known.many)} (${known.by}): is there a ${number}?`,
      choices: [
        { value: 'no', text: 'no: another number is meant' },
        { value: 'all the same', text: `right: ${subjectText(`hole:${hole}`)} is one more` },
      ],
      givesUp: 'no',
      inWords: 'say the number that is meant, or say it with "all the same" at its end',
    };
  };

export const askedOnTakingOff = askedOf(nextOff);
export const askedOnSlackening = askedOf(nextSlack);
