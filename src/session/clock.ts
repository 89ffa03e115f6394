// The clocks of this machine, read in one place: wall clock with its offset, and the running clock of this opening.

export type Clock = () => { atMs: number; zoneMin: number; awakeMs: number };

/** A clock that began now; the running clock stands still while the machine sleeps where the system's does. */
export function machineClock(): Clock {
  const began = performance.now();
  return () => {
    const now = new Date();
    return { atMs: now.getTime(), zoneMin: -now.getTimezoneOffset(), awakeMs: Math.round(performance.now() - began) };
  };
}
