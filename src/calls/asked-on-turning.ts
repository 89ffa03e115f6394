// What a turn of the crank is asked the first time, though nothing stands against it (asked-once.ts): nothing wants a check,
// the turns are made already, or a mark was off and nothing was done about it.
import { type Ledger, stateOf } from '../job/ledger.ts';
import { driveOpenedAt, rotationNeeded, runningTry, wantedOfTry } from '../job/rotation.ts';
import type { Said } from '../job/said.ts';
import type { DriveState } from '../job/states.ts';
import type { Desk } from './desk.ts';
import type { Once } from './row.ts';

/** R1, R6: nothing asks for a check: nothing of the drive was opened, or one has passed since and would be begun anew. */
export function askedOnTurning({ ledger }: Desk, { drive }: Said): Once | undefined {
  const d = typeof drive === 'string' ? stateOf(ledger, 'drive', drive) : undefined;
  if (!d || runningTry(ledger, d)) return undefined;
  if (rotationNeeded(ledger, d)) return askedOnTurningAgain(ledger, d);
  if (hasPassed(d))
    return {
      because: `the check rotation of ${d.drive} has passed and stands`,
      instead: 'what is still open',
      by: 'to-leaving',
      again: 'begins another: the one that passed stands no more',
    };
  return {
    because: `nothing of ${d.drive} was taken off or slackened yet, and no check rotation is wanted`,
    instead: 'what comes off is called on the strip screen',
    by: 'to-strip',
    again: 'begins a check rotation',
  };
}
const hasPassed = (d: DriveState): boolean => (d.tries.at(-1)?.passedAt ?? 0) > 0;

/** R5: a mark that is a tooth off comes right by no turning. */
function askedOnTurningAgain(ledger: Ledger, d: DriveState): Once | undefined {
  const last = d.tries.at(-1);
  const off = last && Object.entries(last.marks).find(([, teeth]) => teeth !== 0);
  if (!last || !off || driveOpenedAt(ledger, d) > last.begunAt) return undefined;
  const [mark, teeth] = off;
  return {
    because: `${mark} was off by ${teeth}, and nothing of ${d.drive} was touched since: a belt that is a tooth off stays so`,
    instead: 'slack off, set it to its marks',
    by: 'to-strip',
    again: 'turns for another check, where the mark was read wrong',
  };
}

const nextOfTry = {
  marks: { instead: 'the marks are read now', by: 'mark-on' },
  locks: { instead: 'the locks are slid in now', by: 'locks-slid' },
  tension: { instead: 'the tension is read now', by: 'tension' },
} as const;
/** R4: so many as are asked for are made; on the way to more of them it is asked no more. */
export function askedOnTurningOn(desk: Desk, said: Said): Once | undefined {
  const { ledger } = desk;
  const d = typeof said.drive === 'string' ? stateOf(ledger, 'drive', said.drive) : undefined;
  const t = d && runningTry(ledger, d);
  const wanted = d && t ? wantedOfTry(d, t) : 'turns';
  if (!d || !t || wanted === 'turns') return askedOnTurning(desk, said);
  const next = wanted === 'marks' && d.declared?.marks.length === 0 ? nextOfTry.locks : nextOfTry[wanted];
  return { because: `${t.quarters / 4} of ${t.need / 4} turns are made`, ...next, again: 'turns on' };
}
