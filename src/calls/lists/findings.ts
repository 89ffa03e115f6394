// What is suspected and unanswered, then the findings of a job, the open ones first.
import { every, stateOf } from '../../job/ledger.ts';
import { nextStepWords } from '../../job/repair-figures.ts';
import { nameOf, subjectText } from '../../job/subjects.ts';
import { suspectedOn, suspicionText } from '../../job/suspicions.ts';
import type { Desk } from '../desk.ts';
import { fileName } from '../entry-words.ts';
import type { Listed } from '../listed.ts';

export function findingRows(desk: Desk): Listed[] {
  const all = [...every(desk.ledger, 'finding')];
  const suspected = suspectedOn(desk.ledger).map(
    ({ hole, suspicions }): Listed => ({
      key: `suspected ${hole}`,
      mark: 'half',
      name: '?',
      text: `${subjectText(`hole:${hole}`)}: ${suspicionText(suspicions)}`,
      end: 'suspected',
      picks: { hole },
      leads: `hole:${hole}`,
    }),
  );
  const made = [...all.filter((f) => !f.closed), ...all.filter((f) => f.closed)].map(
    (f): Listed => ({
      key: f.id,
      mark: f.closed ? 'done' : 'open',
      name: f.id,
      text: `${subjectText(f.at)}: ${f.what}`,
      end: f.closed ? f.closed.how : (mending(desk, f.at) ?? `${f.when}${f.told ? ', owner told' : ''}`),
      picks: { ...(f.closed ? {} : { finding: f.id }), ...(f.at.startsWith('hole:') ? { hole: nameOf(f.at) } : {}) },
      leads: f.at,
    }),
  );
  const photos = (stateOf(desk.ledger, 'vehicle', 'vehicle')?.photos ?? []).map(
    ({ n, at, file, words }): Listed => ({
      key: `photo ${n}`,
      mark: 'plain',
      name: 'photo',
      text: `${subjectText(at)}: ${fileName(file)}`,
      ...(words !== undefined && { end: words }),
      picks: {},
      leads: at,
    }),
  );
  return [...suspected, ...made, ...photos];
}

/** F5: the next step of a thread repair that was begun there. */
function mending({ ledger }: Desk, at: string): string | undefined {
  return at.startsWith('hole:') ? nextStepWords(ledger, nameOf(at)) : undefined;
}
