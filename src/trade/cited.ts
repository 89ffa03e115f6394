// The one form in which a figure or a table of the trade stands here: its value, its unit and where it comes from.
// A test holds every number of this room to it.

declare const mark: unique symbol;

/** A figure or a table with unit and source. Only `cited` makes one, so none is without them. */
export type Cited<V> = {
  readonly value: Frozen<V>;
  /** As printed beside it: "mm", "N/mm²", "turns"; "–" for a bare ratio or a count. */
  readonly unit: string;
  /** Standard or handbook with edition and place, or one of those below. */
  readonly source: string;
  readonly [mark]: true;
};

export type Frozen<V> = V extends (...args: never[]) => unknown
  ? V
  : V extends object
    ? { readonly [K in keyof V]: Frozen<V[K]> }
    : V;

/** What the trade does without anyone having printed why. */
export const commonPractice = 'common practice, no source';
/** Where a limit only keeps slips of the keys out and no one else's figure is meant. */
export const chosenHere = 'chosen here, to catch slips of the keys';
export const chosenForDrawings = 'chosen here, for drawings nobody measures';

/**
 * Makes a figure or a table of the trade.
 * @throws when unit or source is empty: that is a fault of the program, found by any test that imports the module
 */
export function cited<V>(value: V, unit: string, source: string): Cited<V> {
  if (unit.trim() === '' || source.trim() === '') throw new Error(`a figure without ${unit ? 'source' : 'unit'}`);
  return Object.freeze({ value: frozen(value), unit, source }) as unknown as Cited<V>;
}

function frozen<V>(value: V): V {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  for (const inner of Object.values(value)) frozen(inner);
  return Object.freeze(value);
}
