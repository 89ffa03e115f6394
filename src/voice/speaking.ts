// Answers spoken by whichever speaking program is there. The newest answer wins: what is still being said is broken off.
import { type ChildProcess, spawn } from 'node:child_process';
import { isOnPath } from './pocketsphinx.ts';

const speakers: readonly { program: string; args(text: string): string[] }[] = [
  { program: 'espeak-ng', args: (text) => ['-v', 'en', '--', text] },
  { program: 'spd-say', args: (text) => ['--wait', '--', text] },
  { program: 'say', args: (text) => ['--', text] },
];
export const howToGetSpeech = 'speaking needs espeak-ng, spd-say or say: "apt-get install espeak-ng"';

export type Mouth = { say(text: string): void; hush(): void; isSpeaking(): boolean };

/** Undefined where no speaking program is there. `after` is told when it has fallen silent. */
export function createMouth(
  after: () => void = () => {},
  found = speakers.find(({ program }) => isOnPath(program)),
): Mouth | undefined {
  if (!found) return undefined;
  let saying: ChildProcess | undefined;
  const hush = (): void => {
    const old = saying;
    saying = undefined;
    old?.kill();
  };
  return {
    hush,
    isSpeaking: () => saying !== undefined,
    say(text) {
      hush();
      const mine = spawn(found.program, found.args(text), { stdio: 'ignore' });
      saying = mine;
      const ended = (): void => {
        if (saying !== mine) return;
        saying = undefined;
        after();
      };
      mine.on('exit', ended);
      mine.on('error', ended);
    },
  };
}
