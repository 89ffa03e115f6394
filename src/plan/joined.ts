// What two plans say of one thing as one, field by field, or the fields in which they differ. Which things are the same
// is not asked here.

/** Said by one, it holds: whoever knows of a danger knows more. */
const either = new Set([
  'critical',
  'keepClean',
  'blindHoles',
  'marked',
  'ownPlace',
  'sprocketBolt',
  'renew',
  'gate',
  'oneUse',
]);
/** What is to be seen, and what a drive has: whoever knows of one more knows more. */
const unionOf = new Set(['companions', 'areas', 'parts', 'marks']);
/** Drawings and hints: the first will do. */
const firstWill = new Set(['at', 'outline', 'tool', 'from', 'coating']);

type Fields = Readonly<Record<string, unknown>>;
type Joined = { value: unknown } | { differ: readonly string[] };

export function joined(one: unknown, other: unknown, field = ''): Joined {
  if (one === undefined || other === undefined) {
    // Slackened only by one and taken off by the other comes off.
    return { value: field === 'slackOnly' ? undefined : (one ?? other) };
  }
  if (JSON.stringify(one) === JSON.stringify(other) || firstWill.has(field)) return { value: one };
  if (field === 'until') return { value: 'closed' };
  if (field === 'bead') return { value: Math.max(Number(one), Number(other)) };
  if (unionOf.has(field)) return { value: [...new Set([...(one as string[]), ...(other as string[])])] };
  if (field === 'heldBy' || field === 'pressedBy')
    return sameHoles(one as string[], other as string[]) ? { value: one } : { differ: ['holes'] };
  if (isFields(one) && isFields(other)) return joinedFields(one, other);
  return { differ: [field] };
}
function joinedFields(one: Fields, other: Fields): Joined {
  const value: Record<string, unknown> = {};
  const differ: string[] = [];
  for (const field of new Set([...Object.keys(one), ...Object.keys(other)])) {
    const both: Joined = either.has(field)
      ? { value: one[field] ?? other[field] }
      : joined(one[field], other[field], field);
    if ('differ' in both)
      differ.push(...(field === 'wants' || field === 'method' ? [field, ...both.differ] : both.differ));
    else if (both.value !== undefined) value[field] = both.value;
  }
  return differ.length > 0 ? { differ } : { value };
}
const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
export const sameHoles = (one: readonly string[], other: readonly string[]): boolean =>
  one.length === other.length && one.every((hole) => other.includes(hole));
