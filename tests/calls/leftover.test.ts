// What the box says of strays and of trays whose count differs, while their row is picked, and where it leads.
import { describe, expect, it } from 'vitest';
import { standardKeymap } from '../../src/calls/bindings.ts';
import type { Listed } from '../../src/calls/listed.ts';
import { listedOn } from '../../src/calls/lists.ts';
import { atTheBench } from '../session/at-the-bench.ts';

const words = (text: string) => [...text].map((char) => (char === ' ' ? 'space' : char));
const lines = [
  'area cam cover',
  'tray 1',
  'use bolt hex 8 M6x35',
  'off 1',
  'off 2',
  'off 3',
  'holes 3',
  'area pump',
  'tray 2',
  'use bolt hex 12 M8x25',
  'off 1',
  'off 2',
  'holes 2',
  'back 1',
  'area cam cover',
  'back 1',
  'back 2',
  'back 3',
];

async function boxAfter(...more: readonly string[]) {
  const at = await atTheBench();
  await at.press('n', ...words('estate'), 'enter');
  await new Promise(setImmediate);
  for (const line of [...lines, ...more]) at.session().runLine(line);
  const rows = listedOn('box', 'strip', at.session().desk(), standardKeymap);
  return (name: (row: Listed) => boolean): { more: string; leads?: string } => {
    const row = rows.slice(0, rows.length).find(name);
    if (!row) throw new Error('no such row');
    return { more: (typeof row.more === 'function' ? row.more() : row.more) ?? '', leads: row.leads };
  };
}
const isStray = (row: Listed): boolean => row.picks.stray !== undefined;
const isTray = (tray: string) => (row: Listed) => row.key === `tray ${tray}`;

