// take: reads calls from standard input, and answers each; the same words, guards and durability as on the screen.
import { fstatSync } from 'node:fs';
import type { Readable } from 'node:stream';
import { callsIn } from '../calls/line-reader.ts';
import type { Answer, Session } from '../session/session-shape.ts';
import { longestText, plainText } from '../trade/plain-text.ts';
import { type Command, exits, type Out } from './answer.ts';
import { openSession, orFault } from './opening.ts';
import { notOne } from './slips.ts';

export type Taken = {
  line: string;
  ok: boolean;
  n?: number;
  said?: string;
  rule?: string;
  because?: string;
  instead?: string;
};

/** There is no key in a shell: the words of the calls are printed by a command. */
const inAShell = ({ instead, by }: { instead: string; by?: string }): string =>
  by === 'help' ? `${instead}: "countback calls"` : instead;

function told(line: string, answer: Answer): Taken {
  switch (answer.kind) {
    case 'taken':
      return { line, ok: true, n: answer.n, said: answer.text };
    case 'faced':
      return { line, ok: true, said: answer.text };
    case 'step':
      return { line, ok: false, because: 'that is a call of the screen', instead: 'leave it out' };
    case 'asked':
      return { line, ok: false, because: answer.text, instead: answer.instead };
    case 'refused': {
      const rule = answer.refusal ? { rule: answer.refusal.rule } : {};
      return { line, ok: false, ...rule, because: answer.text, instead: inAShell(answer) };
    }
  }
}
const inWords = (t: Taken): string =>
  t.ok
    ? `${t.n === undefined ? '     ' : String(t.n).padStart(5)}  ${t.said}\n`
    : `   no  ${t.line}\n       ${t.rule ? `[${t.rule}] ` : ''}${t.because}; ${t.instead}\n`;

/** Blank lines and what follows "#" say nothing. */
export const isCall = (text: string): boolean => text.trim() !== '' && !text.trim().startsWith('#');

/** Why a line is not even read: what could not be told from it is not taken for something else. */
function whyUnread(text: string): { because: string; instead: string } | undefined {
  const no = (because: string, instead: string) => ({ because, instead });
  if (text.length > longestText)
    return no(`this line has ${text.length} characters, a call at most ${longestText}`, 'say it shorter');
  if (text.includes('\u{fffd}')) return no('this line is not in UTF-8', 'save the list as UTF-8, and take it again');
  if (plainText(text) !== text.replaceAll('\t', ' '))
    return no('there are control or unseen characters in this line', 'type it again');
  return undefined;
}
const longestEcho = 200;
const echoed = (text: string): string => (text.length > longestEcho ? `${text.slice(0, longestEcho)}…` : text);

type How = { stopsAtRefusal: boolean; isUnread: () => boolean };
/** Takes calls one after the other, each saved before the next; whether anybody reads the answers is asked before each. */
async function takeLines(
  session: Session,
  lines: AsyncIterable<string>,
  tell: (t: Taken) => void,
  { stopsAtRefusal, isUnread }: How,
): Promise<'all taken' | 'some refused' | 'refused' | 'stopped'> {
  let allTaken = true;
  for await (const raw of lines) {
    // Takes the mark away, too, that some systems put before the first line.
    const text = raw.trim();
    if (!isCall(text)) continue;
    const unread = whyUnread(text);
    // As on the screen, where one line may hold several calls as well.
    for (const call of unread ? [text] : callsIn(text)) {
      if (isUnread()) return 'stopped';
      const taken: Taken = unread ? { line: echoed(call), ok: false, ...unread } : await takeCall(session, call);
      tell(taken);
      if (!taken.ok && stopsAtRefusal) return 'refused';
      if (!taken.ok) allTaken = false;
    }
  }
  return allTaken ? 'all taken' : 'some refused';
}
async function takeCall(session: Session, text: string): Promise<Taken> {
  const line = echoed(text);
  const answer = session.runLine(text);
  await session.settled();
  const { notSaved } = session.store.getState();
  if (notSaved)
    return { line, ok: false, because: `NOT SAVED: ${notSaved.message}`, instead: 'mend it, and say it again' };
  return told(line, answer);
}

