// A drawing is no count by eye: what is still asked is said as it is drawn.
import { expect, it } from 'vitest';
import { newJob } from './at-the-bench.ts';

it('[K4] says with a drawing which key counts the holes, until they are counted', async () => {
  const at = await newJob();
  at.session().runLine('area wheel');
  await at.press('escape', 'D', '1', '5', 'enter');
  expect(at.state().answer).toMatchObject({
    text: 'wheel drawn, 5 holes',
    otherwise: { words: 'A drawing is no count: how many the eye counts', by: 'holes' },
  });
  at.session().runLine('holes 5');
  expect(at.session().runLine('drawn as ring of 5')).not.toHaveProperty('otherwise');
});
