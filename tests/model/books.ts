// The two books of the second ledger: what was called in and out of each place, and where each fastener is.
import type { FastenerNow, World } from './world.ts';

/** L12: by origin and spec, what was called in and out of each place against where each fastener is. */
export function booksAgree(world: World): boolean {
  const flow = new Map<string, number>();
  const stock = new Map<string, number>();
  const add = (book: Map<string, number>, fastener: FastenerNow, place: string, by: number) => {
    if (place.startsWith('hole:') || place.startsWith('box:')) return;
    const page = `${fastener.origin} ${JSON.stringify(fastener.spec)} ${place}`;
    book.set(page, (book.get(page) ?? 0) + by);
  };
  for (const move of world.moves) {
    const fastener = world.fasteners.get(move.fastener) as FastenerNow;
    add(flow, fastener, move.from, -1);
    add(flow, fastener, move.to, 1);
  }
  for (const fastener of world.fasteners.values()) {
    add(stock, fastener, fastener.at, 1);
    add(flow, fastener, fastener.knownAt, 1);
  }
  // L1: once taken from the box, it is no place to be.
  const backInTheBox = [...world.fasteners.values()].some((fastener) => fastener.at.startsWith('box:'));
  const pages = [...new Set([...flow.keys(), ...stock.keys()])];
  return (
    world.fastenersUsedUp === 0 &&
    !backInTheBox &&
    pages.every((page) => (flow.get(page) ?? 0) === (stock.get(page) ?? 0))
  );
}
