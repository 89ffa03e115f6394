// Of the wrong bolts that can be seen in what was called, how many are suspected; and how often one is that belongs there.
import { type Seen, seenOver } from '../job/wrong-bolts.ts';
import { type Figure, figure } from './figure.ts';

const seeds = 1000;
const figuresOf = (name: string, { jobs, visible, suspected, alarms }: Seen): Figure[] => [
  figure(
    {
      name,
      of: `suspected / one wrong bolt visible in what was called, of ${jobs} jobs`,
      unit: 'bolts',
      goal: '>= 0.9',
    },
    [suspected],
    [visible],
  ),
  figure({ name, of: 'suspected without cause / job', unit: 'bolts', goal: '<= 1' }, [alarms], [jobs]),
];

export const wrongBoltsSeen = async (): Promise<Figure[]> => [
  ...figuresOf('with the plan', seenOver(seeds, true)),
  ...figuresOf('with no plan', seenOver(seeds, false)),
];
