// What entries about holes and fasteners do to the second ledger. Returns false when one does not fit.

import { happenToPiecesAndStrays } from './pieces-and-strays.ts';
import type { PlainEntry } from './plain.ts';
import { takeFromBox } from './works.ts';
import { type FastenerNow, freshFastener, type HoleNow, holeNow, movedAt, type World } from './world.ts';

function change(world: World, hole: HoleNow): void {
  hole.changed = world.at;
}
function touch(world: World, hole: HoleNow): void {
  hole.touched = true;
  change(world, hole);
}
function open(world: World, hole: HoleNow): void {
  hole.opened = world.at;
  hole.openings.push(world.at);
  change(world, hole);
}

function empty(hole: HoleNow): void {
  hole.cameOff = true;
  hole.holds = undefined;
  hole.forNow = false;
  hole.working = false;
  hole.oddOne = false;
}

/** L7: that it was tight is over; whether that spends it depends on what it is known to be, and is asked at the end. */
function loosen(hole: HoleNow, fastener: FastenerNow): void {
  if (hole.level === 'as-found' || hole.level === 'tight') fastener.loosened = true;
}

function move(world: World, fastener: FastenerNow, to: string): void {
  world.moves.push({ fastener: fastener.id, from: fastener.at, to });
  movedAt(world, fastener.at);
  movedAt(world, to);
  fastener.at = to;
  fastener.ruledOut = false;
}

/** A hole loses what it held to a place outside. */
function takeOut(world: World, hole: HoleNow, fastener: FastenerNow, to: string): void {
  loosen(hole, fastener);
  empty(hole);
  touch(world, hole);
  open(world, hole);
  move(world, fastener, to);
}

const takeOneFromBox = (world: World, entry: PlainEntry): boolean =>
  takeFromBox(world, entry.from.slice('box:'.length), 1);

/** It is a fastener from then on, lost, whether the box had it or not. */
function loseOnTheWayFromTheBox(world: World, entry: PlainEntry): boolean {
  const had = takeOneFromBox(world, entry);
  if (world.fasteners.has(entry.fastener)) return false;
  const lost = freshFastener(entry, entry.from, 'box');
  lost.spec = entry.spec ?? {};
  world.fasteners.set(lost.id, lost);
  move(world, lost, 'lost');
  return had;
}

const holeOfPlace = (place: string): string | undefined =>
  place.startsWith('hole:') ? place.slice('hole:'.length) : undefined;

/** A hole of which one of these was called is no longer one that nobody called, or that could be seen for the first time. */
const callsOfHole = new Set([
  'fastener-found',
  'hole-found-empty',
  'fastener-slackened',
  'fastener-removed',
  'fastener-lost',
  'fastener-fitted',
  'fastener-tightened',
  'hole-left-empty',
  'repair-step',
]);

export function happenToFasteners(world: World, entry: PlainEntry): boolean {
  const fits = happenTo(world, entry);
  const hole = entry.hole ?? holeOfPlace(entry.from ?? '');
  if (fits && hole !== undefined && callsOfHole.has(entry.kind)) holeNow(world, hole).called = true;
  return fits;
}

