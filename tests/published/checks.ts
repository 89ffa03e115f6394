// Every check against something published, topic by topic.
import { headChecks } from './heads.ts';
import { repair } from './repair.ts';
import { threads } from './threads.ts';
import { tightening } from './tightening.ts';
import { torque } from './torque.ts';
import { units } from './units.ts';

export const checks = [...units, ...threads, ...headChecks, ...torque, ...tightening, ...repair];
