// Finds numbers in a source that stand outside the cited form. The rule:
// - a number stands inside the arguments of `cited(…)`, whatever it is;
// - 0, 1 and 2, with either sign, may stand anywhere: nothing, the next one, half, a pair, a square;
// - an index into a list that is at hand (`parts[3]`) is no figure of the trade, nor is how many characters or places of
//   a text are meant (`toFixed(1)`, `padStart(4)`, `slice(0, 4)`);
// - a text that is nothing but a figure ('8', '5/16') is one all the same, outside `cited` and outside comparisons.
import { parseAst } from 'vitest/node';

export type Bare = { figure: string; line: number };

type Node = { type: string; start: number; [field: string]: unknown };

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

const free = new Set([0, 1, 2]);
const countsText = new Set(['toFixed', 'toPrecision', 'padStart', 'padEnd', 'slice']);
const comparisons = new Set(['===', '!==']);

export function bareNumbersIn(text: string): Bare[] {
  const found: Bare[] = [];
  const see = (figure: string, node: Node): void =>
    void found.push({ figure, line: text.slice(0, node.start).split('\n').length });

  const walk = (node: Node): void => {
    if (node.type === 'CallExpression' && isNode(node.callee)) {
      const { callee } = node;
      if (callee.type === 'Identifier' && callee.name === 'cited') return;
      const method = callee.type === 'MemberExpression' && isNode(callee.property) ? String(callee.property.name) : '';
      if (countsText.has(method)) return walk(callee);
    }
    // Types hold no values.
    if (
      node.type.startsWith('TS') &&
      !['TSAsExpression', 'TSSatisfiesExpression', 'TSNonNullExpression'].includes(node.type)
    )
      return;
    if (node.type === 'MemberExpression' && node.computed === true && isNode(node.property)) {
      if (isNode(node.object)) walk(node.object);
      if (node.property.type !== 'Literal') walk(node.property);
      return;
    }
    if (node.type === 'BinaryExpression' && comparisons.has(String(node.operator))) {
      for (const side of [node.left, node.right]) {
        if (isNode(side) && !(side.type === 'Literal' && typeof side.value === 'string')) walk(side);
      }
      return;
    }
    if (node.type === 'Literal') {
      if (typeof node.value === 'number' && !free.has(node.value)) see(String(node.value), node);
      if (typeof node.value === 'string' && /^[\d.,/ ]*\d[\d.,/ ]*$/.test(node.value)) see(node.value, node);
      if (typeof node.value === 'bigint') see(String(node.value), node);
    }
    for (const value of Object.values(node)) {
      for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) walk(child);
    }
  };
  walk(parseAst(text, { lang: 'ts' }) as unknown as Node);
  return found;
}
