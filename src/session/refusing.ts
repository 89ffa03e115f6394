// What is answered where nothing is called: a refusal with what to do instead, and why a job takes no call at all. It
// runs no call and knows no key that was pressed before.

import type { StoreApi } from 'zustand/vanilla';
import type { Desk } from '../calls/desk.ts';
import type { No, Row } from '../calls/row.ts';
import { saidToClose } from '../calls/said-to-close.ts';
import { wayOut } from '../calls/ways-out.ts';
import { blocked, closedJob } from '../job/decide.ts';
import type { Refusal } from '../job/refusal.ts';
import type { Answer, SessionOptions, SessionState } from './session-shape.ts';

type More = { againSays?: string; instead?: string; by?: string };
export type Refusing = {
  /** Shows an answer, and gives it back. */
  answered(answer: Answer): Answer;
  no(text: string, instead: string, refusal?: Refusal): Answer;
  refuse(no: No): Answer;
  /** By a rule: its way out is named, and the call that closes what stands open behind it. */
  refusedBy(refusal: Refusal, more?: More): Answer;
  /** Whatever else stands in its way: nothing is called on a job that is only looked at, or was released. */
  mayNotCall(row: Row): Answer | undefined;
  mayNotWrite(): Answer | undefined;
};

/** Why it is only looked at, and what to do; of a copy and of an end in doubt both stand in its words already. */
export function whyLookWords({ whyLook, doubt }: SessionOptions['job']): { text: string; instead: string } {
  if (!whyLook) return { text: 'opened to look only', instead: 'close the other program, and open again' };
  if (whyLook.kind === 'copy') return { text: whyLook.what, instead: whyLook.next };
  const where = doubt ? '' : ` (${whyLook.where})`;
  return { text: `opened to look only: ${whyLook.what}`, instead: `${whyLook.next}${where}` };
}

export function refusingOn(
  store: StoreApi<SessionState>,
  { job, desk }: Pick<SessionOptions, 'job'> & { desk(): Desk },
): Refusing {
  const answered = (answer: Answer): Answer => {
    store.setState({ answer });
    return answer;
  };
  const no = (text: string, instead: string, refusal?: Refusal): Answer =>
    answered({ kind: 'refused', text, instead, refusal });

  function refusedBy(refusal: Refusal, more: More = {}): Answer {
    const { because: text, instead } = refusal;
    const by = wayOut(refusal);
    const [nearest] = refusal.code === 'open-behind' ? refusal.places : [];
    const closing = nearest === undefined ? undefined : saidToClose(desk(), nearest);
    return answered({ kind: 'refused', text, instead, refusal, ...(by !== undefined && { by }), ...closing, ...more });
  }
  function mayNotWrite(): Answer | undefined {
    if (store.getState().looking) {
      const words = whyLookWords(job);
      return no(words.text, words.instead);
    }
    const trouble = job.trouble();
    return trouble ? no(`NOT SAVED: ${trouble.message}`, 'make room or mend the disk, then save again') : undefined;
  }
  return {
    answered,
    no,
    refuse: ({ because: text, done, ...rest }) =>
      answered(done ? { kind: 'faced', text: `${text}; ${rest.instead}` } : { kind: 'refused', text, ...rest }),
    refusedBy,
    mayNotCall({ verb }) {
      if (verb === undefined) return undefined;
      const { ledger, now } = desk();
      const closed = blocked(ledger, { verb }, now);
      return mayNotWrite() ?? (closed?.code === closedJob.code ? refusedBy(closed) : undefined);
    },
    mayNotWrite,
  };
}
