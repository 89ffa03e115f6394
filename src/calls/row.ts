// What a row of the table of calls is. Everything a call has lives in its row: words, form, keys, help, meaning.
import type { Entry } from '../job/entry.ts';
import type { Said } from '../job/said.ts';
import type { Facing } from '../view/facing.ts';
import type { ScreenId } from '../view/screens.ts';
import type { Desk } from './desk.ts';
import type { Args } from './form.ts';
import { lackingIn } from './lacking.ts';

/** What is changed on the screen of settings and has no key of its own. */
export type Settable = 'name' | 'trays' | 'colours' | 'distance' | 'temperature' | 'torque';

/** Steps of the screen itself; they write nothing and mean nothing on the command line. */
export type Step =
  | { to: ScreenId }
  | { step: 'up' | 'down' | 'left' | 'right' | 'page-up' | 'page-down' }
  | { step: 'first-row' | 'last-row' | 'next-group' | 'group-before' }
  | {
      step:
        | 'leave'
        | 'choose'
        | 'type'
        | 'help'
        | 'quit'
        | 'new'
        | 'retry'
        | 'place'
        | 'next-call'
        | 'label'
        | 'more'
        | 'screens'
        | 'pad'
        | 'sounds'
        | 'listening'
        | 'speaking'
        | 'same-again'
        | 'which'
        | 'pedal';
    }
  | { step: 'set'; what: Settable };

/** Why a call is not made before the job is asked, and what else to do; `by` is the call that does it; `done`: it is so already. */
export type No = { because: string; instead: string; by?: string; or?: OrElse; done?: true; ready?: Ready };
/** What would have to be called, in words, as far as it is known, and how it is asked for. */
export type Ready = { line: string; title: string };
/** Another way, with its call. */
export type OrElse = { instead: string; by: string };

/** What is asked once: `again` is what the same key then does, `short` why, beside a choice of it. */
export type Once = No & { again: string; short?: string };

/** "worn, or else: P j"; several calls are pressed one after the other. */
export type Otherwise = { words: string; by: string | readonly string[] };

/** What a call comes to: something said to the job, a change of what is faced, or a step of the screen. */
export type Meant =
  | { say: Said; face?: Partial<Facing> }
  /** The file is looked at first: its digest and size are said with it. */
  | { say: Said; photo: string }
  /** `passes`: it leaves an area that comes next by itself; asked only when it is called. */
  | { face: Partial<Facing>; answer: string; passes?: () => boolean }
  | { step: Step }
  | { again: { because: string } }
  | { no: No };

export type Binding = {
  key: string;
  on: ScreenId | readonly ScreenId[] | 'any';
  /** Its place on a numeric keypad, where the keys are read by one. A key "" is nowhere else. */
  pad?: string;
  /** What the key itself says: the head size of a size key. */
  args?: Args;
  /** Not in the footer of that screen; or, for several keys of one sense, what stands there for all of them. */
  footer?: false | string;
  /** About something new: what is picked on the screen fills nothing. */
  fresh?: true;
  /** Slots asked for when the call is made by this key, although they may be left out or are filled by themselves; `which`: after the key that has a call ask. */
  asks?: readonly string[] | ((desk: Desk, filled: Args, which: boolean) => readonly string[]);
};

/** A question that only the job itself gives rise to, with its answers. */
export type Besides = {
  key: string;
  title: string;
  choices: readonly { value: string; text: string }[];
  /** The answer with which the call is not made. */
  givesUp?: string;
  /** How a typed line answers it beforehand. */
  inWords: string;
  /** A line without it is whole: one that is typed on the screen is asked there, as its key is. */
  notInWords?: true;
};

