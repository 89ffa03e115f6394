// verify: whether a job file is as it was written, by itself, beside its dated copies, and beside a printed sheet.
import { basename } from 'node:path';
import { callWords } from '../calls/call-words.ts';
import { readLine } from '../job/line.ts';
import { counted } from '../sheet/words.ts';
import { copiesOf, isBeforeCut } from '../store/copies.ts';
import { type Disk, readFile, realDisk } from '../store/disk.ts';
import { fault } from '../store/fault.ts';
import { callsBeforeFault, readJournal } from '../store/journal.ts';
import { type Alteration, mayBeAJob, type Seal, sealOf } from '../store/seal.ts';
import { type Command, exits } from './answer.ts';
import { anotherJob, besideSheet, bytesOf, callsIn, sheetOf } from './beside-sheet.ts';
import { calledInstead, notThere, orFault, placeOf } from './opening.ts';
import { wordsOnSheet } from './sheet-words.ts';
import { notOne } from './slips.ts';

export const verify: Command = {
  name: 'verify',
  usage: 'verify JOB [--sheet FILE] [--calls]',
  help: 'says whether the log is as it was written, and beside a printed sheet whether it is the one on it and whether the sheet reads as it was printed; --calls lists the calls before the first fault (exit 0 unaltered, 1 log or sheet altered, 2 unreadable)',
  options: { sheet: 'value', calls: 'flag' },
  run: (args, out) =>
    orFault(out, async () => {
      const [named] = args.names;
      if (named === undefined || args.names.length > 1) {
        out.complain(`countback: ${notOne(args.names)}; ${verify.usage}`);
        return exits.usage;
      }
      let { path } = placeOf(named);
      const bytes = await bytesOf(realDisk, path).catch(async (thrown: unknown) => {
        const called = await calledInstead(thrown, named, path);
        if (called === undefined) throw await notThere(thrown, named, path, true);
        path = called;
        return bytesOf(realDisk, path);
      });
      // One that holds nothing any more has its copies to tell that it did.
      if (bytes.length > 0 && !mayBeAJob(bytes) && (await copiesOf(realDisk, path).catch(() => [])).length === 0)
        throw fault('foreign', 'this is no job file', path, 'name a job, or the file of one');
      const seal = sealOf(bytes);
      const sheetFile = args.values.get('sheet');
      const sheet = sheetFile === undefined ? undefined : await sheetOf(realDisk, sheetFile);
      const wrong = [
        ...(bytes.length === 0 ? ['the file is empty: the whole log is gone'] : []),
        ...seal.alterations.map((one) => alterationText(one, seal.digests.length > 0)),
        ...(seal.unchecked > 0
          ? [`${counted(seal.unchecked, 'line')} behind that can't be checked: each link rests on the line before it`]
          : []),
        ...(await besideCopies(realDisk, path, seal)),
      ];
      const beside = sheet && besideSheet(seal, sheet);
      const byItself = `By itself this log is unaltered: ${counted(callsIn(seal), 'call')}, ${path}\n`;
      const found = sheet && beside?.agrees === false ? await anotherJob(sheet, seal, bytes, path) : undefined;
      if (found?.goesOn) wrong.push(found.words);
      const another = found && !found.goesOn ? found.words : undefined;
      if (another !== undefined) {
        out.write(`THE SHEET IS OF ANOTHER JOB: ${another}\n`);
        if (wrong.length === 0) out.write(byItself);
      } else if (beside && !beside.agrees && !found) wrong.push(beside.words);
      const words =
        sheet && beside?.agrees
          ? wordsOnSheet(sheet.text, callsBeforeFault(bytes, path, readLine).slice(0, beside.at))
          : undefined;
      if (words?.isChanged) {
        out.write(`THE SHEET WAS CHANGED: ${words.said}\n`);
        if (wrong.length === 0) out.write(`${beside?.words}\n${byItself}`);
      }
      if (wrong.length > 0) {
        out.write(`ALTERED: ${path}\n${wrong.map((one) => `- ${one}\n`).join('')}`);
      }
      if (args.flags.has('calls')) out.write(callsText(bytes, path));
      if (wrong.length > 0 || another !== undefined || words?.isChanged) return exits.open;
      // A chain that holds can still carry what is no call.
      readJournal(bytes, path, readLine);
      const calls = callsIn(seal);
      const lines = [
        `UNALTERED: ${counted(calls, 'call')}, digest ${seal.digests[calls]}`,
        ...(await cutBefore(realDisk, path, seal)),
        beside
          ? beside.words
          : 'A chain computed anew, and calls cut off at the end of a line, show only beside a sheet: --sheet FILE.',
        ...(words ? [words.said] : []),
        'This shows alteration; it is no signature and says nothing of who wrote.',
      ];
      out.write(`${lines.join('\n')}\n`);
      return exits.fine;
    }),
};

