// Verbs on what a check rotation shows: its marks, locks slid in, the tension, and the tension set anew. The turns
// themselves are called in turning.ts.
import * as z from 'zod';
import { no } from '../guards.ts';
import { rotationNeeded, runningTry, wantedOfTry } from '../rotation.ts';
import { nameSchema } from '../subjects.ts';
import { type Guard, verb } from '../verb.ts';
import { begins, drive, driveOf } from './turning.ts';

const tryRuns: Guard<{ drive: string }> = {
  code: 'no-try-runs',
  rule: 'R3',
  kind: 'footing',
  needs: ['drive'],
  check: (s, said) =>
    begins(s, said.drive) ? no('no check rotation is running', 'turn the crank, and call the turns') : null,
};
/** R5: a mark seen off when the check had passed is a fact, and fails it. */
const marksCanBeSeen: Guard<{ drive: string }> = {
  ...tryRuns,
  check(s, said) {
    const d = driveOf(s, said.drive);
    return d && !rotationNeeded(s.ledger, d) && d.tries.at(-1)?.passedAt ? null : tryRuns.check(s, said);
  },
};
const wants = (what: 'marks' | 'tension'): Guard<{ drive: string }> => ({
  code: what === 'marks' ? 'turns-not-complete' : 'marks-not-called',
  rule: 'R4',
  kind: 'gate',
  needs: ['drive'],
  check(s, said) {
    const d = driveOf(s, said.drive);
    const t = d && runningTry(s.ledger, d);
    const now = d && t ? wantedOfTry(d, t) : undefined;
    if (now === 'turns')
      return no(
        `${((t?.quarters ?? 0) / 4).toString()} of ${(t?.need ?? 8) / 4} turns made; whole pairs only`,
        'turn on in the running direction',
      );
    return what === 'tension' && now === 'marks'
      ? no('the marks are not all called', 'call each mark, on or how many teeth off')
      : null;
  },
});
const mark = verb(
  'read-mark',
  () => z.strictObject({ drive: nameSchema, mark: nameSchema, teethOff: z.number().int().min(-200).max(200) }),
  [
    marksCanBeSeen,
    wants('marks'),
    {
      code: 'no-such-mark',
      rule: 'R4',
      kind: 'footing',
      needs: ['drive', 'mark'],
      check: (s, said) =>
        driveOf(s, said.drive)?.declared?.marks.includes(said.mark)
          ? null
          : no(`${said.drive} has no mark ${said.mark}`, 'name one of its marks'),
    },
  ],
  (_s, said) => [{ kind: 'mark-read', ...said }],
);
const slide = verb('slide-locks', drive, [tryRuns, wants('marks')], (_s, said) => [{ kind: 'locks-slid', ...said }]);
const tension = verb(
  'read-tension',
  () => z.strictObject({ drive: nameSchema, how: z.enum(['pointer', 'play', 'reading']), right: z.boolean() }),
  [tryRuns, wants('tension')],
  (_s, said) => [{ kind: 'tension-read', ...said }],
);
const reset = verb(
  'reset-tension',
  drive,
  [
    {
      code: 'no-try-to-go-on-with',
      rule: 'R6',
      kind: 'footing',
      needs: ['drive'],
      check: (s, said) =>
        driveOf(s, said.drive)?.tries.at(-1)
          ? null
          : no('no check rotation was made', 'turn the crank, and call the turns'),
    },
  ],
  (_s, said) => [{ kind: 'tension-reset', ...said }],
);

export const checkingRotationVerbs = [mark, slide, tension, reset];
