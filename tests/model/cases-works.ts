// Hand-made jobs about parts, connections, temporaries, fluids and counts.
import { area, back, type Case, cleared, count, entry, found, job, m6, off, toolsOut } from './job-said.ts';

const cover = area('cover');
const one = [found('cover/1', 'f3.1'), off('cover/1', 'f3.1')];
const hose = entry('connection-declared', { connection: 'hose', circuit: 'coolant' });
const drained = entry('fluid-drained', { circuit: 'coolant' });
const filled = entry('fluid-filled', { circuit: 'coolant', name: 'coolant' });
const checked = entry('leak-checked', { circuit: 'coolant', how: 'after running' });
const belt = entry('part-declared', { part: 'belt', heldBy: [] });
const strayFound = entry('stray-found', { stray: 's2.1', spec: m6, at: 'tray:1' });

export const workCases: Case[] = [
  {
    name: '[F3 F4] a finding is open until closed, and keeps its hole open',
    job: job(
      cover,
      [...one, entry('finding-made', { finding: 'd3.1', at: 'hole:cover/1', what: 'thread stripped' })],
      back('cover/1', 'f3.1'),
      cleared,
    ),
    open: ['finding-open finding:d3.1', 'hole-open hole:cover/1'],
  },
  {
    name: '[F3] closed twice is a misfit',
    job: job(
      entry('finding-made', { finding: 'd2.1', at: 'vehicle', what: 'scratch' }),
      entry('finding-closed', { finding: 'd2.1', at: 'vehicle', how: 'accepted', who: 'Ada' }),
      entry('finding-closed', { finding: 'd2.1', at: 'vehicle', how: 'declined' }),
    ),
    open: ['misfit line:4'],
  },
  {
    name: '[F6] masked areas stay open until unmasked',
    job: job(entry('all-masked', { areas: ['cover', 'pump'] }), entry('all-unmasked', { areas: ['pump'] }), toolsOut),
    open: ['masked area:cover'],
  },
  {
    name: '[O6] companions are called seen after the area was last opened, a part of it counts too',
    job: job(
      area('cover', { companions: ['dowel'], blindHoles: true, marked: true }),
      entry('part-declared', { part: 'lid', heldBy: ['cover/1'] }),
      entry('part-removed', { part: 'lid' }),
      [entry('companions-seen', { area: 'cover' }), entry('blind-holes-dry', { area: 'cover' })],
      entry('part-fitted', { part: 'lid' }),
      toolsOut,
    ),
    open: ['direction area:cover'],
  },
  {
    name: '[T1] a temporary in is open, and so is the hole it is at',
    job: job(
      cover,
      one,
      back('cover/1', 'f3.1'),
      entry('temporary-put-in', { temporary: 'rag', sort: 'rag', at: 'hole:cover/1' }),
      cleared,
    ),
    open: ['hole-open hole:cover/1', 'temporary-in temporary:rag'],
  },
  {
    name: '[T1] one that is not in can not come out',
    job: job(entry('temporary-taken-out', { temporary: 'rag' }), toolsOut),
    open: ['misfit line:2'],
  },
  {
    name: '[T2] parted and made for now is not made',
    job: job(
      hose,
      entry('connection-parted', { connection: 'hose' }),
      entry('connection-made', { connection: 'hose', forNow: true }),
      entry('connection-parted', { connection: 'wire' }),
      toolsOut,
    ),
    open: ['circuit-unchecked circuit:coolant', 'connection-parted connection:wire', 'for-now connection:hose'],
  },
  {
    name: '[T3] a replaced part wants a verdict on the old one',
    job: job(
      belt,
      entry('part-removed', { part: 'belt' }),
      entry('box-filled', { name: 'new belt', sort: 'part', quantity: 1 }),
      entry('part-replaced', { part: 'belt', from: 'new belt' }),
      toolsOut,
    ),
    open: ['part-not-judged part:belt'],
  },
  {
    name: '[T3] the verdict may come before the new one goes on',
    job: job(
      belt,
      entry('part-removed', { part: 'belt' }),
      entry('part-judged', { part: 'belt', verdict: 'worn' }),
      entry('box-filled', { name: 'new belt', sort: 'part', quantity: 1 }),
      entry('part-replaced', { part: 'belt', from: 'new belt' }),
      toolsOut,
    ),
    open: [],
  },
  {
    name: '[T4] the parts box is empty at the end, and gives no more than it has',
    job: job(
      entry('box-filled', { name: 'rings', sort: 'supply', quantity: 3 }),
      entry('box-used', { name: 'rings', quantity: 1 }),
      entry('box-moved', { name: 'rings', quantity: 3, to: 'supplier' }),
    ),
    open: ['box-left box:rings', 'misfit line:4'],
  },
  {
    name: '[T5] drained is filled, then leak-checked, and a parted hose undoes the check',
    job: job(hose, drained, filled, checked, entry('connection-parted', { connection: 'hose' }), [
      entry('connection-made', { connection: 'hose' }),
      toolsOut,
    ]),
    open: ['circuit-unchecked circuit:coolant'],
  },
  {
    name: '[T5] what is behind a face that was opened is checked, drained or not, and stays so',
    job: job(
      cover,
      entry('face-declared', { face: 'lid', area: 'cover', pressedBy: ['cover/1'], keepsIn: ['oil', 'coolant'] }),
      one,
      [...back('cover/1', 'f3.1'), toolsOut, count(0)],
      entry('leak-checked', { circuit: 'coolant', how: 'under pressure' }),
    ),
    open: ['circuit-unchecked circuit:oil'],
  },
  {
    name: '[T5] drained and not filled is empty, not unchecked',
    job: job(hose, drained, toolsOut),
    open: ['circuit-empty circuit:coolant'],
  },
  {
    name: '[T5] filled and checked is done',
    job: job(hose, drained, filled, checked, toolsOut),
    open: [],
  },
  {
    name: '[T7] a brake area opened wants a firm pedal and a road test, after it',
    job: job(
      area('caliper', { role: 'brake' }),
      entry('pedal-firm', {}),
      entry('road-tested', {}),
      [found('caliper/1', 'f5.1'), off('caliper/1', 'f5.1')],
      back('caliper/1', 'f5.1'),
      cleared,
    ),
    open: ['pedal vehicle', 'road-test vehicle'],
  },
  {
    name: '[T7] a brake is one by its name: pads drawn, a caliper no plan knows, a brake hose of no area',
    job: job(
      area('Calipers', {}),
      entry('part-removed', { part: 'pads' }),
      entry('part-fitted', { part: 'pads' }),
      entry('pedal-firm', {}),
      entry('road-tested', {}),
      [found('Calipers/1', 'f5.1'), off('Calipers/1', 'f5.1')],
      back('Calipers/1', 'f5.1'),
      entry('pedal-firm', {}),
      entry('road-tested', {}),
      entry('connection-parted', { connection: 'brake hose' }),
      entry('connection-made', { connection: 'brake hose' }),
      cleared,
    ),
    open: ['pedal vehicle', 'road-test vehicle'],
  },
  {
    name: '[T8] a job that waits is not done',
    job: job(entry('job-waiting', { who: 'Ada', because: 'parts on order' })),
    open: ['waiting vehicle'],
  },
  {
    name: '[K1] a count stands until something moves',
    job: job(cover, one, count(1), back('cover/1', 'f3.1'), toolsOut),
    open: ['tray-uncounted tray:1'],
  },
  {
    name: '[K1] and not again when as many lie there as before',
    job: job(cover, count(0), [found('cover/1', 'f4.1'), off('cover/1', 'f4.1')], back('cover/1', 'f4.1'), toolsOut),
    open: ['tray-uncounted tray:1'],
  },
  {
    name: '[K2] a count that differs from the ledger does not stand',
    job: job(cover, one, back('cover/1', 'f3.1'), [toolsOut, count(1)]),
    open: ['tray-uncounted tray:1'],
  },
  {
    name: '[K3] a stray lies in its tray until settled',
    job: job(strayFound, count(1)),
    open: ['stray stray:s2.1', 'tray-not-empty tray:1'],
  },
  {
    name: '[K3] a stray said to lie in another tray: the count there agrees, where it lay it does not',
    job: job(strayFound, count(1), entry('stray-moved', { stray: 's2.1', from: 'tray:1', to: 'tray:2' })),
    open: ['stray stray:s2.1', 'tray-not-empty tray:2', 'tray-uncounted tray:1', 'tray-uncounted tray:2'],
  },
  {
    name: '[K3] a stray scrapped is gone from the tray',
    job: job(strayFound, entry('stray-settled', { stray: 's2.1', at: 'tray:1', as: 'scrapped', who: 'Ada' }), count(0)),
    open: [],
  },
  {
    name: '[K4] without a plan the holes are counted, levels together, and one never called shows',
    job: job(
      entry('area-declared', { area: 'cover' }),
      [
        found('cover/1', 'f3.1'),
        found('cover/1 washer', 'f3.2', { kind: 'washer' }),
        off('cover/1', 'f3.1'),
        off('cover/1 washer', 'f3.2'),
      ],
      [...back('cover/1', 'f3.1'), ...back('cover/1 washer', 'f3.2', { spec: { kind: 'washer' } })],
      [entry('holes-counted', { area: 'cover', count: 2 }), ...cleared],
    ),
    open: ['holes-not-counted area:cover'],
  },
];
