// What is wrong with one value that came from outside, in words of this program: what is missing, what was read and what
// it may be. The one place that words what a schema finds; it knows kinds and limits, not what they are for.
import type * as z from 'zod';
import { plainText } from '../trade/plain-text.ts';

type Issue = z.core.$ZodIssue;
/** `at` is deeper than the issue's own path where one of several shapes was nearly met. */
export type IssueWords = { what: string; at: readonly PropertyKey[]; missing?: true };

const kindNames: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'a set of fields',
  record: 'a set of fields',
};

/** @param read what the schema was given, the whole of it */
export function issueWords(issue: Issue, read: unknown): IssueWords {
  const at = issue.path;
  const value = at.reduce<unknown>((inside, step) => (inside as Record<PropertyKey, unknown> | null)?.[step], read);
  if (value === undefined && issue.code !== 'custom') return { what: 'this is missing', at, missing: true };
  if (issue.code === 'invalid_union') return unionWords(issue, value);
  return { what: words(issue, value), at };
}

/** Of more answers than these a person reads none. */
const mostNamed = 16;

function words(issue: Exclude<Issue, { code: 'invalid_union' }>, value: unknown): string {
  switch (issue.code) {
    case 'invalid_type':
      return `this must be ${wantedOf(issue)}, not ${readText(value)}`;
    case 'invalid_value':
      return issue.values.length > mostNamed
        ? `${readText(value)} is none of what may stand here`
        : `this must be ${wantedOf(issue)}, not ${readText(value)}`;
    case 'too_big':
      return tooMuch(issue.origin, value, beyond(issue.inclusive === false, 'less than', 'at most', issue.maximum));
    case 'too_small':
      return tooLittle(issue.origin, value, beyond(issue.inclusive === false, 'more than', 'at least', issue.minimum));
    case 'not_multiple_of':
      return `this must be a whole multiple of ${issue.divisor}, not ${readText(value)}`;
    case 'unrecognized_keys':
      return `there is no such field: ${issue.keys.map((key) => plainText(key, 40)).join(', ')}`;
    case 'invalid_key': {
      const name = issue.path.at(-1);
      const [inner] = issue.issues;
      return inner ? `the name ${readText(name)}: ${issueWords(inner, name).what}` : `no name: ${readText(name)}`;
    }
    case 'invalid_format':
      // The house's own words where the schema has some.
      return issue.message.startsWith('Invalid ') ? `${readText(value)} is not written as it has to be` : issue.message;
    case 'custom':
      return issue.message;
    default:
      return `${readText(value)} is not what may stand here`;
  }
}

const wantedOf = (issue: Extract<Issue, { code: 'invalid_type' | 'invalid_value' }>): string => {
  if (issue.code === 'invalid_type') return kindNames[issue.expected] ?? issue.expected;
  return `${issue.values.length > 1 ? 'one of ' : ''}${issue.values.map(String).join(', ')}`;
};
const beyond = (strict: boolean, open: string, closed: string, limit: number | bigint): string =>
  `${strict ? open : closed} ${limit}`;

function tooMuch(origin: string, value: unknown, limit: string): string {
  if (origin === 'string') return `this text is ${String(value).length} characters long: ${limit}`;
  if (origin === 'array') return `there are ${(value as unknown[]).length} here: ${limit}`;
  return `${readText(value)} is too much: ${limit}`;
}
function tooLittle(origin: string, value: unknown, limit: string): string {
  if (origin === 'string') return value === '' ? 'this text is empty' : `this text is too short: ${limit} characters`;
  if (origin === 'array') {
    const many = (value as unknown[]).length;
    return `${many === 0 ? 'there is none' : many === 1 ? 'there is one' : `there are ${many}`} here: ${limit}`;
  }
  return `${readText(value)} is too little: ${limit}`;
}

/** The shape that was nearly met tells what is wrong; where none was, all that could stand there. */
function unionWords(issue: Extract<Issue, { code: 'invalid_union' }>, value: unknown): IssueWords {
  const options: readonly (readonly Issue[])[] = issue.errors;
  const near = options.find((of) => of.length > 0 && of.every((one) => !isOfAnotherShape(one)));
  const [first] = near ?? [];
  if (first) {
    const { what, at, ...more } = issueWords(first, value);
    return { what, at: [...issue.path, ...at], ...more };
  }
  const wanted = options.flatMap(([one]) =>
    one && one.path.length === 0 && (one.code === 'invalid_type' || one.code === 'invalid_value')
      ? [wantedOf(one)]
      : [],
  );
  const what =
    wanted.length > 0 && wanted.length === options.length
      ? `this must be ${[...new Set(wanted)].join(' or ')}, not ${readText(value)}`
      : `${readText(value)} is none of what may stand here`;
  return { what, at: issue.path };
}
const isOfAnotherShape = ({ code, path }: Issue): boolean =>
  code === 'unrecognized_keys' || ((code === 'invalid_type' || code === 'invalid_value') && path.length === 0);

/** As it was read, cut where it is long. */
function readText(value: unknown): string {
  if (typeof value === 'string') return `"${plainText(value, 40)}"`;
  if (Array.isArray(value)) return 'a list';
  if (value === null) return 'null';
  return typeof value === 'object' ? 'a set of fields' : String(value);
}
