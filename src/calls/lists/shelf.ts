// The shelf: one row a job, the latest first, those that cannot be opened behind all others. A name that stands twice is
// told apart by its file and its day; a row that is picked says what else its file is called, what it is, and the way on.
import { cap } from '../key-caps.ts';
import type { Listed } from '../listed.ts';

export type OnTheShelf = {
  /** What the job goes by, as the head of its screens says; of one that cannot be read, its file. */
  name: string;
  path: string;
  /** How it stands, or in a few words why it cannot be opened. */
  said: string;
  /** When its file was last written, as it is shown. */
  changed?: string;
  /** The name of its file, without folder and ending. */
  file?: string;
  /** Of a released job, the command that prints its sheet. */
  sheet?: string;
  broken?: {
    /** All of it: what, where, and the command that brings it back. */
    why: string;
    /** A copy that may be looked at. */
    copy?: { path: string; said: string };
  };
};

export function shelfRows(shelf: readonly OnTheShelf[]): Listed[] {
  const times = (name: string) => shelf.filter((one) => one.name === name && !one.broken).length;
  return [...shelf.filter((one) => !one.broken), ...shelf.filter((one) => one.broken)].map((one) =>
    one.broken ? brokenRow(one, one.broken) : soundRow(one, times(one.name) > 1),
  );
}

const soundRow = ({ name, path, said, changed, file, sheet }: OnTheShelf, isTwice: boolean): Listed => ({
  key: path,
  mark: 'plain',
  name: '',
  text: isTwice && file !== undefined ? `${name}, file ${file}` : name,
  end: [said, changed].filter(Boolean).join('   '),
  ...moreOf([
    file !== undefined && file !== inFileNames(name) && `Its file, as a command takes it: ${file}`,
    sheet !== undefined && `Its sheet: ${sheet}`,
  ]),
  picks: {},
});
const moreOf = (said: readonly (string | false)[]): Pick<Listed, 'more'> => {
  const more = said.filter((one) => one !== false).join('. ');
  return more === '' ? {} : { more };
};
/** Accents are left to differ: then the file is named too, which is never wrong. */
const inFileNames = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');

const brokenRow = ({ name, path, said, changed }: OnTheShelf, { why, copy }: NonNullable<OnTheShelf['broken']>) =>
  ({
    key: path,
    mark: 'plain',
    name: '',
    text: `! ${name}: ${said}`,
    ...(changed !== undefined && { end: changed }),
    more: copy ? `${cap.take} opens to look only: ${copy.said}. ${why}` : why,
    picks: {},
  }) satisfies Listed;
