// The command line: reads the arguments, answers or opens what they name. The only module that does anything on
// import. It knows no rule of the trade and draws nothing; the rooms do.
import { readFileSync } from 'node:fs';

// The sources in src/ and the bundle in dist/ both lie one folder below the package's root.
const packageRoot = new URL('../', import.meta.url);

const exitCodes = { fine: 0, usage: 64 } as const;

const help = `countback: keeps account, beside a car in pieces, of every fastener and part until all of it is back

  countback --help       this page
  countback --version    the version
`;

type Answer = { exit: number; out?: string; complaint?: string };

function version(): string {
  const { version } = JSON.parse(readFileSync(new URL('package.json', packageRoot), 'utf8')) as { version: string };
  return version;
}

function answer(args: readonly string[]): Answer {
  const [first] = args;
  if (first === undefined || first === '--help' || first === '-h') return { exit: exitCodes.fine, out: help };
  if (first === '--version') return { exit: exitCodes.fine, out: `${version()}\n` };
  const kind = first.startsWith('-') ? 'option' : 'command';
  return {
    exit: exitCodes.usage,
    complaint: `countback: unknown ${kind} ${JSON.stringify(first)}; see countback --help`,
  };
}

const { exit, out, complaint } = answer(process.argv.slice(2));
if (out !== undefined) process.stdout.write(out);
if (complaint !== undefined) process.stderr.write(`${complaint}\n`);
process.exitCode = exit;
