// Lines as the second ledger reads them: plain values out of a job file, every field one may meet, nothing checked.
// It shares nothing with the program: where both say the same, they say it twice on purpose.

import { sameThread } from './suspicion.ts';

export type PlainStamp = { atMs: number; run: number; awakeMs: number };

export type PlainSpec = {
  kind?: string;
  head?: string;
  thread?: string;
  lengthMm?: number;
  class?: string;
  coating?: string;
  oneUse?: boolean;
  shouldered?: boolean;
};

export type PlainLabel = {
  product: string;
  kind: string;
  skinMinutes?: number;
  fillHours?: number;
  runHours?: number;
  fullHours?: number;
  labelCelsius: number;
  labelHumidityPct: number;
  lowestCelsius?: number;
  atCelsius?: { celsius: number; fullHours: number }[];
};

/** All fields of all kinds side by side; which of them are there depends on the kind. */
export type PlainEntry = {
  kind: string;
  area: string;
  areas: string[];
  as: string;
  at: string;
  backwards?: boolean;
  bead?: boolean | number;
  beside?: PlainSpec;
  blindHoles?: boolean;
  celsius: number;
  circuit: string;
  companions?: string[];
  connection: string;
  count: number;
  crankBolt?: string;
  critical?: boolean;
  drive: string;
  face: string;
  fastener: string;
  wrongOne?: true;
  finding: string;
  forNow?: boolean;
  from: string;
  heldBy: string[];
  hole: string;
  humidityPct?: number;
  keepsIn: string[];
  label: PlainLabel;
  last: boolean;
  lines: number[];
  lost: string;
  makersStep?: boolean;
  mark: string;
  marked?: boolean;
  marks: string[];
  name: string;
  newPattern?: string[];
  one: string;
  other: string;
  part: string;
  parts: string[];
  piece: string;
  pieces: { piece: string; in: string }[];
  planSays?: PlainSpec;
  planned?: boolean;
  pressedBy: string[];
  quantity: number;
  quarters: number;
  right: boolean;
  role?: string;
  service: string;
  sort: string;
  spec: PlainSpec;
  sprocketBolt?: boolean;
  stray: string;
  substitute?: string;
  teethOff: number;
  temporary: string;
  tensioner: string;
  to: string;
  tray: string;
  turns: number;
  wants?: PlainSpec;
  working?: boolean;
};

export type PlainLine = PlainStamp & { n: number; entries: PlainEntry[] };

export const areaOf = (hole: string): string => hole.split('/')[0] as string;
/** "7" of "cam cover/7 nut": levels share a number. */
export const numberOf = (hole: string): string => (hole.split('/')[1] as string).split(' ')[0] as string;

/** Something known of both, and not the same. */
export function contradicts(one: PlainSpec, other: PlainSpec): boolean {
  const differ = <T>(a: T | undefined, b: T | undefined) => a !== undefined && b !== undefined && a !== b;
  return (
    differ(one.kind, other.kind) ||
    differ(one.head, other.head) ||
    (differ(one.thread, other.thread) && !sameThread(one.thread ?? '', other.thread ?? '')) ||
    differ(one.lengthMm, other.lengthMm) ||
    differ(one.class, other.class)
  );
}
