// Everything that still stands between the car and the road, each with its next call (X5).
import { openPointsToLookAt } from '../../job/next-call.ts';
import type { OpenPoint } from '../../job/open-point.ts';
import { nameOf, subjectText } from '../../job/subjects.ts';
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { nextWords } from '../line-reader.ts';
import { type Listed, type Rows, rowsMadeBy } from '../listed.ts';

export function leavingRows(desk: Desk): Rows {
  const { points, withNext } = openPointsToLookAt(desk.ledger, desk.now);
  return rowsMadeBy(points.length, (i): Listed => {
    const point = withNext(points[i] as OpenPoint);
    const { at, because, code } = point;
    const text = `${at === 'vehicle' ? '' : `${subjectText(at)}: `}${because}`;
    const end = point.next ? nextWords(desk, point.next) : '';
    const more = end === '' ? `${text}.` : `${text}. Next: ${end}`;
    return { key: `${code} ${at}`, mark: 'open', name: '', text, end, more, picks: picksOf(at), leads: at };
  });
}

function picksOf(at: string): Args {
  const [sort] = at.split(':');
  return sort && at !== sort
    ? { [sort === 'line' ? 'lines' : sort]: sort === 'line' ? [Number(nameOf(at))] : nameOf(at) }
    : {};
}
