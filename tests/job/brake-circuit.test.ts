// A brake's own circuit: what of it is asked, what it hangs on, and that nothing of the engine is proposed for it.
import { expect, it } from 'vitest';
import { openPointsWithNext } from '../../src/job/next-call.ts';
import { notAsked } from '../../src/job/not-asked.ts';
import { pistonsNote } from '../../src/job/pistons-noted.ts';
import { bench } from './bench.ts';

const circuit = { kind: 'circuit-declared', circuit: 'brakes', fluid: 'brake fluid' } as const;
function hoseBack() {
  const on = bench();
  on.off('brake hose/1', { kind: 'bolt', head: 'hex 13' });
  on.declare(circuit);
  return on;
}
const fluids = (on: ReturnType<typeof bench>) => notAsked(on.ledger()).find(({ what }) => what.startsWith('fluids'));

it('[X1] says what a circuit hangs on that was declared and nothing was opened of', () => {
  const on = hoseBack();
  expect(fluids(on)?.because).toBe('no connection or face of brakes was opened');
  on.declare({ kind: 'connection-declared', connection: 'hose', area: 'brake hose', circuit: 'brakes' });
  on.call('part-connection', { connection: 'hose' });
  expect(fluids(on)).toBeUndefined();
});
it('[T5] proposes the check under pressure for it, and no oil level', () => {
  const on = hoseBack();
  on.declare({ kind: 'connection-declared', connection: 'hose', area: 'brake hose', circuit: 'brakes' });
  on.call('part-connection', { connection: 'hose' });
  on.call('make-connection', { connection: 'hose' });
  const next = openPointsWithNext(on.ledger(), on.now()).map((p) => [p.code, p.next?.verb]);
  expect(next).toContainEqual(['circuit-unchecked', 'check-leaks']);
  expect(next.map(([, verb]) => verb)).not.toContain('see-oil-level');
});

it('[T7] minds with the pedal of the level in the reservoir, once after pistons were pushed back', () => {
  const on = bench();
  const minds = () => on.decided('pedal-firm').warnings ?? [];
  expect(minds()).toEqual([]);
  on.call('note', { words: pistonsNote('left caliper') });
  expect(minds().join()).toContain('look whether the brake fluid stands between its marks');
  on.call('pedal-firm');
  expect(minds()).toEqual([]);
});
