// X1: everything that still stands between the car and the road, as one list. The car may leave when it is empty.
import { beadMissing, beadsOn } from './beads.ts';
import { bookDifferences } from './books.ts';
import { boxDiffersBy } from './box-needs.ts';
import { isCritical, isTouched, openBecause, unsaidOf, workingIn } from './closed.ts';
import {
  countDiffers,
  countStands,
  holesUncounted,
  pileDiffersBy,
  plannedNotCalled,
  toolsStandOut,
  uncounted,
} from './counts.ts';
import { everyKey } from './drawers.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import { oncePerMoment } from './once-per-ledger.ts';
import type { OpenPoint } from './open-point.ts';
import { awayText, curingText } from './ready.ts';
import { brakeOpenedAt, roadRoles, roleOpenedAt } from './roles.ts';
import { driveOpenedAt, rotationNeeded } from './rotation.ts';
import { specText } from './spec.ts';
import type { CircuitState, TrayState } from './states.ts';
import { areaOf, subjectText } from './subjects.ts';
import { suspectedOn, suspicionText } from './suspicions.ts';

export const openPoints = oncePerMoment((ledger, now): readonly OpenPoint[] => [
  ...misfitPoints(ledger),
  ...holePoints(ledger),
  ...fastenerPoints(ledger),
  ...partPoints(ledger),
  ...areaPoints(ledger),
  ...facePoints(ledger, now),
  ...proofPoints(ledger),
  ...trayAndBoxPoints(ledger),
  ...vehiclePoints(ledger),
]);
/** X1. */
export const mayLeave = (ledger: Ledger, now: Stamp): boolean => openPoints(ledger, now).length === 0;

function* misfitPoints(ledger: Ledger): Generator<OpenPoint> {
  const lines = new Set([...everyKey(ledger.misfits)].flatMap(([, ns]) => ns));
  for (const n of [...lines].sort((a, b) => a - b)) {
    yield { code: 'misfit', at: `line:${n}`, because: `line ${n} does not fit what was there` };
  }
}

function* holePoints(ledger: Ledger): Generator<OpenPoint> {
  for (const h of every(ledger, 'hole')) {
    const at = `hole:${h.hole}`;
    const o = h.called.occupant;
    if (o?.working) yield { code: 'working-in', at, because: workingIn };
    if (o?.forNow) yield { code: 'for-now', at, because: 'on for now' };
    const open = openBecause(ledger, h);
    if (open) yield { code: 'hole-open', at, because: open };
    if (isTouched(h) && isCritical(ledger, h, areaOf(h.hole)) && h.called.lookedAt <= h.called.changedAt) {
      yield { code: 'second-look', at, because: 'critical: to be looked at again since its last change' };
    }
  }
  for (const { hole, suspicions } of suspectedOn(ledger)) {
    yield { code: 'suspicion', at: `hole:${hole}`, because: `suspected: ${suspicionText(suspicions)}` };
  }
  for (const f of every(ledger, 'finding')) {
    if (!f.closed) yield { code: 'finding-open', at: `finding:${f.id}`, because: `${subjectText(f.at)}: ${f.what}` };
  }
}

function* fastenerPoints(ledger: Ledger): Generator<OpenPoint> {
  const lost = (where: string, reaches: boolean) =>
    `lost${where && ` at ${where}`}${reaches ? ', can reach the works' : ''}`;
  for (const f of every(ledger, 'fastener')) {
    const at = `fastener:${f.id}`;
    const what = `${specText(f.spec)} of ${subjectText(f.origin)}`;
    if (f.loss && !f.loss.ruledOut)
      yield { code: 'lost', at, because: `${what} ${lost(f.loss.where, f.loss.reaches)}` };
    if (!f.place.startsWith('tray:')) continue;
    if (f.condemned)
      yield { code: 'condemned-about', at, because: `${what} is condemned and lies in ${subjectText(f.place)}` };
    if (f.broken) yield { code: 'broken-about', at, because: `${what} is broken and lies in ${subjectText(f.place)}` };
  }
  for (const p of every(ledger, 'piece')) {
    if (p.loss && !p.loss.ruledOut) {
      yield { code: 'lost', at: `piece:${p.id}`, because: `a broken piece ${lost(p.loss.where, p.loss.reaches)}` };
    }
  }
  for (const s of every(ledger, 'stray')) {
    if (!s.settled) {
      yield {
        code: 'stray',
        at: `stray:${s.id}`,
        because: `${specText(s.spec)} in ${subjectText(s.place)}, its hole unknown`,
      };
    }
  }
}

