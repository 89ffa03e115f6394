// For the first ten minutes of a job without a plan: one hint at a time below the cardboard, as far as the job has come.
import { expect, it } from 'vitest';
import { keymapOf, standardKeymap } from '../../src/calls/bindings.ts';
import { listedOn } from '../../src/calls/lists.ts';
import type { Stamp } from '../../src/job/line.ts';
import { notAsked } from '../../src/job/not-asked.ts';
import { shapeOf } from '../../src/screen/colours.ts';
import { plainAsking } from '../../src/session/asking.ts';
import { screens } from '../../src/view/screens.ts';
import { playLines, scriptLines, upTo } from '../jobs/lines.ts';
import { newStory } from '../sheet/bench-story.ts';
import { demoDesk, sceneOf, textOf } from './scene.ts';

const minute = 60_000;
function hintAfter(off: number, minutes: number, service?: string): string {
  const story = newStory().call('open-job', { label: 'estate' });
  if (service) story.call('order-service', { service });
  for (let n = 1; n <= off; n++) story.call('remove', { hole: `cover/${n}`, to: 'tray:1', spec: { kind: 'bolt' } });
  const first = story.ledger.lines.all[0];
  const now = { ...demoDesk().now, atMs: (first?.atMs ?? 0) + minutes * minute };
  const desk = { ...demoDesk({ area: 'cover' }), ledger: story.ledger, now };
  return textOf(sceneOf({ screen: 'strip' }, { desk }));
}

