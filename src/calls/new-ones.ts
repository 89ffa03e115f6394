// Which new fastener of the parts box goes into a hole, which may, and what is said where none does.

import { unfit, wantsIn } from '../job/guards.ts';
import { every } from '../job/ledger.ts';
import { isAlike, specText } from '../job/spec.ts';
import type { BoxState } from '../job/states.ts';
import { areaOf, subjectText } from '../job/subjects.ts';
import { asTheOthers } from '../job/towards-hole.ts';
import { type Desk, nextNew } from './desk.ts';
import type { Args } from './form.ts';
import { cap } from './key-caps.ts';
import { likeNeighbours } from './like-neighbours.ts';
import type { No, Ready } from './row.ts';
import { specWords } from './spec-words.ts';

/** New fasteners left in the parts box: those that may go into the hole, and those that may not (L5). */
export function newFor({ ledger }: Desk, hole: string | undefined): { fit: BoxState[]; others: BoxState[] } {
  const wants = hole === undefined ? undefined : wantsIn(ledger, hole);
  const left = [...every(ledger, 'box')].filter((b) => b.sort === 'fastener' && b.left > 0);
  const fits = (b: BoxState) => unfit(wants, b.spec ?? {}, true).length === 0;
  return { fit: left.filter(fits), others: left.filter((b) => !fits(b)) };
}
/** The one new fastener that fits the hole by thread and length, else the only one that may go in. */
export function boxFor(desk: Desk, hole: string): string | undefined {
  const wants = wantsIn(desk.ledger, hole) ?? {};
  const { fit } = newFor(desk, hole);
  const alike = fit.find(({ spec = {} }) => isAlike('thread', spec, wants) && isAlike('lengthMm', spec, wants));
  return (alike ?? (fit.length === 1 ? fit[0] : undefined))?.name;
}
/** Nothing new lies there that could go into the hole. */
export function noneNew(desk: Desk, hole: string | undefined): No | undefined {
  const { fit, others } = newFor(desk, hole);
  if (hole === undefined || fit.length > 0) return undefined;
  const wants = specText(wantsIn(desk.ledger, hole) ?? {});
  const beside = specText(likeNeighbours(desk.ledger, hole) ?? {});
  const isKnown = wants !== 'unknown';
  const wanted = isKnown ? `, which wants ${wants}` : beside === 'unknown' ? '' : `; beside it are ${beside}`;
  const said = isKnown ? wants : beside === 'unknown' ? 'bolt hex 10 M6x25' : beside;
  const because =
    others.length === 0
      ? `no new fastener is in the parts box for ${subjectText(`hole:${hole}`)}${wanted}`
      : `none of the new fasteners in the parts box fits ${subjectText(`hole:${hole}`)}${wanted}`;
  return {
    because,
    instead: `put one in the box first, with what it is, as "box ${said}"`,
    by: 'box',
    ready: bought(desk, hole, because),
  };
}
/** The line that puts it in the box, with what it is as far as that is known: more of it can be typed behind. */
function bought({ ledger }: Desk, hole: string, because: string): Ready {
  const name = `new for ${subjectText(`hole:${hole}`)}`.slice(0, 60);
  const spec = wantsIn(ledger, hole) ?? likeNeighbours(ledger, hole) ?? asTheOthers(ledger, areaOf(hole));
  return {
    line: `box "${name}" as ${specWords(spec)}`,
    title: `${because}. Bought, or at hand? ${cap.take} puts it in the box; the same key again then takes it`,
  };
}
export const newHole = (desk: Desk, args: Args): string | undefined =>
  (args.hole as string | undefined) ?? nextNew(desk);
