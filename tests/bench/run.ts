// `npm run bench [-- NAME …] [--json]`: measurements printed, never asserted: this machine is not the next one. Each bench
// gives its figures, every one beside its baseline in the same run.
import { execFileSync } from 'node:child_process';
import { cpus } from 'node:os';
import { coreTime } from './core.ts';
import { type Figure, figureText } from './figure.ts';
import { root } from './job-file.ts';
import { keysForEachThing } from './key-count.ts';
import { keyTime } from './keys.ts';
import { mapTime } from './map.ts';
import { mergeTime } from './plans.ts';
import { openingTime, startTime } from './start-time.ts';
import { straysPlaced } from './strays.ts';
import { jobSpoken, noiseAlone, voiceHeard } from './voice.ts';
import { wrongBoltsSeen } from './wrong-bolts-seen.ts';

const benches: Readonly<Record<string, () => Promise<Figure[]>>> = {
  start: startTime,
  keys: keysForEachThing,
  press: keyTime,
  map: mapTime,
  opening: openingTime,
  core: coreTime,
  plans: mergeTime,
  suspicion: wrongBoltsSeen,
  strays: straysPlaced,
  voice: voiceHeard,
  'voice-job': jobSpoken,
  noise: noiseAlone,
};

/** So long that they run only when they are named. */
const onlyWhenNamed = new Set(['voice', 'voice-job', 'noise']);

const options = process.argv.slice(2).filter((word) => word.startsWith('-'));
const wanted = process.argv.slice(2).filter((word) => !word.startsWith('-'));
const unknown = [...wanted.filter((name) => !(name in benches)), ...options.filter((option) => option !== '--json')];
const asJson = options.includes('--json');

function commit(): string {
  const git = (...args: string[]) => execFileSync('git', args, { cwd: root, encoding: 'utf8' }).trim();
  try {
    return `${git('rev-parse', '--short', 'HEAD')}${git('status', '--porcelain', 'src') === '' ? '' : ' and changes'}`;
  } catch {
    return 'unknown';
  }
}
const where = {
  commit: commit(),
  machine: `${cpus().length} x ${cpus()[0]?.model ?? 'unknown'}, ${process.platform}`,
  node: process.versions.node,
};

if (unknown.length > 0) {
  process.stderr.write(`no bench is called ${unknown.join(', ')}; there are ${Object.keys(benches).join(', ')}\n`);
  process.exitCode = 64;
} else {
  if (!asJson) process.stdout.write(`${where.commit}, ${where.machine}, Node ${where.node}\n`);
  const figures: Record<string, Figure[]> = {};
  for (const [name, bench] of Object.entries(benches)) {
    if (wanted.length > 0 ? !wanted.includes(name) : onlyWhenNamed.has(name)) continue;
    figures[name] = await bench();
    if (!asJson) process.stdout.write(`${name}\n${figures[name].map((f) => `  ${figureText(f)}\n`).join('')}`);
  }
  if (asJson) process.stdout.write(`${JSON.stringify({ ...where, figures }, null, 2)}\n`);
}
