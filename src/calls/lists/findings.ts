// What is suspected and unanswered, then the findings of a job, the open ones first.
import { every, stateOf } from '../../job/ledger.ts';
import { repairOf, stepLacking } from '../../job/repair.ts';
import { nextStepWords } from '../../job/repair-figures.ts';
import type { FindingState } from '../../job/states.ts';
import { named, nameOf, subjectText } from '../../job/subjects.ts';
import { suspectedOn, suspicionText } from '../../job/suspicions.ts';
import type { Desk } from '../desk.ts';
import { fileName } from '../entry-words.ts';
import type { Listed } from '../listed.ts';
import { waitsForAnother } from '../repair-asked.ts';

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
      end: f.closed ? f.closed.how : (mending(desk, f)?.short ?? foundWords(f)),
      more: f.closed ? '' : moreWords(desk, f),
      picks: { ...(f.closed ? {} : { finding: f.id }), ...(f.at.startsWith('hole:') ? { hole: nameOf(f.at) } : {}) },
      leads: f.at,
      ...(!f.closed && isBeingMended(desk, f) && { goesOnBy: 'repair' }),
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

const foundWords = ({ when, told }: FindingState): string => `${when}${told ? ', owner told' : ''}`;
const isBeingMended = ({ ledger }: Desk, { at }: FindingState): boolean =>
  stepLacking(ledger, named('hole', at) ?? '') !== undefined;
/** F5: the next step of a thread repair that was begun there; once it is whole, what is left for its finding. */
function mending({ ledger }: Desk, { at, fastener }: FindingState): { short: string; whole: string } | undefined {
  const hole = named('hole', at);
  if (hole === undefined || repairOf(ledger, hole).length === 0) return undefined;
  const step = stepLacking(ledger, hole);
  if (step !== undefined) return { short: `next ${step}`, whole: nextStepWords(ledger, hole) ?? '' };
  return waitsForAnother(ledger, hole, fastener)
    ? { short: 'next a new one in', whole: 'The repair is whole. It is of what came out: a new one in, then put right' }
    : { short: 'next put right', whole: 'The repair is whole: put right is next' };
}
/** The row cuts off what has no room; here it stands in whole. */
const moreWords = (desk: Desk, f: FindingState): string =>
  [`${subjectText(f.at)}: ${f.what}, ${foundWords(f)}`, mending(desk, f)?.whole].filter(Boolean).join('. ');
