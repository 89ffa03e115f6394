// Where something stands in a plan file, for the person who wrote it: "areas[2].holes[0].numbers".

export type Path = readonly (string | number)[];

/** The path after the name of the file, or the name alone. */
export function placeText(file: string, path: readonly PropertyKey[]): string {
  const text = path.map((p) => (typeof p === 'number' ? `[${p}]` : `.${String(p)}`)).join('');
  return text === '' ? file : `${file}: ${text.replace(/^\./, '')}`;
}
