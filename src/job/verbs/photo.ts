// A photograph noted by its file and the digest of its bytes. Whoever says it has looked at the file; the job never does.

import * as z from 'zod';
import { photoShape } from '../entries/works.ts';
import { verb } from '../verb.ts';

const note = verb(
  'note-photo',
  () => z.strictObject(photoShape),
  [],
  (_s, said) => [{ kind: 'photo-noted', ...said }],
);

export const photoVerbs = [note];
