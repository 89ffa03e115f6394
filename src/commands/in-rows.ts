// Words of a page for the terminal, broken into rows of eighty columns, or of as many as it has.

const usualColumns = 80;

/** @param under how far the rows after the first stand in */
export function inRows(text: string, indent: number, under = indent, columns = usualColumns): string {
  const rows: string[] = [];
  let row = ' '.repeat(indent);
  let isEmpty = true;
  for (const word of text.split(' ')) {
    if (!isEmpty && row.length + 1 + word.length > columns) {
      rows.push(row);
      row = ' '.repeat(under);
      isEmpty = true;
    }
    row = isEmpty ? row + word : `${row} ${word}`;
    isEmpty = false;
  }
  return [...rows, row].join('\n');
}
