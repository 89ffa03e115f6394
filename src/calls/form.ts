// The form of a call line: words that stand, slots that are filled, and groups that may be left out.
// "off [<hole>] [to <to:place>]" reads "off 7 to tray 2". One form serves typing, help, and saying a call back.

export type Node = { word: string } | { slot: string; type: string } | { group: readonly Node[] };

export type Token = { text: string; quoted: boolean };

/** Splits a line at spaces; a part in double quotes is one token and is never a word of a form. */
export function tokens(line: string): Token[] {
  const found: Token[] = [];
  for (const match of line.matchAll(/"([^"]*)"?|(\S+)/g)) {
    if (match[2] !== undefined) found.push({ text: match[2], quoted: false });
    else found.push({ text: match[1] ?? '', quoted: true });
  }
  return found;
}

/** Parses a form; throws on one that is badly written, which a test of the table shows. */
export function parseForm(form: string): Node[] {
  const parts = form.match(/\[|\]|<[^>]+>|[^\s[\]<>]+/g) ?? [];
  let at = 0;
  const run = (depth: number): Node[] => {
    const nodes: Node[] = [];
    while (at < parts.length) {
      const part = parts[at++] as string;
      if (part === ']') {
        if (depth === 0) throw new Error(`form "${form}": "]" without "["`);
        return nodes;
      }
      if (part === '[') nodes.push({ group: run(depth + 1) });
      else if (part.startsWith('<')) nodes.push(slotOf(part.slice(1, -1)));
      else nodes.push({ word: part });
    }
    if (depth > 0) throw new Error(`form "${form}": "[" without "]"`);
    return nodes;
  };
  return run(0);
}
function slotOf(text: string): Node {
  const colon = text.indexOf(':');
  return colon < 0 ? { slot: text, type: text } : { slot: text.slice(0, colon), type: text.slice(colon + 1) };
}

export type Slot = { slot: string; type: string; optional: boolean };
/** The forms of the table are the same for ever, and each is asked for its slots many times a key. */
const slotsOfForm = new WeakMap<readonly Node[], readonly Slot[]>();
export function slotsOf(nodes: readonly Node[]): readonly Slot[] {
  const known = slotsOfForm.get(nodes);
  if (known) return known;
  const slots = nodes.flatMap((node): readonly Slot[] => {
    if ('word' in node) return [];
    if ('slot' in node) return [{ ...node, optional: false }];
    return slotsOf(node.group).map((inner) => ({ ...inner, optional: true }));
  });
  slotsOfForm.set(nodes, slots);
  return slots;
}

/** What a reader of one slot answers: values it could be, with how many tokens each takes, best first; or why none. */
export type Reading = { value: unknown; used: number }[] | { why: string };
export type ReadSlot = (type: string, rest: readonly Token[], stops: readonly string[], args: Args) => Reading;
export type Args = Record<string, unknown>;
export type Matched = { args: Args } | { why: string };

/** Fills a form from tokens. The reason given is that of the attempt that came furthest. */
export function matchForm(nodes: readonly Node[], line: readonly Token[], read: ReadSlot): Matched {
  let furthest = -1;
  let why = 'say it otherwise';
  const blame = (at: number, because: () => string) => {
    if (at <= furthest) return;
    furthest = at;
    why = because();
  };
  const go = (todo: readonly Node[], at: number, args: Args): Args | null => {
    const [node, ...rest] = todo;
    if (!node) {
      if (at === line.length) return args;
      blame(at, () => `"${line[at]?.text}" is not expected here`);
      return null;
    }
    if ('group' in node) return go([...node.group, ...rest], at, args) ?? go(rest, at, args);
    if ('word' in node) {
      const token = line[at];
      if (token && !token.quoted && token.text.toLowerCase() === node.word) return go(rest, at + 1, args);
      blame(at, () => (token ? `"${token.text}" where "${node.word}" is expected` : `"${node.word}" is missing`));
      return null;
    }
    const reading = read(node.type, line.slice(at), stopsAfter(rest), args);
    if ('why' in reading) {
      blame(at, () => reading.why);
      return null;
    }
    for (const { value, used } of reading) {
      const done = go(rest, at + used, { ...args, [node.slot]: value });
      if (done) return done;
    }
    return null;
  };
  const args = go(nodes, 0, {});
  return args ? { args } : { why };
}

/** "km|mi", or a phrase that is there or not: "to be renewed". */
export const isChoice = (type: string): boolean => /[| ]/.test(type);
const choiceStarts = (type: string): string[] =>
  isChoice(type) ? type.split('|').map((choice) => choice.split(' ')[0] as string) : [];

/** Words that may follow a slot: where a name or a text of several words ends. */
function stopsAfter(rest: readonly Node[]): string[] {
  const stops: string[] = [];
  for (const node of rest) {
    if ('word' in node) return [...stops, node.word];
    if ('slot' in node) return [...stops, ...choiceStarts(node.type)];
    const first = node.group[0];
    if (first && 'word' in first) stops.push(first.word);
    if (first && 'slot' in first) stops.push(...choiceStarts(first.type));
  }
  return stops;
}

/** Writes a form with these values; a group is left out when one of its slots has none. Null when a slot is missing. */
export function writeForm(
  nodes: readonly Node[],
  show: (type: string, slot: string) => string | undefined,
): string | null {
  const out: string[] = [];
  for (const node of nodes) {
    if ('word' in node) out.push(node.word);
    else if ('slot' in node) {
      const text = show(node.type, node.slot);
      if (text === undefined) return null;
      out.push(text);
    } else {
      const inner = writeForm(node.group, show);
      if (inner && slotsOf(node.group).length > 0) out.push(inner);
    }
  }
  return out.join(' ');
}

/** For help: "off [HOLE] [to PLACE]". */
export function formText(nodes: readonly Node[]): string {
  return nodes
    .map((node) => {
      if ('word' in node) return node.word;
      if ('group' in node) return `[${formText(node.group)}]`;
      return isChoice(node.type) ? node.type : node.slot.toUpperCase();
    })
    .join(' ');
}
