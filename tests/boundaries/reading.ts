// Reads one source file into what the boundaries ask about: what it imports, what it reaches for, what it does when
// it is imported. It parses; it does not judge. Names in comments, strings and types are not reached for.
import { parseAst } from 'vitest/node';

export type Import = { from: string; line: number; typesOnly: boolean };
export type Reach = { what: string; line: number };
export type Source = {
  imports: Import[];
  /** Names of the machine the code reads, `Date` or `Math.random`. */
  reaches: Reach[];
  /** Statements at the top level that do something instead of defining something. */
  deeds: Reach[];
  /** Variables at the top level that can change after import. */
  changeable: Reach[];
  draws: Reach[];
};

type Node = { type: string; start: number; [field: string]: unknown };

/** What the outside world is called in code. */
export const worldly = new Set([
  'Date',
  'Intl',
  'Temporal',
  'performance',
  'process',
  'crypto',
  'setTimeout',
  'setInterval',
  'setImmediate',
  'queueMicrotask',
  'requestAnimationFrame',
  'console',
  'fetch',
  'navigator',
  'globalThis',
  'global',
  'require',
  'eval',
  'Function',
]);
/** Asked of a value, these answer by the machine's language or time zone. */
const worldlyProperties = new Set([
  'toLocaleString',
  'toLocaleDateString',
  'toLocaleTimeString',
  'toLocaleUpperCase',
  'toLocaleLowerCase',
  'localeCompare',
]);

const definitions = new Set([
  'ImportDeclaration',
  'ExportAllDeclaration',
  'FunctionDeclaration',
  'ClassDeclaration',
  'VariableDeclaration',
  'TSTypeAliasDeclaration',
  'TSInterfaceDeclaration',
  'TSDeclareFunction',
  'TSEnumDeclaration',
  'TSModuleDeclaration',
  'EmptyStatement',
]);

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

const childrenOf = (node: Node): [string, Node][] =>
  Object.entries(node).flatMap(([field, value]) =>
    (Array.isArray(value) ? value : [value]).filter(isNode).map((child): [string, Node] => [field, child]),
  );

/** A type, or the part of an expression that is only one. */
const isType = (field: string, node: Node): boolean =>
  ['typeAnnotation', 'typeArguments', 'typeParameters', 'superTypeArguments', 'returnType', 'implements'].includes(
    field,
  ) || ['TSTypeAliasDeclaration', 'TSInterfaceDeclaration', 'TSDeclareFunction'].includes(node.type);

/** A name that stands for a member or a key, not for the variable of that name. */
function isMereName(parent: Node, field: string): boolean {
  if (parent.type === 'MemberExpression') return field === 'property' && parent.computed !== true;
  if (['Property', 'MethodDefinition', 'PropertyDefinition', 'TSEnumMember'].includes(parent.type)) {
    return (field === 'key' || field === 'id') && parent.computed !== true && parent.shorthand !== true;
  }
  return ['ImportSpecifier', 'ExportSpecifier', 'ImportDefaultSpecifier', 'LabeledStatement'].includes(parent.type);
}

export function readSource(text: string, path: string): Source {
  const program = parseAst(text, { lang: path.endsWith('x') ? 'tsx' : 'ts' }) as unknown as Node;
  const lineOf = (node: Node): number => text.slice(0, node.start).split('\n').length;
  const source: Source = { imports: [], reaches: [], deeds: [], changeable: [], draws: [] };
  const importing = (from: unknown, node: Node, typesOnly: boolean): void => {
    const literal = isNode(from) && typeof from.value === 'string' ? from.value : '(a name made at run time)';
    source.imports.push({ from: literal, line: lineOf(node), typesOnly });
  };

  const walk = (node: Node, parent: Node, field: string, inType: boolean): void => {
    const typeHere = inType || isType(field, node);
    if (node.type === 'ImportDeclaration' || node.type === 'ExportNamedDeclaration') {
      const specifiers = (node.specifiers as Node[] | undefined) ?? [];
      const eachIsType =
        specifiers.length > 0 && specifiers.every((each) => each.importKind === 'type' || each.exportKind === 'type');
      const typesOnly = node.importKind === 'type' || node.exportKind === 'type' || eachIsType;
      if (isNode(node.source)) importing(node.source, node, typesOnly);
    } else if (node.type === 'ExportAllDeclaration') importing(node.source, node, node.exportKind === 'type');
    else if (node.type === 'ImportExpression') importing(node.source, node, false);
    else if (node.type === 'TSImportType') importing(node.source ?? node.argument, node, true);
    else if (node.type === 'TSImportEqualsDeclaration') importing(node.moduleReference, node, false);
    else if (node.type === 'JSXElement' || node.type === 'JSXFragment') {
      source.draws.push({ what: 'JSX', line: lineOf(node) });
    }
    if (!typeHere) {
      const at = lineOf(node);
      const name = node.name as string;
      if (node.type === 'Identifier' && worldly.has(name) && !isMereName(parent, field)) {
        source.reaches.push({ what: name, line: at });
      }
      if (node.type === 'MetaProperty' && isNode(node.meta) && node.meta.name === 'import') {
        source.reaches.push({ what: 'import.meta', line: at });
      }
      if (node.type === 'MemberExpression' && isNode(node.property)) {
        const member = node.property.name ?? node.property.value;
        const holder = isNode(node.object) ? node.object.name : undefined;
        if (holder === 'Math' && member === 'random') source.reaches.push({ what: 'Math.random', line: at });
        if (worldlyProperties.has(String(member))) source.reaches.push({ what: String(member), line: at });
      }
      if (node.type === 'ObjectPattern' && isNode(parent.init) && parent.init.name === 'Math') {
        source.reaches.push({ what: 'Math taken apart', line: at });
      }
    }
    for (const [childField, child] of childrenOf(node)) walk(child, node, childField, typeHere);
  };
  walk(program, program, '', false);

  for (const statement of program.body as Node[]) {
    const exported = statement.type === 'ExportNamedDeclaration';
    const defined = exported ? statement.declaration : statement;
    if (!isNode(defined)) continue;
    const line = lineOf(statement);
    if (!definitions.has(defined.type)) source.deeds.push({ what: defined.type, line });
    else if (defined.type === 'VariableDeclaration') {
      if (awaits(defined)) source.deeds.push({ what: 'await at the top level', line });
      if (defined.kind !== 'const') source.changeable.push({ what: String(defined.kind), line });
    }
  }
  return source;
}

function awaits(node: Node): boolean {
  if (node.type === 'AwaitExpression') return true;
  if (node.type.includes('Function')) return false;
  return childrenOf(node).some(([, child]) => awaits(child));
}
