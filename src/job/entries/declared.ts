// Entries that say what there is on the job: the same words whether a plan brought them or a call on the spot.
import * as z from 'zod';
import { reasonSchema } from '../reasons.ts';
import { methodSchema, specSchema } from '../spec.ts';
import { holeSchema, nameSchema, subjectSchema } from '../subjects.ts';
import { line } from './kind.ts';

export const areaRoles = ['wheel', 'brake', 'steering', 'suspension', 'mount', 'drive', 'engine'] as const;
export const temporaryKinds = [
  'pin',
  'lock',
  'bar',
  'plug',
  'rag',
  'mask',
  'strap',
  'jack',
  'block',
  'stand',
  'chock',
  'compressor',
] as const;
export const finishedLater = ['after-belt', 'after-turning', 'on-wheels'] as const;

/** S1, S5: the label of one product. Hours from the last hole snug; times hold at the label's conditions. */
export const productSchema = z.strictObject({
  product: nameSchema,
  kind: z.enum(['moisture', 'anaerobic', 'non-setting', 'dry']),
  skinMinutes: z.number().positive().max(1440).optional(),
  fillHours: z.number().nonnegative().max(1000).optional(),
  runHours: z.number().nonnegative().max(1000).optional(),
  fullHours: z.number().nonnegative().max(1000).optional(),
  labelCelsius: z.number().min(-20).max(60),
  labelHumidityPct: z.number().min(1).max(100),
  lowestCelsius: z.number().min(-40).max(60).optional(),
  /** S4: the label's own full-cure figures for other temperatures; the other times go in proportion. */
  atCelsius: z
    .array(z.strictObject({ celsius: z.number().min(-20).max(60), fullHours: z.number().positive().max(1000) }))
    .max(12)
    .optional(),
});
export type Product = z.infer<typeof productSchema>;

/** Bought new for a service. */
export const newPartSchema = z.strictObject({
  name: nameSchema,
  sort: z.enum(['fastener', 'part', 'supply']),
  quantity: z.number().int().min(1).max(5000),
  spec: specSchema.optional(),
  replaces: nameSchema.optional(),
});
export type NewPart = z.infer<typeof newPartSchema>;
/** X4: one at the vehicle itself is for who drives it, after the work. */
export const cautionSchema = z.strictObject({ words: reasonSchema, at: subjectSchema.optional() });
/** When a service is due again, with where that figure comes from. */
export const intervalSchema = z.strictObject({
  months: z.number().int().min(1).max(600).optional(),
  distanceKm: z.number().int().min(1).max(2_000_000).optional(),
  from: reasonSchema,
});

/** What a plan and a job say of a drive alike. */
export const driveShape = () => ({
  drive: nameSchema,
  areas: z.array(nameSchema).max(20),
  parts: z.array(nameSchema).max(20),
  marks: z.array(nameSchema).max(20),
  /** R4: crank turns, a whole multiple of two. */
  turns: z.number().int().min(2).max(20).multipleOf(2),
  tensioner: z.enum(['sprung', 'plunger', 'set', 'none']),
});

