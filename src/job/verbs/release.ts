// Verbs on how the job stands: waiting, resumed, released, reopened, left unreleased. What keeps it from release is
// counted in open-points.ts.
import * as z from 'zod';
import { no } from '../guards.ts';
import { openPoints } from '../open-points.ts';
import { personSchema, reasonSchema } from '../reasons.ts';
import { subjectText } from '../subjects.ts';
import { toldOnce } from '../told-once.ts';
import { verb } from '../verb.ts';
import { gate, nothing, vehicleOf } from './car.ts';

const wait = verb(
  'wait',
  () => z.strictObject({ who: personSchema, because: reasonSchema, until: z.string().max(40).optional() }),
  [],
  (_s, said) => [{ kind: 'job-waiting', ...said }],
);
const resume = verb(
  'resume',
  nothing,
  [
    {
      code: 'not-waiting',
      rule: 'T8',
      kind: 'footing',
      needs: [],
      check: (s) => (vehicleOf(s)?.waiting ? null : no('the job is not waiting', 'go on')),
    },
  ],
  () => [{ kind: 'job-resumed' }],
);

/** X1, X2: nothing overrides it. */
const release = verb(
  'release',
  () => z.strictObject({ who: personSchema }),
  [
    gate('open-points', 'X1', (s) => {
      const open = openPoints(s.ledger, s.now);
      const told = toldOnce(s.ledger, open);
      const [first] = told;
      const because = `${told.length} open: ${first ? `${subjectText(first.at)}, ${first.because}` : ''}`;
      return first
        ? no(
            because,
            'close what is open',
            open.map((p) => p.at),
          )
        : null;
    }),
  ],
  (_s, said) => [{ kind: 'released', ...said }],
);
const reopen = verb(
  'reopen',
  () => z.strictObject({ who: personSchema, because: reasonSchema }),
  [
    {
      code: 'not-released',
      rule: 'X3',
      kind: 'footing',
      needs: [],
      check: (s) => (vehicleOf(s)?.releasedAt || vehicleOf(s)?.left ? null : no('the job is not released', 'go on')),
    },
  ],
  (_s, said) => [{ kind: 'reopened', ...said }],
);
const leave = verb(
  'leave-unreleased',
  () => z.strictObject({ who: personSchema, because: reasonSchema }),
  [],
  (_s, said) => [{ kind: 'left-unreleased', ...said }],
);

export const releaseVerbs = [wait, resume, release, reopen, leave];
