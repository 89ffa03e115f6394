// O4: how a fastener is brought up, in words for whoever holds the wrench: its stages, what to set with an adapter, and
// whether the torque that was stated can be right. The figures are the maker's; here they are read, set and doubted.
import { type Adapter, torqueSettingFromAdapter } from '../trade/adapter.ts';
import { figure, isRefused, refused } from '../trade/answer.ts';
import { threadNamed } from '../trade/threads.ts';
import { judgeTorque, withoutFigure } from '../trade/torque-judged.ts';
import { isAccepted, isReadFarOff, soundStages, stagesText } from '../trade/torque-stages.ts';
import { metric, torqueFigure, torqueUnitOf, type Units } from '../trade/units-shown.ts';
import { wantsOf } from './closed.ts';
import type { Entry } from './entry.ts';
import { type Ledger, stateOf } from './ledger.ts';
import { methodFor } from './passes.ts';
import { hasFigures, type Method, type Spec, stagesOf } from './spec.ts';
import { areaOf, type Hole, subjectText } from './subjects.ts';
import { touches } from './touches.ts';

const manners: Readonly<Record<Method['by'], string>> = {
  torque: "torque, no figure known: it is in the maker's manual",
  'torque-angle': "torque, then angle, no figures known: they are in the maker's manual",
  shoulder: 'to the shoulder, then stop: no figure',
  sleeve: 'to the sleeve, then stop: no figure',
  hand: 'by hand',
  clamp: 'clamp',
  castle: 'castle nut, new pin',
};

const isAngle = ({ by, stages = [] }: Method): boolean => by === 'torque-angle' || stages.some((s) => 'degrees' in s);

/** The thread at a hole, else its head; empty where neither is known. */
export function threadAt(ledger: Ledger, hole: Hole): string {
  const spec = specAt(ledger, hole);
  return spec?.thread ?? spec?.head ?? '';
}

/** O4: it is brought up to a figure, and none was said. */
export const wantsFigure = (method: Method | undefined): boolean =>
  method !== undefined && (method.by === 'torque' || method.by === 'torque-angle') && !hasFigures(method);

/** Pulled up by feel where nobody says how. Common practice, no source. */
export const isByFeel = (spec: Spec | undefined): boolean => ['clamp', 'clip', 'cap', 'pin'].includes(spec?.kind ?? '');

/** Why a method makes no sense as it stands; undefined when it does. */
export function unsoundMethod(method: Method): string | undefined {
  const stages = stagesOf(method);
  if (stages.length === 0) return undefined;
  if (withoutFigure.has(method.by)) return `"${method.by}" carries no figure: the thread goes before torque does`;
  const sound = soundStages(stages);
  return isRefused(sound) ? sound.refused : undefined;
}

/** "40 N·m, +90°, with oil". */
export function methodWords(method: Method, units: Units): string {
  const stages = stagesOf(method);
  const how = stages.length > 0 && !withoutFigure.has(method.by) ? stagesText(stages, units) : manners[method.by];
  const pin = method.by === 'castle' && stages.length > 0 ? ', castle nut, new pin' : '';
  return `${how}${pin}${method.with === undefined ? '' : method.with === 'dry' ? ', dry' : `, with ${method.with}`}`;
}

const lever = ({ adapterLengthMm, angleDegrees = 0 }: Adapter): string =>
  `adapter ${figure(adapterLengthMm)} mm ${angleDegrees === 0 ? 'straight out' : `at ${figure(angleDegrees)}°`}`;
/** "set 35.6 N·m (adapter 50 mm straight out)": one figure for each torque stage. */
function settingWords(method: Method, adapter: Adapter, units: Units): string | undefined {
  const torques = stagesOf(method).flatMap((stage) => ('newtonMetres' in stage ? [stage.newtonMetres] : []));
  if (torques.length === 0 || withoutFigure.has(method.by)) return undefined;
  const set = torques.map((newtonMetres) => torqueSettingFromAdapter(newtonMetres, adapter));
  const wrong = set.find(isRefused);
  if (wrong) return wrong.refused;
  return `set the wrench to ${(set as number[]).map((one) => torqueFigure(Number(one.toFixed(1)), units)).join(', then ')} ${torqueUnitOf(units)}: ${lever(adapter)}`;
}

/** What sits there, as far as it is known, else what belongs there. */
export function specAt(ledger: Ledger, hole: Hole): Spec | undefined {
  const h = stateOf(ledger, 'hole', hole);
  const fastener = h?.called.occupant?.fastener;
  const known = fastener === undefined ? undefined : stateOf(ledger, 'fastener', fastener)?.spec;
  return h && { ...wantsOf(ledger, h), ...known };
}

