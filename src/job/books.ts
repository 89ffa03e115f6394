// L12: two books that must agree. Flow is counted from the movements in the log, each booked from one account to
// another; stock is counted from where each fastener stands. By job, by area of origin and by exact spec.
import type { Entry } from './entry.ts';
import { every, isStruck, type Ledger, lineAt, stateOf } from './ledger.ts';
import { specText } from './spec.ts';
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
  const area = sortOf(origin) === 'hole' ? `area ${areaOf(nameOf(origin))}` : `new or stray`;
  return ['job', area, `spec ${spec}`];
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

export function books(ledger: Ledger): Books {
  const last = new Map<string, string>();
  const off = new Set<string>();
  for (let n = 1; n <= ledger.lines.length; n++) {
    if (isStruck(ledger, n)) continue;
    for (const entry of lineAt(ledger, n)?.entries ?? []) {
      const move = movementOf(entry);
      if (move) last.set(move.fastener, move.to);
      if (entry.kind === 'fastener-removed') off.add(entry.fastener);
    }
  }
  const flow: Record<string, Partial<Record<Account, number>>> = {};
  const stock: Record<string, Partial<Record<Account, number>>> = {};
  const add = (book: typeof flow, groups: string[], account: Account | undefined) => {
    if (!account) return;
    for (const group of groups) {
      const accounts = book[group] ?? {};
      book[group] = { ...accounts, [account]: (accounts[account] ?? 0) + 1 };
    }
  };
  for (const f of every(ledger, 'fastener')) {
    const groups = groupsOf(f.origin, specText(f.spec));
    const moved = last.get(f.id);
    if (moved) add(flow, groups, accountOf(moved));
    if (f.everOff || sortOf(f.origin) !== 'hole') add(stock, groups, accountOf(f.place));
  }
  return { flow, stock, everOff: off.size };
}

/** The groups in which the two books differ; empty when they balance. Holes must hold whom the fasteners say. */
export function bookDifferences(ledger: Ledger): string[] {
  const { flow, stock } = books(ledger);
  const differ = [...new Set([...Object.keys(flow), ...Object.keys(stock)])].filter((group) => {
    const one = flow[group] ?? {};
    const other = stock[group] ?? {};
    const accounts = new Set([...Object.keys(one), ...Object.keys(other)]) as Set<Account>;
    return [...accounts].some((a) => (one[a] ?? 0) !== (other[a] ?? 0));
  });
  for (const h of every(ledger, 'hole')) {
    const o = h.called.occupant;
    if (o && stateOf(ledger, 'fastener', o.fastener)?.place !== `hole:${h.hole}`) differ.push(`hole ${h.hole}`);
  }
  for (const f of every(ledger, 'fastener')) {
    const hole = named('hole', f.place);
    if (hole && stateOf(ledger, 'hole', hole)?.called.occupant?.fastener !== f.id) differ.push(`fastener ${f.id}`);
  }
  return differ;
}
