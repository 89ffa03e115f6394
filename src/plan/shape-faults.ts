// What is wrong with the shape of a file that a person wrote: what there is no such field for and which was perhaps meant;
// all else as job/issue-words.ts has it. It knows shapes, not what they are for.
import * as z from 'zod';
import { issueWords } from '../job/issue-words.ts';
import { perhaps } from '../trade/perhaps.ts';

export type ShapeFault = { what: string; at: readonly PropertyKey[]; next: string };

const correct = 'correct it, or leave it out';
/**
 * @param read what the file holds
 * @param noun what a field of this file is called
 */
export function shapeFaults(
  schema: z.ZodType,
  issues: readonly z.core.$ZodIssue[],
  read: unknown,
  noun: string,
): ShapeFault[] {
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
    const { what, at: place, missing } = issueWords(issue, read);
    return [{ what, at: place, next: missing ? 'write it' : correct }];
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
