// What each screen lists, and what choosing a row of it fills in a call: the same rows are painted, moved through and
// picked from.
import { beadMissing, beadsOn, faceOpenedAt } from '../job/beads.ts';
import { isCritical, isOff, isTouched, openBecause, wantsOf } from '../job/closed.ts';
import { every, isStruck, type Ledger, lineAt, stateOf, tallyOf } from '../job/ledger.ts';
import { openPointsWithNext } from '../job/next-call.ts';
import { inOrder } from '../job/passes.ts';
import type { HoleState } from '../job/states.ts';
import { areaOf, inHole, inTray, nameOf, subjectText, withinArea } from '../job/subjects.ts';
import type { ScreenId } from '../view/screens.ts';
import type { Desk } from './desk.ts';
import { callWords } from './entry-words.ts';
import type { Args } from './form.ts';
import { usage, wordsOf } from './line-reader.ts';
import { specWords } from './spec-words.ts';
import { rows } from './table.ts';

/** How a row looks: open wants something, done is closed, struck is struck, plain is neither. */
export type Mark = 'open' | 'half' | 'done' | 'found' | 'struck' | 'plain';
export type Listed = {
  /** Stable while the thing is on the list. */
  key: string;
  mark: Mark;
  /** Left column, then the words, then what is said at the end. */
  name: string;
  text: string;
  end?: string;
  /** Slot type → value that this row fills. */
  picks: Args;
  /** A hole or area this row leads to. */
  leads?: string;
};

/** Every hole of the area in use with its levels, in tightening order. */
export function holesHere(desk: Desk): HoleState[] {
  const { area } = desk.facing;
  const a = area === undefined ? undefined : stateOf(desk.ledger, 'area', area);
  if (!a) return [];
  const numbers = inOrder(desk.ledger, a.area);
  const levels = (number: string) => a.holes.filter((h) => h.startsWith(`${number} `));
  return numbers.flatMap((n) => [n, ...levels(n)]).flatMap((h) => stateOf(desk.ledger, 'hole', h) ?? []);
}

/** State of a hole in one word. */
export function holeWord(ledger: Ledger, h: HoleState): string {
  const o = h.called.occupant;
  if (!isTouched(h)) return 'as found';
  if (o?.working) return 'working';
  if (o?.forNow) return 'for now';
  if (isOff(h)) return h.called.foundEmptyAt && !h.called.own ? 'missing' : 'off';
  if (!o) return 'left empty';
  return o.level === 'tight' && openBecause(ledger, h) ? 'tight, open' : o.level;
}
export function holeMark(ledger: Ledger, h: HoleState): Mark {
  if (!isTouched(h)) return 'found';
  if (!openBecause(ledger, h)) return 'done';
  return isOff(h) ? 'open' : 'half';
}

function holeRow(desk: Desk, h: HoleState): Listed {
  const o = h.called.occupant;
  const own = h.called.own ? stateOf(desk.ledger, 'fastener', h.called.own) : undefined;
  const spec = o?.spec ?? own?.spec ?? wantsOf(h);
  const lies = !o && own ? subjectText(own.place) : undefined;
  const because = openBecause(desk.ledger, h);
  const word = holeWord(desk.ledger, h);
  const more = [
    because && because !== word && because !== o?.level ? because : undefined,
    lies,
    h.declared?.slackOnly ? 'slack only' : undefined,
    h.declared?.later?.replace('-', ' '),
    isCritical(desk.ledger, h, areaOf(h.hole)) && isTouched(h) && h.called.lookedAt <= h.called.changedAt
      ? 'look again'
      : undefined,
  ].filter(Boolean);
  return {
    key: h.hole,
    mark: holeMark(desk.ledger, h),
    name: withinArea(h.hole),
    text: `${word.padEnd(9)} ${spec ? specWords(spec) : ''}`,
    end: more.join(', '),
    picks: { hole: h.hole },
    leads: inHole(h.hole),
  };
}

function findingRows(desk: Desk): Listed[] {
  const all = [...every(desk.ledger, 'finding')];
  return [...all.filter((f) => !f.closed), ...all.filter((f) => f.closed)].map((f) => ({
    key: f.id,
    mark: f.closed ? 'done' : 'open',
    name: f.id,
    text: `${subjectText(f.at)}: ${f.what}`,
    end: f.closed ? f.closed.how : `${f.when}${f.told ? ', owner told' : ''}`,
    picks: { finding: f.id, ...(f.at.startsWith('hole:') ? { hole: nameOf(f.at) } : {}) },
    leads: f.at,
  }));
}

