// What a terminal sends, taken apart into keys and pastes. Every sequence is taken whole by its grammar, known or not, so
// that the rest of an unknown one is never mistaken for keys pressed. It knows no clock: who reads says when it is late.

/** A key by its name or its own character, or a text pasted at once. */
export type Sent = { key: string } | { pasted: string };

export type Taking = {
  /** What `text` completes. */
  take(text: string): Sent[];
  /** Something has begun that may or may not go on; `escape` alone is a key when nothing follows. */
  waiting(): 'for what follows escape' | 'for the end' | undefined;
  /** Nothing followed: what has begun is over. */
  late(): Sent[];
};

const esc = '\u001b';
const pasteOn = `${esc}[200~`;
const pasteOff = `${esc}[201~`;

// All of them as they go on behind Escape. Source: ECMA-48, 5th edition 1991, 5.4 to 5.6; "ESC [ [ x" is how Linux's
// console sends F1 to F5 (console_codes(4)), "ESC O n x" how some terminals send a key with a modifier. None is endless.
const controlSequence = /^(?:\[\[\P{Cc}|\[[0-?]{0,64}[ -/]{0,8}[@-~]|O\d?[^\d\p{Cc}])/u;
const begunSequence = /^(?:\[\[?|\[[0-?]{0,64}[ -/]{0,8}|O\d?)$/u;
/** A report of the terminal that nobody asked for, up to its end. */
const report = new RegExp(`^[\\]PX^_]\\P{Cc}{0,4096}(?:\u0007|\u009c|${esc}\\\\)`, 'u');

const finals: Record<string, string> = { A: 'up', B: 'down', C: 'right', D: 'left', H: 'home', F: 'end' };
const numbered: Record<string, string> = {
  1: 'home',
  3: 'delete',
  4: 'end',
  5: 'page-up',
  6: 'page-down',
  7: 'home',
  8: 'end',
};
// The numeric keypad where it was set to send sequences of its own (DEC, VT220 Programmer Reference, chapter 3).
const keypad: Record<string, string> = {
  ...{ M: 'enter', X: '=', ' ': 'space', I: 'tab' },
  ...Object.fromEntries([...'*+,-./0123456789'].map((character, i) => [String.fromCharCode(0x6a + i), character])),
};

const single: Record<string, string> = {
  '\r': 'enter',
  '\t': 'tab',
  '\b': 'backspace',
  '\u007f': 'backspace',
  ' ': 'space',
  '\u0003': 'ctrl+c',
  '\u0015': 'ctrl+u',
  '\u001a': 'ctrl+z',
};

/** The name of the key that sends `sequence` behind Escape; undefined for one that means nothing here. */
function named(sequence: string): string | undefined {
  if (sequence.startsWith('O')) return finals[sequence.slice(1)] ?? keypad[sequence.slice(1)];
  const parts = /^\[(\d*)(?:;(\d+))?([A-Z~])$/u.exec(sequence);
  if (!parts) return undefined;
  const [, number = '', modifiers = '1', final = ''] = parts;
  // 1 and 2 are none and Shift (XTerm Control Sequences, "PC-Style Function Keys").
  if (Number(modifiers) > 2) return undefined;
  return final === '~' ? numbered[number] : number === '' || number === '1' ? finals[final] : undefined;
}

export function taking(): Taking {
  let begun = '';
  let pasted: string | undefined;

  function next(text: string): { sent: Sent[]; used: number } | undefined {
    const one = [...text.slice(0, 2)][0] ?? '';
    const none = (used: number) => ({ sent: [], used });
    const key = (name: string | undefined, used: number) => ({ sent: name === undefined ? [] : [{ key: name }], used });
    if (one !== esc) return key(single[one] ?? (/[\p{Cc}\p{Cs}]/u.test(one) ? undefined : one), one.length);
    if (text.startsWith(pasteOn)) {
      pasted = '';
      return none(pasteOn.length);
    }
    const behind = text.slice(1);
    const whole = controlSequence.exec(behind)?.[0];
    if (whole) return key(named(whole), 1 + whole.length);
    if (behind === '' || begunSequence.test(behind)) return undefined;
    const told = report.exec(behind)?.[0];
    if (told) return none(1 + told.length);
    if (!behind.startsWith(esc)) return none(1 + ([...behind.slice(0, 2)][0] ?? '').length);
    // Alt and a key that sends a sequence; else Escape, and whatever comes after it.
    const alt = controlSequence.exec(behind.slice(1))?.[0];
    return alt ? none(2 + alt.length) : key('escape', 1);
  }

  function goOn(): Sent[] {
    const sent: Sent[] = [];
    while (begun !== '') {
      if (pasted !== undefined) {
        const end = begun.indexOf(pasteOff);
        if (end < 0) return sent;
        sent.push({ pasted: pasted + begun.slice(0, end) });
        pasted = undefined;
        begun = begun.slice(end + pasteOff.length);
        continue;
      }
      const found = next(begun);
      if (!found) return sent;
      sent.push(...found.sent);
      begun = begun.slice(found.used);
    }
    return sent;
  }

  return {
    take(text) {
      begun += text;
      return goOn();
    },
    waiting: () =>
      pasted === undefined && begun === '' ? undefined : begun === esc ? 'for what follows escape' : 'for the end',
    late() {
      const rest = begun;
      begun = '';
      if (pasted !== undefined) {
        pasted = undefined;
        return [{ pasted: rest }];
      }
      return rest === esc ? [{ key: 'escape' }] : [];
    },
  };
}
