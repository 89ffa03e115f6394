// A fastener that is off already and turns out to be the wrong one: the key that says so as it comes off says it of the one
// that lies there.
import { expect, it } from 'vitest';
import { lettersOf, newJob } from './at-the-bench.ts';

async function fiveOff() {
  const at = await newJob();
  for (const line of ['area wheel', 'use nut hex 19 M12x1.5', 'off 1', 'off 2', 'off 3', 'off 4', 'off 5', 'holes 5'])
    at.session().runLine(line);
  await at.press('escape', '#', '3', 'w');
  return at;
}

it('[U3 F2] corrects the one in the tray, and leads to the key that makes a finding of it', async () => {
  const at = await fiveOff();
  expect(at.view().asking?.choices.every(({ blocked }) => blocked !== undefined)).toBe(false);
  await at.press(...lettersOf('nut hex 19 M12x1.25'), 'enter');
  expect(at.state().answer).toMatchObject({
    kind: 'taken',
    text: expect.stringContaining('wheel 3 suspected: M12x1.25, not M12x1.5'),
    otherwise: { words: 'It is the wrong one indeed', by: 'wrong-indeed' },
  });
  await at.press('u');
  expect(at.state().answer).toMatchObject({ text: expect.stringContaining('at wheel 3: M12x1.25, not M12x1.5') });
});
it('[U3] takes it so with another fastener in use, and says where it is called so already', async () => {
  const at = await fiveOff();
  await at.press('escape');
  at.session().runLine('use bolt hex 13 M10');
  await at.press('#', '3', 'w', ...lettersOf('nut hex 19 M12x1.5'), 'enter');
  expect(at.state().answer).toMatchObject({
    kind: 'refused',
    text: 'what came out of wheel 3 is called nut hex 19 M12x1.5 already',
    by: 'damaged',
  });
});
