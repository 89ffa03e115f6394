// What still stands between the car and the road, by the second ledger: codes and subjects, nothing else.
import { booksAgree } from './books.ts';
import {
  areaOf,
  contradicts,
  numberOf,
  type PlainEntry,
  type PlainLine,
  type PlainSpec,
  type PlainStamp,
} from './plain.ts';
import { rotationIsNeeded } from './rotation.ts';
import { judgeBeads } from './seals.ts';
import { suspectedHoles } from './suspicion.ts';
import { isCritical, walk } from './walk.ts';
import { areaOpened, driveOpened, type FastenerNow, faceOpened, type HoleNow, type World } from './world.ts';

const isSpent = (fastener: FastenerNow) => fastener.spec.oneUse === true && fastener.loosened;

function wantsOf(world: World, hole: HoleNow): PlainSpec {
  const first = hole.firstFound === undefined ? undefined : world.fasteners.get(hole.firstFound)?.spec;
  return hole.wantsStated ?? hole.declared?.wants ?? first ?? {};
}

function holeIsClosed(world: World, hole: HoleNow): boolean {
  for (const finding of world.findings.values()) {
    if (finding.open && finding.at === `hole:${hole.name}`) return false;
  }
  for (const piece of world.pieces.values()) if (piece.at === `hole:${hole.name}`) return false;
  for (const at of world.temporariesIn.values()) if (at === `hole:${hole.name}`) return false;
  if (hole.holds === undefined) return hole.leftEmpty;
  const fastener = world.fasteners.get(hole.holds) as FastenerNow;
  if (hole.level !== 'tight' || hole.working || hole.forNow) return false;
  if (fastener.condemned || fastener.broken || isSpent(fastener)) return false;
  return hole.oddOne || !contradicts(wantsOf(world, hole), fastener.spec);
}

function holePoints(world: World): string[] {
  const open: string[] = [];
  for (const hole of world.holes.values()) {
    const at = `hole:${hole.name}`;
    if (hole.touched && !holeIsClosed(world, hole)) open.push(`hole-open ${at}`);
    if (hole.holds !== undefined && hole.forNow) open.push(`for-now ${at}`);
    if (hole.holds !== undefined && hole.working) open.push(`working-in ${at}`);
    if (hole.touched && isCritical(world, hole) && hole.looked <= hole.changed) open.push(`second-look ${at}`);
  }
  return open;
}

function fastenerPoints(world: World): string[] {
  const open: string[] = [];
  for (const fastener of world.fasteners.values()) {
    const at = `fastener:${fastener.id}`;
    if (fastener.at === 'lost' && !fastener.ruledOut) open.push(`lost ${at}`);
    if (fastener.at.startsWith('tray:') && fastener.condemned) open.push(`condemned-about ${at}`);
    if (fastener.at.startsWith('tray:') && fastener.broken) open.push(`broken-about ${at}`);
  }
  for (const [name, piece] of world.pieces) {
    if (piece.at === 'lost' && !piece.ruledOut) open.push(`lost piece:${name}`);
  }
  for (const [name, stray] of world.strays) if (!stray.settled) open.push(`stray stray:${name}`);
  return open;
}

/** All that lies in a tray: fasteners, pieces of broken ones, strays nobody has settled. */
function heldIn(world: World, tray: string): number {
  const here = `tray:${tray}`;
  const fasteners = [...world.fasteners.values()].filter((fastener) => fastener.at === here).length;
  const pieces = [...world.pieces.values()].filter((piece) => piece.at === here).length;
  const strays = [...world.strays.values()].filter((stray) => !stray.settled && stray.at === here).length;
  return fasteners + pieces + strays;
}

function trayPoints(world: World): string[] {
  const open: string[] = [];
  for (const [name, tray] of world.trays) {
    const held = heldIn(world, name);
    if (held > 0) open.push(`tray-not-empty tray:${name}`);
    const stands = tray.counted > tray.moved && tray.count === held;
    if ((tray.everHeld || tray.counted > 0) && !stands) open.push(`tray-uncounted tray:${name}`);
  }
  if (world.scrapDiffers) open.push('scrap-differs scrap');
  for (const [name, box] of world.box) if (box.left > 0) open.push(`box-left box:${name}`);
  for (const [name, box] of world.box) if (box.differs) open.push(`box-differs box:${name}`);
  return open;
}

