// The launcher in packages and checkouts of its own: an old Node, a bundle that is missing or behind the sources.
import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, readFile, rm, symlink, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));
const oldNode = `data:text/javascript,Object.defineProperty(process,"versions",{value:{...process.versions,node:"20.1.0"}})`;

type Ended = { exit: number; out: string; complaint: string };

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'launcher-'));
  await mkdir(join(folder, 'src'));
  await cp(join(root, 'src/launcher.js'), join(folder, 'src/launcher.js'));
  await writeFile(join(folder, 'package.json'), '{ "type": "module" }');
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const launch = (options: string[] = [], args: string[] = []): Promise<Ended> =>
  new Promise((resolve) => {
    const { NODE_ENV: _, ...env } = process.env;
    execFile(
      process.execPath,
      [...options, join(folder, 'src/launcher.js'), ...args],
      { env },
      (fault, out, complaint) => {
        resolve({ exit: typeof fault?.code === 'number' ? fault.code : 0, out, complaint });
      },
    );
  });

const bundleSaying = async (source: string): Promise<void> => {
  await mkdir(join(folder, 'dist'), { recursive: true });
  await writeFile(join(folder, 'dist/countback.js'), source);
};

const asCheckout = async (main: string): Promise<void> => {
  await cp(join(root, '.build'), join(folder, '.build'), { recursive: true });
  await symlink(join(root, 'node_modules'), join(folder, 'node_modules'));
  // The bundle puts it in place of what the language has, whatever is built.
  await cp(join(root, 'src/screen/graphemes.ts'), join(folder, 'src/screen/graphemes.ts'));
  await writeFile(join(folder, 'src/main.tsx'), main);
};

describe('the launcher in a package', () => {
  it('starts the bundle with the arguments, for production', async () => {
    await bundleSaying('console.log(process.env.NODE_ENV, process.argv.slice(2).join());');
    expect(await launch([], ['take', 'a job'])).toEqual({ exit: 0, out: 'production take,a job\n', complaint: '' });
  });

  it('says what to do when the bundle is missing', async () => {
    const { exit, complaint } = await launch();
    expect(complaint).toMatch(/dist\/countback\.js is missing; install the package again\n$/);
    expect(exit).toBe(69);
  });

  it('says what to do on an old Node', async () => {
    await bundleSaying('console.log("started");');
    const { exit, out, complaint } = await launch(['--import', oldNode]);
    expect(complaint).toMatch(/^countback: this is Node 20\.1\.0; Node 22\.12 or newer is needed\. .*npm ci.*\n$/);
    expect({ exit, out }).toEqual({ exit: 69, out: '' });
  });
});

describe('the launcher in a checkout', () => {
  it('goes on with the Node of the checkout when its own is old, and ends as that one ends', async () => {
    await asCheckout('process.stdout.write(process.versions.node + process.argv[2]); process.exitCode = 7;');
    const { exit, out, complaint } = await launch(['--import', oldNode], ['!']);
    expect({ exit, complaint }).toEqual({ exit: 7, complaint: '' });
    expect(out).toMatch(/^2[4-9]\.\d+\.\d+!$/);
  });

  it('builds the bundle when it is missing, and again when a source is newer, and not otherwise', async () => {
    await asCheckout('console.log("first");');
    expect((await launch()).out).toBe('first\n');

    await writeFile(join(folder, 'src/main.tsx'), 'console.log("second");');
    const later = new Date(Date.now() + 5000);
    await utimes(join(folder, 'src/main.tsx'), later, later);
    expect((await launch()).out).toBe('second\n');

    const built = join(folder, 'dist/countback.js');
    await writeFile(built, (await readFile(built, 'utf8')).replace('second', 'kept'));
    await utimes(built, later, later);
    expect((await launch()).out).toBe('kept\n');
  });

  it('says what to do when it cannot build', async () => {
    await asCheckout('console.log(');
    const { exit, out, complaint } = await launch();
    expect({ exit, out }).toEqual({ exit: 69, out: '' });
    expect(complaint).toMatch(/countback: the program could not be built \(.*\); run "npm ci" in /);
  });
});
