// Verbs that answer a suspicion (F2): right, then it is a finding; or meant so.
import * as z from 'zod';
import type { Entry } from '../entry.ts';
import { no } from '../guards.ts';
import { holeSchema, subjectText } from '../subjects.ts';
import { besideOf, type Suspected, suspectedAt, suspicionText } from '../suspicions.ts';
import { type Guard, type Standing, verb } from '../verb.ts';

const mostWords = 200;
const isSuspected: Guard<{ hole: string }> = {
  code: 'nothing-suspected',
  rule: 'F2',
  kind: 'rule',
  needs: ['hole'],
  check: (s, { hole }) =>
    suspectedAt(s.ledger, hole)
      ? null
      : no(`nothing is suspected of ${subjectText(`hole:${hole}`)}`, 'make a finding of it, if something is wrong'),
};
const there = (s: Standing, hole: string): Suspected => suspectedAt(s.ledger, hole) as Suspected;

const confirm = verb(
  'confirm-suspicion',
  () =>
    z.strictObject({
      hole: holeSchema,
      what: z.string().min(1).max(mostWords).optional(),
      when: z.enum(['on arrival', 'during the work']).optional(),
    }),
  [isSuspected],
  (s, { hole, what, when }): Entry[] => {
    const { fastener, suspicions } = there(s, hole);
    return [
      {
        kind: 'finding-made',
        finding: `d${s.n}.1`,
        at: `hole:${hole}`,
        what: what ?? suspicionText(suspicions).slice(0, mostWords),
        when: when ?? 'on arrival',
        fastener,
        wrongOne: true,
      },
    ];
  },
);

const dismiss = verb(
  'dismiss-suspicion',
  () => z.strictObject({ hole: holeSchema, because: z.string().min(1).max(400).optional() }),
  [isSuspected],
  (s, { hole, because }): Entry[] => [
    {
      kind: 'suspicion-dismissed',
      hole,
      fastener: there(s, hole).fastener,
      ...besideOf(s.ledger, hole),
      because: because ?? 'meant so',
    },
  ],
);

export const suspicionVerbs = [confirm, dismiss];
