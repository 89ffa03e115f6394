// What a job will want from the parts box, as its plan and its findings have it: proposed where something is put in the
// box, so that it need not be typed. Nothing is bought by a proposal.
import { isOff, wantsOf } from '../job/closed.ts';
import type { NewPart } from '../job/entries/declared.ts';
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import { type Spec, specText } from '../job/spec.ts';
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
  const holes = [...every(ledger, 'hole')].flatMap((h): (Proposal & { hole: Hole })[] => {
    const known = wantsOf(ledger, h);
    // Off, and nothing lies there that could go back.
    const lacks = lacksAny(ledger, h.hole);
    const wants = known ?? (lacks ? likeNeighbours(ledger, h.hole) : undefined);
    const isWanted = wants?.oneUse || lacks;
    if (!wants?.thread || !isWanted || isWithdrawn(ledger, `area:${areaOf(h.hole)}`)) return [];
    if (bought.some((b) => b.spec && specText(b.spec) === specText(wants))) return [];
    const name = `new one for ${subjectText(`hole:${h.hole}`)}`.slice(0, 60);
    return [{ name, spec: wants, hole: h.hole, ...(!known && { guessed: true as const }) }];
  });
  // What the area in use waits for is what the box was gone to for.
  const isHere = ({ hole }: { hole: Hole }) => areaOf(hole) === facing.area;
  const waits = holes.filter((one) => isHere(one) && lacksAny(ledger, one.hole));
  return [...waits, ...parts, ...holes.filter((one) => !waits.includes(one))];
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
    .filter((one) => !bought.some((b) => isBoughtAs(one, b)));
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
export const proposalNamed = (desk: Desk, name: unknown): Proposal | undefined =>
  boxProposals(desk).find((one) => one.name === name);

/** A proposal as it is chosen: a fastener with what it is. */
export function proposalText(desk: Desk, name: string): string {
  const { spec, guessed } = proposalNamed(desk, name) ?? {};
  return spec ? `${name}  ${specWords(spec)}${guessed ? ', as its neighbours are' : ''}` : name;
}

/** A name that is a spec from its first word to its last, by a head or a thread, is no name: the fastener is meant. */
export function boughtAs(name: unknown): { name: string; spec: Spec } | undefined {
  const words = typeof name === 'string' ? tokens(name) : [];
  const { spec, used } = readSpec(words);
  if (used < words.length || (spec.thread === undefined && spec.head === undefined)) return undefined;
  // A name holds no "/", as inch threads do.
  return { name: specWords(spec).replaceAll('/', '-').slice(0, 60), spec };
}
