// The lines of the awkward job that may be left out and do no harm, or get a later line refused and no more; and why.
import {
  areaInUse,
  behindClosed,
  criticalAsks,
  drainedAnyway,
  emptiedTray,
  eyeAlone,
  fluidNamed,
  methodNoted,
  nameOfJob,
  noRule,
  nowhere,
  onItsWheels,
  partUnnamed,
  type Reasons,
  roleAsks,
  trayInUse,
} from './reasons.ts';

export const awkwardHarmless: Reasons = {
  [nameOfJob]: { [nowhere]: ['job hatchback, nothing as it should be'] },
  [trayInUse]: { [nowhere]: ['tray 1'], 'left front wheel': ['tray 1'] },
  [areaInUse]: { 'left front wheel': ['area left front wheel'] },
  [emptiedTray]: { 'belt cover': ['tray 3'], 'timing case': ['tray 1'] },
  [onItsWheels]: { 'left front wheel': ['lowered', 'lowered'] },
  [noRule]: { 'left front wheel': ['moved by hand'], 'belt cover': ['to marks'] },
  [drainedAnyway]: { 'sump plug': ['drained engine oil'] },
  [roleAsks]: {
    'left front wheel': ['role wheel'],
    'front caliper': ['role brake'],
    'ball joint': ['role steering'],
    'sump plug': ['role engine'],
    'exhaust flange': ['role engine'],
    tensioner: ['role drive'],
    'idler plate': ['role drive'],
    manifold: ['role engine'],
    'timing case': ['role engine'],
  },
  [criticalAsks]: { 'left front wheel': ['critical'], 'front caliper': ['critical'], 'ball joint': ['critical'] },
  [methodNoted]: {
    'left front wheel': ['by torque'],
    'front caliper': ['by torque'],
    'ball joint': ['by castle'],
    'sump plug': ['by torque'],
    'exhaust flange': ['by torque'],
    'belt cover': ['by sleeve'],
    tensioner: ['by torque'],
    'idler plate': ['by torque'],
    manifold: ['by torque'],
    'timing case': ['by torque'],
    'splash guard': ['by hand'],
  },
  [behindClosed]: { 'belt cover': ['behind area belt cover is rotation belt drive as a gate'] },
  [eyeAlone]: {
    'left front wheel': ['use nut hex 19 M12x1.5'],
    'front caliper': ['use bolt hex 15 M10x1.25x30 10.9'],
    'ball joint': ['use nut hex 19 M14x1.5'],
    'sump plug': ['use plug hex 17 M14x1.5'],
    'exhaust flange': ['use nut hex 14 M10x1.25'],
    'belt cover': ['use bolt hex 10 M6x35'],
    tensioner: ['use bolt hex 14 M10x1.25x45'],
    'idler plate': ['use bolt hex 12 M8x30 8.8'],
    'coil bracket': ['use bolt hex 10 M6x20'],
    manifold: ['found 3 as bolt hex 13 M8x30 8.8'],
    'timing case': ['use bolt hex 10 M6x30'],
    'splash guard': ['use screw hex 8 M6x12', 'use screw hex 8 M6x12'],
  },
  [partUnnamed]: {
    'left front wheel': ['part off wheel'],
    'front caliper': ['part off caliper'],
    'exhaust flange': ['part off front pipe held by 1-3'],
    'belt cover': ['part off belt cover'],
    manifold: ['part off manifold held by 1-3'],
    'timing case': ['part off timing case'],
  },
  [fluidNamed]: { 'ball joint': ['circuit engine oil with engine oil'] },
  'the search is asked for where something stays lost, and the magnet found it': {
    'hose bracket': ['searched hose bracket 2 by magnet'],
  },
  'what was called at 7 made the check fall, whole or not; the one made after it stands': {
    tensioner: ['tension right by play'],
  },
  'a hole as found wants nothing': {
    tensioner: ['wants idler plate 7 bolt hex 12 M8x22 8.8 because as its neighbours'],
  },
};

/** Of the awkward job: a later line is refused, and the rest goes on to a release all the same. */
export const awkwardRefused: Reasons = {
  'never ordered: it can not be called done': {
    [nowhere]: ['service oil and timing case', 'service front brake', 'service exhaust gasket'],
  },
  'never in the box: its use is refused': { [nowhere]: ['box tube of joint sealant', 'box bottle of flange sealant'] },
  'never called in: taking it out is refused': {
    [nowhere]: ['in stand as stand at area left front wheel'],
    'front caliper': ['in caliper strap as strap at area front caliper'],
    'left front wheel': ['in stand as stand at area left front wheel'],
    'belt cover': ['in cam lock as lock'],
  },
  'on for now is refused of what never came off; it is called off once more, after the car was moved': {
    'left front wheel': ['off 1', 'off 2', 'off 3', 'off 4', 'off 5'],
  },
  'the car stays on its stand: coming down and moving are refused, and the wheel comes off again all the same': {
    'left front wheel': ['for now 1', 'for now 2', 'for now 3', 'for now 4', 'for now 5', 'pass', 'out stand'],
  },
  'nobody said that there is a drive: turns, marks and tension are refused': {
    'belt cover': ['drive belt drive over tensioner, idler plate with belt tensioner set turns 2'],
  },
  'nobody said that there is a sealing face: cleaning it and its beads are refused': {
    'timing case': ['face timing case face pressed by 1-6 keeps in engine oil under timing case with 2 beads'],
  },
  'never called off: its coming back is refused': {
    tensioner: ['part off belt held by nothing'],
  },
  'never called lost: search and finding are refused, and it lies in its tray': {
    'hose bracket': ['lost hose bracket 2 reaches the works at belt bay'],
  },
  'the rest of this check is refused; what was called at 7 made it fall, and the one made after it stands': {
    tensioner: ['tensioner live', 'turned 2', 'locks slide'],
  },
  'never called waiting: going on is refused': {
    tensioner: ['waiting for supplier because manifold bolt on order'],
  },
};
