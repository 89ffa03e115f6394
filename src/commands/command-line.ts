// The command line: finds the command the words name, reads its options, and answers with its exit code. It starts
// nothing itself; the terminal, the screen and standard input are handed in.
import { readFileSync } from 'node:fs';
import { realDisk } from '../store/disk.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { jobsIn } from '../store/shelf.ts';
import { perhaps } from '../trade/perhaps.ts';
import { type Command, exits, type Out, type Parsed, parse } from './answer.ts';
import { runBench, type ShowAtHand } from './bench.ts';
import { calls } from './calls.ts';
import { demoOf } from './demo.ts';
import { inRows } from './in-rows.ts';
import { plans } from './planning.ts';
import { reckon } from './reckon.ts';
import { sheet } from './sheet.ts';
import { notOne } from './slips.ts';
import { standing } from './standing.ts';
import { type Input, takeOf } from './take.ts';
import { vehicle } from './vehicle.ts';
import { verify } from './verify.ts';
import { whose } from './whose.ts';

export type Surroundings = { out: Out; packageRoot: URL; show: ShowAtHand; input: Input };

export async function runCommandLine(words: readonly string[], around: Surroundings): Promise<number> {
  const { out, packageRoot, show } = around;
  const commands = commandsIn(around);
  const [first, ...rest] = words;
  if (first === undefined) return runBench(undefined, packageRoot, show, out);
  if (first === 'help' && commands.some((c) => c.name === rest[0])) return runCommandLine([...rest, '--help'], around);
  if (first === '--help' || first === '-h' || first === 'help') {
    out.write(help(commands));
    return exits.fine;
  }
  if (first === '--version') {
    out.write(`${version(packageRoot)}\n`);
    return exits.fine;
  }
  if (/^--listen(-with)?(=|$)/.test(first)) {
    const args = parse(words, voiceOptions);
    if (typeof args !== 'string' && args.names.length === 0)
      return runBench(undefined, packageRoot, show, out, byVoice(args));
    out.complain(`countback: ${typeof args === 'string' ? args : `a job is opened by "open JOB ${first}"`}`);
    return exits.usage;
  }
  const command = commands.find((c) => c.name === first);
  if (!command) {
    const kind = first.startsWith('-') ? 'option' : 'command';
    const known = kind === 'option' ? ['--help', '--version', '--listen'] : commands.map((c) => c.name);
    const meant = perhaps(first, known) || (await asJob(kind, first)) || asBranch(first, commands);
    out.complain(`countback: unknown ${kind} ${JSON.stringify(first)}${meant}; see countback --help`);
    return exits.usage;
  }
  if (rest.includes('--help') || rest.includes('-h')) {
    out.write(`${usageText(command.usage)}\n${inRows(command.help, 6)}\n`.replace(/^ {2}/gm, ''));
    return exits.fine;
  }
  const args = parse(rest, command.options);
  if (typeof args === 'string') {
    out.complain(`countback: ${args}; ${command.usage}`);
    return exits.usage;
  }
  return command.run(args, out, packageRoot);
}

/** A job's name alone is easily typed for the job. */
async function asJob(kind: string, word: string): Promise<string> {
  const there = kind === 'command' ? await jobsIn(realDisk, placesOn(thisMachine()).jobs).catch(() => []) : [];
  return there.some((one) => 'job' in one && one.job === word) ? `; the job is opened by "countback open ${word}"` : '';
}

/** What belongs behind a command is easily typed without it. */
function asBranch(word: string, commands: readonly Command[]): string {
  const whole = commands.flatMap(({ name, branches = [] }) =>
    branches.filter((branch) => perhaps(word, [branch]) !== '').map((branch) => ({ name, branch })),
  );
  const exact = whole.filter(({ branch }) => branch === word);
  const said = (exact.length > 0 ? exact : whole).map(({ name, branch }) => `"${name} ${branch}"`);
  return said.length > 0 ? `, perhaps ${said.join(' or ')}` : '';
}

const commandsIn = ({ show, input }: Surroundings): readonly Command[] => [
  openOf(show),
  demoOf(show),
  takeOf(input),
  standing,
  sheet,
  verify,
  vehicle,
  calls,
  plans,
  reckon,
  whose,
];

const voiceOptions = { listen: 'flag', 'listen-with': 'value' } as const;
const byVoice = ({ flags, values }: Parsed) => {
  const command = values.get('listen-with');
  return { listen: flags.has('listen'), ...(command !== undefined && { listenWith: command }) };
};
function openOf(show: ShowAtHand): Command {
  const usage = 'open JOB [--listen | --listen-with CMD]';
  return {
    name: 'open',
    usage,
    help: 'opens a job on the screen; --listen hears calls by voice, --listen-with by a program that prints a phrase a line',
    options: voiceOptions,
    async run(args, out, packageRoot) {
      const [named] = args.names;
      if (named === undefined || args.names.length > 1) {
        out.complain(`countback: ${notOne(args.names)}; ${usage}`);
        return exits.usage;
      }
      return runBench(named, packageRoot, show, out, byVoice(args));
    },
  };
}

function help(commands: readonly Command[]): string {
  const lines = commands.map((c) => `${usageText(c.usage)}\n${inRows(c.help, 6)}\n`);
  return `countback: keeps account, beside a car in pieces, of every fastener and part
until all of it is back

  countback              the shelf of jobs, on the screen
${lines.join('')}  countback --help       this page
  countback --version    the version

JOB is a name, or a path to a job file. COUNTBACK_DATA says where jobs are kept.
In the checkout it is "npx countback ...", or "npm start -- ...".
`;
}

/** A usage in rows, none of its short choices broken. */
const usageText = (usage: string): string => {
  const solid = usage.replace(/\[[^[\]|]{1,24}\]/g, (choice) => choice.replaceAll(' ', '\u00a0'));
  return inRows(`countback ${solid}`, 2, 10).replaceAll('\u00a0', ' ');
};

function version(packageRoot: URL): string {
  const { version } = JSON.parse(readFileSync(new URL('package.json', packageRoot), 'utf8')) as { version: string };
  return version;
}
