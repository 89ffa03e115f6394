// Topics about bringing a fastener up: a stated torque, the setting of a wrench with an adapter, stages, orders, and what to
// drill for an insert.
import { torqueSettingFromAdapter } from '../../trade/adapter.ts';
import { type Answer, figure, isRefused, refused } from '../../trade/answer.ts';
import { readFastener } from '../../trade/designation.ts';
import {
  drillingDepthIn,
  insertBoreMm,
  insertDrillingDepthMm,
  judgeInsertDrill,
  tapDrillMm,
} from '../../trade/thread-repair.ts';
import { type Thread, threadNamed } from '../../trade/threads.ts';
import { lineOrder, looseningOrder, type Place, ringOrder, tighteningOrder } from '../../trade/tightening-order.ts';
import { judgeTorque } from '../../trade/torque-judged.ts';
import { degreesAfterTorque, readStages, stagesText } from '../../trade/torque-stages.ts';
import { readTorque, torqueIn } from '../../trade/units.ts';
import { allOf, decimals, numberIn, type Reckoned, type Topic } from './topic.ts';

const parents = ['aluminium', 'steel', 'iron'] as const;
type Parent = (typeof parents)[number];
const parentIn = (word: string | undefined): Answer<Parent | undefined> =>
  word === undefined || (parents as readonly string[]).includes(word)
    ? (word as Parent | undefined)
    : refused(`"${word}" is none of ${parents.join(', ')}`);

const inUnits = (newtonMetres: number): string =>
  ['N·m', 'lbf·ft', 'kgf·m']
    .map((unit) => {
      const value = torqueIn(newtonMetres, unit);
      return isRefused(value) ? '' : `${figure(value)} ${unit}`;
    })
    .join(', ');

const torque: Topic = {
  name: 'torque',
  usage: 'torque "25 Nm" ["M8x30 8.8"] [--into aluminium|steel|iron] [--by torque|torque-angle|shoulder]',
  help: 'a torque in other units; with a fastener and its class, whether it can be right: beyond proof load, or far below',
  options: ['into', 'by'],
  reckon: ({ words: [said, ...fastener], options }) => {
    if (said === undefined) return refused(`say ${torque.usage}`);
    const read = allOf<[number, Parent | undefined]>(readTorque(said), parentIn(options.get('into')));
    if (isRefused(read)) return read;
    const [newtonMetres, into] = read;
    const plain: Reckoned = { lines: [inUnits(newtonMetres)], data: { newtonMetres } };
    if (fastener.length === 0) return plain;
    const one = readFastener(fastener.join(' '));
    if (isRefused(one)) return one;
    const judged = judgeTorque({
      thread: one.thread,
      newtonMetres,
      ...(one.class !== undefined && { class: one.class }),
      ...(into && { into }),
      ...(options.has('by') && { by: options.get('by') as string }),
    });
    if (isRefused(judged)) return judged;
    const { band } = judged;
    return {
      lines: [
        ...plain.lines,
        one.class === undefined
          ? `${judged.because}; with its class, as "${fastener.join(' ')} 8.8", it is judged`
          : judged.because,
        ...(band
          ? [
              `between ${figure(band.fromNewtonMetres)} and ${figure(band.toNewtonMetres)} N·m nothing is said against it; the maker's figure goes first`,
            ]
          : []),
        ...(judged.perhaps ? [judged.perhaps] : []),
      ],
      data: { ...plain.data, ...judged },
    };
  },
};

const wrench: Topic = {
  name: 'wrench',
  usage: 'wrench "40 Nm" WRENCH-MM ADAPTER-MM [DEGREES]',
  help: 'what to set on a torque wrench so long with an adapter so long, straight out (0) or at an angle',
  options: [],
  reckon: ({ words: [said = '', wrenchMm, adapterMm, degrees = '0', ...more] }) => {
    if (more.length > 0) return refused(`say ${wrench.usage}`);
    const read = allOf<[number, number, number, number]>(
      readTorque(said),
      numberIn(wrenchMm, 'length of the wrench'),
      numberIn(adapterMm, 'length of the adapter'),
      numberIn(degrees, 'angle'),
    );
    if (isRefused(read)) return read;
    const [newtonMetres, wrenchLengthMm, adapterLengthMm, angleDegrees] = read;
    const setting = torqueSettingFromAdapter(newtonMetres, { wrenchLengthMm, adapterLengthMm, angleDegrees });
    return isRefused(setting)
      ? setting
      : {
          lines: [`set ${decimals(setting, 2)} N·m for ${figure(newtonMetres)} N·m at the fastener`],
          data: { newtonMetres, settingNewtonMetres: setting },
        };
  },
};

