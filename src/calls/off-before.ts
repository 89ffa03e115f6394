// What the keys for a damaged and for a wrong fastener say of a hole whose fastener is off already: it is condemned, or
// corrected, where it lies.
import type { Entry } from '../job/entry.ts';
import { stateOf } from '../job/ledger.ts';
import type { Said } from '../job/said.ts';
import { cannotBeToldApart, type Spec, seenAs, specText } from '../job/spec.ts';
import { named, subjectText } from '../job/subjects.ts';
import { suspectedOn } from '../job/suspicions.ts';
import type { Desk } from './desk.ts';
import type { Args } from './form.ts';
import type { Meant, Otherwise } from './row.ts';

/** The fastener of a hole that is off already, where it lies in a tray. */
export function offBefore({ ledger }: Desk, hole: unknown): string | undefined {
  const h = stateOf(ledger, 'hole', String(hole));
  const own = h?.called.occupant ? undefined : stateOf(ledger, 'fastener', h?.called.own ?? '');
  return own && named('tray', own.place) !== undefined ? own.id : undefined;
}
/** Off and in a tray, it is condemned where it lies; else it comes off damaged. */
export function damagedMeant(desk: Desk, { late: _, ...said }: Args): Meant {
  const own = offBefore(desk, said.hole);
  return own === undefined
    ? { say: { verb: 'remove', wrong: 'damaged', ...said } }
    : { say: { verb: 'condemn', fastener: own, because: said.what ?? 'damaged after it came off' } };
}
/** U3: off and in a tray, it is corrected to what it is; else the wrong one comes off. */
export function wrongMeant(desk: Desk, { late: _, ...said }: Args): Meant {
  const own = offBefore(desk, said.hole);
  const before = own === undefined ? undefined : stateOf(desk.ledger, 'fastener', own)?.spec;
  if (own === undefined || !before) return { say: { verb: 'remove', wrong: 'odd', ...said } };
  const spec = seenAs(before, (said.spec ?? {}) as Spec);
  if (cannotBeToldApart(before, spec))
    return {
      no: {
        because: `what came out of ${subjectText(`hole:${said.hole}`)} is called ${specText(before)} already`,
        instead: 'where it is damaged, say so',
        by: 'damaged',
      },
    };
  return { say: { verb: 'correct-spec', fastener: own, spec, because: said.what ?? 'seen so after it came off' } };
}
/** What was suspected of it is a finding only once it is called so. */
export function wrongSince(
  _entries: readonly Entry[],
  { verb, fastener }: Said,
  { ledger }: Desk,
): Otherwise | undefined {
  const isSuspected = verb === 'correct-spec' && suspectedOn(ledger).some((one) => one.fastener === fastener);
  return isSuspected ? { words: 'It is the wrong one indeed', by: 'wrong-indeed' } : undefined;
}
/** F1: the owner reads that it came so: whoever broke it says so instead. */
export const foundDamaged = (entries: readonly Entry[], { verb, when }: Said): Otherwise | undefined => {
  if (verb === 'condemn') return { words: 'Onto the scrap pile with it', by: 'scrap' };
  return when === undefined && entries.some((e) => e.kind === 'finding-made' && e.when === 'on arrival')
    ? { words: 'Noted as found on arrival; if the work did it', by: ['strike-last', 'which', 'damaged'] }
    : undefined;
};