function happenTo(world: World, entry: PlainEntry): boolean {
  const fastener = world.fasteners.get(entry.fastener);
  const hole = entry.hole === undefined ? undefined : holeNow(world, entry.hole);
  const inIt = hole !== undefined && hole.holds !== undefined && hole.holds === entry.fastener;
  switch (entry.kind) {
    case 'fastener-found': {
      if (hole === undefined || hole.called || fastener !== undefined) return false;
      world.fasteners.set(
        entry.fastener,
        freshFastener(entry, `hole:${hole.name}`, `area:${entry.hole.split('/')[0]}`),
      );
      hole.holds = entry.fastener;
      hole.level = 'as-found';
      hole.leftEmpty = false;
      hole.firstFound ??= entry.fastener;
      hole.firstSeen ??= entry.fastener;
      return true;
    }
    case 'hole-found-empty': {
      if (hole === undefined || hole.called) return false;
      touch(world, hole);
      return true;
    }
    case 'fastener-slackened': {
      if (!inIt || hole === undefined || fastener === undefined) return false;
      loosen(hole, fastener);
      hole.level = 'slack';
      touch(world, hole);
      open(world, hole);
      return true;
    }
    case 'fastener-removed': {
      if (!inIt || hole === undefined || fastener === undefined) return false;
      // Off is out of every hole: what goes from one into another was never off.
      if (entry.to.startsWith('hole:')) return false;
      takeOut(world, hole, fastener, entry.to);
      return true;
    }
    case 'fastener-fitted': {
      const fresh = entry.from.startsWith('box:');
      const fits = fresh ? takeOneFromBox(world, entry) : true;
      if (hole === undefined || hole.holds !== undefined) return false;
      if (fresh ? fastener !== undefined : fastener === undefined || fastener.at !== entry.from) return false;
      const its = fastener ?? freshFastener(entry, entry.from, 'box');
      world.fasteners.set(its.id, its);
      move(world, its, `hole:${hole.name}`);
      hole.holds = its.id;
      hole.level = 'on';
      hole.leftEmpty = false;
      hole.forNow = entry.forNow === true;
      hole.working = entry.working === true;
      hole.oddOne = entry.substitute !== undefined || entry.newPattern !== undefined;
      touch(world, hole);
      return fits;
    }
    case 'fastener-tightened': {
      if (!inIt || hole === undefined) return false;
      if (entry.last) hole.level = 'tight';
      else if (hole.level !== 'tight') hole.level = 'snug';
      touch(world, hole);
      return true;
    }
    case 'fastener-made-final': {
      if (!inIt || hole === undefined) return false;
      hole.forNow = false;
      return true;
    }
    case 'fastener-moved': {
      if (fastener === undefined || fastener.at !== entry.from || entry.to === entry.from) return false;
      if (entry.from.startsWith('hole:') || entry.to.startsWith('hole:')) return false;
      move(world, fastener, entry.to);
      return true;
    }
    case 'fastener-lost': {
      if (entry.from.startsWith('box:')) return loseOnTheWayFromTheBox(world, entry);
      if (fastener === undefined || fastener.at !== entry.from) return false;
      const left = holeOfPlace(entry.from);
      if (left === undefined) move(world, fastener, 'lost');
      else takeOut(world, holeNow(world, left), fastener, 'lost');
      return true;
    }
    case 'fastener-condemned':
    case 'fastener-broken':
    case 'fastener-measured':
    case 'spec-corrected': {
      if (fastener === undefined || fastener.at !== entry.at) return false;
      const its = holeOfPlace(entry.at);
      return happenWhereItIs(world, entry, fastener, its === undefined ? undefined : holeNow(world, its));
    }
    case 'hole-left-empty': {
      if (hole === undefined || hole.holds !== undefined) return false;
      hole.leftEmpty = true;
      touch(world, hole);
      return true;
    }
    case 'wants-stated': {
      if (hole === undefined) return false;
      hole.wantsStated = entry.spec;
      change(world, hole);
      return true;
    }
    case 'suspicion-dismissed': {
      if (hole === undefined || hole.firstSeen !== entry.fastener) return false;
      hole.meantSo = entry;
      return true;
    }
    case 'holes-exchanged': {
      for (const name of [entry.one, entry.other]) {
        const exchanged = holeNow(world, name);
        if (!exchanged.touched) continue; // nobody ever touched it: as found still
        touch(world, exchanged);
        open(world, exchanged);
      }
      return true;
    }
    case 'looked-again': {
      if (hole !== undefined) hole.looked = world.at;
      return true;
    }
    case 'repair-step': {
      if (hole !== undefined) touch(world, hole);
      return true;
    }
    default:
      return happenToPiecesAndStrays(world, entry);
  }
}

function happenWhereItIs(world: World, entry: PlainEntry, fastener: FastenerNow, hole: HoleNow | undefined): boolean {
  let fits = true;
  if (entry.kind === 'fastener-condemned') {
    fastener.condemned = true;
    if (hole !== undefined) change(world, hole);
  }
  if (entry.kind === 'fastener-measured') {
    fastener.loosened = false;
    if (hole !== undefined) change(world, hole);
  }
  if (entry.kind === 'spec-corrected') {
    fastener.spec = entry.spec;
    if (hole !== undefined) open(world, hole);
  }
  if (entry.kind === 'fastener-broken') {
    fastener.broken = true;
    if (hole !== undefined) touch(world, hole);
    for (const piece of entry.pieces) {
      if (world.pieces.has(piece.piece)) fits = false;
      else {
        world.pieces.set(piece.piece, { at: piece.in, ruledOut: false });
        movedAt(world, piece.in);
      }
    }
  }
  return fits;
}
