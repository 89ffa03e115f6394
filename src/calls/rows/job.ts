// The job: the vehicle, notes.
import type { Row } from '../row.ts';

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
];
