// The reference job, call by call, as a mechanic makes them: taken from the plan, or free with areas made on the spot.
// The strip says what was found; the build is the same whoever declared what there is.
import type { Entry } from '../../src/job/entry.ts';
import type { Ledger } from '../../src/job/ledger.ts';
import type { Said } from '../../src/job/said.ts';
import type { Spec } from '../../src/job/spec.ts';
import { declarationsOf } from '../../src/plan/declarations.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { Script, Step } from './play.ts';
import {
  back,
  bought,
  countTrays,
  fresh,
  make,
  numbered,
  off,
  part,
  pass,
  putIn,
  putRight,
  removePart,
  replace,
  slack,
  takeOut,
  tight,
  upTo,
} from './words.ts';

const wheelNut: Spec = { kind: 'nut', head: 'hex 19', thread: 'M12x1.5' };
const linerScrew: Spec = { kind: 'screw', head: 'hex 10', thread: 'M6', lengthMm: 16 };
const linerClip: Spec = { kind: 'clip' };
const bracketBolt: Spec = { kind: 'bolt', head: 'hex 14', thread: 'M10x1.25', lengthMm: 60, class: '10.9' };
const wrongBolt: Spec = { kind: 'bolt', head: 'hex 17', thread: 'M10x1.25', lengthMm: 50, class: '8.8' };
const bracketNut: Spec = { kind: 'nut', head: 'hex 17', thread: 'M12x1.25' };
const crankBolt: Spec = { kind: 'bolt', head: 'hex 19', thread: 'M14x1.5', lengthMm: 65, oneUse: true };
const m6 = (lengthMm: number): Spec => ({ kind: 'bolt', head: 'hex 10', thread: 'M6', lengthMm });
const tensionerBolt: Spec = { kind: 'bolt', head: 'hex 12', thread: 'M8x1.25', lengthMm: 40 };
const idlerBolt: Spec = { kind: 'bolt', head: 'hex 14', thread: 'M10x1.25', lengthMm: 45 };
const camCoverBolt: Spec = { kind: 'bolt', head: 'hex 8', thread: 'M6', lengthMm: 35, shouldered: true };

const wheel = numbered('right front wheel', upTo(5));
const liner = numbered('arch liner', upTo(7));
const upperCover = numbered('upper belt cover', upTo(5));
const lowerCover = numbered('lower belt cover', upTo(6));
const pump = numbered('coolant pump', upTo(6));
const camCover = numbered('cam cover', upTo(10));
const linerSpec = (hole: string): Spec => (/[357]$/.test(hole) ? linerClip : linerScrew);
const pumpSpec = (hole: string): Spec => m6(/[36]$/.test(hole) ? 55 : 25);

export const services = ['timing belt', 'coolant pump', 'cam cover gasket'] as const;

const arrival: Script = [
  { verb: 'open-job', label: 'inline-four on stands' },
  { verb: 'note-odometer', distance: 118_400 },
];
const partsBox: Script = [
  ...['auxiliary belt', 'timing belt', 'tensioner', 'idler', 'pump', 'gasket'].map((replaces) =>
    bought(`new ${replaces}`, { replaces }),
  ),
  bought('new crank bolt', { spec: crankBolt }),
  bought('new cover bolt', { spec: m6(20) }),
  bought('new bracket bolt', { spec: bracketBolt }),
  bought('thread insert'),
  bought('tube of sealant'),
];

/** What the plan declares, said by hand when there is none: flags before the first call, the rest when it is met. */
const declare = (...entries: Entry[]): Said => ({ verb: 'declare', entries });
const countHoles = (area: string, count: number): Said => ({ verb: 'count-holes', area, count });

type How = 'planned' | 'free';
const onlyFree = (how: How, ...steps: Step[]): Script => (how === 'free' ? steps : []);

