// reckon: one computation of the trade, asked by its topic. It reads no job and writes nothing.

import { machineClock } from '../session/clock.ts';
import { isRefused } from '../trade/answer.ts';
import { dateText } from '../trade/civil-time.ts';
import { perhaps } from '../trade/perhaps.ts';
import { type Command, exits, type Out, type Parsed } from './answer.ts';
import { fastenerTopics } from './reckon/fasteners.ts';
import { tighteningTopics } from './reckon/tightening.ts';
import type { Topic, Typed } from './reckon/topic.ts';
import { waitingTopics } from './reckon/waiting.ts';
import { settingsTold } from './settings-told.ts';

export const topics: readonly Topic[] = [...fastenerTopics, ...tighteningTopics, ...waitingTopics];

const pages = (): string => topics.map(({ usage, help }) => `  reckon ${usage}\n      ${help}\n`).join('');

async function typedAs({ asksSettings }: Topic, { names, values }: Parsed, out: Out): Promise<Typed> {
  const { atMs, zoneMin } = machineClock()();
  const { intervals } = asksSettings ? await settingsTold(out) : { intervals: {} };
  return { words: names.slice(1), options: values, today: dateText(atMs, zoneMin), intervals };
}

/** Where only the usage was to be said, it is said once. */
function whyNot(refused: string | undefined, topic: Topic, foreign: string | undefined): string {
  if (refused === undefined) return `--${foreign} says nothing to ${topic.name}; `;
  return refused === `say ${topic.usage}` ? 'say ' : `${refused}; `;
}

export const reckon: Command = {
  name: 'reckon',
  usage: 'reckon TOPIC … [--json]',
  help: `one computation of the trade: ${topics.map(({ name }) => name).join(', ')}; reckon alone lists what each takes`,
  branches: topics.map(({ name }) => name),
  options: {
    json: 'flag',
    ...Object.fromEntries(topics.flatMap(({ options }) => options.map((option) => [option, 'value' as const]))),
  },
  async run(args, out) {
    const [name] = args.names;
    if (name === undefined && args.values.size === 0 && !args.flags.has('json')) {
      out.write(pages());
      return exits.fine;
    }
    const topic = topics.find((one) => one.name === name);
    if (!topic) {
      const what =
        name === undefined
          ? 'no topic'
          : `no topic ${JSON.stringify(name)}${perhaps(
              name,
              topics.map((one) => one.name),
            )}`;
      out.complain(`countback: ${what}; there are ${topics.map((one) => one.name).join(', ')}`);
      return exits.usage;
    }
    const foreign = [...args.values.keys()].find((option) => !topic.options.includes(option));
    const found = foreign === undefined ? topic.reckon(await typedAs(topic, args, out)) : undefined;
    if (found === undefined || isRefused(found)) {
      out.complain(`countback: ${whyNot(found?.refused, topic, foreign)}reckon ${topic.usage}`);
      return exits.usage;
    }
    const text = args.flags.has('json')
      ? JSON.stringify({ topic: topic.name, ...found.data, lines: found.lines }, null, 2)
      : found.lines.join('\n');
    out.write(`${text}\n`);
    return exits.fine;
  },
};
