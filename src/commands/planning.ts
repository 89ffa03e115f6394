// plans: what plans there are, whether a plan file is sound, what must come off for services, a job saved as a plan, and
// the schema for editors.

import { perhaps } from '../trade/perhaps.ts';
import { type Command, exits, type Out, type Parsed } from './answer.ts';
import { checkPlans } from './plans-check.ts';
import { listPlans } from './plans-list.ts';
import { needForServices } from './plans-need.ts';
import { saveAsPlan } from './plans-save.ts';
import { schemaOfPlans } from './plans-schema.ts';
import { tooMany } from './slips.ts';

export type Branch = {
  usage: string;
  options: readonly string[];
  /** How many names it takes. */
  names: readonly [least: number, most: number];
  run(names: readonly string[], args: Parsed, out: Out, packageRoot: URL): Promise<number>;
};

const list: Branch = {
  usage: 'plans',
  options: [],
  names: [0, 0],
  run: (_names, _args, out, packageRoot) => listPlans(out, packageRoot),
};
const branches: Readonly<Record<string, Branch>> = {
  check: { usage: 'plans check FILE…', options: [], names: [1, Number.POSITIVE_INFINITY], run: checkPlans },
  need: {
    usage: 'plans need SERVICE… [--off AREA]… [--plan FILE]… [--json]',
    options: ['off', 'plan', 'json'],
    names: [1, 40],
    run: needForServices,
  },
  save: {
    usage: 'plans save JOB -o FILE [--name NAME] [--force], or plans save JOB --into FILE [--take all|1,2…]',
    options: ['o', 'name', 'force', 'into', 'take'],
    names: [1, 1],
    run: saveAsPlan,
  },
  schema: { usage: 'plans schema', options: [], names: [0, 0], run: schemaOfPlans },
};

export const plans: Command = {
  name: 'plans',
  usage:
    'plans [check FILE… | need SERVICE… [--off AREA]… [--plan FILE]… [--json] | save JOB -o FILE [--name NAME] [--force] | save JOB --into FILE [--take all|1,2…] | schema]',
  help: 'lists the plans at hand; checks plan files (exit 0 sound, 1 not); says what must come off for services; saves a job as a plan, or shows what it says otherwise than one and takes what is chosen into it; prints the JSON Schema of a plan',
  branches: Object.keys(branches),
  options: {
    off: 'values',
    plan: 'values',
    json: 'flag',
    o: 'value',
    name: 'value',
    force: 'flag',
    into: 'value',
    take: 'value',
  },
  async run(args, out, packageRoot) {
    const [word, ...names] = args.names;
    const branch = word === undefined ? list : Object.hasOwn(branches, word) ? branches[word] : undefined;
    if (!branch) {
      out.complain(
        `countback: plans does not know ${JSON.stringify(word)}${perhaps(word ?? '', Object.keys(branches))}; ${plans.usage}`,
      );
      return exits.usage;
    }
    const given = [...args.flags, ...args.values.keys(), ...args.lists.keys()];
    const odd = given.find((option) => !branch.options.includes(option));
    const [least, most] = branch.names;
    if (odd !== undefined || names.length < least || names.length > most) {
      const count = names.length < least ? 'something is missing; ' : `${tooMany(names.slice(most))}; `;
      const what = odd === undefined ? count : `${odd.length === 1 ? '-' : '--'}${odd} is no option of it; `;
      out.complain(`countback: ${what}${branch.usage}`);
      return exits.usage;
    }
    return branch.run(names, args, out, packageRoot);
  },
};
