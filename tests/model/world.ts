// Everything the second ledger knows while it walks: plain maps, filled from nothing each time it is asked.
// Each entry has a place in the walk, counted from 1; "since" always compares two such places, 0 is never.
import type { PlainEntry, PlainLabel, PlainSpec } from './plain.ts';

export type Level = 'as-found' | 'slack' | 'on' | 'snug' | 'tight';

export type HoleNow = {
  name: string;
  declared?: PlainEntry;
  holds?: string;
  level: Level;
  /** Something was called of what it holds, or that it holds nothing. */
  called: boolean;
  /** Its fastener came off on this job. */
  cameOff: boolean;
  touched: boolean;
  opened: number;
  openings: number[];
  changed: number;
  looked: number;
  leftEmpty: boolean;
  forNow: boolean;
  working: boolean;
  oddOne: boolean;
  /** The fastener that was in it, unless it was called the wrong one there. */
  firstFound?: string;
  firstSeen?: string;
  meantSo?: PlainEntry;
  wantsStated?: PlainSpec;
  /** What one would see after each line that changed it. */
  seen: { line: number; as: string }[];
};

export type FastenerNow = {
  id: string;
  spec: PlainSpec;
  at: string;
  origin: string;
  /** Where it lay when it was given a name. */
  knownAt: string;
  loosened: boolean;
  condemned: boolean;
  broken: boolean;
  ruledOut: boolean;
};

export type PieceNow = { at: string; ruledOut: boolean };
export type StrayNow = { at: string; settled: boolean };
export type PartNow = {
  off: boolean;
  forNow: boolean;
  removed: number;
  removals: number[];
  judged: number;
  oldOneWaits: boolean;
};
export type ConnectionNow = { parted: boolean; forNow: boolean; partedAt: number };
export type BeadNow = { line: number; at: number; label: PlainLabel; cleaned: number };
export type FaceNow = { cleaned: number; beads: BeadNow[] };
export type TryNow = {
  begun: number;
  quarters: number;
  asked?: number;
  read: Set<string>;
  slid: boolean;
  tensionRight: boolean;
  /** By a mark or a bind. */
  failed: boolean;
  /** By its tension, until that is set again. */
  tensionWrong: boolean;
  passed: boolean;
};
export type TrayNow = { everHeld: boolean; moved: number; counted: number; count: number };
export type CircuitNow = { drained: boolean; everDrained: boolean; drainedAt: number; checked: number };

export type World = {
  at: number;
  line: number;
  misfits: Set<number>;
  areas: Map<string, PlainEntry>;
  parts: Map<string, PlainEntry>;
  connections: Map<string, PlainEntry>;
  faces: Map<string, PlainEntry>;
  drives: Map<string, PlainEntry>;
  holes: Map<string, HoleNow>;
  fasteners: Map<string, FastenerNow>;
  pieces: Map<string, PieceNow>;
  strays: Map<string, StrayNow>;
  partsNow: Map<string, PartNow>;
  connectionsNow: Map<string, ConnectionNow>;
  facesNow: Map<string, FaceNow>;
  temporariesIn: Map<string, string>;
  masked: Set<string>;
  box: Map<string, { sort: string; left: number; differs?: boolean }>;
  /** L12: out of the box and in no hole, tray or hand: a fastener "used up". */
  fastenersUsedUp: number;
  circuits: Map<string, CircuitNow>;
  tries: Map<string, TryNow>;
  trays: Map<string, TrayNow>;
  newOnTheScrap: number;
  /** By its last count. */
  scrapDiffers: boolean;
  findings: Map<string, { at: string; open: boolean }>;
  services: Map<string, boolean>;
  counted: Map<string, number>;
  companionsSeen: Map<string, number>;
  blindHolesDry: Map<string, number>;
  directionSeen: Map<string, number>;
  opened: boolean;
  worked: number;
  toolsOut: number;
  pedalFirm: number;
  roadTested: number;
  odometer: boolean;
  waiting: boolean;
  /** Line number to what was noted in it. */
  conditions: Map<number, { celsius: number; humidityPct?: number }>;
  clockConfirmed: Set<number>;
  /** The flow book: every move of a fastener as it was called. */
  moves: { fastener: string; from: string; to: string }[];
};

