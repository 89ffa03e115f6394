// X: the car leaves when nothing is open, and not otherwise, whatever is pressed, set or written into the file.
import { describe, expect, it } from 'vitest';
import { decide, verbs } from '../../src/job/decide.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { readLog } from '../../src/job/log.ts';
import { type OpenPoint, type OpenPointCode, openPointCodes } from '../../src/job/open-point.ts';
import { mayLeave, openPoints } from '../../src/job/open-points.ts';
import { sheetText } from '../../src/sheet/text.ts';
import { type Bench, bench, m6, m8 } from './bench.ts';

const vehicle = (on: Bench) => stateOf(on.ledger(), 'vehicle', 'vehicle');
const sheet = (on: Bench, digest?: string): string =>
  sheetText(on.ledger(), { now: on.now(), ...(digest && { digest }) }).replace(/\s+/g, ' ');

/** A small job done and closed: nothing open. */
function finished(): Bench {
  const on = bench();
  on.call('order-service', { service: 'cover reseal' });
  on.off('cover/1', m6);
  on.count('cover', 1);
  on.back('cover/1');
  on.tight('cover/1');
  on.call('service-done', { service: 'cover reseal' });
  on.countTrays();
  on.call('tools-out');
  expect(on.open()).toEqual([]);
  return on;
}

const grey = { product: 'grey', kind: 'moisture', fullHours: 24, labelCelsius: 23, labelHumidityPct: 50 } as const;
/** One way into each open point. */
const hindrances: Record<OpenPointCode, (on: Bench) => unknown> = {
  'hole-open': (on) => on.slack('cover/1'),
  'for-now': (on) => {
    on.off('cover/1');
    on.back('cover/1', { forNow: true });
  },
  'working-in': (on) => {
    on.off('cover/1');
    on.back('cover/1', { working: true });
  },
  'finding-open': (on) => on.call('make-finding', { at: 'area:cover', what: 'oil stain' }),
  suspicion: (on) => on.call('find-fastener', { hole: 'cover/2', spec: { ...m8, head: 'hex 16' } }),
  lost: (on) => {
    on.off('cover/1');
    on.call('lose-fastener', { fastener: on.own('cover/1'), reaches: true, where: 'belt bay' });
  },
  'condemned-about': (on) => on.off('cover/2', m8, { wrong: 'damaged' }),
  'broken-about': (on) => on.call('break', { hole: 'cover/2', headTo: 'tray:1', pieces: ['found'] }),
  stray: (on) => on.call('find-stray', { spec: m8, tray: '1' }),
  'part-off': (on) => on.call('remove-part', { part: 'hose', heldBy: [] }),
  'part-not-judged': (on) => {
    on.call('remove-part', { part: 'hose', heldBy: [] });
    on.call('fill-box', { name: 'new hose', replaces: 'hose' });
    on.forged({ kind: 'part-replaced', part: 'hose', from: 'new hose' });
  },
  companions: (on) => on.declare({ kind: 'area-declared', area: 'cover', companions: ['dowel'] }),
  'blind-holes': (on) => on.declare({ kind: 'area-declared', area: 'cover', blindHoles: true }),
  direction: (on) => on.declare({ kind: 'area-declared', area: 'cover', marked: true }),
  'connection-parted': (on) => on.call('part-connection', { connection: 'plug' }),
  'temporary-in': (on) => on.call('put-in', { temporary: 'rag', sort: 'rag' }),
  masked: (on) => {
    on.off('cover/1');
    on.call('mask-all');
  },
  'holes-not-counted': (on) => on.slack('lid/1', m6),
  'bead-missing': (on) =>
    on.declare(
      { kind: 'face-declared', face: 'lip', area: 'cover', pressedBy: ['cover/1'], keepsIn: [], bead: true },
      { kind: 'product-declared', label: grey },
    ),
  'bead-curing': (on) => {
    on.declare({ kind: 'face-declared', face: 'lip', area: 'cover', pressedBy: ['cover/1'], keepsIn: [] });
    on.call('clean-face', { face: 'lip' });
    on.call('lay-bead', { face: 'lip', label: grey });
  },
  'rotation-needed': (on) =>
    on.declare({
      kind: 'drive-declared',
      drive: 'belt',
      areas: ['cover'],
      parts: [],
      marks: ['cam'],
      turns: 2,
      tensioner: 'none',
      crankKeyed: true,
    }),
  'circuit-empty': (on) => on.call('drain', { circuit: 'cooling' }),
  'circuit-unchecked': (on) => {
    on.call('drain', { circuit: 'cooling' });
    on.call('fill-fluid', { circuit: 'cooling' });
  },
  'tray-not-empty': (on) => on.off('cover/2', m6),
  'tray-uncounted': (on) => on.off('cover/2', m6),
  'box-differs': (on) => {
    on.call('fill-box', { name: 'sealant' });
    on.call('count-box', { name: 'sealant', count: 2 });
  },
  'scrap-differs': (on) => on.call('count-scrap', { count: 1 }),
  tools: (on) => on.call('put-in', { temporary: 'rag', sort: 'rag' }),
  'box-left': (on) => on.call('fill-box', { name: 'sealant' }),
  'service-open': (on) => on.call('order-service', { service: 'wash' }),
  'second-look': (on) => on.declare({ kind: 'hole-declared', hole: 'cover/1', critical: true }),
  pedal: (on) => on.declare({ kind: 'area-declared', area: 'cover', role: 'brake' }),
  'road-test': (on) => on.declare({ kind: 'area-declared', area: 'cover', role: 'engine' }),
  odometer: (on) => on.call('strike', { lines: [2] }),
  waiting: (on) => on.call('wait', { who: 'supplier', because: 'bolt on order' }),
  misfit: (on) => on.forged({ kind: 'connection-made', connection: 'plug' }),
  books: (on) => on.forged({ kind: 'fastener-fitted', hole: 'cover/2', fastener: 'f9.9', from: 'tray:1', spec: m6 }),
};

