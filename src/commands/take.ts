// take: reads call lines from standard input, one a line, and answers each; the same words, guards and durability as
// on the screen.
import { createInterface } from 'node:readline';
import type { Answer, Session } from '../session/session.ts';
import { type Command, exits, type Out } from './answer.ts';
import { openSession, orFault } from './opening.ts';

export type Taken = {
  line: string;
  ok: boolean;
  n?: number;
  said?: string;
  rule?: string;
  because?: string;
  instead?: string;
};

function told(line: string, answer: Answer): Taken {
  switch (answer.kind) {
    case 'taken':
      return { line, ok: true, n: answer.n, said: answer.text };
    case 'faced':
      return { line, ok: true, said: answer.text };
    case 'step':
      return { line, ok: false, because: 'that is a call of the screen', instead: 'leave it out' };
    case 'refused': {
      const rule = answer.refusal ? { rule: answer.refusal.rule } : {};
      return { line, ok: false, ...rule, because: answer.text, instead: answer.instead };
    }
  }
}
const inWords = (t: Taken): string =>
  t.ok
    ? `${t.n === undefined ? '     ' : String(t.n).padStart(5)}  ${t.said}\n`
    : `   no  ${t.line}\n       ${t.rule ? `[${t.rule}] ` : ''}${t.because}; ${t.instead}\n`;

/** Blank lines and what follows "#" say nothing. */
export const isCall = (text: string): boolean => text.trim() !== '' && !text.trim().startsWith('#');

/** Takes lines one after the other, each saved before the next; stops taking when one could not be saved. */
export async function takeLines(
  session: Session,
  lines: AsyncIterable<string>,
  tell: (t: Taken) => void,
): Promise<boolean> {
  let allTaken = true;
  for await (const text of lines) {
    if (!isCall(text)) continue;
    const answer = session.runLine(text.trim());
    await session.settled();
    const { notSaved } = session.store.getState();
    const t = told(text.trim(), answer);
    const final: Taken = notSaved
      ? { line: t.line, ok: false, because: `NOT SAVED: ${notSaved.message}`, instead: 'mend it, and say it again' }
      : t;
    tell(final);
    if (!final.ok) allTaken = false;
  }
  return allTaken;
}

export const take: Command = {
  name: 'take',
  usage: 'take JOB [--new] [--json]',
  help: 'reads call lines from standard input, one a line, and answers each (exit 0 all taken, 3 some refused, 75 in use)',
  options: { new: 'flag', json: 'flag' },
  run: (args, out, packageRoot) =>
    orFault(out, async () => {
      const [named] = args.names;
      if (named === undefined || args.names.length > 1) return usage(out);
      const session = await openSession(named, packageRoot, { fresh: args.flags.has('new') });
      try {
        for (const notice of session.job.notices) out.complain(`countback: ${notice.message}`);
        if (session.store.getState().looking) {
          out.complain(`countback: ${session.job.whyLook?.message ?? 'the job can only be looked at'}`);
          return exits.locked;
        }
        const lines = createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY });
        const tell = (t: Taken) => out.write(args.flags.has('json') ? `${JSON.stringify(t)}\n` : inWords(t));
        return (await takeLines(session, lines, tell)) ? exits.fine : exits.someRefused;
      } finally {
        await session.close();
      }
    }),
};
function usage(out: Out): number {
  out.complain(`countback: ${take.usage}`);
  return exits.usage;
}
