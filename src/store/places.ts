// Where things lie: the data folder by the platform's convention, the jobs in it, and which file a job's name or a path
// means. A name never leads out of the folder of jobs; a path is taken as it is.
import { homedir } from 'node:os';
import path from 'node:path';
import { plainText } from '../trade/plain-text.ts';
import { type Fault, fault } from './fault.ts';
import { longestJobName } from './journal.ts';

export type Places = { data: string; jobs: string; settings: string; vehicles: string };

export const jobFileEnding = '.countback.jsonl';
/** As a command takes it: without folder and ending. */
export const fileNameOf = (file: string): string => path.basename(file, jobFileEnding);

export type Machine = { env: Record<string, string | undefined>; platform: string; home: string };

export const thisMachine = (): Machine => ({ env: process.env, platform: process.platform, home: homedir() });

/** `COUNTBACK_DATA` before anything else. */
export function placesOn({ env, platform, home }: Machine): Places {
  const { join, resolve, isAbsolute } = platform === 'win32' ? path.win32 : path.posix;
  // The XDG Base Directory Specification 0.8: a path that is not absolute is to be ignored.
  const absolute = (folder: string | undefined) => (folder && isAbsolute(folder) ? folder : undefined);
  const conventional = () => {
    if (platform === 'win32') return absolute(env.APPDATA) ?? join(home, 'AppData', 'Roaming');
    if (platform === 'darwin') return join(home, 'Library', 'Application Support');
    return absolute(env.XDG_DATA_HOME) ?? join(home, '.local', 'share');
  };
  const data = env.COUNTBACK_DATA ? resolve(env.COUNTBACK_DATA) : join(conventional(), 'countback');
  return {
    data,
    jobs: join(data, 'jobs'),
    settings: join(data, 'settings.json'),
    vehicles: join(data, 'vehicles.json'),
  };
}

// Windows opens devices under these names, whatever ending they have.
const deviceNames = /^(?:con|prn|aux|nul|com\d|lpt\d)$/;

/** The name of the file for a job's name; empty when nothing of the name can be in one. */
export function slugOf(name: string): string {
  const slug = plainText(name)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  const short = [...slug].slice(0, longestJobName).join('').replace(/-+$/, '');
  return deviceNames.test(short) ? `job-${short}` : short;
}

/** Whether what stands where a job is named is a path and not a name. */
export const isPath = (named: string) => /[/\\]/.test(named) || named.endsWith('.jsonl');

export type JobPlace = { path: string /** for the header of a new job */; job: string };

/** The file that a job's name or a path means. */
export function jobPlace(places: Places, named: string): JobPlace | Fault {
  const shown = plainText(named).trim() === '' ? '""' : named;
  const bad = (what: string) =>
    fault('bad-name', what, shown, `name the job in up to ${longestJobName} letters and figures, or give a path`);
  if (named.includes('\0')) return bad('a path cannot hold this');
  if (isPath(named)) {
    const job = plainText(path.basename(named, jobFileEnding), longestJobName).trim();
    return job === '' ? bad('this is no job') : { path: path.resolve(named), job };
  }
  const job = plainText(named).trim();
  if ([...job].length > longestJobName) return bad('the name of the job is too long');
  const slug = slugOf(job);
  return slug === ''
    ? bad('this is no name for a job')
    : { path: path.join(places.jobs, `${slug}${jobFileEnding}`), job };
}