function strip(how: How): Script {
  const seen = (spec: Spec) => (how === 'free' ? spec : undefined);
  const free = (...steps: Step[]) => onlyFree(how, ...steps);
  const area = (name: string, flags: object = {}) => free(declare({ kind: 'area-declared', area: name, ...flags }));
  const offAll = (holes: readonly string[], tray: string, spec: (hole: string) => Spec) =>
    holes.map((hole) => off(hole, tray, seen(spec(hole))));
  return [
    putIn('stand', ...(how === 'free' ? ['stand', 'area:right front wheel'] : [])),
    part('battery earth'),

    ...area('right front wheel', { role: 'wheel', critical: true, method: { by: 'torque' }, order: '13524'.split('') }),
    ...free(declare(...wheel.map((hole): Entry => ({ kind: 'hole-declared', hole, later: 'on-wheels' })))),
    ...offAll(wheel, '1', () => wheelNut),
    ...free(removePart('wheel', wheel), countHoles('right front wheel', 5)),

    ...area('arch liner', { method: { by: 'hand' } }),
    ...offAll(liner, '1', linerSpec),
    ...free(removePart('liner', liner), countHoles('arch liner', 7)),

    removePart('auxiliary belt'),
    putIn('jack with block', ...(how === 'free' ? ['jack'] : [])),

    ...area('mount bracket', { role: 'mount', critical: true, method: { by: 'torque' } }),
    ...free(
      declare(
        ...numbered('mount bracket', [4, 5]).map(
          (hole): Entry => ({ kind: 'hole-declared', hole, slackOnly: true, later: 'on-wheels' }),
        ),
      ),
    ),
    slack('mount bracket/4', seen(bracketNut)),
    slack('mount bracket/5', seen(bracketNut)),
    off('mount bracket/1', '2', seen(bracketBolt)),
    off('mount bracket/2', '2', seen(bracketBolt)),
    { ...off('mount bracket/3', '2', wrongBolt), wrong: 'odd' },
    ...free(
      { verb: 'state-wants', hole: 'mount bracket/3', spec: bracketBolt, because: 'as its neighbours' },
      removePart('bracket', numbered('mount bracket', upTo(5))),
      countHoles('mount bracket', 5),
    ),

    part('harness clip'),
    ...area('upper belt cover', { method: { by: 'sleeve' } }),
    ...offAll(upperCover, '3', (hole) => m6(hole.endsWith('/3') ? 45 : 25)),
    ...free(removePart('upper cover', upperCover), countHoles('upper belt cover', 5)),

    ...free(
      declare({
        kind: 'drive-declared',
        drive: 'timing drive',
        areas: ['tensioner and idler', 'coolant pump'],
        parts: ['timing belt'],
        marks: ['crank mark', 'intake cam mark', 'exhaust cam mark'],
        turns: 2,
        tensioner: 'sprung',
        crankBolt: 'crank pulley/1',
        crankKeyed: true,
      }),
    ),
    { verb: 'turn-to-marks', drive: 'timing drive' },
    putIn('flywheel lock', ...(how === 'free' ? ['lock'] : [])),
    ...area('crank pulley', { role: 'drive', method: { by: 'torque-angle' } }),
    off('crank pulley/1', '2', seen(crankBolt)),
    ...free(removePart('pulley', ['crank pulley/1']), countHoles('crank pulley', 1)),

    ...area('lower belt cover', { keepClean: true, method: { by: 'sleeve' } }),
    ...offAll(numbered('lower belt cover', [1, 2, 3]), '3', () => m6(20)),
    { verb: 'find-empty', hole: 'lower belt cover/4' },
    ...offAll(numbered('lower belt cover', [5, 6]), '3', () => m6(20)),
    ...free(removePart('lower cover', lowerCover), countHoles('lower belt cover', 6)),

    putIn('cam clamp', ...(how === 'free' ? ['lock'] : [])),
    putIn('crank pin', ...(how === 'free' ? ['pin'] : [])),
    removePart('timing belt'),

    ...area('tensioner and idler', { role: 'drive', keepClean: true, method: { by: 'torque' } }),
    ...free(declare({ kind: 'hole-declared', hole: 'tensioner and idler/1', later: 'after-belt' })),
    off('tensioner and idler/1', '4', seen(tensionerBolt)),
    ...free(removePart('tensioner', ['tensioner and idler/1'])),
    off('tensioner and idler/2', '4', seen(idlerBolt)),
    ...free(removePart('idler', ['tensioner and idler/2']), countHoles('tensioner and idler', 2)),

    ...free(
      declare(
        { kind: 'circuit-declared', circuit: 'coolant', fluid: 'coolant mix' },
        { kind: 'circuit-declared', circuit: 'engine oil', fluid: 'engine oil' },
        { kind: 'connection-declared', connection: 'bottom hose', circuit: 'coolant' },
      ),
    ),
    part('bottom hose'),
    { verb: 'drain', circuit: 'coolant' },
    ...area('coolant pump', {
      role: 'engine',
      keepClean: true,
      method: { by: 'torque' },
      companions: ['dowel one', 'dowel two', 'O-ring'],
    }),
    ...offAll(pump, '4', pumpSpec),
    ...free(removePart('pump', pump), countHoles('coolant pump', 6)),

    ...['coil rail plug', 'cam sensor plug', 'front breather', 'rear breather'].map(part),
    ...area('cam cover', {
      role: 'engine',
      keepClean: true,
      method: { by: 'shoulder' },
      order: ['3', '8', '2', '7', '4', '9', '1', '6', '5', '10'],
    }),
    ...offAll(camCover, '5', () => camCoverBolt),
    { verb: 'make-finding', at: 'hole:cam cover/7', what: 'thread stripped in the head' },
    ...free(removePart('cam cover', camCover), countHoles('cam cover', 10)),
    removePart('gasket'),
    ...free(
      declare(
        {
          kind: 'face-declared',
          face: 'cam cover face',
          area: 'cam cover',
          pressedBy: camCover,
          keepsIn: ['engine oil'],
          part: 'cam cover',
          bead: true,
        },
        {
          kind: 'face-declared',
          face: 'pump face',
          area: 'coolant pump',
          pressedBy: pump,
          keepsIn: ['coolant'],
          part: 'pump',
        },
        {
          kind: 'product-declared',
          label: {
            product: 'joint sealant',
            kind: 'moisture',
            skinMinutes: 10,
            runHours: 6,
            fullHours: 24,
            labelCelsius: 23,
            labelHumidityPct: 50,
            lowestCelsius: 5,
          },
        },
        ...order,
      ),
    ),
    putIn('mask', ...(how === 'free' ? ['mask', 'area:cam cover'] : [])),
    { verb: 'mask-all' },
  ];
}

