// What declarations and entries about parts, connections, temporaries, box, fluids, findings, faces, the drive, counts
// and the car do to the second ledger. Returns false when one does not fit.
import type { PlainEntry } from './plain.ts';
import { happenOnTheCrank } from './rotation.ts';
import { circuitNow, connectionNow, faceNow, holeNow, known, partNow, trayNow, type World } from './world.ts';

/** Declared again, by another service or on the spot: the later word goes over the earlier, the rest stays said. */
function declare(world: World, entry: PlainEntry): void {
  const add = (said: Map<string, PlainEntry>, name: string) => said.set(name, { ...said.get(name), ...entry });
  if (entry.kind === 'area-declared') add(world.areas, entry.area);
  if (entry.kind === 'part-declared') add(world.parts, entry.part);
  if (entry.kind === 'connection-declared') add(world.connections, entry.connection);
  if (entry.kind === 'face-declared') add(world.faces, entry.face);
  if (entry.kind === 'drive-declared') add(world.drives, entry.drive);
  if (entry.kind === 'hole-declared') {
    const hole = holeNow(world, entry.hole);
    hole.declared = { ...hole.declared, ...entry };
  }
}

export function takeFromBox(world: World, name: string, quantity: number): boolean {
  const box = world.box.get(name);
  if (box === undefined || box.left < quantity) return false;
  box.left -= quantity;
  return true;
}

/** One name is one sort of thing. */
function fillBox(world: World, { name, sort, quantity }: PlainEntry): boolean {
  const box = known(world.box, name, () => ({ sort, left: 0 }));
  if (box.sort !== sort) return false;
  box.left += quantity;
  return true;
}

function happenToParts(world: World, entry: PlainEntry): boolean {
  const part = partNow(world, entry.part);
  switch (entry.kind) {
    case 'part-removed':
      if (part.off) return false;
      part.off = true;
      part.forNow = false;
      part.removed = world.at;
      part.removals.push(world.at);
      return true;
    case 'part-fitted':
      if (!part.off) return false;
      part.off = false;
      part.forNow = entry.forNow === true;
      return true;
    case 'part-replaced': {
      const had = takeFromBox(world, entry.from, 1);
      if (!part.off) return false;
      part.off = false;
      part.forNow = entry.forNow === true;
      if (part.judged < part.removed) part.oldOneWaits = true;
      return had;
    }
    case 'part-made-final':
      if (part.off) return false;
      part.forNow = false;
      return true;
    case 'part-judged':
      part.judged = world.at;
      part.oldOneWaits = false;
      return true;
    default:
      return true;
  }
}

function happenToConnections(world: World, entry: PlainEntry): boolean {
  const connection = connectionNow(world, entry.connection);
  if (entry.kind === 'connection-parted') {
    if (connection.parted) return false;
    connection.parted = true;
    connection.forNow = false;
    connection.partedAt = world.at;
    return true;
  }
  if (entry.kind === 'connection-made') {
    // Made for now, it is made once more to be final.
    if (!connection.parted && !connection.forNow) return false;
    connection.parted = false;
    connection.forNow = entry.forNow === true;
  }
  return true;
}

function happenToTemporaries(world: World, entry: PlainEntry): boolean {
  switch (entry.kind) {
    case 'temporary-put-in':
      if (world.temporariesIn.has(entry.temporary)) return false;
      world.temporariesIn.set(entry.temporary, entry.at ?? '');
      return true;
    case 'temporary-taken-out':
      if (world.temporariesIn.get(entry.temporary) !== (entry.at ?? '')) return false;
      return world.temporariesIn.delete(entry.temporary);
    case 'all-masked':
      for (const area of entry.areas) world.masked.add(area);
      return true;
    default:
      for (const area of entry.areas) world.masked.delete(area);
      return true;
  }
}

function happenToFluids(world: World, entry: PlainEntry): void {
  const circuit = circuitNow(world, entry.circuit);
  if (entry.kind === 'fluid-drained') {
    circuit.drained = true;
    circuit.everDrained = true;
    circuit.drainedAt = world.at;
  }
  if (entry.kind === 'fluid-filled') circuit.drained = false;
  if (entry.kind === 'leak-checked') circuit.checked = world.at;
}

function happenToFaces(world: World, entry: PlainEntry): void {
  const face = faceNow(world, entry.face);
  if (entry.kind === 'face-cleaned') {
    face.cleaned = world.at;
    return;
  }
  face.beads.push({ line: world.line, at: world.at, label: entry.label, cleaned: face.cleaned });
}

