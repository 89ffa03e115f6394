// The services side by side: ordered on this job, chosen, and offered by the plans at hand, with what each takes off and
// how little more it would be; then all together, what is nearly free, and what is off for none of them.

import type { Count } from '../../plan/need.ts';
import { countText, stepText } from '../../plan/need-words.ts';
import type { Beside, SideBySide } from '../../plan/side-by-side.ts';
import type { Desk } from '../desk.ts';
import type { Listed, Mark } from '../listed.ts';
import { servicesBeside } from '../planned.ts';

const marks: Record<Beside['state'], Mark> = {
  ordered: 'half',
  done: 'done',
  dropped: 'struck',
  chosen: 'open',
  offered: 'found',
};

export function serviceRows(desk: Desk): Listed[] {
  const side = servicesBeside(desk);
  if (side.all.length === 0) return [];
  const isAny = side.all.some(isTaken);
  const bearing = Map.groupBy(side.all, ({ service }) => service);
  return [
    ...side.all.map((one) => serviceRow(one, isAny, bearing.get(one.service)?.length === 1)),
    ...(isAny && !isNothing(side.together) ? togetherRows(side) : []),
    ...(isAny ? side.nearby.slice(0, mostNearby).map(nearbyRow) : []),
    ...side.needless.map((step): Listed => {
      const text = stepText(side.works, step);
      const end = 'off, needed by none';
      return { key: `needless ${step.at}`, mark: 'open', name: 'needless', text, end, picks: {} };
    }),
  ];
}

const mostNearby = 5;
const isTaken = ({ state }: Beside): boolean => state !== 'offered' && state !== 'dropped';
const isNothing = (count: Count): boolean => countText(count) === 'nothing';
/** The fasteners alone, where there are any. */
const briefly = (count: Count): string => countText(count).split(', ')[0] as string;
/** Fasteners and parts; all of it is said where the row is picked. */
const shortly = (count: Count): string => countText({ ...count, slack: 0, connections: 0 });
/** "6 more" after "35 fasteners"; another sort is named. */
const beside = (count: Count): string => (count.fasteners > 0 ? String(count.fasteners) : briefly(count));

/** @param isAlone one that is ordered says no plan any more, and is the same row all the same where no other bears its name */
function serviceRow(one: Beside, isAny: boolean, isAlone: boolean): Listed {
  const { service, plan, state, alone, left } = one;
  const more = isAny && (state === 'chosen' || state === 'offered') ? `, ${beside(one.more)} more` : '';
  const toCome = state === 'ordered' && !isNothing(alone) ? `, ${isNothing(left) ? 'none' : beside(left)} to come` : '';
  const text = plan === undefined || plan === service ? service : `${service}   ${plan}`;
  return {
    key: isAlone ? service : `${plan ?? ''} ${service}`,
    mark: marks[state],
    name: state === 'offered' ? '' : state,
    text,
    // Two plans may know a service by like names: of one chosen its plan stays to be read.
    brief: state === 'chosen' ? { text, end: more.replace(/^, /, '') } : { text: service },
    end: isNothing(alone) ? '' : `${briefly(alone)}${more}${toCome}`,
    more: inFull(one),
    picks: { service, ...(plan !== undefined && { plan }) },
  };
}

function inFull({ service: name, plan, state, alone, more, left, shares }: Beside): string {
  const service = plan === undefined || plan === name ? name : `${name}, of the plan ${plan}`;
  if (isNothing(alone)) return `${service}: what it takes off is not known; no plan says it.`;
  const isOrdered = state === 'ordered' || state === 'done';
  const shared = shares.length > 0 ? ` Shares ${shares.join(', ')}.` : '';
  return isOrdered
    ? `${service}: ${countText(alone)}, still to come ${countText(left)}.${shared}`
    : `${service}: ${countText(alone)}${countText(more) === countText(alone) ? '' : `; ${countText(more)} more`}.${shared}`;
}

function togetherRows({ together, left }: SideBySide): Listed[] {
  const end = isNothing(left) ? 'none to come' : `${briefly(left)} to come`;
  const more = `All together: ${countText(together)}; still to come ${countText(left)}.`;
  return [
    {
      key: 'together',
      mark: 'plain',
      name: 'together',
      text: countText(together),
      brief: { text: shortly(together) },
      end,
      more,
      picks: {},
    },
  ];
}

/** While you are there. */
function nearbyRow({ service, plan, more, shares }: Beside): Listed {
  const shared = shares.length > 0 ? ` Shares ${shares.join(', ')}.` : '';
  return {
    key: `nearby ${plan} ${service}`,
    mark: 'plain',
    name: 'nearby',
    text: service,
    end: `${briefly(more)} more`,
    more: `While you are there: ${service}, ${countText(more)} more.${shared}`,
    picks: { service, ...(plan !== undefined && { plan }) },
  };
}
