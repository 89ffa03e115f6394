// One place a fastener left over could belong to, and how likely one of it is left over before the fastener is looked at.
// The odds were chosen on played jobs (tests/strays); they stand beside one another, not out of one.
import { wantsOf } from './closed.ts';
import type { HoleState } from './hole-states.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { Spec } from './spec.ts';
import type { Subject } from './subjects.ts';
import type { LogTold } from './whose-log.ts';

export type As = 'open' | 'closed' | 'never called' | 'old one' | 'new one' | 'not of this job';
/** `record` is what is known of its fastener; the others are what it may be instead, as often as said. */
export type Belongs = {
  as: As;
  /** hole:H, area:A where no number is known, box:NAME, or vehicle. */
  place: Subject;
  record: Spec;
  instead?: readonly (readonly [often: number, spec: Spec])[];
  tray?: string;
  /** Only slackened: its own is in it by the ledger. */
  slack?: true;
  /** Its call off was struck: it is told apart from its equals. */
  struck?: true;
  odds: number;
  because: string;
  /** What can be left over but `holds` times in all, wherever it is: the one call too many, the one hole. */
  source: string;
  holds: number;
};

export const odds = {
  onlyOpen: 0.55,
  openAmongMany: 0.024,
  noSuchHole: 0.011,
  /** Of one that is off: a slack one has its own in it, unless it came off uncalled. */
  slackOfOff: 0.3,
  struckOff: 7,
  /** Brought up since: it may never have been off, or be missed in there. */
  struckOffClosed: 0.2,
  plannedNotCalled: 4.5,
  moreHolesThanCalled: 8.5,
  nobodyCounted: 0.0022,
  calledElsewhere: 0.02,
  amid: 0.55,
  afterFast: 1,
  fastElsewhere: 0.14,
  redone: 0.0055,
  closed: 0.0033,
  scrapped: 0.022,
  oldInTray: 0.5,
  newLeft: 1.8,
  newMissing: 0.0016,
  foreign: 0.07,
  stayedSet: 0.6,
  oddAlone: 0.022,
  sizeOfOthers: 0.18,
  newWaiting: 0.11,
  ofItsArea: 0.65,
  ofPhantoms: 0.3,
};

/** What was found in the hole goes before what is said of it: it is what lies in the tray. */
export function recordOf(ledger: Ledger, h: HoleState): Spec {
  const id = h.called.own ?? h.called.first;
  return { ...wantsOf(ledger, h), ...(id === undefined ? {} : stateOf(ledger, 'fastener', id)?.spec) };
}

export const struckWords = ({ n }: { n: number }): string => `its call off was struck, line ${n}`;

export const bookedIn = (told: LogTold, h: HoleState): string | undefined => {
  const id = h.called.occupant?.fastener ?? h.called.own;
  return id === undefined ? undefined : told.trays.get(id);
};
