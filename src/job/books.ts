// L12: two books that must agree. Flow is counted from the movements in the log, each booked from one account to
// another; stock is counted from where each fastener stands. By job, by area of origin and by exact spec; new ones from
// the parts box and strays are kept apart.
import type { Entry } from './entry.ts';
import { every, isStruck, type Ledger, lineAt, stateOf } from './ledger.ts';
import { specText } from './spec.ts';
import type { BoxState } from './states.ts';
import { areaOf, named, nameOf, sortOf } from './subjects.ts';

/** Where fasteners that came off or out of the box are now; `refitted` is in a hole. */
export type Account = 'refitted' | 'tray' | 'scrap' | 'owner' | 'supplier' | 'lost';
export type Book = Readonly<Record<string, Partial<Record<Account, number>>>>;
export type Books = { flow: Book; stock: Book; everOff: number };

function accountOf(place: string): Account | undefined {
  const sort = sortOf(place);
  if (sort === 'hole') return 'refitted';
  if (sort === 'tray') return 'tray';
  return sort === 'box' ? undefined : (sort as Account);
}
function groupsOf(origin: string, spec: string): string[] {
  switch (sortOf(origin)) {
    case 'hole':
      return ['job', `area ${areaOf(nameOf(origin))}`, `spec ${spec}`];
    case 'box':
      return ['new', `new ${spec}`];
    default:
      return ['strays', `strays ${spec}`];
  }
}

type Movement = { fastener: string; to: string };
function movementOf(entry: Entry): Movement | undefined {
  switch (entry.kind) {
    case 'fastener-removed':
    case 'fastener-moved':
      return { fastener: entry.fastener, to: entry.to };
    case 'fastener-fitted':
      return { fastener: entry.fastener, to: `hole:${entry.hole}` };
    case 'fastener-lost':
      return { fastener: entry.fastener, to: 'lost' };
    case 'stray-settled':
      return entry.fastener ? { fastener: entry.fastener, to: entry.at } : undefined;
    default:
      return undefined;
  }
}

/** A book being kept: each fastener or each lot from the box adds to the groups it belongs to. */
function ledgerBook() {
  const book: Record<string, Partial<Record<Account, number>>> = {};
  const add = (groups: readonly string[], account: Account | undefined, quantity = 1) => {
    if (!account) return;
    for (const group of groups) {
      const accounts = book[group] ?? {};
      book[group] = { ...accounts, [account]: (accounts[account] ?? 0) + quantity };
    }
  };
  return { book, add };
}

/** Handed on straight from the box, without ever being a fastener by name. */
const handedOn = ['supplier', 'owner', 'scrap', 'lost'] as const;
const groupsOfBox = (b: BoxState): string[] => groupsOf(`box:${b.name}`, specText(b.spec ?? {}));

const leavesItsHole = (entry: Entry): entry is Extract<Entry, { kind: 'fastener-removed' | 'fastener-lost' }> =>
  entry.kind === 'fastener-removed' || (entry.kind === 'fastener-lost' && entry.from.startsWith('hole:'));

export function books(ledger: Ledger): Books {
  const last = new Map<string, string>();
  const off = new Set<string>();
  const flow = ledgerBook();
  const stock = ledgerBook();
  for (let n = 1; n <= ledger.lines.length; n++) {
    if (isStruck(ledger, n)) continue;
    for (const entry of lineAt(ledger, n)?.entries ?? []) {
      const move = movementOf(entry);
      if (move) last.set(move.fastener, move.to);
      if (move && leavesItsHole(entry)) off.add(entry.fastener);
      if (entry.kind !== 'box-moved') continue;
      const box = stateOf(ledger, 'box', entry.name);
      if (box?.sort === 'fastener') flow.add(groupsOfBox(box), entry.to, entry.quantity);
    }
  }
  let everOff = 0;
  for (const f of every(ledger, 'fastener')) {
    const groups = groupsOf(f.origin, specText(f.spec));
    const moved = last.get(f.id);
    if (moved) flow.add(groups, accountOf(moved));
    if (f.everOff || sortOf(f.origin) !== 'hole') stock.add(groups, accountOf(f.place));
    if (off.has(f.id) && sortOf(f.origin) === 'hole') everOff++;
  }
  for (const b of every(ledger, 'box')) {
    if (b.sort !== 'fastener') continue;
    for (const to of handedOn) if (b.moved[to]) stock.add(groupsOfBox(b), to, b.moved[to]);
  }
  return { flow: flow.book, stock: stock.book, everOff };
}

const sum = (accounts: Partial<Record<Account, number>> | undefined): number =>
  Object.values(accounts ?? {}).reduce((all, one) => all + one, 0);
const takenFromBox = (ledger: Ledger): number =>
  [...every(ledger, 'box')].reduce((all, b) => all + (b.sort === 'fastener' ? b.bought - b.left : 0), 0);

/** The groups in which the two books differ; empty when they balance. Holes must hold whom the fasteners say. */
export function bookDifferences(ledger: Ledger): string[] {
  const { flow, stock, everOff } = books(ledger);
  const differ = [...new Set([...Object.keys(flow), ...Object.keys(stock)])].filter((group) => {
    const one = flow[group] ?? {};
    const other = stock[group] ?? {};
    const accounts = new Set([...Object.keys(one), ...Object.keys(other)]) as Set<Account>;
    return [...accounts].some((a) => (one[a] ?? 0) !== (other[a] ?? 0));
  });
  if (sum(stock.job) !== everOff) differ.push('ever off');
  if (sum(stock.new) !== takenFromBox(ledger)) differ.push('taken from the parts box');
  for (const h of every(ledger, 'hole')) {
    const o = h.called.occupant;
    if (o && stateOf(ledger, 'fastener', o.fastener)?.place !== `hole:${h.hole}`) differ.push(`hole ${h.hole}`);
  }
  for (const f of every(ledger, 'fastener')) {
    const hole = named('hole', f.place);
    if (sortOf(f.place) === 'box') differ.push(`fastener ${f.id}`);
    if (hole && stateOf(ledger, 'hole', hole)?.called.occupant?.fastener !== f.id) differ.push(`fastener ${f.id}`);
  }
  return differ;
}
