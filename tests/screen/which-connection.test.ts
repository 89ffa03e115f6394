// Which connection is joined again: the list says it in turn, and of each why it waits.
import { expect, it } from 'vitest';
import type { Bound } from '../../src/calls/bindings.ts';
import { standardKeymap } from '../../src/calls/bindings.ts';
import { pressing } from '../../src/calls/pressing.ts';
import { questionOf } from '../../src/session/asking.ts';
import { newStory } from '../sheet/bench-story.ts';
import { demoDesk, sceneOf, textOf } from './scene.ts';

it('[O1] lists that of the area in use first and what goes on last behind what waits, each with why', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  const of = (connection: string, area?: string) => ({
    kind: 'connection-declared',
    connection,
    ...(area && { area }),
  });
  story.call('declare', {
    entries: [
      { kind: 'area-declared', area: 'right caliper', planned: true },
      { kind: 'area-declared', area: 'hub', planned: true },
      { kind: 'hole-declared', hole: 'right caliper/1' },
      of('battery earth'),
      of('hub plug', 'hub'),
      of('right wear sensor plug', 'right caliper'),
      of('left plug', 'hub'),
      {
        kind: 'behind-declared',
        front: 'connection:right wear sensor plug',
        behind: 'area:right caliper',
        until: 'closed',
        from: 'plan',
      },
    ],
  });
  for (const connection of ['battery earth', 'hub plug', 'right wear sensor plug'])
    story.call('part-connection', { connection });
  story.call('remove', { hole: 'right caliper/1', to: 'tray:1' });
  const desk = { ...demoDesk({ area: 'right caliper' }), ledger: story.ledger };
  const bound = standardKeymap.keysOn('build').find(({ row }) => row.id === 'made') as Bound;
  const asking = questionOf(pressing(bound, {}), desk);
  expect(asking?.choices.map(({ value }) => value)).toEqual([
    'right wear sensor plug',
    'hub plug',
    'battery earth',
    'left plug',
  ]);
  const shown = textOf(sceneOf({ screen: 'build', ...(asking && { asking }) }, { desk }));
  expect(shown).toMatch(/1 {2}right wear sensor plug +behind it right caliper is open/);
});
