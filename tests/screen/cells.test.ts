// Names cut to the room there is.
import { expect, it } from 'vitest';
import { fittedApart, spread } from '../../src/screen/cells.ts';
import { newStory } from '../sheet/bench-story.ts';
import { demoDesk, sceneOf, textOf } from './scene.ts';

it('cuts a name in its middle where its beginning would read as another, and at its end else', () => {
  const names = [
    'right caliper',
    'right caliper bracket',
    'right caliper bolt',
    'intake manifold gasket',
    'intakemanifold',
  ];
  const cut = (name: string, cells = 17) => fittedApart(name, names, cells);
  expect(names.map((name) => cut(name))).toEqual([
    'right caliper    ',
    'right ca… bracket',
    'right calip… bolt',
    'intake manifold …',
    'intakemanifold   ',
  ]);
  // No room for both ends.
  expect(cut('right caliper bracket', 11)).toBe('right cali…');
  expect(spread('right caliper bracket', 'as found', 26, cut)).toBe('right ca… bracket as found');
});
it('tells the areas beside the cardboard apart at 80 columns', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  const areas = ['right caliper', 'right caliper bracket'];
  story.call('declare', { entries: areas.map((area) => ({ kind: 'area-declared', area, planned: true })) });
  const shown = textOf(sceneOf({ screen: 'strip' }, { desk: { ...demoDesk(), ledger: story.ledger } }));
  expect(shown).toMatch(/right caliper +as found/);
  expect(shown).toContain('right ca… bracket as found');
});
