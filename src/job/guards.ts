// Guards shared by several verbs: footing (where things are), what a fastener may do (L5 to L8), order (O1, O2).
import { type BeadStanding, everyBead, type Stage } from './beads.ts';
import { isSpent, partsOffHeldBy, wantsOf } from './closed.ts';
import { countDiffers, holesUncounted, uncounted } from './counts.ts';
import { type CouldExplain, whatCouldExplain } from './explaining.ts';
import type { FastenerState } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { levelsOf } from './levels.ts';
import { frontsOf, openBehind } from './order.ts';
import type { No } from './refusal.ts';
import { contradictions, isWeaker, type Spec, specText } from './spec.ts';
import type { PartState, TrayState } from './states.ts';
import { areaOf, type Hole, type Subject, subjectText } from './subjects.ts';
import type { Guard, Standing } from './verb.ts';

export const no = (because: string, instead: string, places: readonly Subject[] = []): No => ({
  because,
  instead,
  places,
});
const listed = (all: readonly string[]): string =>
  all.length > 4 ? `${all.slice(0, 4).join(', ')} and ${all.length - 4} more` : all.join(', ');
const textOf = (subjects: readonly Subject[]): string => listed(subjects.map(subjectText));

export const holeState = (s: Standing, hole: Hole) => stateOf(s.ledger, 'hole', hole);
export const occupantOf = (s: Standing, hole: Hole) => holeState(s, hole)?.called.occupant;
export const fastenerState = (s: Standing, id: string) => stateOf(s.ledger, 'fastener', id);

/** L1: the hole is known and holds something, or nobody has called it yet (then the call makes it known). */
export const holdsSomething: Guard<{ hole: Hole }> = {
  code: 'hole-is-empty',
  rule: 'L1',
  kind: 'footing',
  needs: ['hole'],
  check(s, { hole }) {
    const h = holeState(s, hole);
    if (!h || h.called.occupant || (!h.called.foundEmptyAt && h.called.levels.length === 0)) return null;
    const other = 'call the hole that does';
    const isUnder = h.called.own !== undefined && levelsOf(s.ledger, hole).length === 1 && !hole.includes(' ');
    const under = `${other}, or say what came off under it, as the stud of its nut, and call it there`;
    return no(`${subjectText(`hole:${hole}`)} holds nothing`, isUnder ? under : other, [`hole:${hole}`]);
  },
};

export const holeIsFree: Guard<{ hole: Hole }> = {
  code: 'hole-is-taken',
  rule: 'L1',
  kind: 'footing',
  needs: ['hole'],
  check(s, { hole }) {
    const h = holeState(s, hole);
    if (h?.called.occupant) {
      return no(
        `${subjectText(`hole:${hole}`)} already holds ${specText(h.called.occupant.spec)}`,
        'call it off first',
      );
    }
    const asFound = !h || (h.called.touchedAt === 0 && !h.called.first);
    return asFound
      ? no(`${subjectText(`hole:${hole}`)} is as found: nothing came out of it`, 'call it off, or found empty')
      : null;
  },
};

/** L7, L8, L10: what may not serve in a hole again, whatever the hole. Null when it may. */
export function mayNotServe(f: FastenerState, working: boolean): { rule: string; because: string } | null {
  if (f.condemned) return { rule: 'L8', because: `condemned: ${f.condemned}` };
  if (f.broken) return { rule: 'L10', because: 'broken' };
  if (isSpent(f) && !working) return { rule: 'L7', because: 'one-use, and it was tight before' };
  return null;
}

/**
 * L5: the fields in which a fastener contradicts what the hole wants. A new one from the box may differ in head, and in
 * class upwards.
 */
export function unfit(wants: Spec | undefined, spec: Spec, fresh: boolean): string[] {
  const differs = wants ? contradictions(wants, spec) : [];
  if (!fresh) return differs;
  const weaker = wants?.class !== undefined && spec.class !== undefined && isWeaker(wants.class, spec.class);
  return differs.filter((f) => f === 'thread' || f === 'lengthMm' || f === 'kind' || (f === 'class' && weaker));
}

export const wantsIn = (ledger: Ledger, hole: Hole): Spec | undefined => {
  const h = stateOf(ledger, 'hole', hole);
  return h && wantsOf(ledger, h);
};

/** On for now, or in only to turn or hold: order asks nothing of it. */
const isFreeOfOrder = (s: Standing, hole: Hole): boolean => {
  const o = occupantOf(s, hole);
  return o?.forNow === true || o?.working === true;
};
export const behindOf = (s: Standing, hole: Hole, gates: boolean): No | null =>
  behindRefusal(s, frontsOf(s.ledger, hole), gates);

