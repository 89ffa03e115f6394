// What was perhaps meant by a word that is not known: the nearest of those that are.
import { cited } from './cited.ts';

/** How many letters make the one name of the other; none where it only goes on. */
export function stepsApart(wanted: string, name: string): number {
  if (name.startsWith(wanted) || name.includes(`-${wanted}`)) return 0;
  let before = Array.from({ length: name.length + 1 }, (_, i) => i);
  for (const [i, letter] of [...wanted].entries()) {
    const row = [i + 1];
    for (const [j, other] of [...name].entries())
      row.push(Math.min((row[j] ?? 0) + 1, (before[j + 1] ?? 0) + 1, (before[j] ?? 0) + (letter === other ? 0 : 1)));
    before = row;
  }
  return before.at(-1) ?? 0;
}

const shortBelow = cited(4, 'letters', 'chosen here');
/** So many slips of the finger in one word; in a short one fewer. */
const slipsIn = (word: string): number => (word.length < shortBelow.value ? 1 : 2);

/** `, perhaps "standing"`, or nothing where no known word is near. */
export function perhaps(word: string, known: readonly string[]): string {
  const near = word === '' ? [] : known.map((one) => ({ one, apart: stepsApart(word, one) }));
  const [first] = near.filter(({ apart }) => apart <= slipsIn(word)).sort((a, b) => a.apart - b.apart);
  return first ? `, perhaps ${JSON.stringify(first.one)}` : '';
}
