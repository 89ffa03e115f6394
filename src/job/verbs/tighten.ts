// Verbs that bring a fastener up: tightened by passes, on for now made final, looked at again.
import { z } from 'zod';
import { isShouldered, laterOf } from '../closed.ts';
import type { Entry } from '../entry.ts';
import {
  behindOf,
  fastenerState,
  holeState,
  inOfSort,
  mayNotServe,
  no,
  noGateBehind,
  nothingOpenBehind,
  occupantOf,
  partIsBack,
  partsMissingOf,
} from '../guards.ts';
import { levelsToTighten } from '../levels.ts';
import { methodFor, nextPass, outOfTurn, passesOf } from '../passes.ts';
import { methodSchema, specText } from '../spec.ts';
import { snugOrBetter } from '../states.ts';
import { areaOf, type Hole, holeSchema, nameSchema, subjectText } from '../subjects.ts';
import { acceptanceOf, isReadingAccepted } from '../tightening.ts';
import { type Guard, type Standing, verb } from '../verb.ts';

const tightenTakes = z.strictObject({
  hole: holeSchema,
  pass: nameSchema.optional(),
  last: z.boolean().optional(),
  method: methodSchema.optional(),
  tool: z.string().max(60).optional(),
  /** O4: what the wrench showed at the end. */
  readNewtonMetres: z.number().positive().max(2000).optional(),
});
type Tighten = z.infer<typeof tightenTakes>;

export const passMeant = (s: Standing, said: Tighten): { pass: string; last: boolean } => {
  const passes = passesOf(s.ledger, areaOf(said.hole));
  const pass = said.pass ?? nextPass(s.ledger, levelsToTighten(s.ledger, said.hole)[0] ?? said.hole);
  return { pass, last: said.last ?? pass === passes.at(-1) };
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
    const { pass } = passMeant(s, said);
    for (const hole of levelsToTighten(s.ledger, said.hole)) {
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
      ? no(
          `${specText(f.spec)} may not serve (${barred.rule}): ${barred.because}`,
          'take it off and fit a new one',
          here,
        )
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
    const stands = inOfSort(s, ['stand']).map((t) => t.temporary);
    return stands.length > 0
      ? no(`final with the weight on; ${stands[0]} is in`, 'snug now, lower the car, then final', [
          `temporary:${stands[0]}`,
        ])
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

export function tightenEntries(s: Standing, said: Tighten): Entry[] {
  const { pass, last } = passMeant(s, said);
  const outOfOrder = outOfTurn(s.ledger, said.hole, pass) ? { outOfOrder: true as const } : {};
  return levelsToTighten(s.ledger, said.hole).map((level, i): Entry => {
    const method = said.method ?? methodFor(s.ledger, level);
    return {
      kind: 'fastener-tightened',
      hole: level,
      fastener: occupantOf(s, level)?.fastener as string,
      pass,
      last,
      ...(method && { method }),
      ...(said.tool && { tool: said.tool }),
      ...(said.readNewtonMetres !== undefined && { readNewtonMetres: said.readNewtonMetres }),
      ...(i === 0 && outOfOrder),
    };
  });
}

const tighten = verb('tighten', tightenTakes, tightenGuards, tightenEntries);

type OneHole = { hole: Hole };
/** O1, O2: snug or tight for now was free; to stay it is asked as if it were tightened now. */
const toStay = (guard: Guard<OneHole>, check: Guard<OneHole>['check']): Guard<OneHole> => ({
  ...guard,
  check(s, said) {
    const o = occupantOf(s, said.hole);
    return o && snugOrBetter(o.level) ? check(s, said) : null;
  },
});

const makeFinal = verb(
  'make-final',
  z.strictObject({ hole: holeSchema }),
  [
    {
      code: 'not-on-for-now',
      rule: 'L1',
      kind: 'footing',
      needs: ['hole'],
      check: (s, { hole }) =>
        occupantOf(s, hole)?.forNow ? null : no(`${subjectText(`hole:${hole}`)} is not on for now`, 'call it tight'),
    },
    toStay(partIsBack, (s, { hole }) => partsMissingOf(s, hole)),
    toStay(noGateBehind, (s, { hole }) => behindOf(s, hole, true)),
    toStay(nothingOpenBehind, (s, { hole }) => behindOf(s, hole, false)),
  ],
  (s, { hole }) => [{ kind: 'fastener-made-final', hole, fastener: occupantOf(s, hole)?.fastener as string }],
);

const looked = verb(
  'look-again',
  z.strictObject({ holes: z.array(holeSchema).min(1).max(500), who: z.string().max(60).optional() }),
  [
    {
      code: 'never-called',
      rule: 'L1',
      kind: 'footing',
      needs: ['holes'],
      check(s, { holes }) {
        const unknown = holes.find((hole) => !holeState(s, hole));
        return unknown ? no(`there is no hole ${subjectText(`hole:${unknown}`)}`, 'name a hole that was called') : null;
      },
    },
    {
      code: 'not-tight-yet',
      rule: 'X1',
      kind: 'gate',
      needs: ['holes'],
      check(s, { holes }) {
        const loose = holes.filter((hole) => {
          const c = holeState(s, hole)?.called;
          return c !== undefined && c.touchedAt > 0 && !c.leftEmpty && c.occupant?.level !== 'tight';
        });
        const [first] = loose;
        return first
          ? no(
              `${subjectText(`hole:${first}`)} is not tight`,
              'tight first',
              loose.map((h) => `hole:${h}`),
            )
          : null;
      },
    },
  ],
  (_s, { holes, who }) => holes.map((hole): Entry => ({ kind: 'looked-again', hole, ...(who && { who }) })),
);

export const tightenVerbs = [tighten, makeFinal, looked];
