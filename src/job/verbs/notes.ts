// Verbs that only note: odometer, what falls due, a remark, the conditions at the bench, the clock called right.
import * as z from 'zod';
import { verb } from '../verb.ts';
import { nothing } from './car.ts';

const registration = verb(
  'note-registration',
  () => z.strictObject({ registration: z.string().min(1).max(20) }),
  [],
  (_s, said) => [{ kind: 'registration-noted', ...said }],
);
const odometer = verb(
  'note-odometer',
  () => z.strictObject({ distance: z.number().nonnegative().max(5_000_000), unit: z.enum(['km', 'mi']).optional() }),
  [],
  (_s, said) => [{ kind: 'odometer-noted', distance: said.distance, unit: said.unit ?? 'km' }],
);
const due = verb(
  'note-due',
  () =>
    z.strictObject({
      what: z.string().min(1).max(120),
      on: z.string().max(10).optional(),
      atDistance: z.number().positive().optional(),
    }),
  [],
  (_s, said) => [{ kind: 'due-noted', ...said }],
);
const remark = verb(
  'note',
  () => z.strictObject({ words: z.string().min(1).max(400) }),
  [],
  (_s, said) => [{ kind: 'note-made', ...said }],
);
const conditions = verb(
  'note-conditions',
  () => z.strictObject({ celsius: z.number().min(-40).max(60), humidityPct: z.number().min(0).max(100).optional() }),
  [],
  (_s, said) => [{ kind: 'conditions-noted', ...said }],
);
const clock = verb('confirm-clock', nothing, [], () => [{ kind: 'clock-confirmed' }]);

export const noteVerbs = [registration, odometer, due, remark, conditions, clock];
