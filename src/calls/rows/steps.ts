// Steps of the screen itself: going from one screen to another, moving in a list, typing a line, help, leaving.

import { type ScreenId, screens } from '../../view/screens.ts';
import { cap } from '../key-caps.ts';
import { key, type Row, type Settable, type Step } from '../row.ts';

const stepRow = (
  id: string,
  words: [string, ...string[]],
  label: string,
  help: string,
  step: Step,
  keys: Row['keys'],
  spoken?: readonly string[],
): Row => ({
  id,
  words,
  form: '',
  ...(spoken && { spoken }),
  label,
  help,
  group: 'the screen',
  keys,
  means: () => ({ step }),
});
const go = (to: ScreenId, letter: string, label: string, help: string): Row =>
  stepRow(`to-${to}`, [`show ${to}`], label, help, { to }, [key(letter, 'any', { footer: false })], [`show me ${to}`]);
const apartFromShelf = screens.filter((screen) => screen !== 'shelf');
const inLists = screens.filter((screen) => screen !== 'glance');
const listsAlone = inLists.filter((screen) => screen !== 'strip' && screen !== 'build');

const set = (what: Settable, words: string, help: string): Row =>
  stepRow(`set-${what}`, [words], words, help, { step: 'set', what }, []);
const settingRows: readonly Row[] = [
  set('name', 'my name', 'Who works here: offered where a call is signed, never assumed.'),
  set('trays', 'my trays', 'The trays that stand on the bench.'),
  set('distance', 'distance in', 'Kilometres or miles, where a distance is typed without its unit.'),
  set('temperature', 'temperature in', 'Degrees Celsius or Fahrenheit, typed without a unit and shown.'),
  set('torque', 'torque in', 'Newton metres or pound-force feet, typed without a unit and shown.'),
  set('colours', 'colours', 'Colours on or off; shapes and words stay.'),
];

