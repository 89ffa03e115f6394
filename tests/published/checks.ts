// Every check against something published, topic by topic.
import { units } from './units.ts';

export const checks = [...units];
