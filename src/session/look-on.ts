// A job that another program writes, only looked at: each line of it as it comes.
import type { StoreApi } from 'zustand/vanilla';
import { lastLine } from '../job/ledger.ts';
import type { Line } from '../job/line.ts';
import { appendLine } from '../job/log.ts';
import type { OpenJob } from '../store/open-job.ts';
import { lastFaced } from './faced.ts';
import type { SessionState } from './session-shape.ts';

/** @returns what ends it; nothing where the job is worked on here */
export function lookOn(
  job: OpenJob<Line>,
  store: StoreApi<SessionState>,
  failed: (why: string) => void,
): (() => void) | undefined {
  if (job.mode !== 'look') return undefined;
  return job.onLine({
    line: (line) =>
      store.setState((s) => ({
        ledger: appendLine(s.ledger, line),
        savedTo: line.n,
        // Whoever looks on where work is goes along with it.
        ...(lastLine(s.ledger)?.facing.area === s.facing.area && { facing: { ...s.facing, ...lastFaced([line]) } }),
      })),
    fault: (fault) => failed(fault.message),
  });
}
