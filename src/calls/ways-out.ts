// Which call does what a refusal of the job says to do first: the core knows no keys and no calls, the screens name the key
// of this one. Left out is what leads to a place, to a choice that only a look decides, or to a call that would take the next
// fastener by itself where another one is meant.
import type { Refusal } from '../job/refusal.ts';

/** By the words where one refusal has several ways out. */
type Way = string | readonly (readonly [begins: string, call: string])[];

const ways: Readonly<Record<string, Way>> = {
  'job-is-released': 'reopen',
  'already-known': 'correct-spec',
  'hole-is-empty': [['call the hole that does, or say', 'use']],
  'slack-already': 'off',
  'slack-only': 'slack',
  'holes-not-counted': 'holes',
  'trays-not-counted': [
    ['count', 'count'],
    ['call what is short', 'short'],
  ],
  'not-in-the-box': [
    ['put it in the box', 'box'],
    ['call the part back', 'part-back'],
  ],
  'nothing-in-hand-fits': [['call a new one', 'new']],
  'stud-is-out': [['a new one', 'new']],
  'wants-another': [['fit what it wants', 'substitute']],
  'nothing-known-in-hole': 'back',
  'spent-is-never-tight': [['take it out', 'working-out']],
  'part-not-back': [
    ['put the new', 'renewed'],
    ['put', 'part-back'],
  ],
  'jack-still-in': 'taken-out',
  'stand-still-in': 'taken-out',
  'pin-still-in': 'taken-out',
  'not-tight-yet': 'tight',
  'nothing-due': [['put its fasteners back', 'back']],
  'condemned-already': 'scrap',
  'search-not-made': 'searched',
  'works-not-searched': [['find it, or call the search', 'searched']],
  'off-already': 'part-back',
  'still-held': 'off',
  'part-not-off': 'part-off',
  'old-one-judged': 'renewed',
  'working-fastener-in-the-way': 'working-out',
  'working-fastener-in': 'working-out',
  'never-came-off': 'part-off',
  'parted-already': 'made',
  'not-parted': 'parted',
  'connection-parted': 'made',
  'lost-by-name': 'lost',
  'not-cured-to-fill': [['clean', 'clean']],
  'bead-not-ready': [['clean', 'clean']],
  'face-not-clean': 'clean',
  'not-filled': 'filled',
  'fluid-missing': 'filled',
  'not-run-since-filled': 'start',
  'owner-not-told': 'told',
  'piece-still-in': 'piece-out',
  'repair-not-complete': 'repair',
  'depth-not-known': 'repair',
  'step-out-of-turn': 'repair',
  'open-works-not-masked': 'masked',
  'bind-not-explained': 'bind-cause',
  'tensioner-not-live': 'live',
  'no-try-runs': 'quarter',
  'no-try-to-go-on-with': 'quarter',
  'turns-not-complete': 'quarter',
  'marks-not-called': [
    ['turn on', 'quarter'],
    ['call each mark', 'mark-on'],
  ],
  'rotation-not-passed': 'quarter',
  'oil-level-not-seen': 'oil-level',
  'not-run-yet': 'start',
  'tools-not-out': 'tools',
  'car-still-up': 'taken-out',
  'pedal-not-firm': [['press the pedal', 'pedal']],
  'others-lean-on-it': [['strike them all', 'strike-with']],
};
export const waysNamed: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries(ways).map(([code, way]) => [code, typeof way === 'string' ? [way] : way.map(([, call]) => call)]),
);

/** The call that does what is said instead; undefined where it is none, or none in particular. */
export function wayOut({ code, instead }: Pick<Refusal, 'code' | 'instead'>): string | undefined {
  const way = ways[code];
  return typeof way === 'object' ? way.find(([begins]) => instead.startsWith(begins))?.[1] : way;
}
