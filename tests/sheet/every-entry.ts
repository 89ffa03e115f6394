// A job in whose log every kind of entry stands with every field filled: hostile text in each that takes text. Drawn from
// the shapes themselves, so that a new kind or field is in it by itself.
import type { z } from 'zod';
import { declaredEntries } from '../../src/job/entries/declared.ts';
import { fastenerEntries } from '../../src/job/entries/fasteners.ts';
import { workEntries } from '../../src/job/entries/works.ts';
import type { Entry, EntryKind } from '../../src/job/entry.ts';
import { defOf } from '../job/schema-parts.ts';
import { newStory, type Story } from './bench-story.ts';

/** Last those after which nothing is taken, or which take lines back. */
const atTheEnd: readonly EntryKind[] = ['reopened', 'left-unreleased', 'calls-struck', 'calls-restored', 'released'];
const shapes = [...declaredEntries, ...fastenerEntries, ...workEntries].map((kind) => kind.schema());
const turn = ({ shape }: (typeof shapes)[number]): number =>
  shape.kind.value === 'job-opened' ? -1 : atTheEnd.indexOf(shape.kind.value) + 1;
export const ordered = shapes.toSorted((a, b) => turn(a) - turn(b));

export type Hostile = { story: Story; entries: readonly Entry[]; textFields: number; hostileFields: number };

/** `evil` stands wherever a shape takes it, cut or in a name where it takes it only so. */
export function everyEntry(evil: string): Hostile {
  let textFields = 0;
  let hostileFields = 0;
  const asName = evil.replace(/[\p{Cc}\p{Cf}/:]/gu, '');
  const candidates = [
    ...[200, 120, 80, 60, 40, 20, 10].map((length) => evil.repeat(20).slice(0, length)),
    evil,
    ...['', 'hole:', 'area:', 'part:', 'tray:', 'box:'].flatMap((sort) => [`${sort}${asName}`, `${sort}${asName}/1`]),
  ];
  const harmless = ['f3.1', 's3.1', 'p3.1', 'd3.1', 'a'.repeat(64), 'scrap', 'vehicle'];

  function filled(schema: z.ZodType): unknown {
    const def = defOf(schema);
    switch (def.type) {
      case 'literal':
        return def.values?.[0];
      case 'enum':
        return Object.values(def.entries ?? {})[0];
      case 'boolean':
        return true;
      case 'number':
        return [9999, 99, 20, 10, 4, 1, 0].find((n) => schema.safeParse(n).success);
      case 'string':
        return text(schema);
      case 'optional':
        return filled(def.innerType as z.ZodType);
      case 'union':
        return filled(def.options?.[0] as z.ZodType);
      case 'tuple':
        return def.items?.map(filled);
      case 'array': {
        const one = filled(def.element as z.ZodType);
        return [[one], [one, one, one, one]].find((all) => schema.safeParse(all).success) ?? [];
      }
      case 'object':
        return Object.fromEntries(Object.entries(def.shape ?? {}).map(([name, one]) => [name, filled(one)]));
      default:
        throw new Error(`no way to fill a ${def.type}`);
    }
  }
  function text(schema: z.ZodType): string {
    textFields++;
    const hostile = candidates.find((one) => schema.safeParse(one).success);
    if (hostile !== undefined) hostileFields++;
    const taken = hostile ?? harmless.find((one) => schema.safeParse(one).success);
    if (taken === undefined) throw new Error('a text that nothing here fits');
    return taken;
  }

  const story = newStory();
  const entries = ordered.map((shape) => {
    const entry = filled(shape);
    const read = shape.safeParse(entry);
    if (!read.success) throw new Error(`${shape.shape.kind.value}: ${read.error.message}`);
    story.forged(read.data as Entry);
    return read.data as Entry;
  });
  return { story, entries, textFields, hostileFields };
}
