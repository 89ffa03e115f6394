// What is worked out once for as long as it is worked out from the same.

/** Gives what `make` gave last, while all of `from` is what it was then. */
export function whileSame<Made>(): (from: readonly unknown[], make: () => Made) => Made {
  let last: { from: readonly unknown[]; made: Made } | undefined;
  return (from, make) => {
    const isSame = last?.from.length === from.length && last.from.every((one, i) => Object.is(one, from[i]));
    if (!last || !isSame) last = { from, made: make() };
    return last.made;
  };
}
