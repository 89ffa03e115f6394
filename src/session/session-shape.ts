// What a running job is to whoever shows it or calls on it: its state, its answers, and what it is made of.
import type { StoreApi } from 'zustand/vanilla';
import type { Desk, PlanOffer } from '../calls/desk.ts';
import type { Args } from '../calls/form.ts';
import type { No, OrElse, Otherwise, Row, Step } from '../calls/row.ts';
import type { Product } from '../job/entries/declared.ts';
import type { Ledger } from '../job/ledger.ts';
import type { Line, Stamp } from '../job/line.ts';
import type { Refusal } from '../job/refusal.ts';
import type { Fault } from '../store/fault.ts';
import type { OpenJob } from '../store/open-job.ts';
import type { Photograph } from '../store/photograph.ts';
import type { Interval } from '../trade/intervals.ts';
import type { Facing } from '../view/facing.ts';
import type { ScreenId } from '../view/screens.ts';
import type { Clock } from './clock.ts';

/** `tooQuick`: it came once more before this could have been read. */
type OnceMore = { againSays?: string; tooQuick?: true };
export type Answer =
  | { kind: 'taken'; text: string; n: number; call: string; otherwise?: Otherwise }
  | { kind: 'faced'; text: string }
  /** `againSays`: the call whose key once more says that it is done already; `by`: the call to make instead. */
  | ({ kind: 'refused'; text: string; instead: string; by?: string; or?: OrElse; refusal?: Refusal } & OnceMore)
  /** Nothing stands against it and nothing is written yet: the key of this call once more means it. */
  | {
      kind: 'asked';
      text: string;
      instead: string;
      by?: string;
      or?: OrElse;
      again: string;
      call?: string;
      tooQuick?: true;
    }
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

/** What becomes of what a call is asked once: it is asked of whoever is there, minded where nobody is, or was meant already. */
export type Doubts = 'asked' | 'minded' | 'meant';

export type Session = {
  store: StoreApi<SessionState>;
  job: OpenJob<Line>;
  /** @param isChosen something of it was answered to a question: it is no key pressed once too often */
  run(row: Row, args: Args, by: Line['by'], isChosen?: boolean): Answer;
  /** Lines that are read one after the other have nobody to ask: `doubts` is 'asked' where one was typed on the screen. */
  runLine(text: string, by?: Line['by'], doubts?: Doubts): Answer;
  /** The workshop it works in, as the settings have it now. */
  suits(workshop: Workshop): void;
  /** Answers that a call is not made, before anything is asked for it. */
  refuse(row: Row, no: No): void;
  /** Another screen is up, where the same key is another call: what was asked goes, and a refusal is no longer answered; one that led there is followed. */
  putAway(to: ScreenId): void;
  /** Puts behind the last answer what is to be read with it. */
  alsoSays(words: string): void;
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
  plansLeftOut?: () => number;
  products?: readonly Product[];
  intervals?: Readonly<Record<string, Interval>>;
  workshop?: Workshop;
  /** As it is called in the shell it was started from. */
  program?: string;
  /** Looks at a photograph's file; throws a fault where there is none to look at. */
  photo?: (file: string) => Photograph;
  /** What earlier jobs left, to be told when the job opens on this vehicle. */
  reminders?: (vehicle: { label: string; registration?: string }) => readonly string[];
  facing?: Partial<Facing>;
  /** The lines of the job as folded already, by whoever did. */
  ledger?: Ledger;
};
