// What is wrong with the shape of a file that a person wrote, in words of this program: what is missing, what there is no
// such field for and which was perhaps meant, what is of another kind. It knows shapes, not what they are for.
import * as z from 'zod';
import { perhaps } from '../trade/perhaps.ts';

export type ShapeFault = { what: string; at: readonly PropertyKey[]; next: string };

const correct = 'correct it, or leave it out';
const kindNames: Record<string, string> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'a set of fields',
  record: 'a set of fields',
};

/** @param noun what a field of this file is called */
export function shapeFaults(schema: z.ZodType, issues: readonly z.core.$ZodIssue[], noun: string): ShapeFault[] {
  return issues.flatMap((issue): ShapeFault[] => {
    const { path: at } = issue;
    if (issue.code === 'unrecognized_keys') {
      const known = fieldsAt(schema, at);
      return issue.keys.map((key) => {
        const meant = perhaps(key, known);
        const next = meant === '' ? 'leave it out' : 'correct its name, or leave it out';
        return { what: `there is no such ${noun}${meant}`, at: [...at, key], next };
      });
    }
    if (issue.code === 'invalid_type' && issue.input === undefined && issue.message.endsWith('undefined'))
      return [{ what: 'this is missing', at, next: 'write it' }];
    if (issue.code === 'invalid_type')
      return [{ what: `this must be ${kindNames[issue.expected] ?? issue.expected}`, at, next: correct }];
    if (issue.code === 'invalid_value')
      return [{ what: `this must be one of ${issue.values.map(String).join(', ')}`, at, next: correct }];
    return [{ what: issue.message, at, next: correct }];
  });
}

/** The names a field may have at a place of the file. */
function fieldsAt(schema: unknown, path: readonly PropertyKey[]): string[] {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodDefault || schema instanceof z.ZodPrefault)
    return fieldsAt(schema.unwrap(), path);
  const [step, ...rest] = path;
  if (schema instanceof z.ZodObject)
    return step === undefined ? Object.keys(schema.shape) : fieldsAt(schema.shape[String(step)], rest);
  if (step === undefined) return [];
  if (schema instanceof z.ZodArray) return fieldsAt(schema.element, rest);
  return schema instanceof z.ZodRecord ? fieldsAt(schema.valueType, rest) : [];
}