/** O1 for a hole that is to be made snug or tight. Gates among the edges are R7 and are asked by the next guard. */
export const nothingOpenBehind: Guard<{ hole: Hole }> = {
  code: 'open-behind',
  rule: 'O1',
  kind: 'order',
  needs: ['hole'],
  check: (s, { hole }) => (isFreeOfOrder(s, hole) ? null : behindOf(s, hole, false)),
};
export const noGateBehind: Guard<{ hole: Hole }> = {
  code: 'hides-what-is-not-proven',
  rule: 'R7',
  kind: 'gate',
  needs: ['hole'],
  check: (s, { hole }) => (isFreeOfOrder(s, hole) ? null : behindOf(s, hole, true)),
};
export function behindRefusal(s: Standing, fronts: readonly Subject[], gates: boolean): No | null {
  const open = openBehind(s.ledger, fronts).filter((one) => one.gate === gates);
  const [nearest] = open;
  if (!nearest) return null;
  const rest = open.slice(1).map((one) => one.subject);
  const more = rest.length > 0 ? `; then ${textOf(rest)}` : '';
  const because = `behind it ${subjectText(nearest.subject)} is open: ${nearest.because}${more}`;
  return no(because, `close ${subjectText(nearest.subject)} first`, [nearest.subject, ...rest]);
}

/** T3: to be renewed: it was declared so, the old one was judged and is not to be used again, or the parts box holds a new one for it. */
export const isRenewed = (ledger: Ledger, { part, declared, judged }: PartState): boolean =>
  declared?.renew === true ||
  (judged !== undefined && judged.verdict !== 'reuse') ||
  [...every(ledger, 'box')].some((b) => b.sort === 'part' && b.replaces === part && b.left > 0);

/** O2: a part is back before its fasteners are snug; a working fastener or one on for now needs none. */
export const partIsBack: Guard<{ hole: Hole }> = {
  code: 'part-not-back',
  rule: 'O2',
  kind: 'order',
  needs: ['hole'],
  check: (s, { hole }) => (isFreeOfOrder(s, hole) ? null : partsMissingOf(s, hole)),
};
export function partsMissingOf(s: Standing, hole: Hole): No | null {
  const off = partsOffHeldBy(s.ledger, hole);
  const [first] = off;
  if (!first) return null;
  const part = stateOf(s.ledger, 'part', first);
  return no(
    `${first} is not back`,
    part && isRenewed(s.ledger, part) ? `put the new ${first} on` : `put ${first} back`,
    off.map((p) => `part:${p}`),
  );
}

/** K4: before the first fastener of an unplanned area goes back. */
export const holesAreCounted: Guard<{ hole: Hole; working?: true }> = {
  code: 'holes-not-counted',
  rule: 'K4',
  kind: 'gate',
  needs: ['hole'],
  check(s, { hole, working }) {
    const area = stateOf(s.ledger, 'area', areaOf(hole));
    if (!area || working || area.counted) return null;
    const because = holesUncounted(s.ledger, area);
    return because
      ? no(`${area.area}: ${because}`, 'count its holes and call the number', [`area:${area.area}`])
      : null;
  },
};

const traysText = (trays: readonly TrayState[]): string => listed(trays.map((t) => `tray ${t.tray}`));
/** K1, K2: every tray used has a standing count that agrees. */
export const traysCounted: Guard<object> = {
  code: 'trays-not-counted',
  rule: 'K1',
  kind: 'gate',
  needs: [],
  check(s) {
    const trays = uncounted(s.ledger);
    if (trays.length === 0) return null;
    const differ = trays.filter(countDiffers);
    const places = trays.map((t) => `tray:${t.tray}`);
    if (differ.length === 0) return no(`no count by eye stands for ${traysText(trays)}`, 'count the trays', places);
    const once = differ.filter((t) => t.counted?.times === 1);
    if (once.length > 0) return no(`the count of ${traysText(once)} differs from the ledger`, 'count again', places);
    const explained = differ.flatMap((t) => whatCouldExplain(s.ledger, t) ?? []);
    const because = explained.map((one) => differenceText(s.ledger, one)).join('; ');
    const could = explained.flatMap((one) => [
      ...one.holes.map((h) => `hole:${h}`),
      ...one.fasteners.map((f) => `fastener:${f}`),
    ]);
    return no(because, 'call what is short lost, what is over a stray', [...places, ...could]);
  },
};

function differenceText(
  ledger: Ledger,
  { tray, short, over, holes, fasteners }: CouldExplain & { tray: string },
): string {
  const which = fasteners.flatMap((id) => stateOf(ledger, 'fastener', id) ?? []).map(ofHole);
  const named = [...holes.map((h) => subjectText(`hole:${h}`)), ...new Set(which)];
  const by = short > 0 ? `${short} short of` : `${over} over`;
  return `tray ${tray} is ${by} the ledger${named.length > 0 ? `; look at ${listed(named)}` : ''}`;
}
const ofHole = (f: FastenerState): string => `${specText(f.spec)} of ${subjectText(f.origin)}`;

/** S5: what a bead that still cures lets pass. */
export const meanwhile = 'turning by hand is allowed';
/** Beads that stand and have not reached a stage. */
export const notReached = (s: Standing, stage: Stage, circuit?: string): BeadStanding[] =>
  everyBead(s.ledger, s.now).filter((b) => {
    const keepsIn = stateOf(s.ledger, 'face', b.face)?.declared?.keepsIn ?? [];
    const concerned = circuit === undefined || keepsIn.length === 0 || keepsIn.includes(circuit);
    return concerned && (b.void !== undefined || !b.reached[stage]);
  });

export const inOfSort = (s: Standing, sorts: readonly string[]) =>
  [...every(s.ledger, 'temporary')].filter((t) => t.in && sorts.includes(t.sort));
