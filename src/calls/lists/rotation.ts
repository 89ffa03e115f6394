// The drives of a job: what each still wants before its check rotation stands, its tries and its marks.
import { isOff } from '../../job/closed.ts';
import { allStops } from '../../job/decide.ts';
import { heldOnceMore, holdsYet } from '../../job/first-in.ts';
import { isRenewed } from '../../job/guards.ts';
import { every, stateOf } from '../../job/ledger.ts';
import type { Refusal } from '../../job/refusal.ts';
import { driveLockedAt, driveOpenedAt, isOffItsMarks, rotationNeeded } from '../../job/rotation.ts';
import type { DriveState, Try } from '../../job/states.ts';
import { areaOf, type Hole, named, nameOf, subjectText } from '../../job/subjects.ts';
import { isWithdrawn } from '../../job/withdrawn.ts';
import { isRefused } from '../../trade/answer.ts';
import { degreesOff, turnsUntilMarksMeet } from '../../trade/belt-drive.ts';
import type { Keymap } from '../bindings.ts';
import type { Desk } from '../desk.ts';
import { waySaid } from '../key-names.ts';
import type { Listed } from '../listed.ts';
import { nextOfKind } from '../next-of-kind.ts';
import { rowById } from '../table.ts';

export function rotationRows(desk: Desk, keymap: Keymap): Listed[] {
  const shown = [...every(desk.ledger, 'drive')].filter((d) => !isWithdrawn(desk.ledger, `drive:${d.drive}`));
  return shown.flatMap((d): Listed[] => {
    const needed = rotationNeeded(desk.ledger, d);
    const stops = needed ? stopsOf(desk, d) : [];
    const picks = { drive: d.drive };
    const passed = d.tries.at(-1)?.passedAt;
    const head: Listed = {
      key: d.drive,
      mark: needed ? 'open' : passed ? 'done' : 'found',
      name: 'drive',
      text: d.drive,
      end: needed ? 'check rotation to come' : passed ? 'check rotation passed' : 'as found',
      picks,
    };
    const before = needed ? beforeTurning(desk, d, keymap, stops) : [];
    const rows = [
      head,
      ...(needed ? [] : toMarks(desk, d, keymap)),
      ...before,
      ...tries(desk, d),
      ...marks(desk, d),
      ...printedMarks(d),
    ];
    // Here the key that takes something out means what keeps the drive from being turned, not what went in last.
    const lock = stops.flatMap(({ code, places: [place] }) =>
      code === 'pin-still-in' && place !== undefined ? (named('temporary', place) ?? []) : [],
    )[0];
    const t = lock === undefined ? undefined : stateOf(desk.ledger, 'temporary', lock);
    return !t || holdsYet(desk.ledger, t)
      ? rows
      : rows.map((row) => ({ ...row, picks: { ...row.picks, temporary: t.temporary } }));
  });
}
const stopsOf = ({ ledger, now }: Desk, { drive }: DriveState): Refusal[] =>
  allStops(ledger, { verb: 'turn-crank', drive, quarters: 1 }, now);

/** The call that does what a refusal of a turn asks for. */
const callFor: Readonly<Record<string, string>> = {
  'bind-not-explained': 'bind-cause',
  'drive-part-off': 'part-back',
  'drive-not-tight': 'tight',
  'pin-still-in': 'taken-out',
  'tensioner-not-live': 'live',
  'trays-not-counted': 'count',
};
const isCount = ({ code }: Refusal): boolean => code === 'trays-not-counted';
/**
 * R2, K1: all that would refuse a turn now, before it is tried. What is done by hand comes first: a fastener taken out of a
 * tray, or put into one, makes its count fall.
 */
