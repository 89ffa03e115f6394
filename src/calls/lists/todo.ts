// What is still to do, service by service: to take off, to judge, to fit; then what is to be bought, the tools that the
// awkward holes want, and where the work can hurt.

import { learnedOrder } from '../../job/learned.ts';
import { every } from '../../job/ledger.ts';
import { nameOf, type Subject, sortOf, subjectText } from '../../job/subjects.ts';
import { stepText } from '../../plan/need-words.ts';
import { type Bought, type Place, type ServiceToDo, type StillToDo, stillToDo } from '../../plan/still-to-do.ts';
import type { Desk } from '../desk.ts';
import type { Listed, Mark } from '../listed.ts';
import { mindedHere } from '../sent-to.ts';
import { specWords } from '../spec-words.ts';

export function todoRows(desk: Desk): Listed[] {
  const todo = stillToDo(desk.ledger, desk.now);
  return [
    ...todo.services.flatMap((one, i) => serviceRows(todo, one, i)),
    ...todo.newParts.map(boughtRow),
    ...todo.tools.map(({ tool, at, words }) => row(`tool ${at} ${tool}`, 'plain', 'tool', tool, words, at)),
    ...learnedOrder(desk.ledger).map(orderRow),
    ...mindRows(desk),
  ];
}

function row(key: string, mark: Mark, name: string, text: string, end = '', leads?: Subject): Listed {
  const more = `${text}${end === '' ? '' : `: ${end}`}`;
  return {
    key,
    mark,
    name,
    text,
    end,
    more,
    picks: picksOf(leads),
    group: name,
    ...(leads !== undefined && { leads }),
  };
}
const picksOf = (at: Subject | undefined) => (at === undefined || at === 'vehicle' ? {} : { [sortOf(at)]: nameOf(at) });

function serviceRows({ works }: StillToDo, one: ServiceToDo, i: number): Listed[] {
  const { service, takeOff, judge, fit } = one;
  const head = service ?? 'of no service';
  const sums = [
    takeOff.length > 0 && `${takeOff.length} to take off`,
    judge.length > 0 && `${judge.length} to judge`,
    fit.length > 0 && `${fit.length} to fit`,
  ].filter(Boolean);
  const done = one.unknown ? 'no plan says what it takes off' : 'nothing left: call it done';
  const end = sums.length > 0 ? sums.join(', ') : done;
  const under = (what: string, mark: Mark, { at, words }: Place): Listed => ({
    ...row(`${i} ${what} ${at} ${words}`, mark, `  ${what}`, placeWords(at, words), '', at),
    group: `${i} ${what}`,
  });
  return [
    {
      ...row(`${i} ${head}`, sums.length > 0 || one.unknown ? 'half' : 'done', 'service', head, end),
      picks: service ? { service } : {},
      group: `${i}`,
      // What is left of it stands beside the other services; where nothing is, it is called done.
      ...(service !== undefined && {
        leads: `service:${service}`,
        leadsOn: sums.length > 0 ? ('services' as const) : ('leaving' as const),
      }),
    },
    ...takeOff.map(
      (step): Listed => ({
        ...row(`${i} off ${step.at}`, 'found', '  take off', stepText(works, step), '', step.at),
        leadsOn: 'strip',
        group: `${i} take off`,
      }),
    ),
    ...judge.map((place) => under('judge', 'open', place)),
    ...fit.map((place) => under('fit', 'half', place)),
  ];
}
/** A finding's words name its place themselves. */
const placeWords = (at: Subject, words: string): string =>
  ['finding', 'vehicle'].includes(sortOf(at)) ? words : `${subjectText(at)}: ${words}`;

function boughtRow({ name, quantity, spec, bought }: Bought): Listed {
  const text = `${name}${spec ? `  ${specWords(spec)}` : ''}`;
  const short = quantity - bought;
  return short > 0
    ? row(`buy ${name}`, 'open', 'buy', text, `${short} of ${quantity} to buy`, `box:${name}`)
    : row(`buy ${name}`, 'done', 'bought', text, `${quantity}`, `box:${name}`);
}

/** Those of the area in use first, as the bench sends one to them. */
function mindRows(desk: Desk): Listed[] {
  const here = new Set(mindedHere(desk));
  const all = cautionsOf(desk);
  return [...all.filter(({ words }) => here.has(words)), ...all.filter(({ words }) => !here.has(words))].map(mindRow);
}
/** Where it can hurt; the place gives way to the words, and is said below. */
const mindRow = ({ words, at }: { words: string; at?: Subject }): Listed => ({
  ...row(`mind ${words}`, 'plain', 'mind', words, at === undefined ? '' : subjectText(at)),
  brief: { end: '' },
  more: at === undefined ? words : `${subjectText(at)}: ${words}`,
});

/** Order that was only done so far: one key says it. */
function orderRow({ front, behind }: { front: Subject; behind: Subject }): Listed {
  const text = `${subjectText(behind)} behind ${subjectText(front)}?`;
  const more = `${subjectText(behind)} came off while ${subjectText(front)} was off. Said with one key, it is closed before ${subjectText(front)}; unsaid, nothing is refused.`;
  return {
    key: `order ${behind}`,
    mark: 'found',
    name: 'order',
    group: 'order',
    text,
    end: 'as it came off',
    more,
    picks: { front, behind },
  };
}

/** Each once, as the services still ordered say them; of several places it is that of the area in use. */
function cautionsOf({ ledger, facing: { area } }: Desk): { words: string; at?: Subject }[] {
  const said = [...every(ledger, 'service')].filter((s) => s.state === 'ordered').flatMap((s) => s.cautions ?? []);
  const here = said.filter(({ at }) => at === `area:${area}`);
  return [...new Map([...said, ...here].map((one) => [one.words, one])).values()];
}
