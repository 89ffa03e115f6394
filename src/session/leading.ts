// Where a place is worked on: the screen for it.
import { sortOf } from '../job/subjects.ts';
import type { ScreenId } from '../view/screens.ts';

const screens: Record<string, ScreenId> = {
  hole: 'build',
  area: 'build',
  part: 'build',
  connection: 'build',
  temporary: 'build',
  finding: 'findings',
  drive: 'rotation',
  face: 'sealing',
  circuit: 'sealing',
  tray: 'box',
  scrap: 'box',
  box: 'box',
  fastener: 'box',
  piece: 'box',
  stray: 'box',
  line: 'log',
  service: 'services',
};
export const screenFor = (place: string): ScreenId => screens[sortOf(place)] ?? 'leaving';
