// What a job will want from the parts box, as its plan and its findings have it: proposed where something is put in the
// box, so that it need not be typed. Nothing is bought by a proposal.
import { wantsOf } from '../job/closed.ts';
import type { NewPart } from '../job/entries/declared.ts';
import { every } from '../job/ledger.ts';
import { type Spec, specText } from '../job/spec.ts';
import { areaOf, subjectText } from '../job/subjects.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import { isBoughtAs } from '../plan/still-to-do.ts';
import type { Desk } from './desk.ts';

export type Proposal = { name: string; sort?: NewPart['sort']; quantity?: number; spec?: Spec; replaces?: string };

/** What the job itself wants: taken one after the other by one key. */
export function ownProposals({ ledger }: Desk): Proposal[] {
  const bought = [...every(ledger, 'box')];
  const parts = [...every(ledger, 'part')]
    .filter(
      (p) => p.declared?.renew && !isWithdrawn(ledger, `part:${p.part}`) && !bought.some((b) => b.replaces === p.part),
    )
    .map((p): Proposal => ({ name: `new ${p.part}`, replaces: p.part }));
  const holes = [...every(ledger, 'hole')].flatMap((h): Proposal[] => {
    const wants = wantsOf(ledger, h);
    const isWanted = wants?.oneUse || h.called.foundEmptyAt > 0;
    if (!wants?.thread || !isWanted || isWithdrawn(ledger, `area:${areaOf(h.hole)}`)) return [];
    if (bought.some((b) => b.spec && specText(b.spec) === specText(wants))) return [];
    return [{ name: `new one for ${subjectText(`hole:${h.hole}`)}`.slice(0, 60), spec: wants }];
  });
  return [...parts, ...holes];
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
