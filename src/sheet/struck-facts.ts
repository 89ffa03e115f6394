// What was called against the car and struck again: a mark that was off, a bind, a finding, something lost. Struck, it asks
// for nothing; the workshop reads that it was once said.
import type { Entry } from '../job/entry.ts';
import { isStruck, lineAt } from '../job/ledger.ts';
import { subjectText } from '../job/subjects.ts';
import { type Moment, moment, type Reading } from './reading.ts';

export type StruckFact = Moment & { what: string };

export function struckFacts(of: Reading): StruckFact[] {
  const { ledger } = of;
  return Array.from({ length: ledger.lines.length }, (_, i) => i + 1).flatMap((n) =>
    isStruck(ledger, n)
      ? (lineAt(ledger, n)?.entries ?? []).flatMap((entry) => {
          const what = against(entry);
          return what === undefined ? [] : [{ ...moment(of, n), what }];
        })
      : [],
  );
}

function against(entry: Entry): string | undefined {
  switch (entry.kind) {
    case 'mark-read':
      return entry.teethOff === 0 ? undefined : `${entry.mark} off by ${entry.teethOff}`;
    case 'tension-read':
      return entry.right ? undefined : `tension of ${entry.drive} not right by ${entry.how}`;
    case 'bind-felt':
      return `${entry.drive} binds`;
    case 'finding-made':
      return `${subjectText(entry.at)}: ${entry.what}`;
    case 'fastener-lost':
    case 'piece-lost':
      return `lost from ${subjectText(entry.from)}${entry.where === '' ? '' : `, ${entry.where}`}`;
    default:
      return undefined;
  }
}
