// Lines of text in eighty columns: wrapping, labels, headings. It counts the cells a terminal gives each character and
// knows nothing of jobs.

export const columns = 80;

/**
 * Characters that take two cells: scripts of East Asia and pictographs, in whole blocks.
 * Source: Unicode Standard Annex #11, East Asian Width, classes W and F; blocks rounded outwards.
 */
const wide =
  /[\u{1100}-\u{115F}\u{2E80}-\u{303E}\u{3041}-\u{33FF}\u{3400}-\u{4DBF}\u{4E00}-\u{9FFF}\u{A000}-\u{A4CF}\u{A960}-\u{A97F}\u{AC00}-\u{D7A3}\u{F900}-\u{FAFF}\u{FE30}-\u{FE6F}\u{FF00}-\u{FF60}\u{FFE0}-\u{FFE6}\u{1F300}-\u{1FAFF}\u{20000}-\u{3FFFD}]/u;
const riding = /[\p{Mn}\p{Me}\p{Cf}]/u;

const cellsOf = (character: string): number => (riding.test(character) ? 0 : wide.test(character) ? 2 : 1);
export function cells(text: string): number {
  let sum = 0;
  for (const character of text) sum += cellsOf(character);
  return sum;
}
export const padded = (text: string, width: number): string => text + ' '.repeat(Math.max(0, width - cells(text)));

/** The start of `text` that fits into `width` cells, at least one character, and the rest. */
function cut(text: string, width: number): [string, string] {
  let taken = '';
  let sum = 0;
  for (const character of text) {
    sum += cellsOf(character);
    if (sum > width && taken !== '') break;
    taken += character;
  }
  return [taken, text.slice(taken.length)];
}

/** `text` after `first`, wrapped; lines after the first begin below the text. A word too long for a line is cut. */
export function wrapped(first: string, text: string, width: number = columns): string[] {
  const indent = ' '.repeat(cells(first));
  const room = width - cells(first);
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').filter((w) => w !== '')) {
    let rest = word;
    if (line !== '' && cells(line) + 1 + cells(rest) > room) {
      lines.push(line);
      line = '';
    }
    while (cells(rest) > room) {
      const [start, more] = cut(rest, room);
      lines.push(start);
      rest = more;
    }
    line = line === '' ? rest : `${line} ${rest}`;
  }
  if (line !== '' || lines.length === 0) lines.push(line);
  return lines.map((one, i) => `${i === 0 ? first : indent}${one}`.trimEnd());
}

/** A headline: further lines are indented, so that no text wrapped into it can pass for a headline of its own. */
export function headed(text: string): string[] {
  const [first = '', ...rest] = wrapped('', text, columns - 4);
  return [first, ...rest.map((line) => `    ${line}`)];
}

/** One thing in a list. */
export const point = (text: string): string[] => wrapped('  - ', text);
/** What belongs to the thing above it. */
export const under = (text: string): string[] => wrapped('    ', text);

const labelWidth = 16;
export const labelled = (label: string, text: string): string[] => wrapped(padded(label, labelWidth), text);

/** A section, or nothing when it has no lines. */
export const section = (title: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : ['', `${title} `.padEnd(columns, '-'), ...lines];
