// Puts the generated blocks into a document. It changes nothing outside the markers.

const marked = /<!-- made: ([a-z-]+) -->\n[\s\S]*?<!-- \/made -->/g;

export const blocksIn = (document: string): string[] => [...document.matchAll(marked)].map(([, name]) => name ?? '');

/** Opening and closing markers that are no pair: a block nobody would ever write. */
export function strayMarkers(document: string): number {
  const left = document.replaceAll(marked, '');
  return (left.match(/<!-- \/?made\b/g) ?? []).length;
}

export function withBlocks(document: string, makers: Readonly<Record<string, () => string>>): string {
  return document.replaceAll(marked, (_, name: string) => {
    const make = makers[name];
    if (make === undefined) throw new Error(`no block is called ${name}: add its maker to tests/docs/blocks.ts`);
    return `<!-- made: ${name} -->\n\n${make().trim()}\n\n<!-- /made -->`;
  });
}
