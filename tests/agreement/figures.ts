// What a run of sequences was worth: how many cars left, how long the jobs were, which entries were ever written. A run
// that shows too little proves too little.
import { type EntryKind, entryKinds } from '../../src/job/entry.ts';
import type { Sequence } from './sequences.ts';

export type Figures = {
  sequences: number;
  /** Beginnings of them at which the ledgers were held against one another; whole jobs are among them. */
  beginnings: number;
  released: number;
  forging: number;
  lengths: number[];
  /** In how many sequences each kind was written by a call. */
  kinds: Map<EntryKind, number>;
};

export const noFigures = (): Figures => ({
  sequences: 0,
  beginnings: 0,
  released: 0,
  forging: 0,
  lengths: [],
  kinds: new Map(),
});

export function note(figures: Figures, sequence: Sequence, beginnings = 0): void {
  figures.sequences++;
  figures.beginnings += beginnings;
  if (sequence.released) figures.released++;
  if (sequence.forged > 0) figures.forging++;
  figures.lengths.push(sequence.called);
  for (const kind of sequence.kinds) figures.kinds.set(kind, (figures.kinds.get(kind) ?? 0) + 1);
}

const median = (lengths: readonly number[]): number => [...lengths].sort((a, b) => a - b)[lengths.length >> 1] ?? 0;
const share = (of: number, figures: Figures): number => (figures.sequences === 0 ? 0 : of / figures.sequences);
const percent = (of: number, figures: Figures): string => `${(100 * share(of, figures)).toFixed(1)} %`;
const kindShare = (figures: Figures, kind: EntryKind): number => share(figures.kinds.get(kind) ?? 0, figures);

export const kindsTooRare = (figures: Figures): EntryKind[] =>
  entryKinds.filter((kind) => kindShare(figures, kind) < 0.01);

/** What the run lacks to be worth anything; empty when it lacks nothing. */
export function shortfalls(figures: Figures): string[] {
  return [
    ...(share(figures.released, figures) < 0.05 ? [`only ${percent(figures.released, figures)} of cars left`] : []),
    ...(median(figures.lengths) < 150 ? [`the median job is ${median(figures.lengths)} calls long`] : []),
    ...kindsTooRare(figures).map((kind) => `${kind} in ${percent(figures.kinds.get(kind) ?? 0, figures)} of jobs`),
  ];
}

export function figuresText(figures: Figures): string {
  const rarest = [...entryKinds].sort((a, b) => kindShare(figures, a) - kindShare(figures, b)).slice(0, 3);
  return [
    `${figures.sequences} jobs held at ${figures.beginnings} of their lines`,
    `${percent(figures.released, figures)} released`,
    `${percent(figures.forging, figures)} with forged lines`,
    `median ${median(figures.lengths)} calls`,
    `rarest entries ${rarest.map((kind) => `${kind} ${percent(figures.kinds.get(kind) ?? 0, figures)}`).join(', ')}`,
  ].join(', ');
}