function areaPoints(world: World): string[] {
  const open: string[] = [];
  const names = new Set([...world.areas.keys(), ...world.counted.keys(), ...[...world.holes.keys()].map(areaOf)]);
  for (const name of names) {
    const area = world.areas.get(name);
    const opened = areaOpened(world, name);
    const since = (called: Map<string, number>) => (called.get(name) ?? 0) > opened;
    if (opened > 0) {
      if ((area?.companions ?? []).length > 0 && !since(world.companionsSeen)) open.push(`companions area:${name}`);
      if (area?.blindHoles && !since(world.blindHolesDry)) open.push(`blind-holes area:${name}`);
      if (area?.marked && !since(world.directionSeen)) open.push(`direction area:${name}`);
    }
    const holes = [...world.holes.values()].filter((hole) => areaOf(hole.name) === name);
    const numbers = new Set(holes.filter((hole) => hole.called).map((hole) => numberOf(hole.name)));
    const asked = world.counted.has(name) || holes.some((hole) => hole.touched);
    if (area?.planned !== true && asked && world.counted.get(name) !== numbers.size) {
      open.push(`holes-not-counted area:${name}`);
    }
    if (area?.planned === true && holes.some((hole) => hole.cameOff)) {
      const forgotten = holes.filter((hole) => hole.declared !== undefined && !hole.called);
      for (const hole of forgotten) open.push(`holes-not-counted hole:${hole.name}`);
    }
  }
  for (const name of world.masked) open.push(`masked area:${name}`);
  return open;
}

function workPoints(world: World): string[] {
  const open: string[] = [];
  for (const name of suspectedHoles(world)) open.push(`suspicion hole:${name}`);
  for (const [name, finding] of world.findings) if (finding.open) open.push(`finding-open finding:${name}`);
  for (const [name, part] of world.partsNow) {
    if (part.off) open.push(`part-off part:${name}`);
    if (part.forNow) open.push(`for-now part:${name}`);
    if (part.oldOneWaits) open.push(`part-not-judged part:${name}`);
  }
  for (const [name, connection] of world.connectionsNow) {
    if (connection.parted) open.push(`connection-parted connection:${name}`);
    if (connection.forNow) open.push(`for-now connection:${name}`);
  }
  for (const name of world.temporariesIn.keys()) open.push(`temporary-in temporary:${name}`);
  for (const [name, waits] of world.services) if (waits) open.push(`service-open service:${name}`);
  const ofConnections = [...world.connections.values()].flatMap((connection) => connection.circuit ?? []);
  const behindFaces = [...world.faces.values()].flatMap((face) => face.keepsIn as string[]);
  for (const name of new Set([...world.circuits.keys(), ...ofConnections, ...behindFaces])) {
    const circuit = world.circuits.get(name);
    const asked = circuit?.everDrained === true || everParted(world, name) || everUncovered(world, name);
    if (circuit?.drained) open.push(`circuit-empty circuit:${name}`);
    else if (asked && !leakCheckStands(world, name)) open.push(`circuit-unchecked circuit:${name}`);
  }
  return open;
}

const everParted = (world: World, circuit: string): boolean =>
  [...world.connections.values()].some(
    (one) => one.circuit === circuit && (world.connectionsNow.get(one.connection)?.partedAt ?? 0) > 0,
  );

const everUncovered = (world: World, circuit: string): boolean =>
  [...world.faces.values()].some((face) => face.keepsIn.includes(circuit) && faceOpened(world, face) > 0);

function leakCheckStands(world: World, circuit: string): boolean {
  const now = world.circuits.get(circuit);
  if (now === undefined || now.checked === 0 || now.drainedAt > now.checked) return false;
  for (const face of world.faces.values()) {
    if (face.keepsIn.includes(circuit) && faceOpened(world, face) > now.checked) return false;
  }
  for (const connection of world.connections.values()) {
    if (connection.circuit !== circuit) continue;
    if ((world.connectionsNow.get(connection.connection)?.partedAt ?? 0) > now.checked) return false;
  }
  return true;
}

/** In a forged file a bead may lie on a face nobody spoke of. */
const undeclaredFace = (face: string) => ({ face, pressedBy: [] as string[], keepsIn: [] as string[] }) as PlainEntry;

