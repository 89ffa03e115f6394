// Every place a fastener left over could belong to, with why: holes that stand open, and holes that are called closed.
import { holeNumbers, holesOf, isTouched } from './closed.ts';
import type { HoleState } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { cannotBeToldApart, type Spec } from './spec.ts';
import type { AreaState } from './states.ts';
import { inHole } from './subjects.ts';
import type { CalledBack, LogTold } from './whose-log.ts';
import { type Belongs, bookedIn, odds, recordOf, struckWords } from './whose-odds.ts';
import { neverCalled, newOnes, oldOnes } from './whose-unseen.ts';

export function belongings(ledger: Ledger, told: LogTold): Belongs[] {
  const phantoms = [...every(ledger, 'area')].flatMap((a) => tooManyCalled(ledger, a).map((h) => recordOf(ledger, h)));
  const areas = [...every(ledger, 'area')].flatMap((a) => [
    ...holesOf(ledger, a).flatMap((h) => ofHole(ledger, told, a, h)),
    ...neverCalled(ledger, told, a, phantoms),
  ]);
  const foreign: Belongs = {
    as: 'not of this job',
    place: 'vehicle',
    record: {},
    odds: odds.foreign,
    because: 'only if no place on this job misses it: then other work left it here',
    source: 'vehicle',
    holds: Number.POSITIVE_INFINITY,
  };
  return [...areas, ...oldOnes(ledger, told), ...newOnes(ledger), foreign];
}

function ofHole(ledger: Ledger, told: LogTold, a: AreaState, h: HoleState): Belongs[] {
  if (!isTouched(h)) return [];
  const o = h.called.occupant;
  const off = !o || o.level === 'slack';
  const record = recordOf(ledger, h);
  const of = { place: inHole(h.hole), record, tray: bookedIn(told, h), source: h.hole, holds: 1 };
  const struck = told.struckOff.get(h.hole);
  if (off) {
    const open = openOdds(ledger, a, h);
    const slack = o && {
      slack: true as const,
      odds: open.odds * odds.slackOfOff,
      because: `${struck ? `${struckWords(struck)}, and ` : ''}it is called slack: its own should be in it, unless it came off uncalled`,
    };
    return [{ ...of, as: 'open', instead: otherSizes(ledger, told, a, record), ...open, ...slack }];
  }
  if (struck) {
    const because = `${struckWords(struck)}, and it is called closed since`;
    return [{ ...of, as: 'closed', odds: odds.struckOffClosed, because, struck: true }];
  }
  return [{ ...of, as: 'closed', ...closedOdds(ledger, told, a, h) }];
}

function openOdds(ledger: Ledger, a: AreaState, h: HoleState): Pick<Belongs, 'odds' | 'because'> {
  const open = holesOf(ledger, a).filter((one) => isTouched(one) && !one.called.occupant).length;
  const closed = holesOf(ledger, a).some((one) => one.called.occupant && isTouched(one));
  if (tooManyCalled(ledger, a).includes(h)) {
    return { odds: odds.noSuchHole, because: `it stands open, but ${a.counted?.count} holes were counted there` };
  }
  if (h.called.foundEmptyAt && !h.called.own) return { odds: odds.openAmongMany, because: 'it was empty on arrival' };
  if (closed)
    return { odds: odds.onlyOpen, because: open > 1 ? `it is one of ${open} open there` : 'it alone is open there' };
  return { odds: odds.openAmongMany / Math.max(1, open / 4), because: 'it is open, as all of its area' };
}

/** Open holes of an area of which more were called than counted by eye: one of them is on no cover. */
function tooManyCalled(ledger: Ledger, a: AreaState): HoleState[] {
  if (!a.counted || a.counted.count >= holeNumbers(ledger, a).size) return [];
  return holesOf(ledger, a).filter((h) => isTouched(h) && !h.called.occupant);
}

/** A size that stayed set from the area before: alone among its own, it may be any of theirs. */
function otherSizes(ledger: Ledger, told: LogTold, a: AreaState, record: Spec): Belongs['instead'] {
  if (a.declared?.planned) return [];
  const others = holesOf(ledger, a).map((h) => recordOf(ledger, h));
  const unlike = others.filter((one) => !cannotBeToldApart(one, record));
  const before = stateOf(ledger, 'area', told.areaBefore.get(a.area) ?? '');
  const stayed = before && holesOf(ledger, before).some((h) => cannotBeToldApart(recordOf(ledger, h), record));
  const [first] = unlike;
  return [
    [stayed && unlike.length > 0 ? odds.stayedSet : odds.oddAlone, {}],
    ...(first ? ([[odds.sizeOfOthers, first]] as const) : []),
  ];
}

function closedOdds(
  ledger: Ledger,
  told: LogTold,
  a: AreaState,
  h: HoleState,
): Pick<Belongs, 'odds' | 'because' | 'source' | 'holds'> {
  const calls = told.back.get(a.area) ?? [];
  const own = calls.findLast((one) => one.hole === h.hole);
  const source = `${a.area} closed`;
  if (own?.amid) {
    return { odds: odds.amid, because: `called back in the midst of ${own.amid}`, source: h.hole, holds: 1 };
  }
  const fast = calls.filter((one): one is CalledBack => one.fast === true);
  if (fast[0]) {
    const isLast = calls.at(-1)?.hole === h.hole;
    const because = `two calls back there came ${(fast[0].gapMs / 1000).toFixed(1)} s apart`;
    const each = isLast ? odds.afterFast : odds.fastElsewhere / calls.length;
    return { odds: each, because, source: `${a.area} fast`, holds: fast.length };
  }
  const many = Math.max(1, holesOf(ledger, a).length);
  if (told.redone.has(h.hole)) {
    return { odds: odds.redone, because: 'its call back was struck and made again', source, holds: 1 };
  }
  return { odds: odds.closed / many, because: 'it is called closed, and holds one like it', source, holds: 1 };
}
