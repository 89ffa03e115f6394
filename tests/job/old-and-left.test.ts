// Old parts by what becomes of them, an owner told twice, and a count by eye that a stray found later does not undo.
import { expect, it } from 'vitest';
import { countStands } from '../../src/job/counts.ts';
import { partVerdicts } from '../../src/job/entries/works.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { atTheBench } from '../session/at-the-bench.ts';

async function called(...lines: string[]) {
  const at = await atTheBench([]);
  const say = (line: string) => at.session().runLine(line);
  for (const line of ['job "van"', ...lines]) expect(say(line), line).not.toMatchObject({ kind: 'refused' });
  return { ...at, say, ledger: () => at.state().ledger };
}
const bolts = ['area cover', 'bolt hex 10 M6x25', 'off 1', 'off 2'];

it.each(partVerdicts.map((verdict) => [verdict]))('[T3] judges an old part: %s', async (verdict) => {
  const { say, ledger } = await called(
    'part off pump held by nothing',
    `judge pump ${verdict} marked 2319 because heard it`,
  );
  expect(stateOf(ledger(), 'part', 'pump')?.judged).toMatchObject({ verdict, because: 'heard it' });
  // Only one to be used again goes back.
  expect(say('part back pump').kind).toBe(verdict === 'reuse' ? 'taken' : 'refused');
});

it('[T3] a part to be used again comes back with its first fastener, one on the scrap pile does not', async () => {
  const back = async (verdict: string) => {
    const { say, ledger } = await called(...bolts, 'part off lid held by 1 2', `judge lid ${verdict}`, 'holes 2');
    say('back 1');
    return stateOf(ledger(), 'part', 'lid')?.off;
  };
  expect(await back('reuse')).toBe(false);
  expect(await back('scrap')).toBe(true);
});

it('[F3] an owner told twice has said two things, and both are kept', async () => {
  const { ledger } = await called(
    ...bolts,
    'finding at cover 2 thread rough',
    'owner told d4.1 by telephone said not this year',
    'owner told d4.1 in person said do it now',
  );
  expect(stateOf(ledger(), 'finding', 'd4.1')).toMatchObject({
    told: 'do it now',
    tellings: [
      { n: 5, said: 'not this year', how: 'by telephone' },
      { n: 6, said: 'do it now', how: 'in person' },
    ],
  });
});

it('[K1 K3] a stray called after the count lay there when it was counted, so the count agrees with it', async () => {
  const { say, ledger } = await called(...bolts, 'count 1 is 3', 'stray bolt hex 12 M8x40 in 1');
  const tray = () => stateOf(ledger(), 'tray', '1');
  expect(tray()).toMatchObject({ counted: { count: 3 }, contents: ['f2.1', 'f3.1', 's5.1'] });
  expect(countStands(tray() as never)).toBe(true);
  // Taken out of the tray, it is gone from it, and the count with it.
  say('scrap stray s5.1');
  expect(countStands(tray() as never)).toBe(false);
});
