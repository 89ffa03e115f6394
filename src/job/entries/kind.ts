// One kind of entry: its name, and its shape, which becomes a schema when the first entry of that kind is read or written.
import * as z from 'zod';
import { later } from '../later.ts';

type Shape = z.ZodRawShape;
type SchemaOf<K extends string, S extends Shape> = z.ZodObject<{ kind: z.ZodLiteral<K> } & S, z.core.$strict>;
export type Kind<K extends string = string, S extends Shape = Shape> = { kind: K; schema(): SchemaOf<K, S> };

export const line = <K extends string, S extends Shape>(kind: K, shape: () => S): Kind<K, S> => ({
  kind,
  schema: later(() => z.strictObject({ kind: z.literal(kind), ...shape() }) as unknown as SchemaOf<K, S>),
});
