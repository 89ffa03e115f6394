// What a terminal sends for each key that is not itself a character, whatever the key means.

const sequences = {
  Enter: '\r',
  Escape: '\u001b',
  Tab: '\t',
  Backspace: '\u007f',
  Space: ' ',
  Up: '\u001b[A',
  Down: '\u001b[B',
  Right: '\u001b[C',
  Left: '\u001b[D',
  Home: '\u001b[H',
  End: '\u001b[F',
  Insert: '\u001b[2~',
  Delete: '\u001b[3~',
  PageUp: '\u001b[5~',
  PageDown: '\u001b[6~',
  'Shift+Tab': '\u001b[Z',
  F1: '\u001bOP',
  F2: '\u001bOQ',
  F3: '\u001bOR',
  F4: '\u001bOS',
  F5: '\u001b[15~',
  F6: '\u001b[17~',
  F7: '\u001b[18~',
  F8: '\u001b[19~',
  F9: '\u001b[20~',
  F10: '\u001b[21~',
  F11: '\u001b[23~',
  F12: '\u001b[24~',
  'Ctrl+F1': '\u001b[1;5P',
} as const;

/** The bytes of one key: a name of the table, `Ctrl+c`, `Alt+x`, or the character itself. */
export function bytesOf(key: string): string {
  if (Object.hasOwn(sequences, key)) return sequences[key as keyof typeof sequences];
  const modified = /^(Ctrl|Alt)\+(.)$/u.exec(key);
  if (modified !== null) {
    const [, modifier, letter = ''] = modified;
    return modifier === 'Alt' ? `\u001b${letter}` : String.fromCharCode(letter.toUpperCase().charCodeAt(0) & 31);
  }
  if ([...key].length === 1) return key;
  throw new Error(`no key is called ${JSON.stringify(key)}; to send several characters at once use type()`);
}