describe('may the car leave', () => {
  it('[X1] when the list of open points is empty: one function for all who ask', () => {
    const on = finished();
    expect(mayLeave(on.ledger(), on.now())).toBe(true);
    on.call('release', { who: 'Ann' });
    expect(vehicle(on)).toMatchObject({ releasedBy: 'Ann', falseReleases: [] });
  });

  it.each(Object.entries(hindrances))('[X1] not while it has: %s', (code, hinder) => {
    const on = finished();
    hinder(on);
    expect(on.open(code).length).toBeGreaterThan(0);
    expect(mayLeave(on.ledger(), on.now())).toBe(false);
    const no = on.no('release', { who: 'Ann' });
    expect(`${no.rule} ${no.code} ${no.kind}`).toBe('X1 open-points gate');
    expect(no.places).toEqual(openPoints(on.ledger(), on.now()).map((p) => p.at));
  });

  it('[X1] nothing in the vocabulary of open points is without a story above', () => {
    expect(Object.keys(hindrances).sort()).toEqual([...openPointCodes].sort());
  });

  it('[X1] services are done, or dropped with a reason', () => {
    const on = finished();
    for (const service of ['wash', 'pads']) on.call('order-service', { service });
    on.call('service-done', { service: 'wash' });
    expect(on.refused('drop-service', { service: 'pads' })).toBe('L1 badly-said');
    on.call('drop-service', { service: 'pads', because: 'not worn' });
    expect(on.open()).toEqual([]);
    expect(sheet(on)).toContain('pads: dropped: not worn');
  });

  it('[X1] critical fasteners are looked at a second time after their last change', () => {
    const on = finished();
    on.declare({ kind: 'area-declared', area: 'wheel', critical: true, planned: true });
    on.slack('wheel/1', m8);
    on.tight('wheel/1');
    const look = () => on.call('look-again', { holes: ['wheel/1'], who: 'Bo' });
    expect(on.open('second-look')).toHaveLength(1);
    look();
    expect(on.open('second-look')).toEqual([]);
    on.tight('wheel/1');
    expect(on.open('second-look')).toHaveLength(1);
    look();
    on.call('state-wants', { hole: 'wheel/1', spec: m8, because: 'by the book' });
    expect(on.open('second-look')).toHaveLength(1);
  });

  it('[X1 X5] the second look is of what is tight; until then it leads to what makes it so', () => {
    const on = finished();
    on.declare({ kind: 'area-declared', area: 'wheel', critical: true, planned: true });
    on.call('find-fastener', { hole: 'wheel/2', spec: m8 });
    on.slack('wheel/1', m8);
    const look = { holes: ['wheel/2', 'wheel/1'] };
    expect(on.no('look-again', look)).toMatchObject({
      code: 'not-tight-yet',
      places: ['hole:wheel/1'],
      instead: 'tight first',
    });
    on.snug('wheel/1');
    expect(on.refused('look-again', look)).toBe('X1 not-tight-yet');
    expect(on.next('second-look', 'hole:wheel/1')).toEqual({ verb: 'tighten', hole: 'wheel/1' });
    on.tight('wheel/1');
    on.call('look-again', look);
    expect(on.open('second-look')).toEqual([]);
  });
});