function beforeTurning(desk: Desk, d: DriveState, keymap: Keymap, stops: readonly Refusal[]): Listed[] {
  const byHand = [
    ...stops.filter((stop) => !isCount(stop)).map((stop) => stopRow(desk, d, stop, keymap)),
    ...turnedBy(desk, d, keymap),
  ];
  const counts = stops.filter(isCount).map((stop) => stopRow(desk, d, stop, keymap));
  return [...byHand, ...(byHand.length > 0 ? counts.map((row) => ({ ...row, name: 'then' })) : counts)];
}
/** ", wanted again for crank pulley 1": out for the turns only. */
function wantedAgain({ ledger }: Desk, { code, places: [place] }: Refusal): string {
  const t = code === 'pin-still-in' && place ? stateOf(ledger, 'temporary', nameOf(place)) : undefined;
  const bolt = t && heldOnceMore(ledger, t);
  return bolt ? `, wanted again for ${subjectText(`hole:${bolt.hole}`)}` : '';
}
function stopRow(desk: Desk, { drive }: DriveState, stop: Refusal, keymap: Keymap): Listed {
  const [place, ...others] = stop.places;
  // Its own words name all of the trays.
  const more = others.length > 0 && !isCount(stop) ? `; then ${listedShort(others)}` : wantedAgain(desk, stop);
  const calls = [callFor[stop.code] ?? '', ...(isCount(stop) && others.length > 0 ? ['empty'] : [])];
  const part = place === undefined ? undefined : named('part', place);
  const ways =
    part === undefined ? calls.map((call) => waySaid(keymap, 'rotation', call)) : [wayOn(desk, part, keymap)];
  const way = ways.filter(Boolean).join(', all others empty: ');
  const instead = `${stop.instead}${way && `: ${way}`}`;
  return {
    key: `${drive} first ${stop.code}`,
    mark: 'half',
    name: 'first',
    text: `${stop.because}${more}`,
    // Its key leaves what stands in the way its room; the picked row says all.
    end: way || stop.instead,
    brief: { end: ways.filter(Boolean).join(', ') || stop.instead },
    more: `${stop.because}${more}; ${instead}`,
    picks: { drive },
    ...(place !== undefined && { leads: place }),
  };
}
/** Onto the drive by the key of a part, or of a new one; where that would take another part first, it is asked which. */
function wayOn(desk: Desk, part: string, keymap: Keymap): string {
  const state = stateOf(desk.ledger, 'part', part);
  const call = state && isRenewed(desk.ledger, state) ? 'renewed' : 'part-back';
  const row = rowById.get(call);
  if (!row || nextOfKind(row, desk, {}).part === part) return waySaid(keymap, 'rotation', call);
  return [waySaid(keymap, 'rotation', 'to-build'), ...['which', call].map((one) => waySaid(keymap, 'build', one))].join(
    ' ',
  );
}
const mostNamed = 3;
const listedShort = (places: readonly string[]): string => {
  const named = places.slice(0, mostNamed).map(subjectText).join(', ');
  return places.length > mostNamed ? `${named} and ${places.length - mostNamed} more` : named;
};

/** What locks the drive holds it where it stands: it is brought to its marks before one goes in. */
function toMarks({ ledger }: Desk, d: DriveState, keymap: Keymap): Listed[] {
  const locks = [...every(ledger, 'temporary')].filter(
    (t) => t.putInAt === 0 && (t.sort === 'lock' || t.sort === 'pin') && driveLockedAt(ledger, t.at)?.drive === d.drive,
  );
  if (locks.length === 0 || !isOffItsMarks(ledger, d)) return [];
  return [
    {
      key: `${d.drive} to its marks`,
      mark: 'half',
      name: 'first',
      text: `turned to its marks, before ${locks.map((t) => t.temporary).join(', ')}`,
      end: waySaid(keymap, 'rotation', 'to-marks'),
      picks: { drive: d.drive },
    },
  ];
}

