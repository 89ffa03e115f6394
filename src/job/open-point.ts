// The vocabulary of what still stands between the car and the road (X1, X5). READINGS.md says when each applies.
import type { Said } from './said.ts';

export const openPointCodes = [
  'hole-open',
  'for-now',
  'working-in',
  'finding-open',
  'suspicion',
  'lost',
  'condemned-about',
  'broken-about',
  'stray',
  'part-off',
  'part-not-judged',
  'companions',
  'blind-holes',
  'direction',
  'connection-parted',
  'temporary-in',
  'masked',
  'holes-not-counted',
  'bead-missing',
  'bead-curing',
  'rotation-needed',
  'circuit-empty',
  'circuit-unchecked',
  'tray-not-empty',
  'tray-uncounted',
  'scrap-differs',
  'box-differs',
  'tools',
  'box-left',
  'service-open',
  'second-look',
  'pedal',
  'road-test',
  'odometer',
  'waiting',
  'misfit',
  'books',
] as const;
export type OpenPointCode = (typeof openPointCodes)[number];

/** `at` is the subject ("hole:cam cover/7", "finding:d3.1", "scrap", "vehicle"); `next` the call that is not refused. */
export type OpenPoint = { code: OpenPointCode; at: string; because: string; next?: Said };