it.each([
  [1, 'Bksp strikes the last call'],
  [3, 'D draws the area'],
  [6, 'c a plug or hose parted'],
  [12, 'L what is still open'],
])('with %d off it says: %s', (off, hint) => {
  expect(hintAfter(off, 5).replace(/\s*│\s*/g, ' ')).toContain(hint);
});
it('offers no drawing of an area that is drawn', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  for (const n of [1, 2, 3]) story.call('remove', { hole: `cover/${n}`, to: 'tray:1', spec: { kind: 'bolt' } });
  const shown = () => {
    const now = { ...demoDesk().now, atMs: story.ledger.lines.all[0]?.atMs ?? 0 };
    return textOf(
      sceneOf({ screen: 'strip' }, { desk: { ...demoDesk({ area: 'cover' }), ledger: story.ledger, now } }),
    );
  };
  expect(shown()).toContain('D draws the area');
  story.call('declare', {
    entries: [
      {
        kind: 'area-declared',
        area: 'cover',
        outline: [
          [0, 0],
          [9, 0],
          [9, 9],
        ],
      },
    ],
  });
  expect(shown()).toContain('p the part it held came off');
  expect(shown()).not.toContain('draws the area');
  story.call('remove-part', { part: 'cover', heldBy: ['cover/1', 'cover/2', 'cover/3'] });
  expect(shown()).not.toContain('came off');
  expect(shown()).toContain('c a plug or hose parted');
});
it('says at the foot what the keys do while a hole is moved on the map, and where it is', () => {
  const placing = { hole: 'cam cover/3', at: [12, 8] as const };
  const { desk } = sceneOf({ screen: 'strip' });
  const moving = { ...desk, facing: { ...desk.facing, hole: placing.hole, placing } };
  const text = textOf(sceneOf({ screen: 'strip' }, { desk: moving }));
  expect(text).toContain('the arrows move 3, at 12 8   Enter keeps it there   Esc leaves it where it was');
});
it('names the key of the call to make instead', () => {
  const answer = { kind: 'refused', text: '1, 2 are only slack', instead: 'take them off', by: 'off' } as const;
  const scene = sceneOf({ screen: 'strip' }, { session: { savedTo: 0, looking: false, answer } });
  expect(textOf(scene)).toContain('NO 1, 2 are only slack; take them off: Enter.');
  // Of another screen with the way there; of none as it is typed.
  for (const [by, words] of [
    ['box', 'take them off: P i.'],
    ['pass', 'take them off: B ".".'],
    ['searched', 'take them off: P g.'],
    ['ruled-out', 'take them off: / ruled out.'],
  ] as const) {
    const session = { savedTo: 0, looking: false, answer: { ...answer, by } };
    expect(textOf(sceneOf({ screen: 'strip' }, { session }))).toContain(words);
  }
});
it('says no twice of nothing: NO, and then what there is none of', () => {
  const answer = { kind: 'refused', text: 'no stand is in', instead: 'put it in' } as const;
  const session = { savedTo: 0, looking: false, answer };
  expect(textOf(sceneOf({ screen: 'strip' }, { session }))).toContain('NO stand is in; put it in');
});
it('leaves no blank before a comma where nothing is known of what an empty hole held', () => {
  const story = newStory().call('open-job', { label: 'estate' }).call('find-empty', { hole: 'cover/1' });
  const desk = { ...demoDesk({ area: 'cover', hole: 'cover/1' }), ledger: story.ledger };
  expect(textOf(sceneOf({ screen: 'strip' }, { desk }))).toContain('> 1 empty, a finding on it is open');
});
it('says nothing any more after ten minutes, and nothing where a service is ordered', () => {
  expect(hintAfter(3, 11)).not.toContain('draws the area');
  expect(hintAfter(3, 5, 'timing belt')).not.toContain('draws the area');
});
it('offers another one, or the count of the holes, where they are not counted, and nothing more once they are', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  for (const n of [1, 2]) story.call('remove', { hole: `cover/${n}`, to: 'tray:1', spec: { kind: 'bolt' } });
  const shown = () =>
    textOf(sceneOf({ screen: 'strip' }, { desk: { ...demoDesk({ area: 'cover' }), ledger: story.ledger } })).replace(
      /\s*│\s*/g,
      ' ',
    );
  expect(shown()).toContain('> another one: Enter (cover 3). That was all: h counts the holes');
  story.call('count-holes', { area: 'cover', count: 2 });
  expect(shown()).not.toContain('another one');
});
it('[X3] says of a released job that it is, and offers nothing more to come off', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  story.call('declare', { entries: [{ kind: 'hole-declared', hole: 'cover/1' }] });
  story.call('note-odometer', { distance: 9, unit: 'km' }).call('release', { who: 'Io' });
  for (const screen of ['strip', 'build'] as const) {
    const now = { ...demoDesk().now, atMs: story.ledger.lines.all[0]?.atMs ?? 0 };
    const desk = { ...demoDesk({ area: 'cover' }), ledger: story.ledger, now };
    const shown = textOf(sceneOf({ screen }, { desk }));
    expect(shown).toContain('RELEASED');
    expect(shown).toContain('Released in line 4. L v opens the job again.');
    expect(shown).not.toContain('one came off');
  }
});
it('offers the next empty tray before the first of an area, while what lies in the one in use is of another', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  story.call('remove', { hole: 'cover/1', to: 'tray:1', spec: { kind: 'bolt' } });
  const shown = (area: string, tray: string) => {
    const desk = { ...demoDesk({ area, tray }), ledger: story.ledger, trays: ['1', '2', '3'] };
    return textOf(sceneOf({ screen: 'strip' }, { desk }));
  };
  expect(shown('liner', '1')).toContain('t tray: 2, empty');
  expect(shown('liner', '2')).not.toContain('t tray:');
  expect(shown('cover', '1')).not.toContain('t tray:');
});
it('[X3] says of a released car how its sheet is printed', () => {
  const { ledger } = playLines(scriptLines('reference-planned.calls'));
  const text = textOf(sceneOf({ screen: 'leaving' }, { desk: { ...demoDesk(), ledger }, listed: [] }));
  expect(text).toContain('The car was released. The shelf, H, names the command that prints its sheet.');
});
it('[X4] asks, where nothing is open any more, when the belt and the coolant are next due, until it is said', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  const shown = () =>
    textOf(sceneOf({ screen: 'leaving' }, { desk: { ...demoDesk(), ledger: story.ledger }, listed: [] }))
      .split('\n')
      .filter((row) => /due/.test(row))
      .map((row) => row.trim());
  expect(shown()).toEqual([]);
  story.call('remove-part', { part: 'timing belt' }).call('fill-box', { name: 'new belt', replaces: 'timing belt' });
  story.call('replace-part', { part: 'timing belt' }).call('drain', { circuit: 'coolant' });
  story.call('order-service', { service: 'wash' }).call('service-done', { service: 'wash' });
  expect(shown()).toEqual([expect.any(String), '- / due timing belt on DATE at DISTANCE']);
  story.call('fill-fluid', { circuit: 'coolant' });
  const lines = ['- / due timing belt on DATE at DISTANCE', '- / due coolant, plain'];
  expect(shown()).toEqual(['Nobody said when it is next due; say it (i), and it stands on the sheet:', ...lines]);
  story.call('note-due', { what: 'timing belt', on: '2030-01-01' });
  expect(shown().slice(1)).toEqual(lines.slice(1));
  story.call('note-due', { what: 'coolant, long-life', on: '2030-01-01' });
  expect(shown()).toEqual([]);
});
it('[X1] tells, where nothing is open any more, what nobody declared and so nothing asked for', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  story.call('remove', { hole: 'cover/1', to: 'tray:1', spec: { kind: 'bolt' } });
  const shown = () =>
    textOf(sceneOf({ screen: 'leaving' }, { desk: { ...demoDesk(), ledger: story.ledger }, listed: [] })).split('\n');
  expect(shown().map((row) => row.trim())).toEqual(
    expect.arrayContaining([
      'Nothing is open. The car may leave: press x.',
      'Not asked on this job, since nobody declared it; look yourself:',
      '- fluids, oil level, first start and leaks (no circuit was declared)',
      '- clean faces, beads and their cure (no face of cover)',
      '- check rotation (no belt or chain drive was declared)',
      '- road test and brake pedal (nobody said what cover belongs to)',
      '- a second look (cover: not called critical)',
    ]),
  );
  story.call('pedal-firm');
  const said = notAsked(story.ledger).map(({ what }) => what);
  expect(said).toContain('road test');
  expect(said.join()).not.toContain('pedal');
  expect(notAsked(newStory().ledger)).toEqual([]);
  const entries = [
    { kind: 'area-declared', area: 'cover', role: 'engine', critical: true },
    { kind: 'face-declared', face: 'cover face', area: 'cover', pressedBy: ['cover/1', 'cover/2'], keepsIn: ['oil'] },
    {
      kind: 'drive-declared',
      drive: 'belt',
      areas: [],
      parts: [],
      marks: [],
      turns: 2,
      tensioner: 'none',
      crankKeyed: true,
    },
  ];
  story.call('declare', { entries: [...entries, { kind: 'circuit-declared', circuit: 'oil', fluid: 'oil' }] });
  story.call('remove', { hole: 'cover/2', to: 'tray:1', spec: { kind: 'bolt' } });
  expect(notAsked(story.ledger)).toEqual([]);
  expect(shown().join()).not.toContain('Not asked');
});
it('[O3] counts all holes of a pass, back or not, and names the place of each in the order as the trade does', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  const entries = [
    ...[1, 2, 3, 4].map((n) => ({ kind: 'hole-declared' as const, hole: `cover/${n}`, at: [n * 10, 0] as const })),
    { kind: 'area-declared' as const, area: 'cover', order: ['2', '3', '1', '4'] },
  ];
  story.call('declare', { entries });
  for (const n of [1, 2, 3, 4]) story.call('remove', { hole: `cover/${n}`, to: 'tray:1', spec: { kind: 'bolt' } });
  story.call('count-holes', { area: 'cover', count: 4 });
  const shown = () =>
    textOf(
      sceneOf(
        { screen: 'build' },
        { desk: { ...demoDesk({ area: 'cover' }), ledger: story.ledger }, columns: 200, rows: 60 },
      ),
    );
  story.call('fit', { hole: 'cover/3' }).call('fit', { hole: 'cover/1' });
  expect(shown()).toContain('cover: snug 0 of 4');
  expect(shown()).toContain('3 on, 2nd');
  expect(shown()).toContain('1 on, 3rd');
  story.call('tighten', { hole: 'cover/3' });
  expect(shown()).toContain('cover: snug 1 of 4');
  expect(shown()).toContain('1 on, 3rd');
});
it('says which figure sets which head beside what is in use, as far as the row has room', () => {
  const spec = { kind: 'bolt', head: 'hex 10' } as const;
  const shown = (columns: number, screen: 'strip' | 'build' = 'strip', area = 'cam cover') =>
    textOf(sceneOf({ screen }, { desk: demoDesk({ area, spec }), columns, rows: 40 })).split('\n')[2];
  expect(shown(120, 'strip', 'front carrier')).toMatch(/bolt hex 10 +hex 8:8 0:10 2:12 3:13 4:14 6:16 7:17 9:19 $/);
  expect(shown(80, 'strip', 'front carrier')).toMatch(/bolt hex 10 +heads 8 0 2 3 4 6 7 9 $/);
  // Of a planned area that is through nothing more comes off.
  expect(shown(120)).toMatch(/tray 5 +hex 8:8 /);
  expect(shown(120, 'build')).toMatch(/bolt hex 8 M6x35 shouldered +$/);
});
it('names at the top the fastener that the next call takes: over a hole of a plan the planned one, else the one in use', () => {
  const { ledger } = playLines(
    upTo(scriptLines('reference-planned.calls'), 'box new auxiliary belt for auxiliary belt'),
  );
  const shown = (area: string, screen: 'strip' | 'box' = 'strip') => {
    const desk = { ...demoDesk({ area, tray: '5', spec: { kind: 'nut', head: 'hex 19' } }), ledger };
    return textOf(sceneOf({ screen }, { desk })).split('\n')[2]?.split('tray 5')[1];
  };
  expect(shown('cam cover')).toMatch(/^ +bolt hex 8 M6x35 shouldered /);
  expect(shown('heat shield')).toMatch(/^ +nut hex 19 /);
  // A list takes none of a plan, and none where nothing of the area comes off any more.
  const bare = demoDesk({ spec: { kind: 'nut', head: 'hex 19' } });
  expect(textOf(sceneOf({ screen: 'box' }, { desk: bare })).split('\n')[2]).not.toContain('hex 19');
  expect(shown('cam cover', 'box')).not.toContain('hex');
});
it('names in whole what else is in, on a sheet that is narrow beside the list and high', () => {
  const { ledger } = playLines(upTo(scriptLines('reference-planned.calls'), 'out cam clamp'));
  const desk = { ...demoDesk({ area: 'tensioner and idler' }), ledger };
  const text = textOf(sceneOf({ screen: 'build' }, { desk, columns: 120, rows: 40 }));
  const sheet = text.split('\n').map((row) => row.split('│')[1]?.trim() ?? '');
  expect(sheet.join(' ')).toContain('crank pin; in besides: right stand, jack with block, flywheel lock, cam clamp');
});
it.each([false, true])(
  'keeps Enter and what it does at the foot of every screen that has it, by a keypad too: %s',
  (pad) => {
    const keymap = keymapOf({ pad });
    const without = screens.filter((screen) => {
      const bound = keymap.boundTo('enter', screen);
      if (!bound || bound.binding.footer === false || screen === 'glance' || screen === 'help') return false;
      const foot = textOf(sceneOf({ screen }, { keymap })).split('\n').slice(-3).join('\n');
      return (
        !foot.includes(`Enter ${bound.row.labelNow?.(demoDesk()) ?? bound.row.label}`) && !foot.includes('Enter change')
      );
    });
    expect(without).toEqual([]);
  },
);

