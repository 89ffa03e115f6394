// The one door to the log: guards first, then what the call writes. It refuses; it never changes anything.
import type * as z from 'zod';
import { type Entry, readEntry } from './entry.ts';
import { issueWords } from './issue-words.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { Line, Stamp } from './line.ts';
import type { No, Refusal } from './refusal.ts';
import type { Said } from './said.ts';
import type { Guard, Standing, Verb } from './verb.ts';
import { boxAndFluidVerbs } from './verbs/box-and-fluids.ts';
import { carVerbs } from './verbs/car.ts';
import { checkingRotationVerbs } from './verbs/checking-rotation.ts';
import { connectionVerbs } from './verbs/connections.ts';
import { correctionVerbs } from './verbs/corrections.ts';
import { faceVerbs } from './verbs/faces.ts';
import { findingVerbs } from './verbs/findings.ts';
import { fitVerbs } from './verbs/fit.ts';
import { jobVerbs } from './verbs/job.ts';
import { lossVerbs } from './verbs/losses.ts';
import { noteVerbs } from './verbs/notes.ts';
import { partVerbs } from './verbs/parts.ts';
import { passVerbs } from './verbs/passes.ts';
import { photoVerbs } from './verbs/photo.ts';
import { releaseVerbs } from './verbs/release.ts';
import { strayVerbs } from './verbs/strays.ts';
import { strikingVerbs } from './verbs/striking.ts';
import { stripVerbs } from './verbs/strip.ts';
import { suspicionVerbs } from './verbs/suspicions.ts';
import { temporaryVerbs } from './verbs/temporaries.ts';
import { tightenVerbs } from './verbs/tighten.ts';
import { turningVerbs } from './verbs/turning.ts';
import { whereaboutsVerbs } from './verbs/whereabouts.ts';
import { warningsOf } from './warnings.ts';

type AnyVerb = Verb<Record<string, unknown>>;
/** Every verb of the job by its id. */
export const verbs: ReadonlyMap<string, AnyVerb> = new Map(
  (
    [
      ...jobVerbs,
      ...stripVerbs,
      ...fitVerbs,
      ...tightenVerbs,
      ...passVerbs,
      ...whereaboutsVerbs,
      ...lossVerbs,
      ...strayVerbs,
      ...correctionVerbs,
      ...partVerbs,
      ...connectionVerbs,
      ...temporaryVerbs,
      ...boxAndFluidVerbs,
      ...findingVerbs,
      ...suspicionVerbs,
      ...faceVerbs,
      ...turningVerbs,
      ...checkingRotationVerbs,
      ...carVerbs,
      ...noteVerbs,
      ...releaseVerbs,
      ...photoVerbs,
      ...strikingVerbs,
    ] as unknown as AnyVerb[]
  ).map((verb) => [verb.id, verb]),
);

export type Decided = {
  entries: [Entry, ...Entry[]];
  overrides?: NonNullable<Line['overrides']>;
  /** Said beside the answer; written nowhere. */
  warnings?: string[];
};
export type Answer = { refused: Refusal } | Decided;
/** O5: order answered "done already", with a reason by number or typed. */
export type Override = { because: string };

/** Before every other guard: nothing more is taken on a job that was released, or has left. */
export const closedJob: Guard<object> = {
  code: 'job-is-released',
  rule: 'X3',
  kind: 'rule',
  needs: [],
  check(s) {
    const v = stateOf(s.ledger, 'vehicle', 'vehicle');
    if (v?.releasedAt)
      return { because: `released in line ${v.releasedAt}: the job is read-only`, instead: 'reopen it' };
    return v?.left ? { because: 'the car has left unreleased', instead: 'reopen the job' } : null;
  },
};

const refusal = (guard: Guard<never>, no: No): Refusal => ({
  code: guard.code,
  rule: guard.rule,
  kind: guard.kind,
  because: no.because,
  instead: no.instead,
  places: no.places ?? [],
});

const standing = (ledger: Ledger, now: Stamp): Standing => ({ ledger, now, n: ledger.lines.length + 1 });

/**
 * What a call would write, or why it is refused.
 * @param override answers guards of kind "order" (O5); every other kind stays a refusal
 * @throws when a verb writes an entry that is none: a bug
 */
export function decide(ledger: Ledger, said: Said, now: Stamp, override?: Override): Answer {
  const { verb: id, ...rest } = said;
  const verb = verbs.get(id);
  if (!verb) return { refused: badCall('unknown-verb', `there is no call "${id}"`) };
  const takes = verb.takes.safeParse(rest);
  if (!takes.success) {
    const [issue] = takes.error.issues as [z.core.$ZodIssue];
    const { what, at } = issueWords(issue, rest);
    return { refused: badCall('badly-said', `${fieldText(at) || id}: ${what}`) };
  }
  const s = standing(ledger, now);
  const overrides: NonNullable<Line['overrides']> = [];
  if (id !== 'reopen') {
    const stop = closedJob.check(s, {});
    if (stop) return { refused: refusal(closedJob, stop) };
  }
  for (const guard of verb.guards) {
    const stop = guard.check(s, takes.data);
    if (!stop) continue;
    if (guard.kind !== 'order' || !override) return { refused: refusal(guard, stop) };
    overrides.push({ rule: guard.rule as 'O1', because: override.because });
  }
  const entries = wellFormed(id, verb.writes(s, takes.data));
  const warnings = warningsOf(ledger, entries, now);
  return { entries, ...(overrides.length > 0 && { overrides }), ...(warnings.length > 0 && { warnings }) };
}

/** "humidity %" of humidityPct: the last name of the way there. */
const fieldText = (at: readonly PropertyKey[]): string =>
  String(at.findLast((step) => typeof step === 'string') ?? '')
    .replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    .replace(/ pct$/, ' %');

function wellFormed(id: string, entries: readonly Entry[]): [Entry, ...Entry[]] {
  const read = entries.map((entry) => readEntry(entry));
  const bad = read.find(({ success }) => !success);
  if (bad || entries.length === 0) throw new Error(`${id} writes ${bad?.error?.message ?? 'nothing'}`);
  return read.map(({ data }) => data) as [Entry, ...Entry[]];
}

function badCall(code: string, because: string): Refusal {
  return { code, rule: 'L1', kind: 'footing', because, instead: 'say it otherwise', places: [] };
}

/** The guards whose needs are already said, in the table's order: why a key is dimmed before it is pressed. */
export const blocked = (ledger: Ledger, said: Said, now: Stamp): Refusal | null => {
  const { value } = stops(ledger, said, now).next();
  return value ?? null;
};
/** All that stands against a call, not only what would be said first. */
export const allStops = (ledger: Ledger, said: Said, now: Stamp): Refusal[] => [...stops(ledger, said, now)];

function* stops(ledger: Ledger, said: Said, now: Stamp): Generator<Refusal, undefined> {
  const { verb: id, ...rest } = said;
  const verb = verbs.get(id);
  if (!verb) return;
  const s = standing(ledger, now);
  const guards = id === 'reopen' ? verb.guards : [closedJob as Guard<Record<string, unknown>>, ...verb.guards];
  for (const guard of guards) {
    if (!guard.needs.every((need) => rest[need] !== undefined)) continue;
    const stop = guard.check(s, rest);
    if (stop) yield refusal(guard as Guard<never>, stop);
  }
}
