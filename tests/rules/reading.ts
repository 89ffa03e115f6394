// Reads the rule book for its numbers and the tests for the numbers in their names. It judges nothing.
import { readdirSync, readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseAst } from 'vitest/node';

const root = fileURLToPath(new URL('../../', import.meta.url));

export type Rule = { number: string; family: string };
export type Named = { rule: string; at: string };

type Node = { type: string; start: number; [field: string]: unknown };

export const ruleBook = (): string => readFileSync(`${root}src/job/RULES.md`, 'utf8');

/** Rules in the order of the book, each under the heading of its family. */
export function rulesIn(book: string): Rule[] {
  let family = '';
  return book.split('\n').flatMap((line) => {
    if (line.startsWith('## ')) family = line.slice(3).trim();
    const number = /^- \*\*([A-Z]\d+)\*\*/.exec(line)?.[1];
    return number === undefined ? [] : [{ number, family }];
  });
}

/** `[L7]`, and several in one bracket: `[L7 L8]`. */
const numbersIn = (name: string): string[] =>
  [...name.matchAll(/\[([A-Z]\d+(?:[ ,]+[A-Z]\d+)*)\]/g)].flatMap(([, inside]) => (inside ?? '').split(/[ ,]+/));

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

/** `it`, `it.each`, `test.concurrent`: null when it is no test or one that is switched off. */
function testCallee(callee: unknown): string | null {
  if (!isNode(callee)) return null;
  if (callee.type === 'Identifier') return ['it', 'test', 'describe'].includes(String(callee.name)) ? 'on' : null;
  if (callee.type === 'CallExpression' || callee.type === 'TaggedTemplateExpression') {
    return testCallee(callee.callee ?? callee.tag);
  }
  if (callee.type === 'MemberExpression' && isNode(callee.property)) {
    const off = ['skip', 'todo', 'fails', 'skipIf', 'runIf'].includes(String(callee.property.name));
    return off ? null : testCallee(callee.object);
  }
  return null;
}

function textOf(argument: unknown): string {
  if (!isNode(argument)) return '';
  if (argument.type === 'Literal') return String(argument.value);
  if (argument.type === 'TemplateLiteral') {
    return (argument.quasis as { value: { raw: string } }[]).map((quasi) => quasi.value.raw).join('…');
  }
  if (argument.type === 'BinaryExpression') return textOf(argument.left) + textOf(argument.right);
  return '';
}

/** Every rule number in the name of a test that runs, with the place of that name. */
export function rulesNamedIn(text: string, path: string): Named[] {
  const found: Named[] = [];
  const walk = (node: Node): void => {
    if (node.type === 'CallExpression' && testCallee(node.callee) !== null) {
      const line = text.slice(0, node.start).split('\n').length;
      for (const rule of numbersIn(textOf((node.arguments as unknown[])[0])))
        found.push({ rule, at: `${path}:${line}` });
    }
    for (const value of Object.values(node)) {
      for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) walk(child);
    }
  };
  walk(parseAst(text, { lang: path.endsWith('x') ? 'tsx' : 'ts' }) as unknown as Node);
  return found;
}

/** Over every test file of the repository. This folder's own test names rules only as examples and is left out. */
export function rulesNamedInTests(): Named[] {
  return readdirSync(`${root}tests`, { recursive: true, withFileTypes: true })
    .filter((at) => at.isFile() && /\.test\.tsx?$/.test(at.name))
    .map((at) => relative(root, resolve(at.parentPath, at.name)).replaceAll('\\', '/'))
    .filter((path) => !path.startsWith('tests/rules/'))
    .flatMap((path) => rulesNamedIn(readFileSync(`${root}${path}`, 'utf8'), path));
}
