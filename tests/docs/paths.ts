// Finds the paths a document names in backticks. A thing in backticks is a path when it has a slash or a file's
// ending and is neither a package, a pattern nor a line to be typed.

const filesEnding = /\.(md|json|tsx?|js|jsonl)$/;

export function pathsNamedIn(document: string, packages: readonly string[]): string[] {
  const outsideFences = document.replaceAll(/^```[\s\S]*?^```$/gm, '');
  return [...outsideFences.matchAll(/`([^`\n]+)`/g)]
    .map(([, named]) => named ?? '')
    .filter((named) => named.includes('/') || filesEnding.test(named))
    .filter((named) => !/[\s<>*$~]/.test(named) && !/^[-\d/]/.test(named))
    .filter((named) => !packages.some((name) => named === name || named.startsWith(`${name}/`)));
}
