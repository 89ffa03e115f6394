// One of what may be chosen: in words, with what is read beside it and why it cannot be taken.
import { textOfChoice } from '../calls/choices.ts';
import { howFar } from '../calls/days-on.ts';
import type { Desk } from '../calls/desk.ts';
import type { Args } from '../calls/form.ts';
import { holeWord } from '../calls/lists/holes.ts';
import { meantBy, type Row } from '../calls/row.ts';
import { countStands } from '../job/counts.ts';
import { blocked } from '../job/decide.ts';
import { stateOf } from '../job/ledger.ts';
import { type Spec, specText } from '../job/spec.ts';
import type { TrayState } from '../job/states.ts';
import type { Choice } from '../view/view.ts';
import { readAnswer } from './answering.ts';

export function choiceOf(row: Row, slot: string, type: string, value: string, args: Args, desk: Desk): Choice {
  const read = readAnswer(desk, type, value, args);
  const meant = 'value' in read ? meantBy(row, desk, { ...args, [slot]: read.value }) : undefined;
  const stop = meant && 'say' in meant ? blocked(desk.ledger, meant.say, desk.now) : null;
  const unasked = 'value' in read ? row.unasked?.(desk, { ...args, [slot]: read.value })?.words : undefined;
  const once = meant && 'say' in meant && !stop ? row.asksOnce?.(desk, meant.say)?.short : undefined;
  const beside = unasked ?? once ?? ('value' in read ? besideChoice(desk, row, type, read.value) : undefined);
  const plan = type === 'plan' ? desk.plans().find(({ name }) => name === value) : undefined;
  return {
    value,
    text: textOfChoice(desk, type, value),
    ...(plan && { finds: [plan.plan.vehicle, ...plan.services].join('\n') }),
    ...(beside !== undefined && { beside }),
    ...(stop && { blocked: stop.because, way: stop.instead, ...(stop.kind === 'footing' && { never: true as const }) }),
  };
}
const countWords = (t: TrayState): string => (countStands(t) ? `counted ${t.counted?.count}` : 'to be counted');
/** Which fastener is in use, how a hole stands, whether anything lies in a tray, and what a plan is for. */
function besideChoice(desk: Desk, row: Row, type: string, value: unknown): string | undefined {
  const { ledger, plans } = desk;
  if (type === 'plan')
    return plans()
      .find(({ name }) => name === value)
      ?.services.join(', ');
  if (type === 'day') return howFar(desk, String(value));
  if (type === 'spec' && row.id === 'use')
    return specText(value as Spec) === specText(desk.facing.spec) ? 'in use' : undefined;
  if (type === 'hole') {
    const hole = stateOf(ledger, 'hole', value as string);
    return hole && holeWord(ledger, hole);
  }
  if (type !== 'tray') return undefined;
  const tray = stateOf(ledger, 'tray', value as string);
  // K1: the eye counts before it is told the figure.
  if (row.id === 'count') return tray?.everUsed ? countWords(tray) : undefined;
  if (row.id === 'stray' && tray && tray.contents.length > 0) return undefined;
  const many = tray?.contents.length ?? 0;
  return many > 0 ? `${many} in it` : 'empty';
}