export function happenToWorks(world: World, entry: PlainEntry): boolean {
  if (entry.kind.endsWith('-declared')) declare(world, entry);
  if (entry.kind.startsWith('part-') && entry.kind !== 'part-declared') return happenToParts(world, entry);
  switch (entry.kind) {
    case 'connection-parted':
    case 'connection-made':
      return happenToConnections(world, entry);
    case 'temporary-put-in':
    case 'temporary-taken-out':
    case 'all-masked':
    case 'all-unmasked':
      return happenToTemporaries(world, entry);
    case 'fluid-drained':
    case 'fluid-filled':
    case 'leak-checked':
      happenToFluids(world, entry);
      return true;
    case 'face-cleaned':
    case 'bead-laid':
      happenToFaces(world, entry);
      return true;
    case 'box-filled':
      return fillBox(world, entry);
    case 'box-used':
    case 'box-moved': {
      const had = takeFromBox(world, entry.name, entry.quantity);
      const isFastener = world.box.get(entry.name)?.sort === 'fastener';
      if (had && isFastener && entry.kind === 'box-used') world.fastenersUsedUp += entry.quantity;
      if (had && isFastener && entry.to === 'scrap') world.newOnTheScrap += entry.quantity;
      return had;
    }
    case 'finding-made':
      if (world.findings.has(entry.finding)) return false;
      world.findings.set(entry.finding, { at: entry.at, open: true });
      if (entry.wrongOne) wantsNoneLikeIt(world, entry);
      return true;
    case 'owner-told':
      return world.findings.has(entry.finding);
    case 'finding-closed': {
      const finding = world.findings.get(entry.finding);
      if (finding === undefined || !finding.open || finding.at !== entry.at) return false;
      finding.open = false;
      return true;
    }
    case 'service-ordered':
      world.services.set(entry.service, true);
      return true;
    case 'service-done':
    case 'service-dropped':
      if (!world.services.has(entry.service)) return false;
      world.services.set(entry.service, false);
      return true;
    case 'holes-counted':
      world.counted.set(entry.area, entry.count);
      return true;
    case 'companions-seen':
      world.companionsSeen.set(entry.area, world.at);
      return true;
    case 'blind-holes-dry':
      world.blindHolesDry.set(entry.area, world.at);
      return true;
    case 'direction-seen':
      world.directionSeen.set(entry.area, world.at);
      return true;
    case 'tray-counted': {
      const tray = trayNow(world, entry.tray);
      tray.counted = world.at;
      tray.count = entry.count;
      return true;
    }
    case 'box-counted': {
      const box = world.box.get(entry.name);
      if (box === undefined) return false;
      box.differs = box.left !== entry.count;
      return true;
    }
    case 'scrap-counted':
      world.scrapDiffers = entry.count !== lyingOnTheScrap(world);
      return true;
    case 'registration-noted':
      return true;
    case 'job-opened':
      if (world.opened) return false;
      world.opened = true;
      return true;
    default:
      happenToTheCar(world, entry);
      return happenOnTheCrank(world, entry);
  }
}

function happenToTheCar(world: World, entry: PlainEntry): void {
  if (entry.kind === 'tools-out') world.toolsOut = world.at;
  if (entry.kind === 'pedal-firm') world.pedalFirm = world.at;
  if (entry.kind === 'road-tested' || entry.kind === 'road-test-waived') world.roadTested = world.at;
  if (entry.kind === 'odometer-noted') world.odometer = true;
  if (entry.kind === 'job-waiting') world.waiting = true;
  if (entry.kind === 'job-resumed') world.waiting = false;
  if (entry.kind === 'clock-confirmed') world.clockConfirmed.add(world.line);
  if (entry.kind === 'conditions-noted') {
    world.conditions.set(world.line, { celsius: entry.celsius, humidityPct: entry.humidityPct });
  }
}

/** Fasteners, pieces, strays called there, and new ones straight from the box. */
function lyingOnTheScrap(world: World): number {
  const all = [...world.fasteners.values(), ...world.pieces.values(), ...world.strays.values()];
  return all.filter((one) => one.at === 'scrap').length + world.newOnTheScrap;
}

/** L5: what was found to be the wrong one in a hole says nothing of what that hole wants. */
function wantsNoneLikeIt(world: World, entry: PlainEntry): void {
  const hole = world.holes.get(entry.at.replace(/^hole:/, ''));
  if (hole?.firstFound !== undefined && hole.firstFound === entry.fastener) delete hole.firstFound;
}
