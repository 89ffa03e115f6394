// What a mechanic with the same ledger and no ranking would look at: the two baselines.
import { every, isStruck, type Ledger, stateOf } from '../../src/job/ledger.ts';
import { contradictions } from '../../src/job/spec.ts';
import { named } from '../../src/job/subjects.ts';
import { type Candidate, specOfHole, standingOf } from './answer.ts';
import type { Asked } from './leftover.ts';

/** Answers for each stray, best first. */
export type Ranker = (ledger: Ledger, strays: readonly Asked[]) => (readonly Candidate[])[];

/** (1) Open holes with this head, in order. */
export const openWithThisHead: Ranker = (ledger, strays) => {
  const open = [...every(ledger, 'hole')].filter((h) => standingOf(ledger, h.hole) === 'open');
  return strays.map(({ spec }) =>
    open
      .filter((h) => contradictions({ head: specOfHole(ledger, h.hole).head }, { head: spec.head }).length === 0)
      .map((h): Candidate => ({ as: 'open', place: `hole:${h.hole}` })),
  );
};

/** (2) Whatever agrees in every known field, those that lay in this tray first, the newest called first. */
export const knownFieldsAndTray: Ranker = (ledger, strays) => {
  const lay = new Map<string, { tray?: string; n: number }>();
  for (const line of ledger.lines.all.slice(0, ledger.lines.length)) {
    if (isStruck(ledger, line.n)) continue;
    for (const entry of line.entries) {
      if (!('fastener' in entry) || entry.fastener === undefined) continue;
      const before = lay.get(entry.fastener);
      const to = entry.kind === 'fastener-removed' ? named('tray', entry.to) : undefined;
      const tray = to ?? before?.tray;
      lay.set(entry.fastener, { ...(tray !== undefined && { tray }), n: line.n });
    }
  }
  const all = [...every(ledger, 'fastener')].toSorted((a, b) => (lay.get(b.id)?.n ?? 0) - (lay.get(a.id)?.n ?? 0));
  return strays.map(({ spec, tray }) => {
    const agreeing = all.filter((f) => contradictions(f.spec, spec).length === 0);
    const here = agreeing.filter((f) => tray !== undefined && lay.get(f.id)?.tray === tray);
    return [...here, ...agreeing.filter((f) => !here.includes(f))].flatMap((f): Candidate[] => {
      const hole = named('hole', f.origin);
      if (hole === undefined || !stateOf(ledger, 'hole', hole)) return [];
      return [{ as: f.place === 'scrap' ? 'old one' : standingOf(ledger, hole), place: `hole:${hole}` }];
    });
  });
};
