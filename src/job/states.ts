// What is known of each subject of a job, folded from its own chain of lines; of holes and what was in them in
// hole-states.ts. Plain JSON; stamps are line numbers, 0 = never.
import type { Product } from './entries/declared.ts';
import type { EntryKind, EntryOf } from './entry.ts';
import type { FastenerState, HoleState, PieceState, StrayState } from './hole-states.ts';
import type { Spec } from './spec.ts';
import type { Hole, Subject } from './subjects.ts';

type Declared<K extends EntryKind> = Omit<EntryOf<K>, 'kind'>;

export type AreaState = {
  area: string;
  declared?: Declared<'area-declared'>;
  holes: readonly Hole[];
  parts: readonly string[];
  seenAt: number;
  dryAt: number;
  directionAt: number;
  counted?: { n: number; count: number };
  maskedAt: number;
};
export type PartState = {
  part: string;
  declared?: Declared<'part-declared'>;
  off: boolean;
  forNow: boolean;
  removedAt: number;
  fittedAt: number;
  replacedAt: number;
  replacedFrom?: string;
  judged?: { n: number; verdict: string; because?: string };
  /** An old one that was replaced has had no verdict yet (T3). */
  oldWaits: boolean;
  removals: readonly number[];
};
export type ConnectionState = {
  connection: string;
  declared?: Declared<'connection-declared'>;
  parted: boolean;
  forNow: boolean;
  partedAt: number;
  madeAt: number;
};
export type TemporaryState = {
  temporary: string;
  sort: EntryOf<'temporary-put-in'>['sort'];
  at?: Subject;
  in: boolean;
  putInAt: number;
};
export type FaceState = {
  face: string;
  declared?: Declared<'face-declared'>;
  cleanedAt: number;
  /** Beads since the last cleaning; those before it were dropped. */
  beads: readonly { n: number; label: Product }[];
  dropped: boolean;
};
export type Try = {
  begunAt: number;
  quarters: number;
  need: number;
  turnedAt: number;
  marks: Readonly<Record<string, number>>;
  locksSlid: boolean;
  tension?: { how: string; right: boolean };
  failed?: string;
  explained?: string;
  passedAt: number;
};
export type DriveState = {
  drive: string;
  declared?: Declared<'drive-declared'>;
  liveAt: number;
  tries: readonly Try[];
};
export type CircuitState = {
  circuit: string;
  fluid?: string;
  litres?: number;
  drainedAt: number;
  filledAt: number;
  checkedAt: number;
  checkedHow?: string;
};
export type TrayState = {
  tray: string;
  isPart?: true;
  contents: readonly string[];
  everUsed: boolean;
  movedAt: number;
  /** `times` it was counted since something last moved in or out. */
  counted?: { n: number; count: number; times: number };
};
/** The scrap pile: all that lies on it, `bought` what came straight from the parts box, by its name there. */
export type PileState = {
  contents: readonly string[];
  bought: Readonly<Record<string, number>>;
  /** What lay there by the ledger when it was counted, `times` it was counted with that on it. */
  counted?: { n: number; count: number; contents: number; bought: PileState['bought']; times: number };
};
export type BoxState = {
  name: string;
  sort: 'fastener' | 'part' | 'supply';
  spec?: Spec;
  replaces?: string;
  bought: number;
  left: number;
  moved: Readonly<Record<string, number>>;
  /** What was left by the ledger when it was counted, `times` it was counted with that left. */
  counted?: { n: number; count: number; left: number; times: number };
};
export type Telling = { n: number; said: string; how?: EntryOf<'owner-told'>['how'] };
export type FindingState = {
  id: string;
  at: Subject;
  what: string;
  when: 'on arrival' | 'during the work';
  fastener?: string;
  madeAt: number;
  /** What the owner said the last time; and every time it was told (F3). */
  told?: string;
  tellings?: readonly Telling[];
  closed?: { n: number; how: 'put right' | 'accepted' | 'declined'; who?: string; because?: string };
};
export type ServiceState = Declared<'service-ordered'> & { state: 'ordered' | 'done' | 'dropped'; because?: string };
export type Photo = Declared<'photo-noted'> & { n: number };
export type VehicleState = {
  label: string;
  registration?: string;
  notes?: string;
  odometer?: { distance: number; unit: 'km' | 'mi' };
  waiting?: { n: number; who: string; because: string; until?: string };
  resumedAt: number;
  startedAt: number;
  movedAt: number;
  pedalAt: number;
  oilAt: number;
  toolsAt: number;
  roadAt: number;
  roadWaived?: { who: string; because: string };
  due: readonly { what: string; on?: string; atDistance?: number }[];
  remarks: readonly { n: number; words: string; at?: Subject }[];
  photos: readonly Photo[];
  /** Line of a release that X1 allowed, 0 when not released or reopened. */
  releasedAt: number;
  releasedBy?: string;
  falseReleases: readonly number[];
  left?: { n: number; who: string; because: string };
  loweredAt: number;
};

export type Edge = Omit<EntryOf<'behind-declared'>, 'kind'> & { n: number };

/** Everything folded of one subject, by the sort its key begins with. */
export type States = {
  hole: HoleState;
  fastener: FastenerState;
  piece: PieceState;
  stray: StrayState;
  area: AreaState;
  part: PartState;
  connection: ConnectionState;
  temporary: TemporaryState;
  face: FaceState;
  drive: DriveState;
  circuit: CircuitState;
  tray: TrayState;
  pile: PileState;
  box: BoxState;
  finding: FindingState;
  service: ServiceState;
  product: { label: Product };
  behind: { edges: readonly Edge[] };
  vehicle: VehicleState;
};
export type Sort = keyof States;
