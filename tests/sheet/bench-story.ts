// A job told call by call, as the bench would: each call through the one door, refused calls fail the test. It also
// forges lines, as an edited file would hold them.
import { decide } from '../../src/job/decide.ts';
import type { Entry } from '../../src/job/entry.ts';
import { emptyLedger, type Ledger } from '../../src/job/ledger.ts';
import type { Line, Stamp } from '../../src/job/line.ts';
import { appendLine } from '../../src/job/log.ts';
import type { Said } from '../../src/job/said.ts';

const minuteMs = 60_000;
/** Monday, in a zone one hour east. */
const morning = Date.UTC(2026, 10, 23, 7, 0);

export type Story = {
  readonly ledger: Ledger;
  readonly now: Stamp;
  /** One call a minute. */
  call(verb: string, said?: Record<string, unknown>, how?: { because?: string; who?: string }): Story;
  later(minutes: number): Story;
  zone(zoneMin: number): Story;
  /** What the door would not have written. */
  forged(...entries: [Entry, ...Entry[]]): Story;
};

export function newStory(): Story {
  let ledger = emptyLedger;
  let minutes = 0;
  let zoneMin = 60;
  const stamp = (): Stamp => ({ atMs: morning + minutes * minuteMs, zoneMin, run: 1, awakeMs: minutes * minuteMs });
  const write = (line: Pick<Line, 'call' | 'entries'> & Partial<Line>): void => {
    ledger = appendLine(ledger, { n: ledger.lines.length + 1, ...stamp(), by: 'key', facing: {}, ...line });
    minutes++;
  };
  const story: Story = {
    get ledger() {
      return ledger;
    },
    get now() {
      return stamp();
    },
    call(verb, said = {}, { because, who } = {}) {
      const spoken: Said = { verb, ...said };
      const answer = decide(ledger, spoken, stamp(), because === undefined ? undefined : { because });
      if ('refused' in answer) throw new Error(`${JSON.stringify(spoken)}: ${answer.refused.because}`);
      write({ call: verb, ...answer, ...(who && { who }) });
      return story;
    },
    later(more) {
      minutes += more;
      return story;
    },
    zone(offset) {
      zoneMin = offset;
      return story;
    },
    forged(...entries) {
      write({ call: 'forged', entries });
      return story;
    },
  };
  return story;
}

/** The sheet without its line breaks, so that a sentence is found wherever it was wrapped. */
export const unwrapped = (sheet: string): string => sheet.replace(/\n +/g, ' ').replace(/ {2,}/g, ' ');
