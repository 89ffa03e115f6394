// Whole frames of every screen at 80 by 24, kept beside this file and read by eye when one changes; and what holds for
// a frame of any size: exactly as many rows and cells as the screen has.
import { describe, expect, it } from 'vitest';
import { keymapOf, padKeys } from '../../src/calls/bindings.ts';
import { offerOf } from '../../src/calls/desk.ts';
import { type SettingsShown, settingRows } from '../../src/calls/lists/settings.ts';
import { emptyLedger, every } from '../../src/job/ledger.ts';
import { frame, rememberingFrames, type Scene } from '../../src/screen/frame.ts';
import { cellsOf } from '../../src/screen/width.ts';
import { plainAsking } from '../../src/session/asking.ts';
import { standardHabits } from '../../src/session/habits.ts';
import { screens } from '../../src/view/screens.ts';
import type { View } from '../../src/view/view.ts';
import { playLines, scriptLines, upTo } from '../jobs/lines.ts';
import { shipped, shippedNames } from '../plan/shipped/shipped.ts';
import { newStory } from '../sheet/bench-story.ts';
import { demoDesk, sceneOf, textOf } from './scene.ts';

const jobScreens = screens.filter((screen) => screen !== 'shelf' && screen !== 'settings');
const settingsScene = (more: Partial<SettingsShown> = {}, size = {}) =>
  sceneOf({ screen: 'settings', before: 'shelf' }, {
    listed: settingRows({ ...standardHabits, speaking: false, file: settingsFile, ...more }),
    session: undefined,
    ...size,
  } as never);
const settingsFile = { path: '/home/bench/countback/settings.json', keys: 2, intervals: 1, sealants: 3, wrong: [] };
const offersShipped = shippedNames.map((file) => offerOf({ plan: shipped(file), file }));
const plansShipped = () => offersShipped;
const kept = (name: string) => `./frames/${name}.txt`;

