// Methods, moments and what came from elsewhere, in the words of the sheet.
import { expect, it } from 'vitest';
import { sheetText } from '../../src/sheet/text.ts';
import { methodText, spanText, teethText } from '../../src/sheet/words.ts';
import { newStory, unwrapped } from './bench-story.ts';

it('each method is worded with its values and how the thread is prepared', () => {
  expect(methodText({ by: 'torque', newtonMetres: 9.5, with: 'locking compound' })).toBe(
    'torque: 9.5 Nm; with locking compound',
  );
  expect(
    methodText({
      by: 'torque-angle',
      stages: [{ newtonMetres: 30 }, { loosenDegrees: 180 }, { degrees: 90 }],
      with: 'dry',
    }),
  ).toBe('torque then angle: 30 Nm, loosen 180 deg, 90 deg; dry');
  expect(methodText({ by: 'shoulder' })).toBe('to the shoulder, then stop');
  expect(methodText({ by: 'castle' })).toBe('castle nut and new pin');
});

it('a span names the first and the last, the day once', () => {
  const at = (n: number, minutes: number) => ({ n, atMs: Date.UTC(2026, 10, 25) + minutes * 60_000, zoneMin: 0 });
  expect(spanText([at(1, 5)])).toBe('2026-11-25 00:05');
  expect(spanText([at(2, 65), at(1, 5)])).toBe('2026-11-25 00:05 to 01:05');
  expect(spanText([at(1, 5), at(2, 1445)])).toBe('2026-11-25 00:05 to 2026-11-26 00:05');
});

it('teeth off are worded with their direction', () => {
  expect([0, 1, -2].map(teethText)).toEqual(['on', 'off by 1 tooth', 'off by 2 teeth backwards']);
});

it('tells a traded fastener, a stray given to a hole, a chased thread, and where the box went', () => {
  const bolt = { kind: 'bolt', head: 'hex 10', thread: 'M6', lengthMm: 20 };
  const s = newStory()
    .call('open-job', { label: 'bench car' })
    .call('remove', { hole: 'cover/1', to: 'tray:1', spec: bolt })
    .call('remove', { hole: 'cover/2', to: 'tray:1', spec: bolt })
    .call('count-holes', { area: 'cover', count: 2 })
    .call('condemn', { fastener: 'f2.1', because: 'bent' })
    .call('fill-box', { name: 'rags', quantity: 3 })
    .call('use-from-box', { name: 'rags', quantity: 2 })
    .call('move-box', { name: 'rags', to: 'owner', because: 'paid for' })
    .call('mask-all')
    .call('chase-thread', { hole: 'cover/1' })
    .call('unmask-all')
    .call('fit', { hole: 'cover/1' })
    .call('tighten', { hole: 'cover/1', pass: 'only', last: true, method: { by: 'sleeve' } })
    .call('find-stray', { tray: '1', spec: bolt })
    .call('give-stray', { stray: 's14.1', hole: 'cover/2' });
  const text = unwrapped(sheetText(s.ledger, { now: s.now }));
  expect(text).toContain('1 the equal fastener of cover 2');
  expect(text).toContain('2 a stray given to it: bolt hex 10 M6x20');
  expect(text).toContain('1 thread chased 2026-11-23 08:09');
  expect(text).toContain('only, last 1 to the sleeve, then stop; 2026-11-23 08:12');
  expect(text).toContain('used up from the parts box: 2 rags');
  expect(text).toContain('out of the parts box to owner: 1 rags: paid for');
  expect(text).toContain('1 stray given to a hole: 1 back');
});