function* partPoints(ledger: Ledger): Generator<OpenPoint> {
  for (const p of every(ledger, 'part')) {
    const at = `part:${p.part}`;
    if (p.off) yield { code: 'part-off', at, because: 'off' };
    if (p.forNow && !p.off) yield { code: 'for-now', at, because: 'on for now' };
    if (p.oldWaits) yield { code: 'part-not-judged', at, because: 'the old one has no verdict' };
  }
  for (const c of every(ledger, 'connection')) {
    const at = `connection:${c.connection}`;
    if (c.parted) yield { code: 'connection-parted', at, because: 'parted' };
    if (c.forNow && !c.parted) yield { code: 'for-now', at, because: 'made for now' };
  }
  for (const t of every(ledger, 'temporary')) {
    if (t.in) yield { code: 'temporary-in', at: `temporary:${t.temporary}`, because: `${t.sort} is in` };
  }
}

function* areaPoints(ledger: Ledger): Generator<OpenPoint> {
  for (const a of every(ledger, 'area')) {
    const at = `area:${a.area}`;
    for (const code of unsaidOf(ledger, a)) yield { code, at, because: unsaidText[code] };
    if (a.maskedAt > 0) yield { code: 'masked', at, because: 'masked' };
    const uncountedBecause = holesUncounted(ledger, a);
    if (uncountedBecause) yield { code: 'holes-not-counted', at, because: uncountedBecause };
    for (const hole of plannedNotCalled(ledger, a)) {
      yield {
        code: 'holes-not-counted',
        at: `hole:${hole}`,
        because: 'planned here and never called: look whether it is there',
      };
    }
  }
}
const unsaidText = {
  companions: 'companions not called seen since it was opened',
  'blind-holes': 'blind holes not called dry since it was opened',
  direction: 'direction or routing not called right since it was opened',
} as const;

function* facePoints(ledger: Ledger, now: Stamp): Generator<OpenPoint> {
  for (const face of every(ledger, 'face')) {
    const at = `face:${face.face}`;
    const beads = beadsOn(ledger, face, now);
    const missing = beadMissing(ledger, face, now, beads);
    if (missing) yield { code: 'bead-missing', at, because: missing };
    const curing = beads.find((b) => !b.void && !b.reached.full);
    if (curing) {
      const ready = curingText(curing, now);
      const because =
        curing.togetherAt === 0 ? ready : `${curing.label.product} is curing, ${ready}${awayText(curing)}`;
      yield { code: 'bead-curing', at, because };
    }
  }
}

/** T5: line at which something of the circuit was last opened: a face that keeps it in, a connection of it, drained. */
export function circuitOpenedAt(ledger: Ledger, c: CircuitState): number {
  let at = c.drainedAt;
  for (const face of every(ledger, 'face')) {
    if (!face.declared?.keepsIn.includes(c.circuit)) continue;
    const part = face.declared.part ? stateOf(ledger, 'part', face.declared.part) : undefined;
    at = Math.max(at, part?.removedAt ?? 0);
    for (const h of face.declared.pressedBy) at = Math.max(at, stateOf(ledger, 'hole', h)?.called.openedAt ?? 0);
  }
  for (const one of every(ledger, 'connection')) {
    if (one.declared?.circuit === c.circuit) at = Math.max(at, one.partedAt);
  }
  return at;
}

