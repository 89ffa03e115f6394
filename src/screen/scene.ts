// What there is to show on the bench as it stands now: all that a frame is made of.
import type { Desk } from '../calls/desk.ts';
import type { Rows } from '../calls/listed.ts';
import type { Bench } from '../session/bench-shape.ts';
import type { Scene } from './frame.ts';
import { whileSame } from './while-same.ts';

/** The screen it is to be shown on; `ticks` changes when the clock has moved on. */
export type Glass = Pick<Scene, 'columns' | 'rows'> & { ticks: number };

export function sceneMaker(bench: Bench): (glass: Glass) => Scene {
  const [sameDesk, sameRows] = [whileSame<Desk>(), whileSame<Rows>()];
  return ({ columns, rows, ticks }) => {
    const state = bench.store.getState();
    const session = state.session?.store.getState();
    // The bench reads the clock as well: its desk is another at every asking.
    const standing = [state, session?.ledger, session?.facing, ticks];
    return {
      view: state.view,
      desk: sameDesk(standing, bench.desk),
      ...(session && { session }),
      ...(state.session && { begunAs: state.session.job.job }),
      listed: sameRows(standing, bench.listed),
      reading: state.shelf === undefined,
      keymap: state.keymap,
      ...(state.word !== undefined && { word: state.word }),
      ...(state.note !== undefined && { note: state.note }),
      ...(state.greeting && { greeting: state.greeting }),
      ...(state.greetingHead !== undefined && { greetingHead: state.greetingHead }),
      columns,
      rows,
    };
  };
}
