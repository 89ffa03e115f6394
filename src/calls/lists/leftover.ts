// What a row of the box says of a leftover while it is picked: where it most likely belongs and the call that settles it,
// and what could explain a tray whose count differs. All strays of a job are solved together, once a ledger.
import { differsAgain, pileDiffersBy, pileOf, straysElsewhere } from '../../job/counts.ts';
import { whatCouldExplain, whatCouldExplainPile } from '../../job/explaining.ts';
import type { StrayState } from '../../job/hole-states.ts';
import { every, stateOf } from '../../job/ledger.ts';
import { oncePerLedger } from '../../job/once-per-ledger.ts';
import type { TrayState } from '../../job/states.ts';
import { areaOf, inHole, named, nameOf, type Subject, subjectText } from '../../job/subjects.ts';
import { type Candidate, type InHand, whose } from '../../job/whose.ts';
import { settlingCalls } from '../../job/whose-calls.ts';
import { candidateLine } from '../../job/whose-words.ts';
import type { Desk } from '../desk.ts';
import { nextWords } from '../line-reader.ts';
import { specWords } from '../spec-words.ts';

/** As many as are read at a glance. */
const shown = 3;

const inHandOf = ({ spec, place }: StrayState): InHand => ({ spec, tray: nameOf(place) });
const ofStrays = oncePerLedger((ledger, _all): ReadonlyMap<string, readonly Candidate[]> => {
  const strays = [...every(ledger, 'stray')].filter((s) => !s.settled);
  const found = strays.length === 0 ? [] : whose(ledger, strays.map(inHandOf));
  return new Map(strays.map((s, i) => [s.id, found[i] ?? []]));
});
const candidatesOf = ({ ledger }: Desk, id: string): readonly Candidate[] => ofStrays(ledger, '').get(id) ?? [];

/** K3: "likely: cam cover 7: it alone is open there. Call: …" */
export function strayWords(desk: Desk, s: StrayState): string {
  const candidates = candidatesOf(desk, s.id);
  const [best] = candidates;
  if (!best) return '';
  const calls = settlingCalls(desk.ledger, best, inHandOf(s), s.id).map((said) => nextWords(desk, said));
  const lines = candidates.slice(0, shown).map(candidateLine);
  return `${lines.join('. ')}.${calls.length > 0 ? ` Call: ${calls.join('; ')}` : ''}`;
}

/** Where a look settles it; a hole that nobody called is looked for in its area. */
export const strayLeads = (desk: Desk, id: string): Subject | undefined => placeToLook(desk, candidatesOf(desk, id)[0]);

function placeToLook({ ledger }: Desk, best: Candidate | undefined): Subject | undefined {
  const hole = best && named('hole', best.place);
  if (hole !== undefined) return stateOf(ledger, 'hole', hole) ? best?.place : `area:${areaOf(hole)}`;
  return best && named('area', best.place) !== undefined ? best.place : undefined;
}

/** Of what is over, nothing is known but where it lies; of the scrap pile ("") no tray. */
const overIn = oncePerLedger(
  (ledger, tray): readonly Candidate[] => whose(ledger, [{ spec: {}, ...(tray !== '' && { tray }) }])[0] ?? [],
);

export function trayWords(desk: Desk, t: TrayState): string {
  const why = differsAgain(t) ? whatCouldExplain(desk.ledger, t) : undefined;
  if (!why) return '';
  if (why.over > 0) {
    const called = straysElsewhere(desk.ledger, t).map(
      ({ id, spec, place }) =>
        `stray ${id}, ${specWords(spec)}, called in ${subjectText(place)}: lay ${id} to ${t.tray}`,
    );
    const lines = [...called, ...overIn(desk.ledger, t.tray).map(candidateLine)].slice(0, shown);
    return `${why.over} over the ledger: ${lines.join('. ')}. Else call: stray … in ${t.tray}`;
  }
  const holes = why.holes.slice(0, shown).map((hole) => subjectText(inHole(hole)));
  const back = holes.length > 0 ? `back uncalled in ${holes.join(', ')}; else ` : '';
  return `${why.short} short of the ledger: ${back}call it lost: short … in ${t.tray}`;
}

export function trayLeads(desk: Desk, t: TrayState): Subject | undefined {
  const why = differsAgain(t) ? whatCouldExplain(desk.ledger, t) : undefined;
  if (!why) return undefined;
  if (why.over > 0) return placeToLook(desk, overIn(desk.ledger, t.tray)[0]);
  return why.holes[0] === undefined ? undefined : inHole(why.holes[0]);
}

/** K2: the same of the scrap pile; what is over is taken from it first, then it is a stray of a tray. */
export function pileWords(desk: Desk): string {
  const why = pileDiffersAgain(desk) ? whatCouldExplainPile(desk.ledger) : undefined;
  if (!why) return '';
  if (why.over > 0) {
    // One less, so that what to do is still read at 80 columns.
    const lines = overIn(desk.ledger, '')
      .slice(0, shown - 1)
      .map(candidateLine);
    return `${why.over} over the ledger: ${lines.join('. ')}. Take it out: stray … in ${desk.facing.tray}; then count again`;
  }
  const holes = why.holes.slice(0, shown).map((hole) => subjectText(inHole(hole)));
  const back = holes.length > 0 ? `not thrown away, but of ${holes.join(', ')}; else ` : '';
  return `${why.short} short of the ledger: ${back}call where it lies: lay … to tray …, or lost …; then count again`;
}

export function pileLeads(desk: Desk): Subject | undefined {
  const why = pileDiffersAgain(desk) ? whatCouldExplainPile(desk.ledger) : undefined;
  if (!why) return undefined;
  if (why.over > 0) return placeToLook(desk, overIn(desk.ledger, '')[0]);
  return why.holes[0] === undefined ? undefined : inHole(why.holes[0]);
}
const pileDiffersAgain = ({ ledger }: Desk): boolean =>
  pileDiffersBy(ledger) !== 0 && (pileOf(ledger).counted?.times ?? 0) > 1;
