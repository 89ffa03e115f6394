// The check rotation. A letter that is pressed all day on the screens beside it fails no check here and starts no count again.
import { stateOf } from '../../job/ledger.ts';
import { driveOpenedAt, runningTry } from '../../job/rotation.ts';
import { askedOnTurning, askedOnTurningOn } from '../asked-on-turning.ts';
import { type Desk, theDrive } from '../desk.ts';
import type { Args } from '../form.ts';
import { key, type Row } from '../row.ts';

/** A quarter turn of a crank with a ratchet or a bar. Common practice, no source. */
const leastMsOfQuarter = 400;
const drive = (desk: Desk) => ({ drive: theDrive(desk) });
function nextMark(desk: Desk): string | undefined {
  const name = theDrive(desk);
  const d = name === undefined ? undefined : stateOf(desk.ledger, 'drive', name);
  const last = d?.tries.at(-1);
  // What was read in a try that failed, or before the drive was opened again, is to be read anew.
  const stands = d && last && !last.failed && last.begunAt > driveOpenedAt(desk.ledger, d);
  const read = stands ? last.marks : {};
  return d?.declared?.marks.find((m) => read[m] === undefined);
}

/** What is called is added to what was turned. */
function turnsAsked(_args: Args, desk: Desk): string {
  const d = stateOf(desk.ledger, 'drive', theDrive(desk) ?? '');
  const t = d && runningTry(desk.ledger, d);
  const left = t ? (t.need - t.quarters) / 4 : 0;
  return `how many more${left > 0 ? ` (${left} to go)` : ''}`;
}