describe('no way round it', () => {
  it('[X2] no override releases a job that is not ready', () => {
    for (const [, hinder] of Object.entries(hindrances)) {
      const on = finished();
      hinder(on);
      expect(on.refused('release', { who: 'Ann' }, { because: 'done already' })).toBe('X1 open-points');
    }
  });

  it('[X2] a release written into the file is shown as such and is none', () => {
    const on = finished();
    on.slack('cover/1');
    const n = on.forged({ kind: 'released', who: 'Mallory' });
    const read = readLog(on.lines());
    for (const ledger of [on.ledger(), read]) {
      expect(stateOf(ledger, 'vehicle', 'vehicle')).toMatchObject({ releasedAt: 0, falseReleases: [n] });
      expect(mayLeave(ledger, on.now())).toBe(false);
    }
    expect(sheet(on)).toContain('A RELEASE THAT WAS NONE: said by Mallory');
    on.tight('cover/1');
    on.call('tools-out');
    expect(vehicle(on)?.releasedAt).toBe(0);
    on.call('release', { who: 'Ann' });
    expect(vehicle(on)).toMatchObject({ releasedBy: 'Ann', falseReleases: [n] });
  });

  it('[X2] nor does striking afterwards what stood in its way make it one', () => {
    const on = finished();
    const slack = on.slack('cover/1');
    on.forged({ kind: 'released', who: 'Mallory' });
    on.forged({ kind: 'calls-struck', lines: [slack] });
    expect(on.open()).toEqual([]);
    expect(vehicle(on)?.releasedAt).toBe(0);
    expect(stateOf(readLog(on.lines()), 'vehicle', 'vehicle')?.releasedAt).toBe(0);
  });

  it('[X2] a release in the same line as what closes the last point is judged before the line', () => {
    const on = finished();
    const slack = on.slack('cover/1');
    on.call('tools-out');
    const fastener = on.in('cover/1');
    on.forged(
      { kind: 'fastener-tightened', hole: 'cover/1', fastener, pass: 'final', last: true },
      { kind: 'released', who: 'Mallory' },
    );
    expect(slack).toBeGreaterThan(0);
    expect(vehicle(on)?.releasedAt).toBe(0);
  });

  it('[X2] "leaves unreleased" is a call of its own: it seals nothing and releases nothing', () => {
    const on = finished();
    on.slack('cover/1');
    expect(on.refused('leave-unreleased', { who: 'Ann' })).toBe('L1 badly-said');
    const n = on.call('leave-unreleased', { who: 'Ann', because: 'towed' });
    expect(on.entriesOf(n)).toEqual([{ kind: 'left-unreleased', who: 'Ann', because: 'towed' }]);
    expect(vehicle(on)?.releasedAt).toBe(0);
    expect(mayLeave(on.ledger(), on.now())).toBe(false);
    expect(sheet(on)).toMatch(/LEFT UNRELEASED: NOT FIT TO DRIVE, \d+ open points/);
    on.call('reopen', { who: 'Ann', because: 'came back' });
    on.tight('cover/1');
  });
});

describe('released', () => {
  const released = () => {
    const on = finished();
    const n = on.call('release', { who: 'Ann' });
    return { on, n };
  };

  it('[X3] asks for a name, and seals the log: its digest is on the sheet', () => {
    const on = finished();
    expect(on.refused('release')).toBe('L1 badly-said');
    on.call('release', { who: 'Ann' });
    expect(sheet(on, 'ab'.repeat(32))).toMatch(/Log digest (ab ?){32}.*RELEASED by Ann/);
  });

  it('[X3] makes the job read-only: no call but reopening is taken', () => {
    const { on } = released();
    const badly = new Set<string>();
    for (const id of verbs.keys()) {
      if (id === 'reopen') continue;
      const answer = decide(on.ledger(), { verb: id, ...anything[id] }, on.now(), { because: 'sure' });
      const code = 'refused' in answer ? answer.refused.code : 'taken';
      if (code === 'badly-said') badly.add(id);
      else expect(`${id} ${code}`).toBe(`${id} job-is-released`);
    }
    expect([...badly], 'give each of them what it takes, in `anything` below').toEqual([]);
  });

  it('[X3] reopening is an entry: proofs stand as usual, and release is asked anew', () => {
    const { on } = released();
    expect(on.refused('reopen', { who: 'Ann' })).toBe('L1 badly-said');
    const n = on.call('reopen', { who: 'Ann', because: 'it drips' });
    expect(on.entriesOf(n)).toEqual([{ kind: 'reopened', who: 'Ann', because: 'it drips' }]);
    expect(vehicle(on)?.releasedAt).toBe(0);
    expect(on.open()).toEqual([]);
    expect(on.refused('reopen', { who: 'Ann', because: 'again' })).toBe('X3 not-released');
    on.slack('cover/1');
    expect(on.refused('release', { who: 'Ann' })).toBe('X1 open-points');
    on.tight('cover/1');
    on.call('tools-out');
    on.call('release', { who: 'Bo' });
    expect(vehicle(on)?.releasedBy).toBe('Bo');
  });

  it('[X3] release and reopening cannot be struck, by call or by a forged line', () => {
    const { on, n } = released();
    const again = on.call('reopen', { who: 'Ann', because: 'it drips' });
    for (const line of [n, again]) expect(on.refused('strike', { lines: [line] })).toBe('U1 no-such-line');
    on.call('release', { who: 'Ann' });
    on.forged({ kind: 'calls-struck', lines: [on.lines().length, again, n] });
    expect(vehicle(on)?.releasedAt).toBeGreaterThan(again);
    on.forged({ kind: 'calls-restored', lines: [n] });
    expect(vehicle(on)?.releasedBy).toBe('Ann');
  });
});