describe('at 80 by 24', () => {
  it.each(jobScreens)('%s', async (screen) => {
    await expect(textOf(sceneOf({ screen }))).toMatchFileSnapshot(kept(screen));
  });
  it('the shelf', async () => {
    const listed = [
      { key: '1', mark: 'plain', name: '', text: 'estate, blue', end: '12 off, 14 open', picks: {} },
      { key: '2', mark: 'plain', name: '', text: 'hatchback', end: 'released', picks: {} },
    ] as const;
    const shelf = sceneOf({ screen: 'shelf' }, { listed: [...listed], session: undefined } as never);
    await expect(textOf(shelf)).toMatchFileSnapshot(kept('shelf'));
  });
  it('the settings before any job, and with a file that is broken', async () => {
    await expect(textOf(settingsScene())).toMatchFileSnapshot(kept('settings'));
    await expect(textOf(settingsScene({}, { columns: 120, rows: 40 }))).toMatchFileSnapshot(kept('settings-120'));
    const wrong = [
      '/home/bench/countback/settings.json, sounds: this must be true or false, not 3; put it right and start again',
    ];
    const broken = settingsScene({ file: { ...settingsFile, keys: 0, intervals: 0, sealants: 0, wrong } });
    const onFile = { ...broken, view: { ...broken.view, at: { settings: 13 } } };
    await expect(textOf(onFile)).toMatchFileSnapshot(kept('settings-broken'));
  });
  it('a job with nothing called yet', async () => {
    const desk = { ...demoDesk(), ledger: emptyLedger, facing: { tray: '1', spec: {} } };
    await expect(textOf(sceneOf({ screen: 'strip' }, { desk }))).toMatchFileSnapshot(kept('first'));
    // No vehicle is named yet: it goes by what it was begun under.
    expect(textOf(sceneOf({ screen: 'strip' }, { desk, begunAs: 'blue van' })).split('\n')[0]).toMatch(
      /^ Strip {2}blue van /,
    );
  });
  it('a question with choices, one that is refused among them', async () => {
    const asking: View['asking'] = {
      title: 'area: area',
      row: 'area',
      slot: 'area',
      type: 'area',
      optional: false,
      typed: 'co',
      at: 0,
      choices: [
        { value: 'coolant pump', text: 'coolant pump' },
        { value: 'arch liner', text: 'arch liner' },
        { value: 'cam cover', text: 'cam cover', blocked: 'the mask is in' },
      ],
      why: 'there is no such area',
    };
    await expect(textOf(sceneOf({ screen: 'strip', asking }))).toMatchFileSnapshot(kept('question'));
  });
  it('a list of calls in all the rows there are, with the key of the next page', () => {
    const choices = Array.from({ length: 60 }, (_, i) => ({ value: String(i), text: `${i + 10}  a call` }));
    const asking = { ...plainAsking('which call', 'call'), type: 'call|screen', choices, at: 3 };
    for (const [rows, shown] of [
      [24, 10],
      [40, 26],
    ] as const) {
      const text = textOf(sceneOf({ screen: 'strip', asking }, { rows }));
      expect(text.match(/a call/g)?.length).toBe(shown);
      expect(text).toContain('\n>   13  a call');
      expect(text).toContain(`${60 - shown} more: PgDn`);
      // The next page is reached by one key, and the last one is full.
      const paged = (at: number) => textOf(sceneOf({ screen: 'strip', asking: { ...asking, at } }, { rows }));
      expect(paged(9)).toContain('\n>   19  a call');
      expect(paged(59).match(/a call/g)?.length).toBe(shown);
      expect(paged(59)).not.toContain('more:');
      const pad = textOf(sceneOf({ screen: 'strip', asking }, { rows, keymap: keymapOf({ pad: true }) }));
      expect(pad).toContain(`${60 - shown} more: +`);
    }
    const plain = { ...asking, choices: choices.map(({ value }) => ({ value, text: 'a call' })) };
    expect(textOf(sceneOf({ screen: 'strip', asking: plain }, { rows: 40 })).match(/a call/g)?.length).toBe(9);
  });
  it('a fastener that is suspected', async () => {
    const story = newStory().call('open-job', { label: 'estate' });
    const mount = { kind: 'bolt', head: 'hex 14', thread: 'M10x1.25', lengthMm: 60, class: '10.9' };
    const wrong = { ...mount, head: 'hex 17', lengthMm: 50, class: '8.8' };
    for (const [at, spec] of [mount, mount, wrong].entries()) {
      story.call('remove', { hole: `mount bracket/${at + 1}`, to: 'tray:1', spec });
    }
    const desk = { ...demoDesk({ area: 'mount bracket' }), ledger: story.ledger };
    await expect(textOf(sceneOf({ screen: 'strip' }, { desk }))).toMatchFileSnapshot(kept('suspected'));
    await expect(textOf(sceneOf({ screen: 'findings' }, { desk }))).toMatchFileSnapshot(kept('suspected-findings'));
    const large = { desk, columns: 200, rows: 60 };
    await expect(textOf(sceneOf({ screen: 'strip' }, large))).toMatchFileSnapshot(kept('suspected-200'));
  });
  it('services side by side and what is still to do, half way into a job of three', async () => {
    const half = playLines(upTo(scriptLines('reference-planned.calls'), 'in cam clamp'));
    const desk = { ...demoDesk(), ledger: half.ledger, now: half.now, plans: plansShipped };
    for (const screen of ['services', 'todo'] as const) {
      await expect(textOf(sceneOf({ screen }, { desk }))).toMatchFileSnapshot(kept(`${screen}-half-way`));
      const wide = sceneOf({ screen }, { desk, columns: 120, rows: 40 });
      await expect(textOf(wide)).toMatchFileSnapshot(kept(`${screen}-half-way-120`));
    }
    const chosen = [{ plan: 'cylinder head', service: 'cylinder head' }];
    const choosing = { ...desk, facing: { ...desk.facing, chosen } };
    await expect(textOf(sceneOf({ screen: 'services' }, { desk: choosing }))).toMatchFileSnapshot(
      kept('services-chosen'),
    );
  });
  it('how the job was left', async () => {
    const greeting = Array.from({ length: 20 }, (_, i) => `part ${i + 1} is off`);
    await expect(textOf(sceneOf({ screen: 'strip' }, { greeting }))).toMatchFileSnapshot(kept('as-left'));
  });
});

