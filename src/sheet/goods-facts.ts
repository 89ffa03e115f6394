// What the sheet says of goods: parts renewed and refitted, what became of the old ones and of the parts box, how many
// fasteners came off and where they are, what is lost and what was stated to be no part of the car.

import { asScrap, type FastenerState, type Loss } from '../job/hole-states.ts';
import { every, lineAt, stateOf } from '../job/ledger.ts';
import { specText } from '../job/spec.ts';
import { nameOf, sortOf, subjectText } from '../job/subjects.ts';
import { dateText } from '../trade/civil-time.ts';
import { type Intervals, markingText } from './old-part.ts';
import { type Moment, moment, momentOf, type Reading, standingEntries } from './reading.ts';

export type Verdict = {
  verdict: string;
  because?: string;
  marking?: string;
  /** T3: nobody judged it: what goes with a new one unless said. */
  usual?: true;
};
export type PartFacts = {
  renewed: (Moment & { part: string; from: string; old?: Verdict })[];
  refitted: (Moment & { part: string })[];
  off: { part: string; old?: Verdict }[];
};
export type BoxFacts = {
  used: { name: string; quantity: number }[];
  moved: { name: string; quantity: number; to: string; because?: string }[];
};
export type Whereabouts = Partial<Record<'back' | 'in trays' | 'scrap pile' | 'owner' | 'supplier' | 'lost', number>>;
export type FastenerSums = {
  /** Came off this car: how many, and where they are. */
  off: number;
  ofOff: Whereabouts;
  /** Only slackened, in their holes all the time: how many, and how many of them are not tight again. */
  slack: number;
  stillSlack: number;
  /** From the parts box. */
  fresh: number;
  ofFresh: Whereabouts;
  /** Strays that were given to a hole. */
  given: number;
  ofGiven: Whereabouts;
  /** L8: condemned for a reason that no finding tells. */
  condemned: { what: string; because: string }[];
};
export type LossFact = {
  what: string;
  where: string;
  reaches: boolean;
  searched: string[];
  ruledOut?: { who: string; because: string };
};
export type StrayFact = { what: string; at: Moment; who: string; because: string };

export function partFacts(of: Reading, intervals: Intervals): PartFacts {
  const renewed: PartFacts['renewed'] = [];
  // The old one of a part is judged before or after the new one is on, until the part comes off again.
  const olds = new Map<string, { old?: Verdict }>();
  for (const { line, entry } of standingEntries(of.ledger)) {
    if (entry.kind === 'part-removed') olds.set(entry.part, {});
    if (entry.kind === 'part-replaced') {
      const fact = { ...moment(of, line.n), part: entry.part, from: entry.from, ...olds.get(entry.part) };
      olds.set(entry.part, fact);
      renewed.push(fact);
    }
    if (entry.kind === 'part-judged') {
      const { part, verdict, because, marking } = entry;
      const on = dateText(line.atMs, of.zone ?? line.zoneMin);
      const withTheNew = line.entries.some((e) => e.kind === 'part-replaced' && e.part === part);
      const old: Verdict = {
        verdict,
        ...(withTheNew && verdict === 'worn' && { usual: true }),
        ...(because && { because }),
        ...(marking && { marking: markingText(part, marking, on, intervals) }),
      };
      olds.set(entry.part, Object.assign(olds.get(entry.part) ?? {}, { old }));
    }
  }
  const parts = [...every(of.ledger, 'part')];
  const isNew = new Set(renewed.map((r) => r.part));
  return {
    renewed,
    refitted: parts
      .filter((p) => !p.off && p.fittedAt > 0 && !isNew.has(p.part))
      .map((p) => ({ ...moment(of, p.fittedAt), part: p.part })),
    off: parts.filter((p) => p.off).map(({ part, judged }) => ({ part, ...(judged && olds.get(part)) })),
  };
}

export function boxFacts(of: Reading): BoxFacts {
  const facts: BoxFacts = { used: [], moved: [] };
  for (const { entry } of standingEntries(of.ledger)) {
    if (entry.kind === 'box-used') facts.used.push({ name: entry.name, quantity: entry.quantity });
    if (entry.kind === 'box-moved') {
      const { name, quantity, to, because } = entry;
      facts.moved.push({ name, quantity, to, ...(because && { because }) });
    }
  }
  return facts;
}

