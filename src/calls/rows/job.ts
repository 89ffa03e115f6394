// Calls that open the job, order services, say on the spot what there is, and strike or restore what was called.
import { areaRoles, finishedLater } from '../../job/entries/declared.ts';
import type { Entry } from '../../job/entry.ts';
import { isStruck } from '../../job/ledger.ts';
import type { Method } from '../../job/spec.ts';
import { leaningOn, unstrikable } from '../../job/striking.ts';
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { key, type Meant, type Row } from '../row.ts';

const declare = (...entries: (Entry | undefined)[]): Meant => ({
  say: { verb: 'declare', entries: entries.filter((e) => e !== undefined) },
});
const noArea: Meant = { no: { because: 'no area is in use', instead: 'say which, "area NAME"' } };
/** A declaration about the area in use, or the one that was said. */
const ofArea =
  (more: (args: Args) => Record<string, unknown>) =>
  (desk: Desk, args: Args): Meant => {
    const area = (args.area as string | undefined) ?? desk.facing.area;
    return area === undefined ? noArea : declare({ kind: 'area-declared', area, ...more(args) } as Entry);
  };
const ofHole =
  (more: (args: Args) => Record<string, unknown>) =>
  (desk: Desk, args: Args): Meant => {
    const hole = (args.hole as string | undefined) ?? desk.facing.hole;
    return hole === undefined
      ? { no: { because: 'no hole is pointed at', instead: 'say which hole' } }
      : declare({ kind: 'hole-declared', hole, ...more(args) } as Entry);
  };

/** "40 +90 +90 -360": newton metres first, then degrees; a minus loosens. */
function stagesOf(words: string): Method['stages'] | null {
  const stages = words.split(/\s+/).map((word) => {
    const match = /^([+-]?)(\d+(?:\.\d+)?)$/.exec(word);
    if (!match) return null;
    const value = Number(match[2]);
    if (match[1] === '+') return { degrees: value };
    return match[1] === '-' ? { loosenDegrees: value } : { newtonMetres: value };
  });
  return stages.includes(null) ? null : (stages as Method['stages']);
}
function methodMeant(desk: Desk, args: Args): Meant {
  const { by, value, with: liquid, hole } = args;
  const stages = value === undefined ? undefined : stagesOf(value as string);
  if (stages === null)
    return {
      no: {
        because: `"${value}" is no row of stages`,
        instead: 'as "40 +90 +90": newton metres, +degrees, -degrees to loosen',
      },
    };
  const only = stages?.length === 1 && stages[0] && 'newtonMetres' in stages[0] ? stages[0].newtonMetres : undefined;
  const figures = only === undefined ? (stages ? { stages } : {}) : { newtonMetres: only };
  const method = { by, ...figures, ...(liquid ? { with: liquid } : {}) };
  return hole ? ofHole(() => ({ method }))(desk, args) : ofArea(() => ({ method }))(desk, args);
}

