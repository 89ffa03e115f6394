// The running job: the ledger as it stands, what is faced, the last answer, and whether it is saved. One way to run a
// call on it, whoever calls. It paints nothing and knows no rule.
import { createStore, type StoreApi } from 'zustand/vanilla';
import { exchangedWords, lineWords } from '../calls/call-words.ts';
import type { Desk, PlanOffer } from '../calls/desk.ts';
import type { Args } from '../calls/form.ts';
import { readLine } from '../calls/line-reader.ts';
import { facedWords } from '../calls/next-area.ts';
import {
  type Meant,
  meantBy,
  type No,
  type Once,
  type OrElse,
  type Otherwise,
  type Row,
  type Step,
} from '../calls/row.ts';
import { wayOut } from '../calls/ways-out.ts';
import { decide, type Override } from '../job/decide.ts';
import type { Product } from '../job/entries/declared.ts';
import type { Ledger } from '../job/ledger.ts';
import { type Line, readLine as readJobLine, type Stamp } from '../job/line.ts';
import { appendLine, readLog } from '../job/log.ts';
import type { Refusal } from '../job/refusal.ts';
import type { Said } from '../job/said.ts';
import { newlySuspected } from '../job/suspicions.ts';
import { newlyDoubted } from '../job/tightening.ts';
import { type Fault, isFault } from '../store/fault.ts';
import type { OpenJob } from '../store/open-job.ts';
import { type Photograph, photographAt } from '../store/photograph.ts';
import type { Interval } from '../trade/intervals.ts';
import { plainDeep, plainText } from '../trade/plain-text.ts';
import { type Facing, firstFacing } from '../view/facing.ts';
import type { Clock } from './clock.ts';
import { areaFaced, lastFaced } from './faced.ts';

export type Answer =
  | { kind: 'taken'; text: string; n: number; call: string; otherwise?: Otherwise }
  | { kind: 'faced'; text: string }
  /** `againSays`: the same key once more says that it is done already; `by`: the call to make instead. */
  | { kind: 'refused'; text: string; instead: string; by?: string; or?: OrElse; refusal?: Refusal; againSays?: true }
  /** Nothing stands against it and nothing is written yet: the same key once more means it. */
  | { kind: 'asked'; text: string; instead: string; by?: string; or?: OrElse; again: string }
  | { kind: 'step'; step: Step };

export type SessionState = {
  ledger: Ledger;
  facing: Facing;
  answer?: Answer;
  /** What earlier jobs left of this vehicle, since the call that named it. */
  remembered?: readonly string[];
  /** Lines known to be on the disk. */
  savedTo: number;
  /** D5: sticky until a retry went well. */
  notSaved?: Fault;
  looking: boolean;
};

export type Session = {
  store: StoreApi<SessionState>;
  job: OpenJob<Line>;
  run(row: Row, args: Args, by: Line['by']): Answer;
  runLine(text: string, by?: Line['by']): Answer;
  /** The workshop it works in, as the settings have it now. */
  suits(workshop: Workshop): void;
  /** Answers that a call is not made, before anything is asked for it. */
  refuse(no: No): void;
  /** Changes what is faced without a call: pointing at a hole. */
  face(facing: Partial<Facing>): void;
  desk(): Desk;
  now(): Stamp;
  /** Back when everything taken so far is on the disk, or is known not to be. */
  settled(): Promise<void>;
  retry(): Promise<void>;
  close(): Promise<readonly Line[]>;
};

/** What of the settings a call is read and shown by. */
export type Workshop = Pick<Desk, 'name' | 'trays' | 'units'>;

export type SessionOptions = {
  job: OpenJob<Line>;
  clock: Clock;
  plans?: () => readonly PlanOffer[];
  products?: readonly Product[];
  intervals?: Readonly<Record<string, Interval>>;
  workshop?: Workshop;
  /** Looks at a photograph's file; throws a fault where there is none to look at. */
  photo?: (file: string) => Photograph;
  /** What earlier jobs left, to be told when the job opens on this vehicle. */
  reminders?: (vehicle: { label: string; registration?: string }) => readonly string[];
  facing?: Partial<Facing>;
};

const noPlanOffers: readonly PlanOffer[] = [];
const noPlans = () => noPlanOffers;

const leastMsToRead = 700;

const runOf = (lines: readonly Line[]): number => lines.reduce((most, line) => Math.max(most, line.run), 0) + 1;

