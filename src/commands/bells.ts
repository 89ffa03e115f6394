// Rings the terminal's bell for each answer, so many times as it says.
import type { Bench } from '../session/bench-shape.ts';
import { bellsFor } from '../session/sounds.ts';

const apartMs = 150;
/** The picture goes first: a stroke written before it would put it off, and nobody hears so little a while. */
const afterPictureMs = 20;

/** @param ring one stroke of the bell */
export function ringBells(bench: Bench, ring: () => void): void {
  let heard = bench.store.getState().session?.store.getState().answer;
  let strokes: NodeJS.Timeout[] = [];
  const listen = (): void => {
    const { session, habits } = bench.store.getState();
    const state = session?.store.getState();
    if (!state || state.answer === heard) return;
    heard = state.answer;
    // The newest answer is the one that counts.
    for (const stroke of strokes) clearTimeout(stroke);
    const many = habits.sounds ? bellsFor(state.answer, state) : 0;
    strokes = Array.from({ length: many }, (_, i) => setTimeout(ring, afterPictureMs + i * apartMs).unref());
  };
  let following: (() => void) | undefined;
  let followed = bench.store.getState().session;
  bench.store.subscribe(({ session }) => {
    if (session === followed) return;
    following?.();
    followed = session;
    following = session?.store.subscribe(listen);
  });
  following = followed?.store.subscribe(listen);
}
