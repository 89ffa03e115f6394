// Verbs that open a job, order services, declare what there is, count by eye, and strike or restore lines.
import * as z from 'zod';
import { cautionSchema, declaredEntries, intervalSchema, newPartSchema } from '../entries/declared.ts';
import type { Entry } from '../entry.ts';
import { no } from '../guards.ts';
import { later } from '../later.ts';
import { stateOf } from '../ledger.ts';
import { edgesOf } from '../order.ts';
import { reasonSchema } from '../reasons.ts';
import type { No } from '../refusal.ts';
import { nameSchema, subjectSchema, subjectText } from '../subjects.ts';
import { unsoundMethod } from '../tightening.ts';
import { type Guard, type Standing, verb } from '../verb.ts';

type Declaration = z.infer<ReturnType<(typeof declaredEntries)[number]['schema']>>;
/** Any of what a plan or a call declares. */
const declaration = later(() => {
  const [first, ...more] = declaredEntries.map((kind) => kind.schema());
  return z.discriminatedUnion('kind', [first as NonNullable<typeof first>, ...more]) as z.ZodType<Declaration>;
});
const notADeclaration = new Set(['job-opened', 'service-ordered', 'service-done', 'service-dropped', 'holes-counted']);

const open = verb(
  'open-job',
  () =>
    z.strictObject({
      label: nameSchema,
      registration: z.string().max(20).optional(),
      notes: z.string().max(400).optional(),
    }),
  [
    {
      code: 'job-is-open',
      rule: 'X3',
      kind: 'footing',
      needs: [],
      check: (s) => (stateOf(s.ledger, 'vehicle', 'vehicle')?.label ? no('the job has been opened', 'go on') : null),
    },
  ],
  (_s, said) => [{ kind: 'job-opened', vehicle: said }],
);

const entryPlace = (one: Declaration): string =>
  one.kind === 'hole-declared' ? subjectText(`hole:${one.hole}`) : one.kind === 'area-declared' ? one.area : one.kind;
/** What is declared, by a plan or on the spot: declarations and nothing else, and no going round. */
const declaresOnly = <S extends object>(declared: (said: S) => readonly Declaration[]): Guard<S>[] => [
  {
    code: 'not-a-declaration',
    rule: 'P1',
    kind: 'rule',
    needs: [],
    check: (_s, said) => {
      const other = declared(said).find((e) => notADeclaration.has(e.kind));
      return other ? no(`${other.kind} declares nothing`, 'use its own call') : null;
    },
  },
  {
    code: 'method-makes-no-sense',
    rule: 'O4',
    kind: 'rule',
    needs: [],
    check(_s, said) {
      for (const one of declared(said)) {
        const method = one.kind === 'area-declared' || one.kind === 'hole-declared' ? one.method : undefined;
        const wrong = method && unsoundMethod(method);
        if (wrong) return no(`${entryPlace(one)}: ${wrong}`, 'look again at the maker\u2019s figures');
      }
      return null;
    },
  },
  {
    code: 'goes-round',
    rule: 'O1',
    kind: 'rule',
    needs: [],
    check(s, said) {
      const more = declared(said).filter((e) => e.kind === 'behind-declared');
      const round = more.length > 0 ? cycleIn([...edgesOf(s.ledger), ...more]) : undefined;
      return round
        ? no(`${round.map(subjectText).join(' behind ')}: that goes round`, 'leave one of them out', round)
        : null;
    },
  },
];

const oneOrder = later(() =>
  z.strictObject({
    service: nameSchema,
    brings: z.array(subjectSchema).max(2000).optional(),
    newParts: z.array(newPartSchema).max(200).optional(),
    cautions: z.array(cautionSchema).max(100).optional(),
    interval: intervalSchema.optional(),
    declares: z.array(declaration()).max(5000).optional(),
  }),
);
type Order = z.infer<ReturnType<typeof oneOrder>>;
const orderedAlready = (s: Standing, service: string) =>
  stateOf(s.ledger, 'service', service)?.state === 'ordered' ? no(`${service} is ordered already`, 'go on') : null;
const writtenOrder = ({ declares, ...ordered }: Order): [Entry, ...Entry[]] => [
  { kind: 'service-ordered', ...ordered },
  ...((declares ?? []) as Entry[]),
];

