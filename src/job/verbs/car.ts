// Verbs on the car as a whole: first start, lowered, moved, pedal, road, tools out. What is noted of it stands in
// notes.ts; waiting and release in release.ts.
import * as z from 'zod';
import { holesOf, isClosed, isTouched } from '../closed.ts';
import { toolsStandOut } from '../counts.ts';
import { inOfSort, meanwhile, no, notReached, traysCounted } from '../guards.ts';
import { snugOrBetter } from '../hole-states.ts';
import { every, stateOf } from '../ledger.ts';
import { engineApart, letsOut } from '../lets-out.ts';
import { isOilToSee, notRunSince } from '../not-run.ts';
import { readyText } from '../ready.ts';
import { personSchema, reasonSchema } from '../reasons.ts';
import { brakeApart, brakeOpenedAt } from '../roles.ts';
import { locksIn, rotationNeeded } from '../rotation.ts';
import { type Subject, sortOf, subjectText } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';
import { worksSearched } from '../works-searched.ts';

export const nothing = z.strictObject({});
export const vehicleOf = (s: Standing) => stateOf(s.ledger, 'vehicle', 'vehicle');

/** A gate over the whole car: the first reason found, with its place. */
export const gate = (code: string, rule: string, check: Guard<object>['check']): Guard<object> => ({
  code,
  rule,
  kind: 'gate',
  needs: [],
  check,
});

const stillIn = (temporary: string | undefined) =>
  temporary === undefined ? null : no(`${temporary} is in`, `take ${temporary} out`, [`temporary:${temporary}`]);

const isOpenWords = (of: Subject): string => `${subjectText(of)} is ${openWord[sortOf(of)] ?? 'open'}`;
const openWord: Partial<Record<string, string>> = {
  circuit: 'drained',
  connection: 'parted',
  hole: 'not tight',
  part: 'off',
};

const toolsOut = gate('tools-not-out', 'K1', (s) =>
  toolsStandOut(s.ledger)
    ? null
    : no('tools were not called out since the last work', 'call the tools out', ['vehicle']),
);

const beadsMayBeRun = gate('bead-not-ready', 'S5', (s) => {
  const [bead] = notReached(s, 'run');
  return bead
    ? no(
        `the bead on ${bead.face} ${bead.void ? `is void: ${bead.void}` : `may not be run yet: ${readyText(bead, 'run', s.now)}`}`,
        bead.void ? 'clean and lay again' : `wait for its time; ${meanwhile}`,
        [`face:${bead.face}`],
      )
    : null;
});
const rotationPassed = gate('rotation-not-passed', 'T6', (s) => {
  const d = [...every(s.ledger, 'drive')].find((one) => rotationNeeded(s.ledger, one));
  return d
    ? no(`${d.drive}: no check rotation stands`, 'turn it over by hand and call the marks', [`drive:${d.drive}`])
    : null;
});
const fluidsFilled = gate('fluid-missing', 'T6', (s) => {
  const c = [...every(s.ledger, 'circuit')].find((one) => one.drainedAt > one.filledAt);
  return c ? no(`${c.circuit} is drained`, `fill ${c.circuit}`, [`circuit:${c.circuit}`]) : null;
});
const connectionsMade = gate('connection-parted', 'T6', (s) => {
  const c = [...every(s.ledger, 'connection')].find((one) => one.parted);
  return c ? no(`${c.connection} is parted`, `make ${c.connection}`, [`connection:${c.connection}`]) : null;
});
/** What keeps an engine from running, first or again. */
const runGates: Guard<object>[] = [
  worksSearched,
  beadsMayBeRun,
  rotationPassed,
  fluidsFilled,
  connectionsMade,
  gate('lets-its-fluid-out', 'T6', (s) => {
    for (const { circuit } of every(s.ledger, 'circuit')) {
      const [first, ...rest] = letsOut(s.ledger, circuit);
      if (first)
        return no(`${isOpenWords(first)}: ${circuit} runs out there`, `close ${subjectText(first)}`, [first, ...rest]);
    }
    return null;
  }),
  gate('engine-apart', 'T6', (s) => {
    const [first, ...rest] = engineApart(s.ledger);
    return first ? no(isOpenWords(first), 'bring it snug or better', [first, ...rest]) : null;
  }),
  gate('pin-still-in', 'T6', (s) => stillIn(locksIn(s.ledger)[0])),
];
const startGates: Guard<object>[] = [
  ...runGates,
  // It stands at no place of the car where something else is open.
  gate('oil-level-not-seen', 'T6', (s) =>
    isOilToSee(s.ledger) ? no('the engine oil level was not looked at', 'look at it, and call it') : null,
  ),
  gate('jack-still-in', 'T1', (s) => stillIn(inOfSort(s, ['jack', 'block'])[0]?.temporary)),
  gate('working-fastener-in', 'T1', (s) => {
    const h = [...every(s.ledger, 'hole')].find((one) => one.called.occupant?.working);
    return h
      ? no(`a working fastener is in ${subjectText(`hole:${h.hole}`)}`, 'take it out', [`hole:${h.hole}`])
      : null;
  }),
  toolsOut,
  traysCounted,
];
const start = verb('start-engine', nothing, startGates, () => [{ kind: 'engine-started' }]);