export const rotationRows: readonly Row[] = [
  {
    id: 'live',
    words: ['tensioner live', 'pin pulled'],
    form: '[<drive>]',
    spoken: ['pin pulled now'],
    label: 'tensioner live',
    help: 'The tensioner works on the belt: pin pulled, plunger released, or set and tight.',
    group: 'check rotation',
    keys: [key('v', 'rotation', { pad: '2' }), key('v', 'build')],
    verb: 'tensioner-live',
    fills: drive,
  },
  {
    id: 'quarter',
    words: ['quarter', 'quarter turn'],
    form: '[<drive>]',
    spoken: ['quarter turn'],
    label: 'quarter turn',
    help: 'The crank was turned a quarter by hand in the running direction. The first begins a check rotation.',
    group: 'check rotation',
    keys: [key('enter', 'rotation', { pad: 'enter' }), key('space', 'rotation', { footer: false })],
    verb: 'turn-crank',
    asksOnce: askedOnTurningOn,
    leastMs: leastMsOfQuarter,
    fixed: { quarters: 1 },
    fills: drive,
  },
  {
    id: 'turned',
    words: ['turned', 'turned over'],
    form: '<turns:number> [turns] [of <drive>]',
    spoken: ['crank was turned <turns:few>'],
    label: 'turns',
    help: 'So many whole turns at the crank, by hand, in the running direction.',
    questions: { turns: turnsAsked },
    asksOnce: askedOnTurningOn,
    group: 'check rotation',
    keys: [key('n', 'rotation', { pad: '3' })],
    means: (desk, args) => {
      const quarters = Math.round(Number(args.turns) * 4);
      const on = (args.drive as string | undefined) ?? theDrive(desk);
      if (quarters < 1) return { no: { because: 'that is less than a quarter turn', instead: 'say how many turns' } };
      return { say: { verb: 'turn-crank', quarters, ...(on !== undefined && { drive: on }) } };
    },
  },
  {
    id: 'backwards',
    words: ['backwards', 'turned backwards'],
    form: '[<drive>]',
    spoken: ['turned backwards'],
    label: 'backwards',
    help: 'The crank went against its running direction: the count starts again.',
    group: 'check rotation',
    keys: [key('-', 'rotation')],
    verb: 'turn-crank',
    asksOnce: askedOnTurning,
    leastMs: leastMsOfQuarter,
    fixed: { quarters: 1, backwards: true },
    fills: drive,
  },
  {
    id: 'mark-on',
    words: ['mark on', 'mark stands'],
    form: '[<mark:words>]',
    spoken: ['this mark agrees'],
    label: 'mark on',
    help: 'The next mark, or the one named, stands where it should.',
    group: 'check rotation',
    keys: [key('m', 'rotation', { pad: '0' })],
    verb: 'read-mark',
    fixed: { teethOff: 0 },
    fills: (desk) => ({ ...drive(desk), mark: nextMark(desk) }),
  },
  {
    id: 'mark-off',
    words: ['mark off', 'mark stands off'],
    form: '[<mark:words>] by <teethOff:number>',
    spoken: ['mark is out by <teethOff:few>'],
    label: 'mark off',
    help: 'A mark is off by so many teeth: the check has failed.',
    group: 'check rotation',
    keys: [key('x', 'rotation', { pad: '6' })],
    verb: 'read-mark',
    fills: (desk) => ({ ...drive(desk), mark: nextMark(desk) }),
  },
  {
    id: 'locks-slid',
    words: ['locks slide', 'every lock slid'],
    form: '[<drive>]',
    spoken: ['every lock slid'],
    label: 'locks slide',
    help: 'Every lock slid in by hand and out again, instead of reading marks.',
    group: 'check rotation',
    keys: [key('l', 'rotation', { pad: '5' })],
    verb: 'slide-locks',
    fills: drive,
  },
  {
    id: 'tension',
    words: ['tension right', 'tension good'],
    form: '[by <how:pointer|play|reading>]',
    spoken: ['tension good by <how:pointer|play|reading>'],
    label: 'tension right',
    help: 'Pointer, play or reading of the tension is right.',
    group: 'check rotation',
    keys: [key('t', 'rotation', { pad: '1' })],
    verb: 'read-tension',
    fixed: { right: true },
    fills: (desk) => ({ ...drive(desk), how: 'pointer' }),
  },
  {
    id: 'tension-wrong',
    words: ['tension wrong', 'tension not right'],
    form: '[by <how:pointer|play|reading>]',
    spoken: ['tension not right'],
    label: 'tension wrong',
    help: 'The tension is not right: the check has failed.',
    group: 'check rotation',
    keys: [key('w', 'rotation', { pad: '7', asks: ['how'] })],
    verb: 'read-tension',
    fixed: { right: false },
    fills: (desk) => ({ ...drive(desk), how: 'pointer' }),
  },
  {
    id: 'tension-reset',
    words: ['tension reset', 'tension set anew'],
    form: '[<drive>]',
    spoken: ['tension set anew'],
    label: 'tension set anew',
    help: 'The tension was set again: two more turns, and no failed try.',
    group: 'check rotation',
    keys: [key('+', 'rotation', { pad: '8' })],
    verb: 'reset-tension',
    fills: drive,
  },
  {
    id: 'bind',
    words: ['bind felt', 'it binds'],
    form: '[<drive>]',
    spoken: ['it binds here'],
    label: 'it binds',
    help: 'A bind was felt: stop, never force. Its cause is entered before the next try.',
    group: 'check rotation',
    keys: [key('*', 'rotation', { pad: '9' })],
    verb: 'feel-bind',
    fills: drive,
  },
  {
    id: 'bind-cause',
    words: ['bind because', 'cause of bind'],
    form: '<cause:words>',
    label: 'cause of bind',
    help: 'Why it bound.',
    group: 'check rotation',
    keys: [key('e', 'rotation')],
    verb: 'explain-bind',
    fills: drive,
  },
  {
    id: 'to-marks',
    words: ['to marks', 'turned to marks'],
    form: '[<drive>]',
    spoken: ['turned to marks'],
    label: 'turned to marks',
    help: 'The engine was brought to its marks before the drive is opened.',
    group: 'check rotation',
    keys: [key('k', 'rotation', { pad: '4' })],
    verb: 'turn-to-marks',
    fills: drive,
  },
];
