// How an area or a hole is tightened, as it is said on the spot: in which order and passes, by what, with which figures
// and which adapter.

import type { Method } from '../../job/spec.ts';
import { unsoundMethod } from '../../job/tightening.ts';
import { torqueSettingFromAdapter } from '../../trade/adapter.ts';
import { type Answer, isRefused, refused } from '../../trade/answer.ts';
import { readStages, type Stage } from '../../trade/torque-stages.ts';
import { readTorque } from '../../trade/units.ts';
import { metric, torqueUnitOf } from '../../trade/units-shown.ts';
import { noArea, ofArea, ofHole } from '../declaring.ts';
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { key, type Meant, type No, type Row } from '../row.ts';
import { declareMethod, figureFor, whoseWords } from '../whose-figure.ts';

function methodMeant(desk: Desk, args: Args): Meant {
  const read = methodSaid(desk, args);
  if ('no' in read) return read;
  return args.hole ? ofHole(() => read)(desk, args) : ofArea(() => read)(desk, args);
}
function methodSaid(desk: Desk, { by, value, with: liquid, into }: Args): { method: Method } | { no: No } {
  const stages = value === undefined ? [] : torquesOf(value as string, torqueUnitOf(desk.units ?? metric));
  if (isRefused(stages))
    return { no: { because: stages.refused, instead: 'as "40 +90 +90", "25 lbf ft", "30 +90 accept 60-110"' } };
  const [first, second] = stages;
  const only = first && !second && 'newtonMetres' in first ? first.newtonMetres : undefined;
  const figures = only === undefined ? (stages.length > 0 ? { stages } : {}) : { newtonMetres: only };
  return { method: { by, ...figures, ...(liquid ? { with: liquid } : {}), ...(into ? { into } : {}) } as Method };
}
/** One torque in any unit, or stages of one unit and degrees. */
function torquesOf(words: string, bare: ReturnType<typeof torqueUnitOf>): Answer<Stage[]> {
  // With a sign before it, it is an angle.
  const torque = /^[+-]/.test(words) ? refused('an angle') : readTorque(words, bare);
  return isRefused(torque) || torque === 0 ? readStages(words, bare) : [{ newtonMetres: Number(torque.toFixed(2)) }];
}

const usual: Method = { by: 'torque' };
/** No figure could be the answer: there is no area in use, or it is brought up by what carries none. */
function noFigureHere(desk: Desk): No | undefined {
  const one = figureFor(desk);
  if (!one) return { because: 'no area is in use', instead: 'say which', by: 'area' };
  const because = unsoundMethod({ by: (one.method ?? usual).by, newtonMetres: 1 });
  return because === undefined
    ? undefined
    : { because, instead: 'say another method in a line, as "by torque 40"', by: 'line' };
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

export const tighteningMethodRows: readonly Row[] = [
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
    id: 'figure',
    words: ['figure', 'torque figure'],
    form: '<value:words>',
    label: 'torque figure',
    help: 'The maker\u2019s figure for the area in use, or for the next one, or the one pointed at, and its like where they have a method of their own or are of another kind, thread or class; the method stays as it is, torque where none was said: 40, 25 lbf ft, 40 +90 +90.',
    group: 'on the spot',
    // No letter of Strip or Rotation: pressed by habit there it says nothing.
    keys: [key('N', 'build')],
    nothing: noFigureHere,
    questions: {
      value(_args, desk) {
        const one = figureFor(desk);
        const unit = torqueUnitOf(desk.units ?? metric);
        return `${one ? whoseWords(one) : ''}, in ${unit}, as 40 or 40 +90 +90; the maker's manual`;
      },
    },
    means(desk, { value }) {
      const one = figureFor(desk);
      if (!one) return noArea;
      const { by, with: liquid, into } = one.method ?? usual;
      const read = methodSaid(desk, { by, value, with: liquid, into });
      return 'no' in read ? read : declareMethod(one, read.method);
    },
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
];