export function newWorld(): World {
  return {
    at: 0,
    line: 0,
    misfits: new Set(),
    areas: new Map(),
    parts: new Map(),
    connections: new Map(),
    faces: new Map(),
    drives: new Map(),
    holes: new Map(),
    fasteners: new Map(),
    pieces: new Map(),
    strays: new Map(),
    partsNow: new Map(),
    connectionsNow: new Map(),
    facesNow: new Map(),
    temporariesIn: new Map(),
    masked: new Set(),
    box: new Map(),
    fastenersUsedUp: 0,
    circuits: new Map(),
    tries: new Map(),
    trays: new Map(),
    newOnTheScrap: 0,
    scrapDiffers: false,
    findings: new Map(),
    services: new Map(),
    counted: new Map(),
    companionsSeen: new Map(),
    blindHolesDry: new Map(),
    directionSeen: new Map(),
    opened: false,
    worked: 0,
    toolsOut: 0,
    pedalFirm: 0,
    roadTested: 0,
    odometer: false,
    waiting: false,
    conditions: new Map(),
    clockConfirmed: new Set(),
    moves: [],
  };
}

export function known<V>(map: Map<string, V>, name: string, fresh: () => V): V {
  const there = map.get(name);
  if (there !== undefined) return there;
  const made = fresh();
  map.set(name, made);
  return made;
}

export const holeNow = (world: World, name: string): HoleNow =>
  known(world.holes, name, () => ({
    name,
    level: 'as-found',
    called: false,
    cameOff: false,
    touched: false,
    opened: 0,
    openings: [],
    changed: 0,
    looked: 0,
    leftEmpty: false,
    forNow: false,
    working: false,
    oddOne: false,
    seen: [],
  }));

export const partNow = (world: World, name: string): PartNow =>
  known(world.partsNow, name, () => ({
    off: false,
    forNow: false,
    removed: 0,
    removals: [],
    judged: 0,
    oldOneWaits: false,
  }));

export const connectionNow = (world: World, name: string): ConnectionNow =>
  known(world.connectionsNow, name, () => ({ parted: false, forNow: false, partedAt: 0 }));

export const faceNow = (world: World, name: string): FaceNow =>
  known(world.facesNow, name, () => ({ cleaned: 0, beads: [] }));

export const trayNow = (world: World, name: string): TrayNow =>
  known(world.trays, name, () => ({ everHeld: false, moved: 0, counted: 0, count: 0 }));

export const circuitNow = (world: World, name: string): CircuitNow =>
  known(world.circuits, name, () => ({ drained: false, everDrained: false, drainedAt: 0, checked: 0 }));

export const freshFastener = (entry: PlainEntry, at: string, origin: string): FastenerNow => ({
  id: entry.fastener,
  spec: entry.spec,
  at,
  origin,
  knownAt: at,
  loosened: false,
  condemned: false,
  broken: false,
  ruledOut: false,
});

/** Something went in or out at this place; only trays remember. */
export function movedAt(world: World, place: string): void {
  if (!place.startsWith('tray:')) return;
  const tray = trayNow(world, place.slice('tray:'.length));
  tray.moved = world.at;
  tray.everHeld = true;
}

// What was opened when, always asked of the whole world.

const latest = (places: number[]): number => Math.max(0, ...places);

/** A hole of it opened, or a part held by one of its holes removed. */
export function areaOpened(world: World, area: string): number {
  const holes = [...world.holes.values()].filter((hole) => hole.name.startsWith(`${area}/`));
  const parts = [...world.parts.values()].filter((part) => part.heldBy.some((hole) => hole.startsWith(`${area}/`)));
  return latest([
    ...holes.map((hole) => hole.opened),
    ...parts.map((part) => world.partsNow.get(part.part)?.removed ?? 0),
  ]);
}

/** S1: whether it was called clean after it was last opened, at the time the bead was laid. */
export function faceWasClean(world: World, face: PlainEntry, bead: BeadNow): boolean {
  const openings = face.pressedBy.flatMap((hole) => world.holes.get(hole)?.openings ?? []);
  const removals = world.partsNow.get(face.part ?? '')?.removals ?? [];
  return bead.cleaned > latest([...openings, ...removals].filter((at) => at < bead.at));
}

export function faceOpened(world: World, face: PlainEntry): number {
  return latest([
    ...face.pressedBy.map((hole) => world.holes.get(hole)?.opened ?? 0),
    world.partsNow.get(face.part ?? '')?.removed ?? 0,
  ]);
}

export function driveOpened(world: World, drive: PlainEntry): number {
  return latest([
    ...drive.areas.map((area) => areaOpened(world, area)),
    ...drive.parts.map((part) => world.partsNow.get(part)?.removed ?? 0),
  ]);
}
