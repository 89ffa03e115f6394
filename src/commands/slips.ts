// What is said on the command line where a name is missing or is one too many. It knows no command.

/** Why the names given are not the one that is wanted. */
export function notOne(names: readonly string[], what = 'job'): string {
  return names.length === 0 ? `no ${what} is named` : tooMany(names.slice(1));
}
export const tooMany = ([first, ...more]: readonly string[]): string =>
  `${JSON.stringify(first)}${more.length > 0 ? ` and ${more.length} more words are` : ' is'} too much here`;