/** What each verb takes, so that none is refused for being badly said. */
const reason = { who: 'Ann', because: 'so' };
const one = { hole: 'cover/1' };
const fastener = { fastener: 'f1.1' };
const anything: Record<string, Record<string, unknown>> = {
  'open-job': { label: 'car' },
  'order-service': { service: 'wash' },
  'order-services': { orders: [{ service: 'wash' }] },
  'service-done': { service: 'wash' },
  'drop-service': { service: 'wash', because: 'so' },
  declare: { entries: [{ kind: 'area-declared', area: 'cover' }] },
  'count-holes': { area: 'cover', count: 1 },
  'count-trays': { counts: [{ tray: '1', count: 0 }] },
  'count-scrap': { count: 0 },
  'count-box': { name: 'sealant', count: 0 },
  'companions-seen': { area: 'cover' },
  'blind-holes-dry': { area: 'cover' },
  'direction-right': { area: 'cover' },
  'find-fastener': one,
  'find-empty': one,
  slacken: one,
  remove: { ...one, to: 'tray:1' },
  break: { ...one, headTo: 'scrap', pieces: ['found'] },
  fit: one,
  tighten: one,
  'make-final': one,
  'look-again': { holes: ['cover/1'] },
  'complete-pass': { area: 'cover' },
  'move-fastener': { ...fastener, to: 'scrap' },
  'scrap-together': { fasteners: ['f1.1'] },
  'lose-fastener': { ...fastener, reaches: false, where: '' },
  search: { lost: 'f1.1', how: 'magnet' },
  'rule-out-loss': { lost: 'f1.1', ...reason },
  condemn: { ...fastener, because: 'so' },
  'move-piece': { piece: 'p1.1', to: 'scrap' },
  'lose-piece': { piece: 'p1.1', reaches: false, where: '' },
  'measure-fastener': { ...fastener, what: 'length', measuredMm: 1, limitMm: 2 },
  'scrap-own': one,
  'find-stray': { spec: m6, tray: '1' },
  'move-stray': { stray: 's1.1', to: 'tray:2' },
  'give-stray': { stray: 's1.1', ...one },
  'scrap-stray': { stray: 's1.1' },
  'disown-stray': { stray: 's1.1', ...reason },
  'leave-empty': { ...one, ...reason },
  'state-wants': { ...one, spec: m6, because: 'so' },
  'correct-spec': { ...fastener, spec: m6, because: 'so' },
  'exchange-holes': { one: 'cover/1', other: 'cover/2', because: 'so' },
  'remove-part': { part: 'hose' },
  'fit-part': { part: 'hose' },
  'replace-part': { part: 'hose' },
  'make-part-final': { part: 'hose' },
  'judge-part': { part: 'hose', verdict: 'worn' },
  'part-connection': { connection: 'plug' },
  'make-connection': { connection: 'plug' },
  'put-in': { temporary: 'rag' },
  'take-out': { temporary: 'rag' },
  'fill-box': { name: 'bolt' },
  'fill-box-together': { bought: [{ name: 'bolt' }] },
  'use-from-box': { name: 'bolt' },
  'move-box': { name: 'bolt', to: 'owner' },
  drain: { circuit: 'oil' },
  'fill-fluid': { circuit: 'oil' },
  'check-leaks': { circuit: 'oil' },
  'make-finding': { at: 'vehicle', what: 'rust' },
  'confirm-suspicion': one,
  'dismiss-suspicion': one,
  'tell-owner': { finding: 'd1.1' },
  'close-finding': { finding: 'd1.1', how: 'put right' },
  'chase-thread': one,
  'repair-thread': { ...one, step: 'depth', millimetres: 10 },
  'clean-face': { face: 'lip' },
  'lay-bead': { face: 'lip', product: 'grey' },
  'tensioner-live': { drive: 'belt' },
  'turn-crank': { drive: 'belt', quarters: 1 },
  'read-mark': { drive: 'belt', mark: 'cam', teethOff: 0 },
  'slide-locks': { drive: 'belt' },
  'read-tension': { drive: 'belt', how: 'play', right: true },
  'reset-tension': { drive: 'belt' },
  'feel-bind': { drive: 'belt' },
  'explain-bind': { drive: 'belt', cause: 'so' },
  'turn-to-marks': { drive: 'belt' },
  'note-odometer': { distance: 1 },
  'note-registration': { registration: 'AB 12' },
  'note-due': { what: 'belt' },
  'note-photo': { file: '/photos/7.jpg', sha256: 'a'.repeat(64), bytes: 120_000, at: 'vehicle' },
  note: { words: 'so' },
  wait: reason,
  'waive-road-test': reason,
  'note-conditions': { celsius: 20 },
  release: { who: 'Ann' },
  'leave-unreleased': reason,
  strike: { lines: [3] },
  restore: { lines: [3] },
};

