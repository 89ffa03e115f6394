// The long and the short job as files in the temporary folder, made once for the sources as they are. A bench works on
// a copy, in a data folder of its own.
import { createHash } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Line, readLine } from '../../src/job/line.ts';
import { linked } from '../../src/store/chain.ts';
import { headerLine, readJournal } from '../../src/store/journal.ts';
import { jobFileEnding } from '../../src/store/places.ts';
import { largeJob, type Size } from './large-job.ts';

export const root = fileURLToPath(new URL('../../', import.meta.url));
export const benchFolder = join(tmpdir(), `countback-bench-${process.getuid?.() ?? 0}`);

/** A job decided by other rules is another job. */
function sourcesDigest(): string {
  const digest = createHash('sha256');
  const job = join(root, 'src/job');
  const sources = readdirSync(job, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
  for (const name of sources.sort()) digest.update(name).update(readFileSync(join(job, name)));
  digest.update(readFileSync(fileURLToPath(new URL('./large-job.ts', import.meta.url))));
  return digest.digest('hex').slice(0, 16);
}

const jobBytes = (size: Size, name: string): Buffer => {
  let { bytes, reached } = headerLine(name);
  const all = [bytes];
  for (const line of largeJob(size)) {
    ({ bytes, reached } = linked(line, reached));
    all.push(bytes);
  }
  return Buffer.concat(all);
};

/** The file of a job of this size, made when it is not there yet. */
export function jobFile(name: string, size: Size): string {
  mkdirSync(benchFolder, { recursive: true });
  const path = join(benchFolder, `${name}-${sourcesDigest()}${jobFileEnding}`);
  if (existsSync(path)) return path;
  const part = `${path}.${process.pid}`;
  writeFileSync(part, jobBytes(size, name));
  renameSync(part, path);
  return path;
}

/** A new data folder that holds a copy of a job; it stays in the temporary folder. */
export function dataWith(name: string, size: Size): { data: string; job: string; path: string } {
  const source = jobFile(name, size);
  const data = mkdtempSync(join(benchFolder, 'data-'));
  mkdirSync(join(data, 'jobs'));
  const path = join(data, 'jobs', `${name}${jobFileEnding}`);
  copyFileSync(source, path);
  return { data, job: name, path };
}

/** The lines of that file. */
export const largeLines = (name: string, size: Size): readonly Line[] =>
  readJournal(readFileSync(jobFile(name, size)), name, readLine).lines;
