// What is asked once on the box screen: what is bought, scrapped and handed over together.
import { describe, expect, it } from 'vitest';
import { choicesFor } from '../../src/calls/choices.ts';
import type { Row } from '../../src/calls/row.ts';
import { rowById } from '../../src/calls/table.ts';
import { pileOf } from '../../src/job/counts.ts';
import { every } from '../../src/job/ledger.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { asked } from './asked.ts';
import { newJob } from './at-the-bench.ts';

describe('what goes together on the box screen', () => {
  const nuts = async () => {
    const at = await newJob();
    for (const line of [
      'area mount',
      'nut hex 13 M8 one-use',
      'off 1',
      'off 2 to tray 2',
      'bolt hex 10 M6x20',
      'off 3',
      'off 4',
      'condemned 4 because bent',
      'missing 5',
    ])
      at.session().runLine(line);
    return at;
  };
  it('[T4] is all that is proposed, named and asked once, but for what is only as its neighbours are', async () => {
    const at = await nuts();
    await at.press('P', 'a');
    expect(asked(at)).toBe(
      '2 proposed: new ones for mount 1 and 1 more, new one for mount 4; each by itself; box; puts all of it in the box',
    );
    expect([...every(at.state().ledger, 'box')]).toEqual([]);
    await at.press('a');
    expect([...every(at.state().ledger, 'box')].map(({ sort, left }) => `${left} ${sort}`)).toEqual([
      '2 fastener',
      '1 fastener',
    ]);
    await at.press('a');
    expect(at.state().answer).toMatchObject({ kind: 'refused', by: 'box' });
  });
  it('[T4] names no key over the list of another call, whose Enter takes a row of it', async () => {
    const at = await nuts();
    await at.press('P', 'a');
    const shown = () => textOf(sceneOf(at.view(), { desk: at.bench.desk(), session: at.state() })).replace(/\s+/g, ' ');
    expect(shown()).toContain('a again puts all of it in the box');
    await at.press('i');
    expect(shown()).toContain('2 proposed: new ones for mount 1 and 1 more, new one for mount 4. ');
    expect(shown()).not.toContain('again puts all');
  });
  it('[L7 L8] is all of a kind that does not serve again, from every tray, and nothing that may', async () => {
    const at = await nuts();
    await at.press('P', 's');
    expect(at.state().answer).toMatchObject({ otherwise: { words: '1 more of its kind does not serve again' } });
    await at.press('backspace', 'x');
    expect(at.state().answer).toMatchObject({ text: '2 to scrap pile (nut hex 13 M8 one-use)' });
    const { contents } = pileOf(at.state().ledger);
    expect(contents).toHaveLength(2);
    expect(at.session().runLine('scrap all like 3')).toMatchObject({ kind: 'refused', by: 'scrap' });
    await at.press('x');
    expect(at.state().answer).toMatchObject({ text: expect.stringContaining('bolt hex 10 M6x20 of mount 4') });
    // One call is struck as one.
    await at.press('backspace', 'backspace');
    expect(pileOf(at.state().ledger).contents).toEqual([]);
  });
  it('[L8] offers one of each kind that does not serve again, and none that was only the wrong one in its hole', async () => {
    const at = await newJob();
    const { offers, nothing } = rowById.get('scrap-alike') as Row;
    const offered = () => offers?.(at.bench.desk(), 'fastener', choicesFor(at.bench.desk(), 'fastener'), {});
    for (const line of ['area caliper', 'bolt hex 13', 'off 1', 'wrong one 2 as bolt hex 13 M8x30'])
      at.session().runLine(line);
    expect(offered()).toEqual([]);
    const none = typeof nothing === 'function' ? nothing(at.bench.desk(), {}) : nothing;
    expect(none).toMatchObject({ instead: 'scrap it by itself', or: { instead: 'hand it to the owner' } });
    expect(at.session().runLine('scrap all like 2')).toMatchObject({
      text: 'bolt hex 13 M8x30 of caliper 2 was the wrong one there, and no old one',
      by: 'scrap',
      or: { by: 'lay' },
    });
    for (const line of ['bolt hex 13', 'damaged 3', 'damaged 4']) at.session().runLine(line);
    expect(offered()).toHaveLength(1);
  });
});
