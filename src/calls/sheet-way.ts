// How a job is printed once it is released: the command, with the name of its file as a command takes it. No key prints.
import { plainText } from '../trade/plain-text.ts';

/** @param file without folder and ending */
export function sheetWay(file: string): string {
  const name = plainText(file);
  const quoted = /^[\p{L}\p{N}._-]+$/u.test(name) ? name : `"${name}"`;
  return `countback sheet ${quoted} --html -o FILE`;
}
