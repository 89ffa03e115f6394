// What the bench is to those who look at it and press its keys, and what it wants from outside.
import type { StoreApi } from 'zustand/vanilla';
import type { Keymap } from '../calls/bindings.ts';
import type { Desk } from '../calls/desk.ts';
import type { Rows } from '../calls/listed.ts';
import type { SettingsFile } from '../calls/lists/settings.ts';
import type { OnTheShelf } from '../calls/lists/shelf.ts';
import type { View } from '../view/view.ts';
import type { Habits } from './habits.ts';
import type { createEar, Heard } from './hearing.ts';
import type { Session } from './session-shape.ts';

export type BenchState = {
  view: View;
  session?: Session;
  /** Undefined until it was read. */
  shelf?: readonly OnTheShelf[];
  /** What the shelf or the opening of a job has to say; a job's own answers are its session's. */
  word?: string;
  /** What a key of the screen itself came to: keypad on, sounds off. */
  note?: string;
  /** Said on opening a job again, until the first key. */
  greeting?: readonly string[];
  /** What stands over it; without one, that it is how the job was left. */
  greetingHead?: string | undefined;
  /** Whether it listens; undefined where there is no recogniser. */
  listening?: boolean;
  /** Answers are spoken. */
  speaking?: boolean;
  /** What was asked or told about a phrase that was heard. */
  heard?: string;
  leaving: boolean;
  habits: Habits;
  keymap: Keymap;
};
export type Bench = {
  store: StoreApi<BenchState>;
  /** A key by its name: "enter", "escape", "a", "S", "up". */
  /** @param inOneGo it came with others at the same moment: too soon for a question that is not taken back */
  press(key: string, inOneGo?: boolean): void;
  /** Text pasted or typed at once; it counts only where something is asked. */
  type(text: string): void;
  listed(): Rows;
  desk(): Desk;
  open(path: string): Promise<void>;
  /** A phrase an outside recogniser heard. */
  hear(what: Heard): void;
  /** What may be said next. */
  heed(): ReturnType<ReturnType<typeof createEar>['heed']> | { answers: readonly string[] };
  /** Tells whether a recogniser is there, and why none is. */
  ears(are: boolean, why?: string): void;
  /** One line for whoever is at the bench, after what stands there to be read. */
  tell(line: string): void;
  quit(): void;
  /** The terminal is in front again: what was done at it meanwhile shows on the shelf. */
  inFront(): void;
};
/** Opens a job; `fresh` makes it, `goOnFrom` and `fromCopy` go on from what was in doubt (store/open-job.ts). Throws a fault. */
export type Opener = (
  named: string,
  how: { fresh?: boolean; goOnFrom?: number; fromCopy?: string },
) => Promise<Session>;
export type BenchDoors = {
  /** Read when the bench is made, and again whenever it is gone to. */
  jobs(): Promise<readonly OnTheShelf[]>;
  /** A job is opened at once: the shelf is not read before it is gone to. */
  shelfLater?: boolean;
  open: Opener;
  habits?: Habits;
  /** What of the settings only the file holds, and where it is. */
  settingsFile?: SettingsFile;
  /** What is wrong with the settings, told once. */
  word?: string | undefined;
  /** How to get a recogniser, or a speaking program, where there is none. */
  howToHear?: string;
  howToSpeak?: string;
  /** Keeps what was set on the bench; the words of a fault when it could not. */
  keep?(habits: Habits): Promise<string | undefined>;
};
