// The screens there are, in the order of a job.
export const screens = [
  'shelf',
  'services',
  'todo',
  'strip',
  'build',
  'findings',
  'rotation',
  'sealing',
  'box',
  'leaving',
  'log',
  'settings',
  'glance',
  'help',
] as const;
export type ScreenId = (typeof screens)[number];
