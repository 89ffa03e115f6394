// What a call answers that lacks the drive it speaks of.
import { expect, it } from 'vitest';
import { lackingIn } from '../../src/calls/lacking.ts';
import { rowById } from '../../src/calls/table.ts';
import { demoDesk } from '../screen/scene.ts';
import { newStory } from '../sheet/bench-story.ts';

const live = rowById.get('live');
function lacking(...drives: string[]) {
  const story = newStory().call('open-job', { label: 'estate' });
  const entries = drives.map((drive) => ({
    kind: 'drive-declared',
    drive,
    areas: [],
    parts: [],
    marks: ['crank'],
    turns: 2,
    tensioner: 'sprung',
    crankKeyed: true,
  }));
  if (entries.length > 0) story.call('declare', { entries });
  return live && lackingIn(live, { ...demoDesk({}), ledger: story.ledger }, {});
}

it('[R1] says how a drive is declared where none is', () => {
  expect(lacking()).toMatchObject({ because: 'no drive is declared', by: 'line' });
});
it('[R1] names the drives of which one may be meant, and how it is said', () => {
  expect(lacking('timing belt', 'balance belt')).toEqual({
    because: 'timing belt or balance belt may be meant',
    instead: 'say which, as "tensioner live timing belt"',
    by: 'line',
  });
});
it('says of what is left out at its end, too, that no area is in use', () => {
  const holes = rowById.get('holes');
  const { facing, ...desk } = demoDesk({});
  const { area: _, ...nowhere } = facing;
  const empty = { ...desk, facing: nowhere, ledger: newStory().call('open-job', { label: 'estate' }).ledger };
  expect(holes && lackingIn(holes, empty, { count: 4 })).toEqual({
    because: 'no area is in use',
    instead: 'name one',
    by: 'area',
  });
});
