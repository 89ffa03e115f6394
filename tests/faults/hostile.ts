// Files that somebody made to do harm: plans, jobs, settings, what is remembered of vehicles. No escape sequence reaches
// the terminal, nothing is written outside the data folder, no size hurts, and names of JavaScript's own do nothing.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { hash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeFirst, linked } from '../../src/store/chain.ts';
import { launcher } from '../terminal/at-the-bench.ts';
import { start } from '../terminal/bench-side.ts';
import { forged } from './bytes.ts';
import { type Row, type Size, trialsOf } from './row.ts';

const steering = '\u001b[31m\u001b]0;mine\u0007\u009b2J\u{202e}\u0000';
// Line breaks aside, and CR before LF as a table has it.
const steers = /[^\P{Cc}\n\r]|[\u{202A}-\u{202E}\u{2066}-\u{2069}]/u;
const ownNames = ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty'];
const waysOut = ['../../out', '/tmp/countback-out', '..\\out', 'a/../../../out', 'con', '.', '..', 'x\u0000y'];
const header = { countback: 'job', format: 0, job: 'van' };
const stamp = { atMs: 0, zoneMin: 0, run: 1, awakeMs: 0 };
const call = (n: number, ...entries: object[]) => ({ n, ...stamp, call: 'x', by: 'line', facing: {}, entries });
const off = (n: number, area: string) =>
  call(
    n,
    { kind: 'area-declared', area },
    { kind: 'fastener-found', hole: `${area}/1`, fastener: `f${n}.1`, spec: { kind: 'bolt', head: `hex ${area}` } },
    { kind: 'fastener-removed', hole: `${area}/1`, fastener: `f${n}.1`, to: `tray:${area}` },
  );
const plan = (name: string, more: object = {}) => ({
  countback: 'plan',
  version: 1,
  vehicle: name,
  services: [{ service: name, areas: [name] }],
  areas: [{ area: name, holes: [{ holes: '1-4', kind: 'bolt' }] }],
  ...more,
});
const deep = (many: number) => `${'['.repeat(many)}${']'.repeat(many)}`;

type Hostile = { name: string; put(bench: Around): void; args?: string[] };
type Around = { data: string; job: string; plan: string; settings: string; vehicles: string };
/** Of a size that no memory takes, and no disk either: a hole. */
const huge = (path: string, begin: string | Buffer): void => {
  writeFileSync(path, begin);
  truncateSync(path, 6_000_000_000);
};

function hostiles(): Hostile[] {
  const named = [steering, ...ownNames, ...waysOut];
  return [
    ...named.flatMap((name): Hostile[] => [
      {
        name: `a job of ${JSON.stringify(name)}`,
        put: ({ job }) => writeFileSync(job, forged({ ...header, job: name }, off(1, name))),
      },
      { name: `a plan of ${JSON.stringify(name)}`, put: (b) => writeFileSync(b.plan, JSON.stringify(plan(name))) },
      {
        name: `a new job named ${JSON.stringify(name)}`,
        put: () => undefined,
        args: ['take', name.replaceAll('\u0000', ''), '--new'],
      },
      {
        name: `settings with ${JSON.stringify(name)}`,
        put: ({ settings }) =>
          writeFileSync(
            settings,
            `{"name":${JSON.stringify(name)},"trays":[${JSON.stringify(name)}],${JSON.stringify(name)}:{"polluted":true}}`,
          ),
      },
      {
        name: `vehicles with ${JSON.stringify(name)}`,
        put: ({ vehicles }) =>
          writeFileSync(
            vehicles,
            `{"countback":"vehicles","vehicles":[{"label":${JSON.stringify(name)},"jobs":[]}],${JSON.stringify(name)}:{"polluted":true}}`,
          ),
      },
    ]),
    { name: 'a job of 6 GB', put: ({ job }) => huge(job, forged(header, off(1, 'cover'))) },
    { name: 'a plan of 6 GB', put: (b) => huge(b.plan, '{"countback":"plan"') },
    { name: 'settings of 6 GB', put: ({ settings }) => huge(settings, '{"name":"x"') },
    { name: 'vehicles of 6 GB', put: ({ vehicles }) => huge(vehicles, '{"countback":"vehicles"') },
    { name: 'settings 200,000 deep', put: ({ settings }) => writeFileSync(settings, `{"trays":${deep(200_000)}}`) },
    { name: 'vehicles 200,000 deep', put: ({ vehicles }) => writeFileSync(vehicles, `{"vehicles":${deep(200_000)}}`) },
    {
      name: 'a plan 200,000 deep',
      put: (b) => writeFileSync(b.plan, `{"countback":"plan","version":1,"areas":${deep(200_000)}}`),
    },
    {
      name: 'a job 100,000 deep',
      put: ({ job }) => writeFileSync(job, forgedText(`{"n":1,"entries":${deep(100_000)}}`)),
    },
    {
      name: 'a job with one line of 20 MB',
      put: ({ job }) =>
        writeFileSync(job, forged(header, call(1, { kind: 'note-made', words: 'x'.repeat(20_000_000) }))),
    },
  ];
}

