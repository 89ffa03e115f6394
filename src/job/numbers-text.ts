// Hole numbers as they are written in few words, and read again: those that follow each other as a range.

/** "1-6 8, 3 washer": runs of numbers as ranges, a level in a piece of its own. */
export function numbersText(numbers: readonly string[]): string {
  const pieces: string[] = [];
  let run: string[] = [];
  const close = () => {
    if (run.length > 0) pieces.push(rangesText(run.map(Number)));
    run = [];
  };
  for (const number of numbers) {
    if (/^\d+$/.test(number)) run.push(number);
    else {
      close();
      pieces.push(number);
    }
  }
  close();
  return pieces.join(', ');
}
function rangesText(numbers: readonly number[]): string {
  const ranges: [number, number][] = [];
  for (const n of numbers) {
    const last = ranges.at(-1);
    if (last && last[1] === n - 1) last[1] = n;
    else ranges.push([n, n]);
  }
  return ranges
    .flatMap(([from, to]) => (to - from > 1 ? [`${from}-${to}`] : to > from ? [`${from} ${to}`] : [`${from}`]))
    .join(' ');
}
