// The check rotation in the second ledger: one try a drive, the last begun is the one that counts.
import type { PlainEntry } from './plain.ts';
import { driveOpened, type TryNow, type World } from './world.ts';

/** Whatever was looked at is out of date as soon as the crank moves. */
function lookAgain(check: TryNow): void {
  check.read.clear();
  check.slid = false;
  check.tensionRight = false;
}

function marksAreRight(check: TryNow, drive: PlainEntry | undefined): boolean {
  const marks = drive?.marks ?? [];
  return check.slid || (marks.length > 0 && marks.every((mark) => check.read.has(mark)));
}

function passes(check: TryNow, drive: PlainEntry | undefined): boolean {
  const asked = check.asked ?? 4 * (drive?.turns ?? 2);
  const turned = check.quarters >= asked && check.quarters % 8 === 0 && check.quarters > 0;
  const hasTensioner = drive === undefined || drive.tensioner !== 'none';
  return turned && marksAreRight(check, drive) && (!hasTensioner || check.tensionRight);
}

/** Each speaks of a try that was begun. */
const ofATry = new Set([
  'crank-turned',
  'tension-reset',
  'mark-read',
  'locks-slid',
  'tension-read',
  'bind-felt',
  'bind-explained',
]);

/** False when it speaks of a try and none was begun. */
export function happenOnTheCrank(world: World, entry: PlainEntry): boolean {
  if (entry.kind === 'rotation-begun') {
    world.tries.set(entry.drive, {
      begun: world.at,
      quarters: 0,
      read: new Set(),
      slid: false,
      tensionRight: false,
      failed: false,
      tensionWrong: false,
      passed: false,
    });
    return true;
  }
  if (!ofATry.has(entry.kind)) return true;
  const check = world.tries.get(entry.drive);
  if (check === undefined) return false;
  const drive = world.drives.get(entry.drive);
  switch (entry.kind) {
    case 'crank-turned':
      // R3: only a step of the maker's own procedure does not start the count again; it is taken off it.
      if (!entry.backwards) check.quarters += entry.quarters;
      else check.quarters = entry.makersStep ? Math.max(0, check.quarters - entry.quarters) : 0;
      check.passed = false;
      lookAgain(check);
      break;
    case 'tension-reset':
      check.quarters = 0;
      check.asked = 8;
      check.passed = false;
      check.tensionWrong = false;
      lookAgain(check);
      break;
    case 'mark-read':
      if (entry.teethOff === 0) check.read.add(entry.mark);
      else check.failed = true;
      break;
    case 'locks-slid':
      check.slid = true;
      break;
    case 'tension-read':
      // R4: then the tension, after the marks.
      if (!entry.right) check.tensionWrong = true;
      else if (marksAreRight(check, drive)) check.tensionRight = true;
      break;
    case 'bind-felt':
      check.failed = true;
      break;
    default:
      return true;
  }
  if (passes(check, drive)) check.passed = true;
  return true;
}

export function rotationIsNeeded(world: World, drive: PlainEntry): boolean {
  const opened = driveOpened(world, drive);
  if (opened === 0) return false;
  const check = world.tries.get(drive.drive);
  return check === undefined || check.failed || check.tensionWrong || !check.passed || check.begun < opened;
}
