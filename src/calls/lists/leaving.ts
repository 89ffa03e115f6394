// Everything that still stands between the car and the road, each with its next call (X5).
import { openPointsToLookAt } from '../../job/next-call.ts';
import type { OpenPoint } from '../../job/open-point.ts';
import { nameOf, subjectText } from '../../job/subjects.ts';
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { wordsOf } from '../line-reader.ts';
import { type Listed, type Rows, rowsMadeBy } from '../listed.ts';

export function leavingRows(desk: Desk): Rows {
  const { points, withNext } = openPointsToLookAt(desk.ledger, desk.now);
  return rowsMadeBy(points.length, (i): Listed => {
    const point = withNext(points[i] as OpenPoint);
    const { at, because, code } = point;
    const text = `${at === 'vehicle' ? '' : `${subjectText(at)}: `}${because}`;
    const end = nextWords(desk, point);
    const more = end === '' ? `${text}.` : `${text}. Next: ${end}`;
    return { key: `${code} ${at}`, mark: 'open', name: '', text, end, more, picks: picksOf(at), leads: at };
  });
}

/** What is told here in words is not told before the eye has counted it (K1, K4), nor made up. */
function nextWords(desk: Desk, { next }: OpenPoint): string {
  if (!next) return '';
  if (next.verb === 'count-trays') return `count ${(next.counts as { tray: string }[])[0]?.tray} is …`;
  if (next.verb === 'count-holes') return `holes … in ${next.area}`;
  if (next.verb === 'note-odometer') return 'odometer …';
  return wordsOf(desk, next).replaceAll('to be said', '…');
}

function picksOf(at: string): Args {
  const [sort] = at.split(':');
  return sort && at !== sort
    ? { [sort === 'line' ? 'lines' : sort]: sort === 'line' ? [Number(nameOf(at))] : nameOf(at) }
    : {};
}