export function createSession({
  job,
  clock,
  plans = noPlans,
  products = [],
  intervals = {},
  workshop = {},
  photo = photographAt,
  reminders = () => [],
  facing = {},
}: SessionOptions): Session {
  const run = runOf(job.lines());
  const ledger = readLog(job.lines());
  const store = createStore<SessionState>(() => ({
    ledger,
    facing: { ...firstFacing, ...lastFaced(job.lines()), ...facing },
    savedTo: ledger.lines.length,
    looking: job.mode === 'look',
  }));
  let refused: { said: Said; row: string; awakeMs: number } | undefined;
  let asked: { said: Said; answer: Answer; awakeMs: number } | undefined;
  let saving: Promise<void> = Promise.resolve();
  /** The call with which work went on to another area: pressed once more by habit, it means nothing there. */
  let wentOnWith: string | undefined;

  let shop = workshop;

  const now = (): Stamp => ({ ...clock(), run });
  const desk = (): Desk => ({
    ledger: store.getState().ledger,
    facing: store.getState().facing,
    now: now(),
    plans,
    products,
    intervals,
    ...shop,
  });
  const answered = (answer: Answer): Answer => {
    store.setState({ answer });
    return answer;
  };
  const no = (text: string, instead: string, refusal?: Refusal): Answer =>
    answered({ kind: 'refused', text, instead, refusal });

  function refuse({ because: text, done, ...rest }: No): Answer {
    return answered(done ? { kind: 'faced', text: `${text}; ${rest.instead}` } : { kind: 'refused', text, ...rest });
  }
  function carryOut(row: Row, meant: Meant, by: Line['by']): Answer {
    if ('no' in meant) return refuse(meant.no);
    if ('step' in meant) return { kind: 'step', step: meant.step };
    if ('again' in meant) {
      return refused
        ? say(refused.row, refused.said, by, meant.again)
        : no('nothing was refused that could be answered', 'go on');
    }
    if ('face' in meant && !('say' in meant)) {
      store.setState((s) => ({ facing: { ...s.facing, ...meant.face } }));
      return answered({ kind: 'faced', text: meant.answer });
    }
    if ('photo' in meant) return noted(row, meant, by);
    // On the keyboard the same again is an answer (O5); in a list of lines two alike neighbours are ordinary.
    const pressed = by === 'key' || by === 'pad';
    const byHabit = wentOnWith === row.id || row.answeredInWords === true;
    const sameAgain =
      pressed && !byHabit && refused?.row === row.id && JSON.stringify(refused.said) === JSON.stringify(meant.say);
    // A key that bounces or is held down is no answer: the refusal stands until it could have been read.
    if (sameAgain && now().awakeMs - (refused?.awakeMs ?? 0) < leastMsToRead) return store.getState().answer as Answer;
    return say(row.id, meant.say, by, sameAgain ? { because: 'done already' } : undefined, pressed ? row : undefined);
  }

  /** The core never reads a file: what the photograph is, is said to it. */
  function noted(row: Row, meant: { say: Said; photo: string }, by: Line['by']): Answer {
    try {
      return say(row.id, { ...meant.say, ...photo(meant.photo) }, by);
    } catch (thrown) {
      if (!isFault(thrown)) throw thrown;
      return no(`${thrown.what}: ${thrown.where}`, thrown.next);
    }
  }

  function say(call: string, said: Said, by: Line['by'], override?: Override, row?: Row): Answer {
    const stop = mayNotWrite();
    if (stop) return stop;
    const { ledger, facing } = store.getState();
    const at = now();
    const decided = decide(ledger, plainDeep(said), at, override);
    if ('refused' in decided) {
      refused = decided.refused.kind === 'order' ? { said, row: call, awakeMs: at.awakeMs } : undefined;
      const { because, instead, kind } = decided.refused;
      const by = wayOut(decided.refused);
      const againSays = kind === 'order' && row !== undefined && wentOnWith !== call && !row.answeredInWords;
      return answered({
        kind: 'refused',
        text: because,
        instead,
        refusal: decided.refused,
        ...(by !== undefined && { by }),
        ...(againSays && { againSays }),
      });
    }
    refused = undefined;
    const once = row && isMeant(row, said, at) ? undefined : row?.asksOnce?.(desk(), said);
    if (once) return asksOnce(once, said, at);
    asked = undefined;
    const line: Line = {
      n: ledger.lines.length + 1,
      ...at,
      call,
      by,
      facing: { ...(facing.area !== undefined && { area: facing.area }), tray: facing.tray },
      ...(decided.overrides && { overrides: decided.overrides }),
      entries: decided.entries,
    };
    // A line that could not be read again would close the whole job.
    const written = readJobLine(line);
    if (!written.ok) return no(`this cannot be written down (${written.what})`, 'say it otherwise');
    const { hole: _, ...kept } = facing;
    const after = appendLine(ledger, line);
    const remembered = line.entries.flatMap((e) => (e.kind === 'job-opened' ? reminders(e.vehicle) : []));
    const mind = [
      ...(decided.warnings ?? []),
      ...newlySuspected(ledger, after, line.entries),
      ...newlyDoubted(ledger, after, line.entries),
      // On the bench they stand in a block of their own.
      ...(by === 'line' ? remembered : remembered.slice(0, 1)),
    ];
    store.setState({
      ledger: after,
      facing: { ...kept, ...areaFaced(said) },
      ...(remembered.length > 0 && { remembered }),
    });
    save(line);
    const next = row?.after?.(desk(), said) ?? {};
    wentOnWith = next.area !== undefined && next.area !== facing.area ? call : undefined;
    store.setState((s) => ({ facing: { ...s.facing, ...next } }));
    const words = [
      [lineWords(ledger, line.entries, shop.units), ...exchangedWords(after, line.entries)].join('. '),
      ...mind,
    ].join('. Mind: ');
    // What comes off there would lie among what came off here.
    const into = row?.group === 'strip' && next.tray === undefined ? `, still into tray ${facing.tray}` : '';
    const text = plainText(
      next.area !== undefined && next.area !== facing.area
        ? `${words}. On to ${facedWords({ ...next, area: next.area })}${into}`
        : words,
    );
    const otherwise = row?.otherwise?.(line.entries, said, desk());
    return answered({ kind: 'taken', text, n: line.n, call, ...(otherwise && { otherwise }) });
  }

  /** The same key again, while what it was asked stands on the screen. */
  function isMeant(row: Row, said: Said, at: Stamp): boolean {
    return (
      row.asksOnce !== undefined &&
      asked !== undefined &&
      asked.answer === store.getState().answer &&
      JSON.stringify(asked.said) === JSON.stringify(said) &&
      at.awakeMs - asked.awakeMs >= leastMsToRead
    );
  }
  function asksOnce({ because: text, ...rest }: Once, said: Said, { awakeMs }: Stamp): Answer {
    // A key that bounces asks nothing anew: it would never have been asked long enough.
    if (asked && asked.answer === store.getState().answer && JSON.stringify(asked.said) === JSON.stringify(said))
      return asked.answer;
    const answer: Answer = { kind: 'asked', text, ...rest };
    asked = { said, answer, awakeMs };
    return answered(answer);
  }

  function mayNotWrite(): Answer | undefined {
    if (store.getState().looking) {
      const why = job.whyLook;
      return why
        ? no(`opened to look only: ${why.message}`, 'close the other program, and open again')
        : no('this is a copy, opened to look only', 'bring the job back first: the shelf says how');
    }
    const trouble = job.trouble();
    return trouble ? no(`NOT SAVED: ${trouble.message}`, 'make room or mend the disk, then save again') : undefined;
  }

  function save(line: Line): void {
    const done = job.append(line).then((saved) => {
      if (saved.saved) store.setState((s) => ({ savedTo: Math.max(s.savedTo, line.n), notSaved: undefined }));
      else store.setState({ notSaved: saved.fault });
    });
    saving = saving.then(() => done);
  }

  const endLooking =
    job.mode === 'look'
      ? job.onLine({
          line: (line) => store.setState((s) => ({ ledger: appendLine(s.ledger, line), savedTo: line.n })),
          fault: (fault) => void no(fault.message, 'leave, and open the job again'),
        })
      : undefined;

  return {
    store,
    job,
    now,
    desk,
    run: (row, args, by) => carryOut(row, meantBy(row, desk(), args), by),
    runLine(text, by = 'line') {
      const read = readLine(desk(), plainText(text));
      if ('why' in read) return no(read.why, read.instead);
      // What a key would be asked, a typed line has answered before.
      const asked = read.row.besides?.(desk(), read.args);
      if (asked) return no(asked.title, asked.inWords);
      return carryOut(read.row, meantBy(read.row, desk(), read.args), by);
    },
    suits({ name, trays, units }) {
      shop = { name, trays, units };
    },
    refuse: (no) => void refuse(no),
    face: (faced) => store.setState((s) => ({ facing: { ...s.facing, ...faced } })),
    settled: () => saving,
    async retry() {
      const saved = await job.retry();
      if (!saved.saved) return store.setState({ notSaved: saved.fault });
      // The last answer may be a call that was refused for it.
      const answer: Answer = { kind: 'faced', text: 'saved: every call is on the disk' };
      store.setState((s) => ({ savedTo: s.ledger.lines.length, notSaved: undefined, answer }));
    },
    close() {
      endLooking?.();
      return saving.then(() => job.close());
    },
  };
}
