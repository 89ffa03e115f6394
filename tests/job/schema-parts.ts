// What a schema is made of, as the schema library holds it and does not type it: for tests that fill one by its shape.
import type { z } from 'zod';

export type Def = {
  type: string;
  shape?: Record<string, z.ZodType>;
  values?: unknown[];
  entries?: Record<string, string>;
  innerType?: z.ZodType;
  element?: z.ZodType;
  items?: z.ZodType[];
  options?: z.ZodType[];
};
export const defOf = (schema: z.ZodType): Def => schema.def as unknown as Def;
