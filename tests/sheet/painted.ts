// What was painted: the contrast of two colours, the pages of a PDF.

/** The luminance of "rgb(1, 2, 3)" or "#010203". Source: WCAG 2.2, relative luminance. */
function luminance(colour: string): number {
  const hex = /^#(..)(..)(..)$/.exec(colour.replace(/^#(.)(.)(.)$/, '#$1$1$2$2$3$3'));
  const parts = hex ? hex.slice(1).map((h) => Number.parseInt(h, 16)) : (colour.match(/\d+/g) ?? []).map(Number);
  const [r = 0, g = 0, b = 0] = parts.map((part) => {
    const share = part / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
/** 1 to 21. Source: WCAG 2.2, contrast ratio; 4.5 is asked of text (1.4.3), 3 of what is drawn (1.4.11). */
export function contrast(one: string, other: string): number {
  const [darker = 0, lighter = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (lighter + 0.05) / (darker + 0.05);
}

/** How many, and the size of the first in points. Read from the objects that Chromium leaves uncompressed. */
export function pagesOf(pdf: Buffer): { pages: number; width: number; height: number } {
  const text = pdf.toString('latin1');
  const box = /\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(text);
  return {
    pages: text.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0,
    width: Number(box?.[1]),
    height: Number(box?.[2]),
  };
}