it('names on the way back, where nothing of the area waits, what goes on: the next area, what is open, or the release', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  const below = (screen: 'build' | 'glance' = 'build') => {
    const desk = { ...demoDesk({ area: 'cover' }), ledger: story.ledger };
    const text = textOf(sceneOf({ screen, before: 'build' }, { desk, columns: 109 }));
    return text.replace(/\s*│\s*|\s+/g, ' ');
  };
  const off = (hole: string) => story.call('remove', { hole, to: 'tray:1', spec: { kind: 'bolt', head: 'hex 10' } });
  const closed = (area: string) => {
    story.call('count-holes', { area, count: 1 }).call('fit', { hole: `${area}/1` });
    story.call('complete-pass', { area }).call('complete-pass', { area });
  };
  off('cover/1');
  off('pump/1');
  closed('cover');
  expect(below()).toContain('Nothing of it waits. > is the next area: pump.');
  const drive = { drive: 'timing belt', areas: ['cover'], parts: [], marks: ['crank'], turns: 2, tensioner: 'sprung' };
  story.call('declare', {
    entries: [
      { kind: 'drive-declared', crankKeyed: true, ...drive },
      {
        kind: 'behind-declared',
        front: 'area:pump',
        behind: 'rotation:timing belt',
        until: 'closed',
        gate: true,
        from: 'plan',
      },
    ],
  });
  expect(below()).toContain('> is the next area: pump, first R: timing belt (check rotation not passed).');
  story.call('strike', { lines: [story.ledger.lines.length] });
  closed('pump');
  expect(below()).toContain('Nothing of it waits. L lists what else keeps the car here.');
  story
    .call('note-odometer', { distance: 118_400 })
    .call('count-trays', { counts: [{ tray: '1', count: 0 }] })
    .call('tools-out');
  expect(below()).toContain('Nothing of it waits. Nothing is open: L x releases the car.');
  expect(below('glance')).toContain('nothing is next, and nothing is open: L x releases the car');
});

