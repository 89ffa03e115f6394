// What might be called towards closing a hole: what is in it off or tight, something into it, its finding settled, its
// thread mended.
import { holeNumbers, partsOffHeldBy } from './closed.ts';
import { mayNotServe, unfit, wantsIn } from './guards.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { nutOverStud, studOutUnder } from './levels.ts';
import type { Stamp } from './line.ts';
import { stepLacking, threadToMend } from './repair.ts';
import type { Said } from './said.ts';
import type { Spec } from './spec.ts';
import { areaOf, type Hole, named, subjectText } from './subjects.ts';
import { beadBefore } from './towards-bead.ts';
import { towardsLost } from './towards-lost.ts';

export function towardsHole(ledger: Ledger, hole: string, now: Stamp): Said[] {
  const c = stateOf(ledger, 'hole', hole)?.called;
  const finding = c?.findings[0];
  const o = c?.occupant;
  if (c?.pieces[0]) return [{ verb: 'move-piece', piece: c.pieces[0], to: 'scrap' }];
  if (c?.temporaries[0]) return [{ verb: 'take-out', temporary: c.temporaries[0] }];
  const off: Said = { verb: 'remove', hole, to: 'scrap' };
  if (o?.working) return [off];
  const nut = o ? undefined : nutOverStud(ledger, hole);
  if (nut) return [{ verb: 'remove', hole: nut, to: 'tray:1' }];
  if (!o)
    return [
      ...intoEmpty(ledger, studOutUnder(ledger, hole as Hole) ?? hole, now),
      ...(finding ? towardsFinding(ledger, finding) : []),
    ];
  const f = stateOf(ledger, 'fastener', o.fastener);
  if (f && mayNotServe(f, false)) return [off];
  if (o.level !== 'tight') return [...beadBefore(ledger, hole, now), { verb: 'tighten', hole }];
  if (o.forNow) return [{ verb: 'make-final', hole }];
  // Never to come off, it is what the hole wants, or somebody says why not.
  return finding
    ? towardsFinding(ledger, finding)
    : [off, { verb: 'state-wants', hole, spec: o.spec, because: 'to be said' }];
}

function intoEmpty(ledger: Ledger, hole: string, now: Stamp): Said[] {
  const area = areaOf(hole);
  const wants = wantsIn(ledger, hole) ?? asTheOthers(ledger, area);
  const { counted, declared } = stateOf(ledger, 'area', area) ?? {};
  const own = stateOf(ledger, 'fastener', stateOf(ledger, 'hole', hole)?.called.own ?? '');
  const box = [...every(ledger, 'box')]
    .filter((b) => b.sort === 'fastener' && b.left > 0 && unfit(wants, b.spec ?? {}, true).length === 0)
    .map((b): Said => ({ verb: 'fit', hole, box: b.name }));
  const count: Said = { verb: 'count-holes', area, count: holesKnown(ledger, area) };
  return [
    ...mend(ledger, hole),
    ...beadBefore(ledger, hole, now),
    // L9: no equal of it is proposed while its own lies nobody knows where.
    ...(own?.loss && !own.loss.ruledOut ? [...box, ...towardsLost(ledger, `fastener:${own.id}`)] : []),
    { verb: 'fit', hole },
    ...box,
    ...(counted || declared?.planned ? [] : [count]),
    {
      verb: 'fill-box',
      name: `new for ${subjectText(`hole:${hole}`)}`.slice(0, 60),
      spec: wants,
    },
    { verb: 'leave-empty', hole, who: 'workshop', because: 'to be said' },
  ];
}
/** What a hole wants of which nobody knows it: what its neighbours want, as far as that is known. */
export function asTheOthers(ledger: Ledger, area: string): Spec {
  const known = (stateOf(ledger, 'area', area)?.holes ?? []).map((one) => wantsIn(ledger, one));
  return known.find((spec) => spec?.kind !== undefined) ?? { kind: 'bolt' };
}
export function holesKnown(ledger: Ledger, area: string): number {
  const a = stateOf(ledger, 'area', area);
  return a ? holeNumbers(ledger, a).size : 0;
}

/** Planned and never called: where what it holds is off it came off as well, and lies where the others of that area do. */
export function towardsUncalled(ledger: Ledger, hole: Hole): Said[] {
  const find: Said = { verb: 'find-fastener', hole };
  if (partsOffHeldBy(ledger, hole).length === 0) return [find];
  const a = stateOf(ledger, 'area', areaOf(hole));
  const tray = a?.holes
    .map((other) => stateOf(ledger, 'fastener', stateOf(ledger, 'hole', other)?.called.own ?? '')?.place)
    .find((place) => place !== undefined && named('tray', place) !== undefined);
  return [{ verb: 'remove', hole, to: tray ?? 'tray:1' }, find];
}

export function towardsFinding(ledger: Ledger, finding: string): Said[] {
  const f = stateOf(ledger, 'finding', finding);
  const hole = named('hole', f?.at ?? '');
  const repair = hole ? mend(ledger, hole) : [];
  const isStillIn = hole && f?.fastener && stateOf(ledger, 'hole', hole)?.called.occupant?.fastener === f.fastener;
  const off: Said[] = isStillIn ? [{ verb: 'remove', hole, to: 'scrap' }] : [];
  const close: Said = { verb: 'close-finding', finding, how: 'put right' };
  const first = f && threadToMend(ledger, f) !== undefined ? repair : [];
  return [...first, close, ...off, ...repair, { verb: 'tell-owner', finding }];
}
/** F5: the next step of a repair that was begun, or the first of one that a thread wants; how deep it is, is to be said. */
function mend(ledger: Ledger, hole: string): Said[] {
  const findings = stateOf(ledger, 'hole', hole)?.called.findings ?? [];
  const wanted = findings.some((id) => {
    const f = stateOf(ledger, 'finding', id);
    return f !== undefined && threadToMend(ledger, f) === hole;
  });
  if (wanted) return [{ verb: 'repair-thread', hole, step: 'depth', millimetres: 1 }];
  const step = stepLacking(ledger, hole);
  return step ? [{ verb: 'repair-thread', hole, step }, { verb: 'mask-all' }] : [];
}
