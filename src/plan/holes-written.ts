// Holes as a person writes them in a plan: "1-6", "1 2 4-6", "3, 3 washer". Only the writing; whether there is such a
// hole is asked elsewhere.
import { type Hole, holeIn } from '../job/subjects.ts';

/** More in one area than any cover has; a slip of the keys writes 1-6000. */
const mostHoles = 500;

/**
 * Reads hole numbers parted by commas or spaces. A level follows its number: "3 washer", "2 nut 1".
 * @returns the numbers in the order written, or why they can't be read
 */
export function readNumbers(written: string): { numbers: string[] } | { why: string } {
  const numbers: string[] = [];
  for (const piece of written.split(',').map((one) => one.trim().replace(/\s+/g, ' '))) {
    if (piece === '') return { why: 'a number is missing between two commas' };
    const read = readPiece(piece);
    if ('why' in read) return read;
    numbers.push(...read.numbers);
    if (numbers.length > mostHoles) return { why: `more than ${mostHoles} holes at once` };
  }
  return { numbers };
}

function readPiece(piece: string): { numbers: string[] } | { why: string } {
  const level = /^(\d{1,4}) ([a-z]+(?: \d)?)$/.exec(piece);
  if (level) return { numbers: [`${Number(level[1])} ${level[2]}`] };
  const numbers: string[] = [];
  for (const one of piece.split(' ')) {
    const range = /^(\d{1,4})(?:-(\d{1,4}))?$/.exec(one);
    if (!range) return { why: `"${one.slice(0, 40)}" is neither a number nor a range like 1-6` };
    const from = Number(range[1]);
    const to = Number(range[2] ?? range[1]);
    if (to < from) return { why: `"${one}" runs backwards` };
    if (to - from >= mostHoles) return { why: `more than ${mostHoles} holes at once` };
    for (let n = from; n <= to; n++) numbers.push(String(n));
  }
  return { numbers };
}

/** For numbers that have been read before: a plan is checked as a whole when it is read. */
export function numbersIn(written: string): string[] {
  const read = readNumbers(written);
  return 'why' in read ? [] : read.numbers;
}

/** `{"cam cover": "1-3"}` as holes. */
export const holesIn = (byArea: Readonly<Record<string, string>>): Hole[] =>
  Object.entries(byArea).flatMap(([area, written]) => numbersIn(written).map((number) => holeIn(area, number)));
