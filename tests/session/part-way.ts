// A job on the bench with words for what is said there: the reference job from its plan, as it stands before one of its
// call lines, or one that was just begun.
import { upNext } from '../../src/calls/up-next.ts';
import { linesOf, playLines, scriptLines, upTo } from '../jobs/lines.ts';
import { type AtTheBench, atTheBench, lettersOf, newJob } from './at-the-bench.ts';

export type PartWay = AtTheBench & {
  /** What was answered last, in words. */
  answer(): string;
  /** Typed lines, each of which must be taken. */
  say(...lines: string[]): void;
  type(line: string): Promise<void>;
  /** What the keys would take, as it is shown. */
  shown(): string[];
};

/** @param text the first call line that is not played yet, or the nth of it */
export async function partWay(text: string, nth = 1): Promise<PartWay> {
  const lines = linesOf(playLines(upTo(scriptLines('reference-planned.calls'), text, nth)).ledger);
  const at = await atTheBench(lines);
  // What the job has to say and to ask on opening is put away.
  await at.press('escape');
  if (at.view().screen !== 'strip') await at.press('S');
  return spokenAt(at);
}

/** A job that was just begun, without a plan. */
export const fromNothing = async (): Promise<PartWay> => spokenAt(await newJob());

function spokenAt(at: AtTheBench): PartWay {
  return {
    ...at,
    answer() {
      const said = at.state().answer;
      return said && 'text' in said ? said.text : '';
    },
    say(...said) {
      for (const line of said) {
        const answer = at.session().runLine(line);
        if (answer.kind === 'refused') throw new Error(`${line}: ${answer.text}`);
      }
    },
    type: (line) => at.press('/', ...lettersOf(line), 'enter'),
    shown() {
      const { keymap, view } = at.bench.store.getState();
      return upNext(at.bench.desk(), keymap.keysOn(view.screen)).map(
        ({ bound, name }) => `${bound.row.label}: ${name}`,
      );
    },
  };
}
