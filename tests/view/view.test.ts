// The view as a plain reducer: no job, no key, no frame.
import { describe, expect, it } from 'vitest';
import {
  type Asking,
  areNumbered,
  firstView,
  helped,
  longestTyped,
  offered,
  type ViewStep,
  viewed,
} from '../../src/view/view.ts';

const having = (...steps: ViewStep[]) => steps.reduce(viewed, firstView);
const asking: Asking = {
  title: 'area',
  row: 'area',
  slot: 'area',
  type: 'area',
  optional: false,
  choices: ['cam cover', 'sump', 'upper cover'].map((value) => ({ value, text: value })),
  typed: '',
  at: 0,
};

describe('screens', () => {
  it('help leads back to where it was asked for, the shelf to the job', () => {
    expect(having({ to: 'build' }, { to: 'help' })).toMatchObject({ screen: 'help', before: 'build' });
    expect(having({ to: 'build' }, { to: 'help' }, { to: 'help' })).toMatchObject({ before: 'build' });
    expect(having({ to: 'log' }, { to: 'shelf' })).toMatchObject({ screen: 'shelf', before: 'log' });
  });
  it('help asked for on the shelf leads back to the shelf, and that to the job', () => {
    const asked = having({ to: 'log' }, { to: 'shelf' }, { to: 'help' });
    expect([asked.before, helped(asked)]).toEqual(['log', 'shelf']);
    const back = viewed(asked, { to: helped(asked) });
    expect(back).toMatchObject({ screen: 'shelf', before: 'log' });
    expect(helped(viewed(viewed(back, { to: 'log' }), { to: 'help' }))).toBe('log');
  });
  it('each keeps its own place, within its list', () => {
    const view = having({ to: 'log' }, { move: 5, of: 9 }, { to: 'box' }, { move: 3, of: 2 }, { to: 'log' });
    expect(view.at).toEqual({ log: 5, box: 1 });
    expect(viewed(view, { move: -50, of: 9 }).at.log).toBe(0);
    expect(viewed(view, { move: 1, of: 0 }).at.log).toBe(0);
  });
  it('going elsewhere leaves what was asked', () => {
    expect(having({ ask: asking }, { to: 'box' }).asking).toBeUndefined();
  });
});

describe('lists opened one from the other', () => {
  const strip = having({ to: 'strip' });
  const on = (...to: readonly ViewStep[]) => to.reduce(viewed, strip).trail;
  it('each lead back to the one before, and no further than to where one of them was opened before', () => {
    expect(on({ to: 'box' })).toBeUndefined();
    expect(on({ to: 'box' }, { to: 'leaving' })).toEqual(['box']);
    expect(on({ to: 'box' }, { to: 'leaving' }, { to: 'findings' })).toEqual(['box', 'leaving']);
    expect(on({ to: 'box' }, { to: 'leaving' }, { to: 'findings' }, { to: 'box' })).toBeUndefined();
    expect(on({ to: 'box' }, { to: 'leaving' }, { to: 'help' }, { to: 'leaving' })).toEqual(['box']);
  });
  it('end where work goes on, and not where a place of one is only visited', () => {
    expect(on({ to: 'box' }, { to: 'leaving' }, { to: 'build' })).toBeUndefined();
    const visited = [{ to: 'box' }, { to: 'leaving' }, { to: 'build', from: 'leaving' }] as const;
    expect(on(...visited, { to: 'leaving' })).toEqual(['box']);
    expect(on(...visited, { to: 'findings' })).toEqual(['box', 'leaving']);
  });
});

describe('asking', () => {
  it('filters by what is typed, wherever it stands, and begins at the first again', () => {
    const view = having({ ask: asking }, { move: 2, of: 3 }, { type: 'cover' });
    expect(view.asking).toMatchObject({ typed: 'cover', at: 0 });
    expect(offered(view.asking as Asking).map((c) => c.value)).toEqual(['cam cover', 'upper cover']);
    expect(offered(viewed(view, { erase: true }).asking as Asking)).toHaveLength(2);
  });
  it('takes away why an answer was wrong as soon as one types on', () => {
    const view = having({ ask: asking }, { type: 'x' }, { wrong: 'no such area' });
    expect(view.asking?.why).toBe('no such area');
    expect(viewed(view, { erase: true }).asking).not.toHaveProperty('why');
  });
  it('erases a whole character, and nothing from nothing', () => {
    const typed = having({ ask: asking }, { type: 'ü𝄞' }, { erase: true });
    expect(typed.asking?.typed).toBe('ü');
    expect(having({ ask: asking }, { erase: true }).asking?.typed).toBe('');
  });
  it('takes no more than fits', () => {
    expect(having({ ask: asking }, { type: 'x'.repeat(5000) }).asking?.typed).toHaveLength(longestTyped);
  });
  it('moves within what is offered', () => {
    expect(having({ ask: asking }, { type: 'cover' }, { move: 9, of: 2 }).asking?.at).toBe(1);
  });
  it('tells numbers from names', () => {
    expect(areNumbered([{ value: '7', text: '7 washer' }])).toBe(true);
    expect(areNumbered(asking.choices)).toBe(false);
  });
  it('nothing is typed where nothing is asked', () => {
    expect(having({ type: 'x' }, { erase: true }, { wrong: 'x' }, { stopAsking: true })).toEqual(firstView);
  });
});
