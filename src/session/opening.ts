// What a job has to say and to ask when it comes onto the bench: how it was left (T8), whether the time shown is right
// (S7), and whether to go on without a last line that does not hold, or without what a copy holds (D2).
import { hangingWords, timeToConfirm, whereItStands } from '../calls/lists/on-return.ts';
import type { Asking } from '../view/view.ts';
import { oneOf, yesOrNo } from './asking.ts';
import { whyLookWords } from './refusing.ts';
import type { Session } from './session-shape.ts';

/** @param word what stands there to be told already */
export function greetingOf(
  opened: Session,
  word: string | undefined,
): { greeting: readonly string[] | undefined; greetingHead: string | undefined; word: string | undefined } {
  const { notices, whyLook, doubt } = opened.job;
  const { text, instead } = whyLookWords(opened.job);
  const toLook = whyLook && !doubt ? [`${text}; ${instead}`] : [];
  const told = [...toLook, ...notices.map((n) => n.message)];
  const { ledger, remembered } = opened.store.getState();
  const hanging = ledger.lines.length > 1 ? hangingWords(opened.desk()) : [];
  return {
    greeting: remembered ?? (hanging.length > 0 ? [whereItStands(opened.desk()), ...hanging] : undefined),
    greetingHead: remembered ? 'This vehicle is known:' : undefined,
    word: told.length > 0 ? told.join(' ') : word,
  };
}

export function questionsOnOpening(
  opened: Session,
  ask: (asking: Asking, then: (text: string) => void) => void,
  { timeIsRight, goOn }: { timeIsRight(): void; goOn(how: { goOnFrom: number; fromCopy?: string }): void },
): void {
  const { doubt } = opened.job;
  const time = opened.store.getState().looking ? undefined : timeToConfirm(opened.desk());
  if (time !== undefined) {
    const title = `It is ${time}, and something cures. Is that time right? Only then time away counts for it, and what is left runs on.`;
    ask(yesOrNo(title, 'yes, it is right', 'no, not sure: time away is not counted'), (yes) => {
      if (yes === 'yes') timeIsRight();
    });
  }
  if (!doubt) return;
  const { byte, copy, fault } = doubt;
  const toLook = { value: 'look', text: 'no, only look' };
  const asked =
    copy === undefined
      ? oneOf(`This file: ${fault.what}. Go on without the last line?`, [
          toLook,
          { value: 'without', text: 'go on without it; a copy is kept' },
        ])
      : oneOf(`This file: ${fault.what}. Go on from that copy?`, [
          toLook,
          { value: 'copy', text: 'go on from the copy; this file is kept as one' },
          { value: 'without', text: 'go on with this file; the copy is kept' },
        ]);
  ask(asked, (chosen) => {
    if (chosen === 'without') goOn({ goOnFrom: byte });
    if (chosen === 'copy' && copy !== undefined) goOn({ goOnFrom: byte, fromCopy: copy });
  });
}
