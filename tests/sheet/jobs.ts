// The jobs the sheet is tested on: a coolant pump behind a belt and an engine mount, told to its release or less far.
import { newStory, type Story } from './bench-story.ts';

const cover = { kind: 'bolt', head: 'hex 10', thread: 'M6', lengthMm: 25 } as const;
const mountBolt = { kind: 'bolt', head: 'hex 14', thread: 'M10x1.25', lengthMm: 60, class: '10.9' } as const;
const crankBolt = { kind: 'bolt', head: 'hex 19', thread: 'M14x1.5', lengthMm: 65, oneUse: true } as const;
const sealant = {
  product: 'grey sealant',
  kind: 'moisture',
  skinMinutes: 20,
  fillHours: 1,
  runHours: 4,
  fullHours: 24,
  labelCelsius: 23,
  labelHumidityPct: 50,
} as const;
const hole = (name: string, wants: object, more: object = {}) => ({
  kind: 'hole-declared',
  hole: name,
  wants,
  ...more,
});

export const declarations = [
  {
    kind: 'area-declared',
    area: 'pump',
    planned: true,
    method: { by: 'torque', newtonMetres: 10 },
    order: ['1', '3', '2'],
    companions: ['dowel', 'O-ring'],
    blindHoles: true,
  },
  ...['pump/1', 'pump/2', 'pump/3', 'pump/4'].map((one) => hole(one, cover)),
  {
    kind: 'area-declared',
    area: 'mount',
    planned: true,
    critical: true,
    role: 'mount',
    method: { by: 'torque-angle', stages: [{ newtonMetres: 40 }, { degrees: 90 }], with: 'oil' },
  },
  ...['mount/1', 'mount/2'].map((one) => hole(one, mountBolt)),
  { kind: 'area-declared', area: 'crank pulley', planned: true },
  hole('crank pulley/1', crankBolt),
  { kind: 'part-declared', part: 'pump', heldBy: ['pump/1', 'pump/2', 'pump/3'], renew: true },
  { kind: 'part-declared', part: 'bracket', heldBy: ['mount/1', 'mount/2'] },
  { kind: 'part-declared', part: 'belt', heldBy: [], renew: true },
  {
    kind: 'face-declared',
    face: 'pump face',
    area: 'pump',
    pressedBy: ['pump/1', 'pump/2', 'pump/3'],
    keepsIn: ['coolant'],
    part: 'pump',
    bead: true,
  },
  { kind: 'product-declared', label: sealant },
  { kind: 'circuit-declared', circuit: 'coolant', fluid: 'coolant mix' },
  {
    kind: 'drive-declared',
    drive: 'timing belt',
    areas: [],
    parts: ['belt'],
    marks: ['cam', 'crank'],
    turns: 2,
    tensioner: 'sprung',
    crankKeyed: true,
  },
  { kind: 'connection-declared', connection: 'bottom hose', circuit: 'coolant' },
  { kind: 'behind-declared', front: 'area:mount', behind: 'area:pump', until: 'closed', from: 'plan' },
] as const;

/** Opened, odometer noted, two services ordered, everything off. */
export function strippedJob(): Story {
  const s = newStory()
    .call('open-job', { label: 'bench car', registration: 'XX 12', notes: 'owner waits for a call' })
    .call('note-odometer', { distance: 84210 })
    .call('order-service', { service: 'pump and belt', declares: [...declarations] })
    .call('order-service', { service: 'wash' })
    .call('make-finding', { at: 'area:mount', what: 'rubber cracked', when: 'on arrival' })
    .call('make-finding', { at: 'part:pump', what: 'paint gone', when: 'on arrival' })
    .call('remove', { hole: 'crank pulley/1', to: 'tray:1' })
    .call('remove', { hole: 'mount/1', to: 'tray:1' })
    .call('remove', { hole: 'mount/2', to: 'tray:1' })
    .call('put-in', { temporary: 'crank pin', sort: 'pin' })
    .call('remove-part', { part: 'belt' })
    .call('part-connection', { connection: 'bottom hose' })
    .call('drain', { circuit: 'coolant' })
    .call('remove', { hole: 'pump/1', to: 'tray:2' })
    .call('remove', { hole: 'pump/2', to: 'tray:2' })
    .call('find-empty', { hole: 'pump/4' })
    .call('remove', { hole: 'pump/3', to: 'tray:2' });
  return s;
}

const openFinding = (s: Story, what: string): string => {
  for (const line of s.ledger.lines.all.slice(0, s.ledger.lines.length)) {
    for (const e of line.entries) if (e.kind === 'finding-made' && e.what === what) return e.finding;
  }
  throw new Error(`no finding ${what}`);
};
export const fastenerOf = (s: Story, name: string): string => {
  for (const line of s.ledger.lines.all.slice(0, s.ledger.lines.length)) {
    for (const e of line.entries) if (e.kind === 'fastener-found' && e.hole === name) return e.fastener;
  }
  throw new Error(`nothing found in ${name}`);
};

