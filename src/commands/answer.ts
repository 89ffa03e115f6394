// What a command of the command line comes to, and the exit codes it may answer with.

/** sysexits(3): usage 64, temporary failure 75. */
export const exits = { fine: 0, open: 1, unreadable: 2, someRefused: 3, usage: 64, noInput: 66, locked: 75 } as const;

export type Out = { write(text: string): void; complain(text: string): void };
export type Command = {
  name: string;
  usage: string;
  help: string;
  /** Options it knows: name → whether it takes a value. */
  options: Readonly<Record<string, 'flag' | 'value'>>;
  run(args: Parsed, out: Out, packageRoot: URL): Promise<number>;
};
export type Parsed = { names: readonly string[]; flags: ReadonlySet<string>; values: ReadonlyMap<string, string> };

/** Splits words into names and options; the reason as a string when one is not known. */
export function parse(words: readonly string[], options: Command['options']): Parsed | string {
  const names: string[] = [];
  const flags = new Set<string>();
  const values = new Map<string, string>();
  for (let i = 0; i < words.length; i++) {
    const word = words[i] as string;
    if (!word.startsWith('-') || word === '-') {
      names.push(word);
      continue;
    }
    const [name, glued] = word.replace(/^--?/, '').split(/=(.*)/s) as [string, string | undefined];
    const kind = Object.hasOwn(options, name) ? options[name] : undefined;
    if (kind === undefined) return `unknown option ${JSON.stringify(word)}`;
    if (kind === 'flag') {
      if (glued !== undefined) return `option --${name} takes no value`;
      flags.add(name);
      continue;
    }
    const value = glued ?? words[++i];
    if (value === undefined) return `option --${name} wants a value`;
    values.set(name, value);
  }
  return { names, flags, values };
}
