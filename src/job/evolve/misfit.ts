// The one answer of evolve besides a new state: the entry does not fit what is there. It is never thrown.
export const misfit = Symbol('misfit');
export type Misfit = typeof misfit;
