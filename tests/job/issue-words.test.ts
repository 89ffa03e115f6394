// What is wrong with a value from outside is told in words of the house: for every kind of fault that a schema can find.
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { verbs } from '../../src/job/decide.ts';
import { declaredEntries } from '../../src/job/entries/declared.ts';
import { fastenerEntries } from '../../src/job/entries/fasteners.ts';
import { workEntries } from '../../src/job/entries/works.ts';
import { issueWords } from '../../src/job/issue-words.ts';
import { lineSchema } from '../../src/job/line.ts';
import { planSchema } from '../../src/plan/plan.ts';
import { settingsSchema } from '../../src/store/settings.ts';
import { bench } from './bench.ts';
import { defOf } from './schema-parts.ts';

const told = (schema: z.ZodType, value: unknown): string[] =>
  (schema.safeParse(value).error?.issues ?? []).map((issue) => {
    const { what, at } = issueWords(issue, value);
    return `${at.map(String).join('.')}: ${what}`;
  });

const bead = z.union([z.literal(true), z.number().int().min(2).max(8)]);
const stages = z.union([
  z.strictObject({ degrees: z.number().max(720) }),
  z.strictObject({ newtonMetres: z.number().positive().max(2000) }),
]);

describe('a value that may not stand where it stands', () => {
  it.each([
    [z.object({ litres: z.number() }), {}, 'litres: this is missing'],
    [z.object({ by: z.enum(['hand', 'clamp']) }), {}, 'by: this is missing'],
    [z.number(), '12', ': this must be a number, not "12"'],
    [z.number().int(), 1.5, ': this must be a whole number, not 1.5'],
    [z.enum(['hand', 'clamp']), 'tooth', ': this must be one of hand, clamp, not "tooth"'],
    [z.literal(true), 3, ': this must be true, not 3'],
    [z.number().max(200), 500, ': 500 is too much: at most 200'],
    [z.number().lt(200), 200, ': 200 is too much: less than 200'],
    [z.number().positive(), 0, ': 0 is too little: more than 0'],
    [z.number().min(2), 1, ': 1 is too little: at least 2'],
    [z.number().multipleOf(2), 3, ': this must be a whole multiple of 2, not 3'],
    [z.string().max(3), 'clip', ': this text is 4 characters long: at most 3'],
    [z.string().min(1), '', ': this text is empty'],
    [z.array(z.number()).max(1), [1, 2], ': there are 2 here: at most 1'],
    [z.array(z.number()).min(1), [], ': there is none here: at least 1'],
    [z.string().regex(/^a$/), 'b', ': "b" is not written as it has to be'],
    [z.string().regex(/^a$/, 'an a, and nothing else'), 'b', ': an a, and nothing else'],
    [z.strictObject({}), { paint: 1 }, ': there is no such field: paint'],
    [
      z.record(z.string().max(2), z.number()),
      { nut: 1 },
      'nut: the name "nut": this text is 3 characters long: at most 2',
    ],
    [bead, 9, ': 9 is too much: at most 8'],
    [bead, 'two', ': this must be true or a number, not "two"'],
    [stages, { newtonMetres: 5000 }, 'newtonMetres: 5000 is too much: at most 2000'],
    [stages, { turns: 1 }, ': a set of fields is none of what may stand here'],
    [z.number(), null, ': this must be a number, not null'],
  ])('%#: %o is told with what was read and what it may be', (schema, value, words) => {
    expect(told(schema, value)).toEqual([words]);
  });

  it('is told in words of the house wherever a schema of the program stands', () => {
    const english = /Invalid|expected|Too (big|small)|Unrecognized|undefined|never|NaN/;
    const wrong = [
      undefined,
      null,
      true,
      -1e9,
      1e9,
      0.5,
      '',
      'x'.repeat(5000),
      'a/b:c',
      [],
      Array(6000).fill(0),
      {},
      { paint: 1 },
    ];
    const seen = new Set<z.ZodType>();
    const inWords = new Set<string>();
    const look = (schema: z.ZodType | undefined): void => {
      if (!schema || seen.has(schema)) return;
      seen.add(schema);
      for (const value of wrong) for (const words of told(schema, value)) inWords.add(words);
      const { shape = {}, innerType, element, items = [], options = [], ...more } = defOf(schema);
      const { valueType } = more as { valueType?: z.ZodType };
      for (const inside of [...Object.values(shape), innerType, element, valueType, ...items, ...options]) look(inside);
    };
    for (const { schema } of [...declaredEntries, ...fastenerEntries, ...workEntries]) look(schema());
    for (const verb of verbs.values()) look(verb.takes as z.ZodType);
    for (const schema of [planSchema(), settingsSchema, lineSchema]) look(schema);
    expect(seen.size).toBeGreaterThan(500);
    expect([...inWords].filter((words) => english.test(words))).toEqual([]);
    expect([...inWords].filter((words) => words.length > 300)).toEqual([]);
  });

  it('is refused at the bench by the name of its field', () => {
    const { because } = bench().no('note-conditions', { celsius: 20, humidityPct: 130 });
    expect(because).toBe('humidity %: 130 is too much: at most 100');
  });
});
