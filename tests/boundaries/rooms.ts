// The rooms of src/ and what each may import, as data. The boundaries test holds every import to it, and the map of
// the rooms in DEVELOPERS.md is made from it. It says what is allowed, not how it is found out.

export type Room = {
  name: string;
  holds: string;
  /** Rooms of ours it may import. */
  ours: readonly string[];
  /** Rooms of ours it may take types from, and nothing else. */
  oursForTypes?: readonly string[];
  /** Packages with all their subpaths; a subpath alone allows only that one; `node` is Node's own modules. */
  packages: readonly string[];
  /** No clock, no chance, no process, no machine: the same inputs give the same outputs, for ever. */
  pure: boolean;
  /** The one room where JSX, ink and react live. */
  draws?: true;
};

export const rooms: readonly Room[] = [
  {
    name: 'trade',
    holds: 'computations and cited tables; no job, nothing read or written',
    ours: [],
    packages: [],
    pure: true,
  },
  {
    name: 'job',
    holds:
      'the nouns, the entries of the log, what may be called and what it writes, the standing ledger, gates, order, findings, stray ranking, the rule book',
    ours: ['trade'],
    packages: ['zod'],
    pure: true,
  },
  {
    name: 'plan',
    holds: 'plan files: their shape, the reader, merging services, what must come off',
    ours: ['trade', 'job'],
    packages: ['zod'],
    pure: true,
  },
  {
    name: 'view',
    holds: 'which screen, where the cursor is, what is being typed: a plain reducer, no React',
    ours: [],
    oursForTypes: ['job'],
    packages: [],
    pure: true,
  },
  {
    name: 'calls',
    holds: 'THE table of calls: keys, words, help, when it is refused and why, what it writes',
    ours: ['trade', 'job', 'plan', 'view'],
    packages: ['zod'],
    pure: true,
  },
  {
    name: 'store',
    holds: 'job files, lock, settings, directories',
    ours: ['trade', 'job', 'plan'],
    packages: ['zod', 'lowdb', 'node'],
    pure: false,
  },
  {
    name: 'session',
    holds: 'the running job: what is open, and one way to run a call on it',
    ours: ['trade', 'job', 'plan', 'view', 'calls', 'store'],
    packages: ['zustand/vanilla'],
    pure: false,
  },
  {
    name: 'voice',
    holds: 'recogniser and speech as outside programs',
    ours: ['calls'],
    packages: ['node'],
    pure: false,
  },
  {
    name: 'sheet',
    holds: 'the job sheet: page, table, text',
    ours: ['trade', 'job', 'plan'],
    packages: [],
    pure: false,
  },
  {
    name: 'screen',
    holds: 'what is painted and the keyboard; ONE component owns the keys',
    ours: ['trade', 'job', 'plan', 'view', 'calls', 'session', 'voice', 'sheet'],
    packages: ['ink', 'react', 'zustand', 'get-east-asian-width'],
    pure: false,
    draws: true,
  },
  {
    name: 'commands',
    holds: 'the commands of the command line, a module each; they answer in text and exit codes',
    ours: ['trade', 'job', 'plan', 'view', 'calls', 'store', 'session', 'voice', 'sheet'],
    packages: ['node'],
    pure: false,
  },
  {
    name: 'main.tsx',
    holds: 'the command line; the only module that does anything on import',
    ours: ['trade', 'job', 'plan', 'view', 'calls', 'store', 'session', 'voice', 'sheet', 'screen', 'commands'],
    packages: ['node'],
    pure: false,
  },
];

/** Starts the program and is no part of it: plain JavaScript, read by Nodes too old for the rest. */
export const launcher = 'launcher.js';

/** The top level of the repository, files beginning with a dot apart. */
export const topLevel: readonly string[] = [
  'README.md',
  'DEVELOPERS.md',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'src',
  'jobs',
  'tests',
  'demo-data',
];

/** Made by npm and the build, never committed. */
export const madeLocally: readonly string[] = ['node_modules', 'dist'];
