// How many times the bell rings for an answer: by ear one knows what became of a call without looking up.

import { boxDiffersBy } from '../job/box-needs.ts';
import { countStands, pileDiffersBy } from '../job/counts.ts';
import { stateOf, tallyOf } from '../job/ledger.ts';
import type { Answer, SessionState } from './session-shape.ts';

export const bells = { taken: 1, refused: 2, lastOfArea: 3, countDiffers: 4 } as const;

/** 0 where nothing is to be heard. */
export function bellsFor(answer: Answer | undefined, { ledger, facing }: SessionState): number {
  if (answer?.kind === 'refused' || answer?.kind === 'asked') return bells.refused;
  if (answer?.kind !== 'taken') return 0;
  const line = ledger.lines.all[answer.n - 1];
  for (const entry of line?.entries ?? []) {
    if (entry.kind === 'scrap-counted' && pileDiffersBy(ledger) !== 0) return bells.countDiffers;
    if (entry.kind === 'box-counted') {
      const box = stateOf(ledger, 'box', entry.name);
      if (box && boxDiffersBy(box) !== 0) return bells.countDiffers;
    }
    if (entry.kind !== 'tray-counted') continue;
    const tray = stateOf(ledger, 'tray', entry.tray);
    if (tray && !countStands(tray)) return bells.countDiffers;
  }
  const area = facing.area;
  const touched = line?.entries.some((e) => e.kind === 'fastener-removed' || e.kind === 'fastener-tightened');
  if (!touched || area === undefined) return bells.taken;
  const { holes, off, open, touched: called } = tallyOf(ledger, area);
  const allOff = off === holes;
  const allClosed = called === holes && open === 0;
  return allOff || allClosed ? bells.lastOfArea : bells.taken;
}
