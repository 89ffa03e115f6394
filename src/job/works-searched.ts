// T9: nothing turns while something that may lie in the works was not searched for.
import { no } from './guards.ts';
import type { Loss } from './hole-states.ts';
import { every } from './ledger.ts';
import { oncePerLedger } from './once-per-ledger.ts';
import { specText } from './spec.ts';
import { type Subject, subjectText } from './subjects.ts';
import type { Guard } from './verb.ts';

type Unsearched = { at: Subject; what: string };

const isUnsearched = ({ loss }: { loss?: Loss }): boolean => loss?.reaches === true && loss.searched.length === 0;
const unsearched = oncePerLedger((ledger): readonly Unsearched[] => [
  ...[...every(ledger, 'fastener')].filter(isUnsearched).map(({ id, spec, origin }) => ({
    at: `fastener:${id}` as const,
    what: `${id} (${specText(spec)} of ${subjectText(origin)})`,
  })),
  ...[...every(ledger, 'piece')]
    .filter(isUnsearched)
    .map(({ id }) => ({ at: `piece:${id}` as const, what: `piece ${id}` })),
]);

/** What was called lost without more is taken to reach the works (L9). */
export const worksSearched: Guard<object> = {
  code: 'works-not-searched',
  rule: 'T9',
  kind: 'gate',
  needs: [],
  check({ ledger }) {
    const [first, ...rest] = unsearched(ledger, 'all');
    return first
      ? no(
          `${first.what} is lost and can reach belt, gears, valves, cylinders or sump`,
          'find it, or call the search made: magnet, camera, cover or sump off',
          [first.at, ...rest.map(({ at }) => at)],
        )
      : null;
  },
};
