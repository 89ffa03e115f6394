// The least that can be done with a job file and still be sure of it: read it, follow its links, parse its lines, hold
// them to their schema. Nothing is folded and nothing is kept.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import * as z from 'zod';
import { declaredEntries } from '../../../src/job/entries/declared.ts';
import { fastenerEntries } from '../../../src/job/entries/fasteners.ts';
import { workEntries } from '../../../src/job/entries/works.ts';
import { lineSchema } from '../../../src/job/line.ts';

const [first, ...more] = [...declaredEntries, ...fastenerEntries, ...workEntries].map((kind) => kind.schema());
const entrySchema = z.discriminatedUnion('kind', [first as NonNullable<typeof first>, ...more]);
const wholeLine = lineSchema.extend({ entries: z.tuple([entrySchema], entrySchema) });
const linkLength = ',"link":"0123456789abcdef"}'.length;

/** How many lines of calls there are; throws where a link does not hold. */
export function readBare(path: string): number {
  const bytes = readFileSync(path);
  let digest: Uint8Array = Buffer.alloc(32);
  let lines = 0;
  for (let at = 0; at < bytes.length; ) {
    const end = bytes.indexOf(0x0a, at);
    const hex = end - '0123456789abcdef"}'.length;
    digest = createHash('sha256').update(digest).update(bytes.subarray(at, hex)).digest();
    if (Buffer.from(digest).toString('hex', 0, 8) !== bytes.toString('latin1', hex, hex + 16)) throw new Error('link');
    if (at > 0) {
      wholeLine.parse(JSON.parse(`${bytes.toString('utf8', at, end - linkLength)}}`));
      lines++;
    }
    at = end + 1;
  }
  return lines;
}
