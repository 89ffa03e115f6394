// What a job will want from the parts box, as its plan and its findings have it: proposed where something is put in the
// box, so that it need not be typed. Nothing is bought by a proposal.

import { wantsNew } from '../job/box-needs.ts';
import { isOff, wantsOf } from '../job/closed.ts';
import type { NewPart } from '../job/entries/declared.ts';
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import { type Spec, specText } from '../job/spec.ts';
import type { BoxState } from '../job/states.ts';
import { areaOf, type Hole, subjectText } from '../job/subjects.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import { isBoughtAs } from '../plan/still-to-do.ts';
import { type Desk, hasItsOwn } from './desk.ts';
import { tokens } from './form.ts';
import { likeNeighbours } from './like-neighbours.ts';
import { readSpec, specWords } from './spec-words.ts';

export type Proposal = {
  name: string;
  sort?: NewPart['sort'];
  quantity?: number;
  spec?: Spec;
  replaces?: string;
  guessed?: true;
};

/** What the job itself wants: taken one after the other by one key. */
export function ownProposals({ ledger, facing }: Desk): Proposal[] {
  const bought = [...every(ledger, 'box')];
  const parts = [...every(ledger, 'part')]
    .filter(
      (p) => p.declared?.renew && !isWithdrawn(ledger, `part:${p.part}`) && !bought.some((b) => b.replaces === p.part),
    )
    .map((p): Proposal => ({ name: `new ${p.part}`, replaces: p.part }));
  // What the area in use waits for is what the box was gone to for.
  const isHere = ({ hole }: Wanting) => areaOf(hole) === facing.area;
  const wanting = wantingHoles(ledger);
  const waits = wanting.filter((one) => isHere(one) && lacksAny(ledger, one.hole));
  const holes = [...waits, ...wanting.filter((one) => !waits.includes(one))];
  const sorts = [...Map.groupBy(holes, ({ wants }) => specText(wants)).values()].flatMap((some) =>
    ofOneSort(ledger, some),
  );
  const isWaitedFor = ({ hole }: { hole: Hole }) => waits.some((one) => one.hole === hole);
  return [...sorts.filter(isWaitedFor), ...parts, ...sorts.filter((one) => !isWaitedFor(one))];
}

type Wanting = { hole: Hole; wants: Spec; guessed: boolean };
/** Off with nothing lying there that could go back, or to get a new one-use fastener that it has not yet. */
function wantingHoles(ledger: Ledger): Wanting[] {
  return [...every(ledger, 'hole')].flatMap((h): Wanting[] => {
    const known = wantsOf(ledger, h);
    const lacks = lacksAny(ledger, h.hole);
    const wants = known ?? (lacks ? likeNeighbours(ledger, h.hole) : undefined);
    if (!wants || !isBuyable(wants) || isWithdrawn(ledger, `area:${areaOf(h.hole)}`)) return [];
    const isWanted = lacks || (wants.oneUse && wantsNew(ledger, h, wants) !== undefined);
    return isWanted ? [{ hole: h.hole, wants, guessed: !known }] : [];
  });
}
const threaded: ReadonlySet<Spec['kind']> = new Set(['bolt', 'nut', 'screw', 'stud']);
/** Known by its thread, or of a kind that has none, as a clip or a hose clamp. */
const isBuyable = ({ kind, thread }: Spec): boolean =>
  thread !== undefined || (kind !== undefined && !threaded.has(kind));
/** As many as are wanted and do not lie in the box already, under the name of the first hole. */
function ofOneSort(ledger: Ledger, some: readonly Wanting[]): (Proposal & { hole: Hole })[] {
  const [first] = some as readonly [Wanting, ...Wanting[]];
  const { hole, wants: spec } = first;
  const there = [...every(ledger, 'box')].filter((b) => b.spec && specText(b.spec) === specText(spec));
  const quantity = some.length - there.reduce((sum, b) => sum + b.left, 0);
  if (quantity <= 0) return [];
  const place = subjectText(`hole:${hole}`);
  const name = quantity === 1 ? `new one for ${place}` : `new ones for ${place} and ${quantity - 1} more`;
  const guessed = some.some((one) => one.guessed) && { guessed: true as const };
  return [{ name: name.slice(0, 60), spec, hole, ...(quantity > 1 && { quantity }), ...guessed }];
}

function lacksAny(ledger: Ledger, hole: Hole): boolean {
  const h = stateOf(ledger, 'hole', hole);
  return h !== undefined && isOff(h) && !hasItsOwn(ledger, hole);
}

/** With what the plans list as bought new besides, supplies too; nothing twice. */
export function boxProposals(desk: Desk): Proposal[] {
  const { ledger } = desk;
  const bought = [...every(ledger, 'box')];
  const listed = [...every(ledger, 'service')]
    .filter((s) => s.state === 'ordered')
    .flatMap((s) => s.newParts ?? [])
    .flatMap((one) => stillToBuy(one, bought));
  const known = ownProposals(desk);
  const isProposed = ({ name, replaces, spec }: NewPart) =>
    known.some(
      (one) =>
        one.name === name ||
        (replaces !== undefined && replaces === one.replaces) ||
        (spec !== undefined && one.spec !== undefined && specText(spec) === specText(one.spec)),
    );
  const once = new Map(listed.filter((one) => !isProposed(one)).map((one) => [one.name, one]));
  return [...known, ...once.values()];
}
/** What is counted in holes is bought once it is in the box at all; of the rest as many as the plan says. */
function stillToBuy(one: NewPart, boxes: readonly BoxState[]): NewPart[] {
  const there = boxes.filter((b) => isBoughtAs(one, b));
  if (one.spec && there.length > 0) return [];
  const quantity = one.quantity - there.reduce((sum, b) => sum + b.bought, 0);
  return quantity > 0 ? [{ ...one, quantity }] : [];
}
export const proposalNamed = (desk: Desk, name: unknown): Proposal | undefined =>
  boxProposals(desk).find((one) => one.name === name);

/** What one call puts into the box: each of them as it is proposed; one that is guessed is chosen by itself. */
export const allProposed = (desk: Desk): Pick<Proposal, 'name' | 'quantity' | 'spec' | 'replaces'>[] =>
  boxProposals(desk)
    .filter(({ guessed }) => !guessed)
    .map(({ name, quantity, spec, replaces }) => ({
      name,
      ...(quantity !== undefined && { quantity }),
      ...(spec && { spec }),
      ...(replaces !== undefined && { replaces }),
    }));

/** A proposal as it is chosen: a fastener with what it is. */
export function proposalText(desk: Desk, name: string): string {
  const { spec, guessed, quantity = 1 } = proposalNamed(desk, name) ?? {};
  const many = quantity > 1 ? `, ${quantity} of them` : '';
  return spec ? `${name}  ${specWords(spec)}${guessed ? ', as its neighbours are' : ''}${many}` : `${name}${many}`;
}

/** A name that is a spec from its first word to its last, by a head or a thread, is no name: the fastener is meant. */
export function boughtAs(name: unknown): { name: string; spec: Spec } | undefined {
  const words = typeof name === 'string' ? tokens(name) : [];
  const { spec, used } = readSpec(words);
  if (used < words.length || (spec.thread === undefined && spec.head === undefined)) return undefined;
  // A name holds no "/", as inch threads do.
  return { name: specWords(spec).replaceAll('/', '-').slice(0, 60), spec };
}
