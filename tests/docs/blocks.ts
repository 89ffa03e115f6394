// What the generated blocks of README.md and DEVELOPERS.md contain. A block stands between `<!-- made: NAME -->` and
// `<!-- /made -->`; to add one, add its maker here and the two markers where it belongs, then run `npm run docs`.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Bound, standardKeymap } from '../../src/calls/bindings.ts';
import { keypadPicture } from '../../src/calls/keypad-picture.ts';
import { usage } from '../../src/calls/line-reader.ts';
import { settingRows } from '../../src/calls/lists/settings.ts';
import { rows as calls } from '../../src/calls/table.ts';
import { needSaid } from '../../src/commands/plans-need.ts';
import { countOf, neededFor } from '../../src/plan/need.ts';
import { countText } from '../../src/plan/need-words.ts';
import { readPlan } from '../../src/plan/read-plan.ts';
import { worksOf } from '../../src/plan/works.ts';
import { standardHabits } from '../../src/session/habits.ts';
import { screens } from '../../src/view/screens.ts';
import { launcher, type Room, rooms } from '../boundaries/rooms.ts';
import { checks } from '../published/checks.ts';
import { rowsOf, totalsOf, worstText } from '../published/told.ts';
import { ruleBook, rulesIn } from '../rules/reading.ts';
import { whyEach } from './dependencies.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

export const documents = ['README.md', 'DEVELOPERS.md'] as const;

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ');

/** A table of Markdown; what stands in a cell cannot end it. */
export function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const row = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;
  return [row(heads), `|${heads.map(() => '---').join('|')}|`, ...rows.map(row)].join('\n');
}

function roomsBlock(): string {
  const mayImport = (room: Room): string => {
    const types = (room.oursForTypes ?? []).map((name) => `${name} (types)`);
    if (room.name === 'main.tsx') return 'all';
    return [...room.ours, ...types].join(', ') || '–';
  };
  return table(
    ['room', 'holds', 'may import (ours)', 'packages', 'pure'],
    rooms.map((room) => [
      `**${room.name}**`,
      room.holds,
      mayImport(room),
      room.packages.join(', ') || '–',
      room.pure ? 'yes' : '',
    ]),
  ).concat(`\n\nBeside them \`src/${launcher}\` finds a Node that is new enough and starts the bundle.`);
}

function settingsBlock(): string {
  const shown = settingRows({ ...standardHabits, speaking: false });
  return table(
    ['setting', 'as it comes', 'Enter', 'what it means'],
    shown.map(({ name, text, end = '', more }) => [name, text, end.replace('Enter: ', ''), String(more)]),
  );
}

function rulesBlock(): string {
  const rules = rulesIn(ruleBook());
  const families = [...new Set(rules.map((rule) => rule.family))];
  return table(
    ['family', 'rules'],
    families.map((family) => {
      const own = rules.filter((rule) => rule.family === family).map((rule) => rule.number);
      return [family, own.join(' ')];
    }),
  );
}

function dependenciesBlock(): string {
  const { dependencies, devDependencies } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
  const rowsOf = (wanted: Record<string, string>, place: string): string[][] =>
    Object.entries(wanted).map(([name, version]) => [name, version, place, whyEach[name] ?? '']);
  return table(
    ['package', 'version', 'in', 'why'],
    [...rowsOf(dependencies, 'the program'), ...rowsOf(devDependencies, 'development')],
  );
}

/** Every call as it is typed, group by group. */
function callsBlock(): string {
  return [...Map.groupBy(calls, (row) => row.group)]
    .filter(([group]) => group !== 'the screen')
    .map(([group, rows]) => {
      const lines = rows.map((row) => [`\`${usage(row)}\``, row.words.slice(1).join(', ') || '–', row.help]);
      return `**${group}**\n\n${table(['line', 'or', 'what it says'], lines)}`;
    })
    .join('\n\n');
}

/** By a binding that holds anywhere, or one of its own on every screen. */
const isEverywhere = ({ row, binding }: Bound): boolean =>
  binding.on === 'any' ||
  screens.every((screen) =>
    standardKeymap.keysOn(screen).some((b) => b.row.id === row.id && b.binding.key === binding.key),
  );

