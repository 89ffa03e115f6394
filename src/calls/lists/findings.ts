// The findings of a job, the open ones first.
import { every } from '../../job/ledger.ts';
import { nameOf, subjectText } from '../../job/subjects.ts';
import type { Desk } from '../desk.ts';
import type { Listed } from '../listed.ts';

export function findingRows(desk: Desk): Listed[] {
  const all = [...every(desk.ledger, 'finding')];
  return [...all.filter((f) => !f.closed), ...all.filter((f) => f.closed)].map((f) => ({
    key: f.id,
    mark: f.closed ? 'done' : 'open',
    name: f.id,
    text: `${subjectText(f.at)}: ${f.what}`,
    end: f.closed ? f.closed.how : `${f.when}${f.told ? ', owner told' : ''}`,
    picks: { ...(f.closed ? {} : { finding: f.id }), ...(f.at.startsWith('hole:') ? { hole: nameOf(f.at) } : {}) },
    leads: f.at,
  }));
}
