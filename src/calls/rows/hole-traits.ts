// What is said on the spot of one hole: slack only, its own place, a sprocket bolt, finished later.
import { finishedLater } from '../../job/entries/declared.ts';
import { ofHole } from '../declaring.ts';
import type { Row } from '../row.ts';

export const holeTraitsRows: readonly Row[] = [
  {
    id: 'slack-only',
    words: ['slack only', 'never off'],
    form: '[<hole>]',
    label: 'slack only',
    help: 'This one is only slackened, never off.',
    group: 'on the spot',
    keys: [],
    means: ofHole(() => ({ slackOnly: true })),
  },
  {
    id: 'own-place',
    words: ['own place', 'trades with none'],
    form: '[<hole>]',
    label: 'own place',
    help: 'This hole takes its own fastener only: caps, matched bolts.',
    group: 'on the spot',
    keys: [],
    means: ofHole(() => ({ ownPlace: true })),
  },
  {
    id: 'sprocket-bolt',
    words: ['sprocket bolt', 'holds a sprocket'],
    form: '[<hole>]',
    label: 'sprocket bolt',
    help: 'This one holds a sprocket or a pulley on its shaft: slack or tight with a lock in, it is warned of.',
    group: 'on the spot',
    keys: [],
    means: ofHole(() => ({ sprocketBolt: true })),
  },
  {
    id: 'later',
    words: ['later', 'finished later'],
    form: `[<hole>] <later:${finishedLater.join('|')}>`,
    label: 'finished later',
    help: 'Snug is enough for now: final after the belt, after turning, or on its wheels.',
    group: 'on the spot',
    keys: [],
    means: ofHole(({ later }) => ({ later })),
  },
];