function sealingRows(desk: Desk): Listed[] {
  const faces = [...every(desk.ledger, 'face')].flatMap((face): Listed[] => {
    const picks = { face: face.face };
    const beads = beadsOn(desk.ledger, face, desk.now);
    const missing = beadMissing(desk.ledger, face, desk.now);
    const dirty = face.cleanedAt <= faceOpenedAt(desk.ledger, face) && faceOpenedAt(desk.ledger, face) > 0;
    const state = missing ?? (beads.length > 0 ? 'bead laid' : dirty ? 'opened, not called clean' : 'as found');
    const head: Listed = {
      key: `face ${face.face}`,
      mark: missing ? 'open' : 'plain',
      name: 'face',
      text: face.face,
      end: state,
      picks,
    };
    return [
      head,
      ...beads.map(
        (b): Listed => ({
          key: `bead ${b.n}`,
          mark: b.void ? 'open' : b.reached.full ? 'done' : 'half',
          name: 'bead',
          text: b.label.product,
          end: beadWords(b, desk),
          picks,
        }),
      ),
    ];
  });
  const circuits = [...every(desk.ledger, 'circuit')].map((c): Listed => {
    const open = c.drainedAt > c.filledAt;
    return {
      key: `circuit ${c.circuit}`,
      mark: open ? 'open' : c.drainedAt > c.checkedAt ? 'half' : 'done',
      name: 'fluid',
      text: c.circuit,
      end: open
        ? 'drained'
        : c.drainedAt === 0
          ? 'as found'
          : c.checkedAt > c.filledAt
            ? 'filled, no leak'
            : 'filled, leak check to come',
      picks: { circuit: c.circuit },
    };
  });
  return [...faces, ...circuits];
}
type Bead = ReturnType<typeof beadsOn>[number];
function beadWords(b: Bead, desk: Desk): string {
  if (b.void) return `void: ${b.void}`;
  if (!b.togetherAt)
    return b.skinMinutesLeft === undefined
      ? 'not together yet'
      : `skins in ${Math.max(0, Math.round(b.skinMinutesLeft))} min`;
  if (b.reached.full) return 'fully cured';
  const stage = b.reached.run ? 'full' : b.reached.fill ? 'run' : 'fill';
  const at = b.readyAtMs[stage];
  const when = at === undefined ? 'nothing earned: note the bench conditions' : `ready ${readyWords(at, desk.now)}`;
  const waits = b.awayHours > 0.01 ? '; is the clock right?' : '';
  return `${{ fill: 'to fill', run: 'to run', full: 'to leave' }[stage]}: ${when}${waits}`;
}

const minute = 60_000;
const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
/** "Thursday 14:20, 6 h 10 min left", local to the stamp; 1970-01-01 was a Thursday (ISO 8601 calendar). */
export function readyWords(atMs: number, now: { atMs: number; zoneMin: number }): string {
  const local = Math.ceil((atMs + now.zoneMin * minute) / minute);
  const day = weekdays[(4 + Math.floor(local / 1440)) % 7];
  const clock = `${String(Math.floor((local % 1440) / 60)).padStart(2, '0')}:${String(local % 60).padStart(2, '0')}`;
  const left = Math.max(0, Math.ceil((atMs - now.atMs) / minute));
  return `${day} ${clock}, ${left >= 60 ? `${Math.floor(left / 60)} h ` : ''}${left % 60} min left`;
}

function boxRows(desk: Desk): Listed[] {
  const box = [...every(desk.ledger, 'box')].map(
    (b): Listed => ({
      key: `box ${b.name}`,
      mark: b.left > 0 ? 'open' : 'done',
      name: 'box',
      text: `${b.name}${b.spec ? `  ${specWords(b.spec)}` : ''}${b.replaces ? `  for ${b.replaces}` : ''}`,
      end: `${b.left} of ${b.bought} left`,
      picks: { box: b.name, ...(b.replaces ? { part: b.replaces } : {}) },
    }),
  );
  const trays = [...every(desk.ledger, 'tray')].flatMap((t): Listed[] => [
    {
      key: `tray ${t.tray}`,
      mark: t.contents.length > 0 ? 'half' : 'done',
      name: 'tray',
      text: t.tray,
      // K1: the eye counts first; the ledger's figure shows once a count stands.
      end: t.counted && t.counted.n > t.movedAt ? `counted ${t.counted.count}` : t.everUsed ? 'to be counted' : 'empty',
      picks: { tray: t.tray },
    },
    ...t.contents.flatMap((id) => lyingRow(desk, id)),
  ]);
  const off = [...every(desk.ledger, 'part')].filter((p) => p.off || (p.replacedAt > 0 && !p.judged));
  const parts = off.map(
    (p): Listed => ({
      key: `part ${p.part}`,
      mark: 'open',
      name: 'part',
      text: p.part,
      end: p.off
        ? p.judged
          ? `off, old one ${p.judged.verdict}`
          : p.declared?.renew
            ? 'off, to be renewed'
            : 'off'
        : 'old one to be judged',
      picks: { part: p.part },
    }),
  );
  const scrapped = [...every(desk.ledger, 'fastener')].filter((f) => f.place === 'scrap');
  const pile: Listed[] =
    scrapped.length > 0
      ? [{ key: 'pile', mark: 'plain', name: 'scrap', text: `${scrapped.length} on the scrap pile`, picks: {} }]
      : [];
  return [...box, ...parts, ...trays, ...pile];
}
function lyingRow(desk: Desk, id: string): Listed[] {
  const f = stateOf(desk.ledger, 'fastener', id);
  const s = stateOf(desk.ledger, 'stray', id);
  if (f) {
    return [
      {
        key: id,
        mark: f.condemned ? 'open' : 'plain',
        name: '',
        text: `${specWords(f.spec)}  of ${subjectText(f.origin)}`,
        end: f.condemned ? 'condemned' : '',
        picks: { fastener: id },
      },
    ];
  }
  return s
    ? [{ key: id, mark: 'open', name: '', text: `${specWords(s.spec)}  stray ${id}`, picks: { stray: id } }]
    : [];
}