const behind = (front: string, one: string): Entry => ({
  kind: 'behind-declared',
  front,
  behind: one,
  until: 'closed',
  from: 'said',
});
/** The order a mechanic without a plan would state: what may not be forgotten behind a cover. */
const order: Entry[] = [
  { ...behind('area:lower belt cover', 'rotation:timing drive'), gate: true } as Entry,
  behind('area:lower belt cover', 'part:timing belt'),
  behind('part:timing belt', 'area:tensioner and idler'),
  behind('part:timing belt', 'area:coolant pump'),
  behind('area:cam cover', 'part:gasket'),
  behind('area:mount bracket', 'area:upper belt cover'),
  behind('area:crank pulley', 'area:lower belt cover'),
];

const repair = (step: string, more: object = {}): Said => ({
  verb: 'repair-thread',
  hole: 'cam cover/7',
  step,
  ...more,
});

const headAndPump: Script = [
  repair('depth', { millimetres: 16 }),
  repair('drilled', { millimetres: 6.3 }),
  repair('tapped'),
  repair('cleaned'),
  repair('insert', { millimetres: 12 }),
  { verb: 'use-from-box', name: 'thread insert', at: 'hole:cam cover/7' },
  repair('tried', { words: 'by hand' }),
  putRight('hole:cam cover/7'),
  { verb: 'unmask-all' },
  takeOut('mask'),

  { verb: 'clean-face', face: 'cam cover face' },
  replace('gasket'),
  { verb: 'note-conditions', celsius: 21, humidityPct: 55 },
  { verb: 'lay-bead', face: 'cam cover face', product: 'joint sealant' },
  ...camCover.map(back),
  pass('cam cover'),
  { verb: 'use-from-box', name: 'tube of sealant', at: 'face:cam cover face' },
  pass('cam cover'),

  { verb: 'companions-seen', area: 'coolant pump' },
  replace('pump'),
  ...pump.map(back),
  pass('coolant pump'),
  pass('coolant pump'),
];

