// Two designations side by side: the same, another pitch, an inch thread among metric ones, and whether the one nearly
// goes into the other. It judges designations, not which of the two is right.
import { type Answer, isRefused } from './answer.ts';
import { type FastenerDesignation, readFastener } from './designation.ts';
import { type NearMiss, nearMiss } from './near-miss.ts';
import type { Thread } from './threads.ts';

export type ThreadDifference = 'none' | 'pitch' | 'system' | 'diameter';

export type Compared = {
  thread: ThreadDifference;
  lengthMm: number;
  /** Both said and not the same. */
  class: boolean;
  /** The first of the two as a bolt in the second's hole, where it nearly goes. */
  nearMiss?: NearMiss;
  /** One line a difference, the gravest first; empty where nothing differs. Length alone says nothing of danger. */
  lines: string[];
};

/** Source: ISO 261 and ASME B1.1: two threads are one when diameter and pitch are. */
export function threadDifference(one: Thread, other: Thread): ThreadDifference {
  if (one.name === other.name) return 'none';
  if (one.system !== other.system) return 'system';
  return one.majorMm === other.majorMm ? 'pitch' : 'diameter';
}

/**
 * Compares what was called with what is there or was planned.
 * @param called, other designations as `readFastener` takes them
 * @returns the differences and a line for each; refused where one of them cannot be read
 */
export function compareDesignations(called: string, other: string): Answer<Compared> {
  const one = readFastener(called);
  if (isRefused(one)) return one;
  const two = readFastener(other);
  if (isRefused(two)) return two;
  const thread = threadDifference(one.thread, two.thread);
  const near = nearMiss(one.thread, two.thread);
  const lengthMm = one.lengthMm === undefined || two.lengthMm === undefined ? 0 : one.lengthMm - two.lengthMm;
  const differs = one.class !== undefined && two.class !== undefined && one.class !== two.class;
  return {
    thread,
    lengthMm,
    class: differs,
    ...(near && { nearMiss: near }),
    lines: [
      ...threadLines(one, two, thread, near),
      ...(differs ? [`class ${one.class}, not ${two.class}`] : []),
      ...lengthLines(lengthMm),
    ],
  };
}

function threadLines(
  one: FastenerDesignation,
  two: FastenerDesignation,
  difference: ThreadDifference,
  near: NearMiss | undefined,
): string[] {
  const [a, b] = [one.thread, two.thread];
  const what = {
    none: [],
    pitch: [`${a.name}, not ${b.name}: same diameter, other pitch (${round(a.pitchMm)} and ${round(b.pitchMm)} mm)`],
    system: [
      `${a.name} is ${a.system === 'inch' ? 'an inch thread among metric ones' : 'a metric thread among inch ones'}, not ${b.name}`,
    ],
    diameter: [`${a.name}, not ${b.name}: another diameter`],
  }[difference];
  return near ? [...what, near.text] : what;
}

/** Under a millimetre is how bolts are cut and inches are rounded. */
const lengthLines = (lengthMm: number): string[] =>
  Math.abs(lengthMm) < 1 ? [] : [`${round(Math.abs(lengthMm))} mm ${lengthMm > 0 ? 'longer' : 'shorter'}`];

const round = (millimetres: number): string => String(Number(millimetres.toFixed(3)));
