// What of a job is worth remembering when its vehicle comes again, and how that is told. Plain values; where they are
// kept is the store's.
import { dateText } from '../trade/civil-time.ts';
import { stepText } from './area-text.ts';
import type { SheetFacts } from './facts.ts';
import { counted, distanceText } from './words.ts';

type Known = { place: string; what: string };
export type JobMemory = {
  job: string;
  openedMs: number;
  day: string;
  standing: 'here' | 'released' | 'left';
  odometer?: { distance: number; unit: 'km' | 'mi' };
  services: { service: string; state: string }[];
  findings: (Known & { closed?: string })[];
  substitutes: Known[];
  threads: Known[];
  due: { what: string; on?: string; atDistance?: number }[];
};

/** Nothing where no vehicle was named. */
export function memoryOf(job: string, facts: SheetFacts): JobMemory | undefined {
  const { opened, vehicle, standing, services, findings, areas, due } = facts;
  if (!opened) return undefined;
  const holes = areas.flatMap((a) => a.holes.map((h) => ({ place: `${a.area} ${h.number}`, h })));
  return {
    job,
    openedMs: opened.atMs,
    day: dateText(opened.atMs, opened.zoneMin),
    standing: standing.state,
    ...(vehicle.odometer && { odometer: vehicle.odometer }),
    services: services.map(({ service, state }) => ({ service, state })),
    findings: findings.map(({ place, what, closed }) => ({ place, what, ...(closed && { closed: closed.how }) })),
    substitutes: holes.flatMap(({ place, h }) =>
      h.substitute ? [{ place, what: `${h.holds ?? 'another'} where ${h.substitute.wanted} is wanted` }] : [],
    ),
    threads: holes.flatMap(({ place, h }) =>
      h.repair.length > 0 ? [{ place, what: h.repair.map(stepText).join(', ').slice(0, 600) }] : [],
    ),
    due: [...due],
  };
}

/** In a few lines, for the moment in which the vehicle comes again. What was put right is no news. */
export function remindersOf(jobs: readonly JobMemory[]): string[] {
  const last = jobs.at(-1);
  if (!last) return [];
  const at = last.odometer ? ` at ${distanceText(last.odometer.distance, last.odometer.unit)}` : '';
  const left = jobs.flatMap((j) => j.findings.filter((f) => f.closed !== 'put right'));
  const all = (pick: (job: JobMemory) => readonly Known[]) => jobs.flatMap(pick).map((k) => `${k.place} (${k.what})`);
  const told = (name: string, some: readonly string[]) => (some.length > 0 ? [`${name}: ${some.join('; ')}`] : []);
  return [
    `here before, ${counted(jobs.length, 'job')}, the last "${last.job}" of ${last.day}${at}`,
    ...told(
      'left as it was',
      left.map((f) => `${f.place}: ${f.what} (${f.closed ?? 'open'})`),
    ),
    ...told(
      'substitutes fitted',
      all((j) => j.substitutes),
    ),
    ...told(
      'threads repaired',
      all((j) => j.threads),
    ),
    ...told(
      'due',
      jobs.flatMap((j) => j.due.map((d) => dueText(d, j.odometer?.unit ?? 'km'))),
    ),
  ];
}

function dueText({ what, on, atDistance }: JobMemory['due'][number], unit: string): string {
  const when = [...(on ? [on] : []), ...(atDistance === undefined ? [] : [`at ${distanceText(atDistance, unit)}`])];
  return when.length > 0 ? `${what} ${when.join(' or ')}` : what;
}

/** All that is remembered of one job. */
export function memoryText(j: JobMemory): string[] {
  const at = j.odometer ? `, ${distanceText(j.odometer.distance, j.odometer.unit)}` : '';
  const standing = { here: 'not released', released: 'released', left: 'left unreleased' }[j.standing];
  return [
    `${j.day}  "${j.job}", ${standing}${at}`,
    ...j.services.map((s) => `  service: ${s.service}, ${s.state}`),
    ...j.findings.map((f) => `  finding: ${f.place}: ${f.what}, ${f.closed ?? 'OPEN'}`),
    ...j.substitutes.map((s) => `  substitute: ${s.place}: ${s.what}`),
    ...j.threads.map((t) => `  thread repaired: ${t.place}: ${t.what}`),
    ...j.due.map((d) => `  due: ${dueText(d, j.odometer?.unit ?? 'km')}`),
  ];
}
