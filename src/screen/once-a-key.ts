// When the screen is painted anew: once for all that one key changed, with "saved" in the same frame where the disk is
// quick, and without it where it is not. It knows no job and paints nothing.

/** A frame costs several times what a quick disk needs to keep a line; a slow one is not waited for longer than this. */
export const quickDiskMs = 4;

export type OnceAKey = {
  /** Something that is shown has changed. */
  changed(): void;
  /** Told when it is time to paint, until the returned function is called. */
  listen(told: () => void): () => void;
};

export function onceAKey(isSaving: () => boolean): OnceAKey {
  const listeners = new Set<() => void>();
  let due = false;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const tell = () => {
    clearTimeout(waiting);
    waiting = undefined;
    for (const told of listeners) told();
  };
  const unlessSaving = () => {
    due = false;
    if (isSaving()) waiting ??= setTimeout(tell, quickDiskMs);
    else tell();
  };
  return {
    changed() {
      if (due) return;
      due = true;
      queueMicrotask(unlessSaving);
    },
    listen(told) {
      listeners.add(told);
      return () => void listeners.delete(told);
    },
  };
}
