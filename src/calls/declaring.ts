// How a call that only says what there is comes to a declaration.
import type { Entry } from '../job/entry.ts';
import type { Meant } from './row.ts';

export const declare = (...entries: (Entry | undefined)[]): Meant => ({
  say: { verb: 'declare', entries: entries.filter((e) => e !== undefined) },
});
export const noArea: Meant = { no: { because: 'no area is in use', instead: 'say which, "area NAME"' } };