describe('the sheet for the owner', () => {
  it('[X4] lists accepted and declined findings, re-checks due, and the next service by date and distance', () => {
    const on = finished();
    const finding = (what: string) => `d${on.call('make-finding', { at: 'part:hose', what })}.1`;
    on.call('close-finding', { finding: finding('chafed'), how: 'accepted', who: 'Ann', because: 'within wear' });
    on.call('close-finding', { finding: finding('old'), how: 'declined', who: 'owner', because: 'next time' });
    on.call('note-due', { what: 'wheel nuts again', atDistance: 120_100 });
    on.call('note-due', { what: 'next service', on: '2027-03-01', atDistance: 135_000 });
    on.call('note-due', { what: 'brake fluid', on: '2028-03-01' });
    on.call('release', { who: 'Ann' });
    const text = sheet(on);
    expect(text).toMatch(/ACCEPTED AS IT IS.*hose: chafed.*within wear/);
    expect(text).toMatch(/DECLINED BY THE OWNER.*hose: old.*next time/);
    expect(text).toMatch(/wheel nuts again: at 120100 km/);
    expect(text).toMatch(/next service: 2027-03-01 or at 135000 km, whichever first/);
    expect(text).toMatch(/brake fluid: 2028-03-01/);
  });
});

describe('what is missing', () => {
  const nextOf = (on: Bench, code: string, at: string) => on.next(code, at);
  /** A bead that is together, at a bench that is told. */
  const onlyWaits = ({ code, because }: OpenPoint): boolean =>
    code === 'bead-curing' && /ready (\w+day|\d{4})/.test(because);

  it.each(Object.entries(hindrances))(
    '[X5] is a line naming its place and a next call that is not refused: %s',
    (code, hinder) => {
      const on = finished();
      hinder(on);
      for (const point of openPoints(on.ledger(), on.now()).filter((p) => p.code === code)) {
        expect(point.at).toMatch(
          /^(hole|area|part|connection|face|drive|circuit|tray|box|finding|fastener|piece|stray|service|temporary|line):.+|^vehicle$|^scrap$/,
        );
        expect(point.because).toMatch(/\w/);
        const next = nextOf(on, point.code, point.at);
        if (onlyWaits(point)) continue;
        expect(next, `${point.code} ${point.at}`).toBeDefined();
        const { verb, ...said } = next ?? { verb: '' };
        expect('refused' in decide(on.ledger(), { verb, ...said }, on.now())).toBe(false);
      }
    },
  );

  it('[X5] following the next calls alone closes what calls alone can close', () => {
    for (const [code, hinder] of Object.entries(hindrances)) {
      const on = finished();
      hinder(on);
      for (let i = 0; i < 40 && on.open().length > 0; i++) {
        const point = openPoints(on.ledger(), on.now())[0];
        if (point && onlyWaits(point)) on.wait(24 * 60);
        const next = point && nextOf(on, point.code, point.at);
        if (!next) continue;
        const { verb, ...said } = next;
        const answer = decide(on.ledger(), { verb, ...said }, on.now());
        expect('refused' in answer).toBe(false);
        if ('refused' in answer) break;
        on.wait(60);
        on.forged(...answer.entries);
      }
      expect(`${code}: ${on.open().join(', ')}`).toBe(`${code}: `);
    }
  });
});
