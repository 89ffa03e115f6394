// What a command of the command line comes to, and the exit codes it may answer with.

import { perhaps } from '../trade/perhaps.ts';

/** sysexits(3): usage 64, no input 66, a bug of the program 70, a failed write 74, temporary failure 75. */
export const exits = {
  fine: 0,
  open: 1,
  unreadable: 2,
  someRefused: 3,
  usage: 64,
  noInput: 66,
  bug: 70,
  notSaved: 74,
  locked: 75,
} as const;

export type Out = {
  write(text: string): void;
  complain(text: string): void;
  /** Whether whoever read what is written has gone. */
  isUnread(): boolean;
};
export type Command = {
  name: string;
  usage: string;
  help: string;
  /** The words it goes on with, where each is a thing of its own to do. */
  branches?: readonly string[];
  /** Options it knows: name → whether it takes a value; `values` may be given again and again. */
  options: Readonly<Record<string, 'flag' | 'value' | 'values'>>;
  run(args: Parsed, out: Out, packageRoot: URL): Promise<number>;
};
export type Parsed = {
  names: readonly string[];
  flags: ReadonlySet<string>;
  /** The last one given of each. */
  values: ReadonlyMap<string, string>;
  /** Of the options that may be given again and again, all. */
  lists: ReadonlyMap<string, readonly string[]>;
};

/** Splits words into names and options, "--" before names that begin with "-"; the reason as a string where it can't. */
export function parse(words: readonly string[], options: Command['options']): Parsed | string {
  const names: string[] = [];
  const flags = new Set<string>();
  const values = new Map<string, string>();
  const lists = new Map<string, string[]>();
  for (let i = 0; i < words.length; i++) {
    const word = words[i] as string;
    if (word === '--') {
      names.push(...words.slice(i + 1));
      break;
    }
    if (!word.startsWith('-') || word === '-') {
      names.push(word);
      continue;
    }
    const [option, glued] = word.split(/=(.*)/s) as [string, string | undefined];
    const name = Object.keys(options).find((known) => dashed(known) === option);
    if (name === undefined)
      return `unknown option ${JSON.stringify(word)}${perhaps(option, Object.keys(options).map(dashed))}`;
    if (options[name] === 'flag') {
      if (glued !== undefined) return `option ${option} takes no value`;
      flags.add(name);
      continue;
    }
    const value = glued ?? words[++i];
    if (value === undefined) return `option ${option} wants a value`;
    if (options[name] === 'values') lists.set(name, [...(lists.get(name) ?? []), value]);
    else values.set(name, value);
  }
  return { names, flags, values, lists };
}
const dashed = (name: string): string => (name.length === 1 ? `-${name}` : `--${name}`);
