// The drive towards release: takes an open point and calls what a mechanic would to close it. It knows what is usual,
// not what is allowed; what is refused is asked of the program's own next calls, or left for another point.
import { every, type Ledger, stateOf } from '../../src/job/ledger.ts';
import { openPointsWithNext } from '../../src/job/next-call.ts';
import type { OpenPoint } from '../../src/job/open-point.ts';
import { openPoints } from '../../src/job/open-points.ts';
import type { Said } from '../../src/job/said.ts';
import { areaOf, nameOf, numberOf } from '../../src/job/subjects.ts';
import type { Bench } from './bench.ts';
import { newFor } from './build.ts';
import { boxCount, scrapCount, trayCounts } from './proofs.ts';

function towardsHole(b: Bench, ledger: Ledger, hole: string): Said[] {
  const h = stateOf(ledger, 'hole', hole);
  const c = h?.called;
  const piece = c?.pieces[0];
  if (piece) return [{ verb: 'move-piece', piece, to: 'scrap' }];
  if (c?.temporaries[0]) return [{ verb: 'take-out', temporary: c.temporaries[0] }];
  const o = c?.occupant;
  const because = { who: 'Ada', because: 'not needed' };
  if (!o) {
    const own = `new for ${hole.replace('/', ' ')}`;
    return [
      { verb: 'fit', hole },
      { verb: 'fit', hole, box: own },
      ...(stateOf(ledger, 'area', areaOf(hole))?.counted ? [] : [countOf(ledger, areaOf(hole))]),
      ...(b.chance.maybe(0.8) ? [newFor(b, hole)] : []),
      { verb: 'leave-empty', hole, ...because },
    ];
  }
  const f = stateOf(ledger, 'fastener', o.fastener);
  const spent = f?.spec.oneUse && f.loosened;
  if (o.working || f?.condemned || f?.broken || spent) {
    const good = { verb: 'measure-fastener', fastener: o.fastener, what: 'length', measuredMm: 60, limitMm: 61 };
    return [...(spent && b.chance.maybe(0.1) ? [good] : []), { verb: 'remove', hole, to: 'scrap' }];
  }
  if (o.level !== 'tight')
    return [
      { verb: 'tighten', hole, last: b.chance.maybe(0.5) },
      { verb: 'tighten', hole },
    ];
  if (o.forNow) return [{ verb: 'make-final', hole }];
  const finding = c?.findings[0];
  return finding ? towardsFinding(b, finding) : [{ verb: 'state-wants', hole, spec: o.spec, because: 'it is right' }];
}

/** As many as the ledger knows: whoever counts sees them all. */
function countOf(ledger: Ledger, area: string): Said {
  const numbers = new Set((stateOf(ledger, 'area', area)?.holes ?? []).map(numberOf));
  return { verb: 'count-holes', area, count: numbers.size };
}

function towardsFinding(b: Bench, finding: string): Said[] {
  const how = b.chance.of(['put right', 'put right', 'accepted', 'declined']);
  return [
    { verb: 'close-finding', finding, how, ...(how !== 'put right' && { who: 'Ada', because: 'good enough' }) },
    { verb: 'tell-owner', finding },
  ];
}

function towardsTray(b: Bench, ledger: Ledger, tray: string): Said[] {
  const [id] = b.chance.shuffled(stateOf(ledger, 'tray', tray)?.contents ?? []);
  if (!id) return [];
  if (id.startsWith('s')) return [{ verb: 'scrap-stray', stray: id }];
  if (id.startsWith('p')) return [{ verb: 'move-piece', piece: id, to: 'scrap' }];
  return [{ verb: 'move-fastener', fastener: id, to: b.chance.of(['scrap', 'scrap', 'owner']) }];
}

function towardsBead(b: Bench, ledger: Ledger, face: string): Said[] {
  const label = b.chance.of(b.car.products);
  const lay: Said = { verb: 'lay-bead', face, label };
  const clean: Said = { verb: 'clean-face', face };
  const laid = (stateOf(ledger, 'face', face)?.beads.length ?? 0) > 0;
  return laid && b.chance.maybe(0.5) ? [clean, lay] : [lay, clean];
}

