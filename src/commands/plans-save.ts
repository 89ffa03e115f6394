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

const textOf = (plan: Plan): string => `${JSON.stringify(plan, null, 2)}\n`;
/** It is read back as any other before it is kept: what can't be opened is no plan. */
async function keep(plan: Plan, file: string, force: boolean): Promise<void> {
  const text = textOf(plan);
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
  const lacking = taken.length === 0 ? [] : wantedBeside(read.plan, changes, isTaken);
  if (lacking.length > 0) {
    const all = changes.flatMap((one, i) => (isTaken.has(one) || lacking.includes(one) ? [i + 1] : []));
    throw fault(
      'bad-plan',
      `nothing was taken: what was chosen leans on ${someOf(lacking)}`,
      file,
      `--take ${all.join(',')}, or --take all`,
    );
  }
  // Kept before it is told: what can't be is listed as taken nowhere.
  if (taken.length > 0) await keep(improved(read.plan, taken), file, true);
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
  out.write(`${file}: ${taken.length} of ${changes.length} taken\n`);
  return exits.fine;
}

const mostNamed = 3;
const someOf = (changes: readonly Change[]): string => {
  const named = changes.slice(0, mostNamed).map((one) => plainText(one.words));
  const more = changes.length - named.length;
  return `${named.join('; ')}${more > 0 ? `, and ${more} more` : ''}`;
};
/** The fewest of the others without which the chosen ones make no plan that can be opened; none where it is one, or all make none. */
function wantedBeside(plan: Plan, changes: readonly Change[], chosen: ReadonlySet<Change>): readonly Change[] {
  const isSound = (some: readonly Change[]) => readPlan(textOf(improved(plan, some)), '').ok;
  const only = changes.filter((one) => chosen.has(one));
  if (isSound(only) || !isSound(changes)) return [];
  let wanted = [...changes];
  for (const one of changes) {
    const fewer = wanted.filter((other) => other !== one);
    if (!chosen.has(one) && isSound(fewer)) wanted = fewer;
  }
  return wanted.filter((one) => !chosen.has(one));
}

/** "all", or numbers of the list parted by commas; undefined where one is none. */
function chosen(changes: readonly Change[], take: string): readonly Change[] | undefined {
  if (take === 'all') return changes;
  const numbers = take.split(/[\s,]+/).filter(Boolean);
  const found = numbers.map((one) => (/^\d+$/.test(one) ? changes[Number(one) - 1] : undefined));
  return found.every((one) => one !== undefined) ? found : undefined;
}
