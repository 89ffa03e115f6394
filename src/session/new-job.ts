// What is typed for a new job: the vehicle as one calls it and, behind it, its registration where that is known.
import type { OnTheShelf } from '../calls/lists/shelf.ts';
import { slugOf } from '../store/places.ts';

export type NewJob = {
  /** The name of its file, which no job on the shelf has, unless one stands there that is not released. */
  file: string;
  /** The line that brings the vehicle onto the bench. */
  line: string;
};

export const newJobTitle = 'new job: its name; where you know it, "registration AB 12" behind it';

const withRegistration = /^(.*?\S)[\s,;]+registration\s+(\S.*)$/i;
const quoted = (words: string): string => `"${words.replaceAll('"', '').trim()}"`;

/** @param shelf the jobs there are: a car that comes again is another job, beside the one of its last visit */
export function newJobOf(typed: string, shelf: readonly Pick<OnTheShelf, 'file' | 'sheet'>[]): NewJob {
  const [, vehicle = typed, registration] = withRegistration.exec(typed) ?? [];
  const label = vehicle.trim();
  const known = registration === undefined ? '' : ` registration ${quoted(registration)}`;
  return { file: freeFile(label, shelf), line: `job ${quoted(label)}${known}` };
}

/** Its file is called by what can be in the name of a file: "blue van" lies in "blue-van". */
function freeFile(label: string, shelf: Parameters<typeof newJobOf>[1]): string {
  const named = (name: string) => shelf.find(({ file = '' }) => slugOf(file) === slugOf(name));
  if (named(label)?.sheet === undefined) return label;
  let visit = 2;
  while (named(`${label} ${visit}`)) visit++;
  return `${label} ${visit}`;
}
