// A letter pressed by habit on the wrong one of the screens that are worked on with dirty hands: it may do nothing, ask, or
// be refused there, but say nothing that is not so. What is left of letters with two meanings is named here, with why.
import { expect, it } from 'vitest';
import { standardKeymap } from '../../src/calls/bindings.ts';
import { rowById } from '../../src/calls/table.ts';
import type { ScreenId } from '../../src/view/screens.ts';

const worked: readonly ScreenId[] = ['strip', 'build', 'rotation'];
const writes = (id: string): boolean => {
  const row = rowById.get(id);
  return row !== undefined && row.group !== 'the screen' && row.group !== 'in use';
};
/** Letters with several calls that write, each by the screens it is on. */
function severalMeanings(): Record<string, string[]> {
  const calls = new Map<string, Set<string>>();
  for (const screen of worked) {
    for (const { row, binding } of standardKeymap.keysOn(screen)) {
      if (binding.on === 'any' || !writes(row.id)) continue;
      calls.set(binding.key, new Set([...(calls.get(binding.key) ?? []), row.id]));
    }
  }
  return Object.fromEntries([...calls].filter(([, ids]) => ids.size > 1).map(([key, ids]) => [key, [...ids].sort()]));
}

it('has two meanings only where the wrong one is asked, refused, or the same movement of the hand', () => {
  expect(severalMeanings()).toEqual({
    // The one key of each screen: next off, next back, a quarter turn.
    enter: ['back', 'off', 'quarter'],
    space: ['back', 'off', 'quarter'],
    // Refused where no mark is due.
    m: ['mark-on', 'missing'],
    // Each asks first, or is refused where there is none to be taken.
    l: ['drained', 'final', 'locks-slid'],
    n: ['new', 'turned'],
    r: ['renewed', 'role'],
    t: ['tension', 'tight'],
    w: ['tension-wrong', 'working', 'wrong-one'],
    e: ['bind-cause', 'was'],
    y: ['lost', 'substitute'],
    // Refused where nothing is suspected, declared or closed.
    u: ['dry', 'wrong-indeed'],
    z: ['looked', 'meant-so'],
    // That a mark is off asks by how much; the other is refused where nothing is in only to turn.
    x: ['mark-off', 'working-out'],
    // That the engine stands at its marks is noted, and opens nothing.
    k: ['companions', 'to-marks'],
  });
});

it('takes out by one letter wherever something is in, and asks how the tension is wrong before a check fails', () => {
  expect(worked.map((screen) => standardKeymap.boundTo('o', screen)?.row.id)).toEqual(Array(3).fill('taken-out'));
  expect(standardKeymap.boundTo('w', 'rotation')?.binding.asks).toEqual(['how']);
  for (const key of ['b', 'd', 'r', 'c', 'p', 'j']) expect(standardKeymap.boundTo(key, 'rotation')).toBeUndefined();
  for (const key of ['c', 'p', 'd']) expect(standardKeymap.boundTo(key, 'build')).toBeUndefined();
});
