// What two jobs are compared by: everything that stands at the end, without the names made from line numbers.
import { books } from '../../src/job/books.ts';
import { isClosed } from '../../src/job/closed.ts';
import { every, type Ledger, tallyOf } from '../../src/job/ledger.ts';
import type { Stamp } from '../../src/job/line.ts';
import { openPoints } from '../../src/job/open-points.ts';
import { specText } from '../../src/job/spec.ts';
import { areaOf, nameOf, sortOf } from '../../src/job/subjects.ts';

const sorted = (lines: string[]): string[] => lines.sort();
/** Equal ones trade holes within an area (L6): which of them went back where is nobody's business. */
const whereabouts = (place: string): string => (sortOf(place) === 'hole' ? `area:${areaOf(nameOf(place))}` : place);

export function standingOf(ledger: Ledger, now: Stamp) {
  const { flow, stock, everOff } = books(ledger);
  const holes = [...every(ledger, 'hole')].map((h) => {
    const o = h.called.occupant;
    const passes = h.called.passes
      .map((p) => `${p.pass}${p.last ? '!' : ''} ${p.method?.by ?? 'no method'}`)
      .join(', ');
    return `${h.hole}: ${o ? `${specText(o.spec)} ${o.level}` : 'empty'}, ${isClosed(ledger, h) ? 'closed' : 'open'}, ${passes}`;
  });
  return {
    holes: sorted(holes),
    areas: Object.fromEntries(
      sorted([...every(ledger, 'area')].map((a) => a.area)).map((a) => [a, tallyOf(ledger, a)]),
    ),
    all: ledger.tallies.all,
    books: { flow, stock, everOff },
    fasteners: sorted(
      [...every(ledger, 'fastener')].map(
        (f) => `${specText(f.spec)} of ${whereabouts(f.origin)} in ${whereabouts(f.place)}`,
      ),
    ),
    parts: sorted(
      [...every(ledger, 'part')].map(
        (p) =>
          `${p.part}: ${p.off ? 'off' : 'on'}, ${p.replacedFrom ?? 'its own'}, ${p.judged?.verdict ?? 'no verdict'}`,
      ),
    ),
    connections: sorted(
      [...every(ledger, 'connection')].map((c) => `${c.connection}: ${c.parted ? 'parted' : 'made'}`),
    ),
    temporaries: sorted(
      [...every(ledger, 'temporary')].map(
        (t) => `${t.temporary} (${t.sort} at ${t.at ?? 'no place'}): ${t.in ? 'in' : 'out'}`,
      ),
    ),
    findings: sorted(
      [...every(ledger, 'finding')].map((f) => `${f.at}: ${f.what}, ${f.when}, ${f.closed?.how ?? 'open'}`),
    ),
    beads: sorted([...every(ledger, 'face')].flatMap((f) => f.beads.map((b) => `${f.face}: ${b.label.product}`))),
    drives: [...every(ledger, 'drive')].map(
      (d) => `${d.drive}: ${d.tries.map((t) => (t.passedAt ? 'passed' : 'not passed'))}`,
    ),
    circuits: sorted(
      [...every(ledger, 'circuit')].map((c) => `${c.circuit}: ${c.fluid}, checked ${c.checkedHow ?? 'never'}`),
    ),
    trays: sorted(
      [...every(ledger, 'tray')].map((t) => `${t.tray}: ${t.contents.length}, counted ${t.counted?.count}`),
    ),
    box: sorted(
      [...every(ledger, 'box')].map((b) => `${b.name}: ${b.bought} bought, ${b.left} left, ${JSON.stringify(b.moved)}`),
    ),
    services: sorted([...every(ledger, 'service')].map((s) => `${s.service}: ${s.state}`)),
    openPoints: openPoints(ledger, now),
  };
}
