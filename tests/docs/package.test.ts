// What `npm pack` would put into the package: all that the program needs to run, nothing else, and under 2 MB.
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));
type Packed = { size: number; files: { path: string }[] };

it('the package holds the program, its rule book, plans and demo jobs, and is under 2 MB', () => {
  const said = execFileSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], {
    cwd: root,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const [packed] = JSON.parse(said) as [Packed];
  const paths = packed.files.map(({ path }) => path);
  const bundled = readdirSync(`${root}dist`).filter((name) => name.endsWith('.js'));
  const plans = readdirSync(`${root}jobs`).map((name) => `jobs/${name}`);
  const demo = readdirSync(`${root}demo-data`).filter((name) => name.endsWith('.jsonl'));
  expect(paths.toSorted()).toEqual(
    [
      ...['README.md', 'package.json', 'src/launcher.js', 'src/job/RULES.md', 'dist/countback.js'],
      ...bundled.filter((name) => name !== 'countback.js').map((name) => `dist/${name}`),
      ...plans,
      ...demo.map((name) => `demo-data/${name}`),
    ].toSorted(),
  );
  expect(packed.size).toBeLessThan(2_000_000);
}, 30_000);

it('the bundle is ASCII throughout: one character beyond it, and Node keeps a whole file in twice the room', () => {
  const bundled = readdirSync(`${root}dist`).filter((name) => name.endsWith('.js'));
  expect(bundled).not.toEqual([]);
  const beyond = bundled.filter((name) => readFileSync(`${root}dist/${name}`).some((byte) => byte > 0x7f));
  expect(beyond).toEqual([]);
});