/** With its bolt out the crank has nothing a socket holds on: an old one turns it. */
function turnedBy({ ledger, facing }: Desk, { drive, declared }: DriveState, keymap: Keymap): Listed[] {
  const bolt = declared?.crankBolt;
  const h = bolt === undefined ? undefined : stateOf(ledger, 'hole', bolt);
  if (!h || !isOff(h)) return [];
  const text = `nothing is in ${subjectText(`hole:${bolt}`)} to turn it by`;
  const area = areaOf(bolt as Hole);
  const [led, taken, call] = [
    waySaid(keymap, 'rotation', 'to-build'),
    ...['area', 'working'].map((c) => waySaid(keymap, 'build', c)),
  ];
  const way = facing.area === area ? `${led} ${call}` : `${led}, ${taken} ${area}, ${call}`;
  return [
    {
      key: `${drive} turned by`,
      mark: 'half',
      name: 'first',
      text,
      end: `a working bolt: ${way}`,
      brief: { end: `working bolt: ${facing.area === area ? way : [led, taken, call].join(' ')}` },
      picks: { drive },
      leads: `hole:${bolt}`,
    },
  ];
}

/** R8: not asked for after turning; when they would meet again is said, so that nobody waits for it. */
function printedMarks({ drive, declared }: DriveState): Listed[] {
  const { belt, crank } = declared?.teeth ?? {};
  if (belt === undefined || crank === undefined) return [];
  const meet = turnsUntilMarksMeet(crank, belt);
  const end = isRefused(meet) ? meet.refused : `not asked for; meet again after ${meet.crankTurns} turns`;
  return [{ key: `${drive} printed`, mark: 'plain', name: 'belt', text: 'printed marks', end, picks: { drive } }];
}
/** "2 teeth off: 36° at the crank, 18° at the cam" where the teeth are known. */
function offWords(off: number, { declared }: DriveState): string {
  const degrees = declared?.teeth ? degreesOff(off, declared.teeth.crank) : undefined;
  return degrees === undefined || isRefused(degrees) ? `off by ${off}` : degrees.text;
}

const isVoid = ({ ledger }: Desk, d: DriveState, t: Try): boolean => t.begunAt <= driveOpenedAt(ledger, d);
const tries = (desk: Desk, d: DriveState): Listed[] =>
  d.tries.map((t, i) => ({
    key: `${d.drive} try ${i}`,
    mark: isVoid(desk, d, t) ? 'plain' : t.passedAt ? 'done' : t.failed ? 'open' : 'half',
    name: `try ${i + 1}`,
    text: `${t.quarters / 4} of ${t.need / 4} turns`,
    end: t.failed
      ? `failed: ${t.failed}${t.explained ? `, ${t.explained}` : ''}`
      : isVoid(desk, d, t)
        ? `${t.passedAt ? 'passed' : 'not finished'}, and opened since`
        : t.passedAt
          ? 'passed'
          : t.quarters < t.need || t.quarters % 8 !== 0
            ? 'turn on'
            : 'read the marks, then the tension',
    picks: { drive: d.drive },
  }));

function marks(desk: Desk, d: DriveState): Listed[] {
  const latest = d.tries.at(-1);
  // What was read before the drive was opened again is no mark that stands.
  const last = latest && !isVoid(desk, d, latest) ? latest : undefined;
  const isRead = (mark: string) => last?.marks[mark] !== undefined;
  const allRead = d.declared?.marks.every(isRead) ?? true;
  const read = (d.declared?.marks ?? []).map((m): Listed => {
    const off = last?.marks[m];
    return {
      key: `${d.drive} mark ${m}`,
      mark: off === undefined ? 'half' : off === 0 ? 'done' : 'open',
      name: 'mark',
      text: m,
      end: off === undefined ? 'not read' : off === 0 ? 'stands' : offWords(off, d),
      // One that was read hands the key on to the next; with all read it is read once more.
      picks: { drive: d.drive, ...((allRead || !isRead(m)) && { mark: m }) },
    };
  });
  const tension = last?.tension;
  if (!d.declared || d.declared.tensioner === 'none') return read;
  const end = tension ? `${tension.right ? 'right' : 'not right'} by ${tension.how}` : 'not read';
  const mark = tension ? (tension.right ? 'done' : 'open') : 'half';
  return [
    ...read,
    { key: `${d.drive} tension`, mark, name: 'tension', text: d.declared.tensioner, end, picks: { drive: d.drive } },
  ];
}
