// What might be called towards closing an open point, in order of sense: of a hole in towards-hole.ts, of what is lost in
// towards-lost.ts, of start and road in towards-start.ts. Whether any of it is refused is not asked here.
import { lyingOnPile } from './counts.ts';
import { everyKey } from './drawers.ts';
import { mayNotServe } from './guards.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import { isOil } from './not-run.ts';
import { oncePerLedger } from './once-per-ledger.ts';
import type { OpenPoint } from './open-point.ts';
import { isOfBrakes } from './roles.ts';
import type { Said } from './said.ts';
import { leaningOn } from './striking.ts';
import { named, nameOf } from './subjects.ts';
import { towardsBead } from './towards-bead.ts';
import { holesKnown, towardsFinding, towardsHole, towardsUncalled } from './towards-hole.ts';
import { towardsLost } from './towards-lost.ts';
import { towardsCure, towardsRoad, towardsRotation, towardsRunning } from './towards-start.ts';
import { whose } from './whose.ts';
import { settlingCalls } from './whose-calls.ts';

export function candidates(ledger: Ledger, point: OpenPoint, now: Stamp): Said[] {
  const name = nameOf(point.at);
  switch (point.code) {
    case 'hole-open':
      return towardsHole(ledger, name, now);
    case 'working-in':
      return [{ verb: 'remove', hole: name, to: 'scrap' }];
    case 'for-now':
      return forNow(point.at);
    case 'finding-open':
      return towardsFinding(ledger, name);
    case 'suspicion':
      return [
        { verb: 'confirm-suspicion', hole: name },
        { verb: 'dismiss-suspicion', hole: name },
      ];
    case 'lost':
      return towardsLost(ledger, point.at);
    case 'condemned-about':
    case 'broken-about':
      return [{ verb: 'move-fastener', fastener: name, to: 'scrap' }];
    case 'stray':
      return [...likelyHome(ledger, name), { verb: 'scrap-stray', stray: name }];
    case 'part-off':
      return [
        { verb: 'replace-part', part: name },
        { verb: 'fit-part', part: name },
        { verb: 'fill-box', name: `new ${name}`, replaces: name },
      ];
    case 'part-not-judged':
      return [{ verb: 'judge-part', part: name, verdict: 'worn' }];
    case 'companions':
      return [{ verb: 'companions-seen', area: name }];
    case 'blind-holes':
      return [{ verb: 'blind-holes-dry', area: name }];
    case 'direction':
      return [{ verb: 'direction-right', area: name }];
    case 'connection-parted':
      return [{ verb: 'make-connection', connection: name }];
    case 'temporary-in':
      return [{ verb: 'take-out', temporary: name }];
    case 'masked':
      return [{ verb: 'unmask-all' }];
    case 'holes-not-counted':
      return point.at.startsWith('hole:')
        ? towardsUncalled(ledger, name)
        : [{ verb: 'count-holes', area: name, count: holesKnown(ledger, name) }];
    case 'bead-missing':
      return towardsBead(ledger, name, now);
    case 'bead-curing':
      return towardsCure(ledger, name, now);
    case 'rotation-needed':
      return towardsRotation(ledger, name);
    case 'circuit-empty':
      return [{ verb: 'fill-fluid', circuit: name }];
    case 'circuit-unchecked':
      return towardsLeakCheck(ledger, name);
    case 'tray-not-empty':
      return towardsTray(ledger, name);
    case 'tray-uncounted': {
      const count = stateOf(ledger, 'tray', name)?.contents.length ?? 0;
      return [{ verb: 'count-trays', counts: [{ tray: name, count }] }];
    }
    case 'scrap-differs':
      return [{ verb: 'count-scrap', count: lyingOnPile(ledger) }];
    case 'box-differs':
      return [{ verb: 'count-box', name, count: stateOf(ledger, 'box', name)?.left ?? 0 }];
    case 'tools':
      return [{ verb: 'tools-out' }];
    case 'box-left':
      return towardsBox(ledger, name);
    case 'service-open':
      return [{ verb: 'service-done', service: name }];
    case 'second-look':
      return [{ verb: 'look-again', holes: [name] }];
    case 'pedal':
      return [{ verb: 'pedal-firm' }];
    case 'road-test':
      return towardsRoad(ledger, now);
    case 'odometer':
      return [{ verb: 'note-odometer', distance: 0 }];
    case 'waiting':
      return [{ verb: 'resume' }];
    case 'misfit':
      return striking(ledger, Number(name));
    case 'books':
      return [...everyKey(ledger.misfits)].flatMap(([, lines]) => lines).flatMap((n) => striking(ledger, n));
  }
}

function towardsLeakCheck(ledger: Ledger, circuit: string): Said[] {
  const c = stateOf(ledger, 'circuit', circuit) ?? { circuit };
  const underPressure: Said = { verb: 'check-leaks', circuit, how: 'under pressure' };
  const checked: Said = { verb: 'check-leaks', circuit };
  if (isOfBrakes(c)) return [underPressure, checked];
  return [checked, ...towardsRunning(ledger), ...(isOil(c) ? [] : [underPressure])];
}

/** Alone, or with what leans on it. */
function striking(ledger: Ledger, n: number): Said[] {
  const alone: Said = { verb: 'strike', lines: [n] };
  return [alone, { verb: 'strike', lines: [n, ...leaningOn(ledger, [n], 'calls-struck')] }];
}

function forNow(at: string): Said[] {
  const hole = named('hole', at);
  const part = named('part', at);
  if (hole) return [{ verb: 'make-final', hole }];
  return part ? [{ verb: 'make-part-final', part }] : [{ verb: 'make-connection', connection: nameOf(at) }];
}

/** X5: one that likely belongs to a hole that stands open is no scrap. */
const likelyHome = oncePerLedger((ledger, stray): readonly Said[] => {
  const s = stateOf(ledger, 'stray', stray);
  if (!s) return [];
  const hand = { spec: s.spec, tray: nameOf(s.place) };
  const [best] = whose(ledger, [hand])[0] ?? [];
  return best?.as === 'open' && best.verdict === 'likely' ? settlingCalls(ledger, best, hand, stray).slice(0, 1) : [];
});

function towardsTray(ledger: Ledger, tray: string): Said[] {
  const contents = stateOf(ledger, 'tray', tray)?.contents ?? [];
  return contents.slice(0, 20).flatMap((id): Said[] => {
    if (id.startsWith('s')) return [{ verb: 'scrap-stray', stray: id }];
    if (id.startsWith('p')) return [{ verb: 'move-piece', piece: id, to: 'scrap' }];
    const f = stateOf(ledger, 'fastener', id);
    const hole = named('hole', f?.origin ?? '');
    const scrap: Said = { verb: 'move-fastener', fastener: id, to: 'scrap' };
    // A good bolt is never thrown away while the hole it came from is open.
    const wanted = hole !== undefined && stateOf(ledger, 'hole', hole)?.called.occupant === undefined;
    return f && !mayNotServe(f, false) && wanted ? [{ verb: 'fit', hole, fastener: id }] : [scrap];
  });
}

function towardsBox(ledger: Ledger, box: string): Said[] {
  const b = stateOf(ledger, 'box', box);
  if (b?.sort === 'part' && b.replaces) {
    return [
      { verb: 'replace-part', part: b.replaces, from: box },
      { verb: 'move-box', name: box, to: 'supplier' },
    ];
  }
  if (b?.sort === 'supply') return [{ verb: 'use-from-box', name: box }];
  return [{ verb: 'move-box', name: box, to: 'supplier' }];
}
