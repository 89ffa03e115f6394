// A typed call line as it would be said: the saying that reads to the same, on the job as it stands.
import { isDeepStrictEqual } from 'node:util';
import type { Desk } from '../../src/calls/desk.ts';
import type { Args, Node } from '../../src/calls/form.ts';
import { readLine } from '../../src/calls/line-reader.ts';
import { readSaid } from '../../src/calls/read-said.ts';
import { figureByFigure, lengthInWords, type Saying, sayings, waysToSay } from '../../src/calls/sayings.ts';
import { asSaid, digitWords } from '../../src/calls/spoken-words.ts';
import { areaOf } from '../../src/job/subjects.ts';

/** Undefined where it can only be typed. A hole of another area takes a phrase more before it. */
export function saidAs(desk: Desk, line: string): string[] | undefined {
  const read = readLine(desk, line);
  if ('why' in read) return undefined;
  const { hole, at } = read.args;
  const place = typeof hole === 'string' ? hole : typeof at === 'string' ? at.replace(/^hole:/, '') : undefined;
  const area = place?.includes('/') ? areaOf(place) : undefined;
  const there = area === undefined || area === desk.facing.area ? desk : { ...desk, facing: { ...desk.facing, area } };
  for (const saying of sayings.filter(({ row }) => row.id === read.row.id)) {
    for (const phrase of phrasesOf(there, saying, saying.nodes, read.args)) {
      const back = readSaid(there, phrase);
      if (back && isDeepStrictEqual(back.args, read.args)) {
        return there === desk ? [phrase] : [`work on the ${asSaid(area as string)} from here`, phrase];
      }
    }
  }
  return undefined;
}
function phrasesOf(desk: Desk, saying: Saying, nodes: readonly Node[], args: Args): string[] {
  const [node, ...rest] = nodes;
  if (!node) return [''];
  const after = phrasesOf(desk, saying, rest, args);
  const before =
    'word' in node
      ? [node.word]
      : 'group' in node
        ? ['', ...phrasesOf(desk, saying, node.group, args)]
        : waysFor(desk, saying, node.slot, node.type, args);
  return before.flatMap((one) => after.map((two) => `${one} ${two}`.trim().replace(/ +/g, ' ')));
}
function waysFor(desk: Desk, saying: Saying, slot: string, type: string, args: Args): string[] {
  const value = args[slot];
  if (value === undefined) return [];
  const figures = [value].flat().map(String).join('');
  if (type === figureByFigure) return [[...figures].map((figure) => digitWords[Number(figure)]).join(' ')];
  if (type === 'spec') return [specSaid(value as Record<string, unknown>)];
  const written =
    String(value)
      .split('/')
      .at(-1)
      ?.replace(/^tray:/, '') ?? '';
  const ways = waysToSay(desk, saying, slot, type, args);
  const fitting = ways.filter(({ as }) => as === written || as === value || as.endsWith(` ${written}`));
  return (fitting.length > 0 ? fitting : ways.slice(0, 40)).map(({ say }) => say);
}
function specSaid({ kind, head, thread, lengthMm, class: strength }: Record<string, unknown>): string {
  const [, diameter, pitch] = /^M([\d.]+)(?:x([\d.]+))?/.exec(String(thread ?? '')) ?? [];
  const by = `em ${diameter} ${pitch ? `pitch ${pitch}` : ''} by ${lengthInWords(Number(lengthMm))}`;
  const long = lengthMm === undefined ? '' : by;
  return asSaid(`${kind} ${head ?? ''} ${long} ${strength ? `class ${strength}` : ''}`).replace('by by', 'by');
}