/** A second line of any text, its link right. */
function forgedText(text: string): Buffer {
  const first = linked(header, beforeFirst);
  const raw = Buffer.from(`${text.slice(0, -1)},"link":"`);
  const digest = hash('sha256', Buffer.concat([first.reached.digest, raw]));
  return Buffer.concat([first.bytes, raw, Buffer.from(`${digest.slice(0, 16)}"}\n`)]);
}

const filesBelow = (folder: string): string[] => (readdirSync(folder, { recursive: true }) as string[]).sort();

function asked(args: readonly string[], { data, cwd, home }: { data: string; cwd: string; home: string }) {
  const env = { PATH: process.env.PATH, HOME: home, XDG_DATA_HOME: join(home, 'data'), COUNTBACK_DATA: data };
  return spawnSync(process.execPath, ['--max-old-space-size=512', launcher, ...args], {
    cwd,
    env,
    input: 'off 1\n',
    encoding: 'utf8',
    timeout: 60_000,
    maxBuffer: 64_000_000,
  });
}

export async function hostileFiles({ long }: Size): Promise<Row> {
  const trials = trialsOf('hostile plan, job, settings and vehicles files');
  const root = mkdtempSync(join(tmpdir(), 'countback-hostile-'));
  const told: string[] = [];
  try {
    for (const [i, { name, put, args }] of hostiles().entries()) {
      // The short form takes the sizes, and a few of the names.
      if (!long && i % 40 !== 0 && !/(job|settings).*(GB|deep)/.test(name)) continue;
      await trials.one(name, () => {
        const here = join(root, String(i));
        const [data, cwd, home] = [join(here, 'data'), join(here, 'cwd'), join(here, 'home')];
        for (const folder of [join(data, 'jobs'), cwd, home]) mkdirSync(folder, { recursive: true });
        const around: Around = {
          data,
          job: join(data, 'jobs', 'van.countback.jsonl'),
          plan: join(data, 'p.json'),
          settings: join(data, 'settings.json'),
          vehicles: join(data, 'vehicles.json'),
        };
        put(around);
        const outside = filesBelow(here).filter((file) => !file.startsWith('data'));
        const all = args
          ? [args]
          : name.includes('plan')
            ? [['plans', 'check', around.plan], ...(long ? [['plans', 'need', around.plan]] : [])]
            : name.includes('job')
              ? [
                  ['standing', 'van'],
                  ...(long
                    ? [
                        ['sheet', 'van'],
                        ['take', 'van'],
                      ]
                    : []),
                ]
              : name.includes('vehicles')
                ? [['vehicle', 'list']]
                : [['take', 'van', '--new']];
        for (const one of all) {
          const { status, signal, stdout, stderr } = asked(one, { data, cwd, home });
          const said = `${stdout}${stderr}`;
          if (told.length < 400) told.push(`${name}: ${one.join(' ')}: ${status} ${said.slice(0, 200)}`);
          equal(signal, null, `${one.join(' ')}: ended by ${signal}`);
          ok(
            status !== null && status < 64 && !/bug of the program/.test(said),
            `${one.join(' ')}: exit ${status}: ${said.slice(0, 300)}`,
          );
          ok(
            !steers.test(said),
            `${one.join(' ')}: what steers reached the terminal: ${JSON.stringify(said.slice(0, 300))}`,
          );
        }
        deepEqual(
          filesBelow(here).filter((file) => !file.startsWith('data')),
          outside,
        );
        deepEqual(
          readdirSync(root).sort(),
          readdirSync(root)
            .filter((file) => /^\d+$/.test(file))
            .sort(),
        );
        rmSync(here, { recursive: true, force: true });
      });
    }
    for (const name of long ? [steering, ...ownNames] : [steering])
      await trials.one(`a job of ${JSON.stringify(name)} on the screen`, async () => {
        const data = join(root, 'screen');
        mkdirSync(join(data, 'jobs'), { recursive: true });
        writeFileSync(
          join(data, 'jobs', 'van.countback.jsonl'),
          forged({ ...header, job: `van ${name}` }, off(1, `cover ${name}`)),
        );
        const bench = start(['open', 'van'], { dataDir: data });
        try {
          await bench.waitFor((frame) => /1 off/.test(frame[0] ?? ''));
          ok(!steers.test(bench.frame().join('\n')));
          for (const key of 'SBFRCPLJWHG?') bench.press(key, 'Escape');
          ok(bench.isRunning());
        } finally {
          await bench.close();
        }
      });
    equal(({} as { polluted?: unknown }).polluted, undefined);
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
  if (process.env.COUNTBACK_FAULTS_TOLD) process.stderr.write(`${told.join('\n')}\n`);
  return trials;
}
