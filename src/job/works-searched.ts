// T9: nothing turns while something that may lie in the works was not searched for.
import { no } from './guards.ts';
import type { Loss } from './hole-states.ts';
import { every, type Ledger } from './ledger.ts';
import { oncePerLedger } from './once-per-ledger.ts';
import { specText } from './spec.ts';
import { type Subject, subjectText } from './subjects.ts';
import type { Guard } from './verb.ts';

type InTheWorks = { at: Subject; what: string; searched: readonly string[] };

/** Lost where it can reach them, and neither found nor said by name to be elsewhere. */
const inTheWorks = oncePerLedger((ledger): readonly InTheWorks[] => {
  const among = (loss: Loss | undefined, at: Subject, what: string): InTheWorks[] =>
    loss?.reaches && !loss.ruledOut ? [{ at, what, searched: loss.searched }] : [];
  return [
    ...[...every(ledger, 'fastener')].flatMap(({ id, loss, spec, origin }) =>
      among(loss, `fastener:${id}`, `${id} (${specText(spec)} of ${subjectText(origin)})`),
    ),
    ...[...every(ledger, 'piece')].flatMap(({ id, loss }) => among(loss, `piece:${id}`, `piece ${id}`)),
  ];
});
/** A search that found nothing lets the engine turn (T9); what it looked for may lie there yet. */
export const searchedInVain = (ledger: Ledger): string[] =>
  inTheWorks(ledger, 'all').flatMap(({ what, searched }) =>
    searched.length > 0 ? [`${what} is not found, searched by ${searched.join(', ')}: it may lie in there yet`] : [],
  );

/** What was called lost without more is taken to reach the works (L9). */
export const worksSearched: Guard<object> = {
  code: 'works-not-searched',
  rule: 'T9',
  kind: 'gate',
  needs: [],
  check({ ledger }) {
    const [first, ...rest] = inTheWorks(ledger, 'all').filter(({ searched }) => searched.length === 0);
    return first
      ? no(
          `${first.what} is lost and can reach belt, gears, valves, cylinders or sump`,
          'find it, or call the search made: magnet, camera, cover or sump off',
          [first.at, ...rest.map(({ at }) => at)],
        )
      : null;
  },
};