describe.each([
  [120, 40],
  [200, 60],
])('at %i by %i', (columns, rows) => {
  it.each(jobScreens)('%s', async (screen) => {
    const scene = sceneOf({ screen, before: 'build' }, { columns, rows });
    await expect(textOf(scene)).toMatchFileSnapshot(kept(`${screen}-${columns}`));
  });
});

it('leaves words out whole where a row has no room for them, on every screen and in every area', () => {
  const cut: string[] = [];
  const look = (scene: Scene) => cut.push(...(textOf(scene).match(/.*[\p{L}\p{N}]…/gu) ?? []));
  for (const columns of [80, 96, 112, 120, 136]) {
    const size = { columns, rows: columns < 110 ? 24 : 40 };
    for (const screen of jobScreens) look(sceneOf({ screen, before: 'build' }, size));
    for (const { area } of every(demoDesk().ledger, 'area'))
      for (const screen of ['strip', 'build'] as const)
        look(sceneOf({ screen }, { ...size, desk: demoDesk({ area }) }));
  }
  expect(cut).toEqual([]);
});

it.each(['strip', 'build', 'leaving'] as const)(
  '%s at 80 by 24 names the key of the calls that find no room',
  (screen) => {
    expect(textOf(sceneOf({ screen, before: 'build' }))).toContain(' M more calls ');
  },
);

describe('by a keypad', () => {
  const keymap = keymapOf({ pad: true });
  it.each(jobScreens)('%s names no key that is not on it', (screen) => {
    const rows = textOf(sceneOf({ screen, before: 'strip' }, { keymap })).split('\n');
    const [, tabs] = rows;
    // Alone the figures are calls: 2 is a finding.
    expect(tabs).toMatch(/^ \* (?:then )?1 Strip 2 Build 3 .* 9 Work +$/);
    const wide = textOf(sceneOf({ screen, before: 'strip' }, { keymap, columns: 120 }));
    expect(wide.split('\n')[1]).toMatch(/^ \* then 1 Strip .* 9 Work \+ 3 Shelf/);
    const foot = rows.slice(-3).join(' ');
    const keys = [...foot.matchAll(/(?:^| {2,}|^ )([^ ]+) [a-z]/g)].map((match) => match[1]);
    expect(keys.length).toBeGreaterThan(1);
    expect(keys.filter((key) => key !== 'Enter' && !(padKeys as readonly string[]).includes(key ?? ''))).toEqual([]);
  });
  it('the hints of the first minutes name its keys too', () => {
    const desk = { ...demoDesk(), ledger: emptyLedger, facing: { tray: '1', spec: {} } };
    const text = textOf(sceneOf({ screen: 'strip' }, { desk, keymap }));
    expect(text).toContain('  8   name the area you begin with');
    expect(text).toContain('  9   the fastener in use, from a list');
    expect(text).toContain('  * 7   what must be closed before the car leaves');
  });
});

describe('the last answer', () => {
  const withAnswer = (answer: never, more = {}) =>
    sceneOf({ screen: 'build' }, { session: { answer, savedTo: 999, looking: false, ...more } as never });
  it('names the rule, what to do, and that order may be answered by the same key', () => {
    const refusal = {
      code: 'x',
      rule: 'O1',
      kind: 'order',
      because: 'it sits in front',
      instead: 'close it',
      places: [],
    };
    const said = textOf(
      withAnswer({
        kind: 'refused',
        text: 'the jack is in',
        instead: 'take it out',
        refusal,
        againSays: 'back',
      } as never),
    );
    expect(said).toContain('NO the jack is in; take it out. Enter again: it is done already. (O1)');
    const quick = {
      kind: 'asked',
      text: 'all are called',
      instead: 'go on',
      again: 'takes 4 off',
      call: 'back',
      tooQuick: true,
    };
    expect(textOf(withAnswer(quick as never)).replace(/\s+/g, ' ')).toContain(
      'Enter again takes 4 off. Too quick to have been read: once more.',
    );
  });
  it('[D5] says NOT SAVED over everything else, and the key that saves', () => {
    const notSaved = { message: 'the disk is full' };
    const said = textOf(withAnswer({ kind: 'faced', text: 'at cam cover' } as never, { notSaved }));
    expect(said.split('\n')[0]).toContain('NOT SAVED');
    expect(said).toContain('NOT SAVED: the disk is full. Press ! to save again.');
    expect(said).not.toContain('at cam cover   (');
  });
  it('[D3] says that a job is opened to look only', () => {
    const looking = sceneOf({ screen: 'strip' }, { session: { savedTo: 0, looking: true } });
    expect(textOf(looking).split('\n')[0]).toContain('to look only');
  });
  it('says saving until the disk has it', () => {
    const saving = sceneOf({ screen: 'strip' }, { session: { savedTo: 3, looking: false } });
    expect(textOf(saving).split('\n')[0]).toContain('saving');
  });
});

