// O1: order learned from what was done proposes the way back and what sits behind what, and refuses nothing.
import { describe, expect, it } from 'vitest';
import { lastOpenedFirst, learnedFront, learnedOrder } from '../../src/job/learned.ts';
import { bench, m6 } from './bench.ts';

function offInTurn(...areas: string[]) {
  const on = bench();
  for (const area of areas) {
    on.off(`${area}/1`, m6);
    on.off(`${area}/2`, m6);
  }
  return on;
}

describe('order learned from what was done', () => {
  it('[O1] proposes what was opened before, and still stood open, in front', () => {
    const on = offInTurn('upper', 'lower', 'pump');
    expect(learnedOrder(on.ledger())).toEqual([
      { front: 'area:upper', behind: 'area:lower' },
      { front: 'area:lower', behind: 'area:pump' },
    ]);
  });

  it('[O1] and not what was closed again by then, or only opened later', () => {
    const on = offInTurn('wheel');
    on.count('wheel', 2);
    for (const hole of ['wheel/1', 'wheel/2']) {
      on.back(hole);
      on.snug(hole);
      on.tight(hole);
    }
    on.off('upper/1', m6);
    expect(learnedFront(on.ledger(), 'upper')).toBe(undefined);
    on.slack('wheel/1');
    expect(learnedFront(on.ledger(), 'upper')).toBe(undefined);
    expect(learnedFront(on.ledger(), 'nothing')).toBe(undefined);
  });

  it('[O1] nor what was said already, either way round or through another', () => {
    const on = offInTurn('upper', 'lower', 'pump');
    const said = (front: string, behind: string) =>
      on.declare({
        kind: 'behind-declared',
        front: `area:${front}`,
        behind: `area:${behind}`,
        until: 'closed',
        from: 'said',
      });
    said('lower', 'upper');
    expect(learnedFront(on.ledger(), 'lower')).toBe(undefined);
    said('pump', 'lower');
    expect(learnedOrder(on.ledger())).toEqual([]);
  });

  it('[O1] never refuses: closed in any order, nothing is in the way', () => {
    const on = offInTurn('upper', 'lower');
    on.count('upper', 2);
    for (const hole of ['upper/1', 'upper/2']) {
      on.back(hole);
      on.snug(hole);
      on.tight(hole);
    }
    expect(on.open('hole-open')).toEqual(['hole-open hole:lower/1', 'hole-open hole:lower/2']);
  });

  it('[O1] the way back is the way out turned round', () => {
    const on = offInTurn('upper', 'lower');
    on.off('pump/1', m6);
    on.declare({ kind: 'area-declared', area: 'sump' });
    expect(lastOpenedFirst(on.ledger(), ['sump', 'lower', 'pump', 'upper'])).toEqual([
      'pump',
      'lower',
      'upper',
      'sump',
    ]);
  });
});
