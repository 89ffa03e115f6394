// Where a text stops being JSON, as a line and a column: Node's own message often names neither. It builds no value;
// JSON.parse does that.

export type JsonPlace = { line: number; column: number };

const blank = /[ \t\r\n]*/y;
const string = /"(?:[^"\\\p{Cc}]|[\u{7f}-\u{9f}]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/uy;
const scalar = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.+-])/y;

/** Undefined where the whole text is JSON. */
export function whereJsonBreaks(text: string): JsonPlace | undefined {
  const at = breakIn(text);
  if (at === undefined) return undefined;
  const before = text.slice(0, at).split('\n');
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 };
}

function breakIn(text: string): number | undefined {
  let at = 0;
  const matches = (wanted: RegExp) => {
    wanted.lastIndex = at;
    if (!wanted.test(text)) return false;
    at = wanted.lastIndex;
    return true;
  };
  const take = (wanted: RegExp) => matches(blank) && matches(wanted);
  const takeKey = () => take(string) && take(/:/y);

  const open: ('}' | ']')[] = [];
  for (;;) {
    if (take(/\{/y)) {
      if (!take(/\}/y)) {
        open.push('}');
        if (!takeKey()) return at;
        continue;
      }
    } else if (take(/\[/y)) {
      if (!take(/\]/y)) {
        open.push(']');
        continue;
      }
    } else if (!take(string) && !take(scalar)) return at;

    // A value has ended: a comma brings the next, a bracket ends what it stood in.
    for (let comma = false; !comma; ) {
      const closing = open.at(-1);
      if (closing === undefined) return take(/$/y) ? undefined : at;
      comma = take(/,/y);
      if (comma && closing === '}' && !takeKey()) return at;
      if (!comma && !take(closing === '}' ? /\}/y : /\]/y)) return at;
      if (!comma) open.pop();
    }
  }
}
