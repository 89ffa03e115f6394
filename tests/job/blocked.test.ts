// A key is dimmed by half a call: what the cursor knows already. Whatever half that is, asking never throws.
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { blocked, verbs } from '../../src/job/decide.ts';
import { demoLedger } from '../demo/at-hand.ts';

const guesses: unknown[] = [
  'cam cover/7',
  'f12.1',
  'd65.1',
  's9.1',
  'p9.1',
  'tray:1',
  'hole:cam cover/7',
  'scrap',
  1,
  true,
  ['cam cover/7'],
  [1],
  ['magnet'],
  [{ tray: '1', count: 0 }],
  [{ kind: 'area-declared', area: 'cam cover' }],
  { thread: 'M6' },
  { by: 'hand' },
];
const firstValue = (schema: z.ZodType): unknown => {
  const guess = guesses.find((one) => schema.safeParse(one).success);
  if (guess !== undefined) return guess;
  const options = (schema as unknown as { options?: readonly unknown[] }).options;
  return options?.[0];
};

describe('blocked', () => {
  const { ledger, now } = demoLedger();
  it.each([...verbs])('takes any half of %s', (id, verb) => {
    const { shape = {} } = verb.takes as unknown as { shape?: Record<string, z.ZodType> };
    const whole = Object.fromEntries(Object.entries(shape).map(([key, schema]) => [key, firstValue(schema)]));
    const keys = Object.keys(whole);
    const halves = [
      [],
      ...keys.map((key) => [key]),
      ...keys.map((key) => keys.filter((one) => one !== key)),
      ...keys.flatMap((a) => keys.map((b) => [a, b])),
      keys,
    ];
    for (const half of halves) {
      const said = Object.fromEntries(half.map((key) => [key, whole[key]]));
      expect(() => blocked(ledger, { verb: id, ...said }, now), half.join(' ')).not.toThrow();
    }
  });
});
