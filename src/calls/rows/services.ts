// The services of a job: ordered by name or from plans, several at once, done or dropped; and places a plan knows by
// another name.
import { stateOf } from '../../job/ledger.ts';
import { declare } from '../declaring.ts';
import type { Desk } from '../desk.ts';
import { askedOnOrdering, askedOnTaking, chosenMeant, ordering, orderMeant } from '../planned.ts';
import { key, type Row } from '../row.ts';
import { askedOnServiceDone } from '../waits-of-service.ts';

/** A plan that is not in the list would else seem to be nowhere. */
function planAsked({ plansLeftOut }: Desk): string {
  const leftOut = plansLeftOut?.() ?? 0;
  return leftOut === 0 ? 'plan' : `plan (${leftOut} left out: "countback plans" says why)`;
}

export const servicesRows: readonly Row[] = [
  {
    id: 'choose-service',
    words: ['choose service', 'service together'],
    form: '<plan> for <service:planned>',
    label: 'choose',
    help: 'A service of a plan is chosen to be ordered with others, or left out again; nothing is written yet.',
    group: 'services',
    keys: [key('space', 'services', { pad: '0' })],
    means: (desk, { plan, service }) => chosenMeant(desk, { plan: plan as string, service: service as string }),
  },
  {
    id: 'order-chosen',
    words: ['order chosen', 'take the chosen'],
    form: '[<plan> for <service:planned>]',
    label: 'order the chosen',
    help: 'All services chosen are ordered at once, from their plans together; with none chosen and none ordered yet, the one pointed at.',
    group: 'services',
    keys: [key('enter', 'services', { pad: 'enter' })],
    besides: askedOnOrdering,
    means: orderMeant,
    after: () => ({ chosen: [] }),
  },
  {
    id: 'service',
    words: ['service', 'order service'],
    form: '<service>',
    label: 'service',
    help: 'A service is ordered that no plan describes.',
    group: 'services',
    keys: [key('a', ['leaving', 'services'], { fresh: true })],
    verb: 'order-service',
  },
  {
    id: 'plan',
    words: ['plan', 'take plan'],
    form: '<plan> for <service:planned>',
    spoken: ['take plan <plan> service <service:planned>'],
    label: 'service from a plan',
    help: 'A service is ordered from a plan: all the plan says of it is written into the job, and the plan is not read again.',
    group: 'services',
    keys: [key('O', ['strip', 'build', 'leaving'], { fresh: true })],
    questions: {
      plan: (_args, desk) => planAsked(desk),
      service: ({ plan }) => `which service of ${plan} (W chooses several at once)`,
    },
    besides: askedOnTaking,
    means: (desk, { plan, service, ...args }) =>
      ordering(desk, [{ plan: plan as string, service: service as string }], args),
  },
  {
    id: 'service-done',
    words: ['service done', 'work complete'],
    form: '<service>',
    spoken: ['service <service> is all done'],
    label: 'service done',
    help: 'An ordered service is done.',
    group: 'services',
    keys: [key('f', ['leaving', 'services'], { pad: '5' })],
    verb: 'service-done',
    asksOnce: askedOnServiceDone,
  },
  {
    id: 'service-dropped',
    words: ['service dropped', 'leave service out'],
    form: '<service> because <because:why>',
    label: 'service dropped',
    help: 'An ordered service is not done, and why: what only it brought and nobody touched is no longer shown.',
    group: 'services',
    keys: [key('d', 'services', { pad: '3' })],
    verb: 'drop-service',
  },
  {
    id: 'same-place',
    words: ['same place', 'known to plans'],
    form: '<area> is <called:words>',
    label: 'same place',
    help: 'An area of this job is what plans call by another name; said before a service is ordered from one.',
    group: 'services',
    keys: [],
    means: (desk, { area, called }) =>
      stateOf(desk.ledger, 'area', area as string)
        ? declare({ kind: 'area-declared', area: area as string, inPlans: called as string })
        : { no: { because: `there is no area "${area}"`, instead: 'name one of this job' } },
  },
];