function usual(b: Bench, ledger: Ledger, { code, at }: OpenPoint): Said[] {
  const name = nameOf(at);
  switch (code) {
    case 'hole-open':
      return towardsHole(b, ledger, name);
    case 'suspicion':
      return [{ verb: b.chance.maybe(0.7) ? 'dismiss-suspicion' : 'confirm-suspicion', hole: name }];
    case 'finding-open':
      return towardsFinding(b, name);
    case 'tray-not-empty':
      return towardsTray(b, ledger, name);
    case 'tray-uncounted':
      return [trayCounts(b)].filter((said) => said !== undefined);
    case 'box-differs':
      return [boxCount(b, name)].filter((said) => said !== undefined);
    case 'scrap-differs':
      return [scrapCount(b)];
    case 'bead-missing':
      return towardsBead(b, ledger, name);
    case 'second-look':
      return [{ verb: 'look-again', holes: [...every(ledger, 'hole')].map((h) => h.hole) }];
    case 'stray':
      return [{ verb: 'disown-stray', stray: name, who: 'Ada', because: 'from another car' }];
    case 'lost': {
      const because = { who: 'Ada', because: 'seen on the floor' };
      return [
        { verb: 'rule-out-loss', lost: name, ...because },
        { verb: 'search', lost: name, how: 'magnet' },
      ];
    }
    case 'road-test':
      return [{ verb: 'road-test' }, { verb: 'waive-road-test', who: 'Ada', because: 'snow' }];
    case 'misfit':
      return [{ verb: 'strike', lines: [Number(name)] }];
    default:
      return [];
  }
}

/** A bead cures while the program runs, or while it is closed and the clock is called right on return. */
function letItCure(b: Bench): void {
  const noted = b.lines().some((line) => line.entries.some((entry) => entry.kind === 'conditions-noted'));
  if (!noted || b.chance.maybe(0.1))
    b.call({ verb: 'note-conditions', celsius: b.chance.whole(8, 26), humidityPct: 45 });
  if (b.chance.maybe(0.5)) b.wait(b.chance.whole(60, 1500));
  else b.away(b.chance.whole(2, 40));
  b.call({ verb: 'confirm-clock' });
}

/** What must close before a bead skins goes first; what is counted, looked at or driven goes last. */
const soon = new Set(['hole-open', 'bead-missing', 'misfit', 'part-off', 'temporary-in']);
const last = new Set([
  'tray-uncounted',
  'scrap-differs',
  'box-differs',
  'tools',
  'second-look',
  'road-test',
  'circuit-unchecked',
  'odometer',
  'bead-curing',
]);

function inTurn(b: Bench, points: readonly OpenPoint[]): OpenPoint[] {
  const shuffled = b.chance.shuffled(points);
  if (b.chance.maybe(0.15)) return shuffled;
  const at = ({ code }: OpenPoint) => (soon.has(code) ? 0 : last.has(code) ? 2 : 1);
  return shuffled.sort((one, other) => at(one) - at(other));
}

/** Calls what is usual for a point. False when nothing of it was taken. */
function taken(b: Bench, point: OpenPoint): boolean {
  for (const said of usual(b, b.ledger(), point)) {
    const refused = b.call(said);
    if (!refused) return true;
    if (refused.code === 'others-lean-on-it') {
      const leaning = refused.places.map((place) => Number(nameOf(place)));
      if (!b.call({ verb: 'strike', lines: [...(said.lines as number[]), ...leaning] })) return true;
    }
    if (refused.kind === 'order' && b.chance.maybe(0.1) && !b.call(said, { because: 'done already' })) return true;
  }
  return false;
}

/** A few steps towards release. False when nothing of what was tried was taken. */
export function leadOn(b: Bench): boolean {
  const points = inTurn(b, openPoints(b.ledger(), b.now()));
  if (points.length === 0) return b.call({ verb: 'release', who: 'Ada' }) === null;
  if (points.every((point) => last.has(point.code)) && points.some((point) => point.code === 'bead-curing')) {
    letItCure(b);
    return true;
  }
  const some = points.slice(0, 4).filter((point) => taken(b, point));
  if (some.length > 1) return true;
  if (points.some((point) => point.code === 'bead-curing') && b.chance.maybe(0.3)) letItCure(b);
  const next = inTurn(b, openPointsWithNext(b.ledger(), b.now())).find((point) => point.next)?.next;
  return (next !== undefined && b.call(next) === null) || some.length > 0;
}
