// Joins the bench with ears and mouth: what is heard goes in, answers are spoken, and while it speaks it is deaf.
import type { Bench } from '../session/bench-shape.ts';
import { type Ears, listenByMicrophone, listenWith } from '../voice/ears.ts';
import { type Grammar, grammarOf } from '../voice/grammar.ts';
import { guessedIn, howToGetOne } from '../voice/pocketsphinx.ts';
import { createMouth, howToGetSpeech } from '../voice/speaking.ts';

/** How the program is to listen: not at all, by its own adapter, or by a program of the workshop's. */
export type ByVoice = { listen?: boolean; listenWith?: string };
export const voiceDoors = (): { howToHear: string; howToSpeak?: string } => ({
  howToHear: `The program was not started with --listen; ${howToGetOne}.`,
  ...(createMouth() === undefined && { howToSpeak: howToGetSpeech }),
});
/** After the last word the room still sounds. */
const afterSoundMs = 300;

/** Starts what was asked for; gives back how all of it is ended. */
export function joinVoice(bench: Bench, { listen = false, listenWith: command }: ByVoice): () => void {
  let ears: Ears | undefined;
  let echo: NodeJS.Timeout | undefined;
  let renew: (() => void) | undefined;
  const mouth = createMouth(() => {
    echo = setTimeout(() => ears?.deaf(false), afterSoundMs);
  });
  const listening = {
    grammar: (): Grammar => grammarOf(bench.desk(), bench.heed()),
    heard: bench.hear,
    failed: (why: string) => bench.ears(false, `Listening ended: ${why}. The keys go on as before.`),
  };
  if (command !== undefined) {
    const own = listenWith(command, listening);
    ears = own;
    renew = own.renew;
    bench.ears(true);
  } else if (listen) {
    const found = listenByMicrophone(listening);
    if ('why' in found) bench.ears(false, `${found.why}. The keys go on as before.`);
    else ears = found;
    if (ears) bench.ears(true);
  }
  const warn = ears && command === undefined ? warnsOfGuesses(bench, () => grammarOf(bench.desk())) : undefined;
  warn?.();
  let answered: unknown = bench.store.getState().session?.store.getState().answer;
  let told = bench.store.getState().heard;
  function say(text: string): void {
    if (!mouth || !bench.store.getState().speaking) return;
    clearTimeout(echo);
    ears?.deaf(true);
    mouth.say(text);
  }
  function onChange(): void {
    renew?.();
    warn?.();
    const { session, heard, speaking } = bench.store.getState();
    if (!speaking) mouth?.hush();
    const answer = session?.store.getState().answer;
    if (answer && answer !== answered) {
      answered = answer;
      if ('tooQuick' in answer) say('too quick to have been read. once more');
      else if (answer.kind === 'refused') say(`no. ${answer.text}. ${answer.instead}`);
      else if (answer.kind === 'asked') say(`${answer.text}. ${answer.instead}. The same key again ${answer.again}`);
      else if (answer.kind !== 'step') say(answer.text);
    } else if (heard !== undefined && heard !== told) say(heard);
    told = heard;
  }
  let following: (() => void) | undefined;
  let followed = bench.store.getState().session;
  following = followed?.store.subscribe(onChange);
  const leave = bench.store.subscribe(({ session }) => {
    if (session !== followed) {
      following?.();
      followed = session;
      following = session?.store.subscribe(onChange);
    }
    onChange();
  });
  return () => {
    leave();
    following?.();
    clearTimeout(echo);
    mouth?.hush();
    ears?.stop();
  };
}

/** A name is told once, when listening starts or when it comes up; not before the key that brought it was painted. */
export function warnsOfGuesses(
  bench: Pick<Bench, 'desk' | 'tell' | 'store'>,
  grammar: () => Grammar,
  guessed = guessedIn,
): () => void {
  const told = new Set<string>();
  let lines = -1;
  return () => {
    const { length } = bench.desk().ledger.lines;
    if (bench.store.getState().session === undefined || length === lines) return;
    lines = length;
    setImmediate(() => {
      const fresh = guessed(grammar()).filter((word) => !told.has(word));
      for (const word of fresh) told.add(word);
      if (fresh.length > 0) bench.tell(guessedText(fresh));
    });
  };
}
export const guessedText = (words: readonly string[]): string =>
  `Not in the dictionary, so listened for as spelt: ${words.join(', ')}. If it is not understood, call it by key.`;