const accounts = {
  hole: 'back',
  tray: 'in trays',
  scrap: 'scrap pile',
  owner: 'owner',
  supplier: 'supplier',
  lost: 'lost',
} as const;

export function fastenerSums(of: Reading): FastenerSums {
  const all = [...every(of.ledger, 'fastener')];
  const off = all.filter((f) => f.everOff && sortOf(f.origin) === 'hole');
  const fresh = all.filter((f) => sortOf(f.origin) === 'box');
  const given = all.filter((f) => sortOf(f.origin) === 'stray');
  const slackened = new Set<string>();
  for (const { entry } of standingEntries(of.ledger)) {
    if (entry.kind === 'fastener-slackened') slackened.add(entry.fastener);
  }
  const slack = all.filter((f) => slackened.has(f.id) && !f.everOff);
  const levelOf = ({ place }: FastenerState) => stateOf(of.ledger, 'hole', nameOf(place))?.called.occupant?.level;
  return {
    off: off.length,
    ofOff: whereabouts(off),
    slack: slack.length,
    stillSlack: slack.filter((f) => levelOf(f) !== 'tight').length,
    fresh: fresh.length,
    ofFresh: whereabouts(fresh),
    given: given.length,
    ofGiven: whereabouts(given),
    condemned: condemnedOf(of, all),
  };
}
function condemnedOf({ ledger }: Reading, all: readonly FastenerState[]): FastenerSums['condemned'] {
  const found = new Set([...every(ledger, 'finding')].map((one) => one.fastener));
  return all.flatMap((f) =>
    f.condemned === undefined || f.condemned === asScrap || found.has(f.id)
      ? []
      : [{ what: whatOf(f), because: f.condemned }],
  );
}
function whereabouts(fasteners: readonly FastenerState[]): Whereabouts {
  const sums: Whereabouts = {};
  for (const f of fasteners) {
    const account = accounts[sortOf(f.place) as keyof typeof accounts];
    if (account) sums[account] = (sums[account] ?? 0) + 1;
  }
  return sums;
}

const whatOf = (f: FastenerState): string => `${specText(f.spec)} of ${subjectText(f.origin)}`;

export function lossFacts(of: Reading): LossFact[] {
  const fasteners = [...every(of.ledger, 'fastener')].flatMap((f) => (f.loss ? [lossFact(whatOf(f), f.loss)] : []));
  const pieces = [...every(of.ledger, 'piece')].flatMap((p) => {
    const whole = stateOf(of.ledger, 'fastener', p.fastener);
    return p.loss ? [lossFact(`a piece of ${whole ? whatOf(whole) : p.fastener}`, p.loss)] : [];
  });
  return [...fasteners, ...pieces];
}
const lossFact = (what: string, { where, reaches, searched, ruledOut }: Loss): LossFact => ({
  what,
  where,
  reaches,
  searched: [...searched],
  ...(ruledOut && { ruledOut }),
});

/** K3: strays stated by name to be no part of this vehicle. */
export function strangeFacts(of: Reading): StrayFact[] {
  return [...standingEntries(of.ledger)].flatMap(({ line, entry }) => {
    if (entry.kind !== 'stray-settled' || entry.as !== 'not-of-this-vehicle') return [];
    const spec = stateOf(of.ledger, 'stray', entry.stray)?.spec ?? {};
    return [{ what: specText(spec), at: moment(of, line.n), who: entry.who ?? '', because: entry.because ?? '' }];
  });
}

/** Connections made again, and temporaries that were in and are out. */
export function madeAgain(of: Reading): { connections: string[]; temporaries: string[] } {
  const out = new Set<string>();
  for (const { entry } of standingEntries(of.ledger))
    if (entry.kind === 'temporary-taken-out') out.add(entry.temporary);
  return {
    connections: [...every(of.ledger, 'connection')].filter((c) => !c.parted && c.madeAt > 0).map((c) => c.connection),
    temporaries: [...every(of.ledger, 'temporary')]
      .filter((t) => !t.in && out.has(t.temporary))
      .map((t) => t.temporary),
  };
}

export const openedAt = (of: Reading): Moment | undefined =>
  lineAt(of.ledger, 1)?.entries.some((e) => e.kind === 'job-opened') ? momentOf(of, 1) : undefined;