describe('a frame of any size', () => {
  const sizes = [
    [80, 24],
    [81, 25],
    [120, 40],
    [200, 60],
    [79, 24],
    [80, 23],
    [10, 3],
    [1, 1],
  ] as const;
  it.each(sizes)('%i by %i is exactly as wide and high', (columns, rows) => {
    for (const screen of screens) {
      const at = sceneOf({ screen }, { columns, rows });
      const made = frame(at);
      expect(made, screen).toHaveLength(rows);
      for (const row of made) expect(cellsOf(row.map((run) => run.text).join('')), screen).toBe(columns);
    }
  });
  it('says what it needs where the window is too small, and that nothing is lost', () => {
    expect(textOf(sceneOf({ screen: 'strip' }, { columns: 79, rows: 23 }))).toContain(
      'The window is 79 x 23; it needs 80 x 24. Nothing is lost.',
    );
  });
  it('shows the picked row of a long list wherever it is', () => {
    const { listed } = sceneOf({ screen: 'log' });
    for (const at of [0, 1, 50, listed.length - 1]) {
      expect(textOf(sceneOf({ screen: 'log', at: { log: at } }))).toMatch(/^ > /m);
    }
  });
});

describe('frames one after the other', () => {
  const desk = demoDesk();
  const first = sceneOf({ screen: 'todo' }, { desk, session: { savedTo: 0, looking: false } });
  const session = { savedTo: desk.ledger.lines.length, looking: false };
  const fault = {
    name: 'Fault',
    message: 'the disk is full',
    what: 'the disk is full',
    where: 'here',
    next: 'make room',
  };
  it.each<[string, Partial<Scene>]>([
    ['saved', { session }],
    ['not saved', { session: { ...session, notSaved: fault as never } }],
    ['answered', { session: { ...session, answer: { kind: 'faced', text: 'tray 3' } } }],
    ['a word', { word: 'No such key here.' }],
    ['a note', { note: 'Colours are off.' }],
    ['another screen', { view: { ...first.view, screen: 'strip' } }],
    ['another desk', { desk: { ...desk, facing: { ...desk.facing, area: 'coolant pump' } } }],
    ['another list', { listed: [] }],
    ['a keypad', { keymap: keymapOf({ pad: true }) }],
    ['a greeting', { greeting: ['Two wait.'] }],
    ['a larger window', { columns: 120, rows: 40 }],
    ['a smaller one', { columns: 70, rows: 20 }],
  ])('%s is painted as if it were the first', (_, more) => {
    const framed = rememberingFrames();
    framed(first);
    const next = { ...first, ...more };
    expect(framed(next)).toEqual(frame(next));
    expect(framed(next)).not.toEqual(frame(first));
  });
});

it('cuts nothing off of why a list is empty, and counts what is chosen and not ordered yet', () => {
  const chosen = [{ plan: 'cam cover reseal', service: 'cam cover reseal' }];
  const shown = textOf(sceneOf({ screen: 'todo' }, { desk: demoDesk({ chosen }), listed: [] })).replace(/\s+/g, ' ');
  expect(shown).toContain('or to fit. 1 chosen and not ordered yet. Services are ordered on the screen W.');
});
