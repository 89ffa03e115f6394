// The one big loop of the second ledger: from nothing, through all standing lines, in order.
import { happenToFasteners } from './fasteners.ts';
import { areaOf, type PlainEntry, type PlainLine } from './plain.ts';
import { standingLines } from './striking.ts';
import { happenToWorks } from './works.ts';
import { type HoleNow, newWorld, type World } from './world.ts';

/** After any of these, tools are in hand: "tools out" is to be called again. */
const anyWork = new Set([
  'fastener-slackened',
  'fastener-removed',
  'fastener-fitted',
  'fastener-tightened',
  'fastener-made-final',
  'fastener-broken',
  'thread-chased',
  'repair-step',
  'part-removed',
  'part-fitted',
  'part-replaced',
  'part-made-final',
  'connection-parted',
  'connection-made',
  'temporary-put-in',
  'temporary-taken-out',
  'all-masked',
  'all-unmasked',
  'fluid-drained',
  'fluid-filled',
]);

export function lookOf(hole: HoleNow): string {
  if (!hole.touched) return 'as found';
  if (hole.holds !== undefined) return hole.level;
  return hole.leftEmpty ? 'left empty' : 'off';
}

export function walk(lines: PlainLine[]): World {
  const world = newWorld();
  for (const line of standingLines(lines)) {
    world.line = line.n;
    for (const entry of line.entries) {
      world.at += 1;
      const fits = happenToFasteners(world, entry) && happenToWorks(world, entry);
      if (!fits) world.misfits.add(line.n);
      if (anyWork.has(entry.kind)) world.worked = world.at;
    }
    for (const hole of world.holes.values()) {
      const as = lookOf(hole);
      if (hole.seen.at(-1)?.as !== as) hole.seen.push({ line: line.n, as });
    }
  }
  return world;
}

export function isCritical(world: World, hole: HoleNow): boolean {
  const area: PlainEntry | undefined = world.areas.get(areaOf(hole.name));
  return hole.declared?.critical === true || area?.critical === true;
}
