// What a release does not ask on this job: the figures that nobody said.
import { expect, it } from 'vitest';
import { notAsked } from '../../src/job/not-asked.ts';
import { bench, m8 } from './bench.ts';

const figures = (on: ReturnType<typeof bench>) =>
  notAsked(on.ledger()).find(({ what }) => what === 'torque figures')?.because;
const clamp = { kind: 'clamp', head: 'hex 7' } as const;

it('[O4] tells of the areas that were closed to a figure nobody said, a plan’s among them, and of no other', () => {
  const on = bench();
  on.declare(
    { kind: 'area-declared', area: 'disc', planned: true, method: { by: 'torque' } },
    { kind: 'area-declared', area: 'bracket', method: { by: 'torque', newtonMetres: 110 } },
    { kind: 'area-declared', area: 'guide', method: { by: 'shoulder' } },
  );
  for (const area of ['disc', 'bracket', 'guide', 'cover']) on.off(`${area}/1`, m8);
  on.off('hose/1', clamp);
  for (const area of ['disc', 'bracket', 'guide', 'cover', 'hose']) {
    on.count(area, 1);
    on.back(`${area}/1`);
    on.snug(`${area}/1`);
  }
  expect(figures(on)).toBeUndefined();
  for (const area of ['disc', 'bracket', 'guide', 'cover', 'hose']) on.tight(`${area}/1`);
  expect(figures(on)).toBe('none was noted for disc, cover');
  on.call('slacken', { hole: 'cover/1' });
  expect(figures(on)).toBe('none was noted for disc');
});

it('[O4] names the holes where the others of the area have their figure', () => {
  const on = bench();
  on.declare({ kind: 'hole-declared', hole: 'starter/1', method: { by: 'torque', newtonMetres: 48 } });
  for (const hole of ['starter/1', 'starter/2']) on.off(hole, m8);
  on.count('starter', 2);
  for (const hole of ['starter/1', 'starter/2']) {
    on.back(hole);
    on.snug(hole);
    on.tight(hole);
  }
  expect(figures(on)).toBe('none was noted for starter 2');
});
