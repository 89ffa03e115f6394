// The job sheet as a table for a spreadsheet, one fact a row: RFC 4180, and no cell that a spreadsheet would run.
import type { Ledger } from '../job/ledger.ts';
import { offsetText } from '../trade/civil-time.ts';
import type { Copy } from './area-text.ts';
import { type BenchDay, daysToTell } from './bench-time.ts';
import { findingRows, holeRows, type Row } from './csv-rows.ts';
import { type SheetFacts, type SheetOptions, sheetFacts } from './facts.ts';
import { fastenersPoints, lossText, oldText } from './goods-text.ts';
import { odometerText } from './odometer-facts.ts';
import { photoFile } from './photo-facts.ts';
import { circuitText, cureText, lateText, tryText } from './proof-text.ts';
import { regainedText } from './regained-facts.ts';
import { leftUndone } from './service-facts.ts';
import { standingPoints } from './standing-text.ts';
import { conditionsText, distanceText, minutesText, timeText } from './words.ts';

/** What it is about, the fact, its value, more of it, when and by whom it was called, and its line of the log. */
export const csvHeads = ['section', 'place', 'what', 'value', 'because', 'when', 'who', 'line'] as const;

export const sheetCsv = (ledger: Ledger, options: SheetOptions & { copy?: Copy; benchTime?: boolean }): string =>
  csvOf(sheetFacts(ledger, options), options.copy ?? 'workshop', daysToTell(ledger, options));

function csvOf(facts: SheetFacts, copy: Copy, days: readonly BenchDay[] = []): string {
  // These two first and in this form: a sheet is read back by them.
  const fixed = [
    ...(facts.digest ? [['log', 'digest', facts.digest]] : []),
    ['log', 'lines', String(facts.log.lines)],
  ].map(([section = '', place = '', value = '']) => [section, place, value, '', '', '', '', '']);
  const benchTime: [string, Row[]] = ['bench time', days.map((d) => ({ place: d.day, value: minutesText(d.minutes) }))];
  const rows = [...sections(facts, copy), benchTime].flatMap(([section, all]) =>
    all.map((row) => cellsOf(section, row)),
  );
  return [csvHeads, ...rows, ...fixed].map((cells) => `${cells.map(cell).join(',')}\r\n`).join('');
}

const cellsOf = (section: string, { place = '', what = '', value = '', because = '', at, who }: Row): string[] => [
  section,
  place,
  what,
  String(value),
  because,
  at ? timeText(at) : '',
  who ?? at?.who ?? '',
  at ? String(at.n) : '',
];

