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

/** @param ahead works out, once the line is on its way to the disk, what the frame will show whether it is saved or not */
export function onceAKey(isSaving: () => boolean, ahead: () => void = () => {}): OnceAKey {
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
    if (!isSaving()) tell();
    else if (waiting === undefined) {
      waiting = setTimeout(tell, quickDiskMs);
      setImmediate(ahead);
    }
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
