// Starts the program: binds the command line to this process. The only module that does anything on import. It knows no
// rule of the trade and draws nothing; the rooms do.
import { exits, type Out } from './commands/answer.ts';
import { runCommandLine } from './commands/command-line.ts';
import { plainLines, plainText } from './trade/plain-text.ts';

let isUnread = false;
// The last door before the terminal: whatever a room let through, nothing that steers a terminal passes it.
const out: Out = {
  write(text) {
    if (!isUnread) process.stdout.write(plainLines(text));
  },
  complain: (text) => void process.stderr.write(`${plainText(text)}\n`),
  isUnread: () => isUnread,
};

function complainOfBug(thrown: unknown): void {
  out.complain('countback: this is a bug of the program, not of the job; every call shown as saved is on the disk');
  const text = thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown);
  for (const line of text.split('\n').slice(0, 12)) out.complain(`  ${line}`);
}

// A reader that has seen enough closes the pipe, and a window that is closed takes nothing more: no fault, and the
// command still ends as it would have.
const readerGone = ['EPIPE', 'EIO'];
process.stdout.on('error', (thrown: NodeJS.ErrnoException) => {
  if (!isUnread && !readerGone.includes(thrown.code ?? '')) {
    out.complain(`countback: what was to be said could not be written (${thrown.code ?? thrown.message})`);
    process.exitCode = exits.notSaved;
  }
  isUnread = true;
});
process.stderr.on('error', () => undefined);
// A limit on the size of files is told as a full disk is; unheard, it ends the program.
process.on('SIGXFSZ', () => undefined);
process.on('uncaughtException', (thrown) => {
  complainOfBug(thrown);
  process.exit(exits.bug);
});
const exit = await runCommandLine(process.argv.slice(2), {
  out,
  // The sources in src/ and the bundle in dist/ both lie one folder below the package's root.
  packageRoot: new URL('../', import.meta.url),
  // Read only when something is painted: most commands answer in a line.
  show: async () => (await import('./screen/show.tsx')).show,
  input: () => process.stdin,
});
// Set already where what was said could not be written.
process.exitCode ??= exit;
