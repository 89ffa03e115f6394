// Reads a typed line into a row of the table and its slots, and says a call back in the words of its row.

import { stateOf } from '../job/ledger.ts';
import { broughtUpAt } from '../job/passes.ts';
import { measuredSteps } from '../job/repair.ts';
import type { Said } from '../job/said.ts';
import { named } from '../job/subjects.ts';
import { trayBeforeLost } from '../job/towards-lost.ts';
import { perhaps } from '../trade/perhaps.ts';
import type { Desk } from './desk.ts';
import { type Args, formText, isChoice, matchForm, type Node, slotsOf, type Token, tokens, writeForm } from './form.ts';
import { readSaid } from './read-said.ts';
import { type Meant, meantBy, type Row } from './row.ts';
import { readSlot, showSlot } from './slots.ts';
import { formOf, rows } from './table.ts';

/** Unread: why, what to say instead, and the call that shows it; in a shell a command does. */
export type Read = { row: Row; args: Args } | { why: string; instead: string; by?: string };

/** Each way a line may begin, by its first word: the words, and how many of them say the row and nothing else. */
const beginningsOfRows = Map.groupBy(
  rows.flatMap((row) =>
    [row.id, ...row.words].map((words) => {
      const parts = words.split(' ');
      const kept = row.keepsWord && words !== row.words[0] && words !== row.id;
      return { row, parts, used: kept ? 0 : parts.length };
    }),
  ),
  ({ parts }) => parts[0],
);

/** The rows a line may begin with, the longest beginning first. */
function beginnings(line: readonly Token[]): { row: Row; used: number }[] {
  const said = line.map((t) => (t.quoted ? '"' : t.text.toLowerCase()));
  return (beginningsOfRows.get(said[0]) ?? [])
    .filter(({ parts }) => parts.every((part, i) => said[i] === part))
    .sort((a, b) => b.parts.length - a.parts.length);
}

/** A word that only begins one, as "brake" does "brake pedal firm", is gone on with; else it has a slip. */
function beginsAlike([first, ...more]: readonly Token[]): string {
  const word = first?.text.toLowerCase() ?? '';
  const [longer] = more.length === 0 ? (beginningsOfRows.get(word) ?? []) : [];
  if (longer) return `, perhaps "${longer.parts.join(' ')}"`;
  return perhaps(
    word,
    [...beginningsOfRows.keys()].flatMap((one) => (one === undefined || one === word ? [] : [one])),
  );
}
/** Fewer words are a call with a slip in it, and nothing worth a note. */
const fewestNoted = 3;
/** The call that is near: one whose words stand at the end ("coil plug 1 parted"), one whose word has a slip, else a note of it all. */
function nearest(desk: Desk, line: readonly Token[]): string {
  const all = line.map(({ text, quoted }) => (quoted ? `"${text}"` : text));
  for (let i = 1; i < line.length; i++) {
    const isCall = beginnings(line.slice(i)).some(({ used }) => used === line.length - i);
    const turned = [...all.slice(i), ...all.slice(0, i)].join(' ');
    if (isCall && 'row' in readLine(desk, turned)) return `, perhaps "${turned}"`;
  }
  const alike = beginsAlike(line);
  if (alike !== '' || line.length < fewestNoted) return alike;
  return `; as a note: "note ${all.join(' ')}"`;
}

/** "count holes 5": what is behind the word that was one too many. One word alone would be a call with nothing said. */
function withoutFirst(desk: Desk, [, ...rest]: readonly Token[]): string {
  const words = rest.map(({ text, quoted }) => (quoted ? `"${text}"` : text)).join(' ');
  return rest.length > 1 && beginnings(rest).length > 0 && 'row' in readLine(desk, words) ? `, perhaps "${words}"` : '';
}

/** Reads one line. The longest beginning that reads wins; the reason given is the longest beginning's. */
export function readLine(desk: Desk, text: string): Read {
  const said = readSaid(desk, text);
  if (said) return said;
  const line = tokens(text);
  const found = beginnings(line);
  const [first] = found;
  if (!first) {
    return {
      why: line.length === 0 ? 'nothing was said' : `"${line[0]?.text}" begins no call${nearest(desk, line)}`,
      instead: 'see all words',
      by: 'help',
    };
  }
  let why: string | undefined;
  for (const { row, used } of found) {
    // "part off" alone is that call with its name left out, and no part called "off".
    if (why !== undefined && found[0]?.used === line.length) break;
    const matched = matchForm(formOf.get(row.id) ?? [], line.slice(used), readSlot(desk));
    if ('args' in matched) return { row, args: matched.args };
    why ??= matched.why;
  }
  return { why: `${why ?? 'not understood'}${withoutFirst(desk, line)}`, instead: `as: ${usage(first.row)}` };
}

export const usage = (row: Row): string => `${row.words[0]} ${formText(formOf.get(row.id) ?? [])}`.trim();

/** What a line comes to. */
export function meantByLine(desk: Desk, text: string): { row: Row; meant: Meant } | { why: string; instead: string } {
  const read = readLine(desk, text);
  return 'why' in read ? read : { row: read.row, meant: meantBy(read.row, desk, read.args) };
}

