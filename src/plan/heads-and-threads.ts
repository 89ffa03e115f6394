// Whether the heads and threads of a plan are any, read by what reads them on the bench. What no standard knows but a
// maker could have is only minded.
import type { Spec } from '../job/spec.ts';
import { isRefused } from '../trade/answer.ts';
import { shapesWithoutTable } from '../trade/head-tables.ts';
import { isJudgedByHead, readHead, threadsForHead } from '../trade/heads.ts';
import { threadNamed } from '../trade/threads.ts';
import type { Path } from './place.ts';
import type { Plan } from './plan.ts';
import type { Unsound } from './sound.ts';

function specsOf(plan: Plan): [Path, Spec][] {
  const ofHoles = plan.areas.flatMap(({ holes }, a) =>
    holes.flatMap(({ wants }, g): [Path, Spec][] => (wants ? [[['areas', a, 'holes', g, 'wants'], wants]] : [])),
  );
  const bought = (plan.newParts ?? []).flatMap(({ spec }, i): [Path, Spec][] =>
    spec ? [[['newParts', i, 'spec'], spec]] : [],
  );
  return [...ofHoles, ...bought];
}

const next = 'correct it, or leave it out';

/** Words that are no head, and such as are no thread of any sort: without a figure. */
export function* noHeadOrThread(plan: Plan): Generator<Unsound> {
  for (const [path, { head, thread }] of specsOf(plan)) {
    const read = head === undefined ? undefined : readHead(head);
    if (isRefused(read)) yield { path: [...path, 'head'], what: read.refused, next };
    if (thread !== undefined && !/\d/.test(thread))
      yield { path: [...path, 'thread'], what: `"${thread}" is no thread: write M8, M10x1.25 or 5/16-18`, next };
  }
}

/** Heads and threads in no standard known. */
export function* inNoStandard(plan: Plan): Generator<Unsound> {
  for (const [path, { kind, head, thread }] of specsOf(plan)) {
    const read = head === undefined ? undefined : readHead(head);
    const isJudged = read && !isRefused(read) && isJudgedByHead(kind) && !shapesWithoutTable.includes(read.shape);
    if (isJudged && threadsForHead(read).length === 0)
      yield {
        path: [...path, 'head'],
        what: `no standard known puts ${head} on any thread`,
        next: 'see that it is meant',
      };
    const named = thread === undefined ? undefined : threadNamed(thread);
    if (isRefused(named)) yield { path: [...path, 'thread'], what: named.refused, next: 'see that it is meant' };
  }
}
