// The strip screen of a job before and after its last fastener came off, as the program paints it.
import type { Line } from '../../src/job/line.ts';
import { readLog } from '../../src/job/log.ts';
import { paintFor } from '../../src/screen/colours.ts';
import { frame } from '../../src/screen/frame.ts';
import { paintedText } from '../../src/screen/rows.tsx';
import { demoLines } from '../demo/at-hand.ts';
import { demoDesk, sceneOf } from '../screen/scene.ts';
import { comfortable } from './terminal.ts';

export type TwoFrames = { painted: [string[], string[]]; off: [number, number] };

/** @param path the job file, in which a call off was the last or was struck again */
export function twoFrames(path: string): TwoFrames {
  const lines = demoLines(path);
  const last = lines.findLastIndex(({ call }) => call === 'off');
  const now = lines.at(-1) as Line;
  const offAt = (many: number) => {
    const ledger = readLog(lines.slice(0, many));
    const { area, tray } = lines[last]?.facing ?? {};
    const desk = { ...demoDesk({ ...(area && { area }), ...(tray && { tray }) }), ledger, now };
    const answer = { kind: 'taken', text: `${many} calls`, n: many, call: 'off' } as const;
    const session = { savedTo: many, looking: false, answer };
    const scene = sceneOf({ screen: 'strip' }, { desk, session, columns: comfortable.cols, rows: comfortable.rows });
    const rows = frame(scene);
    const off = Number(/(\d+) off/.exec(rows[0]?.map(({ text }) => text).join('') ?? '')?.[1]);
    return { painted: rows.map((row) => paintedText(row, paintFor(true))), off };
  };
  const [before, after] = [offAt(last), offAt(last + 1)];
  return { painted: [before.painted, after.painted], off: [before.off, after.off] };
}
