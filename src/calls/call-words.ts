// What a whole call says, in a few words, put together from what its entries say.
import { companionsSaid } from '../job/area-rest.ts';
import type { Entry } from '../job/entry.ts';
import { type Ledger, lineAt, stateOf } from '../job/ledger.ts';
import { runningTry } from '../job/rotation.ts';
import { holesSaid, named, numberOf, subjectText } from '../job/subjects.ts';
import { metric, type Units } from '../trade/units-shown.ts';
import { fastenerOf } from './desk.ts';
import { entryWords } from './entry-words.ts';
import { specWords } from './spec-words.ts';

const quiet = new Set(['area-declared', 'hole-declared', 'fastener-found', 'part-declared', 'rotation-begun']);
const mostSaid = 3;
/** A whole call in words, what it strikes or restores among them. */
export function lineWords(ledger: Ledger, entries: readonly Entry[], units: Units = metric): string {
  const [first] = entries;
  if (first?.kind !== 'calls-struck' && first?.kind !== 'calls-restored') return callWords(entries, units);
  const lines = first.lines.map((n) => `line ${n} (${callWords(lineAt(ledger, n)?.entries ?? [], units)})`);
  const shown = lines.length > mostSaid ? [...lines.slice(0, mostSaid), `${lines.length - mostSaid} more`] : lines;
  return `${first.kind === 'calls-struck' ? 'struck' : 'restored'}: ${shown.join(', ')}`;
}

/** What was called of both of two exchanged holes goes on with the other: what either has now. */
export function exchangedWords(ledger: Ledger, entries: readonly Entry[]): string[] {
  return entries.flatMap((entry) => {
    if (entry.kind !== 'holes-exchanged') return [];
    const both = [entry.one, entry.other];
    if (both.some((hole) => (stateOf(ledger, 'hole', hole)?.called.levels.length ?? 0) === 0)) return [];
    const has = both.map((hole) => {
      const f = stateOf(ledger, 'fastener', fastenerOf(ledger, hole) ?? '');
      return `${numberOf(hole)} ${f ? specWords(f.spec) : 'none'}`;
    });
    return [`Exchanged: now ${has.join(', ')}`];
  });
}

/** "clip of arch liner 5": what a number of the log stands for. */
export function fastenerWords(ledger: Ledger, id: string): string | undefined {
  const f = stateOf(ledger, 'fastener', id);
  return f && `${specWords(f.spec)} of ${subjectText(f.origin)}`;
}
/** The same behind what names a fastener by its number in the log or not at all. */
export function whichWords(ledger: Ledger, entries: readonly Entry[]): string {
  const spoken = entries.flatMap((e) => {
    const isApart = e.kind === 'fastener-condemned' && named('tray', e.at) !== undefined;
    return isApart || e.kind === 'fastener-moved' || e.kind === 'fastener-lost' ? [e.fastener] : [];
  });
  const specs = new Set(spoken.map((id) => specWords(stateOf(ledger, 'fastener', id)?.spec ?? {})));
  const [spec] = specs.size === 1 ? specs : [];
  const words = spoken.length === 1 ? fastenerWords(ledger, spoken[0] as string) : spec;
  return words === undefined ? '' : ` (${words})`;
}

/** Behind a quarter called: how far the running check has come. Eight alike answers tell nothing apart. */
export function turnedWords(ledger: Ledger, entries: readonly Entry[]): string {
  const turned = entries.find((e) => e.kind === 'crank-turned');
  const d = turned && stateOf(ledger, 'drive', turned.drive);
  const running = d && runningTry(ledger, d);
  return running ? `: ${running.quarters / 4} of ${running.need / 4} turns made` : '';
}

/** Behind companions called seen: which of them were. */
export function companionWords(ledger: Ledger, entries: readonly Entry[]): string {
  const seen = entries.find((e) => e.kind === 'companions-seen');
  const a = seen && stateOf(ledger, 'area', seen.area);
  return a?.declared?.companions?.length ? `: ${companionsSaid(a)}` : '';
}

/** A whole call in words: declarations that only ride along are left out, many entries of a kind are counted. */
export function callWords(entries: readonly Entry[], units: Units = metric): string {
  if (entries[0]?.kind === 'service-ordered') return orderWords(entries);
  const drawn = drawnWords(entries);
  if (drawn !== undefined) return drawn;
  const moved = movedWords(entries);
  if (moved !== undefined) return moved;
  const loud = entries.filter((e) => !quiet.has(e.kind) && !isCondemnedByFinding(e, entries));
  const said = (loud.length > 0 ? loud : entries)
    .map((e) => `${entryWords(e, units)}${entries.some((one) => condemns(one, e)) ? ', condemned' : ''}`)
    .filter(Boolean);
  const more = said.length - mostSaid;
  return more > 0 ? `${said.slice(0, mostSaid).join('; ')}; and ${more} more` : said.join('; ');
}

/** A finding on a fastener condemns it in the same words: they are said once. */
const condemns = (entry: Entry, finding: Entry): boolean =>
  entry.kind === 'fastener-condemned' &&
  finding.kind === 'finding-made' &&
  finding.fastener === entry.fastener &&
  finding.what === entry.because;
const isCondemnedByFinding = (entry: Entry, all: readonly Entry[]): boolean => all.some((one) => condemns(entry, one));

/** "4 to scrap pile": several laid there at once, whichever they are. */
function movedWords(entries: readonly Entry[]): string | undefined {
  const [first] = entries;
  const areMoved = entries.length > 1 && entries.every((e) => e.kind === 'fastener-moved');
  return areMoved && first?.kind === 'fastener-moved' ? `${entries.length} to ${subjectText(first.to)}` : undefined;
}
/** An area and where its holes sit, said at once: "cam cover drawn, 8 holes". */
function drawnWords([first, ...holes]: readonly Entry[]): string | undefined {
  const isDrawn = first?.kind === 'area-declared' && first.outline !== undefined && holes.length > 0;
  const arePlaces = holes.every((e) => e.kind === 'hole-declared' && e.at !== undefined);
  return isDrawn && arePlaces ? `${first.area} drawn, ${holesSaid(holes.length)}` : undefined;
}

/** "timing belt, coolant pump ordered: areas 8, holes 37": what a plan declares rides along, and is only counted. */
function orderWords(entries: readonly Entry[]): string {
  const services = entries.flatMap((e) => (e.kind === 'service-ordered' ? e.service : []));
  const areas = entries.filter((e) => e.kind === 'area-declared').length;
  const holes = entries.filter((e) => e.kind === 'hole-declared').length;
  return `${services.join(', ')} ordered${areas > 0 ? `: areas ${areas}, holes ${holes}` : ''}`;
}
