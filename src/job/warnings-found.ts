// What is said beside a call that puts back, as it was, what something was found wrong with, and of the thread that a wrong
// one was in: it stands in no way.
import { isRefused } from '../trade/answer.ts';
import { nearMiss } from '../trade/near-miss.ts';
import { type Thread, threadNamed } from '../trade/threads.ts';
import { areaOfPlace } from './area-of-place.ts';
import { wantsOf } from './closed.ts';
import type { Entry, EntryOf } from './entry.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { named, type Subject, sortOf } from './subjects.ts';

/** F3: of the part or joint itself, or of the area it belongs to; what was found at a hole is of its fastener. */
export function foundWrong(ledger: Ledger, at: Subject): string[] {
  const area = areaOfPlace(ledger, at);
  return [...every(ledger, 'finding')]
    .filter((f) => !f.closed && (f.at === at || (area !== undefined && f.at === `area:${area}`)))
    .map(({ what }) => `found, and not put right yet: ${what}`);
}

/** The same thing called twice, by the key of its fastener and by that of a finding, would stand twice on the sheet. */
export function foundAlready(ledger: Ledger, { at }: EntryOf<'finding-made'>): string[] {
  if (sortOf(at) === 'area' || sortOf(at) === 'vehicle') return [];
  return [...every(ledger, 'finding')]
    .filter((f) => !f.closed && f.at === at)
    .map(({ what }) => `found there already: ${what}; where it is the same, strike ${ledger.lines.length + 1}`);
}

/** A wrong one was in there, of a thread that starts in the hole's or was forced into it. */
export function threadUnderIt(ledger: Ledger, entry: EntryOf<'finding-made'>, entries: readonly Entry[]): string[] {
  const h = entry.wrongOne ? stateOf(ledger, 'hole', named('hole', entry.at) ?? '') : undefined;
  const known = entries.flatMap((e) => (e.kind === 'fastener-found' && e.fastener === entry.fastener ? [e.spec] : []));
  const spec = known[0] ?? stateOf(ledger, 'fastener', entry.fastener ?? '')?.spec;
  const [bolt, hole] = [threadOf(spec?.thread), h && threadOf(wantsOf(ledger, h)?.thread)];
  const near = bolt && hole ? nearMiss(bolt, hole) : undefined;
  return near ? [`${near.text}: look at the thread there, and call it if it is spoilt`] : [];
}
function threadOf(name: string | undefined): Thread | undefined {
  const thread = name === undefined ? undefined : threadNamed(name);
  return thread === undefined || isRefused(thread) ? undefined : thread;
}
