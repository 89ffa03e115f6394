// What the sheet says of the log itself: order overridden, corrections, releases and reopenings, lines struck.
import { isCritical } from '../job/closed.ts';
import { everyKey } from '../job/drawers.ts';
import type { Entry } from '../job/entry.ts';
import { isStruck, type Ledger, stateOf } from '../job/ledger.ts';
import { specText } from '../job/spec.ts';
import { areaOf, subjectText } from '../job/subjects.ts';
import { asCorrected, type Moment, moment, placeWords, type Reading, standingEntries } from './reading.ts';

/** O5: what was done out of order, and for the workshop why. */
export type OverrideFact = Moment & { rule: string; because: string; places: string[]; critical: boolean };
/** `confirmed`: what was called stands, though it was suspected. */
export type CorrectionFact = Moment & { what: string; because: string; confirmed?: true };
/** X2: `said` is a release that was none. */
export type LeavingFact = Moment & { how: 'released' | 'said' | 'reopened' | 'left'; by: string; because?: string };
export type LogFact = { lines: number; struck: number; misfits: number };

export function overrideFacts(of: Reading): OverrideFact[] {
  const { ledger } = of;
  return ledger.lines.all.slice(0, ledger.lines.length).flatMap((line) => {
    if (!line.overrides || isStruck(ledger, line.n)) return [];
    const places = [...new Set(line.entries.flatMap((entry) => placesOf(ledger, entry, line.n)))];
    const critical = places.some((at) => isCriticalPlace(ledger, at));
    return line.overrides.map(({ rule, because }) => ({
      ...moment(of, line.n),
      rule,
      because,
      places: places.map(placeWords),
      critical,
    }));
  });
}

function placesOf(ledger: Ledger, entry: Entry, n: number): string[] {
  if ('hole' in entry) return [`hole:${asCorrected(ledger, entry.hole, n)}`];
  if (entry.kind.startsWith('part-') && 'part' in entry) return [`part:${entry.part}`];
  return 'connection' in entry && entry.connection ? [`connection:${entry.connection}`] : [];
}

function isCriticalPlace(ledger: Ledger, at: string): boolean {
  const name = at.slice(at.indexOf(':') + 1);
  const holeIs = (hole: string) => {
    const h = stateOf(ledger, 'hole', hole);
    return h ? isCritical(ledger, h, areaOf(hole)) : areaIs(areaOf(hole));
  };
  const areaIs = (area: string | undefined) =>
    area !== undefined && stateOf(ledger, 'area', area)?.declared?.critical === true;
  if (at.startsWith('hole:')) return holeIs(name);
  if (at.startsWith('part:')) return (stateOf(ledger, 'part', name)?.declared?.heldBy ?? []).some(holeIs);
  return areaIs(stateOf(ledger, 'connection', name)?.declared?.area);
}

/** U3, and what a hole was stated to want. */
export function correctionFacts(of: Reading): CorrectionFact[] {
  return [...standingEntries(of.ledger)].flatMap(({ line, entry }) => {
    const said = correction(entry);
    return said ? [{ ...moment(of, line.n), ...said }] : [];
  });
}
function correction(entry: Entry): Pick<CorrectionFact, 'what' | 'because' | 'confirmed'> | undefined {
  switch (entry.kind) {
    case 'holes-exchanged': {
      const [one, other] = [entry.one, entry.other].map((hole) => subjectText(`hole:${hole}`));
      const what = `${one} and ${other} exchanged: what was called of the one was of the other`;
      return { what, because: entry.because };
    }
    case 'spec-corrected':
      return { what: `the fastener in ${subjectText(entry.at)} is ${specText(entry.spec)}`, because: entry.because };
    case 'wants-stated':
      return {
        what: `${subjectText(`hole:${entry.hole}`)} wants ${specText(entry.spec)}`,
        because: entry.because,
      };
    case 'suspicion-dismissed': {
      const what = `${specText(entry.spec)} in ${subjectText(`hole:${entry.hole}`)}`;
      // Without a reason of its own that is all there is to say.
      const words = entry.because === 'meant so' ? what : `${what} is meant so`;
      return { what: words, because: entry.because, confirmed: true };
    }
    default:
      return undefined;
  }
}

export function leavingFacts(of: Reading): LeavingFact[] {
  return [...standingEntries(of.ledger)].flatMap(({ line, entry }): LeavingFact[] => {
    const at = moment(of, line.n);
    if (entry.kind === 'released') {
      return [{ ...at, how: of.ledger.verdicts[line.n] ? 'released' : 'said', by: entry.who }];
    }
    if (entry.kind === 'reopened') return [{ ...at, how: 'reopened', by: entry.who, because: entry.because }];
    return entry.kind === 'left-unreleased' ? [{ ...at, how: 'left', by: entry.who, because: entry.because }] : [];
  });
}

export function logFact({ ledger }: Reading): LogFact {
  let struck = 0;
  for (let n = 1; n <= ledger.lines.length; n++) if (isStruck(ledger, n)) struck++;
  const misfits = new Set([...everyKey(ledger.misfits)].flatMap(([, lines]) => lines));
  return { lines: ledger.lines.length, struck, misfits: misfits.size };
}
