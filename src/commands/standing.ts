// standing: what still stands between the car and the road.

import type { Desk } from '../calls/desk.ts';
import { dueUnsaid } from '../calls/due-unsaid.ts';
import { nextWords } from '../calls/line-reader.ts';
import { todoRows } from '../calls/lists/todo.ts';
import { stateOf } from '../job/ledger.ts';
import { readLog } from '../job/log.ts';
import { openPointsWithNext } from '../job/next-call.ts';
import { notAsked } from '../job/not-asked.ts';
import { toldOnce } from '../job/told-once.ts';
import { stillToDo } from '../plan/still-to-do.ts';
import { machineClock } from '../session/clock.ts';
import { standingText } from '../sheet/standing-text.ts';
import { plainText } from '../trade/plain-text.ts';
import { firstFacing } from '../view/facing.ts';
import { type Command, exits } from './answer.ts';
import { openToLook, orFault } from './opening.ts';
import { settingsTold } from './settings-told.ts';
import { notOne } from './slips.ts';

export const standing: Command = {
  name: 'standing',
  usage: 'standing JOB [--by-service] [--json]',
  help: 'lists what is open, each with the next call; or by service what is to take off, to judge, to fit, to buy (exit 0 may leave, 1 may not, 2 unreadable)',
  options: { json: 'flag', 'by-service': 'flag' },
  run: (args, out) =>
    orFault(out, async () => {
      const [named] = args.names;
      if (named === undefined || args.names.length > 1) {
        out.complain(`countback: ${notOne(args.names)}; ${standing.usage}`);
        return exits.usage;
      }
      const job = await openToLook(named, out);
      try {
        const lines = job.lines();
        const ledger = readLog(lines);
        const { intervals, units } = await settingsTold(out);
        const now = { ...machineClock()(), run: (lines.at(-1)?.run ?? 0) + 1 };
        const desk: Desk = { ledger, facing: firstFacing, now, plans: () => [], intervals, units };
        const each = openPointsWithNext(ledger, now);
        const told = toldOnce(ledger, each);
        const points = each.map((p) => ({
          code: p.code,
          at: p.at,
          because: plainText(p.because),
          ...(p.next && { next: plainText(nextWords(desk, p.next)) }),
        }));
        // What is gone from the end of the file may be a bolt that came off: no answer that the car may leave.
        const end = job.doubt?.fault ?? job.notices[0];
        if (end && !args.flags.has('json')) out.write(`NOT SURE: ${end.what}\n`);
        const mayLeave = points.length === 0 && !end;
        // X4: on a released job nothing more is said.
        const due = (stateOf(ledger, 'vehicle', 'vehicle')?.releasedAt ?? 0) > 0 ? [] : dueUnsaid(desk);
        if (args.flags.has('by-service')) {
          out.write(args.flags.has('json') ? todoData(desk) : todoText(desk, told.length));
        } else if (args.flags.has('json')) {
          out.write(
            `${JSON.stringify({ job: job.job, mayLeave, ...(end && { fileEnd: end.what }), open: points, notAsked: notAsked(ledger), dueUnsaid: due, totals: ledger.tallies.all }, null, 2)}\n`,
          );
        } else {
          out.write(standingText(ledger, { now, wordsOf: (said) => nextWords(desk, said) }));
          for (const { line } of due) out.write(`next due, not said: ${plainText(line)}\n`);
        }
        return mayLeave ? exits.fine : exits.open;
      } finally {
        await job.close();
      }
    }),
};

/** @param open how many points keep the car from leaving, those of no service among them */
function todoText(desk: Desk, open: number): string {
  const rows = todoRows(desk).map(({ name, text, end }) => `${name.padEnd(12)} ${text}${end ? `   (${end})` : ''}`);
  const none = `nothing is left to do by service${open > 0 ? `; without --by-service: what else is open, ${open}` : ''}`;
  return (rows.length > 0 ? rows : [none]).map((row) => `${plainText(row)}\n`).join('');
}

function todoData({ ledger, now }: Desk): string {
  const { services, newParts, tools } = stillToDo(ledger, now);
  return `${JSON.stringify({ services, newParts, tools }, null, 2)}\n`;
}
