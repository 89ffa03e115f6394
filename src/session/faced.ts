// What the bench faces when a job is opened again, and what a call leaves it facing.
import type { Line } from '../job/line.ts';
import type { Said } from '../job/said.ts';
import { areaOf } from '../job/subjects.ts';
import type { Facing } from '../view/facing.ts';

/** A call on a hole of another area takes that area in use. */
export function areaFaced(said: Said): Partial<Facing> {
  return typeof said.hole === 'string' && said.hole.includes('/') ? { area: areaOf(said.hole) } : {};
}
/** What is bought for the hole pointed at goes in there next, and what is said of it is no call on what it holds. */
export function keptFaced(facing: Facing, entries: Line['entries']): Facing {
  const { hole: _, ...elsewhere } = facing;
  return entries.every(({ kind }) => kind === 'box-filled' || kind === 'hole-declared') ? facing : elsewhere;
}
/** Opened again, the bench looks as it was left. */
export function lastFaced(lines: readonly Line[]): Partial<Facing> {
  const last = lines.at(-1)?.facing;
  return last
    ? {
        ...(last.area !== undefined && { area: last.area }),
        ...(last.tray !== undefined && { tray: last.tray }),
        ...lastInUse(lines),
      }
    : {};
}
/** The fastener in use is the one that came off last where no plan said which it would be. */
function lastInUse(lines: readonly Line[]): Partial<Facing> {
  const said = new Set(
    lines.flatMap((line) => line.entries.flatMap((e) => (e.kind === 'hole-declared' && e.wants ? e.hole : []))),
  );
  for (let i = lines.length - 1; i >= 0; i--) {
    for (const entry of lines[i]?.entries ?? [])
      if (entry.kind === 'fastener-found' && !said.has(entry.hole)) return { spec: entry.spec };
  }
  return {};
}
