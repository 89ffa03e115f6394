// plans check: whether plan files are sound; all that is wrong in each, with its place in the file.
import { inNoStandard } from '../plan/heads-and-threads.ts';
import { placeText } from '../plan/place.ts';
import { exits, type Out, type Parsed } from './answer.ts';
import { readPlanFile } from './plan-file.ts';

export async function checkPlans(files: readonly string[], _args: Parsed, out: Out): Promise<number> {
  let exit: number = exits.fine;
  for (const file of files) {
    const read = readPlanFile(file);
    if (read.ok) {
      const { name, services, areas } = read.plan;
      out.write(`${file}: sound: ${name}, services ${services.length}, areas ${areas.length}\n`);
      for (const { path, what, next } of inNoStandard(read.plan))
        out.write(`Mind: ${placeText(file, path)}: ${what}; ${next}\n`);
      continue;
    }
    exit = exits.open;
    for (const { where, what, next } of read.faults) out.write(`${where}: ${what}; ${next}\n`);
  }
  return exit;
}
