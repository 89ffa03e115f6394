// What a job will want from the parts box, as its plan and its findings have it: proposed where something is put in the
// box, so that it need not be typed. Nothing is bought by a proposal.
import { wantsOf } from '../job/closed.ts';
import { every } from '../job/ledger.ts';
import { type Spec, specText } from '../job/spec.ts';
import { areaOf, subjectText } from '../job/subjects.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import type { Desk } from './desk.ts';

export type Proposal = { name: string; spec?: Spec; replaces?: string };

export function boxProposals({ ledger }: Desk): Proposal[] {
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
export const proposalNamed = (desk: Desk, name: unknown): Proposal | undefined =>
  boxProposals(desk).find((one) => one.name === name);
