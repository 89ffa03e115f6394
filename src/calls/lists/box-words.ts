// What the row of a name in the parts box says while it is picked: what lies there, what of it the job still needs, what
// is surplus, and what could explain a count that differs.
import { boxDiffersBy, fittedFrom, needsOfBox } from '../../job/box-needs.ts';
import { wantsOf } from '../../job/closed.ts';
import { unfit } from '../../job/guards.ts';
import { every, type Ledger } from '../../job/ledger.ts';
import type { BoxState } from '../../job/states.ts';
import { type Hole, inHole, type Subject, subjectText } from '../../job/subjects.ts';
import { type Desk, lacksIts } from '../desk.ts';
import { likeNeighbours } from '../like-neighbours.ts';
import { specWords } from '../spec-words.ts';

const shown = 3;
const holesText = (holes: readonly string[]): string => {
  const more = holes.length - shown;
  const named = holes.slice(0, shown).map((hole) => subjectText(inHole(hole)));
  return `${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
};

export function boxWords({ ledger }: Desk, b: BoxState): string {
  const what = b.spec ? ` (${specWords(b.spec)})` : b.replaces ? ` (for ${b.replaces})` : '';
  return [`${b.left} of ${b.bought} left${what}`, differsWords(ledger, b), neededWords(ledger, b)]
    .filter((text) => text !== '')
    .join('; ');
}

function neededWords(ledger: Ledger, b: BoxState): string {
  if (b.left === 0) return 'nothing of it lies there';
  if (b.sort === 'supply') return `a supply. Call: used ${b.name}, or returned ${b.name}`;
  const { now, later, part, surplus } = needsOfBox(ledger, b);
  const perhaps = b.sort === 'part' ? [] : perhapsFor(ledger, b);
  const over = Math.max(0, surplus - perhaps.length);
  const spare = over > 0 ? `${over} surplus. Call: returned ${b.name} times ${over}` : '';
  return [b.sort === 'part' ? partWords(part, b) : fastenerWords({ now, later, perhaps }), spare]
    .filter(Boolean)
    .join('; ');
}
/** Nobody knows what they want; their neighbours hold such a one. */
const perhapsFor = (ledger: Ledger, b: BoxState): Hole[] =>
  [...every(ledger, 'hole')].flatMap((h) => {
    const like = wantsOf(ledger, h) || !lacksIts(ledger, h.hole) ? undefined : likeNeighbours(ledger, h.hole);
    return like && unfit(like, b.spec ?? {}, true).length === 0 ? [h.hole] : [];
  });
type Wanted = { now: readonly Hole[]; later: readonly Hole[]; perhaps: readonly Hole[] };
function fastenerWords({ now, later, perhaps }: Wanted): string {
  const wanted = [
    perhaps.length > 0 ? `as its neighbours have: ${holesText(perhaps)}` : '',
    now.length > 0 ? `needed now: ${holesText(now)}` : '',
    later.length > 0 ? `needed once it is off: ${holesText(later)}` : '',
  ].filter(Boolean);
  return wanted.length > 0 ? wanted.join('; ') : 'no hole is known to need it';
}
function partWords(part: 'now' | 'later' | 'no' | undefined, { replaces }: BoxState): string {
  if (part === 'now') return `needed now: ${replaces} is off`;
  if (part === 'later') return `needed once ${replaces} is off`;
  return part === 'no' ? `${replaces} is on and wants no new one` : `${replaces} was never called off`;
}

/** K2: it was counted again and still differs. */
const differsAgain = (b: BoxState): number => ((b.counted?.times ?? 0) > 1 ? boxDiffersBy(b) : 0);

function differsWords(ledger: Ledger, b: BoxState): string {
  const over = differsAgain(b);
  if (over === 0) return '';
  const holes = explaining(ledger, b);
  if (over > 0) {
    const lies = holes.length > 0 ? `called into ${holesText(holes)}, and not in it; else ` : '';
    return `${over} over the ledger: ${lies}more was bought: box ${b.name} times ${over}`;
  }
  const gone = holes.length > 0 ? `in ${holesText(holes)} uncalled; else ` : '';
  return `${-over} short of the ledger: ${gone}call where it went: returned, handed over, or new one spoilt`;
}
const explaining = (ledger: Ledger, b: BoxState): readonly string[] => {
  if (boxDiffersBy(b) > 0) return fittedFrom(ledger, b.name);
  const { now, later } = needsOfBox(ledger, b);
  return [...now, ...later];
};

export function boxLeads({ ledger }: Desk, b: BoxState): Subject | undefined {
  const [hole] = differsAgain(b) === 0 ? [] : explaining(ledger, b);
  return hole === undefined ? undefined : inHole(hole);
}
