// The job: the vehicle, its services, notes.
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
    id: 'service',
    words: ['service', 'order service'],
    form: '<service>',
    label: 'service',
    help: 'A service is ordered that no plan describes.',
    group: 'the job',
    keys: [key('a', 'leaving', { fresh: true })],
    verb: 'order-service',
  },
  {
    id: 'plan',
    words: ['plan', 'take plan'],
    form: '<plan> for <service:planned>',
    label: 'service from a plan',
    help: 'A service is ordered from a plan: all the plan says of it is written into the job, and the plan is not read again.',
    group: 'the job',
    keys: [key('O', ['strip', 'build', 'leaving'], { fresh: true })],
    means: (desk, { plan, service }) => {
      const offer = desk.plans.find((p) => p.name === plan);
      if (!offer) return { no: { because: `there is no plan "${plan}"`, instead: 'see the folder of plans' } };
      return { say: { verb: 'order-service', service, declares: offer.declares([service as string], desk.ledger) } };
    },
  },
  {
    id: 'service-done',
    words: ['service done', 'work complete'],
    form: '<service>',
    label: 'service done',
    help: 'An ordered service is done.',
    group: 'the job',
    keys: [key('f', 'leaving', { pad: '5' })],
    verb: 'service-done',
  },
  {
    id: 'service-dropped',
    words: ['service dropped', 'leave service out'],
    form: '<service> because <because:why>',
    label: 'service dropped',
    help: 'An ordered service is not done, and why.',
    group: 'the job',
    keys: [],
    verb: 'drop-service',
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
