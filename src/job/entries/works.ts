// Entries about everything that is no fastener: parts, connections, temporaries, parts box, fluids, faces, the drive,
// findings, counts, and the car itself.
import * as z from 'zod';
import { personSchema, reasonSchema } from '../reasons.ts';
import { specSchema } from '../spec.ts';
import { nameSchema, subjectSchema } from '../subjects.ts';
import { productSchema, temporaryKinds } from './declared.ts';
import { fastenerIdSchema } from './fasteners.ts';
import { line } from './kind.ts';

const finding = z.string().regex(/^d\d{1,8}\.\d{1,4}$/);
const drive = { drive: nameSchema };
const circuit = { circuit: nameSchema };

/** T3: what becomes of an old part. One of the reasons is a verdict as well: it is on the scrap pile for it. */
export const partVerdicts = [
  'worn',
  'play',
  'rough',
  'cracked',
  'leaking',
  'aged',
  'scrap',
  'reuse',
  'owner keeps',
  'return for deposit',
] as const;

/** F3: how the owner was asked. */
export const waysOfAsking = ['in person', 'by telephone', 'in writing'] as const;

export const photoShape = {
  file: z
    .string()
    .min(1)
    .max(500)
    .regex(/^[^\p{Cc}]+$/u),
  /** In hex. */
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  bytes: z.number().int().positive(),
  at: subjectSchema,
  words: z.string().min(1).max(200).optional(),
};

