// Lines no call would write: entries of the job said again, or said of something else, of the right shape all the same.
// A forged file may hold any of them.
import type { Entry } from '../../src/job/entry.ts';
import { every } from '../../src/job/ledger.ts';
import type { Bench } from './bench.ts';

type Fields = Record<string, unknown>;

/** Fields whose words another entry's may take the place of: `from` by any place, `fastener` by any fastener. */
const places = ['from', 'to', 'at', 'in'];
const exchangeable = [
  'hole',
  'fastener',
  'piece',
  'part',
  'tray',
  'area',
  'finding',
  'stray',
  'lost',
  'temporary',
  'name',
];

function saidSoFar(b: Bench, field: string): unknown[] {
  const entries = b.lines().flatMap((line) => line.entries as readonly Fields[]);
  const of = places.includes(field) ? places : [field];
  return entries.flatMap((entry) => of.flatMap((one) => (entry[one] === undefined ? [] : [entry[one]])));
}

/** The entry with one of its names replaced by another that the job has spoken of. */
function saidOfAnother(b: Bench, entry: Entry): Fields {
  const fields = Object.keys(entry).filter((field) => places.includes(field) || exchangeable.includes(field));
  const field = b.chance.any(fields);
  if (field === undefined) return entry;
  return { ...entry, [field]: b.chance.any(saidSoFar(b, field)) ?? (entry as Fields)[field] };
}

/** A new part on, and no word of the old one: no call forgets it. */
function renewedWithoutAWord(b: Bench): Fields[] {
  const part = b.chance.any([...every(b.ledger(), 'part')].filter((one) => one.off))?.part;
  if (part === undefined) return [];
  return [
    { kind: 'box-filled', name: `other ${part}`, sort: 'part', quantity: 1, replaces: part },
    { kind: 'part-replaced', part, from: `other ${part}` },
  ];
}

/** What fits physically and stands against a rule: the ledger takes it, and what it costs must be seen. */
function outOfTurn(b: Bench): Fields | undefined {
  const hole = b.chance.of([...b.car.holes.keys()]);
  const drive = b.car.drives[0];
  const last = b.lines().length;
  return b.chance.of<Fields | undefined>([
    { kind: 'released', who: 'Ada' },
    { kind: 'reopened', who: 'Ada', because: 'knocks' },
    { kind: 'job-resumed' },
    { kind: 'job-opened', vehicle: { label: 'another' } },
    { kind: 'hole-left-empty', hole, who: 'Ada', because: 'none' },
    { kind: 'hole-found-empty', hole },
    { kind: 'calls-struck', lines: [b.chance.whole(1, last + 2), b.chance.whole(1, last + 2)] },
    { kind: 'calls-restored', lines: [b.chance.whole(1, last + 2)] },
    { kind: 'holes-exchanged', one: hole, other: b.chance.of([...b.car.holes.keys()]), because: 'forged' },
    b.car.faces[0] ? { kind: 'bead-laid', face: b.car.faces[0], label: b.chance.of(b.car.products) } : undefined,
    ...(drive
      ? [
          { kind: 'rotation-begun', drive },
          { kind: 'crank-turned', drive, quarters: b.chance.of([4, 8, 16]) },
          { kind: 'mark-read', drive, mark: b.chance.of(['cam', 'crank', 'other']), teethOff: 0 },
          { kind: 'locks-slid', drive },
          { kind: 'tension-read', drive, how: 'play', right: b.chance.maybe(0.8) },
          { kind: 'tension-reset', drive },
          { kind: 'bind-explained', drive, cause: 'forged' },
        ]
      : []),
  ]);
}

/** What one forged line says. */
export function forgedEntries(b: Bench): Fields[] {
  const roll = b.chance.roll();
  if (roll < 0.08) return renewedWithoutAWord(b);
  if (roll < 0.35) return [outOfTurn(b)].filter((entry) => entry !== undefined);
  const entry = b.chance.of(b.chance.of(b.lines()).entries);
  return [roll < 0.5 ? entry : saidOfAnother(b, entry)];
}
