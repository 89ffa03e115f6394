// `npm run bench`: measurements printed for a person, never asserted: this machine is not the next one. Each bench is
// one function that returns its lines; `npm run bench -- NAME` runs only that one.
import { startTime } from './start-time.ts';

const benches: Readonly<Record<string, () => string[]>> = {
  'start-time': startTime,
};

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !(name in benches));
if (unknown.length > 0) {
  process.stderr.write(`no bench is called ${unknown.join(', ')}; there are ${Object.keys(benches).join(', ')}\n`);
  process.exitCode = 64;
} else {
  for (const [name, bench] of Object.entries(benches)) {
    if (wanted.length > 0 && !wanted.includes(name)) continue;
    process.stdout.write(
      `${name}\n${bench()
        .map((line) => `  ${line}\n`)
        .join('')}`,
    );
  }
}