export const jobRows: readonly Row[] = [
  {
    id: 'open',
    words: ['job', 'new job'],
    form: '<label:words> [registration <registration:words>]',
    label: 'new job',
    help: 'A vehicle comes onto the bench.',
    group: 'the job',
    keys: [],
    verb: 'open-job',
  },
  {
    id: 'service',
    words: ['service', 'order service'],
    form: '<service>',
    label: 'service',
    help: 'A service is ordered that no plan describes.',
    group: 'the job',
    keys: [key('a', 'leaving', { fresh: true })],
    verb: 'order-service',
  },
  {
    id: 'plan',
    words: ['plan', 'take plan'],
    form: '<plan> for <service:planned>',
    label: 'service from a plan',
    help: 'A service is ordered from a plan: all the plan says of it is written into the job, and the plan is not read again.',
    group: 'the job',
    keys: [key('O', ['strip', 'build', 'leaving'], { fresh: true })],
    means: (desk, { plan, service }) => {
      const offer = desk.plans.find((p) => p.name === plan);
      if (!offer) return { no: { because: `there is no plan "${plan}"`, instead: 'see the folder of plans' } };
      return { say: { verb: 'order-service', service, declares: offer.declares([service as string], desk.ledger) } };
    },
  },
  {
    id: 'service-done',
    words: ['service done', 'work complete'],
    form: '<service>',
    label: 'service done',
    help: 'An ordered service is done.',
    group: 'the job',
    keys: [key('f', 'leaving')],
    verb: 'service-done',
  },
  {
    id: 'service-dropped',
    words: ['service dropped', 'leave service out'],
    form: '<service> because <because:why>',
    label: 'service dropped',
    help: 'An ordered service is not done, and why.',
    group: 'the job',
    keys: [],
    verb: 'drop-service',
  },
  {
    id: 'note',
    words: ['note', 'write down'],
    form: '<words>',
    label: 'note',
    help: 'Anything worth keeping.',
    group: 'the job',
    keys: [],
    verb: 'note',
  },
  {
    id: 'critical',
    words: ['critical', 'area is critical'],
    form: '[<area>]',
    label: 'critical',
    help: 'The area carries somebody\u2019s safety: second look, no hole left empty, trades with none.',
    group: 'on the spot',
    keys: [key('g', 'strip', { footer: false })],
    means: ofArea(() => ({ critical: true })),
  },
  {
    id: 'role',
    words: ['role', 'area belongs to'],
    form: `<role:${areaRoles.join('|')}> [in <area>]`,
    label: 'role',
    help: 'What the area belongs to: wheel, brake, steering, suspension, mount, drive, engine.',
    group: 'on the spot',
    keys: [],
    means: ofArea(({ role }) => ({ role })),
  },
  {
    id: 'keep-clean',
    words: ['keep clean', 'no chips here'],
    form: '[<area>]',
    label: 'keep clean',
    help: 'No metal is cut while this area stands open and unmasked.',
    group: 'on the spot',
    keys: [],
    means: ofArea(() => ({ keepClean: true })),
  },
  {
    id: 'blind',
    words: ['blind holes', 'has blind holes'],
    form: '[<area>]',
    label: 'blind holes',
    help: 'The area has blind holes, to be called dry before it closes.',
    group: 'on the spot',
    keys: [],
    means: ofArea(() => ({ blindHoles: true })),
  },
  {
    id: 'marked',
    words: ['direction marked', 'routing marked'],
    form: '[<area>]',
    label: 'direction marked',
    help: 'Direction or routing was marked, to be called right before it closes.',
    group: 'on the spot',
    keys: [],
    means: ofArea(() => ({ marked: true })),
  },
  {
    id: 'has-companions',
    words: ['has companions', 'between the faces'],
    form: '<companions:list> [in <area>]',
    label: 'has companions',
    help: 'Dowels, sleeves, keys, O-rings that must not be forgotten between the faces.',
    group: 'on the spot',
    keys: [],
    means: ofArea(({ companions }) => ({ companions })),
  },
  {
    id: 'tightening-order',
    words: ['order', 'tighten in order'],
    form: '<order:words>',
    label: 'order',
    help: 'The tightening order of the area in use, hole numbers one after the other.',
    group: 'on the spot',
    keys: [],
    means: ofArea(({ order }) => ({ order: (order as string).split(/[\s,]+/).filter(Boolean) })),
  },
  {
    id: 'passes',
    words: ['passes', 'tighten in passes'],
    form: '<passes:list> [in <area>]',
    label: 'passes',
    help: 'The passes of the area, first to last; usually snug, final.',
    group: 'on the spot',
    keys: [],
    means: ofArea(({ passes }) => ({ passes })),
  },
  {
    id: 'method',
    words: ['by', 'tighten by'],
    form: '<by:torque-angle|torque|shoulder|sleeve|hand|clamp|castle> [at <hole>] [with <with:oil|dry|locking compound>] [<value:words>]',
    label: 'method',
    help: 'How the area in use, or a hole, is tightened: torque, torque-angle, shoulder, sleeve, hand, clamp, castle. Figures are the maker\u2019s.',
    group: 'on the spot',
    keys: [],
    means: methodMeant,
  },
  {
    id: 'slack-only',
    words: ['slack only', 'never off'],
    form: '[<hole>]',
    label: 'slack only',
    help: 'This one is only slackened, never off.',
    group: 'on the spot',
    keys: [],
    means: ofHole(() => ({ slackOnly: true })),
  },
  {
    id: 'own-place',
    words: ['own place', 'trades with none'],
    form: '[<hole>]',
    label: 'own place',
    help: 'This hole takes its own fastener only: caps, matched bolts.',
    group: 'on the spot',
    keys: [],
    means: ofHole(() => ({ ownPlace: true })),
  },
  {
    id: 'sprocket-bolt',
    words: ['sprocket bolt', 'holds a sprocket'],
    form: '[<hole>]',
    label: 'sprocket bolt',
    help: 'This one holds a sprocket or a pulley on its shaft: slack or tight with a lock in, it is warned of.',
    group: 'on the spot',
    keys: [],
    means: ofHole(() => ({ sprocketBolt: true })),
  },
  {
    id: 'later',
    words: ['later', 'finished later'],
    form: `[<hole>] <later:${finishedLater.join('|')}>`,
    label: 'finished later',
    help: 'Snug is enough for now: final after the belt, after turning, or on its wheels.',
    group: 'on the spot',
    keys: [],
    means: ofHole(({ later }) => ({ later })),
  },
  {
    id: 'holds',
    words: ['part', 'there is a part'],
    form: '<part> [held by <heldBy:holes>] [<sits:held by nothing>] [<renew:to be renewed>]',
    label: 'part',
    help: 'A part there is: held by holes of the area in use, or by nothing, and whether it is renewed.',
    group: 'on the spot',
    keys: [],
    means: (_desk, { part, heldBy, renew }) =>
      declare({
        kind: 'part-declared',
        part: part as string,
        heldBy: (heldBy as string[] | undefined) ?? [],
        ...(renew ? { renew: true } : {}),
      }),
  },
  {
    id: 'connection',
    words: ['connection', 'there is a connection'],
    form: '<connection> [in <area>] [of <circuit>]',
    label: 'connection',
    help: 'A plug, hose, union or clip there is, with its area and the circuit it belongs to.',
    group: 'on the spot',
    keys: [],
    means: (_desk, { connection, area, circuit }) =>
      declare({
        kind: 'connection-declared',
        connection: connection as string,
        ...(area ? { area: area as string } : {}),
        ...(circuit ? { circuit: circuit as string } : {}),
      }),
  },
  {
    id: 'face',
    words: ['face', 'sealing face'],
    form: '<face> pressed by <pressedBy:holes> [keeps in <keepsIn:list>] [under <part>] [<bead:with a bead>] [with <beads:count> beads]',
    label: 'sealing face',
    help: 'A sealing face of the area in use: the holes that press it, what it keeps in, its part, whether it wants a bead.',
    group: 'on the spot',
    keys: [],
    means: (desk, { face, pressedBy, keepsIn, part, bead, beads }) =>
      desk.facing.area === undefined
        ? noArea
        : declare({
            kind: 'face-declared',
            face: face as string,
            area: desk.facing.area,
            pressedBy: pressedBy as string[],
            keepsIn: (keepsIn as string[] | undefined) ?? [],
            ...(part ? { part: part as string } : {}),
            ...(typeof beads === 'number' && beads > 1 ? { bead: beads } : bead || beads ? { bead: true } : {}),
          }),
  },
  {
    id: 'circuit',
    words: ['circuit', 'fluid circuit'],
    form: '<circuit> with <fluid:words>',
    label: 'circuit',
    help: 'A circuit and the fluid in it.',
    group: 'on the spot',
    keys: [],
    means: (_desk, { circuit, fluid }) =>
      declare({ kind: 'circuit-declared', circuit: circuit as string, fluid: fluid as string }),
  },
  {
    id: 'behind',
    words: ['behind', 'sits behind'],
    form: '<front:subject> is <behind:subject> [<until:until snug>] [<gate:as a gate>]',
    label: 'behind',
    help: 'Behind the first sits the second, which must be closed first. "rotation NAME" is the check rotation of a drive.',
    group: 'on the spot',
    keys: [],
    means: (_desk, { front, behind, until, gate }) =>
      declare({
        kind: 'behind-declared',
        front: front as string,
        behind: behind as string,
        until: until ? 'snug' : 'closed',
        ...(gate ? { gate: true as const } : {}),
        from: 'said',
      }),
  },
  {
    id: 'drive',
    words: ['drive', 'belt drive'],
    form: '<drive> over <areas:list> [with <parts:list>] [marks <marks:list>] [tensioner <tensioner:sprung|plunger|set|none>] [turns <turns:count>] [crank bolt <crankBolt:hole>]',
    label: 'drive',
    help: 'What keeps crank and cam in time: its areas, parts, marks, tensioner, turns of the check. A crank bolt is named where the sprocket has no key.',
    group: 'on the spot',
    keys: [],
    means: (_desk, { drive, areas, parts, marks, tensioner, turns, crankBolt }) =>
      declare({
        kind: 'drive-declared',
        drive: drive as string,
        areas: areas as string[],
        parts: (parts as string[] | undefined) ?? [],
        marks: (marks as string[] | undefined) ?? [],
        turns: (turns as number | undefined) ?? 2,
        tensioner: (tensioner as 'sprung' | undefined) ?? 'none',
        ...(crankBolt ? { crankBolt: crankBolt as string } : {}),
        crankKeyed: crankBolt === undefined,
      }),
  },
  {
    id: 'label',
    words: ['label', 'product label'],
    form: '<product> <kind:moisture|anaerobic|non-setting|dry> [skin <skin:number>] [fill <fill:number>] [run <run:number>] [full <full:number>] at <celsius:number> <humidity:number> [lowest <lowest:number>]',
    label: 'product label',
    help: 'A sealant\u2019s label: skin minutes, hours to fill, run and full cure, at degrees Celsius and % humidity, lowest temperature.',
    group: 'on the spot',
    keys: [],
    means: (_desk, args) => {
      const given = (name: string, to: string) => (args[name] === undefined ? {} : { [to]: args[name] });
      return declare({
        kind: 'product-declared',
        label: {
          product: args.product,
          kind: args.kind,
          ...given('skin', 'skinMinutes'),
          ...given('fill', 'fillHours'),
          ...given('run', 'runHours'),
          ...given('full', 'fullHours'),
          labelCelsius: args.celsius,
          labelHumidityPct: args.humidity,
          ...given('lowest', 'lowestCelsius'),
        },
      } as Entry);
    },
  },
  {
    id: 'strike',
    words: ['strike', 'strike out'],
    form: '<lines>',
    label: 'strike',
    help: 'Strike lines of the log: the job stands as if they had never been. Lines that lean on them are named.',
    group: 'putting right',
    keys: [key('x', 'log')],
    verb: 'strike',
  },
  {
    id: 'strike-with',
    words: ['strike with', 'strike together'],
    form: '<lines>',
    label: 'strike with what leans on it',
    help: 'Strike lines together with all that would have no footing without them, as one call.',
    group: 'putting right',
    keys: [key('w', 'log')],
    means: (desk, { lines }) => {
      const together = [...(lines as number[]), ...leaningOn(desk.ledger, lines as number[], 'calls-struck')];
      return { say: { verb: 'strike', lines: together.sort((a, b) => a - b) } };
    },
  },
  {
    id: 'strike-last',
    words: ['strike last', 'take that back'],
    form: '',
    label: 'strike last',
    help: 'Strike the last call.',
    group: 'putting right',
    keys: [key('backspace', ['strip', 'build', 'findings', 'rotation', 'sealing', 'box', 'leaving'])],
    means: (desk) => {
      for (let n = desk.ledger.lines.length; n > 0; n--) {
        if (!isStruck(desk.ledger, n) && !unstrikable(desk.ledger, n)) return { say: { verb: 'strike', lines: [n] } };
      }
      return { no: { because: 'nothing was called that can be struck', instead: 'go on' } };
    },
  },
  {
    id: 'restore',
    words: ['restore', 'unstrike'],
    form: '<lines>',
    label: 'restore',
    help: 'Restore struck lines, checked like striking.',
    group: 'putting right',
    keys: [key('r', 'log')],
    verb: 'restore',
  },
  {
    id: 'done-already',
    words: ['done already', 'it is done already'],
    form: '[because <because:why>]',
    label: 'done already',
    help: 'Answers a refusal for order: it has happened. Taken, marked, and printed. The same key again says the same.',
    group: 'putting right',
    keys: [],
    means: (_desk, { because }) => ({ again: { because: (because as string | undefined) ?? 'done already' } }),
  },
];
