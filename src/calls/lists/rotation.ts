// The drives of a job: what each still wants before its check rotation stands, its tries and its marks.
import { isOff } from '../../job/closed.ts';
import { blocked } from '../../job/decide.ts';
import { every, stateOf } from '../../job/ledger.ts';
import { rotationNeeded } from '../../job/rotation.ts';
import type { DriveState } from '../../job/states.ts';
import { subjectText } from '../../job/subjects.ts';
import { isWithdrawn } from '../../job/withdrawn.ts';
import { isRefused } from '../../trade/answer.ts';
import { degreesOff, turnsUntilMarksMeet } from '../../trade/belt-drive.ts';
import type { Desk } from '../desk.ts';
import type { Listed } from '../listed.ts';

export function rotationRows(desk: Desk): Listed[] {
  const shown = [...every(desk.ledger, 'drive')].filter((d) => !isWithdrawn(desk.ledger, `drive:${d.drive}`));
  return shown.flatMap((d): Listed[] => {
    const picks = { drive: d.drive };
    const needed = rotationNeeded(desk.ledger, d);
    const passed = d.tries.at(-1)?.passedAt;
    const head: Listed = {
      key: d.drive,
      mark: needed ? 'open' : passed ? 'done' : 'found',
      name: 'drive',
      text: d.drive,
      end: needed ? 'check rotation to come' : passed ? 'check rotation passed' : 'as found',
      picks,
    };
    return [
      head,
      ...(needed ? [...beforeTurning(desk, d), ...turnedBy(desk, d)] : []),
      ...tries(d),
      ...marks(d),
      ...printedMarks(d),
    ];
  });
}

/** R2, K1: what would refuse a turn now, before it is tried. */
function beforeTurning({ ledger, now }: Desk, { drive }: DriveState): Listed[] {
  const stop = blocked(ledger, { verb: 'turn-crank', drive, quarters: 1 }, now);
  const [place] = stop?.places ?? [];
  return stop
    ? [
        {
          key: `${drive} first`,
          mark: 'half',
          name: 'first',
          text: stop.because,
          end: stop.instead,
          picks: { drive },
          ...(place !== undefined && { leads: place }),
        },
      ]
    : [];
}

/** With its bolt out the crank has nothing a socket holds on: an old one turns it. */
function turnedBy({ ledger }: Desk, { drive, declared }: DriveState): Listed[] {
  const bolt = declared?.crankBolt;
  const h = bolt === undefined ? undefined : stateOf(ledger, 'hole', bolt);
  if (!h || !isOff(h)) return [];
  const text = `nothing is in ${subjectText(`hole:${bolt}`)} to turn it by`;
  return [
    {
      key: `${drive} turned by`,
      mark: 'half',
      name: 'with',
      text,
      end: 'a working bolt',
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

const tries = (d: DriveState): Listed[] =>
  d.tries.map((t, i) => ({
    key: `${d.drive} try ${i}`,
    mark: t.passedAt ? 'done' : t.failed ? 'open' : 'half',
    name: `try ${i + 1}`,
    text: `${t.quarters / 4} of ${t.need / 4} turns`,
    end: t.passedAt
      ? 'passed'
      : t.failed
        ? `failed: ${t.failed}${t.explained ? `, ${t.explained}` : ''}`
        : t.quarters < t.need || t.quarters % 8 !== 0
          ? 'turn on'
          : 'read the marks, then the tension',
    picks: { drive: d.drive },
  }));

function marks(d: DriveState): Listed[] {
  const last = d.tries.at(-1);
  const read = (d.declared?.marks ?? []).map((m): Listed => {
    const off = last?.marks[m];
    return {
      key: `${d.drive} mark ${m}`,
      mark: off === undefined ? 'half' : off === 0 ? 'done' : 'open',
      name: 'mark',
      text: m,
      end: off === undefined ? 'not read' : off === 0 ? 'stands' : offWords(off, d),
      picks: { drive: d.drive, mark: m },
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
