// plans schema: the JSON Schema of a plan file, for editors.
import { planSchemaForEditors } from '../plan/editor-schema.ts';
import { exits, type Out, type Parsed } from './answer.ts';

export async function schemaOfPlans(_names: readonly string[], _args: Parsed, out: Out): Promise<number> {
  out.write(`${JSON.stringify(planSchemaForEditors(), null, 2)}\n`);
  return exits.fine;
}
