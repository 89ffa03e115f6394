// The demo job on a screen of a given size, with nothing running behind it: what a frame is made from.
import { standardKeymap } from '../../src/calls/bindings.ts';
import type { Desk } from '../../src/calls/desk.ts';
import { listedOn } from '../../src/calls/lists.ts';
import { frame, type Scene } from '../../src/screen/frame.ts';
import type { Facing } from '../../src/view/facing.ts';
import { firstView, type View } from '../../src/view/view.ts';
import { demoLedger } from '../demo/at-hand.ts';

const { ledger, now } = demoLedger();
/** Forty minutes after the last call. */
export const demoDesk = (facing: Partial<Facing> = {}): Desk => ({
  ledger,
  facing: { area: 'cam cover', tray: '5', spec: {}, ...facing },
  now: { ...now, atMs: now.atMs + 40 * 60_000, awakeMs: now.awakeMs + 40 * 60_000 },
  plans: () => [],
});
export function sceneOf(view: Partial<View>, more: Partial<Scene> = {}): Scene {
  const whole: View = { ...firstView, before: 'strip', ...view };
  const desk = more.desk ?? demoDesk();
  return {
    view: whole,
    desk,
    session: { savedTo: desk.ledger.lines.length, looking: false },
    listed: listedOn(whole.screen, whole.before, desk, standardKeymap),
    keymap: standardKeymap,
    columns: 80,
    rows: 24,
    ...more,
  };
}
/** A frame as one reads it. */
export const textOf = (scene: Scene): string =>
  frame(scene)
    .map((row) => row.map((run) => run.text).join(''))
    .join('\n');
