// What is said beside a call that puts back, as it was, what something was found wrong with: it stands in no way.
import { areaOfPlace } from './area-of-place.ts';
import { every, type Ledger } from './ledger.ts';
import type { Subject } from './subjects.ts';

/** F3: of the part or joint itself, or of the area it belongs to; what was found at a hole is of its fastener. */
export function foundWrong(ledger: Ledger, at: Subject): string[] {
  const area = areaOfPlace(ledger, at);
  return [...every(ledger, 'finding')]
    .filter((f) => !f.closed && (f.at === at || (area !== undefined && f.at === `area:${area}`)))
    .map(({ what }) => `found, and not put right yet: ${what}`);
}
