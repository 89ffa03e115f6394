// What a fastener is, as far as it is known, and how it is to be tightened. Equality and contradiction of two specs
// live here; whether a head can carry a thread is a computation of the trade, not of this module.
import * as z from 'zod';
import { isSameThread } from '../trade/threads.ts';
import type { Stage } from '../trade/torque-stages.ts';

export const fastenerKinds = [
  'bolt',
  'nut',
  'screw',
  'stud',
  'clamp',
  'clip',
  'pin',
  'plug',
  'washer',
  'union',
  'bleeder',
  'sensor',
  'cap',
] as const;

const short = z.string().min(1).max(80);

/**
 * `head` is shape and size ("hex 10"), `thread` a designation ("M10x1.25"), `class` a property class ("10.9"), `coating`
 * what is on it or how it is made, in one word as typed ("zinc", "banjo"): it is seen, and refuses nothing.
 */
export const specSchema = z.strictObject({
  kind: z.enum(fastenerKinds).optional(),
  head: short.optional(),
  thread: short.optional(),
  lengthMm: z.number().positive().max(2000).optional(),
  class: short.optional(),
  coating: z
    .string()
    .max(30)
    .regex(/^[\p{Ll}\p{Lo}\d-]+$/u, 'a coating is one word in small letters')
    .optional(),
  oneUse: z.literal(true).optional(),
  shouldered: z.literal(true).optional(),
});
export type Spec = z.infer<typeof specSchema>;

const stage = z.union([
  z.strictObject({ newtonMetres: z.number().positive().max(2000) }),
  z.strictObject({ degrees: z.number().positive().max(720) }),
  z.strictObject({ loosenDegrees: z.number().positive().max(1080) }),
  /** The torque read at the end of the last stage lies between; without an upper limit where none is given. */
  z.strictObject({
    acceptFromNewtonMetres: z.number().positive().max(2000),
    acceptToNewtonMetres: z.number().positive().max(2000).optional(),
  }),
]);

/** O4: how a fastener is brought up. "shoulder" and "sleeve" stop there and carry no value. */
export const methodSchema = z.strictObject({
  by: z.enum(['torque', 'torque-angle', 'shoulder', 'sleeve', 'hand', 'clamp', 'castle']),
  newtonMetres: z.number().positive().max(2000).optional(),
  stages: z.array(stage).max(8).optional(),
  with: z.enum(['oil', 'dry', 'locking compound']).optional(),
  /** What it is turned into: in aluminium the thread there is the limit, not the bolt. */
  into: z.enum(['aluminium', 'steel', 'iron']).optional(),
});
export type Method = z.infer<typeof methodSchema>;

/** All figures of a method in order; the one torque of a plain one is a stage as well. */
export const stagesOf = ({ newtonMetres, stages = [] }: Method): Stage[] => [
  ...(newtonMetres === undefined ? [] : [{ newtonMetres }]),
  ...stages,
];
/** Two methods bring up to the same figures. */
export const isSameFigure = (one: Method, other: Method): boolean =>
  JSON.stringify(stagesOf(one)) === JSON.stringify(stagesOf(other));
export const hasFigures = (method: Method): boolean => stagesOf(method).length > 0;

/** The fields in which a fastener is refused where it differs (L5). */
export const tellingFields = ['kind', 'head', 'thread', 'lengthMm', 'class'] as const;
export type TellingField = (typeof tellingFields)[number];
/** Those by which two are told apart (L6): a coating wears and is hidden by dirt, so it refuses nothing. */
export const seenFields = [...tellingFields, 'coating'] as const;
export type SeenField = (typeof seenFields)[number];

/** M8 and M8x1.25 are one thread. */
export const isAlike = (field: SeenField, one: Spec, other: Spec): boolean =>
  one[field] === other[field] ||
  (field === 'thread' &&
    one.thread !== undefined &&
    other.thread !== undefined &&
    isSameThread(one.thread, other.thread));

/** Fields known on both sides that differ; empty when nothing contradicts. */
export function contradictions(one: Spec, other: Spec): TellingField[] {
  return tellingFields.filter((f) => one[f] !== undefined && other[f] !== undefined && !isAlike(f, one, other));
}

/** The same, with what is only seen. */
export function differences(one: Spec, other: Spec): SeenField[] {
  return seenFields.filter((f) => one[f] !== undefined && other[f] !== undefined && !isAlike(f, one, other));
}

/** L5: a lower property class than wanted; what can't be compared by its figures counts as lower. */
export function isWeaker(wanted: string, found: string): boolean {
  const figures = (text: string): number => (/^\d{1,2}(\.\d)?$/.test(text) ? Number(text) : Number.NaN);
  return !(figures(found) >= figures(wanted));
}

/** L6: equal in every known field: the same fields are known and they agree. */
export function cannotBeToldApart(one: Spec, other: Spec): boolean {
  return seenFields.every((f) => isAlike(f, one, other)) && one.oneUse === other.oneUse;
}

/** Usual coatings, said in one word of their own; from the trade, no source. Another is said "coated WORD". */
export const coatings: readonly string[] = [
  'zinc',
  'galvanised',
  'black',
  'phosphated',
  'flake',
  'nickel',
  'chrome',
  'cadmium',
  'painted',
  'waxed',
  'microencapsulated',
];
/** How one is made, as the trade says it in front of its kind: told apart by it as by a coating. Common practice, no source. */
export const makes: readonly string[] = [
  'banjo',
  'flanged',
  'castle',
  'dome',
  'wing',
  'grub',
  'locking',
  'roll',
  'dowel',
  'eye',
];
const coatingText = (coating: string): string =>
  coatings.includes(coating) || makes.includes(coating) ? coating : `coated ${coating}`;

/** A spec as the trade writes it: "bolt hex 10 M6x25 8.8". Also the key of the books by exact spec (L12). */
export function specText(spec: Spec): string {
  const isInch = spec.thread !== undefined && !/^[mM]\d/.test(spec.thread);
  // Behind an inch thread a bare figure would be read in inches.
  const length = isInch ? ` x${spec.lengthMm}mm` : `x${spec.lengthMm}`;
  const size = spec.lengthMm === undefined ? spec.thread : `${spec.thread ?? ''}${length}`;
  const words = [
    spec.kind,
    spec.head,
    size,
    spec.class,
    spec.coating && coatingText(spec.coating),
    spec.shouldered && 'shouldered',
    spec.oneUse && 'one-use',
  ];
  return words.filter(Boolean).join(' ') || 'unknown';
}

/** Fields in which two differ, as they are said: "thread, length". */
export const fieldWords = (fields: readonly string[]): string =>
  fields.map((field) => (field === 'lengthMm' ? 'length' : field === 'oneUse' ? 'one-use' : field)).join(', ');

/** Said anew: of another kind nothing said before holds; else what is not said now does. */
export const seenAs = (before: Spec, seen: Spec): Spec =>
  seen.kind !== undefined && seen.kind !== before.kind ? seen : { ...before, ...seen };
