// Every check against something published, topic by topic.
import { belt } from './belt.ts';
import { cure } from './cure.ts';
import { headChecks } from './heads.ts';
import { intervals } from './intervals.ts';
import { repair } from './repair.ts';
import { threads } from './threads.ts';
import { tightening } from './tightening.ts';
import { torque } from './torque.ts';
import { units } from './units.ts';

export const checks = [
  ...units,
  ...threads,
  ...headChecks,
  ...torque,
  ...tightening,
  ...repair,
  ...cure,
  ...belt,
  ...intervals,
];