/** What spreadsheets take for the start of a formula, full-width forms too. Source: OWASP, CSV injection. */
const runs = /^[\s"']*[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20|%]/u;
/** A number that is only a number runs nothing. */
const isFigure = /^-?\d+(?:\.\d+)?$/;
/** RFC 4180, 2.5 to 2.7; separators of other regions are quoted as well. */
export function cell(text: string): string {
  const harmless = runs.test(text) && !isFigure.test(text) ? `'${text}` : text;
  return /[",;\t\r\n]|^\s|\s$/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

function sections(f: SheetFacts, copy: Copy): [string, Row[]][] {
  const { vehicle: v, printed, car } = f;
  return [
    [
      'vehicle',
      [
        { place: 'label', value: v.label },
        { place: 'registration', value: v.registration ?? '' },
        { place: 'odometer', value: v.odometer ? odometerText(v) : '' },
        { place: 'remarks', value: v.notes ?? '' },
        { place: 'printed', value: `${timeText(printed)} (${offsetText(printed.zoneMin)})` },
      ],
    ],
    ['standing', standingPoints(f).map((value) => ({ value }))],
    ['open', f.open.map((o) => ({ place: o.place, what: o.code, value: o.because }))],
    ['not asked', copy === 'workshop' ? f.notAsked.map(({ what, because }) => ({ value: what, because })) : []],
    [
      'service',
      f.services.map((s) => {
        const because = [...leftUndone(s), ...(s.because ? [s.because] : [])].join('; ');
        return { place: s.service, value: s.state, ...(because && { because }) };
      }),
    ],
    ['finding', f.findings.flatMap(findingRows)],
    ['due', f.forOwner.map((value) => ({ value }))],
    [
      'due',
      f.due.map((d) => ({
        place: d.what,
        what: d.on ?? '',
        value: d.atDistance === undefined ? '' : distanceText(d.atDistance, v.odometer?.unit ?? 'km'),
      })),
    ],
    ['fasteners', fastenersPoints(f).map((value) => ({ value }))],
    ['hole', f.areas.flatMap((a) => a.holes.flatMap((h) => holeRows(`${a.area} ${h.number}`, h, copy)))],
    [
      'sealant',
      f.faces.flatMap(({ beads }) =>
        beads.map((b) => ({
          place: b.face,
          what: b.product,
          value: `${cureText(b)}${lateText(b)}`,
          because: b.conditions.map((one) => conditionsText(one)).join('; '),
          at: b.laid,
        })),
      ),
    ],
    [
      'check rotation',
      f.drives.flatMap(({ drive, tries }) =>
        tries.map((t, i) => ({ place: drive, what: t.result, value: tryText(t, i + 1), at: t.begun })),
      ),
    ],
    ['fluid', f.circuits.map((c) => ({ place: c.circuit, value: circuitText(c) }))],
    [
      'part',
      [
        ...f.parts.renewed.map((p) => ({ place: p.part, what: `new: ${p.from}`, value: oldText(p.old, copy), at: p })),
        ...f.parts.refitted.map((p) => ({ place: p.part, what: 'refitted', at: p })),
        ...f.parts.off.map((p) => ({ place: p.part, what: 'OFF', value: p.old ? oldText(p.old) : '' })),
      ],
    ],
    [
      'parts box',
      [
        ...f.box.used.map((b) => ({ place: b.name, what: 'used up', value: b.quantity })),
        ...f.box.moved.map((b) => ({ place: b.name, what: `to ${b.to}`, value: b.quantity, because: b.because ?? '' })),
      ],
    ],
    ['connection', f.again.connections.map((place) => ({ place, value: 'made again' }))],
    ['temporary', f.again.temporaries.map((place) => ({ place, value: 'in and out again' }))],
    ['lost', f.losses.map((l) => ({ place: l.where, value: lossText(l) }))],
    [
      'found again',
      copy === 'workshop' ? f.regained.map((r) => ({ place: r.where, value: regainedText(r), at: r.found })) : [],
    ],
    ['not of this vehicle', f.strange.map((s) => ({ place: s.what, because: s.because, at: s.at, who: s.who }))],
    [
      'out of order',
      f.overrides
        .filter((o) => copy === 'workshop' || o.critical)
        .map((o) => ({
          place: o.places.join(', '),
          what: o.critical ? 'critical' : '',
          value: copy === 'workshop' ? o.rule : '',
          because: copy === 'workshop' ? o.because : '',
          at: o,
        })),
    ],
    [
      'way out',
      [
        ...(car.tools ? [{ what: 'tools out', at: car.tools }] : []),
        ...(car.started ? [{ what: 'engine started', at: car.started }] : []),
        ...(car.pedal ? [{ what: 'pedal firm', at: car.pedal }] : []),
        ...(car.lowered ? [{ what: 'car down', at: car.lowered }] : []),
        ...(car.moved ? [{ what: 'car moved', at: car.moved }] : []),
        ...(car.road
          ? [
              {
                what: car.road.waived ? 'NO ROAD TEST' : 'road test',
                at: car.road,
                ...(car.road.waived && { because: car.road.waived.because, who: car.road.waived.who }),
              },
            ]
          : []),
        ...(car.waiting
          ? [{ what: 'WAITING', value: car.waiting.on, because: car.waiting.because, at: car.waiting }]
          : []),
      ],
    ],
    ['note', f.notes.map((n) => ({ place: n.place ?? '', value: n.words, at: n }))],
    ['photograph', f.photos.map((p) => ({ place: p.place, what: p.words ?? '', value: photoFile(p, copy), at: p }))],
    ['caution', (copy === 'owner' ? [] : f.cautions).map((c) => ({ place: c.place ?? '', value: c.words }))],
    ['struck', copy === 'workshop' ? f.struck.map((s) => ({ value: s.what, at: s })) : []],
    [
      'correction',
      f.corrections.map((c) => ({ what: c.confirmed ? 'confirmed' : '', value: c.what, because: c.because, at: c })),
    ],
    ['leaving', f.leavings.map((l) => ({ what: l.how, because: l.because ?? '', at: l, who: l.by }))],
  ];
}