export const declaredEntries = [
  line('job-opened', () => ({
    vehicle: z.strictObject({
      label: nameSchema,
      registration: z.string().max(20).optional(),
      notes: z.string().max(400).optional(),
    }),
  })),
  line('service-ordered', () => ({
    service: nameSchema,
    /** From a plan: all it is about, known to the job already or not; holes go with their areas. */
    brings: z.array(subjectSchema).max(2000).optional(),
    /** From a plan: what is bought new for it, and where it can hurt or spoil something. */
    newParts: z.array(newPartSchema).max(200).optional(),
    cautions: z.array(cautionSchema).max(100).optional(),
    /** From a plan: X4, and for the plan that is saved from this job. */
    interval: intervalSchema.optional(),
  })),
  line('service-done', () => ({ service: nameSchema })),
  line('service-dropped', () => ({ service: nameSchema, because: reasonSchema })),

  /** An area of holes. `planned` areas need no count by eye (K4); `critical` carries to every hole of it. */
  line('area-declared', () => ({
    area: nameSchema,
    /** P2: what plans call it; its own name once it was said to be none of a plan's. */
    inPlans: nameSchema.optional(),
    planned: z.literal(true).optional(),
    critical: z.literal(true).optional(),
    /** F6: must stay clean while it is open. */
    keepClean: z.literal(true).optional(),
    role: z.enum(areaRoles).optional(),
    method: methodSchema.optional(),
    /** O3: names of the passes in order; default snug, final. */
    passes: z.array(nameSchema).min(1).max(8).optional(),
    /** O3: hole numbers in tightening order; default as numbered. */
    order: z.array(z.string().max(20)).max(500).optional(),
    /** O6: called seen before the area closes. */
    companions: z.array(nameSchema).max(20).optional(),
    blindHoles: z.literal(true).optional(),
    /** O6: direction or routing was marked and is to be called right. */
    marked: z.literal(true).optional(),
    outline: z
      .array(z.tuple([z.number(), z.number()]))
      .max(200)
      .optional(),
  })),
  line('hole-declared', () => ({
    hole: holeSchema,
    wants: specSchema.optional(),
    /** P2: what a plan taken later says of a hole that was called before: evidence against it, never its wants. */
    planSays: specSchema.optional(),
    slackOnly: z.literal(true).optional(),
    ownPlace: z.literal(true).optional(),
    critical: z.literal(true).optional(),
    method: methodSchema.optional(),
    later: z.enum(finishedLater).optional(),
    /** R2: it holds a sprocket or the pulley on its shaft. */
    sprocketBolt: z.literal(true).optional(),
    at: z.tuple([z.number(), z.number()]).optional(),
    /** Awkward access: it is reached by an adapter on the wrench, which then is set otherwise. */
    adapter: z
      .strictObject({
        wrenchLengthMm: z.number().positive().max(3000),
        adapterLengthMm: z.number().positive().max(1000),
        angleDegrees: z.number().min(0).max(180).optional(),
      })
      .optional(),
    /** Awkward access: the tool it wants. */
    tool: z.string().max(80).optional(),
  })),
  line('part-declared', () => ({
    part: nameSchema,
    /** The holes whose fasteners hold it; none for what merely sits (a belt, a gasket). */
    heldBy: z.array(holeSchema).max(500),
    /** To be renewed: it does not come back by itself with its first fastener. */
    renew: z.literal(true).optional(),
  })),
  line('connection-declared', () => ({
    connection: nameSchema,
    area: nameSchema.optional(),
    circuit: nameSchema.optional(),
  })),
  line('face-declared', () => ({
    face: nameSchema,
    area: nameSchema,
    pressedBy: z.array(holeSchema).min(1).max(500),
    /** S5: circuits this face keeps in; none named: every filling waits. */
    keepsIn: z.array(nameSchema).max(8),
    part: nameSchema.optional(),
    /** Sealed by a bead, so that one opened needs a new one; a number where it wants several. */
    bead: z.union([z.literal(true), z.number().int().min(2).max(8)]).optional(),
  })),
  /** O1: what sits behind what. `until` snug is enough where said; `gate` can't be overridden (R7). */
  line('behind-declared', () => ({
    front: subjectSchema,
    behind: subjectSchema,
    until: z.enum(['closed', 'snug']),
    gate: z.literal(true).optional(),
    from: z.enum(['plan', 'said']),
  })),
  line('drive-declared', () => ({
    ...driveShape(),
    /** R2: without a key in the crank sprocket the crank bolt must be tight for the check. */
    crankBolt: holeSchema.optional(),
    crankKeyed: z.boolean(),
    /** R8: what the belt's printed marks are reckoned from. */
    teeth: z
      .strictObject({ belt: z.number().int().min(20).max(400), crank: z.number().int().min(10).max(60) })
      .optional(),
  })),
  line('circuit-declared', () => ({ circuit: nameSchema, fluid: nameSchema })),
  line('temporary-declared', () => ({
    temporary: nameSchema,
    sort: z.enum(temporaryKinds),
    at: subjectSchema.optional(),
  })),
  line('product-declared', () => ({ label: productSchema })),
  /** K4: counted by eye, hole numbers without their levels. */
  line('holes-counted', () => ({ area: nameSchema, count: z.number().int().min(0).max(5000) })),
] as const;
