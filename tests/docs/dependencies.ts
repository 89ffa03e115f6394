// Why each package is here. The versions are package.json's; a package without a reason fails the docs test.

export const whyEach: Readonly<Record<string, string>> = {
  ink: 'paints the screen; needs Node 22',
  react: 'what Ink is written for; used by the screen alone',
  zustand: 'the running job as a store that works without React',
  zod: 'reads what comes from outside: job files, plan files, settings, told values',
  lowdb: 'one way to read and write a job file, over a journal adapter of our own that appends and syncs',
  '@biomejs/biome': 'one tool for form and lint',
  '@lydell/node-pty': 'a real terminal for the tests, prebuilt',
  '@types/node': "types of Node's modules; 24, as vitest 5 wants",
  '@types/react': 'types of React',
  '@xterm/headless': 'reads what the program painted in that terminal',
  esbuild: 'makes the one bundle the program is started from',
  'fast-check': 'random call sequences that shrink to a short one when they fail',
  'html-validate': 'holds the page of the job sheet to the HTML standard, without a browser',
  'ink-testing-library': 'frames of single components',
  mathjs: 'units of its own making, held against ours',
  node: 'Node 24 for every npm script, whatever the machine has',
  psychrolib: 'vapour pressures by the ASHRAE handbook, held against ours',
  tsx: 'runs the TypeScript of the development scripts',
  typescript: 'the types',
  vitest: 'runs the tests',
};
