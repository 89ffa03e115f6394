// The shape of a plan file. A plan says what there is on a kind of vehicle, in the same words in which a job's log
// declares it, written more briefly: hole ranges, and several places behind one front.
import * as z from 'zod';
import {
  areaRoles,
  driveShape,
  finishedLater,
  intervalSchema,
  productSchema,
  temporaryKinds,
} from '../job/entries/declared.ts';
import { later } from '../job/later.ts';
import { methodSchema, specSchema } from '../job/spec.ts';
import { nameSchema, subjectSchema } from '../job/subjects.ts';
import { readNumbers } from './holes-written.ts';

export const planVersion = 1;

const yes = z.literal(true).optional();
const coordinate = z.number().min(-100_000).max(100_000);
const point = z.tuple([coordinate, coordinate]);
const words = z.string().min(1).max(400);

/** "1-6", "1 2 4-6", "3 washer". */
const numbersSchema = later(() =>
  z
    .string()
    .min(1)
    .max(400)
    .superRefine((written, found) => {
      const read = readNumbers(written);
      if ('why' in read) found.addIssue({ code: 'custom', message: read.why });
    }),
);
/** Holes of several areas: `{"cam cover": "1-10"}`. */
const holesSchema = later(() => z.record(nameSchema, numbersSchema()));

const serviceSchema = later(() =>
  z.strictObject({
    service: nameSchema,
    /** Each comes with its holes, the parts held there, its connections, faces, temporaries, and drives that have it. */
    areas: z.array(nameSchema).max(100),
    /** What belongs to no area: "part:timing belt", "connection:battery earth". */
    also: z.array(subjectSchema).max(200).optional(),
    /** When it is due again, with where that figure comes from. */
    interval: intervalSchema.optional(),
  }),
);

const holeGroupSchema = later(() =>
  z.strictObject({
    numbers: numbersSchema(),
    wants: specSchema.optional(),
    slackOnly: yes,
    ownPlace: yes,
    critical: yes,
    method: methodSchema.optional(),
    later: z.enum(finishedLater).optional(),
    sprocketBolt: yes,
    tool: z.string().min(1).max(80).optional(),
    /** Where each of them sits, in the order of the numbers. */
    at: z.array(point).max(500).optional(),
  }),
);

const areaSchema = later(() =>
  z.strictObject({
    area: nameSchema,
    critical: yes,
    keepClean: yes,
    role: z.enum(areaRoles).optional(),
    method: methodSchema.optional(),
    passes: z.array(nameSchema).min(1).max(8).optional(),
    /** O3: in which order its holes are tightened. */
    order: numbersSchema().optional(),
    companions: z.array(nameSchema).max(20).optional(),
    blindHoles: yes,
    marked: yes,
    outline: z.array(point).max(200).optional(),
    holes: z.array(holeGroupSchema()).min(1).max(500),
  }),
);

/** What is bought new for these services; all of them where none is named. */
const newPartSchema = later(() =>
  z.strictObject({
    name: nameSchema,
    sort: z.enum(['fastener', 'part', 'supply']),
    quantity: z.number().int().min(1).max(5000),
    spec: specSchema.optional(),
    replaces: nameSchema.optional(),
    services: z.array(nameSchema).min(1).max(40).optional(),
  }),
);

export const planSchema = later(() =>
  z.strictObject({
    /** For editors: where they find the schema. */
    $schema: z.string().max(200).optional(),
    countback: z.literal('plan'),
    version: z.literal(planVersion),
    name: nameSchema,
    /** The vehicle family in general words. */
    vehicle: z.string().min(1).max(200),
    notes: z.array(words).max(40).optional(),
    /** Where the work can hurt or spoil something, and where that is; at "vehicle", what the owner is to know after it. */
    cautions: z
      .array(z.strictObject({ words, at: subjectSchema.optional() }))
      .max(100)
      .optional(),
    /** Where its figures come from: "lengths and threads", "torques", … */
    sources: z
      .array(z.strictObject({ of: words, from: words }))
      .max(60)
      .optional(),
    newParts: z.array(newPartSchema()).max(200).optional(),
    services: z.array(serviceSchema()).min(1).max(40),
    areas: z.array(areaSchema()).max(200),
    parts: z
      .array(z.strictObject({ part: nameSchema, heldBy: holesSchema().optional(), renew: yes }))
      .max(300)
      .optional(),
    connections: z
      .array(z.strictObject({ connection: nameSchema, area: nameSchema.optional(), circuit: nameSchema.optional() }))
      .max(300)
      .optional(),
    faces: z
      .array(
        z.strictObject({
          face: nameSchema,
          area: nameSchema,
          pressedBy: holesSchema(),
          keepsIn: z.array(nameSchema).max(8),
          part: nameSchema.optional(),
          /** A number where it wants several. */
          bead: z.union([z.literal(true), z.number().int().min(2).max(8)]).optional(),
        }),
      )
      .max(100)
      .optional(),
    behind: z
      .array(
        z.strictObject({
          front: subjectSchema,
          behind: z.array(subjectSchema).min(1).max(40),
          until: z.enum(['closed', 'snug']).optional(),
          gate: yes,
        }),
      )
      .max(500)
      .optional(),
    drives: z
      .array(
        z.strictObject({
          ...driveShape(),
          crankBolt: z.string().max(100).optional(),
          crankKeyed: z.boolean(),
        }),
      )
      .max(8)
      .optional(),
    circuits: z
      .array(z.strictObject({ circuit: nameSchema, fluid: nameSchema }))
      .max(40)
      .optional(),
    temporaries: z
      .array(z.strictObject({ temporary: nameSchema, sort: z.enum(temporaryKinds), at: subjectSchema.optional() }))
      .max(100)
      .optional(),
    products: z.array(productSchema).max(40).optional(),
  }),
);
export type Plan = z.infer<ReturnType<typeof planSchema>>;
export type PlanArea = Plan['areas'][number];
