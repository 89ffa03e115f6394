// Entries about holes, fasteners and their pieces. Each carries everything resolved: which hole, which fastener,
// from where and to where; nothing is looked up when it is read again.
import * as z from 'zod';
import { personSchema, reasonSchema } from '../reasons.ts';
import { methodSchema, specSchema } from '../spec.ts';
import { holeSchema, nameSchema, placeSchema } from '../subjects.ts';
import { line } from './kind.ts';

/** "f12.1": the first fastener that line 12 made known. */
export const fastenerIdSchema = z.string().regex(/^f\d{1,8}\.\d{1,4}$/);
export const pieceIdSchema = z.string().regex(/^p\d{1,8}\.\d{1,4}$/);
const inItsHole = { hole: holeSchema, fastener: fastenerIdSchema };

export const fastenerEntries = [
  /** First sight of the fastener in a hole. It says nothing of having been touched. */
  line('fastener-found', () => ({ ...inItsHole, spec: specSchema })),
  line('hole-found-empty', () => ({ hole: holeSchema })),
  line('fastener-slackened', () => inItsHole),
  /** Out of its hole, to a tray unless said otherwise. */
  line('fastener-removed', () => ({ ...inItsHole, to: placeSchema })),
  /** Into a hole by a few turns. A new one from the parts box (`from` = box:NAME) is made known here, with its spec. */
  line('fastener-fitted', () => ({
    ...inItsHole,
    from: placeSchema,
    spec: specSchema,
    forNow: z.literal(true).optional(),
    /** In only to turn, draw or hold; comes out again and is counted with the temporaries. */
    working: z.literal(true).optional(),
    /** L5: fitted although it differs from what the hole wants, and why. */
    substitute: reasonSchema.optional(),
    /** L5: differences of a new one from the box that are only printed. */
    newPattern: z.array(z.string().max(40)).max(5).optional(),
  })),
  /** One pass on one fastener. After `last` it is tight, before that snug. */
  line('fastener-tightened', () => ({
    ...inItsHole,
    pass: nameSchema,
    last: z.boolean(),
    method: methodSchema.optional(),
    tool: z.string().max(60).optional(),
    /** What the wrench showed at the end, where the last stage wants a torque to be accepted. */
    readNewtonMetres: z.number().positive().max(2000).optional(),
    /** O3: taken out of the order of the pass. */
    outOfOrder: z.literal(true).optional(),
  })),
  /** On for now is made final where it is, nothing else moved. */
  line('fastener-made-final', () => inItsHole),
  /** Between tray, scrap pile, owner, supplier, lost and found again; never into or out of a hole. */
  line('fastener-moved', () => ({
    fastener: fastenerIdSchema,
    from: placeSchema,
    to: placeSchema,
    because: reasonSchema.optional(),
  })),
  /**
   * L9: dropped and not recovered. `reaches` belt, gears, valves, cylinders or sump. A new one dropped on its way from
   * the parts box (`from` = box:NAME) is made known here, with its spec.
   */
  line('fastener-lost', () => ({
    fastener: fastenerIdSchema,
    from: placeSchema,
    reaches: z.boolean(),
    where: z.string().max(80),
    spec: specSchema.optional(),
  })),
  line('piece-lost', () => ({
    piece: pieceIdSchema,
    from: placeSchema,
    reaches: z.boolean(),
    where: z.string().max(80),
  })),
  line('search-made', () => ({
    lost: z.union([fastenerIdSchema, pieceIdSchema]),
    how: z.enum(['magnet', 'camera', 'cover off', 'sump off']),
  })),
  /** L9: a named person states that it is not in the vehicle. */
  line('loss-ruled-out', () => ({
    lost: z.union([fastenerIdSchema, pieceIdSchema]),
    who: personSchema,
    because: reasonSchema,
  })),
  /** `at` is where it is at that moment. */
  line('fastener-condemned', () => ({ fastener: fastenerIdSchema, at: placeSchema, because: reasonSchema })),
  /** L10: `at` is where its head is; each piece is booked by itself, `in` a hole or lost or found (scrap). */
  line('fastener-broken', () => ({
    fastener: fastenerIdSchema,
    at: placeSchema,
    pieces: z.array(z.strictObject({ piece: pieceIdSchema, in: placeSchema })).max(8),
  })),
  line('piece-moved', () => ({ piece: pieceIdSchema, from: placeSchema, to: placeSchema })),
  /** L7: measured against the maker's limit, so that it may serve again. */
  line('fastener-measured', () => ({
    fastener: fastenerIdSchema,
    at: placeSchema,
    what: z.string().max(60),
    measuredMm: z.number().positive().max(2000),
    limitMm: z.number().positive().max(2000),
  })),
  /** L11 */
  line('hole-left-empty', () => ({ hole: holeSchema, who: personSchema, because: reasonSchema })),
  /** L5: what the hole wants from now on. */
  line('wants-stated', () => ({ hole: holeSchema, spec: specSchema, because: reasonSchema })),
  /** U3: the fastener is not what it was called. */
  line('spec-corrected', () => ({
    fastener: fastenerIdSchema,
    at: placeSchema,
    spec: specSchema,
    because: reasonSchema,
    /** The hole it was first found in: what that hole wants is corrected with it. */
    cameFrom: holeSchema.optional(),
  })),
  /** U3: all that was called of one hole was of the other, and the other way round, from the first call to now. */
  line('holes-exchanged', () => ({ one: holeSchema, other: holeSchema, because: reasonSchema })),
  /**
   * F2: looked at, and meant so: the fastener first found in the hole, as it was known then, beside what the hole was
   * known to want. It speaks again when either is another.
   */
  line('suspicion-dismissed', () => ({
    ...inItsHole,
    spec: specSchema,
    beside: specSchema.optional(),
    because: reasonSchema,
  })),
  line('looked-again', () => ({ hole: holeSchema, who: personSchema.optional() })),
  line('thread-chased', () => ({ hole: holeSchema })),
  /** F5: one step of a thread repair; the depth there is in the boss comes first. */
  line('repair-step', () => ({
    hole: holeSchema,
    step: z.enum(['depth', 'drilled', 'tapped', 'cleaned', 'insert', 'tried']),
    millimetres: z.number().positive().max(500).optional(),
    words: z.string().max(80).optional(),
  })),
  line('stray-found', () => ({ stray: z.string().regex(/^s\d{1,8}\.\d{1,4}$/), spec: specSchema, at: placeSchema })),
  /** It lies in another tray than was said: what the eye counted there counted it. */
  line('stray-moved', () => ({
    stray: z.string().regex(/^s\d{1,8}\.\d{1,4}$/),
    from: placeSchema,
    to: placeSchema,
  })),
  /** K3: given to a hole as its fastener (then it has a fastener's name), scrapped, or no part of this vehicle. */
  line('stray-settled', () => ({
    stray: z.string().regex(/^s\d{1,8}\.\d{1,4}$/),
    at: placeSchema,
    as: z.enum(['given', 'scrapped', 'not-of-this-vehicle']),
    spec: specSchema.optional(),
    fastener: fastenerIdSchema.optional(),
    who: personSchema.optional(),
    because: reasonSchema.optional(),
  })),
] as const;
