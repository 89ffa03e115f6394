// Keys for each thing called, on the reference job: how much of a mechanic's time goes into the keyboard. A thing is one
// fact about one fastener, part, connection, temporary or gate, per pass; what rides along with a fact is none of its own.
import type { Entry } from '../../src/job/entry.ts';
import type { Line } from '../../src/job/line.ts';
import { byKeypad, keyScript, keysCounted, type Stretch } from '../jobs/key-script.ts';
import { pressed } from '../session/pressed.ts';
import { type Figure, figure } from './figure.ts';

/** Entries that say no new thing where they stand beside another: what was found in a hole, a part that goes with its bolt. */
const ridesAlong: ReadonlySet<string> = new Set([
  'fastener-found',
  'finding-made',
  'part-removed',
  'part-fitted',
  'part-judged',
  'rotation-begun',
  'service-ordered',
]);
const isThing = (entry: Entry): boolean => !entry.kind.endsWith('-declared') && entry.kind !== 'calls-struck';

/** How many things a line calls: one, or as many as one key really called. */
function thingsOf({ entries }: Line): number {
  const things = entries.filter(isThing);
  const alone = things.filter((entry) => !ridesAlong.has(entry.kind));
  return Math.max(alone.length, things.length > 0 ? 1 : 0);
}

async function figuresOf(name: string, script: readonly Stretch[], keypad: boolean, goal: string): Promise<Figure> {
  const things = (await pressed(script, keypad)).reduce((sum, line) => sum + thingsOf(line), 0);
  const { pressed: keys, typed } = keysCounted(script);
  const of = `things called; beside them ${typed} letters and figures of names and numbers`;
  return figure({ name, of, unit: 'keys', goal }, [keys], [things]);
}

export async function keysForEachThing(): Promise<Figure[]> {
  return [
    await figuresOf('planned, by letters', keyScript('reference.keys'), false, '<= 1.10'),
    await figuresOf('free, by letters', keyScript('reference-free.keys'), false, '<= 1.35'),
    await figuresOf('planned, by keypad', byKeypad(keyScript('reference-keypad.keys')), true, '<= 1.25'),
  ];
}
