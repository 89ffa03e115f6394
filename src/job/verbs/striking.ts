// Verbs that strike lines of the log and restore them (U1, U2).
import * as z from 'zod';
import { no } from '../guards.ts';
import { later } from '../later.ts';
import { leaningOn, struckAlready, unstrikable } from '../striking.ts';
import { type Guard, verb } from '../verb.ts';

const linesTaken = later(() => z.strictObject({ lines: z.array(z.number().int().positive()).min(1).max(200) }));
type Lines = z.infer<ReturnType<typeof linesTaken>>;
const thereAre = (wanted: 'struck' | 'standing'): Guard<Lines> => ({
  code: wanted === 'struck' ? 'not-struck' : 'no-such-line',
  rule: 'U1',
  kind: 'footing',
  needs: ['lines'],
  check(s, { lines }) {
    const wrong = lines.find((n) => n > s.ledger.lines.length || struckAlready(s.ledger, n) !== (wanted === 'struck'));
    if (wrong)
      return no(
        `line ${wrong} ${wanted === 'struck' ? 'is not struck' : 'is not there to strike'}`,
        'name a line of the log',
      );
    const never = lines.find((n) => unstrikable(s.ledger, n));
    return never
      ? no(
          `line ${never} is never struck: it opens, releases, reopens or strikes`,
          wanted === 'struck' ? 'leave it' : 'restore, reopen, or correct instead',
        )
      : null;
  },
});
const leans = (kind: 'calls-struck' | 'calls-restored'): Guard<Lines> => ({
  code: 'others-lean-on-it',
  rule: 'U2',
  kind: 'footing',
  needs: ['lines'],
  check(s, { lines }) {
    const more = leaningOn(s.ledger, lines, kind);
    return more.length > 0
      ? no(
          `${more.length === 1 ? 'line' : 'lines'} ${more.join(', ')} would have no footing`,
          kind === 'calls-struck' ? 'strike them all together' : 'restore what it stands on too',
          more.map((n) => `line:${n}`),
        )
      : null;
  },
});
const strike = verb('strike', linesTaken, [thereAre('standing'), leans('calls-struck')], (_s, { lines }) => [
  { kind: 'calls-struck', lines },
]);
const restore = verb('restore', linesTaken, [thereAre('struck'), leans('calls-restored')], (_s, { lines }) => [
  { kind: 'calls-restored', lines },
]);

export const strikingVerbs = [strike, restore];
