// What must come off, said for people: the sums side by side, the way out and the way back. One line of text each; how it
// is laid out on a screen is not decided here.

import { numbersText } from '../job/numbers-text.ts';
import { specText } from '../job/spec.ts';
import { type Hole, nameOf, numberOf, type Subject, sortOf, subjectText } from '../job/subjects.ts';
import type { BuildStep, Proof } from './build-order.ts';
import { numbersIn } from './holes-written.ts';
import type { Count, Need, Step } from './need.ts';
import type { Plan } from './plan.ts';
import { holeOfUnit, type Works } from './works.ts';

const many = (n: number, one: string, more = `${one}s`): string => `${n} ${n === 1 ? one : more}`;

/** "44 fasteners, 2 slackened, 13 parts, 7 connections"; "nothing" when there is none. */
export function countText({ fasteners, slack, parts, connections }: Count): string {
  const some = [
    fasteners > 0 && many(fasteners, 'fastener'),
    slack > 0 && `${slack} slackened`,
    parts > 0 && many(parts, 'part'),
    connections > 0 && many(connections, 'connection'),
  ].filter(Boolean);
  return some.length > 0 ? some.join(', ') : 'nothing';
}

/** "cam cover: 1-10; then cam cover away". */
export function stepText(works: Works, { at, units }: Step): string {
  const name = nameOf(at);
  if (sortOf(at) !== 'area') return sortOf(at) === 'connection' ? `${name} apart` : `${name} away`;
  const holes = units.filter((unit) => holeOfUnit(unit) !== undefined);
  const numbers = (some: readonly Subject[]) => numbersText(some.map((unit) => nameOf(unit).slice(name.length + 1)));
  const off = holes.filter((unit) => !works.slackOnly.has(unit));
  const slack = holes.filter((unit) => works.slackOnly.has(unit));
  const parts = units.filter((unit) => sortOf(unit) === 'part').map(nameOf);
  const said = [
    off.length > 0 && `off ${numbers(off)}`,
    slack.length > 0 && `slacken ${numbers(slack)}`,
    parts.length > 0 && `${parts.join(', ')} away`,
  ].filter(Boolean);
  return `${name}: ${said.join('; ')}`;
}

export function buildText(step: BuildStep): string {
  if (!('at' in step)) return proofText(step);
  const { at, units } = step;
  const name = nameOf(at);
  if (sortOf(at) !== 'area') return sortOf(at) === 'connection' ? `${name} made` : `${name} back`;
  const holes = units.flatMap((unit) => holeOfUnit(unit) ?? []);
  const parts = units.filter((unit) => sortOf(unit) === 'part').map(nameOf);
  const some = [
    parts.length > 0 && `${parts.join(', ')} back`,
    holes.length > 0 && many(holes.length, 'fastener'),
  ].filter(Boolean);
  return `${name}: ${some.join(', ')}`;
}

function proofText(proof: Proof): string {
  switch (proof.kind) {
    case 'companions':
      return `before ${proof.area} closes: ${proof.companions.join(', ')} seen`;
    case 'blind-holes-dry':
      return `before ${proof.area} closes: blind holes dry`;
    case 'direction':
      return `before ${proof.area} closes: direction or routing right`;
    case 'face':
      return `${proof.face}: clean${proof.beads > 0 ? `, ${many(proof.beads, 'bead')}` : ''}`;
    case 'rotation': {
      const first = proof.tightFirst.length > 0 ? `${holesText(proof.tightFirst)} tight, then ` : '';
      return `gate: ${first}check rotation of ${proof.drive}`;
    }
    case 'later':
      return proof.later === 'on-wheels'
        ? `on its wheels: ${holesText(proof.holes)} final`
        : `after turning: ${holesText(proof.holes)} final`;
    case 'fill':
      return `gate: fill ${proof.circuit}, when the label of its seal allows it`;
    case 'leak-check':
      return `gate: leak check of ${proof.circuit}`;
    case 'pedal':
      return 'gate: brake pedal firm before it moves';
    case 'road-test':
      return 'gate: road test';
    case 'second-look':
      return `gate: second look at ${holesText(proof.holes)}`;
  }
}
const holesText = (holes: readonly Hole[]): string =>
  [...Map.groupBy(holes, (hole) => hole.split('/')[0] as string)]
    .map(([area, some]) => `${area} ${numbersText(some.map((hole) => hole.slice(area.length + 1)))}`)
    .join(', ');

/** What to lay out before beginning: what is put in for the work, awkward holes' tools, what is bought new. */
export type Ready = { temporaries: string[]; tools: string[]; newParts: string[]; cautions: string[] };

export function readyFor(plan: Plan, services: readonly string[], need: Need): Ready {
  const holes = new Set([...need.whole].flatMap((unit) => holeOfUnit(unit) ?? []));
  const taken = plan.services.filter((s) => services.includes(s.service));
  const areas = new Set([...taken.flatMap((s) => s.areas), ...[...holes].map((hole) => hole.split('/')[0] as string)]);
  const about = (subject: Subject | undefined): boolean =>
    subject === undefined ||
    subject === 'vehicle' ||
    need.whole.has(subject) ||
    areas.has(nameOf(subject).split('/')[0] as string) ||
    taken.some((s) => s.also?.includes(subject));
  return {
    temporaries: (plan.temporaries ?? [])
      .filter((one) => (one.at ? about(one.at) : about(`temporary:${one.temporary}`)))
      .map((one) => (one.at && one.at !== 'vehicle' ? `${one.temporary}, ${subjectText(one.at)}` : one.temporary)),
    tools: plan.areas.flatMap(({ area, holes: groups }) =>
      groups.flatMap(({ tool, numbers }) => {
        const some = numbersIn(numbers).filter((number) => holes.has(`${area}/${number}`));
        return tool && some.length > 0
          ? [`${tool}: ${area} ${numbersText([...new Set(some.map((n) => numberOf(`/${n}`)))])}`]
          : [];
      }),
    ),
    newParts: (plan.newParts ?? [])
      .filter((one) => !one.services || one.services.some((s) => services.includes(s)))
      .map(({ name, quantity, spec }) => `${quantity} × ${name}${spec ? ` (${specText(spec)})` : ''}`),
    cautions: cautionsOnce((plan.cautions ?? []).filter((one) => about(one.at))),
  };
}

/** What is said of one place after the other, as of both sides, is said once, with the places. */
function cautionsOnce(cautions: NonNullable<Plan['cautions']>): string[] {
  const said = Map.groupBy(cautions, ({ words }) => words);
  return [...said].map(([words, all]) => {
    const places = [...new Set(all.flatMap(({ at }) => (at === undefined ? [] : nameOf(at))))];
    return places.length > 1 ? `${words} (${places.join(', ')})` : words;
  });
}
