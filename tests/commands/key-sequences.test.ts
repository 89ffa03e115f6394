// Bytes of terminals taken apart into keys and pastes. The sequences are what terminals document that they send: XTerm
// Control Sequences ("PC-Style Function Keys", "Bracketed Paste Mode"), ECMA-48, console_codes(4) for Linux's console,
// and the modifiers of rxvt from memory.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Sent, taking } from '../../src/commands/key-sequences.ts';

const keys = (...all: string[]): Sent[] => all.map((key) => ({ key }));
/** All at once, then nothing more. */
const sentBy = (text: string): Sent[] => {
  const { take, late } = taking();
  return [...take(text), ...late()];
};

describe('keys of a terminal', () => {
  it.each<[string, string[]]>([
    ['a', ['a']],
    ['Ä', ['Ä']],
    ['\u{1f527}', ['\u{1f527}']],
    ['\r', ['enter']],
    ['\t', ['tab']],
    [' ', ['space']],
    ['\u007f', ['backspace']],
    ['\b', ['backspace']],
    ['\u0003', ['ctrl+c']],
    ['\u0015', ['ctrl+u']],
    ['\u001a', ['ctrl+z']],
    ['\u001b', ['escape']],
    ['\u001b\u001b', ['escape', 'escape']],
    ['\u001b[A', ['up']],
    ['\u001bOB', ['down']],
    ['\u001b[C', ['right']],
    ['\u001b[D', ['left']],
    ['\u001b[1;2A', ['up']],
    ['\u001b[H', ['home']],
    ['\u001b[1~', ['home']],
    ['\u001b[4~', ['end']],
    ['\u001b[8~', ['end']],
    ['\u001b[3~', ['delete']],
    ['\u001b[5~', ['page-up']],
    ['\u001b[6~', ['page-down']],
    ['\u001bOM', ['enter']],
    ['\u001bOk', ['+']],
    ['\u001bOp', ['0']],
    ['\u001bOy', ['9']],
  ])('%j is %j', (text, names) => {
    expect(sentBy(text)).toEqual(keys(...names));
  });

  const nothing = [
    ...['\u001bOP', '\u001b[15~', '\u001b[24~', '\u001b[[A', '\u001b[1;5P', '\u001b[2~', '\u001b[Z', '\u001b[29~'],
    // Alt, Ctrl, and both, on letters and on arrows; as xterm and as rxvt send them.
    ...['\u001ba', '\u001bÄ', '\u001b\r', '\u001b1', '\u001b[1;3A', '\u001b[1;5C', '\u001b[1;7D', '\u001b\u001b[A'],
    ...['\u0001', '\n', '\u000c', '\u001c', '\u0000', '\u0085', '\u009b'],
    // Modified keys of newer protocols, mouse and focus, and answers to questions nobody asked.
    ...['\u001b[27;5;97~', '\u001b[97;5u', '\u001b[57399u', '\u001b[<0;10;10M', '\u001b[<64;1;1m', '\u001b[I'],
    ...['\u001b[24;80R', '\u001b[?62;1;2c', '\u001b[>1;4205;0c', '\u001b[?2026;2$y', '\u001b[8;24;80t'],
    ...['\u001b]11;rgb:0000/0000/0000\u0007', '\u001b]0;R\u001b\\', '\u001bP1$r0m\u001b\\', '\u001b_Gi=1;OK\u001b\\'],
    ...['\u001b[201~', '\u001b[', '\u001b[1;', '\u001bO'],
  ];
  it.each(nothing)('%j means nothing, and what comes after it is taken', (text) => {
    expect(sentBy(text)).toEqual([]);
    const begins = /^.(?:\[[\d;]*|O)$/u.test(text);
    const { take, late } = taking();
    expect([...take(text), ...(begins ? late() : []), ...take('x\u001b[A')]).toEqual(keys('x', 'up'));
  });

  it('takes a burst one by one, and a paste as one', () => {
    expect(sentBy('ab\r\u001b[A\u001b[200~c\r\u001b[A\u001b[31md\u001b[201~e')).toEqual([
      ...keys('a', 'b', 'enter', 'up'),
      { pasted: 'c\r\u001b[A\u001b[31md' },
      ...keys('e'),
    ]);
  });

  it('waits for what may follow, and no longer than it is told', () => {
    const { take, late, waiting } = taking();
    expect(take('\u001b')).toEqual([]);
    expect(waiting()).toBe('for what follows escape');
    expect(take('[')).toEqual([]);
    expect(waiting()).toBe('for the end');
    expect(take('B')).toEqual(keys('down'));
    expect(waiting()).toBeUndefined();
    expect(take('\u001b[200~half a paste')).toEqual([]);
    expect(waiting()).toBe('for the end');
    expect(late()).toEqual([{ pasted: 'half a paste' }]);
    expect(take('x')).toEqual(keys('x'));
  });

  it('is the same however the bytes are parted', () => {
    const pieces = ['a', '\r', '\u001b[A', '\u001bOM', '\u001b[<0;10;10M', '\u001b[200~b\u001b[31m\r\u001b[201~', 'Ä'];
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...pieces), { maxLength: 12 }),
        fc.infiniteStream(fc.nat(4)),
        (all, cuts) => {
          const text = all.join('');
          const { take } = taking();
          const parted: Sent[] = [];
          for (let at = 0; at < text.length; ) {
            const length = 1 + (cuts.next().value as number);
            parted.push(...take(text.slice(at, at + length)));
            at += length;
          }
          expect(parted).toEqual(sentBy(text));
        },
      ),
    );
  });

  it('ends on whatever is thrown at it, and goes on after it', () => {
    const sharp = fc.constantFrom('\u001b', '[', ']', 'O', ';', '<', '~', '2', '0', '1', '\u0007', '\\', 'A', 'é', ' ');
    fc.assert(
      fc.property(fc.array(sharp, { maxLength: 40 }), (all) => {
        const { take, late, waiting } = taking();
        take(all.join(''));
        late();
        expect(waiting()).toBeUndefined();
        expect(take('x')).toEqual(keys('x'));
      }),
    );
  });
});
