// A part is off, and what the plan puts in front of it was not called parted: it would never be asked to be joined again.
import { expect, it } from 'vitest';
import { sceneOf, textOf } from '../screen/scene.ts';
import { newJob } from './at-the-bench.ts';

const coverOff = async (...before: readonly string[]) => {
  const at = await newJob();
  const holes = Array.from({ length: 9 }, (_, i) => `off ${i + 1}`);
  for (const line of ['plan inline-four belt service for cam cover gasket', 'area cam cover', ...before, ...holes]) {
    const answer = at.session().runLine(line);
    if (answer.kind === 'refused') throw new Error(`${line}: ${answer.text}`);
  }
  return at;
};
const joints = ['coil rail plug', 'cam sensor plug', 'front breather', 'rear breather'];

it('[T2] minds with the last bolt what is in front of its part and not called parted, and keeps work there until it is', async () => {
  const at = await coverOff();
  await at.press('enter');
  expect(at.state().answer).toMatchObject({
    text: `cam cover 10 off, to tray 1; cam cover off. Mind: ${joints.join(', ')} in front of cam cover not called parted`,
    otherwise: { words: 'One after the other parted', by: 'parted' },
  });
  expect(at.state().facing.area).toBe('cam cover');
  const shown = textOf(sceneOf({ screen: 'strip' }, { desk: at.bench.desk() }))
    .replace(/\s*│\s*/g, ' ')
    .replace(/ +/g, ' ');
  expect(shown).toContain('c parted, not called yet: coil rail plug, cam sensor plug');
  await at.press('p', 'c', 'c', 'c');
  expect(at.state().facing.area).toBe('cam cover');
  await at.press('c');
  expect(at.state().answer).toMatchObject({ text: 'rear breather parted. On to mount bracket' });
});
it('[T2] says nothing of it where all of them were called, and goes on', async () => {
  const at = await coverOff(...joints.map((joint) => `parted ${joint}`));
  await at.press('enter');
  expect(at.state().answer).toMatchObject({ text: 'cam cover 10 off, to tray 1; cam cover off' });
  await at.press('p');
  expect(at.state().answer).toMatchObject({ text: expect.stringContaining('gasket off. On to mount bracket') });
});
it('[T2] is left by the key of the next area, where one of them is not on this car', async () => {
  const at = await coverOff();
  await at.press('enter', '>');
  expect(at.state().facing.area).toBe('mount bracket');
});
