// Parts, the parts box, where the fasteners are, and what was lost, in words.
import type { Copy } from './area-text.ts';
import type { SheetFacts } from './facts.ts';
import type { LossFact, Verdict, Whereabouts } from './goods-facts.ts';
import { point } from './layout.ts';
import { regainedText } from './regained-facts.ts';
import { counted, timeText, why } from './words.ts';

/** What goes with a new part unless said is no judgement: it is not the owner's business. */
export const oldText = (old: Verdict | undefined, copy: Copy = 'workshop'): string =>
  old?.usual && copy === 'owner'
    ? ''
    : old
      ? `the old one: ${old.verdict}${old.because ? ` (${old.because})` : ''}${old.marking ? `, ${old.marking}` : ''}`
      : 'THE OLD ONE HAS NO VERDICT';

/** Out of the parts box by this name, where it says more than which part it is. */
export const boughtAs = ({ part, from }: SheetFacts['parts']['renewed'][number]): string =>
  from === `new ${part}` || from === part ? '' : from;

export const partsText = (facts: SheetFacts, copy: Copy): string[] => [
  ...facts.parts.renewed.flatMap((p) => {
    const old = oldText(p.old, copy);
    const from = boughtAs(p);
    return point(`new: ${p.part}${from && ` (${from})`}, ${timeText(p)}${old && `; ${old}`}`);
  }),
  ...goodsPoints(facts).flatMap(point),
];
/** What is no new part. */
export const goodsPoints = ({ parts, box, again }: SheetFacts): string[] => [
  ...(parts.refitted.length > 0 ? [`refitted: ${parts.refitted.map((p) => p.part).join(', ')}`] : []),
  ...parts.off.map((p) => `OFF: ${p.part}${p.old ? `; ${oldText(p.old)}` : ''}`),
  ...box.used.map((b) => `used up from the parts box: ${b.quantity} ${b.name}`),
  ...box.moved.map((b) => `out of the parts box to ${b.to}: ${b.quantity} ${b.name}${why(b.because)}`),
  ...(again.connections.length > 0 ? [`connections made again: ${again.connections.join(', ')}`] : []),
  ...(again.temporaries.length > 0 ? [`put in for the work and out again: ${again.temporaries.join(', ')}`] : []),
];

export const fastenersText = (facts: SheetFacts): string[] => fastenersPoints(facts).flatMap(point);
export function fastenersPoints({ fasteners: f }: SheetFacts): string[] {
  return [
    `${f.off} came off${sums(f.ofOff)}`,
    ...(f.slack > 0 ? [`${f.slack} only slackened: ${slackWords(f)}`] : []),
    ...(f.fresh > 0 ? [`${counted(f.fresh, 'new one')} from the parts box${sums(f.ofFresh)}`] : []),
    ...(f.given > 0 ? [`${counted(f.given, 'stray')} given to a hole${sums(f.ofGiven)}`] : []),
    ...f.condemned.map((one) => `not used again: ${one.what} (${one.because})`),
  ];
}
const slackWords = ({ slack, stillSlack }: SheetFacts['fasteners']): string =>
  stillSlack === 0
    ? 'tight again'
    : [...(slack > stillSlack ? [`${slack - stillSlack} tight again`] : []), `${stillSlack} NOT TIGHT`].join(', ');
function sums(where: Whereabouts): string {
  const all = Object.entries(where).map(([account, count]) => `${count} ${account}`);
  return all.length > 0 ? `: ${all.join(', ')}` : '';
}

export const lossPoints = ({ losses, regained, strange }: SheetFacts, copy: Copy): string[] => [
  ...losses.map(lossText),
  ...(copy === 'workshop' ? regained.map(regainedText) : []),
  ...strange.map(
    (s) => `${s.what}, found ${timeText(s.at)}: no part of this vehicle, stated by ${s.who}${why(s.because)}`,
  ),
];
export function lossText({ what, where, reaches, searched, ruledOut }: LossFact): string {
  const at = where ? ` at ${where}` : '';
  const works = reaches ? ', could reach the works' : '';
  const search = searched.length > 0 ? `; searched: ${searched.join(', ')}` : '';
  const end = ruledOut ? `; stated not to be in the vehicle by ${ruledOut.who}: ${ruledOut.because}` : '; STILL LOST';
  return `${what}, lost${at}${works}${search}${end}`;
}