/** P1: a plan's declarations are written into the job on this line. */
const order = verb(
  'order-service',
  oneOrder,
  [
    {
      code: 'ordered-already',
      rule: 'P1',
      kind: 'footing',
      needs: ['service'],
      check: (s, said) => orderedAlready(s, said.service),
    },
    ...declaresOnly((said: Order) => said.declares ?? []),
  ],
  (_s, said) => writtenOrder(said),
);
/** Several at once, as they are chosen together: one call, and so one line. */
const orderSeveral = verb(
  'order-services',
  () => z.strictObject({ orders: z.tuple([oneOrder()], oneOrder()) }),
  [
    {
      code: 'ordered-already',
      rule: 'P1',
      kind: 'footing',
      needs: ['orders'],
      check: (s, { orders }) =>
        orders.reduce<No | null>((found, one) => found ?? orderedAlready(s, one.service), null) ?? namedTwice(orders),
    },
    ...declaresOnly((said: { orders: Order[] }) => (said.orders ?? []).flatMap((one) => one.declares ?? [])),
  ],
  (_s, { orders: [first, ...more] }) => [...writtenOrder(first), ...more.flatMap(writtenOrder)],
);
const namedTwice = (orders: readonly Order[]) => {
  const twice = orders.find((one, i) => orders.findIndex((other) => other.service === one.service) < i);
  return twice ? no(`${twice.service} is there twice`, 'name it once') : null;
};
const isOrdered: Guard<{ service: string }> = {
  code: 'service-not-open',
  rule: 'X1',
  kind: 'footing',
  needs: ['service'],
  check: (s, said) =>
    stateOf(s.ledger, 'service', said.service)?.state === 'ordered'
      ? null
      : no(`${said.service} is not an open service of this job`, 'name one that is ordered'),
};
const done = verb(
  'service-done',
  () => z.strictObject({ service: nameSchema }),
  [isOrdered],
  (_s, said) => [{ kind: 'service-done', ...said }],
);
const drop = verb(
  'drop-service',
  () => z.strictObject({ service: nameSchema, because: reasonSchema }),
  [isOrdered],
  (_s, said) => [{ kind: 'service-dropped', ...said }],
);

const declare = verb(
  'declare',
  () => z.strictObject({ entries: z.array(declaration()).min(1).max(5000) }),
  declaresOnly((said: { entries?: Declaration[] }) => said.entries ?? []),
  (_s, said) => said.entries as Entry[],
);

/** The subjects of a cycle of "behind", or undefined. */
export function cycleIn(edges: readonly { front: string; behind: string }[]): string[] | undefined {
  const behind = Map.groupBy(edges, (e) => e.front);
  const done = new Set<string>();
  const walk = (at: string, path: string[]): string[] | undefined => {
    if (path.includes(at)) return [...path.slice(path.indexOf(at)), at];
    if (done.has(at)) return undefined;
    for (const edge of behind.get(at) ?? []) {
      const round = walk(edge.behind, [...path, at]);
      if (round) return round;
    }
    done.add(at);
    return undefined;
  };
  for (const front of behind.keys()) {
    const round = walk(front, []);
    if (round) return round;
  }
  return undefined;
}

const countHoles = verb(
  'count-holes',
  () => z.strictObject({ area: nameSchema, count: z.number().int().min(0).max(5000) }),
  [],
  (_s, said) => [{ kind: 'holes-counted', ...said }],
);
const countTrays = verb(
  'count-trays',
  () =>
    z.strictObject({
      counts: z
        .array(z.strictObject({ tray: nameSchema, count: z.number().int().min(0).max(5000) }))
        .min(1)
        .max(500),
    }),
  [],
  (_s, { counts }) => counts.map((one): Entry => ({ kind: 'tray-counted', ...one })),
);
const countScrap = verb(
  'count-scrap',
  () => z.strictObject({ count: z.number().int().min(0).max(5000) }),
  [],
  (_s, said) => [{ kind: 'scrap-counted', ...said }],
);
const areaTakes = later(() => z.strictObject({ area: nameSchema }));
const seen = verb('companions-seen', areaTakes, [], (_s, said) => [{ kind: 'companions-seen', ...said }]);
const dry = verb('blind-holes-dry', areaTakes, [], (_s, said) => [{ kind: 'blind-holes-dry', ...said }]);
const direction = verb('direction-right', areaTakes, [], (_s, said) => [{ kind: 'direction-seen', ...said }]);

export const jobVerbs = [
  open,
  order,
  orderSeveral,
  done,
  drop,
  declare,
  countHoles,
  countTrays,
  countScrap,
  seen,
  dry,
  direction,
];
