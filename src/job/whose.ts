// K3: where a stray most likely belongs. All strays are solved together: a hole wants one fastener, so what the one takes
// is not there for the other. Places of one area that cannot be told apart are one answer. It names; nothing is decided.
import { countDiffers, countStands } from './counts.ts';
import { type Ledger, stateOf } from './ledger.ts';
import { cannotBeToldApart, differences, type Spec, specText } from './spec.ts';
import { areaOf, type Hole, named, type Subject } from './subjects.ts';
import { type Common, commonOf, likeness } from './whose-likeness.ts';
import { readTold } from './whose-log.ts';
import type { As, Belongs } from './whose-odds.ts';
import { belongings } from './whose-places.ts';

/** A fastener in the hand, as far as it is known, and the tray it lay in. */
export type InHand = { spec: Spec; tray?: string };
export type Verdict = 'likely' | 'possible' | 'cannot be told apart';
export type Candidate = {
  as: As;
  /** The likeliest of `holes`, else area:A, box:NAME or vehicle. */
  place: Subject;
  /** Holes of that area that cannot be told apart here, the likeliest first. */
  holes: readonly Hole[];
  verdict: Verdict;
  because: string;
  /** Of one. */
  share: number;
};

const tray = { same: 0.9, other: 0.14 };
/** What a count by eye says for and against a fastener that is booked in that tray. */
const counted = { overBooked: 0.25, overOther: 1.2, agreesBooked: 2, agreesOther: 0.35, shortBooked: 8 };
const likelyFrom = 0.5;
const asGoodAs = 0.85;
const least = 0.002;
const most = 12;
const rounds = 25;

/** @returns the candidates of each, likeliest first */
export function whose(ledger: Ledger, strays: readonly InHand[]): Candidate[][] {
  const places = belongings(ledger, readTold(ledger));
  const common = commonOf(places.map((one) => one.record));
  const trays = shareOfTrays(places);
  const odds = strays.map((stray) => places.map((one) => oddsOf(ledger, common, trays, stray, one)));
  solveTogether(odds, places);
  return odds.map((row, i) => grouped(places, row, (strays[i] as InHand).spec));
}

function shareOfTrays(places: readonly Belongs[]): ReadonlyMap<string, number> {
  const booked = places.flatMap((one) => one.tray ?? []);
  return new Map([...Map.groupBy(booked, (one) => one)].map(([name, all]) => [name, all.length / booked.length]));
}

function oddsOf(
  ledger: Ledger,
  common: Common,
  trays: ReadonlyMap<string, number>,
  stray: InHand,
  one: Belongs,
): number {
  const instead = one.instead ?? [];
  const rest = 1 - instead.reduce((sum, [often]) => sum + often, 0);
  const like = instead.reduce(
    (sum, [often, spec]) => sum + often * likeness(common, stray.spec, spec),
    rest * likeness(common, stray.spec, one.record),
  );
  return one.odds * like * trayRatio(trays, stray, one) * countRatio(ledger, stray, one);
}

function trayRatio(trays: ReadonlyMap<string, number>, stray: InHand, one: Belongs): number {
  if (stray.tray === undefined || one.tray === undefined) return 1;
  return one.tray === stray.tray ? tray.same / Math.max(trays.get(one.tray) ?? 1, 0.05) : tray.other;
}

/** K2: a tray over its ledger holds what is booked elsewhere; a tray that is short lacks what is booked in it. */
function countRatio(ledger: Ledger, stray: InHand, one: Belongs): number {
  const booked = one.as === 'open' ? one.tray : undefined;
  const lying = stray.tray === undefined ? undefined : stateOf(ledger, 'tray', stray.tray);
  let ratio = 1;
  if (booked !== undefined && booked !== stray.tray) {
    const there = stateOf(ledger, 'tray', booked);
    if (there && countDiffers(there) && (there.counted?.count ?? 0) < there.contents.length)
      ratio *= counted.shortBooked;
  }
  if (!lying) return ratio;
  const here = booked === stray.tray;
  const strays = lying.contents.filter((id) => stateOf(ledger, 'stray', id)).length;
  if (countStands(lying) && strays === 0) return ratio * (here ? counted.agreesBooked : counted.agreesOther);
  // A stray that was called is over as it was before it was called.
  const stands = countStands(lying) || countDiffers(lying);
  const over = stands && (lying.counted?.count ?? 0) > lying.contents.length - strays;
  return over ? ratio * (here ? counted.overBooked : counted.overOther) : ratio;
}