/** A call that is proposed: what the eye is to count is not told before it has (K1, K4), and no reason is made up. */
export function nextWords(desk: Desk, next: Said): string {
  if (next.verb === 'count-trays') return `count ${(next.counts as { tray: string }[])[0]?.tray} is …`;
  if (next.verb === 'count-scrap') return 'scrap pile …';
  if (next.verb === 'count-box') return `count box ${next.name} is …`;
  if (next.verb === 'count-holes') return `holes … in ${next.area}`;
  if (next.verb === 'note-odometer') return 'odometer …';
  if (next.verb === 'repair-thread' && measuredSteps.has(String(next.step))) {
    const { millimetres: _, ...measured } = next;
    return `${wordsOf(desk, measured)} …`;
  }
  return wordsOf(desk, intoTrayInUse(withItsPass(desk, next))).replaceAll('to be said', '…');
}

/** Snug and final are two calls: one that is proposed says which of them comes. */
function withItsPass({ ledger }: Desk, next: Said): Said {
  const { verb, hole, pass } = next;
  if (verb !== 'tighten' || typeof hole !== 'string' || pass !== undefined) return next;
  return { ...next, pass: broughtUpAt(ledger, hole).pass };
}

/** No proposal knows which tray is in use: left out, it is that one. */
function intoTrayInUse(next: Said): Said {
  const { to, ...rest } = next;
  return next.verb === 'remove' && String(to).startsWith('tray:') ? rest : next;
}

/** A said in words that read back to it; its row is the one whose verb and fixed words agree. */
export function wordsOf(desk: Desk, said: Said): string {
  const found = foundWords(desk, said);
  if (found) return found;
  for (const row of rows) {
    const text = row.verb === said.verb ? inWordsOf(row, desk, said) : null;
    if (text) return text;
  }
  return otherwise(desk, said) ?? said.verb.replaceAll('-', ' ');
}

function inWordsOf(row: Row, desk: Desk, said: Said): string | null {
  const fixed = Object.entries(row.fixed ?? {});
  if (!fixed.every(([name, value]) => said[name] === value)) return null;
  const nodes = formOf.get(row.id) ?? [];
  const known = new Set([...slotsOf(nodes).map((s) => s.slot), ...fixed.map(([name]) => name), 'verb']);
  const covered = Object.keys(said).every((name) => known.has(name) || isFilled(row, desk, said, name));
  if (!covered) return null;
  const stops = wordsIn(nodes);
  const text = writeForm(nodes, (type, slot) => quotedWhere(stops, type, showSlot(desk, type, said[slot])));
  return text === null ? null : `${row.words[0]} ${text}`.trim();
}
/** A name with a word of the form in it is put in quotes, so that it is not taken apart when it is read again. */
function quotedWhere(stops: ReadonlySet<string>, type: string, text: string | undefined): string | undefined {
  const isName = !isChoice(type) && !['spec', 'hole', 'holes', 'place', 'subject', 'lines'].includes(type);
  return text !== undefined && isName && text.split(' ').some((word) => stops.has(word.toLowerCase()))
    ? `"${text}"`
    : text;
}
const wordsIn = (nodes: readonly Node[]): Set<string> =>
  new Set(nodes.flatMap((node) => ('word' in node ? [node.word] : 'group' in node ? [...wordsIn(node.group)] : [])));
const isFilled = (row: Row, desk: Desk, said: Said, name: string): boolean =>
  row.fills?.(desk, {})[name] === said[name];

/** What is lost is found: laid where nobody said it lay, it is laid in the tray in use. */
function foundWords(desk: Desk, { verb, fastener, to }: Said): string | undefined {
  const id = String(fastener);
  const isFound = verb === 'move-fastener' && stateOf(desk.ledger, 'fastener', id)?.loss && named('tray', String(to));
  if (!isFound) return undefined;
  return `found again ${id}${trayBeforeLost(desk.ledger, id) === undefined ? '' : ` in ${showSlot(desk, 'place', to)}`}`;
}

/** Verbs whose rows put their slots together in their own way. */
function otherwise(desk: Desk, said: Said): string | null {
  const hole = (h: unknown) => showSlot(desk, 'hole', h) ?? '';
  switch (said.verb) {
    case 'count-trays': {
      const [one] = said.counts as { tray: string; count: number }[];
      return one ? `count ${one.tray} is ${one.count}` : null;
    }
    case 'look-again':
      return (said.holes as string[]).length === 1
        ? `looked again at ${hole((said.holes as string[])[0])}`
        : `looked again ${(said.holes as string[])[0]?.split('/')[0] ?? ''}`;
    case 'turn-crank':
      return `turned ${(said.quarters as number) / 4}`;
    case 'remove-part':
      return `part off ${said.part}`;
    case 'lose-fastener':
      return `lost ${said.fastener}${said.reaches ? ' reaches the works' : ''}`;
    case 'move-piece':
      return `piece out ${said.piece}`;
    case 'remove':
      return `off ${hole(said.hole)} to ${showSlot(desk, 'place', said.to)}`;
    case 'order-service':
      return `service ${said.service}`;
    case 'lay-bead':
      return said.product ? `bead ${said.face} with ${said.product}` : null;
    case 'explain-bind':
      return `bind because ${said.cause}`;
    case 'move-stray':
      return `lay ${said.stray} to ${showSlot(desk, 'place', said.to)}`;
    case 'move-fastener':
      return `lay ${said.fastener} to ${showSlot(desk, 'place', said.to)}`;
    default:
      return null;
  }
}

/** The calls of one typed line, one after the other: "role mount; critical; by torque". Within quotes ";" is a sign like any. */
export const callsIn = (line: string): string[] =>
  (line.match(/(?:"[^"]*"?|[^;"])+/g) ?? []).map((call) => call.trim()).filter((call) => call !== '');