/** Every key, screen by screen. */
function keysBlock(): string {
  return table(
    ['screen', 'keys'],
    screens.map((screen) => {
      const own = standardKeymap.keysOn(screen).filter((bound) => !isEverywhere(bound));
      const byRow = Map.groupBy(own, ({ row }) => row);
      const said = [...byRow].map(
        ([row, bound]) => `\`${bound.map(({ binding }) => binding.key).join(' ')}\` ${row.label}`,
      );
      return [screen, said.join(' · ') || 'those of the screen it was called from'];
    }),
  ).concat(
    `\n\nEverywhere: ${[...Map.groupBy(standardKeymap.keysOn('strip').filter(isEverywhere), ({ row }) => row)]
      .map(([row, bound]) => `\`${bound.map(({ binding }) => binding.key).join(' ')}\` ${row.label}`)
      .join(' · ')}.`,
  );
}

/** What the computations of the trade are held to, from the checks themselves. */
function publishedBlock(): string {
  const { checks: all, pairs, sources, seen, derived, practice } = totalsOf(checks);
  return table(
    ['topic', 'source', 'functions', 'checks', 'worst deviation'],
    rowsOf(checks).map(({ topic, source, functions, checks: held, worst }) => [
      topic,
      source,
      String(functions),
      String(held),
      worstText(worst),
    ]),
  ).concat(
    `\n\n${all} checks of ${pairs} pairs of function and source, ${sources} sources: ${seen} against prints that were read, ${derived} recomputed from definitions, formulas or another implementation, ${practice} against common practice.`,
  );
}

/** Every shipped plan's services: what each takes off alone, and what it adds beside the others of its plan. */
function plansBlock(): string {
  const folder = `${root}jobs/`;
  const files = readdirSync(folder).filter((name) => name.endsWith('.json'));
  const rows = files.toSorted().flatMap((file) => {
    const read = readPlan(readFileSync(`${folder}${file}`, 'utf8'), file);
    if (!read.ok) throw new Error(read.fault.what);
    const { plan } = read;
    const works = worksOf(plan);
    return plan.services.map((service) => {
      const others = neededFor(
        works,
        plan.services.filter((one) => one !== service),
      );
      const alone = neededFor(works, [service]);
      const more = new Set([...alone].filter((unit) => !others.has(unit)));
      const beside = plan.services.length === 1 ? '–' : more.size === 0 ? 'nothing' : countText(countOf(works, more));
      return [plan.name, service.service, countText(countOf(works, alone)), beside];
    });
  });
  return table(['plan', 'service', 'comes off', 'more than for the others'], rows);
}

/** The sums of belt, pump and cover as the program prints them; its lists of what comes off and goes back follow there. */
function needBlock(): string {
  const file = 'inline-four-belt-service.json';
  const read = readPlan(readFileSync(`${root}jobs/${file}`, 'utf8'), file);
  if (!read.ok) throw new Error(read.fault.what);
  const printed = (services: readonly string[], off: readonly string[]): string => {
    const said = needSaid(read.plan, services, off);
    if ('why' in said) throw new Error(said.why);
    const words = [...services, ...off.flatMap((one) => ['--off', one])];
    const quoted = words.map((word) => (word.includes(' ') ? `"${word}"` : word)).join(' ');
    return `$ countback plans need ${quoted}\n${said
      .text()
      .split(/^(?:cautions|to have ready):$/m)[0]
      ?.trimEnd()}`;
  };
  const three = printed(['timing belt', 'coolant pump', 'cam cover gasket'], []);
  return ['```text', three, '', printed(['coolant pump'], ['lower belt cover']), '```'].join('\n');
}

/** One maker a block. */
export const blocks: Readonly<Record<string, () => string>> = {
  rooms: roomsBlock,
  calls: callsBlock,
  keys: keysBlock,
  plans: plansBlock,
  need: needBlock,
  settings: settingsBlock,
  keypad: () => ['```text', keypadPicture('strip').trimEnd(), '```'].join('\n'),
  rules: rulesBlock,
  dependencies: dependenciesBlock,
  published: publishedBlock,
};
