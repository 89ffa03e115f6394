// calls: the table of calls as text or as data.
import { keypadPictures } from '../calls/keypad-picture.ts';
import { usage } from '../calls/line-reader.ts';
import { rows } from '../calls/table.ts';
import { verbs } from '../job/decide.ts';
import { type Command, exits } from './answer.ts';
import { tooMany } from './slips.ts';

/** Of a row: which of its guards may be answered "done already" (O5). */
const guardsOf = (verb: string | undefined) =>
  (verb === undefined ? [] : (verbs.get(verb)?.guards ?? [])).map((g) => ({
    code: g.code,
    rule: g.rule,
    kind: g.kind,
    overridable: g.kind === 'order',
  }));

export const calls: Command = {
  name: 'calls',
  usage: 'calls [--json] [--keypad]',
  help: 'prints the table of calls: words, keys, help, and what may refuse them; --keypad prints the numeric keypad of each screen',
  options: { json: 'flag', keypad: 'flag' },
  async run(args, out) {
    if (args.names.length > 0) {
      out.complain(`countback: ${tooMany(args.names)}; ${calls.usage}`);
      return exits.usage;
    }
    if (args.flags.has('keypad')) {
      out.write(keypadPictures());
      return exits.fine;
    }
    if (args.flags.has('json')) {
      const all = rows.map((row) => ({
        id: row.id,
        words: row.words,
        form: usage(row),
        help: row.help,
        group: row.group,
        keys: row.keys.map((k) => ({ key: k.key, on: k.on, ...(k.args && { args: k.args }) })),
        guards: guardsOf(row.verb),
      }));
      out.write(`${JSON.stringify(all, null, 2)}\n`);
      return exits.fine;
    }
    for (const [group, members] of Map.groupBy(rows, (row) => row.group)) {
      out.write(`${group}\n`);
      for (const row of members) out.write(`  ${usage(row)}\n      ${row.help}\n`);
    }
    return exits.fine;
  },
};
