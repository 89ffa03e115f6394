// Reads a table by the letter of RFC 4180, section 2: CR LF between records, quotes doubled inside quotes. Throws where
// the text is none.

export function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let at = 0;
  const field = (): string => {
    if (text[at] !== '"') {
      const end = /[,\r\n"]|$/.exec(text.slice(at))?.index ?? 0;
      at += end;
      if (text[at] === '"') throw new Error(`a quote inside an unquoted field at ${at}`);
      return text.slice(at - end, at);
    }
    let said = '';
    for (at++; ; at++) {
      if (at >= text.length) throw new Error('a quoted field without its end');
      if (text[at] !== '"') said += text[at];
      else if (text[at + 1] === '"') said += text[++at];
      else break;
    }
    at++;
    return said;
  };
  while (at < text.length) {
    const row = [field()];
    while (text[at] === ',') {
      at++;
      row.push(field());
    }
    if (!text.startsWith('\r\n', at)) throw new Error(`no CR LF at ${at}`);
    at += 2;
    rows.push(row);
  }
  return rows;
}