it('shows over the glance and help the key that leads back, by a keypad the screen below', () => {
  const foot = (screen: 'glance' | 'help', pad = false) =>
    textOf(sceneOf({ screen, before: 'services' }, { keymap: keymapOf({ pad }) }))
      .split('\n')
      .slice(-3)
      .join(' ');
  expect(foot('glance')).toContain(' G back ');
  expect(foot('glance')).toContain(' ? help ');
  expect(foot('help')).toContain(' ? back ');
  expect(foot('glance', true)).toContain(' * 9 back ');
  expect(foot('help', true)).toContain(' * 9 back ');
});
it('explains where help is asked for the signs of the screen first, of every list that has some', () => {
  for (const before of screens) {
    const rows = textOf(sceneOf({ screen: 'help', before }))
      .split('\n')
      .slice(3);
    const first = rows.findIndex((row) => row.includes('of the calls below'));
    expect(first, before).toBeLessThan(rows.findIndex((row) => row.startsWith(' > ') && !row.startsWith(' > <')));
    const listed = listedOn(before, 'strip', demoDesk(), standardKeymap);
    const marks = new Set(listed.slice(0, 60).map(({ mark }) => mark));
    const said = rows.slice(0, first).join(' ');
    const unsaid = [...marks].filter((mark) => mark !== 'plain' && !said.includes(shapeOf(mark)));
    expect([before, before === 'help' ? [] : unsaid]).toEqual([before, []]);
  }
});

it('[S7] says of a cure, while nothing is earned, that the clock is not called right, whole in a narrow row', () => {
  const { ledger } = playLines(upTo(scriptLines('reference-planned.calls'), 'start'));
  const last = ledger.lines.all.at(-1) as Stamp;
  const now = { ...last, atMs: last.atMs + 3_600_000, run: last.run + 1, awakeMs: 0 };
  const text = textOf(sceneOf({ screen: 'sealing', at: { sealing: 1 } }, { desk: { ...demoDesk(), ledger, now } }));
  expect(text).toMatch(/bead +joint sealant +nothing is earned: is the clock right\? *$/m);
});
it('says at the foot of a question for a name what goes on without it', () => {
  const asking = { ...plainAsking('second look: whose eyes, asked once a day', 'who'), type: 'who', at: -1 };
  expect(textOf(sceneOf({ screen: 'build', asking }))).toContain('Enter goes on without a name');
});