const usage = 'take JOB [--new] [--stop] [--json]';
/** Standard input, reached for only when lines are read from it. */
export type Input = () => Readable & { fd?: number };

export const takeOf = (input: Input): Command => ({
  name: 'take',
  usage,
  help: 'reads calls from standard input, one a line or several with ";" between them, and answers each (exit 0 all taken, 3 some refused, 75 in use); --stop takes nothing behind the first that is refused',
  options: { new: 'flag', stop: 'flag', json: 'flag' },
  run: (args, out, packageRoot) =>
    orFault(out, async () => {
      const [named] = args.names;
      if (named === undefined || args.names.length > 1) return usageOf(args.names, out);
      const session = await openSession(named, packageRoot, {
        fresh: args.flags.has('new'),
        tell: (line) => out.complain(`countback: ${line}`),
      });
      const exit = await takenOn(session, input, out, args.flags).finally(() => session.close());
      const parted = session.job.parted();
      if (parted) out.complain(`countback: ${parted.message}`);
      return parted ? exits.notSaved : exit;
    }),
});

async function takenOn(session: Session, input: Input, out: Out, flags: ReadonlySet<string>): Promise<number> {
  for (const notice of session.job.notices) out.complain(`countback: ${notice.message}`);
  const cannot = whyNotWrite(session);
  if (!cannot) return takeFrom(input(), session, out, flags);
  out.complain(`countback: ${cannot.message}`);
  return cannot.exit;
}

function whyNotWrite({ job, store }: Session): { message: string; exit: number } | undefined {
  if (!store.getState().looking) return undefined;
  const { doubt, whyLook } = job;
  const asks = doubt?.copy === undefined ? '; "countback open" asks for that' : '';
  if (doubt) return { message: `${doubt.fault.message}${asks}; nothing was taken`, exit: exits.unreadable };
  const inUse = whyLook?.kind === 'in-use' || whyLook?.kind === 'lock-unreadable';
  // A list of calls has nobody to look on.
  const next = whyLook?.next.replace(/^look on here(, or|;) /, '').replace(' and open it here again', ' first');
  return {
    message: whyLook
      ? `${whyLook.what}; nothing was taken: ${next} (${whyLook.where})`
      : 'the job can only be looked at; nothing was taken',
    exit: inUse ? exits.locked : exits.unreadable,
  };
}

async function takeFrom(
  stdin: ReturnType<Input>,
  session: Session,
  out: Out,
  flags: ReadonlySet<string>,
): Promise<number> {
  // Read only when it is used: it brings in all of Node's line editor, of which a start needs nothing.
  const { createInterface } = process.getBuiltinModule('node:readline');
  const lines = createInterface({ input: stdin, crlfDelay: Number.POSITIVE_INFINITY });
  // Node takes a folder for an empty list.
  const isFolder = stdin.fd !== undefined && fstatSync(stdin.fd).isDirectory();
  let failed: string | undefined = isFolder ? 'EISDIR' : undefined;
  stdin.on('error', (thrown: NodeJS.ErrnoException) => {
    failed = thrown.code ?? thrown.message;
    lines.close();
  });
  const tell = (t: Taken) => out.write(flags.has('json') ? `${JSON.stringify(t)}\n` : inWords(t));
  const how = { stopsAtRefusal: flags.has('stop'), isUnread: out.isUnread };
  const ended = await takeLines(session, lines, tell, how).catch((thrown: unknown) => {
    // The failure of the input comes through the lines as well.
    if (failed === undefined) throw thrown;
    return 'stopped';
  });
  if (failed !== undefined) {
    out.complain(`countback: standard input could not be read to its end (${failed})`);
    return exits.noInput;
  }
  if (ended === 'stopped') {
    const { length } = session.job.lines();
    out.complain(`countback: nobody reads the answers any more; stopped after call ${length}, the rest was not taken`);
  }
  if (ended === 'refused') out.complain('countback: stopped at what was refused; what follows it was not taken');
  return ended === 'all taken' ? exits.fine : exits.someRefused;
}
function usageOf(names: readonly string[], out: Out): number {
  out.complain(`countback: ${notOne(names)}; ${usage}`);
  return exits.usage;
}