function* proofPoints(ledger: Ledger): Generator<OpenPoint> {
  for (const d of every(ledger, 'drive')) {
    if (!rotationNeeded(ledger, d)) continue;
    const last = d.tries.at(-1);
    const opened = driveOpenedAt(ledger, d);
    const because =
      last?.failed && last.begunAt > opened ? `last try failed: ${last.failed}` : 'opened, no check rotation stands';
    yield { code: 'rotation-needed', at: `drive:${d.drive}`, because };
  }
  for (const c of every(ledger, 'circuit')) {
    const at = `circuit:${c.circuit}`;
    if (c.drainedAt > 0 && c.filledAt <= c.drainedAt)
      yield { code: 'circuit-empty', at, because: 'drained and not filled' };
    else if (wantsLeakCheck(ledger, c)) yield { code: 'circuit-unchecked', at, because: 'not leak-checked since' };
  }
}

/** T5: drained, a connection of it parted, or a face that keeps it in opened, and no leak check stands. */
export function wantsLeakCheck(ledger: Ledger, c: CircuitState): boolean {
  const opened = circuitOpenedAt(ledger, c);
  return opened > 0 && c.checkedAt <= opened;
}

function uncountedWords(t: TrayState): string {
  if (t.counted === undefined) return 'to be counted by eye';
  return countDiffers(t) ? 'its count by eye does not agree' : 'to be counted by eye again: something was moved since';
}
function* trayAndBoxPoints(ledger: Ledger): Generator<OpenPoint> {
  for (const t of every(ledger, 'tray')) {
    const at = `tray:${t.tray}`;
    // K1: the eye counts before it is told the figure.
    const still = countStands(t) ? `${t.contents.length} still in it` : 'still something in it';
    if (t.contents.length > 0) yield { code: 'tray-not-empty', at, because: still };
  }
  for (const t of uncounted(ledger)) {
    yield { code: 'tray-uncounted', at: `tray:${t.tray}`, because: uncountedWords(t) };
  }
  const over = pileDiffersBy(ledger);
  if (over !== 0) yield { code: 'scrap-differs', at: 'scrap', because: 'counted by eye, it differs from the ledger' };
  for (const b of every(ledger, 'box')) {
    if (b.left > 0) yield { code: 'box-left', at: `box:${b.name}`, because: `${b.left} left in the parts box` };
    if (boxDiffersBy(b) !== 0) {
      yield { code: 'box-differs', at: `box:${b.name}`, because: 'counted by eye, it differs from the ledger' };
    }
  }
}

function* vehiclePoints(ledger: Ledger): Generator<OpenPoint> {
  const at = 'vehicle';
  for (const s of every(ledger, 'service')) {
    if (s.state === 'ordered') {
      yield { code: 'service-open', at: `service:${s.service}`, because: 'neither done nor dropped' };
    }
  }
  const v = stateOf(ledger, 'vehicle', 'vehicle');
  if (!toolsStandOut(ledger)) yield { code: 'tools', at, because: 'tools not called out since the last work' };
  if (brakeOpenedAt(ledger) > (v?.pedalAt ?? 0)) yield { code: 'pedal', at, because: 'brake pedal not called firm' };
  if (roleOpenedAt(ledger, roadRoles) > (v?.roadAt ?? 0))
    yield { code: 'road-test', at, because: 'no road test, no reason why not' };
  if (!v?.odometer) yield { code: 'odometer', at, because: 'odometer not noted' };
  if (v?.waiting) yield { code: 'waiting', at, because: `waiting: ${v.waiting.because}` };
  const differ = bookDifferences(ledger);
  if (differ.length > 0) yield { code: 'books', at, because: `the two books differ: ${differ.slice(0, 4).join(', ')}` };
}
