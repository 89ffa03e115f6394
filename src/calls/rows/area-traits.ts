// What is said on the spot of an area or a hole: critical, order, passes, method, slack only.
import { areaRoles, finishedLater } from '../../job/entries/declared.ts';
import type { Entry } from '../../job/entry.ts';
import { holeIn } from '../../job/subjects.ts';
import { torqueSettingFromAdapter } from '../../trade/adapter.ts';
import { type Answer, isRefused, refused } from '../../trade/answer.ts';
import { coverOf, type Layout, lineOf, ringOf } from '../../trade/layout.ts';
import { readStages, type Stage } from '../../trade/torque-stages.ts';
import { readTorque } from '../../trade/units.ts';
import { declare, noArea } from '../declaring.ts';
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { key, type Meant, type Row } from '../row.ts';

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

function methodMeant(desk: Desk, args: Args): Meant {
  const { by, value, with: liquid, into, hole } = args;
  const stages = value === undefined ? [] : torquesOf(value as string);
  if (isRefused(stages))
    return { no: { because: stages.refused, instead: 'as "40 +90 +90", "25 lbf ft", "30 +90 accept 60-110"' } };
  const [first, second] = stages;
  const only = first && !second && 'newtonMetres' in first ? first.newtonMetres : undefined;
  const figures = only === undefined ? (stages.length > 0 ? { stages } : {}) : { newtonMetres: only };
  const method = { by, ...figures, ...(liquid ? { with: liquid } : {}), ...(into ? { into } : {}) };
  return hole ? ofHole(() => ({ method }))(desk, args) : ofArea(() => ({ method }))(desk, args);
}
/** One torque in any unit, or stages in newton metres and degrees. */
function torquesOf(words: string): Answer<Stage[]> {
  // With a sign before it, it is an angle.
  const torque = /^[+-]/.test(words) ? refused('an angle') : readTorque(words);
  return isRefused(torque) || torque === 0 ? readStages(words) : [{ newtonMetres: Number(torque.toFixed(2)) }];
}

function adapterMeant(desk: Desk, args: Args): Meant {
  const { adapter: adapterLengthMm, wrench: wrenchLengthMm, degrees } = args as Record<string, number>;
  const adapter = {
    wrenchLengthMm: wrenchLengthMm as number,
    adapterLengthMm: adapterLengthMm as number,
    ...(degrees !== undefined && { angleDegrees: degrees }),
  };
  const setting = torqueSettingFromAdapter(1, adapter);
  return isRefused(setting)
    ? {
        no: {
          because: setting.refused,
          instead: 'measure again: to the middle of the grip, the square and the fastener',
        },
      }
    : ofHole(() => ({ adapter }))(desk, args);
}

/** Outline and places as they are said on the spot: "ring of 8", "cover of 4 by 2 and 2". */
function layoutOf({ shape, count, rows = 1, middle = 0 }: Args): Layout {
  const of = count as number;
  if (shape === 'ring') return ringOf(of);
  return shape === 'line' ? lineOf(of) : coverOf(of, rows as number, middle as number);
}
const mostDrawn = 500;
function drawnMeant(desk: Desk, args: Args): Meant {
  const { area } = desk.facing;
  if (area === undefined) return noArea;
  const { count, rows = 1, middle = 0 } = args as Record<string, number>;
  const many = (count ?? 0) * rows + middle;
  if (many < 1 || many > mostDrawn)
    return { no: { because: `an area of ${many} holes is not drawn`, instead: `say from 1 to ${mostDrawn}` } };
  const { outline, holes } = layoutOf(args);
  return declare(
    { kind: 'area-declared', area, outline: outline.map(([x, y]): [number, number] => [x, y]) },
    ...holes.map(([x, y], i): Entry => ({ kind: 'hole-declared', hole: holeIn(area, String(i + 1)), at: [x, y] })),
  );
}

export const areaTraitsRows: readonly Row[] = [
  {
    id: 'drawn',
    words: ['drawn as', 'looks like'],
    form: '<shape:ring|cover|line> of <count:count> [by <rows:count>] [and <middle:count>]',
    label: 'draw the area',
    help: 'How the area in use looks: a ring, a cover of so many by so many and some along its middle, a line. Its holes are numbered so.',
    group: 'on the spot',
    keys: [key('D', ['strip', 'build'], { asks: (_desk, { shape }) => (shape === 'cover' ? ['rows', 'middle'] : []) })],
    questions: {
      count: 'how many (of a cover: in a row)',
      rows: 'rows',
      middle: 'and along the middle (leave out: none)',
    },
    means: drawnMeant,
  },
  {
    id: 'placed',
    words: ['placed', 'sits at'],
    form: '<hole> at <x:number> <y:number>',
    label: 'placed',
    help: 'Where a hole sits on the map of its area, right and down; on the screen it is moved by the arrow keys.',
    group: 'on the spot',
    keys: [],
    means: (_desk, { hole, x, y }) =>
      declare({ kind: 'hole-declared', hole: hole as string, at: [x as number, y as number] }),
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
    keys: [key('r', 'strip')],
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
    form: '<by:torque-angle|torque|shoulder|sleeve|hand|clamp|castle> [at <hole>] [with <with:oil|dry|locking compound>] [into <into:aluminium|steel|iron>] [<value:words>]',
    label: 'method',
    help: 'How the area in use, or a hole, is tightened: torque, torque-angle, shoulder, sleeve, hand, clamp, castle. Figures are the maker\u2019s: 40, 25 lbf ft, 40 +90 +90, 30 +90 accept 60-110.',
    group: 'on the spot',
    keys: [],
    means: methodMeant,
  },
  {
    id: 'adapter',
    words: ['adapter', 'crow foot'],
    form: '[<hole>] <adapter:mm> on <wrench:mm> [at <degrees:number>]',
    label: 'adapter',
    help: 'This one is reached by an adapter so long on a wrench so long, straight out or at an angle: what to set is shown.',
    group: 'on the spot',
    keys: [],
    means: adapterMeant,
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
];