/** Thread repaired, bead laid, pump and belt back, check rotation at the second try, mount out of order. */
export function builtJob(): Story {
  const s = strippedJob();
  s.call('note', { words: 'thread of pump 2 gone' })
    .call('make-finding', { at: 'hole:pump/2', what: 'thread stripped' })
    .call('mask-all')
    .call('repair-thread', { hole: 'pump/2', step: 'depth', millimetres: 16 })
    .call('repair-thread', { hole: 'pump/2', step: 'drilled', millimetres: 6.3 })
    .call('repair-thread', { hole: 'pump/2', step: 'tapped', words: 'M6 for insert' })
    .call('repair-thread', { hole: 'pump/2', step: 'cleaned' })
    .call('repair-thread', { hole: 'pump/2', step: 'insert', millimetres: 12 })
    .call('repair-thread', { hole: 'pump/2', step: 'tried' })
    .call('unmask-all')
    .call('close-finding', { finding: openFinding(s, 'thread stripped'), how: 'put right' })
    .call('leave-empty', { hole: 'pump/4', who: 'Ola', because: 'no boss behind it' })
    .call('close-finding', { finding: openFinding(s, 'empty'), how: 'accepted', who: 'Ola', because: 'never had one' })
    .call('tell-owner', { finding: openFinding(s, 'rubber cracked'), said: 'not this year' })
    .call('close-finding', {
      finding: openFinding(s, 'rubber cracked'),
      how: 'declined',
      who: 'owner',
      because: 'not this year',
    })
    .call('close-finding', {
      finding: openFinding(s, 'paint gone'),
      how: 'accepted',
      who: 'Ola',
      because: 'looks only',
    })
    .later(20 * 60)
    .call('fill-box', { name: 'new pump', replaces: 'pump' })
    .call('fill-box', { name: 'new belt', replaces: 'belt' })
    .call('fill-box', { name: 'flanged bolt', spec: { ...cover, head: 'flange 10' } })
    .call('fill-box', { name: 'mount bolt 8.8', spec: { ...mountBolt, class: '8.8' } })
    .call('note-conditions', { celsius: 23, humidityPct: 55 })
    .call('clean-face', { face: 'pump face' })
    .call('lay-bead', { face: 'pump face', product: 'grey sealant' })
    .call('replace-part', { part: 'pump' })
    .call('judge-part', { part: 'pump', verdict: 'leaking', because: 'at the shaft' })
    .call('fit', { hole: 'pump/1' })
    .call('fit', { hole: 'pump/2' })
    .call('scrap-own', { hole: 'pump/3' })
    .call('fit', { hole: 'pump/3', box: 'flanged bolt' })
    .call('complete-pass', { area: 'pump' })
    .call('companions-seen', { area: 'pump' })
    .call('blind-holes-dry', { area: 'pump' })
    .call('tighten', { hole: 'pump/3', tool: 'torque wrench' }, { who: 'Kim' })
    .call('complete-pass', { area: 'pump', tool: 'torque wrench' }, { who: 'Kim' })
    .call('replace-part', { part: 'belt' })
    .call('tensioner-live', { drive: 'timing belt' })
    .call('take-out', { temporary: 'crank pin' })
    .call('count-trays', {
      counts: [
        { tray: '1', count: 3 },
        { tray: '2', count: 0 },
      ],
    })
    .call('turn-crank', { drive: 'timing belt', quarters: 8 })
    .call('read-mark', { drive: 'timing belt', mark: 'cam', teethOff: -1 })
    .call('turn-crank', { drive: 'timing belt', quarters: 8 })
    .call('read-mark', { drive: 'timing belt', mark: 'cam', teethOff: 0 })
    .call('read-mark', { drive: 'timing belt', mark: 'crank', teethOff: 0 })
    .call('read-tension', { drive: 'timing belt', how: 'pointer', right: true })
    .call('measure-fastener', {
      fastener: fastenerOf(s, 'crank pulley/1'),
      what: 'length under head',
      measuredMm: 65.2,
      limitMm: 66,
    })
    .call('fit', { hole: 'crank pulley/1' })
    .call('tighten', { hole: 'crank pulley/1', method: { by: 'torque', newtonMetres: 120.5 } })
    .call('tighten', { hole: 'crank pulley/1', method: { by: 'torque', newtonMetres: 120.5 } });
  return s;
}

/** To its release. */
export function releasedJob(): Story {
  const s = builtJob();
  s.call('fit', { hole: 'mount/1' })
    .call('scrap-own', { hole: 'mount/2' })
    .call('fit', { hole: 'mount/2', box: 'mount bolt 8.8', substitute: 'right class not in stock' })
    .call('tell-owner', { finding: openFinding(s, 'substitute fitted: right class not in stock') })
    .call('close-finding', {
      finding: openFinding(s, 'substitute fitted: right class not in stock'),
      how: 'accepted',
      who: 'Ola',
      because: 'until the right one is here',
    })
    .call('complete-pass', { area: 'mount' })
    .call('tighten', { hole: 'mount/2' })
    .call('tighten', { hole: 'mount/1' })
    .call('make-connection', { connection: 'bottom hose' })
    .call('note', { words: 'a call too many' });
  s.call('strike', { lines: [s.ledger.lines.length] })
    .later(26 * 60)
    .call('fill-fluid', { circuit: 'coolant', litres: 5.2 })
    .call('see-oil-level')
    .call('count-trays', {
      counts: [
        { tray: '1', count: 0 },
        { tray: '2', count: 0 },
      ],
    })
    .call('tools-out')
    .call('start-engine')
    .call('check-leaks', { circuit: 'coolant' })
    .call('look-again', { holes: ['mount/1', 'mount/2'], who: 'Bo' })
    .call('waive-road-test', { who: 'Ola', because: 'no number plates' })
    .call('note-due', { what: 'mount bolt, right class', on: '2026-12-01', atDistance: 85000 })
    .call('note-due', { what: 'coolant', on: '2030-11-01' })
    .call('service-done', { service: 'pump and belt' })
    .call('drop-service', { service: 'wash', because: 'frost' })
    .call('release', { who: 'Ola' });
  return s;
}
