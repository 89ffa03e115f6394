// What may keep a fastener from being tightened, one guard a reason, and which pass of its area is meant.
import * as z from 'zod';
import { isShouldered, laterOf } from '../closed.ts';
import {
  fastenerState,
  inOfSort,
  mayNotServe,
  no,
  noGateBehind,
  nothingOpenBehind,
  occupantOf,
  partIsBack,
} from '../guards.ts';
import { later } from '../later.ts';
import { levelsToTighten } from '../levels.ts';
import { broughtUpAt, methodFor, passesOf } from '../passes.ts';
import { methodSchema, specText } from '../spec.ts';
import { areaOf, type Hole, holeSchema, nameSchema, type Subject, subjectText } from '../subjects.ts';
import { acceptanceOf, isReadingAccepted } from '../tightening.ts';
import type { Guard, Standing } from '../verb.ts';

export const tightenTakes = later(() =>
  z.strictObject({
    hole: holeSchema,
    pass: nameSchema.optional(),
    last: z.boolean().optional(),
    method: methodSchema.optional(),
    tool: z.string().max(60).optional(),
    /** O4: what the wrench showed at the end. */
    readNewtonMetres: z.number().positive().max(2000).optional(),
  }),
);
export type Tighten = z.infer<ReturnType<typeof tightenTakes>>;

export const passMeant = (s: Standing, said: Tighten): { pass: string; last: boolean; levels: readonly Hole[] } => {
  const meant = broughtUpAt(s.ledger, said.hole, said.pass);
  return { ...meant, last: said.last ?? meant.pass === passesOf(s.ledger, areaOf(said.hole)).at(-1) };
};

/** L1: what is to be tightened is in its hole by a call, or as found. */
const holdsKnown: Guard<Tighten> = {
  code: 'nothing-known-in-hole',
  rule: 'L1',
  kind: 'footing',
  needs: ['hole'],
  check: (s, { hole }) =>
    levelsToTighten(s.ledger, hole).length > 0
      ? null
      : no(`nothing is known to be in ${subjectText(`hole:${hole}`)}`, 'put it back first', [`hole:${hole}`]),
};

/** Asks a guard of each level that the tightening speaks of. */
const ofEachLevel = (guard: Guard<Tighten>): Guard<Tighten> => ({
  ...guard,
  check(s, said) {
    const { pass, levels } = passMeant(s, said);
    for (const hole of levels) {
      const stop = guard.check(s, { ...said, pass, hole });
      if (stop) return stop;
    }
    return null;
  },
});

const spentIsNeverTight: Guard<Tighten> = {
  code: 'spent-is-never-tight',
  rule: 'L7',
  kind: 'rule',
  needs: ['hole'],
  check(s, said) {
    const o = occupantOf(s, said.hole);
    const f = o && fastenerState(s, o.fastener);
    if (!o || !f || !passMeant(s, said).last) return null;
    const here = [`hole:${said.hole}`];
    if (o.working) return no('a working fastener is never called tight', 'take it out when the work is done', here);
    const barred = mayNotServe(f, false);
    return barred
      ? no(`${specText(f.spec)} may not serve: ${barred.because}`, 'take it off and fit a new one', here)
      : null;
  },
};

/** O4: to the shoulder or the sleeve, then stop; the thread goes before any value is reached. */
const stopsAtTheShoulder: Guard<Tighten> = {
  code: 'no-value-beyond-the-shoulder',
  rule: 'O4',
  kind: 'rule',
  needs: ['hole', 'method'],
  check(s, said) {
    const valued = said.method?.newtonMetres !== undefined || said.method?.stages !== undefined;
    const by = methodFor(s.ledger, said.hole)?.by;
    const stops = by === 'shoulder' || by === 'sleeve' || isShouldered(s.ledger, said.hole);
    return valued && stops
      ? no('it goes to the shoulder or sleeve and stops: no value beyond it', 'call it tight without a value')
      : null;
  },
};

/** O4: tight by its own method is with the torque that method wants to be read at its end. */
const readingAccepted: Guard<Tighten> = {
  code: 'torque-not-accepted',
  rule: 'O4',
  kind: 'rule',
  needs: ['hole', 'readNewtonMetres'],
  check(s, said) {
    const method = said.method ?? methodFor(s.ledger, said.hole);
    const read = said.readNewtonMetres;
    return read !== undefined && passMeant(s, said).last && isReadingAccepted(method, read) === false
      ? no(`${read} N\u00b7m read: ${acceptanceOf(method)}`, 'take it off and fit a new one, or look at the thread')
      : null;
  },
};

/** O1, T1: what is finished on its wheels gets its final with the weight on, jack and block out. */
const finalOnWheels = (s: Standing, said: Tighten): boolean =>
  laterOf(s.ledger, said.hole) === 'on-wheels' && passMeant(s, said).last;
const weightIsOn: Guard<Tighten> = {
  code: 'weight-not-on',
  rule: 'O1',
  kind: 'order',
  needs: ['hole'],
  check(s, said) {
    if (!finalOnWheels(s, said)) return null;
    const area = `area:${areaOf(said.hole)}`;
    // Its own is the one to begin with.
    const stands = inOfSort(s, ['stand']).toSorted((a, b) => Number(b.at === area) - Number(a.at === area));
    const names = stands.map((t) => t.temporary);
    return names.length > 0
      ? no(
          `final with the weight on; ${names.join(' and ')} ${names.length === 1 ? 'is' : 'are'} in`,
          'snug now, lower the car, then final',
          names.map((name): Subject => `temporary:${name}`),
        )
      : null;
  },
};
const jackIsOut: Guard<Tighten> = {
  code: 'jack-still-in',
  rule: 'T1',
  kind: 'gate',
  needs: ['hole'],
  check(s, said) {
    if (!finalOnWheels(s, said)) return null;
    const jacks = inOfSort(s, ['jack', 'block']).map((t) => t.temporary);
    return jacks.length > 0
      ? no(`final after jack and block are out; ${jacks[0]} is in`, `take ${jacks[0]} out`, [`temporary:${jacks[0]}`])
      : null;
  },
};

export const tightenGuards: readonly Guard<Tighten>[] = [
  holdsKnown,
  ofEachLevel(spentIsNeverTight),
  stopsAtTheShoulder,
  readingAccepted,
  ofEachLevel(partIsBack),
  ofEachLevel(noGateBehind),
  ofEachLevel(nothingOpenBehind),
  ofEachLevel(weightIsOn),
  ofEachLevel(jackIsOut),
];