function sealPoints(world: World, lines: PlainLine[], now: PlainStamp, patience: number): string[] {
  const open: string[] = [];
  for (const name of new Set([...world.faces.keys(), ...world.facesNow.keys()])) {
    const face = world.faces.get(name) ?? undeclaredFace(name);
    const beads = judgeBeads(world, lines, face, now, patience);
    const stands = beads.map((bead) => !bead.dropped && !bead.isVoid);
    const wanted = faceOpened(world, face) === 0 ? 0 : Number(face.bead ?? 0);
    const standing = stands.filter((one) => one).length;
    const someGone = stands.some((stood, place) => !stood && !stands.slice(place + 1).includes(true));
    if (standing < wanted || someGone) open.push(`bead-missing face:${name}`);
    if (beads.some((bead, place) => stands[place] && !bead.cured)) open.push(`bead-curing face:${name}`);
  }
  for (const [name, drive] of world.drives)
    if (rotationIsNeeded(world, drive)) open.push(`rotation-needed drive:${name}`);
  return open;
}

/** T7: opened, or a connection of it parted. */
function areaTouched(world: World, area: string): number {
  const parted = [...world.connections.values()]
    .filter((connection) => connection.area === area)
    .map((connection) => world.connectionsNow.get(connection.connection)?.partedAt ?? 0);
  return Math.max(areaOpened(world, area), ...parted);
}

/** A brake nobody declared is one by what it is called. */
const brakeWords = ['brake', 'brakes', 'caliper', 'calipers', 'pads'];
const pipeWords = ['hose', 'pipe', 'line', 'union'];
const says = (name: string, words: string[]): boolean =>
  name
    .toLowerCase()
    .split(/[^a-z0-9_]+/)
    .some((word) => words.includes(word));
const saysBrakeFluid = (name: string): boolean => /\bbrakes?\b|\bdot ?[345]/.test(name.toLowerCase());

/** T7: the last line at which anything of a brake was opened: its areas, pads and the like, its pipes. */
function brakeTouchedAt(world: World): number {
  let at = 0;
  const areas = new Set<string>([
    ...world.areas.keys(),
    ...[...world.holes.keys()].map((hole) => hole.split('/')[0] as string),
    ...[...world.connections.values()].flatMap((connection) => connection.area ?? []),
  ]);
  for (const area of areas) {
    const role = world.areas.get(area)?.role;
    if (role === 'brake' || (role === undefined && says(area, brakeWords))) at = Math.max(at, areaTouched(world, area));
  }
  for (const [name, part] of world.partsNow) if (says(name, brakeWords)) at = Math.max(at, part.removed);
  for (const [name, now] of world.connectionsNow) {
    const said = world.connections.get(name);
    if (said?.area !== undefined || !(said?.circuit !== undefined || says(name, pipeWords))) continue;
    if (says(name, brakeWords) || saysBrakeFluid(said?.circuit ?? '')) at = Math.max(at, now.partedAt);
  }
  for (const [name, circuit] of world.circuits) if (saysBrakeFluid(name)) at = Math.max(at, circuit.drainedAt);
  return at;
}

function carPoints(world: World): string[] {
  const open: string[] = [];
  const roles = [...world.areas.values()].filter((area) => area.role !== undefined);
  const brakeTouched = brakeTouchedAt(world);
  const touched = Math.max(
    brakeTouched,
    ...roles.map((area) => areaTouched(world, area.area)),
    ...[...world.drives.values()].map((drive) => driveOpened(world, drive)),
  );
  if (world.worked > world.toolsOut) open.push('tools vehicle');
  if (brakeTouched > world.pedalFirm) open.push('pedal vehicle');
  if (touched > world.roadTested) open.push('road-test vehicle');
  if (!world.odometer) open.push('odometer vehicle');
  if (world.waiting) open.push('waiting vehicle');
  for (const line of world.misfits) open.push(`misfit line:${line}`);
  if (!booksAgree(world)) open.push('books vehicle');
  return open;
}

/** Sorted, each "code about". */
export function openPointsOf(lines: PlainLine[], now: PlainStamp, patience: number): string[] {
  const world = walk(lines);
  return [
    ...holePoints(world),
    ...fastenerPoints(world),
    ...trayPoints(world),
    ...areaPoints(world),
    ...workPoints(world),
    ...sealPoints(world, lines, now, patience),
    ...carPoints(world),
  ].sort();
}
