// T8: what is to be said first on return to a job, in the rule's order: only snug, on for now, curing, hanging. It
// gathers what others compute and adds nothing of its own.
import { type BeadStanding, beadMissing, beadsOn } from './beads.ts';
import { laterOf } from './closed.ts';
import type { Loss } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import { specText } from './spec.ts';
import { type Subject, subjectText } from './subjects.ts';

export type Hanging = {
  what: 'snug' | 'for-now' | 'cures' | 'waits' | 'lost' | 'part-off' | 'in' | 'parted' | 'drained';
  /** "hole:mount/4", "face:cover", "fastener:f12.1", "vehicle". */
  at: Subject;
  /** Its place and state in words, without a time of day: "mount 4 is only snug, final on its wheels". */
  words: string;
  /** Of what cures: how far, and ready when. A void bead has none. */
  bead?: BeadStanding;
  /** Of a job that waits: for whom, and until when where that was said. */
  waiting?: { who: string; until?: string };
};

export function whatHangs(ledger: Ledger, now: Stamp): Hanging[] {
  return [...onlySnug(ledger), ...onForNow(ledger), ...curing(ledger, now), ...hanging(ledger)];
}

const due = {
  'after-belt': ', final after the belt',
  'after-turning': ', final after turning',
  'on-wheels': ', final on its wheels',
} as const;

function* onlySnug(ledger: Ledger): Generator<Hanging> {
  for (const h of every(ledger, 'hole')) {
    const o = h.called.occupant;
    if (o?.level !== 'snug' || o.forNow || o.working) continue;
    const at = `hole:${h.hole}`;
    const later = laterOf(ledger, h.hole);
    yield { what: 'snug', at, words: `${subjectText(at)} is only snug${later ? due[later] : ''}` };
  }
}

/** A working fastener is in for the work alone, and is counted out like what is on for now. */
function* onForNow(ledger: Ledger): Generator<Hanging> {
  const forNow = (at: Subject, how: string): Hanging => ({ what: 'for-now', at, words: `${subjectText(at)} ${how}` });
  for (const h of every(ledger, 'hole')) {
    const o = h.called.occupant;
    if (o?.working) yield forNow(`hole:${h.hole}`, 'holds a working fastener');
    else if (o?.forNow) yield forNow(`hole:${h.hole}`, 'is on for now');
  }
  for (const p of every(ledger, 'part')) if (p.forNow) yield forNow(`part:${p.part}`, 'is on for now');
  for (const c of every(ledger, 'connection')) {
    if (c.forNow) yield forNow(`connection:${c.connection}`, 'is made for now');
  }
}

/** A bead that skinned or was opened while nobody looked is named here too: it will never be ready. */
function* curing(ledger: Ledger, now: Stamp): Generator<Hanging> {
  for (const face of every(ledger, 'face')) {
    const at = `face:${face.face}`;
    for (const bead of beadsOn(ledger, face, now)) {
      if (bead.void || bead.reached.full) continue;
      const how = bead.togetherAt > 0 ? 'is curing' : 'is laid, and the face is not together';
      yield { what: 'cures', at, words: `${bead.label.product} on ${face.face} ${how}`, bead };
    }
    const missing = face.beads.length > 0 ? beadMissing(ledger, face, now) : null;
    if (missing) yield { what: 'cures', at, words: `${face.face}: ${missing}` };
  }
}

function* hanging(ledger: Ledger): Generator<Hanging> {
  const waiting = stateOf(ledger, 'vehicle', 'vehicle')?.waiting;
  if (waiting) {
    const { who, because, until } = waiting;
    const words = `waiting for ${who}: ${because}${until ? `, until ${until}` : ''}`;
    yield { what: 'waits', at: 'vehicle', words, waiting: { who, ...(until && { until }) } };
  }
  for (const f of every(ledger, 'fastener')) {
    if (isLost(f.loss)) yield lost(`fastener:${f.id}`, `${specText(f.spec)} of ${subjectText(f.origin)}`, f.loss);
  }
  for (const p of every(ledger, 'piece')) {
    if (isLost(p.loss)) yield lost(`piece:${p.id}`, 'a broken piece', p.loss);
  }
  for (const p of every(ledger, 'part')) {
    if (p.off) yield { what: 'part-off', at: `part:${p.part}`, words: `${p.part} is off` };
  }
  for (const t of every(ledger, 'temporary')) {
    if (t.in) yield { what: 'in', at: `temporary:${t.temporary}`, words: `${t.temporary} is in` };
  }
  for (const c of every(ledger, 'connection')) {
    if (c.parted) yield { what: 'parted', at: `connection:${c.connection}`, words: `${c.connection} is parted` };
  }
  for (const c of every(ledger, 'circuit')) {
    if (c.drainedAt > c.filledAt)
      yield { what: 'drained', at: `circuit:${c.circuit}`, words: `${c.circuit} is drained` };
  }
}

const isLost = (loss: Loss | undefined): loss is Loss => loss !== undefined && !loss.ruledOut;
const lost = (at: Subject, what: string, { where, reaches }: Loss): Hanging => ({
  what: 'lost',
  at,
  words: `${what} is lost${where && ` at ${where}`}${reaches ? ', can reach the works' : ''}`,
});
