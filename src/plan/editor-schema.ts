// The JSON Schema of a plan file, made from what the program reads it with. It knows the shape alone: whether names,
// holes and orders fit together, only checking a plan tells.
import * as z from 'zod';
import { planSchema } from './plan.ts';

export const planSchemaForEditors = (): object => ({
  title: 'a plan of countback',
  ...z.toJSONSchema(planSchema()),
});
