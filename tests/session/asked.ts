// What tests of the keys that ask once look at: how many lines there are, what is asked, and a cover to ask it of.
import { stateOf } from '../../src/job/ledger.ts';
import { type AtTheBench, lettersOf, newJob } from './at-the-bench.ts';

export const lines = (at: AtTheBench) => at.state().ledger.lines.length;
export const asked = (at: AtTheBench) => {
  const { answer } = at.state();
  return answer?.kind === 'asked' ? `${answer.text}; ${answer.instead}; ${answer.by}; ${answer.again}` : answer?.kind;
};
export const levelIn = (at: AtTheBench, hole: string) =>
  stateOf(at.state().ledger, 'hole', hole)?.called.occupant?.level;
/** Eight drawn, 5 slack and 7 empty on arrival. */
export async function cover() {
  const at = await newJob();
  await at.press('a', ...lettersOf('cam cover'), 'enter', '0');
  for (const line of ['drawn as ring of 8', 'off 1', 'off 2', 'off 3', 'off 4', 'slack 5', 'off 6', 'missing 7'])
    at.session().runLine(line);
  return at;
}
