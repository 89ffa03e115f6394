// Reads a terminal in raw mode: keys by their names, one at a time however they arrive, and text pasted at once.
import { StringDecoder } from 'node:string_decoder';
import type { ReadStream } from 'node:tty';
import { type Sent, taking } from './key-sequences.ts';

/** Escape is told from the beginning of a sequence by what does not follow it. */
const escapeAloneMs = 40;
/** A slow line may part a sequence or a paste; one that never ends must not swallow the keys for ever. */
const overdueMs = 1000;

/** `inOneGo`: with others at the same moment, as a text pasted by a terminal that does not say so. */
export type Told = { key(name: string, inOneGo?: boolean): void; paste(text: string): void };

/** Tells until the returned function is called. Ctrl+Z goes to `stop`. */
export function keysOf(stdin: ReadStream, stop: () => void): (told: Told) => () => void {
  return (told) => {
    const decoder = new StringDecoder('utf8');
    const { take, waiting, late } = taking();
    let timer: NodeJS.Timeout | undefined;

    function tell(all: readonly Sent[]): void {
      for (const sent of all) {
        if ('pasted' in sent) told.paste(sent.pasted);
        else if (sent.key === 'ctrl+z') stop();
        else told.key(sent.key, all.length > 1);
      }
    }
    const onBytes = (bytes: Buffer) => {
      clearTimeout(timer);
      tell(take(decoder.write(bytes)));
      const what = waiting();
      // Escape pressed in a paste that never ends leads out of it as it leads out of everything.
      const alone = bytes.length === 1 && bytes[0] === 0x1b;
      if (what) timer = setTimeout(() => tell(late()), what === 'for the end' && !alone ? overdueMs : escapeAloneMs);
    };
    stdin.on('data', onBytes);
    stdin.resume();
    return () => {
      clearTimeout(timer);
      stdin.off('data', onBytes);
      stdin.pause();
    };
  };
}
