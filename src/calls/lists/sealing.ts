// Sealing faces with their beads and when each is ready, and the fluids that the faces keep in.

import {
  type BeadStanding,
  beadMissing,
  beadsOn,
  coveringHoles,
  faceOpenedAt,
  lastBeadVoid,
  noSealant,
  partOver,
} from '../../job/beads.ts';
import { conditionsAt } from '../../job/clock.ts';
import { every, type Ledger, lineAt } from '../../job/ledger.ts';
import { circuitOpenedAt, wantsLeakCheck } from '../../job/open-points.ts';
import { onceRightAtMs, readyText, wholeMinuteMs } from '../../job/ready.ts';
import type { CircuitState, FaceState } from '../../job/states.ts';
import { isWithdrawn } from '../../job/withdrawn.ts';
import { civilTime, lengthOfTimeText, timeOfDayText } from '../../trade/civil-time.ts';
import { metric, temperatureText } from '../../trade/units-shown.ts';
import type { Keymap } from '../bindings.ts';
import type { Desk } from '../desk.ts';
import { waySaid } from '../key-names.ts';
import type { Listed } from '../listed.ts';

export function sealingRows(desk: Desk, keymap: Keymap): Listed[] {
  const isShown = (subject: string) => !isWithdrawn(desk.ledger, subject);
  const faces = [...every(desk.ledger, 'face')]
    .filter(({ face }) => isShown(`face:${face}`))
    .flatMap((face) => faceRows(desk, face, keymap));
  const circuits = [...every(desk.ledger, 'circuit')]
    .filter(({ circuit }) => isShown(`circuit:${circuit}`))
    .map((c) => circuitRow(desk.ledger, c));
  const bench = conditionsAt(desk.ledger, desk.ledger.lines.length);
  const conditions: Listed = {
    key: 'bench',
    mark: 'plain',
    name: 'bench',
    text: bench
      ? `${temperatureText(bench.celsius, desk.units ?? metric)}, ${bench.humidityPct ?? 'humidity unknown: 40'} %`
      : 'not noted',
    end: bench ? '' : `nothing cures by the book until it is: ${waySaid(keymap, 'sealing', 'bench')}`,
    picks: {},
  };
  return faces.length + circuits.length > 0 ? [...faces, ...circuits, conditions] : [];
}

/** How a face that wants a bead comes to one, or to none. */
function beadWays(keymap: Keymap): string {
  const by = (call: string) => waySaid(keymap, 'sealing', call);
  return `once clean, ${by('bead')} bead laid, or ${by('no-bead')} where it goes on without: dry, or with a moulded gasket.`;
}
function faceRows(desk: Desk, face: FaceState, keymap: Keymap): Listed[] {
  const picks = { face: face.face };
  const beads = beadsOn(desk.ledger, face, desk.now);
  const missing = beadMissing(desk.ledger, face, desk.now);
  const isVoid = lastBeadVoid(desk.ledger, face, desk.now) !== undefined;
  const opened = faceOpenedAt(desk.ledger, face);
  const clean = face.cleanedAt > opened;
  const wantsCleaning = opened > 0 && !clean && (face.declared?.keepsIn.length ?? 0) > 0;
  const part = partOver(desk.ledger, face);
  const isShut = opened > 0 && !clean && (part !== undefined || coveringHoles(desk.ledger, face).length > 0);
  const over = part === undefined ? 'what presses it' : part;
  const state =
    beads.length > 0
      ? beads.every((b) => b.label.product === noSealant.product)
        ? 'goes on without sealant'
        : 'bead laid'
      : clean && opened > 0
        ? 'clean'
        : opened > 0
          ? 'opened, not called clean'
          : 'as found';
  const head: Listed = {
    key: `face ${face.face}`,
    mark: missing ? 'open' : opened === 0 ? 'found' : wantsCleaning ? 'half' : 'plain',
    name: 'face',
    text: face.face,
    // Why it is void stands in the row of the bead.
    end: !missing
      ? state
      : isVoid
        ? 'bead void: clean, lay anew'
        : clean && beads.length === 0
          ? 'clean, no bead laid'
          : missing,
    ...(missing && !isShut && { more: `${face.face}: ${isVoid ? `${missing}. ` : ''}${beadWays(keymap)}` }),
    ...(isShut && {
      more: `${isVoid ? `${missing}. ` : ''}${face.face} is closed over: ${over} comes off again, then it is cleaned. Cleaned before and not called: "clean ${face.face} all the same".`,
    }),
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
        ...(isStandingStill(b) && { brief: { end: 'nothing is earned: is the clock right?' } }),
        more: beadMore(b, desk),
        picks,
      }),
    ),
  ];
}

