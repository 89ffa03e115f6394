// A key or pedal that is held down or stuck: the terminal repeats it many times a second, and each would be a call. Known
// by its pace: nobody presses one key that fast for long, and a burst that arrives at once is not held.
const fastestByHandMs = 80;
const burstMs = 12;
/** So many at that pace are taken before it is stopped. */
const mostRepeats = 4;
/** After so long without it the key is believed again. */
const quietMs = 400;

export type HeldKey = {
  /** Told every key there is: whether this one is pressed by hand or comes from a key held down. */
  press(key: string, awakeMs: number): 'fine' | 'held';
};

/** Of a call that takes its time by hand: told every key of it, whether it came sooner after the one before. */
export function handPace(): { isTooSoon(call: string, leastMs: number, awakeMs: number): boolean } {
  let last = { call: '', awakeMs: Number.NEGATIVE_INFINITY };
  return {
    isTooSoon(call, leastMs, awakeMs) {
      const isSoon = call === last.call && awakeMs - last.awakeMs < leastMs;
      last = { call, awakeMs };
      return isSoon;
    },
  };
}

export function heldKey(): HeldKey {
  let last = { key: '', awakeMs: Number.NEGATIVE_INFINITY };
  let repeats = 0;
  let held = false;
  return {
    press(key, awakeMs) {
      const after = awakeMs - last.awakeMs;
      const same = key === last.key;
      last = { key, awakeMs };
      if (!same || after >= quietMs || (!held && after >= fastestByHandMs)) {
        repeats = 0;
        held = false;
        return 'fine';
      }
      if (held) return 'held';
      if (after >= burstMs) repeats += 1;
      held = repeats >= mostRepeats;
      return held ? 'held' : 'fine';
    },
  };
}
