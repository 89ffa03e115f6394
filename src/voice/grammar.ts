// The grammar a recogniser listens by, as JSGF: made from the sayings of the table of calls and the names on this job.
import { leaveAloud } from '../calls/answers-aloud.ts';
import type { Desk } from '../calls/desk.ts';
import type { Node } from '../calls/form.ts';
import { compounds, figureByFigure, type Saying, sayings, waysToSay } from '../calls/sayings.ts';
import { digitWords } from '../calls/spoken-words.ts';

/** What may be heard now: everything, only the word that starts listening again, what a second word answers, or a question. */
export type Heed = 'calls' | 'start' | 'second word' | { answers: readonly string[] };
const startWords = 'start listening';
const secondWords = { yes: 'really do it', no: leaveAloud } as const;

export type Grammar = { jsgf: string; words: readonly string[]; phrases: number };

export function grammarOf(desk: Desk, heed: Heed = 'calls'): Grammar {
  const rules = new Map<string, string>();
  const said =
    typeof heed === 'object'
      ? [...heed.answers]
      : heed === 'start'
        ? [startWords]
        : heed === 'second word'
          ? Object.values(secondWords)
          : sayings.flatMap((saying) => sayingText(desk, saying, rules) ?? []).filter((text) => text !== startWords);
  const calls = [...new Set(said)];
  const jsgf = [
    '#JSGF V1.0;',
    'grammar heard;',
    'public <heard> = <call>;',
    `<call> = ${calls.join('\n  | ')};`,
    ...[...rules].map(([name, body]) => `<${name}> = ${body};`),
    '',
  ].join('\n');
  const words =
    [...calls, ...rules.values()]
      .join(' ')
      .replace(/<[^>]*>/g, ' ')
      .match(/[a-z]+/g) ?? [];
  return { jsgf, words: [...new Set(words)].sort(), phrases: calls.length };
}

/** Null where a slot has nothing to be filled with: such a call can't be said now. */
function sayingText(desk: Desk, saying: Saying, rules: Map<string, string>): string | null {
  return nodesText(desk, saying, saying.nodes, rules);
}
function nodesText(desk: Desk, saying: Saying, nodes: readonly Node[], rules: Map<string, string>): string | null {
  const parts: string[] = [];
  for (const node of nodes) {
    if ('word' in node) parts.push(node.word);
    else if ('group' in node) {
      const inner = nodesText(desk, saying, node.group, rules);
      if (inner !== null) parts.push(`[ ${inner} ]`);
    } else {
      const rule = ruleFor(desk, saying, node, rules);
      if (rule === null) return null;
      parts.push(`<${rule}>`);
    }
  }
  return parts.join(' ');
}
function ruleFor(
  desk: Desk,
  saying: Saying,
  { slot, type }: { slot: string; type: string },
  rules: Map<string, string>,
): string | null {
  const own = saying.row.spokenFor?.[slot] || /[| ]/.test(type);
  const name = (own ? `${saying.row.id}-${slot}` : type).replace(/[^a-z]/g, '');
  if (rules.has(name)) return name;
  const compound = own ? undefined : compounds[type];
  if (type === figureByFigure) rules.set(name, `( ${digitWords.join(' | ')} )+`);
  else if (compound) rules.set(name, nodesText(desk, saying, compound.nodes, rules) ?? '');
  else {
    const ways = waysToSay(desk, saying, slot, type).map(({ say }) => say);
    if (ways.length === 0) return null;
    rules.set(name, ways.join(' | '));
  }
  return name;
}
