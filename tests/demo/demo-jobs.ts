// The two demo jobs as call lines: an invented vehicle on its second day, and one that has left. Lines beginning with
// "~" let time pass: "~ 4 min", "~ away 15 h" closes the program and opens it again.

export type DemoJob = { file: string; name: string; beganMs: number; zoneMin: number; lines: readonly string[] };

const many = (lines: string) =>
  lines
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean);
const times = (count: number, line: string) => Array.from({ length: count }, () => line);

const daysWork = many(`
  job "five-door hatchback, inline four" registration DEMO-4
  odometer 164200 km
  bench 21 50
  plan inline-four belt service for timing belt
  plan inline-four belt service for coolant pump
  plan inline-four belt service for cam cover gasket
  service carrier reseal
  label joint sealant moisture skin 10 fill 2 run 4 full 12 at 21 50 lowest 5
  box new timing belt for timing belt
  box new auxiliary belt for auxiliary belt
  box new tensioner for tensioner
  box new idler for idler
  box new pump for pump
  box new gasket for gasket
  box new crank bolt as bolt hex 19 M14x1.5x65 one-use
  box new cover bolt as bolt hex 10 M6x20
  box new bracket bolt as bolt hex 14 M10x1.25x60 10.9
  box thread insert
  box tube of sealant
  ~ 6 min
  parted battery earth
  in right stand
  area front carrier
  use bolt hex 13 M8x25 8.8
  tray 6
`);

export const midJob: DemoJob = {
  file: 'hatchback-day-two.countback.jsonl',
  name: 'hatchback day two',
  // 2026-03-03 08:05 local, a Tuesday; the offset is one hour east.
  beganMs: Date.UTC(2026, 2, 3, 7, 5),
  zoneMin: 60,
  lines: [
    ...daysWork,
    ...times(8, 'off'),
    'part off carrier held by 1-8',
    'face upper carrier face pressed by 1-4 keeps in engine oil under carrier with a bead',
    'face lower carrier face pressed by 5-8 keeps in engine oil with a bead',
    '~ 25 min',
    'holes 8',
    'clean upper carrier face',
    'bead upper carrier face with joint sealant',
    ...times(4, 'back'),
    'pass complete',
    '~ 3 min',
    'pass complete',
    'clean lower carrier face',
    'bead lower carrier face with joint sealant',
    ...times(2, 'back'),
    '~ 26 min',
    'note the telephone rang in the middle of the lower face',
    'area right front wheel',
    'tray 1',
    ...times(5, 'off'),
    'area arch liner',
    ...times(7, 'off'),
    '~ 12 min',
    'part off auxiliary belt',
    'in jack with block',
    'area mount bracket',
    'tray 2',
    'slack 4',
    'slack 5',
    'off 1',
    'off 2',
    'wrong one 3 as bolt hex 17 M10x1.25x50 8.8',
    '~ 9 min',
    'parted harness clip',
    'area upper belt cover',
    'tray 3',
    ...times(5, 'off'),
    '~ away 15 h',
    'clock right',
    'to marks',
    'in flywheel lock',
    'area crank pulley',
    'tray 2',
    'off',
    'area lower belt cover',
    'tray 3',
    ...times(3, 'off'),
    'missing 4',
    ...times(2, 'off'),
    '~ 14 min',
    'in cam clamp',
    'in crank pin',
    'part off timing belt',
    'area tensioner and idler',
    'tray 4',
    ...times(2, 'off'),
    'parted coil rail plug',
    'parted cam sensor plug',
    'parted front breather',
    'parted rear breather',
    'area cam cover',
    'tray 5',
    ...times(10, 'off'),
    'finding at cam cover 7 thread stripped in the head',
    'part off gasket',
  ],
};

export const finishedJob: DemoJob = {
  file: 'van-thermostat.countback.jsonl',
  name: 'van thermostat',
  beganMs: Date.UTC(2026, 1, 9, 8, 20),
  zoneMin: 60,
  lines: [
    ...many(`
      job "long van, inline four" registration DEMO-7
      odometer 231900 km
      service thermostat and its housing
      circuit coolant with coolant mix
      label joint sealant moisture skin 10 run 4 full 12 at 21 50 lowest 5
      box new thermostat for thermostat
      box tube of sealant
      bench 20 45
      parted battery earth
      drained coolant
      connection top hose of coolant
      parted top hose
      area thermostat housing
      role engine
      has companions rubber ring
      by torque
      use bolt hex 10 M6x25 8.8
      tray 1
      off
      off
      damaged 3 because thread torn by the last hands
      part off housing
      part off thermostat held by nothing
      scrap 3
      box new housing bolt as bolt hex 10 M6x25 8.8
      ~ 35 min
      face housing face pressed by 1-3 keeps in coolant under housing with a bead
      holes 3
      companions
      clean housing face
      renewed thermostat old worn
      bead housing face with joint sealant
      used tube of sealant
      back 1
      back 2
      new 3
      pass complete
      pass complete
      put right thermostat housing 3
      made top hose
      made battery earth
      ~ away 23 h
      clock right
      filled coolant with coolant mix litres 6.5
      oil level
      tools out
      all others empty
      start
      ~ 20 min
      leak check coolant
      road tested
      service done thermostat and its housing
      due coolant look over at 233000
      release by the workshop
    `),
  ],
};
