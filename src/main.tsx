// The command line: reads the arguments and hands them to the command they name. The only module that does anything on
// import. It knows no rule of the trade and draws nothing; the rooms do.
import { readFileSync } from 'node:fs';
import { type Command, exits, type Out, parse } from './commands/answer.ts';
import { runBench } from './commands/bench.ts';
import { calls } from './commands/calls.ts';
import { demoOf } from './commands/demo.ts';
import { plans } from './commands/planning.ts';
import { reckon } from './commands/reckon.ts';
import { sheet } from './commands/sheet.ts';
import { standing } from './commands/standing.ts';
import { take } from './commands/take.ts';
import { vehicle } from './commands/vehicle.ts';
import { verify } from './commands/verify.ts';
import { whose } from './commands/whose.ts';
import { show } from './screen/show.tsx';
import { plainText } from './trade/plain-text.ts';

// The sources in src/ and the bundle in dist/ both lie one folder below the package's root.
const packageRoot = new URL('../', import.meta.url);
const open: Command = {
  name: 'open',
  usage: 'open JOB',
  help: 'opens a job on the screen',
  options: {},
  async run(args) {
    const [named] = args.names;
    if (named === undefined || args.names.length > 1) {
      out.complain(`countback: ${open.usage}`);
      return exits.usage;
    }
    return runBench(named, packageRoot, show, out);
  },
};
const commands: readonly Command[] = [
  open,
  demoOf(show),
  take,
  standing,
  sheet,
  verify,
  vehicle,
  calls,
  plans,
  reckon,
  whose,
];

// The last door before the terminal: whatever a room let through, nothing that steers a terminal passes it.
const plainLine = (line: string): string => plainText(line, Number.POSITIVE_INFINITY);
const plainLines = (text: string): string =>
  text
    .split('\n')
    // A table's lines end in CR LF, which steers nothing.
    .map((line) => (line.endsWith('\r') ? `${plainLine(line.slice(0, -1))}\r` : plainLine(line)))
    .join('\n');
let isUnread = false;
const out: Out = {
  write(text) {
    if (!isUnread) process.stdout.write(plainLines(text));
  },
  complain: (text) => void process.stderr.write(`${plainText(text)}\n`),
  isUnread: () => isUnread,
};

function help(): string {
  const lines = commands.map((c) => `  countback ${c.usage}\n      ${c.help}\n`);
  return `countback: keeps account, beside a car in pieces, of every fastener and part until all of it is back

  countback              the shelf of jobs, on the screen
${lines.join('')}  countback --help       this page
  countback --version    the version

JOB is a name, or a path to a job file. COUNTBACK_DATA says where jobs are kept.
`;
}

function version(): string {
  const { version } = JSON.parse(readFileSync(new URL('package.json', packageRoot), 'utf8')) as { version: string };
  return version;
}

async function main(words: readonly string[]): Promise<number> {
  const [first, ...rest] = words;
  if (first === undefined) return runBench(undefined, packageRoot, show, out);
  if (first === '--help' || first === '-h') {
    out.write(help());
    return exits.fine;
  }
  if (first === '--version') {
    out.write(`${version()}\n`);
    return exits.fine;
  }
  const command = commands.find((c) => c.name === first);
  if (!command) {
    const kind = first.startsWith('-') ? 'option' : 'command';
    out.complain(`countback: unknown ${kind} ${JSON.stringify(first)}; see countback --help`);
    return exits.usage;
  }
  if (rest.includes('--help') || rest.includes('-h')) {
    out.write(`countback ${command.usage}\n    ${command.help}\n`);
    return exits.fine;
  }
  const args = parse(rest, command.options);
  if (typeof args === 'string') {
    out.complain(`countback: ${args}; ${command.usage}`);
    return exits.usage;
  }
  return command.run(args, out, packageRoot);
}

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
const exit = await main(process.argv.slice(2));
// Set already where what was said could not be written.
process.exitCode ??= exit;