const stages: Topic = {
  name: 'stages',
  usage: 'stages "20 40 +60 +80"',
  help: 'torque and angle in stages as makers print them: 40 +90 -360 40 +90, 30 +90 accept 60-110',
  options: [],
  reckon: ({ words }) => {
    const read = readStages(words.join(' '));
    if (isRefused(read)) return read;
    const turned = degreesAfterTorque(read);
    return {
      lines: [
        stagesText(read),
        ...(turned > 0 ? [`a mark on the head moves ${figure(turned)}° after the last torque`] : []),
        'of several: one stage on all of them before the next',
      ],
      data: { stages: read, degreesAfterTorque: turned },
    };
  },
};

const order: Topic = {
  name: 'order',
  usage: 'order ring 8 | order line 5 | order X,Y X,Y …',
  help: 'in which order to tighten where the maker prints none: a ring, a line, or holes by where they sit; loosened in reverse',
  options: [],
  reckon: ({ words: [first = '', ...rest] }) => {
    const found = first === 'ring' || first === 'line' ? counted(first, rest) : placed([first, ...rest]);
    if (isRefused(found)) return found;
    const loosening = looseningOrder(found.holes);
    return {
      lines: [
        `tighten ${found.holes.join(' ')}`,
        `loosen ${loosening.join(' ')}`,
        `${found.by}: ${found.source}; a maker's own order goes first`,
      ],
      data: { ...found, loosening },
    };
  },
};
type Ordered = { holes: string[]; by: string; source: string };
function counted(shape: 'ring' | 'line', words: readonly string[]): Answer<Ordered> {
  const count = words.length === 1 ? numberIn(words[0], 'count of holes') : refused(`say ${order.usage}`);
  if (isRefused(count)) return count;
  const numbers = shape === 'ring' ? ringOrder(count) : lineOrder(count);
  const source = shape === 'ring' ? 'crosswise, numbered clockwise' : 'from the middle outwards';
  return isRefused(numbers) ? numbers : { holes: numbers.map(String), by: shape, source };
}
function placed(words: readonly string[]): Answer<Ordered> {
  const places = words.map((word, at): Answer<Place> => {
    const [x = '', y = '', ...more] = word.split(',');
    const read = allOf<[number, number]>(numberIn(x, 'place'), numberIn(y, 'place'));
    if (isRefused(read) || more.length > 0) return refused(`"${word}" is no place: X,Y`);
    return { hole: String(at + 1), at: read };
  });
  const wrong = places.find(isRefused);
  return wrong ?? tighteningOrder(places as Place[]);
}

const insert: Topic = {
  name: 'insert',
  usage: 'insert M8x1.25 LENGTH-MM [--depth MM] [--drill MM]',
  help: 'a thread repaired with a wire insert: what to drill, how deep, and whether the boss has that depth',
  options: ['depth', 'drill'],
  reckon: ({ words: [named, length, ...more], options }) => {
    if (named === undefined || length === undefined || more.length > 0) return refused(`say ${insert.usage}`);
    const read = allOf<[Thread, number]>(threadNamed(named), numberIn(length, 'length'));
    if (isRefused(read)) return read;
    const [thread, lengthMm] = read;
    const found = allOf<[{ fromMm: number; toMm: number }, number]>(
      insertBoreMm(thread),
      insertDrillingDepthMm(thread, lengthMm),
    );
    if (isRefused(found)) return found;
    const [bore, plugMm] = found;
    const there = options.has('depth') ? numberIn(options.get('depth'), 'depth') : undefined;
    const drill = options.has('drill') ? numberIn(options.get('drill'), 'drill') : undefined;
    const depth = typeof there === 'number' ? drillingDepthIn(thread, lengthMm, there) : there;
    const judged = typeof drill === 'number' ? judgeInsertDrill(thread, drill) : drill;
    const wrong = [depth, judged].find(isRefused);
    if (wrong) return wrong;
    return {
      lines: [
        `drill ${bore.fromMm.toFixed(2)} to ${bore.toMm.toFixed(2)} mm for an insert of ${thread.name}; ${decimals(tapDrillMm(thread), 2)} mm is the drill of the plain thread and wrong`,
        // What is said first is drilled: never deeper than there is.
        ...(depth
          ? [(depth as { because: string }).because]
          : [
              `drill ${decimals(plugMm, 2)} mm deep with a plug tap, where the boss has more than that: --depth MM says`,
            ]),
        ...(typeof there === 'number' && plugMm > there
          ? [`no plug tap: that wants ${decimals(plugMm, 2)} mm, ${decimals(plugMm - there, 2)} more than there are`]
          : []),
        ...(judged ? [(judged as { because: string }).because] : []),
      ],
      data: {
        thread: thread.name,
        bore,
        plugTapDepthMm: plugMm,
        ...(depth && { inTheBoss: depth }),
        ...(judged && { drill: judged }),
      },
    };
  },
};

export const tighteningTopics: readonly Topic[] = [torque, wrench, stages, order, insert];