const conditionOf = (method: Method) => (method.with === 'oil' ? ('lubricated' as const) : ('unknown' as const));
/** Why the torque stated for a fastener can hardly be right; undefined where it can, or where nothing can be told. */
function torqueDoubted(method: Method, spec: Spec | undefined): string | undefined {
  const torques = stagesOf(method).flatMap((stage) => ('newtonMetres' in stage ? [stage.newtonMetres] : []));
  const thread = spec?.thread === undefined ? refused('unknown') : threadNamed(spec.thread);
  if (torques.length === 0 || isAngle(method) || withoutFigure.has(method.by) || isRefused(thread)) return undefined;
  const judged = judgeTorque({
    thread,
    newtonMetres: Math.max(...torques),
    ...(spec?.class !== undefined && { class: spec.class }),
    by: method.by,
    ...(method.into && { into: method.into }),
    condition: conditionOf(method),
  });
  if (isRefused(judged) || !(judged.verdict === 'passes-proof-load' || judged.verdict === 'far-below'))
    return undefined;
  return judged.perhaps ? `${judged.because}; ${judged.perhaps}` : judged.because;
}

/** What is to be done at a hole, a line each: its method, what to set, what is doubtful. Empty where no method was said. */
export function tighteningWords(ledger: Ledger, hole: Hole, units: Units = metric): string[] {
  const method = methodFor(ledger, hole);
  if (!method) return [];
  const adapter = stateOf(ledger, 'hole', hole)?.declared?.adapter;
  const several = stagesOf(method).length > 1 && (stateOf(ledger, 'area', areaOf(hole))?.holes.length ?? 0) > 1;
  const setting = adapter && settingWords(method, adapter, units);
  const doubt = torqueDoubted(method, specAt(ledger, hole));
  return [
    `${methodWords(method, units)}${several ? '; one stage on all before the next' : ''}`,
    ...(setting ? [setting] : []),
    ...(doubt ? [doubt] : []),
  ];
}

const saysSo: ReadonlySet<Entry['kind']> = new Set([
  'area-declared',
  'hole-declared',
  'wants-stated',
  'fastener-found',
  'fastener-fitted',
  'spec-corrected',
]);
function doubtsIn(ledger: Ledger, area: string): Map<string, Hole> {
  const doubts = new Map<string, Hole>();
  for (const hole of stateOf(ledger, 'area', area)?.holes ?? []) {
    const method = methodFor(ledger, hole);
    const doubt = method && torqueDoubted(method, specAt(ledger, hole));
    if (doubt && !doubts.has(doubt)) doubts.set(doubt, hole);
  }
  return doubts;
}

/** What a call has made doubtful: a torque stated, or a fastener known, that do not go together. A line each. */
export function newlyDoubted(before: Ledger, after: Ledger, entries: readonly Entry[]): string[] {
  const keys = entries.filter(({ kind }) => saysSo.has(kind)).flatMap(touches);
  const areas = new Set(keys.flatMap((key) => areaOfKey(key) ?? []));
  const known = [...areas].flatMap((area) => {
    const had = doubtsIn(before, area);
    return [...doubtsIn(after, area)].filter(([doubt]) => !had.has(doubt));
  });
  const called = entries.flatMap((entry): [string, Hole][] => {
    if (entry.kind !== 'fastener-tightened' || !entry.method) return [];
    const doubt = torqueDoubted(entry.method, specAt(after, entry.hole));
    return doubt ? [[doubt, entry.hole]] : [];
  });
  const once = new Map([...known, ...called]);
  return [...once].map(([doubt, hole]) => `${subjectText(`hole:${hole}`)}: ${doubt}`);
}
function areaOfKey(key: string): string | undefined {
  if (key.startsWith('area:')) return key.slice('area:'.length);
  return key.startsWith('hole:') ? areaOf(key.slice('hole:'.length)) : undefined;
}

/** The torque that a method's last stage must come to, in words; undefined where it wants none. */
export function acceptanceOf(method: Method | undefined): string | undefined {
  const last = method?.stages?.at(-1);
  return last && 'acceptFromNewtonMetres' in last ? stagesText([last]) : undefined;
}
/** O4: what was read is far from the torque that its method ends in, in words; where it ends in an angle it tells nothing. */
export function readFarOff(method: Method | undefined, read: number): string | undefined {
  const last = method && !isAngle(method) && !withoutFigure.has(method.by) ? stagesOf(method).at(-1) : undefined;
  if (!last || !('newtonMetres' in last) || !isReadFarOff(read, last.newtonMetres)) return undefined;
  return `${figure(read)} N\u00b7m read where ${figure(last.newtonMetres)} N\u00b7m are wanted`;
}
/** Null where nothing is to be accepted. */
export const isReadingAccepted = (method: Method | undefined, newtonMetres: number): boolean | null =>
  isAccepted(method?.stages ?? [], newtonMetres);
