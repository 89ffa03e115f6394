// Whether a reading is meant that is far from the torque named for its bolt: a slipped figure, or a bolt that is not tight.
// A call is a fact, so nothing is refused for good: it is asked for once more before it is written.
import { decide } from '../job/decide.ts';
import type { Ledger } from '../job/ledger.ts';
import { subjectText } from '../job/subjects.ts';
import { readFarOff } from '../job/tightening.ts';
import { type Desk, nextTight } from './desk.ts';
import type { Args } from './form.ts';
import type { Besides } from './row.ts';

/** What the call would write; where it would be refused, the refusal answers. */
function farOff(ledger: Ledger, say: { verb: string } & Args, desk: Desk): { hole: string; why: string } | undefined {
  const decided = decide(ledger, say, desk.now);
  if ('refused' in decided) return undefined;
  for (const e of decided.entries) {
    if (e.kind !== 'fastener-tightened' || !e.last || e.readNewtonMetres === undefined) continue;
    const why = readFarOff(e.method, e.readNewtonMetres);
    if (why !== undefined) return { hole: e.hole, why };
  }
  return undefined;
}

export function askedOnReading(desk: Desk, args: Args): Besides | undefined {
  const { late, read, hole = nextTight(desk), ...said } = args;
  if (late !== undefined || read === undefined || hole === undefined) return undefined;
  const far = farOff(desk.ledger, { verb: 'tighten', ...said, hole, readNewtonMetres: read }, desk);
  if (!far) return undefined;
  const place = subjectText(`hole:${far.hole}`);
  return {
    key: 'late',
    title: `${place}: ${far.why}; is that what the wrench showed?`,
    choices: [
      { value: 'no', text: 'no: it is tightened to its figure first' },
      { value: 'all the same', text: 'right: it stays so, and the sheet says that it is not the figure' },
    ],
    givesUp: 'no',
    inWords: 'tighten it to its figure and say what is read then; or say it with "all the same" at its end',
  };
}