describe('the box', () => {
  it('[K3] says of a stray where it most likely belongs, why, and the call; and leads there', async () => {
    const row = await boxAfter('stray bolt hex 12 M8x25 in 2');
    const { more, leads } = row(isStray);
    expect(more).toMatch(/^likely: pump 2: it alone is open there\./);
    expect(more).toMatch(/Call: strike \d+; back pump 2$/);
    expect(leads).toBe('hole:pump/2');
  });

  it('[K3] leads nowhere with one that is no part of this job', async () => {
    const row = await boxAfter('stray screw star 30 M5x12 in 2');
    expect(row(isStray)).toMatchObject({
      more: expect.stringMatching(/^likely: no part of this job/),
      leads: undefined,
    });
  });

  it('[K2] asks for a second count before it names what could explain the first', async () => {
    const closed = ['area pump', 'back 2', 'count 1 is 1'];
    const once = (await boxAfter(...closed))(isTray('1'));
    expect(once).toMatchObject({ more: '', leads: undefined });
    const twice = (await boxAfter(...closed, 'count 1 is 1'))(isTray('1'));
    expect(twice.more).toMatch(
      /^1 over the ledger: (likely|possible|cannot be told apart): cam cover \d \(or \d, \d\)/,
    );
    expect(twice.leads).toMatch(/^hole:cam cover\/\d$/);
  });

  it('[K2 K3] names first the stray that was called in another tray, and it is laid where it lies', async () => {
    const called = ['stray bolt hex 12 M8x25 in 1', 'count 2 is 2', 'count 2 is 2'];
    const over = (await boxAfter(...called))(isTray('2')).more;
    const [, id] =
      /^1 over the ledger: stray (s\S+), bolt hex 12 M8x25, called in tray 1: lay s\S+ to 2\. /.exec(over) ?? [];
    const laid = await boxAfter(...called, `lay ${id} to 2`);
    expect(laid(isTray('2')).more).toBe('');
    expect(laid(isStray).more).toMatch(/Call: strike \d+ \d+; back pump 2$/);
  });

  it('[K2] names the hole that may hold what a tray is short of', async () => {
    const row = await boxAfter('count 2 is 0', 'count 2 is 0');
    expect(row(isTray('2'))).toEqual({
      more: '1 short of the ledger: back uncalled in pump 2; else call it lost: short … in 2',
      leads: 'hole:pump/2',
    });
  });

  it('[K1] says nothing of a tray before the eye has counted, nor of one whose count agrees', async () => {
    const row = await boxAfter('count 2 is 1');
    expect(row(isTray('1')).more).toBe('');
    expect(row(isTray('2'))).toMatchObject({ more: '', leads: undefined });
  });

  const isPile = (row: Listed): boolean => row.key === 'pile';
  it('[K2] names the hole whose fastener the scrap pile is short of, after the second count', async () => {
    const scrapped = ['scrap pump 2', 'scrap pile 0'];
    expect((await boxAfter(...scrapped))(isPile)).toMatchObject({ more: '', leads: undefined });
    expect((await boxAfter(...scrapped, 'scrap pile 0'))(isPile)).toEqual({
      more: '1 short of the ledger: not thrown away, but of pump 2; else call where it lies: lay … to tray …, or lost …; then count again',
      leads: 'hole:pump/2',
    });
    const moved = await boxAfter(...scrapped, 'lay pump 2 to tray 2', 'scrap pile 0', 'scrap pile 0');
    expect(moved(isPile).more).toBe('');
  });

  it('[K2] names what the scrap pile may hold over the ledger', async () => {
    const row = await boxAfter('scrap pile 1', 'scrap pile 1');
    expect(row(isPile).more).toMatch(/^1 over the ledger: .*pump 2.* stray … in 1; then count again$/);
    expect(row(isPile).leads).toBe('hole:pump/2');
  });

  const isBox = (name: string) => (row: Listed) => row.key === `box ${name}`;
  const bought = [
    'box M8 times 3 as bolt hex 12 M8x25',
    'box lid gasket for gasket',
    'box sealant',
    'scrap pump 2',
    'area pump',
  ];
  it('[T4] says of a fastener in the parts box which hole needs it, and how many are surplus', async () => {
    const row = await boxAfter(...bought);
    expect(row(isBox('M8')).more).toBe(
      '3 of 3 left (bolt hex 12 M8x25); needed now: pump 2; 2 surplus. Call: returned M8 times 2',
    );
    const fitted = await boxAfter(...bought, 'new 2 from M8');
    expect(fitted(isBox('M8')).more).toBe(
      '2 of 3 left (bolt hex 12 M8x25); no hole is known to need it; 2 surplus. Call: returned M8 times 2',
    );
    const twice = await boxAfter(...bought, 'box M8 more as bolt hex 12 M8x25');
    expect(twice(isBox('M8 more')).more).toMatch(/no hole is known to need it; 1 surplus/);
  });

  it('[L7] counts with a one-use fastener that comes back no more, and with none whose own lies in a tray', async () => {
    const stretch = ['area head', 'use bolt hex 14 M10x90 stretch', 'off 1', 'box M10 as bolt hex 14 M10x90'];
    expect((await boxAfter(...stretch))(isBox('M10')).more).toMatch(/needed now: head 1$/);
    const slack = stretch.map((line) => line.replace('off 1', 'slack 1'));
    expect((await boxAfter(...slack))(isBox('M10')).more).toMatch(/needed now: head 1$/);
    const own = ['area pump', 'off 1', 'box M8 as bolt hex 12 M8x25'];
    expect((await boxAfter(...own))(isBox('M8')).more).toMatch(/no hole is known to need it; 1 surplus/);
  });

  it('[F3 T4] keeps one for the hole whose own is the wrong one, planned or as its neighbours have it', async () => {
    const wrong = ['area head', 'use bolt hex 10 M6x25', 'off 1', 'off 3', 'off 4', 'use bolt hex 7/16 1/4-20x25'];
    const bought = [...wrong, 'wrong one 2', 'box M6 as bolt hex 10 M6x25'];
    expect((await boxAfter(...bought))(isBox('M6')).more).toMatch(/; as its neighbours have: head 2$/);
    const stated = [...bought, 'hole wants 2 bolt hex 10 M6x25 because by the book'];
    expect((await boxAfter(...stated))(isBox('M6')).more).toMatch(/; needed now: head 2$/);
  });

  it('[T3 T4] says of a part whether the old one is off, and of a supply what to call', async () => {
    const row = await boxAfter(...bought);
    expect(row(isBox('lid gasket')).more).toBe('1 of 1 left (for gasket); gasket was never called off');
    expect(row(isBox('sealant')).more).toMatch(/Call: used sealant, or returned sealant$/);
    const off = await boxAfter(...bought, 'part off gasket held by nothing');
    expect(off(isBox('lid gasket')).more).toBe('1 of 1 left (for gasket); needed now: gasket is off');
    const replaced = await boxAfter(
      ...bought,
      'part off gasket held by nothing',
      'box second gasket for gasket',
      'renewed gasket from lid gasket',
    );
    expect(replaced(isBox('second gasket')).more).toMatch(
      /gasket is on and wants no new one; 1 surplus. Call: returned/,
    );
  });

  it('[K2] names the holes that could explain a second count in the parts box', async () => {
    const short = await boxAfter(...bought, 'count box M8 is 2', 'count box M8 is 2');
    expect(short(isBox('M8'))).toMatchObject({
      more: expect.stringContaining('1 short of the ledger: in pump 2 uncalled; else call where it went'),
      leads: 'hole:pump/2',
    });
    const once = await boxAfter(...bought, 'count box M8 is 2');
    expect(once(isBox('M8'))).toMatchObject({ more: expect.not.stringContaining('short of'), leads: undefined });
    const over = await boxAfter(...bought, 'new 2 from M8', 'count box M8 is 3', 'count box M8 is 3');
    expect(over(isBox('M8'))).toMatchObject({
      more: expect.stringContaining('1 over the ledger: called into pump 2, and not in it; else more was bought'),
      leads: 'hole:pump/2',
    });
  });
});