export type Row = {
  /** Stable for ever; a line may begin with it. */
  id: string;
  /** First words of a line; the first is the one that is shown. */
  words: readonly [string, ...string[]];
  form: string;
  /** How it is said out loud: two words or more, chosen for the ear; slots are those of the form, of the same names. */
  spoken?: readonly string[];
  /** What may be said in a slot whose words are free when typed. */
  spokenFor?: Readonly<Record<string, readonly string[]>>;
  /** Hard to take back: when it was heard, a second word is asked before it is made. */
  secondWord?: true;
  /** Words after the first are also the beginning of what is said ("bolt hex 10"). */
  keepsWord?: true;
  /** In the footer. */
  label: string;
  /** One sentence, for help and the tables of the documents. */
  help: string;
  group: string;
  /** What is said when the hole, area or drive it is about can't be filled by itself. */
  none?: string | ((desk: Desk) => string | No);
  /** What is said instead of a question to which nothing there is could be the answer. */
  nothing?: No | ((desk: Desk, args: Args) => No | undefined);
  /** Which of what could fill a slot is offered, and in which order. */
  offers?: (desk: Desk, slot: string, known: readonly string[], args: Args) => readonly string[];
  /** The order of what is offered stands, though some of it cannot be taken yet. */
  inItsOrder?: true;
  /** Where each of what is offered stands in the list, whatever was called of it; what comes first as offered is pointed at. */
  places?: (desk: Desk, known: readonly string[]) => readonly string[];
  /** How a slot is asked for, where its type alone says too little. */
  questions?: Readonly<Record<string, string | ((args: Args, desk: Desk) => string)>>;
  /** What an answer is so far, as far as the job knows: it stands typed, and is taken as it is or typed over. */
  stands?: (desk: Desk, slot: string, args: Args) => string | undefined;
  /** Asked beyond the slots, one after the other until nothing is left to ask; each answer stands among the slots. */
  besides?: (desk: Desk, args: Args) => Besides | undefined;
  /** What a key that may be a slip is answered once, with nothing written: the same key again means it. Typed, Enter on the same line means it; spoken, a second word; read from a list, it is minded. */
  asksOnce?: (desk: Desk, said: Said) => Once | undefined;
  /** What it takes by hand at least: a key of it sooner than that is held down, or slipped. */
  leastMs?: number;
  /** Slots left out where they are known: asked for, they have to be said. */
  neededWhereAsked?: readonly string[];
  /** Whoever works here signs it: the name of the settings is offered. */
  signed?: true;
  /** Asked a second time before it is made (X3). */
  twice?: string;
  /** What is said where it was asked twice and not made. */
  notMade?: string;
  /** A refusal for order is answered in words alone, never by the same key again: too much rides on it. */
  answeredInWords?: true;
  keys: readonly Binding[];
  /** The verb of the job, what of it is fixed by this row, and what fills a slot that was not said. */
  verb?: string;
  fixed?: Readonly<Record<string, unknown>>;
  fills?: (desk: Desk, args: Args) => Args;
  /** Slots that are read but not said to the job as they stand. */
  means?: (desk: Desk, args: Args) => Meant;
  /** What it would write without being asked, in a few words, and the call that says otherwise. */
  unasked?: (desk: Desk, args: Args) => Otherwise | undefined;
  /** What of it was written without being asked, and the call that says otherwise. */
  otherwise?: (entries: readonly Entry[], said: Said, after: Desk) => Otherwise | undefined;
  /** What its key would say now, where that changes: the pass that comes next. */
  labelNow?: (desk: Desk) => string | undefined;
  /** What is faced once the call was taken by a key; the desk is as it stands then. */
  after?: (desk: Desk, said: Said) => Partial<Facing>;
};

/** What a typed line has to answer beyond its slots. */
export function askedInWords(row: Row, desk: Desk, args: Args): Besides | undefined {
  const asked = row.besides?.(desk, args);
  return asked?.notInWords ? undefined : asked;
}

const undefinedGone = (args: Args): Args => Object.fromEntries(Object.entries(args).filter(([, v]) => v !== undefined));

/** What is said, and what the desk knows besides. */
export const filledFor = (row: Row, desk: Desk, args: Args): Args => ({
  ...undefinedGone(row.fills?.(desk, args) ?? {}),
  ...args,
});

/** What this row comes to with these slots filled. */
export function meantBy(row: Row, desk: Desk, args: Args, filled = filledFor(row, desk, args)): Meant {
  const lacking = lackingIn(row, desk, filled);
  if (lacking) return { no: lacking };
  if (row.means) return row.means(desk, filled);
  if (!row.verb) return { no: { because: `${row.id} means nothing here`, instead: 'use it on the screen' } };
  // The answer to what was asked besides is no part of what is said to the job.
  const { late: _, ...said } = filled;
  const say: Said = { verb: row.verb, ...row.fixed, ...said };
  return { say };
}

const any = 'any' as const;
export const key = (name: string, on: Binding['on'] = any, more: Omit<Binding, 'key' | 'on'> = {}): Binding => ({
  key: name,
  on,
  ...more,
});
