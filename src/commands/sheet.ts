// sheet: the job sheet as text, as a page or as a table, on standard output or into a file that is not there yet.
import { realpath, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { readLog } from '../job/log.ts';
import { machineClock } from '../session/clock.ts';
import { sheetCsv } from '../sheet/csv.ts';
import { sheetPage } from '../sheet/page/page.ts';
import { sheetText } from '../sheet/text.ts';
import { realDisk } from '../store/disk.ts';
import { fault, faultFrom } from '../store/fault.ts';
import { writeWhole } from '../store/whole-file.ts';
import { plainText } from '../trade/plain-text.ts';
import { type Command, exits } from './answer.ts';
import { openToLook, orFault } from './opening.ts';
import { photosNow } from './photos-now.ts';
import { settingsTold } from './settings-told.ts';
import { withItsDigest } from './sheet-words.ts';
import { notOne } from './slips.ts';

export const sheet: Command = {
  name: 'sheet',
  usage: 'sheet JOB [--text | --html | --csv] [--workshop [--bench-time]] [-o FILE] [--force]',
  help: "prints the job sheet as text, as one page for paper and screen, or as a table; --workshop adds what is not the owner's business, --bench-time the time at the bench by day; -o writes a file, over an old one only with --force",
  options: {
    text: 'flag',
    html: 'flag',
    csv: 'flag',
    workshop: 'flag',
    'bench-time': 'flag',
    o: 'value',
    force: 'flag',
  },
  run: (args, out) =>
    orFault(out, async () => {
      const [named] = args.names;
      const forms = (['text', 'html', 'csv'] as const).filter((form) => args.flags.has(form));
      if (named === undefined || args.names.length > 1 || forms.length > 1) {
        const why = forms.length > 1 ? `one of --${forms.join(', --')}` : notOne(args.names);
        out.complain(`countback: ${why}; ${sheet.usage}`);
        return exits.usage;
      }
      const job = await openToLook(named, out);
      try {
        const lines = job.lines();
        const now = { ...machineClock()(), run: (lines.at(-1)?.run ?? 0) + 1 };
        const copy = args.flags.has('workshop') ? 'workshop' : 'owner';
        const { intervals, units } = await settingsTold(out);
        const ledger = readLog(lines);
        const photos = await photosNow(ledger, forms[0] === 'html');
        const end = job.doubt?.fault ?? job.notices[0];
        const options = {
          ...(end && { fileEnd: end.what }),
          now,
          photos,
          intervals,
          units,
          digest: job.digest(),
          copy,
          benchTime: args.flags.has('bench-time'),
        } as const;
        const text = withItsDigest(inForm[forms[0] ?? 'text'](ledger, options));
        for (const [n, one] of photos)
          if (one.state !== 'as noted') out.complain(`countback: the photograph of line ${n} is ${one.state}`);
        const file = args.values.get('o');
        if (file === undefined) out.write(text.endsWith('\n') ? text : `${text}\n`);
        else {
          const isFile = await write(file, text, args.flags.has('force'));
          const whose = copy === 'owner' ? "the owner's copy" : "the workshop's copy";
          if (isFile)
            out.write(`${plainText(file)}: ${whose}, ${formNames[forms[0] ?? 'text']}, after call ${lines.length}\n`);
        }
        return exits.fine;
      } finally {
        await job.close();
      }
    }),
};

const formNames = { text: 'as text', html: 'one page', csv: 'a table' } as const;
const inForm = { text: sheetText, html: sheetPage, csv: sheetCsv } as const;

/** Whole or not at all, where it is a file, which is answered; a device is simply written to. */
export async function write(file: string, text: string, force: boolean): Promise<boolean> {
  try {
    const there = await realDisk.stat(file).catch(() => undefined);
    if (there?.kind === 'folder') throw fault('exists', 'this is a folder', file, 'name a file in it');
    if (there && !force) throw fault('exists', 'this is there already', file, 'choose another name, or add --force');
    if (there && there.kind !== 'file') {
      await writeFile(file, text);
      return false;
    }
    // The folder is never made: a slip in its name would hide the sheet.
    await realDisk.stat(dirname(file));
    const path = there ? await realpath(file) : file;
    await writeWhole(realDisk, path, Buffer.from(text), there ? 'replace' : 'fresh');
    return true;
  } catch (thrown) {
    throw faultFrom(thrown, file);
  }
}
