// plans need: what must come off for services, in what order and back, and what else is nearly free meanwhile.
import type { Subject } from '../job/subjects.ts';
import { type BuildStep, buildOrder } from '../plan/build-order.ts';
import { type Clash, mergePlans, type Source } from '../plan/merge.ts';
import { countOf, mustComeOff, type Need, needOf, stepsOf } from '../plan/need.ts';
import { buildText, countText, readyFor, stepText } from '../plan/need-words.ts';
import type { Plan } from '../plan/plan.ts';
import { type Works, worksOf } from '../plan/works.ts';
import type { Fault } from '../store/fault.ts';
import { perhaps } from '../trade/perhaps.ts';
import { exits, type Out, type Parsed } from './answer.ts';
import { readPlanFile } from './plan-file.ts';
import { plansAtHand } from './plans.ts';

export async function needForServices(
  named: readonly string[],
  args: Parsed,
  out: Out,
  packageRoot: URL,
): Promise<number> {
  const complain = (text: string): number => {
    out.complain(`countback: ${text}`);
    return exits.unreadable;
  };
  const sources = await sourcesFor(args, packageRoot);
  if ('why' in sources) return complain(sources.why);
  for (const one of sources.leftOut) complain(one.message);
  const chosen = chosenAmong(sources.all, named);
  if ('why' in chosen) return complain(chosen.why);
  const merged = mergePlans(chosen.sources);
  if (!merged.ok) {
    for (const clash of merged.clashes) complain(clashText(clash));
    return exits.unreadable;
  }
  const { plan } = merged;
  const said = needSaid(plan, chosen.services, args.lists.get('off') ?? []);
  if ('why' in said) return complain(said.why);
  out.write(args.flags.has('json') ? said.data() : said.text());
  return exits.fine;
}

/** What is printed for services of a plan with some places off; the documents print the same. */
export function needSaid(
  plan: Plan,
  services: readonly string[],
  offNames: readonly string[],
): { text(): string; data(): string } | { why: string } {
  const works = worksOf(plan);
  const off = offAmong(plan, works, offNames);
  if ('why' in off) return off;
  const need = needOf(works, plan, services, off.units);
  const build = buildOrder(plan, need.back);
  return {
    text: () => asText(plan, works, services, need, build, off.names),
    data: () => `${JSON.stringify(asData(works, services, need, build), null, 2)}\n`,
  };
}

const clashText = ({ what, places }: Clash): string => `${what}: ${places.join(' and ')}`;

/** The plans named, else those at hand. */
async function sourcesFor(
  args: Parsed,
  packageRoot: URL,
): Promise<{ all: readonly Source[]; leftOut: readonly Fault[] } | { why: string }> {
  const files = args.lists.get('plan');
  if (!files) {
    const { offers, faults } = plansAtHand(packageRoot);
    return { all: offers, leftOut: faults };
  }
  const all: Source[] = [];
  for (const file of files) {
    const read = readPlanFile(file);
    if (!read.ok) return { why: `${read.fault.where}: ${read.fault.what}; ${read.fault.next}` };
    all.push({ plan: read.plan, file });
  }
  return { all, leftOut: [] };
}

type Chosen = { sources: [Source, ...Source[]]; services: string[] };
/** A service by its name; "PLAN: SERVICE" where several plans have one of that name. */
function chosenAmong(all: readonly Source[], named: readonly string[]): Chosen | { why: string } {
  const sources = new Set<Source>();
  const services = new Set<string>();
  for (const name of named) {
    const [plan, service] = name.includes(':') ? name.split(/:\s*(.*)/s) : [undefined, name];
    const having = all.filter(
      (one) => (plan === undefined || one.plan.name === plan) && one.plan.services.some((s) => s.service === service),
    );
    const [first, second] = having;
    if (!first) {
      const known = all.flatMap((one) => one.plan.services.map((s) => s.service));
      return {
        why: `no plan has a service ${JSON.stringify(name)}${perhaps(service ?? name, known)}; "countback plans" lists them`,
      };
    }
    if (second) {
      const names = having.map((one) => JSON.stringify(`${one.plan.name}: ${service}`)).join(' or ');
      return { why: `several plans have a service ${JSON.stringify(service)}; write ${names}` };
    }
    sources.add(first);
    services.add(service as string);
  }
  return { sources: [...sources] as [Source, ...Source[]], services: [...services] };
}

/** What is off takes with it all that is in front of it. */
function offAmong(
  plan: Plan,
  works: Works,
  names: readonly string[],
): { units: Set<Subject>; names: readonly string[] } | { why: string } {
  const targets: Subject[] = [];
  for (const name of names) {
    const there = [`part:${name}`, `connection:${name}`].find((subject) => works.units.includes(subject));
    if (works.holes.has(name)) targets.push(`area:${name}`);
    else if (there) targets.push(there);
    else
      return { why: `${plan.name} has no area ${JSON.stringify(name)}; it has ${[...works.holes.keys()].join(', ')}` };
  }
  return { units: mustComeOff(works, targets), names };
}

function asData(works: Works, services: readonly string[], need: Need, build: readonly BuildStep[]) {
  return {
    services,
    together: countOf(works, need.whole),
    more: countOf(works, need.more),
    each: need.each,
    strip: need.order,
    build,
    needless: [...need.needless],
    nearby: need.nearby,
  };
}

function asText(
  plan: Plan,
  works: Works,
  services: readonly string[],
  need: Need,
  build: readonly BuildStep[],
  off: readonly string[],
): string {
  const isOff = off.length > 0;
  const indented = (lines: readonly string[]) => lines.map((line) => `    ${line}`);
  const counted = (lines: readonly string[]) => lines.map((line, i) => `${String(i + 1).padStart(4)}  ${line}`);
  const part = (head: string, lines: readonly string[]): string[] => (lines.length > 0 ? [head, ...lines, ''] : []);
  const { cautions, temporaries, tools, newParts } = readyFor(plan, services, need);
  const strip = need.order.filter((step) => !step.at.startsWith('rotation:'));
  return [
    `${services.join(' + ')}: ${countText(countOf(works, need.whole))}`,
    ...(isOff
      ? [`with ${off.join(', ')} off, and all in front of it: ${countText(countOf(works, need.more))} more`]
      : []),
    '',
    ...part(
      'each service:',
      indented(
        need.each.flatMap(({ service, alone, more, besides }) => [
          `${service}: ${countText(alone)}`,
          ...(isOff ? [`  with that off: ${countText(more)} more`] : []),
          ...(services.length > 1 ? [`  beside the others: ${countText(besides)} more`] : []),
        ]),
      ),
    ),
    ...part('cautions:', indented(cautions)),
    ...part('to have ready:', indented([...temporaries, ...tools])),
    ...part('new parts:', indented(newParts)),
    ...part('comes off, in this order:', counted(strip.map((step) => stepText(works, step)))),
    ...part('goes back, in this order:', counted(build.map((step) => buildText(step)))),
    ...part(
      'off, and needed by none of them:',
      indented(stepsOf(works, need.needless, plan.services).map((step) => stepText(works, step))),
    ),
    ...part(
      'while you are there:',
      indented(need.nearby.map(({ service, more }) => `${service}: ${countText(more)} more`)),
    ),
    "torque from the maker's manual of this vehicle; a plan is a starting point, never a maker's procedure",
    '',
  ].join('\n');
}