export const stepRows: readonly Row[] = [
  go('strip', 'S', 'Strip', 'What comes off.'),
  go('build', 'B', 'Build', 'What goes back.'),
  go('findings', 'F', 'Findings', 'What is wrong, and how it is closed.'),
  go('rotation', 'R', 'Rotation', 'Turning the engine over by hand, and its marks.'),
  go('sealing', 'C', 'Cure', 'Sealing faces, beads, fluids, and when they are ready.'),
  go('box', 'P', 'Box', 'The parts box, trays and the scrap pile.'),
  go('leaving', 'L', 'Leave', 'What must be closed before the car leaves.'),
  go('log', 'J', 'Log', 'Every call of this job; striking and restoring.'),
  go('services', 'W', 'Work', 'The services: chosen, ordered, and side by side what each takes off.'),
  go('todo', 'T', 'still to do', 'Service by service: to take off, to judge, to fit, to buy, and the tools wanted.'),
  stepRow(
    'to-glance',
    ['show glance'],
    'glance',
    'Out, back, open and next, readable across the bay.',
    { to: 'glance' },
    [key('G')],
  ),
  go('shelf', 'H', 'Shelf', 'The jobs on the shelf.'),
  stepRow('help', ['help'], 'help', 'The calls of this screen, then all.', { step: 'help' }, [key('?')]),
  stepRow(
    'line',
    ['line'],
    'type a line',
    'Type a call in words, or several with ";" between them.',
    { step: 'type' },
    [key('/'), key(':', 'any', { footer: false })],
  ),
  stepRow('up', ['up'], 'up', 'The row above.', { step: 'up' }, [
    key('up', inLists, { footer: false }),
    key('', listsAlone, { pad: '-', footer: false }),
  ]),
  stepRow('down', ['down'], 'down', 'The row below.', { step: 'down' }, [
    key('down', inLists, { footer: false }),
    key('', listsAlone, { pad: '+', footer: false }),
  ]),
  stepRow('page-up', ['page up'], 'page up', 'A page up.', { step: 'page-up' }, [
    key('page-up', inLists, { footer: false }),
  ]),
  stepRow('page-down', ['page down'], 'page down', 'A page down.', { step: 'page-down' }, [
    key('page-down', inLists, { footer: false }),
  ]),
  stepRow('first-row', ['first row'], 'first row', 'The first row.', { step: 'first-row' }, [
    key('home', listsAlone, { footer: false }),
  ]),
  stepRow('last-row', ['last row'], 'last row', 'The last row.', { step: 'last-row' }, [
    key('end', listsAlone, { footer: false }),
  ]),
  stepRow(
    'next-group',
    ['next group'],
    'next group',
    'To the first row of the next area or heading.',
    { step: 'next-group' },
    [key('right', ['todo', 'leaving'], { footer: false })],
  ),
  stepRow(
    'group-before',
    ['group before'],
    'group before',
    'To the first row of this area or heading, then of the one before.',
    { step: 'group-before' },
    [key('left', ['todo', 'leaving'], { footer: false })],
  ),
  stepRow(
    'choose',
    ['choose'],
    'choose',
    'Open what is chosen, go to its place, or change the setting.',
    { step: 'choose' },
    [
      key('enter', ['shelf', 'todo', 'findings', 'leaving', 'log', 'box'], { pad: 'enter' }),
      key('enter', 'settings', { pad: 'enter', footer: `${cap.take} change` }),
    ],
  ),
  stepRow('new-job', ['make a job'], 'new job', 'A new job on the shelf.', { step: 'new' }, [
    key('n', 'shelf', { pad: '1' }),
  ]),
  stepRow(
    'next-call',
    ['the call shown'],
    'the call shown',
    `Take the call that the picked line proposes: it stands typed, to be finished and taken with ${cap.take}.`,
    { step: 'next-call' },
    [key('space', 'leaving', { pad: '0' })],
  ),
  stepRow(
    'label-in-hand',
    ['label in hand'],
    'label in hand',
    `The label of the tube in your hand, from the one known: what differs is typed over, ${cap.take} takes it. A bead laid before keeps its own.`,
    { step: 'label' },
    [key('l', 'sealing')],
  ),
  stepRow(
    'place',
    ['move on the map'],
    'move on the map',
    `Move the hole pointed at to its place on the map, by the arrow keys; ${cap.take} keeps it.`,
    { step: 'place' },
    [key('@', ['strip', 'build'], { footer: false })],
  ),
  stepRow('screens', ['all screens'], 'screens', 'Every screen, to be chosen by its number.', { step: 'screens' }, [
    key('tab', 'any', { pad: '*', footer: false }),
  ]),
  stepRow(
    'more',
    ['all calls'],
    'more calls',
    'Every call of this screen, to be chosen by its number.',
    { step: 'more' },
    [key('M', 'any', { pad: '/' })],
  ),
  stepRow(
    'same-again',
    ['same again'],
    'same again',
    'The last call once more, on what is next: what a pedal does.',
    { step: 'same-again' },
    [key('=', ['strip', 'build', 'rotation'], { footer: false })],
  ),
  stepRow(
    'which',
    ['ask which'],
    'ask which',
    'The next call asks which one it is about, instead of taking the one that comes next.',
    { step: 'which' },
    [key(',', 'any', { footer: false })],
  ),
  stepRow(
    'learn-pedal',
    ['set the pedal'],
    'set a pedal',
    'Learns the key that a foot pedal sends: press it when asked.',
    { step: 'pedal' },
    [],
  ),
  stepRow('pad', ['keypad'], 'keypad', 'Read the keys by a numeric keypad, or by the letters again.', { step: 'pad' }, [
    key('K', 'any', { footer: false }),
  ]),
  stepRow(
    'sounds',
    ['sounds'],
    'sounds',
    'Bells on or off: one taken, two refused, three the last of an area, four a count that differs.',
    { step: 'sounds' },
    [key('Q', 'any', { footer: false })],
  ),
  stepRow(
    'listening',
    ['stop listening', 'start listening'],
    'listening',
    'Stop listening, or start again, where the program was started with --listen.',
    { step: 'listening' },
    [key('V', 'any', { footer: false })],
    ['stop listening', 'start listening'],
  ),
  stepRow(
    'speaking',
    ['speak answers'],
    'speak answers',
    'Answers spoken, on or off.',
    { step: 'speaking' },
    [key('A', 'any', { footer: false })],
    ['speak answers'],
  ),
  {
    ...go('settings', 'E', 'settings', 'Name, trays, units, colours, sounds, keypad; before any job as well.'),
    keys: [key('E', 'shelf'), key('E', apartFromShelf, { footer: false })],
  },
  ...settingRows,
  stepRow('retry', ['save again'], 'save again', 'Save what could not be saved.', { step: 'retry' }, [
    key('!', 'any', { footer: false }),
  ]),
  stepRow(
    'leave',
    ['leave'],
    'back',
    'Puts away what is open, and leads back from a list; pressed twice more on a screen that is worked on, it leads up to the shelf.',
    { step: 'leave' },
    [key('escape', 'any', { footer: false })],
  ),
  stepRow('quit', ['quit'], 'leave program', 'Leave the program; everything saved is on the disk.', { step: 'quit' }, [
    key('q'),
    key('ctrl+c', 'any', { footer: false }),
  ]),
];