/** S7: until the clock is called right. */
const isStandingStill = (b: BeadStanding): boolean =>
  !b.void && !b.reached.full && onceRightAtMs(b, 'full') !== undefined;
const purposes = { fill: 'to fill', run: 'to run', full: 'to leave' } as const;
/** What the bead is waited for next, and until when. */
export function beadWords(b: BeadStanding, desk: Desk): string {
  if (b.void) return `void: ${b.void}`;
  if (b.needs.full === 0) return 'wants no cure';
  if (!b.togetherAt)
    return b.skinMinutesLeft === undefined
      ? 'not together yet'
      : `skins in ${Math.max(0, Math.round(b.skinMinutesLeft))} min`;
  if (b.reached.full) return 'fully cured';
  const stage = b.reached.run ? 'full' : b.reached.fill ? 'run' : 'fill';
  const at = b.readyAtMs[stage];
  if (onceRightAtMs(b, stage) !== undefined) return `${purposes[stage]}: ${readyText(b, stage, desk.now)}`;
  const when = at === undefined ? 'nothing earned: note the bench conditions' : `ready ${readyWords(at, desk.now)}`;
  return `${purposes[stage]}: ${when}${b.awayHours > 0.01 ? '; is the clock right?' : ''}`;
}
/** Every stage of a bead that is together, for the row that is picked. */
function beadMore(b: BeadStanding, desk: Desk): string {
  if (b.void || !b.togetherAt || b.reached.full) return '';
  const each = (['fill', 'run', 'full'] as const).map((stage) => {
    const at = b.readyAtMs[stage];
    const onceRight = onceRightAtMs(b, stage);
    const told = onceRight ?? at;
    const when = b.reached[stage] ? 'reached' : told === undefined ? 'not yet' : readyWords(told, desk.now);
    return `${purposes[stage]} ${when}`;
  });
  const away = isStandingStill(b)
    ? ' All of it once y says that the clock is right: until then nothing is earned.'
    : b.awayHours > 0.01
      ? ' Time away counts once y says that the clock is right.'
      : '';
  const together = lineAt(desk.ledger, b.togetherAt);
  const since = together
    ? ` Counted from ${timeOfDayText(together.atMs, together.zoneMin)}, when it was together.`
    : '';
  return `${b.label.product}: ${each.join('; ')}.${since} Turning by hand is allowed. ${b.because}.${away}`;
}

/** "Thursday 14:20, 6 h 10 min left", by the clock of the bench. */
function readyWords(atMs: number, now: { atMs: number; zoneMin: number }): string {
  const shown = wholeMinuteMs(atMs);
  const { weekday } = civilTime(shown, now.zoneMin);
  const left = atMs <= now.atMs ? 'reached' : `${lengthOfTimeText(atMs - now.atMs)} left`;
  return `${weekday} ${timeOfDayText(shown, now.zoneMin)}, ${left}`;
}

function circuitRow(ledger: Ledger, c: CircuitState): Listed {
  const isEmpty = c.drainedAt > c.filledAt;
  const opened = circuitOpenedAt(ledger, c);
  const wantsCheck = wantsLeakCheck(ledger, c);
  const filled = c.drainedAt > 0 ? 'filled' : 'opened, not drained';
  return {
    key: `circuit ${c.circuit}`,
    mark: isEmpty ? 'open' : wantsCheck ? 'half' : opened === 0 ? 'found' : 'done',
    name: 'fluid',
    text: c.circuit,
    end: isEmpty
      ? 'drained'
      : opened === 0
        ? 'as found'
        : `${filled}, ${wantsCheck ? 'leak check to come' : 'no leak'}`,
    picks: { circuit: c.circuit },
  };
}
