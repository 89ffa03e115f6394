// Reads a phrase, heard or typed, by the sayings: which row it calls, and with what in its slots.
import type { Desk } from './desk.ts';
import { type Args, matchForm, type Node, type Reading, slotsOf, tokens } from './form.ts';
import type { Row } from './row.ts';
import { compounds, figureByFigure, type Saying, sayings, waysToSay } from './sayings.ts';
import { readSlot } from './slots.ts';
import { digitWords } from './spoken-words.ts';
import { formOf } from './table.ts';

const beginningWith: ReadonlyMap<string | undefined, readonly Saying[]> = Map.groupBy(sayings, ({ nodes: [first] }) =>
  first && 'word' in first ? first.word : undefined,
);

/** Reads a phrase by the sayings; undefined when it is none of them as a whole. */
export function readSaid(desk: Desk, text: string): { row: Row; args: Args } | undefined {
  const words = tokens(text);
  if (words.some((word) => word.quoted)) return undefined;
  const said = words.map((word) => ({ ...word, text: word.text.toLowerCase() }));
  for (const saying of beginningWith.get(said[0]?.text) ?? []) {
    const types = new Map(slotsOf(formOf.get(saying.row.id) ?? []).map(({ slot, type }) => [slot, type]));
    const matched = matchForm(saying.nodes.map(named), said, (at, rest, _stops, args): Reading => {
      const [slot = '', type = ''] = at.split('\n');
      const written = writtenFor(
        desk,
        saying,
        slot,
        type,
        rest.map((word) => word.text),
        args,
      );
      const found = written.flatMap(({ as, used }) => {
        const reading = readSlot(desk)(types.get(slot) ?? type, tokens(as), [], args);
        const whole = 'why' in reading ? undefined : reading.find((one) => one.used === tokens(as).length);
        return whole ? [{ value: whole.value, used }] : [];
      });
      return found.length > 0 ? found : { why: 'nothing of that name is here' };
    });
    if ('args' in matched) return { row: saying.row, args: matched.args };
  }
  return undefined;
}
/** The reader is told the slot's own name besides its type. */
function named(node: Node): Node {
  if ('word' in node) return node;
  return 'group' in node ? { group: node.group.map(named) } : { slot: node.slot, type: `${node.slot}\n${node.type}` };
}
function writtenFor(
  desk: Desk,
  saying: Saying,
  slot: string,
  type: string,
  said: readonly string[],
  args: Args,
): { as: string; used: number }[] {
  if (type === figureByFigure) {
    const end = said.findIndex((word) => !digitWords.includes(word));
    const used = end < 0 ? said.length : end;
    return used > 0
      ? [
          {
            as: said
              .slice(0, used)
              .map((word) => digitWords.indexOf(word))
              .join(''),
            used,
          },
        ]
      : [];
  }
  const compound = compounds[type];
  if (compound && !saying.row.spokenFor?.[slot]) return writtenTogether(desk, saying, compound, said);
  return waysToSay(desk, saying, slot, type, args)
    .flatMap(({ say, as }) => {
      const words = say.split(' ');
      return words.every((word, i) => said[i] === word) ? [{ as, used: words.length }] : [];
    })
    .sort((a, b) => b.used - a.used);
}
/** The longest beginning of what was said that the parts of a compound make up. */
function writtenTogether(
  desk: Desk,
  saying: Saying,
  { nodes, written }: (typeof compounds)[string],
  said: readonly string[],
): { as: string; used: number }[] {
  for (let used = said.length; used > 0; used--) {
    const line = said.slice(0, used).map((text) => ({ text, quoted: false }));
    const matched = matchForm(nodes, line, (type, rest) => {
      const found = writtenFor(
        desk,
        saying,
        '',
        type,
        rest.map((word) => word.text),
        {},
      );
      return found.length > 0 ? found.map(({ as, used }) => ({ value: as, used })) : { why: 'not a part of it' };
    });
    if ('args' in matched) return [{ as: written(matched.args), used }];
  }
  return [];
}
