// plans save: a job as the plan of the next such vehicle, in a file that is not there yet.
import { readLog } from '../job/log.ts';
import { readPlan } from '../plan/read-plan.ts';
import { planFromJob } from '../plan/save.ts';
import { fault } from '../store/fault.ts';
import { exits, type Out, type Parsed } from './answer.ts';
import { openToLook, orFault } from './opening.ts';
import { write } from './sheet.ts';

export const saveAsPlan = (names: readonly string[], args: Parsed, out: Out): Promise<number> =>
  orFault(out, async () => {
    const file = args.values.get('o');
    if (file === undefined) {
      out.complain('countback: plans save JOB -o FILE');
      return exits.usage;
    }
    const job = await openToLook(names[0] as string);
    try {
      const plan = planFromJob(readLog(job.lines()), args.values.get('name'));
      const text = `${JSON.stringify(plan, null, 2)}\n`;
      // It is read back as any other before it is kept: what can't be opened is no plan.
      const read = readPlan(text, file);
      if (!read.ok)
        throw fault('bad-plan', `no plan can be made of it: ${read.fault.what}`, read.fault.where, read.fault.next);
      await write(file, text, args.flags.has('force'));
      out.write(`${file}: ${plan.name}, services ${plan.services.length}, areas ${plan.areas.length}\n`);
      return exits.fine;
    } finally {
      await job.close();
    }
  });
