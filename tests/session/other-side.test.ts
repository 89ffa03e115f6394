// What the other side of the car has under the same name is offered where nothing else is known, and taken by a key alone.
import { expect, it } from 'vitest';
import { stateOf } from '../../src/job/ledger.ts';
import { specText } from '../../src/job/spec.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { type AtTheBench, newJob } from './at-the-bench.ts';

async function rightDone(...more: readonly string[]): Promise<AtTheBench> {
  const at = await newJob();
  const right = [
    'area right arm',
    'bolt hex 13 M8x25',
    'off 1',
    'bolt hex 13 M8x30',
    'off 2',
    'holes 2',
    'by torque 30',
  ];
  for (const line of [...right, 'area left arm', 'bolt hex 13', ...more]) {
    const answer = at.session().runLine(line);
    if (answer.kind === 'refused') throw new Error(`${line}: ${answer.text}`);
  }
  return at;
}
const shown = (at: AtTheBench) => textOf(sceneOf(at.view(), { desk: at.bench.desk(), session: at.state() }));
const cameOff = (at: AtTheBench, hole: string) => {
  const { first = '' } = stateOf(at.state().ledger, 'hole', hole)?.called ?? {};
  return specText(stateOf(at.state().ledger, 'fastener', first)?.spec ?? {});
};
const leftArm = (at: AtTheBench) => stateOf(at.state().ledger, 'area', 'left arm');

it('offers the fastener of the same hole, and what comes off is the one in use until its key is pressed', async () => {
  const at = await rightDone();
  expect(shown(at)).toContain('" as right arm: bolt hex 13 M8x25');
  await at.press('enter', 'backspace');
  await at.press('"', 'enter');
  expect(shown(at)).toContain('" as right arm: bolt hex 13 M8x30');
  await at.press('enter');
  expect([cameOff(at, 'left arm/1'), cameOff(at, 'left arm/2')]).toEqual(['bolt hex 13 M8x25', 'bolt hex 13 M8x25']);
  // There are no more of them there.
  expect(shown(at)).not.toContain('as right arm');
});
it('[O4] offers the figure, declares it by its key, and never beside one that was said here', async () => {
  const at = await rightDone('off 1', 'holes 1');
  await at.press('B');
  expect(shown(at)).toContain('" as right arm: 30 N·m');
  expect(leftArm(at)?.declared?.method).toBeUndefined();
  await at.press('"');
  expect(leftArm(at)?.declared?.method).toEqual({ by: 'torque', newtonMetres: 30 });
  expect(shown(at)).not.toContain('as right arm');
  const own = await rightDone('off 1', 'by shoulder');
  await own.press('B', '"');
  expect(own.state().answer).toMatchObject({
    kind: 'refused',
    text: 'nothing is known at right arm that is wanted here',
  });
});
it('[K4] asks for the count with the one of the other side to be confirmed, and counts nothing by itself', async () => {
  const at = await rightDone('off 1');
  await at.press('h');
  expect(at.view().asking).toMatchObject({
    title: 'count holes: how many by eye (right arm has 2)',
    typed: '2',
    standing: true,
  });
  expect(leftArm(at)?.counted).toBeUndefined();
  await at.press('3', 'enter');
  expect(leftArm(at)?.counted?.count).toBe(3);
});
it('knows of no other side where the name has none', async () => {
  const at = await rightDone('area sump', 'off 1');
  await at.press('"');
  expect(at.state().answer).toMatchObject({ text: 'no area of this name on the other side is known' });
  await at.press('h');
  expect(at.view().asking).toMatchObject({ title: 'count holes: how many', typed: '' });
});