export const workEntries = [
  line('part-removed', () => ({ part: nameSchema })),
  line('part-fitted', () => ({ part: nameSchema, forNow: z.literal(true).optional() })),
  /** T3: a new one from the parts box takes its place; the old one is judged by its own entry. */
  line('part-replaced', () => ({ part: nameSchema, from: nameSchema, forNow: z.literal(true).optional() })),
  line('part-made-final', () => ({ part: nameSchema })),
  /** T3: the old part that does not go back. */
  line('part-judged', () => ({
    part: nameSchema,
    verdict: z.enum(partVerdicts),
    because: reasonSchema.optional(),
    /** The date code or marking on it, as typed. */
    marking: z.string().min(1).max(40).optional(),
  })),
  line('companions-seen', () => ({ area: nameSchema })),
  line('blind-holes-dry', () => ({ area: nameSchema })),
  line('direction-seen', () => ({ area: nameSchema })),
  line('connection-parted', () => ({ connection: nameSchema })),
  line('connection-made', () => ({ connection: nameSchema, forNow: z.literal(true).optional() })),
  line('temporary-put-in', () => ({
    temporary: nameSchema,
    sort: z.enum(temporaryKinds),
    at: subjectSchema.optional(),
  })),
  line('temporary-taken-out', () => ({ temporary: nameSchema, at: subjectSchema.optional() })),
  /** F6: covers each area named, all that were open when it was called. */
  line('all-masked', () => ({ areas: z.array(nameSchema).max(500) })),
  line('all-unmasked', () => ({ areas: z.array(nameSchema).max(500) })),

  /** New for this job. A fastener has a spec, a part names what it replaces, else it is a supply. */
  line('box-filled', () => ({
    name: nameSchema,
    sort: z.enum(['fastener', 'part', 'supply']),
    quantity: z.number().int().min(1).max(5000),
    spec: specSchema.optional(),
    replaces: nameSchema.optional(),
  })),
  line('box-used', () => ({
    name: nameSchema,
    quantity: z.number().int().min(1).max(5000),
    at: subjectSchema.optional(),
  })),
  line('box-moved', () => ({
    name: nameSchema,
    quantity: z.number().int().min(1).max(5000),
    to: z.enum(['supplier', 'owner', 'scrap', 'lost']),
    because: reasonSchema.optional(),
  })),

  line('fluid-drained', () => circuit),
  line('fluid-filled', () => ({ ...circuit, fluid: nameSchema, litres: z.number().positive().max(200).optional() })),
  line('oil-level-seen', () => ({})),
  /** T5: after running, or under pressure. */
  line('leak-checked', () => ({ ...circuit, how: z.enum(['after running', 'under pressure']) })),

  line('finding-made', () => ({
    finding,
    at: subjectSchema,
    what: z.string().min(1).max(200),
    when: z.enum(['on arrival', 'during the work']),
    /** L6: the fastener it speaks of, where it is the fastener and not the hole. */
    fastener: fastenerIdSchema.optional(),
    /** L5: that fastener does not belong in this hole, so the hole does not want one like it. */
    wrongOne: z.literal(true).optional(),
  })),
  line('owner-told', () => ({
    finding,
    at: subjectSchema,
    said: z.string().max(400),
    how: z.enum(waysOfAsking).optional(),
  })),
  /** F3 */
  line('finding-closed', () => ({
    finding,
    at: subjectSchema,
    how: z.enum(['put right', 'accepted', 'declined']),
    who: personSchema.optional(),
    because: reasonSchema.optional(),
  })),

  line('face-cleaned', () => ({ face: nameSchema })),
  line('bead-laid', () => ({ face: nameSchema, label: productSchema })),
  /** S1, S4: at the bench, from now until noted again. */
  line('conditions-noted', () => ({
    celsius: z.number().min(-40).max(60),
    humidityPct: z.number().min(0).max(100).optional(),
  })),
  /** S7: on return, the time shown was called right. */
  line('clock-confirmed', () => ({})),

  line('tensioner-live', () => ({ ...drive, how: z.enum(['pin pulled', 'plunger released', 'set and tight']) })),
  /** R6: tension set again asks two more turns and is no failed try. */
  line('tension-reset', () => drive),
  line('rotation-begun', () => drive),
  line('crank-turned', () => ({
    ...drive,
    quarters: z.number().int().min(1).max(400),
    backwards: z.literal(true).optional(),
    makersStep: z.literal(true).optional(),
  })),
  line('mark-read', () => ({ ...drive, mark: nameSchema, teethOff: z.number().int().min(-200).max(200) })),
  line('locks-slid', () => drive),
  line('tension-read', () => ({ ...drive, how: z.enum(['pointer', 'play', 'reading']), right: z.boolean() })),
  line('bind-felt', () => drive),
  line('bind-explained', () => ({ ...drive, cause: reasonSchema })),

  line('tray-counted', () => ({ tray: nameSchema, count: z.number().int().min(0).max(5000) })),
  /** K2: all that lies on the scrap pile, counted by eye. */
  line('scrap-counted', () => ({ count: z.number().int().min(0).max(5000) })),
  /** K2: what is left of one name in the parts box, counted by eye. */
  line('box-counted', () => ({ name: nameSchema, count: z.number().int().min(0).max(5000) })),
  line('tools-out', () => ({})),
  line('engine-started', () => ({})),
  line('pedal-firm', () => ({})),
  line('car-lowered', () => ({})),
  line('car-moved', () => ({ how: z.enum(['own power', 'by hand']) })),
  line('road-tested', () => ({})),
  line('road-test-waived', () => ({ who: personSchema, because: reasonSchema })),
  /** Where it was not known, or wrong, when the job was opened. */
  line('registration-noted', () => ({ registration: z.string().min(1).max(20) })),
  line('odometer-noted', () => ({ distance: z.number().nonnegative().max(5_000_000), unit: z.enum(['km', 'mi']) })),
  line('due-noted', () => ({
    what: z.string().min(1).max(120),
    on: z.string().max(10).optional(),
    atDistance: z.number().positive().optional(),
  })),
  line('job-waiting', () => ({ who: personSchema, because: reasonSchema, until: z.string().max(40).optional() })),
  line('job-resumed', () => ({})),
  /** A photograph by its file and the digest of its bytes; what it shows is for people, and nothing is judged by it. */
  line('photo-noted', () => photoShape),
  line('note-made', () => ({ words: z.string().min(1).max(400), at: subjectSchema.optional() })),
  line('left-unreleased', () => ({ who: personSchema, because: reasonSchema })),
  line('released', () => ({ who: personSchema })),
  line('reopened', () => ({ who: personSchema, because: reasonSchema })),

  line('calls-struck', () => ({ lines: z.array(z.number().int().positive()).min(1).max(200) })),
  line('calls-restored', () => ({ lines: z.array(z.number().int().positive()).min(1).max(200) })),
  /** A place and a tray were made current; part of the history only. */
  line('tray-declared', () => ({ tray: nameSchema, isPart: z.literal(true).optional() })),
] as const;
