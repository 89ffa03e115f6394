// plans save: a job as the plan of the next such vehicle, in a file that is not there yet; or what it says otherwise than
// a plan there is, and that plan with the differences that are taken.
import { readLog } from '../job/log.ts';
import { type Change, changesOf, improved } from '../plan/improve.ts';
import type { Plan } from '../plan/plan.ts';
import { readPlan } from '../plan/read-plan.ts';
import { knownNames } from '../plan/same-place.ts';
import { planFromJob } from '../plan/save.ts';
import { fault } from '../store/fault.ts';
import { plainText } from '../trade/plain-text.ts';
import { exits, type Out, type Parsed } from './answer.ts';
import { openToLook, orFault } from './opening.ts';
import { readPlanFile } from './plan-file.ts';
import { write } from './sheet.ts';

export const saveAsPlan = (names: readonly string[], args: Parsed, out: Out): Promise<number> =>
  orFault(out, async () => {
    const file = args.values.get('o');
    const into = args.values.get('into');
    if ((file === undefined) === (into === undefined) || (args.values.has('take') && into === undefined)) {
      out.complain('countback: plans save JOB -o FILE, or plans save JOB --into FILE [--take all|1,2…]');
      return exits.usage;
    }
    const job = await openToLook(names[0] as string, out);
    try {
      const ledger = readLog(job.lines());
      if (into !== undefined) {
        const changes = (plan: Plan) => changesOf(plan, planFromJob(ledger), knownNames(ledger));
        return await improve(into, changes, args.values.get('take'), out);
      }
      const plan = planFromJob(ledger, args.values.get('name'));
      await keep(plan, file as string, args.flags.has('force'));
      out.write(`${file}: ${plan.name}, services ${plan.services.length}, areas ${plan.areas.length}\n`);
      return exits.fine;
    } finally {
      await job.close();
    }
  });

/** It is read back as any other before it is kept: what can't be opened is no plan. */
async function keep(plan: Plan, file: string, force: boolean): Promise<void> {
  const text = `${JSON.stringify(plan, null, 2)}\n`;
  const read = readPlan(text, file);
  if (!read.ok)
    throw fault('bad-plan', `no plan can be made of it: ${read.fault.what}`, read.fault.where, read.fault.next);
  await write(file, text, force);
}

async function improve(
  file: string,
  changesIn: (plan: Plan) => Change[],
  take: string | undefined,
  out: Out,
): Promise<number> {
  const read = readPlanFile(file);
  if (!read.ok) throw fault('bad-plan', read.fault.what, read.fault.where, read.fault.next);
  const changes = changesIn(read.plan);
  const taken = chosen(changes, take ?? '');
  if (taken === undefined) {
    const there =
      changes.length === 0
        ? 'the job says nothing more than the plan, so there is nothing to take'
        : `there are the numbers 1 to ${changes.length}, or "all"`;
    out.complain(`countback: --take ${JSON.stringify(take)}: ${there}`);
    return exits.usage;
  }
  const isTaken = new Set(taken);
  for (const [i, change] of changes.entries()) {
    const mark = isTaken.has(change) ? ' taken' : '';
    out.write(`${String(i + 1).padStart(3)}  ${plainText(change.words)}${mark}\n`);
  }
  if (changes.length === 0) {
    out.write(`${file}: the job says nothing more and nothing otherwise\n`);
    return exits.fine;
  }
  if (taken.length === 0) {
    out.write(`${file}: nothing is written; take some with --take 1,2 or --take all\n`);
    return exits.open;
  }
  await keep(improved(read.plan, taken), file, true);
  out.write(`${file}: ${taken.length} of ${changes.length} taken\n`);
  return exits.fine;
}

/** "all", or numbers of the list parted by commas; undefined where one is none. */
function chosen(changes: readonly Change[], take: string): readonly Change[] | undefined {
  if (take === 'all') return changes;
  const numbers = take.split(/[\s,]+/).filter(Boolean);
  const found = numbers.map((one) => (/^\d+$/.test(one) ? changes[Number(one) - 1] : undefined));
  return found.every((one) => one !== undefined) ? found : undefined;
}