const beltAndCheck: Script = [
  replace('idler'),
  back('tensioner and idler/2'),
  tight('tensioner and idler/2'),
  tight('tensioner and idler/2'),
  replace('tensioner'),
  back('tensioner and idler/1'),
  tight('tensioner and idler/1'),
  replace('timing belt'),
  { verb: 'tensioner-live', drive: 'timing drive' },
  tight('tensioner and idler/1'),
  takeOut('cam clamp'),
  takeOut('crank pin'),
  takeOut('flywheel lock'),

  { verb: 'fit', hole: 'crank pulley/1', working: true },
  countTrays({ '1': 12, '2': 3, '3': 10, '4': 0, '5': 0 }),
  { verb: 'turn-crank', drive: 'timing drive', quarters: 4 },
  { verb: 'turn-crank', drive: 'timing drive', quarters: 4 },
  { verb: 'read-mark', drive: 'timing drive', mark: 'crank mark', teethOff: 0 },
  { verb: 'read-mark', drive: 'timing drive', mark: 'intake cam mark', teethOff: 0 },
  { verb: 'read-mark', drive: 'timing drive', mark: 'exhaust cam mark', teethOff: 0 },
  { verb: 'read-tension', drive: 'timing drive', how: 'pointer', right: true },
  { verb: 'remove', hole: 'crank pulley/1', to: 'scrap' },
];

const coversAndMount: Script = [
  ...numbered('lower belt cover', [1, 2, 3]).map(back),
  fresh('lower belt cover/4', 'new cover bolt'),
  putRight('hole:lower belt cover/4'),
  ...numbered('lower belt cover', [5, 6]).map(back),
  pass('lower belt cover'),
  pass('lower belt cover'),

  fresh('crank pulley/1', 'new crank bolt'),
  tight('crank pulley/1'),
  tight('crank pulley/1'),

  ...upperCover.map(back),
  pass('upper belt cover'),
  pass('upper belt cover'),

  { verb: 'scrap-own', hole: 'mount bracket/3' },
  back('mount bracket/1'),
  back('mount bracket/2'),
  fresh('mount bracket/3', 'new bracket bolt'),
  putRight('hole:mount bracket/3'),
  ...numbered('mount bracket', [1, 2, 3]).map(tight),
  ...numbered('mount bracket', [1, 2, 3]).map(tight),
  takeOut('jack with block'),
];

const wheelAndGround: Script = [
  replace('auxiliary belt'),
  ...liner.map(back),
  pass('arch liner'),
  pass('arch liner'),
  ...wheel.map(back),
  pass('right front wheel'),
  takeOut('stand'),
  { verb: 'lower-car' },
  ...numbered('mount bracket', [4, 5, 4, 5]).map(tight),
  pass('right front wheel'),

  ...['harness clip', 'coil rail plug', 'cam sensor plug', 'front breather', 'rear breather'].map(make),
  make('bottom hose'),
  make('battery earth'),
  { verb: 'fill-fluid', circuit: 'coolant', litres: 6.5 },
];

const leaving: Script = [
  { verb: 'see-oil-level' },
  countTrays({ '1': 0, '2': 0, '3': 0, '4': 0, '5': 0 }),
  { verb: 'tools-out' },
  { verb: 'start-engine' },
  { verb: 'check-leaks', circuit: 'coolant' },
  { verb: 'road-test' },
  { verb: 'look-again', holes: wheel },
  { verb: 'look-again', holes: numbered('mount bracket', upTo(5)) },
  ...services.map((service): Said => ({ verb: 'service-done', service })),
];

/** Monday: strip, head closed, check rotation. A night with the program closed. Tuesday: the rest, and full cure. */
const build: Script = [
  ...headAndPump,
  { minutes: 60 },
  ...beltAndCheck,
  { closedHours: 15 },
  { verb: 'confirm-clock' },
  ...coversAndMount,
  ...wheelAndGround,
  ...leaving,
  { minutes: 13 * 60 },
  { verb: 'release', who: 'the mechanic' },
];

export function plannedReferenceJob(plan: Plan): Script {
  const ordered = services.map(
    (service) =>
      (ledger: Ledger): Said => ({
        verb: 'order-service',
        service,
        declares: declarationsOf(plan, [service], ledger),
      }),
  );
  return [...arrival, ...ordered, ...partsBox, ...strip('planned'), { minutes: 90 }, ...build];
}

export function freeReferenceJob(): Script {
  const ordered = services.map((service): Said => ({ verb: 'order-service', service }));
  return [...arrival, ...ordered, ...partsBox, ...strip('free'), { minutes: 90 }, ...build];
}