/** Rows come to one; no place gives more than it holds. */
function solveTogether(odds: number[][], places: readonly Belongs[]): void {
  const sources = [...Map.groupBy(places.keys(), (i) => (places[i] as Belongs).source).values()];
  for (let round = 0; round < rounds; round++) {
    for (const row of odds) {
      const sum = row.reduce((all, one) => all + one, 0);
      if (sum > 0) for (let i = 0; i < row.length; i++) row[i] = (row[i] as number) / sum;
    }
    if (odds.length === 1 || round === rounds - 1) return;
    for (const of of sources) {
      const holds = Math.max(...of.map((i) => (places[i] as Belongs).holds));
      const sum = odds.reduce((all, row) => of.reduce((more, i) => more + (row[i] as number), all), 0);
      if (sum > holds) for (const row of odds) for (const i of of) row[i] = ((row[i] as number) * holds) / sum;
    }
  }
}

type Group = { group: readonly { one: Belongs; share: number }[]; share: number };

function grouped(places: readonly Belongs[], row: readonly number[], seen: Spec): Candidate[] {
  const groups = new Map<string, { one: Belongs; share: number }[]>();
  for (const [i, one] of places.entries()) {
    const hole = named('hole', one.place);
    const apart = `${one.slack ? ' slack' : ''}${one.struck ? ' struck' : ''}`;
    const key = hole === undefined ? one.place : `${one.as}${apart} ${areaOf(hole)} ${specText(one.record)}`;
    const group = groups.get(key);
    if (group) group.push({ one, share: row[i] as number });
    else groups.set(key, [{ one, share: row[i] as number }]);
  }
  const sorted = slackLast(
    seen,
    [...groups.values()]
      .map((group) => group.toSorted((a, b) => shown(b.share) - shown(a.share)))
      .map((group) => ({ group, share: group.reduce((sum, one) => sum + one.share, 0) }))
      .toSorted((a, b) => shown(b.share) - shown(a.share)),
  );
  const [best, second] = sorted;
  return sorted
    .filter(({ share }, i) => i === 0 || share >= least)
    .slice(0, most)
    .map(({ group, share }, i): Candidate => {
      const { one } = group[0] as { one: Belongs };
      const tied = i < 2 && isTied(best, second);
      const differs = differences(one.record, seen);
      const likely = share >= likelyFrom && differs.length === 0;
      const verdict = tied ? 'cannot be told apart' : likely ? 'likely' : 'possible';
      return {
        as: one.as,
        place: one.place,
        holes: group.flatMap((each) => named('hole', each.one.place) ?? []),
        verdict,
        because: differs.length === 0 ? one.because : `${one.because}; but ${specText(one.record)} is on record`,
        share,
      };
    });
}

/** What differs by less is as likely: such stand in the order of the job, not of its sums. */
const shown = (share: number): number => Math.round(share * 1e6);

/** One only slackened stands below all that are off and want what is in the hand: its own is in it by the ledger. */
function slackLast(seen: Spec, sorted: readonly Group[]): Group[] {
  const fits = ({ group }: Group) => differences(group[0]?.one.record ?? {}, seen).length === 0;
  const isSlack = (one: Group) => one.group[0]?.one.slack === true;
  const lastOpen = sorted.findLastIndex((one) => one.group[0]?.one.as === 'open' && !isSlack(one) && fits(one));
  const before = sorted.slice(0, lastOpen + 1);
  const put = before.filter((one) => isSlack(one));
  return [...before.filter((one) => !isSlack(one)), ...put, ...sorted.slice(lastOpen + 1)];
}

/** As good as one another, and wanting the same: only a look tells. */
function isTied(best: Group | undefined, second: Group | undefined): boolean {
  const [one, other] = [best?.group[0]?.one, second?.group[0]?.one];
  if (!best || !second || !one || !other || second.share < best.share * asGoodAs) return false;
  return one.as === other.as && cannotBeToldApart(one.record, other.record);
}
