// How a job is printed once it is released: the command, with the name of its file as a command takes it. No key prints.
import { plainText } from '../trade/plain-text.ts';

/**
 * @param file without folder and ending
 * @param program as it is called in the shell it was started from
 */
export function sheetWay(file: string, program: string): string {
  const name = plainText(file);
  const quoted = /^[\p{L}\p{N}._-]+$/u.test(name) ? name : `"${name}"`;
  return `${program} sheet ${quoted} --html -o FILE`;
}
