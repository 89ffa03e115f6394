// Which subjects an entry speaks of: the keys of the chains it is filed under. The key is "sort:name".
import type { Entry } from './entry.ts';
import { areaOf, sortOf } from './subjects.ts';

const pile = 'pile:';
function lies(place: string | undefined): string[] {
  if (place === 'scrap') return [pile];
  return place && (place.startsWith('hole:') || place.startsWith('tray:')) ? [place] : [];
}
const liesOnce = ({ from, to }: { from: string; to: string }): string[] => [
  ...lies(from),
  ...(to === from ? [] : lies(to)),
];
const ofBox = (place: string): string[] => (sortOf(place) === 'box' ? [place] : []);
const atHoleOnly = (at: string | undefined): string[] => (at?.startsWith('hole:') ? [at] : []);
const holeAndArea = (hole: string): string[] => [`hole:${hole}`, `area:${areaOf(hole)}`];
const fixed = (hole: string, fastener: string): string[] => [`fastener:${fastener}`, ...holeAndArea(hole)];
const lostSort = (id: string): string => (id.startsWith('p') ? `piece:${id}` : `fastener:${id}`);

/** Keys in the order in which they are evolved: what lies somewhere before the place it lies in. */
export function touches(entry: Entry): string[] {
  switch (entry.kind) {
    case 'service-ordered':
    case 'service-done':
    case 'service-dropped':
      return [`service:${entry.service}`];
    case 'area-declared':
    case 'holes-counted':
    case 'companions-seen':
    case 'blind-holes-dry':
    case 'direction-seen':
      return [`area:${entry.area}`];
    case 'hole-declared':
    case 'hole-found-empty':
    case 'hole-left-empty':
    case 'wants-stated':
    case 'suspicion-dismissed':
    case 'looked-again':
    case 'thread-chased':
    case 'repair-step':
      return holeAndArea(entry.hole);
    case 'part-declared':
      return [`part:${entry.part}`, ...new Set(entry.heldBy.map((h) => `area:${areaOf(h)}`))];
    case 'part-removed':
    case 'part-fitted':
    case 'part-made-final':
    case 'part-judged':
      return [`part:${entry.part}`];
    case 'part-replaced':
      return [`part:${entry.part}`, `box:${entry.from}`];
    case 'connection-declared':
      // T5: its circuit is one to be leak-checked, spoken of otherwise or not.
      return [`connection:${entry.connection}`, ...(entry.circuit ? [`circuit:${entry.circuit}`] : [])];
    case 'connection-parted':
    case 'connection-made':
      return [`connection:${entry.connection}`];
    case 'face-declared':
      return [`face:${entry.face}`, ...new Set(entry.keepsIn.map((circuit) => `circuit:${circuit}` as const))];
    case 'face-cleaned':
    case 'bead-laid':
      return [`face:${entry.face}`];
    case 'behind-declared':
      return ['behind:'];
    case 'drive-declared':
    case 'tensioner-live':
    case 'tension-reset':
    case 'rotation-begun':
    case 'crank-turned':
    case 'mark-read':
    case 'locks-slid':
    case 'tension-read':
    case 'bind-felt':
    case 'bind-explained':
      return [`drive:${entry.drive}`];
    case 'circuit-declared':
    case 'fluid-drained':
    case 'fluid-filled':
    case 'leak-checked':
      return [`circuit:${entry.circuit}`];
    case 'temporary-declared':
      return [`temporary:${entry.temporary}`];
    case 'temporary-put-in':
    case 'temporary-taken-out':
      return [`temporary:${entry.temporary}`, ...atHoleOnly(entry.at)];
    case 'product-declared':
      return [`product:${entry.label.product}`];
    case 'fastener-found':
    case 'fastener-slackened':
    case 'fastener-tightened':
    case 'fastener-made-final':
      return fixed(entry.hole, entry.fastener);
    case 'fastener-removed':
      return [...fixed(entry.hole, entry.fastener), ...lies(entry.to)];
    case 'fastener-fitted':
      return [...fixed(entry.hole, entry.fastener), ...lies(entry.from), ...ofBox(entry.from)];
    case 'fastener-moved':
      return [`fastener:${entry.fastener}`, ...liesOnce(entry)];
    case 'fastener-lost':
      return [`fastener:${entry.fastener}`, ...lies(entry.from), ...ofBox(entry.from)];
    case 'piece-lost':
      return [`piece:${entry.piece}`, ...lies(entry.from)];
    case 'search-made':
    case 'loss-ruled-out':
      return [lostSort(entry.lost)];
    case 'spec-corrected': {
      const cameFrom = entry.cameFrom && entry.at !== `hole:${entry.cameFrom}` ? [`hole:${entry.cameFrom}`] : [];
      return [`fastener:${entry.fastener}`, ...atHoleOnly(entry.at), ...cameFrom];
    }
    case 'fastener-condemned':
    case 'fastener-measured':
      return [`fastener:${entry.fastener}`, ...atHoleOnly(entry.at)];
    case 'fastener-broken':
      return [
        `fastener:${entry.fastener}`,
        ...atHoleOnly(entry.at),
        ...entry.pieces.flatMap((p) => [`piece:${p.piece}`, ...lies(p.in)]),
      ].filter((key, i, all) => all.indexOf(key) === i);
    case 'piece-moved':
      return [`piece:${entry.piece}`, ...liesOnce(entry)];
    case 'holes-exchanged':
      return [...holeAndArea(entry.one), ...holeAndArea(entry.other)];
    case 'stray-found':
      return [`stray:${entry.stray}`, ...lies(entry.at)];
    case 'stray-moved':
      return [`stray:${entry.stray}`, ...liesOnce(entry)];
    case 'stray-settled':
      return [
        `stray:${entry.stray}`,
        ...(entry.fastener ? [`fastener:${entry.fastener}`] : []),
        ...liesOnce({ from: entry.at, to: entry.as === 'scrapped' ? 'scrap' : entry.at }),
      ];
    case 'all-masked':
    case 'all-unmasked':
      return entry.areas.map((a) => `area:${a}`);
    case 'box-filled':
    case 'box-used':
    case 'box-counted':
      return [`box:${entry.name}`];
    case 'box-moved':
      return [`box:${entry.name}`, ...lies(entry.to)];
    case 'scrap-counted':
      return [pile];
    case 'finding-made':
    case 'finding-closed':
    case 'owner-told':
      return [`finding:${entry.finding}`, ...atHoleOnly(entry.at)];
    case 'tray-counted':
    case 'tray-declared':
      return [`tray:${entry.tray}`];
    case 'calls-struck':
    case 'calls-restored':
      return [];
    case 'job-opened':
    case 'oil-level-seen':
    case 'conditions-noted':
    case 'clock-confirmed':
    case 'tools-out':
    case 'engine-started':
    case 'pedal-firm':
    case 'car-lowered':
    case 'car-moved':
    case 'road-tested':
    case 'road-test-waived':
    case 'registration-noted':
    case 'odometer-noted':
    case 'due-noted':
    case 'job-waiting':
    case 'job-resumed':
    case 'note-made':
    case 'photo-noted':
    case 'left-unreleased':
    case 'released':
    case 'reopened':
      return ['vehicle'];
  }
}