/** To look at what a file that cannot be opened still says. */
function callsText(bytes: Buffer, path: string): string {
  const lines = callsBeforeFault(bytes, path, readLine);
  const each = lines.map(({ n, entries }) => `${String(n).padStart(5)}  ${callWords(entries)}\n`).join('');
  return `The calls that hold, ${lines.length}:\n${each}`;
}

/** @param opens whether anything of the file holds, so that it is opened */
function alterationText(one: Alteration, opens: boolean): string {
  const place = `line ${one.line}, byte ${one.byte}`;
  switch (one.kind) {
    case 'changed':
      return one.line === 1
        ? `${place}: the header was changed, or this is no job file`
        : `${place}: this line was changed, or stands in the place of another`;
    case 'taken-out': {
      const calls = one.from === one.to ? `call ${one.from} was` : `calls ${one.from} to ${one.to} were`;
      return one.from === 0 ? `${place}: the header was taken out` : `${place}: ${calls} taken out before it`;
    }
    case 'moved':
      return `${place}: this line was moved here; it belongs at line ${one.belongsAt}`;
    case 'put-in':
      return `${place}: this line was put in, or written twice`;
    case 'cut':
      return `${place}: the end was cut off, or never written: nothing ends these ${counted(one.bytes, 'byte')}${opens ? '; opening the job leaves them out, or asks, and keeps a copy' : ''}`;
  }
}

/** A copy holds what the log was on its day, so the log begins with it. */
async function besideCopies(disk: Disk, path: string, seal: Seal): Promise<string[]> {
  const wrong: string[] = [];
  for (const copy of (await copiesOf(disk, path).catch(() => [])).filter((one) => !isBeforeCut(one))) {
    const bytes = await readFile(disk, copy).catch(() => undefined);
    // What is damaged in a copy says nothing of the log.
    const there = bytes === undefined ? [] : sealOf(bytes).digests;
    const last = Math.min(there.length, seal.digests.length) - 1;
    const name = `copies/${basename(copy)}`;
    const isAlike = last < 0 || there[last] === seal.digests[last];
    if (isAlike && there.length > seal.digests.length && seal.alterations.every(({ kind }) => kind === 'cut'))
      wrong.push(
        `${name} holds ${counted(there.length - 1, 'call')}, the file ${callsIn(seal) || 'none'}: the rest was cut off, or this is an older copy${seal.digests.length > 0 ? '; opening it asks which to go on from' : ''}`,
      );
    else if (!isAlike) wrong.push(`${name} ${otherwise(there, seal.digests)}`);
  }
  return wrong;
}

/** From the first call in which they part: an end that was left out, and what was called since, look so as well. */
function otherwise(copy: readonly string[], log: readonly string[]): string {
  const parts = copy.findIndex((digest, i) => digest !== log[i]);
  const since = parts > 0 ? ` from call ${parts} on` : '';
  return `says otherwise${since}: the log was changed after that copy and its chain computed anew, or its end was cut off and left out, or two programs each went on from one file; opening it asks which to go on from`;
}

/** What was gone on without when the job was opened again leaves no trace in the file: the copies made before tell of it. */
async function cutBefore(disk: Disk, path: string, seal: Seal): Promise<string[]> {
  const copies = (await copiesOf(disk, path).catch(() => [])).filter(isBeforeCut);
  const told = copies.map(async (copy) => {
    const name = `copies/${basename(copy)}`;
    const bytes = await readFile(disk, copy).catch(() => undefined);
    const there = bytes === undefined ? undefined : sealOf(bytes);
    const from = (there?.digests ?? []).findIndex((digest, i) => digest !== seal.digests[i]);
    if (from >= 0) {
      const without = callsFrom(from, (there?.digests.length ?? 0) - 1);
      return `It was gone on without ${without} of another file when it was opened: ${name}`;
    }
    return there?.alterations.length === 0
      ? `It was gone on with from a copy that held more; the file as it was: ${name}`
      : `An end that did not hold was left out once; the file as it was: ${name}`;
  });
  return Promise.all(told);
}
const callsFrom = (from: number, to: number): string => (from === to ? `call ${from}` : `calls ${from} to ${to}`);
