// What might be called towards closing an open point, in order of sense. Whether any of it is refused is not asked here.
import { beadsOn, everyBead } from './beads.ts';
import { conditionsAt } from './clock.ts';
import { holeNumbers } from './closed.ts';
import { lyingOnPile } from './counts.ts';
import { everyKey } from './drawers.ts';
import { mayNotServe, unfit, wantsIn } from './guards.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import type { OpenPoint } from './open-point.ts';
import { stepLacking } from './repair.ts';
import { runningTry, tensionerNotLive, wantedOfTry } from './rotation.ts';
import type { Said } from './said.ts';
import type { Spec } from './spec.ts';
import { snugOrBetter } from './states.ts';
import { leaningOn } from './striking.ts';
import { areaOf, named, nameOf, subjectText } from './subjects.ts';

export function candidates(ledger: Ledger, point: OpenPoint, now: Stamp): Said[] {
  const name = nameOf(point.at);
  switch (point.code) {
    case 'hole-open':
      return towardsHole(ledger, name);
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
      return [{ verb: 'scrap-stray', stray: name }];
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
        ? [{ verb: 'find-fastener', hole: name }]
        : [{ verb: 'count-holes', area: name, count: holesKnown(ledger, name) }];
    case 'bead-missing':
      return towardsBead(ledger, name);
    case 'bead-curing':
      return towardsCure(ledger, name, now);
    case 'rotation-needed':
      return towardsRotation(ledger, name);
    case 'circuit-empty':
      return [{ verb: 'fill-fluid', circuit: name }];
    case 'circuit-unchecked':
      return [
        { verb: 'check-leaks', circuit: name },
        { verb: 'start-engine' },
        { verb: 'check-leaks', circuit: name, how: 'under pressure' },
      ];
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

/** Alone, or with what leans on it. */
function striking(ledger: Ledger, n: number): Said[] {
  const alone: Said = { verb: 'strike', lines: [n] };
  return [alone, { verb: 'strike', lines: [n, ...leaningOn(ledger, [n], 'calls-struck')] }];
}

function towardsHole(ledger: Ledger, hole: string): Said[] {
  const c = stateOf(ledger, 'hole', hole)?.called;
  const finding = c?.findings[0];
  const o = c?.occupant;
  if (c?.pieces[0]) return [{ verb: 'move-piece', piece: c.pieces[0], to: 'scrap' }];
  if (c?.temporaries[0]) return [{ verb: 'take-out', temporary: c.temporaries[0] }];
  const off: Said = { verb: 'remove', hole, to: 'scrap' };
  if (o?.working) return [off];
  if (!o) return [...intoEmpty(ledger, hole), ...(finding ? towardsFinding(ledger, finding) : [])];
  const f = stateOf(ledger, 'fastener', o.fastener);
  if (f && mayNotServe(f, false)) return [off];
  if (o.level !== 'tight') return [{ verb: 'tighten', hole }];
  if (o.forNow) return [{ verb: 'make-final', hole }];
  // Never to come off, it is what the hole wants, or somebody says why not.
  return finding
    ? towardsFinding(ledger, finding)
    : [off, { verb: 'state-wants', hole, spec: o.spec, because: 'to be said' }];
}

function intoEmpty(ledger: Ledger, hole: string): Said[] {
  const area = areaOf(hole);
  const wants = wantsIn(ledger, hole) ?? asTheOthers(ledger, area);
  const counted = stateOf(ledger, 'area', area)?.counted;
  const box = [...every(ledger, 'box')]
    .filter((b) => b.sort === 'fastener' && b.left > 0 && unfit(wants, b.spec ?? {}, true).length === 0)
    .map((b): Said => ({ verb: 'fit', hole, box: b.name }));
  const count: Said = { verb: 'count-holes', area, count: holesKnown(ledger, area) };
  return [
    ...mend(ledger, hole),
    { verb: 'fit', hole },
    ...box,
    ...(counted ? [] : [count]),
    {
      verb: 'fill-box',
      name: `new for ${subjectText(`hole:${hole}`)}`.slice(0, 60),
      spec: wants,
    },
    { verb: 'leave-empty', hole, who: 'workshop', because: 'to be said' },
  ];
}
/** What a hole wants of which nobody knows it: what its neighbours want, as far as that is known. */
function asTheOthers(ledger: Ledger, area: string): Spec {
  const known = (stateOf(ledger, 'area', area)?.holes ?? []).map((one) => wantsIn(ledger, one));
  return known.find((spec) => spec?.kind !== undefined) ?? { kind: 'bolt' };
}
function holesKnown(ledger: Ledger, area: string): number {
  const a = stateOf(ledger, 'area', area);
  return a ? holeNumbers(ledger, a).size : 0;
}

function forNow(at: string): Said[] {
  const hole = named('hole', at);
  const part = named('part', at);
  if (hole) return [{ verb: 'make-final', hole }];
  return part ? [{ verb: 'make-part-final', part }] : [{ verb: 'make-connection', connection: nameOf(at) }];
}

function towardsFinding(ledger: Ledger, finding: string): Said[] {
  const f = stateOf(ledger, 'finding', finding);
  const hole = named('hole', f?.at ?? '');
  const repair = hole ? mend(ledger, hole) : [];
  const isStillIn = hole && f?.fastener && stateOf(ledger, 'hole', hole)?.called.occupant?.fastener === f.fastener;
  const off: Said[] = isStillIn ? [{ verb: 'remove', hole, to: 'scrap' }] : [];
  return [{ verb: 'close-finding', finding, how: 'put right' }, ...off, ...repair, { verb: 'tell-owner', finding }];
}
/** F5: the next step of a repair that was begun. */
function mend(ledger: Ledger, hole: string): Said[] {
  const step = stepLacking(ledger, hole);
  return step ? [{ verb: 'repair-thread', hole, step }, { verb: 'mask-all' }] : [];
}

function towardsLost(ledger: Ledger, at: string): Said[] {
  const id = nameOf(at);
  const piece = at.startsWith('piece:');
  const loss = stateOf(ledger, piece ? 'piece' : 'fastener', id)?.loss;
  const found: Said = piece
    ? { verb: 'move-piece', piece: id, to: 'scrap' }
    : { verb: 'move-fastener', fastener: id, to: 'tray:1' };
  return loss?.reaches && loss.searched.length === 0 ? [{ verb: 'search', lost: id, how: 'magnet' }, found] : [found];
}

function towardsBead(ledger: Ledger, face: string): Said[] {
  const product = [...every(ledger, 'product')].at(-1)?.label.product;
  return product
    ? [
        { verb: 'lay-bead', face, product },
        { verb: 'clean-face', face },
      ]
    : [{ verb: 'clean-face', face }];
}

/** Less than a minute away changes no cure. */
const worthAsking = 1 / 60;
/** A face wants to be together, the bench to be told, time away to be called right; the rest is waiting, and no call. */
function towardsCure(ledger: Ledger, face: string, now: Stamp): Said[] {
  const f = stateOf(ledger, 'face', face);
  const loose = f?.declared?.pressedBy.find((hole) => {
    const c = stateOf(ledger, 'hole', hole)?.called;
    return c && c.touchedAt > 0 && !c.leftEmpty && !(c.occupant && snugOrBetter(c.occupant.level));
  });
  if (loose) return towardsHole(ledger, loose);
  const told = conditionsAt(ledger, ledger.lines.length);
  const celsius = f?.beads.at(-1)?.label.labelCelsius ?? 20;
  const away =
    f !== undefined && beadsOn(ledger, f, now).some((b) => !b.void && !b.reached.full && b.awayHours > worthAsking);
  return [...(told ? [] : [{ verb: 'note-conditions', celsius }]), ...(away ? [{ verb: 'confirm-clock' }] : [])];
}

/** A bead that still cures is waited for, not got round. */
function towardsRoad(ledger: Ledger, now: Stamp): Said[] {
  const waits = everyBead(ledger, now).some((b) => !b.void && !b.reached.run);
  const waive: Said = { verb: 'waive-road-test', who: 'workshop', because: 'to be said' };
  return [{ verb: 'road-test' }, ...(waits ? [] : [waive])];
}

function towardsRotation(ledger: Ledger, drive: string): Said[] {
  const d = stateOf(ledger, 'drive', drive);
  const t = d && runningTry(ledger, d);
  const wanted = d && t ? wantedOfTry(d, t) : 'turns';
  const mark = d?.declared?.marks.find((m) => t?.marks[m] === undefined);
  const turn: Said = { verb: 'turn-crank', drive, quarters: 8 - ((t?.quarters ?? 0) % 8) };
  if (wanted === 'tension') return [{ verb: 'read-tension', drive, how: 'pointer', right: true }];
  if (wanted === 'marks')
    return mark ? [{ verb: 'read-mark', drive, mark, teethOff: 0 }] : [{ verb: 'slide-locks', drive }];
  const last = d?.tries.at(-1);
  const bound = last?.failed === 'bind felt' && !last.explained;
  return [
    turn,
    ...(bound ? [{ verb: 'explain-bind', drive, cause: 'to be said' }] : []),
    // Called live once more, it would lead nowhere.
    ...(d && tensionerNotLive(ledger, d) ? [{ verb: 'tensioner-live', drive }] : []),
  ];
}

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