const holesOfRole = (s: Standing, role: string) =>
  [...every(s.ledger, 'area')]
    .filter((a) => a.declared?.role === role)
    .flatMap((a) => holesOf(s.ledger, a))
    .filter(isTouched);
const wheelsSnug = gate('wheel-not-snug', 'T7', (s) => {
  const h = holesOfRole(s, 'wheel').find(
    (one) => !one.called.leftEmpty && !(one.called.occupant && snugOrBetter(one.called.occupant.level)),
  );
  return h ? no(`${subjectText(`hole:${h.hole}`)} is not snug`, 'bring the wheel snug', [`hole:${h.hole}`]) : null;
});
/** T1: brought down before, and neither raised on anything called nor a wheel touched since. */
const isUp: Guard<object> = {
  code: 'down-already',
  rule: 'T1',
  kind: 'footing',
  needs: [],
  check(s) {
    const at = vehicleOf(s)?.loweredAt ?? 0;
    const raised = [...every(s.ledger, 'temporary')].some((t) => t.putInAt > at && carries.has(t.sort));
    const again = raised || holesOfRole(s, 'wheel').some((h) => h.called.touchedAt > at);
    return at > 0 && !again ? no(`it was lowered in line ${at}`, 'go on') : null;
  },
};
const carries: ReadonlySet<string> = new Set(['stand', 'jack', 'block']);
const lower = verb(
  'lower-car',
  nothing,
  [
    isUp,
    { ...wheelsSnug, rule: 'T1' },
    gate('stand-still-in', 'T1', (s) => stillIn(inOfSort(s, ['stand'])[0]?.temporary)),
  ],
  () => [{ kind: 'car-lowered' }],
);
const mayMove = [
  gate('pedal-not-firm', 'T7', (s) => {
    if (brakeOpenedAt(s.ledger) <= (vehicleOf(s)?.pedalAt ?? 0)) return null;
    const [first, ...rest] = brakeApart(s.ledger);
    const because = 'the brake was open and the pedal was not called firm since';
    return first
      ? no(
          `${because}; ${isOpenWords(first)}`,
          'bring the brake together, then press the pedal until firm, and call it',
          [first, ...rest],
        )
      : no(because, 'press the pedal until firm, and call it', ['vehicle']);
  }),
  wheelsSnug,
  gate('steering-not-tight', 'T7', (s) => {
    const h = holesOfRole(s, 'steering').find((one) => !isClosed(s.ledger, one));
    return h
      ? no(`steering: ${subjectText(`hole:${h.hole}`)} is not closed`, 'bring the steering tight', [`hole:${h.hole}`])
      : null;
  }),
  gate('car-still-up', 'T1', (s) => stillIn(inOfSort(s, ['stand', 'jack', 'block'])[0]?.temporary)),
];
const hasRun = gate('not-run-yet', 'T6', (s) => {
  const one = notRunSince(s.ledger);
  return one
    ? no(
        `${one.name} was opened, and the engine has not run since`,
        one.orPressure ? 'start it first, or check for leaks under pressure' : 'start it first',
      )
    : null;
});
/** By its own power the engine runs. */
const mayRun = [...runGates, hasRun].map(
  (one): Guard<{ how?: 'own power' | 'by hand' }> => ({
    ...one,
    check: (s, said) => (said.how === 'own power' ? one.check(s, said) : null),
  }),
);
const move = verb(
  'move-car',
  () => z.strictObject({ how: z.enum(['own power', 'by hand']).optional() }),
  [...mayMove, ...mayRun],
  (_s, said) => [{ kind: 'car-moved', how: said.how ?? 'by hand' }],
);
/** Pressed on an open brake the pedal drives a piston out, and finds no firmness that would last. Common practice, no source. */
const brakeTogether = gate('brake-still-open', 'T7', (s) => {
  const [first, ...rest] = brakeApart(s.ledger);
  return first
    ? no(`${isOpenWords(first)}: the pedal would drive a piston out, or air in`, 'bring the brake together first', [
        first,
        ...rest,
      ])
    : null;
});
const pedal = verb('pedal-firm', nothing, [brakeTogether], () => [{ kind: 'pedal-firm' }]);
const road = verb(
  'road-test',
  nothing,
  [
    ...mayMove,
    // T6: what keeps the engine from running keeps the car off the road.
    ...runGates,
    gate('not-on-the-road-yet', 'T7', (s) => {
      const h = [...every(s.ledger, 'hole')].find((one) => isTouched(one) && !isClosed(s.ledger, one));
      return h
        ? no(`${subjectText(`hole:${h.hole}`)} is not closed`, 'close it before the road', [`hole:${h.hole}`])
        : null;
    }),
    hasRun,
  ],
  () => [{ kind: 'road-tested' }],
);
const waive = verb(
  'waive-road-test',
  () => z.strictObject({ who: personSchema, because: reasonSchema }),
  [],
  (_s, said) => [{ kind: 'road-test-waived', ...said }],
);
const toolsCall = verb('tools-out', nothing, [], () => [{ kind: 'tools-out' }]);

export const carVerbs = [start, lower, move, pedal, road, waive, toolsCall];
