// The job: the vehicle, notes.
import { pistonsNote } from '../../job/pistons-noted.ts';
import { arePistonsBack, isCaliperOff, pistonsAt } from '../pistons.ts';
import { key, type Row } from '../row.ts';

export const jobRows: readonly Row[] = [
  {
    id: 'open',
    words: ['job', 'new job'],
    form: '<label:words> [registration <registration:words>]',
    label: 'new job',
    help: 'A vehicle comes onto the bench.',
    group: 'the job',
    keys: [],
    verb: 'open-job',
  },
  {
    id: 'note',
    words: ['note', 'write down'],
    form: '<words>',
    label: 'note',
    help: 'Anything worth keeping.',
    group: 'the job',
    keys: [],
    verb: 'note',
  },
  {
    id: 'pistons',
    words: ['pistons', 'pistons pushed back'],
    form: '[<area>]',
    label: 'pistons pushed back',
    help: 'A note that the pistons of a caliper that is off were pushed back; the reservoir is looked at meanwhile.',
    group: 'the job',
    keys: [key('&', ['strip', 'build'], { footer: false })],
    fills: (desk) => ({ area: pistonsAt(desk) }),
    means(desk, { area }) {
      if (typeof area === 'string' && isCaliperOff(desk, area)) {
        const words = pistonsNote(area);
        return arePistonsBack(desk, area)
          ? { no: { because: `${words}: noted already`, instead: 'go on', done: true } }
          : { say: { verb: 'note', words } };
      }
      const because = area === undefined ? 'no area is in use' : `no caliper of a brake is off at ${area}`;
      return { no: { because, instead: 'use the area of the caliper', by: 'area' } };
    },
  },
];