function rotationRows(desk: Desk): Listed[] {
  return [...every(desk.ledger, 'drive')].flatMap((d) => {
    const last = d.tries.at(-1);
    const marks = (d.declared?.marks ?? []).map((m): Listed => {
      const off = last?.marks[m];
      return {
        key: `mark ${m}`,
        mark: off === undefined ? 'half' : off === 0 ? 'done' : 'open',
        name: 'mark',
        text: m,
        end: off === undefined ? 'not read' : off === 0 ? 'stands' : `off by ${off}`,
        picks: { drive: d.drive, mark: m },
      };
    });
    const tries = d.tries.map(
      (t, i): Listed => ({
        key: `try ${i}`,
        mark: t.passedAt ? 'done' : t.failed ? 'open' : 'half',
        name: `try ${i + 1}`,
        text: `${t.quarters / 4} of ${t.need / 4} turns`,
        end: t.passedAt ? 'passed' : (t.failed ?? 'running'),
        picks: { drive: d.drive },
      }),
    );
    return [
      { key: d.drive, mark: 'plain' as const, name: 'drive', text: d.drive, picks: { drive: d.drive } },
      ...tries,
      ...marks,
    ];
  });
}

function leavingRows(desk: Desk): Listed[] {
  return openPointsWithNext(desk.ledger, desk.now).map(
    (p): Listed => ({
      key: `${p.code} ${p.at}`,
      mark: 'open',
      name: '',
      text: `${subjectText(p.at)}: ${p.because}`,
      end: p.next ? wordsOf(desk, p.next) : '',
      picks: picksOf(p.at),
      leads: p.at,
    }),
  );
}
function picksOf(at: string): Args {
  const [sort] = at.split(':');
  return sort && at !== sort ? { [sort]: nameOf(at) } : {};
}

function logRows(desk: Desk): Listed[] {
  const { ledger } = desk;
  return Array.from({ length: ledger.lines.length }, (_, i) => ledger.lines.length - i).map((n): Listed => {
    const line = lineAt(ledger, n);
    const struck = isStruck(ledger, n);
    return {
      key: String(n),
      mark: struck ? 'struck' : line?.overrides ? 'half' : 'plain',
      name: String(n),
      text: callWords(line?.entries ?? []),
      end: [struck ? 'struck' : '', line?.overrides ? 'done already' : ''].filter(Boolean).join(', '),
      picks: { lines: [n] },
    };
  });
}

function helpRows(before: ScreenId): Listed[] {
  const keysOf = (row: (typeof rows)[number]) =>
    row.keys.filter((k) => k.on === 'any' || k.on === before || (Array.isArray(k.on) && k.on.includes(before)));
  const here = rows.filter((row) => keysOf(row).length > 0);
  const others = rows.filter((row) => keysOf(row).length === 0);
  return [...here, ...others].map((row) => ({
    key: row.id,
    mark: keysOf(row).length > 0 ? ('plain' as const) : ('found' as const),
    name: keysOf(row)
      .map((k) => k.key)
      .slice(0, 3)
      .join(' '),
    text: usage(row),
    end: row.help,
    picks: {},
  }));
}

/** Rows of a screen; the shelf's are the session's, since they are files. */
export function listedOn(screen: ScreenId, before: ScreenId, desk: Desk): Listed[] {
  switch (screen) {
    case 'strip':
    case 'build':
      return holesHere(desk).map((h) => holeRow(desk, h));
    case 'findings':
      return findingRows(desk);
    case 'rotation':
      return rotationRows(desk);
    case 'sealing':
      return sealingRows(desk);
    case 'box':
      return boxRows(desk);
    case 'leaving':
      return leavingRows(desk);
    case 'log':
      return logRows(desk);
    case 'help':
      return helpRows(before);
    case 'shelf':
      return [];
  }
}

/** Areas for the overview beside the holes. */
export const areasListed = (desk: Desk): Listed[] =>
  [...every(desk.ledger, 'area')].map((a) => {
    const t = tallyOf(desk.ledger, a.area);
    const wanted = t.open;
    return {
      key: a.area,
      mark: t.touched === 0 ? 'found' : wanted === 0 ? 'done' : t.off > 0 ? 'open' : 'half',
      name: a.area,
      text:
        t.touched === 0 ? 'as found' : `${t.off > 0 ? `${t.off} off ` : ''}${t.open > 0 ? `${t.open} open` : 'closed'}`,
      picks: { area: a.area },
    };
  });
export const trayPlace = inTray;
