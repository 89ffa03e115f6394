// demo: the main job on demo data, on a scratch copy that it names.
import { cp, mkdir, mkdtemp, readdir } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Command, exits } from './answer.ts';
import { noScreen, runBench, type ShowAtHand } from './bench.ts';
import { tooMany } from './slips.ts';

export const demoOf = (show: ShowAtHand): Command => {
  const demo: Command = {
    name: 'demo',
    usage: 'demo',
    help: 'opens the demo job on a scratch copy, and says where that is',
    options: {},
    async run(args, out, packageRoot) {
      if (args.names.length > 0) {
        out.complain(`countback: ${tooMany(args.names)}; ${demo.usage}`);
        return exits.usage;
      }
      const why = noScreen();
      if (why !== undefined) {
        out.complain(`countback: ${why}`);
        return exits.usage;
      }
      const folder = await scratchCopy(packageRoot);
      process.env.COUNTBACK_DATA = folder;
      out.complain(`countback: the demo works on a scratch copy in ${folder}`);
      const exit = await runBench('hatchback day two', packageRoot, show, out);
      out.complain(`countback: the scratch copy stays in ${folder} (COUNTBACK_DATA=${folder} opens it again)`);
      return exit;
    },
  };
  return demo;
};

async function scratchCopy(packageRoot: URL): Promise<string> {
  const from = fileURLToPath(new URL('demo-data/', packageRoot));
  const folder = await mkdtemp(path.join(tmpdir(), 'countback-demo-'));
  const jobs = path.join(folder, 'jobs');
  await mkdir(jobs);
  for (const name of await readdir(from)) {
    if (name.endsWith('.jsonl')) await cp(path.join(from, name), path.join(jobs, name));
  }
  return folder;
}
