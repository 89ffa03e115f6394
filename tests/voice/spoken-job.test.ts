// The reference job in the words of the voice. The ears themselves are left out here; `npm run bench -- voice` has them.
import { expect, it } from 'vitest';
import { grammarOf } from '../../src/voice/grammar.ts';
import { heardIn } from '../../src/voice/hearings.ts';
import { plansAtHand, playLines, scriptLines, upTo } from '../jobs/lines.ts';
import { missing, over, spoken, type Voice, voices } from './speech.ts';
import { speakJob } from './spoken-job.ts';

it('[X1] is released by phrases of the grammar alone, but for new names, and stands as by call lines', async () => {
  const job = await speakJob(voices[0] as Voice, 'clean', 0, 'as said');
  expect(job.refused).toEqual([]);
  expect(job.typed.filter((line) => !/^(job|box|used) /.test(line))).toEqual([]);
  expect([job.asByLines, job.released]).toEqual([true, true]);
}, 30_000);

it('[U1] stands as by call lines when what was taken for another call is struck by voice and said again', async () => {
  const job = await speakJob(voices[0] as Voice, 'clean', 0, 'sometimes another');
  expect(job.wrong.length).toBeGreaterThan(20);
  expect([job.givenUp, job.asByLines, job.released]).toEqual([[], true, true]);
}, 30_000);

const lacking = missing();
if (lacking.length > 0) process.stderr.write(`the recogniser is not heard here: ${lacking.join(', ')} missing\n`);
it.skipIf(lacking.length > 0)(
  'a synthesized phrase goes through the recogniser to a call, and another word does not',
  async () => {
    const { ledger, now, places } = playLines(upTo(scriptLines('reference-planned.calls'), 'area cam cover'));
    const facing = { ...(places.at(-1)?.facing as { tray: string; spec: object }), area: 'cam cover' };
    const grammar = grammarOf({ ledger, facing, now, plans: plansAtHand });
    const [voice] = voices;
    const pcm = ['take away number four after three', 'my grandmother likes bananas'].map((text) =>
      over(spoken(voice as Voice, text), 'clean', 0, 1),
    );
    const heard = await heardIn(pcm, grammar);
    expect(heard[0]).toEqual({ phrase: 'take away number four after three' });
    expect(heard[1] === 'nothing' || 'unsure' in (heard[1] as object)).toBe(true);
  },
  30_000,
);
