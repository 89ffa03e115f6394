// The way back on the reference job: the strip order turned round, each proof before what waits for it.
import { describe, expect, it } from 'vitest';
import { type BuildStep, buildOrder } from '../../src/plan/build-order.ts';
import { needOf } from '../../src/plan/need.ts';
import { worksOf } from '../../src/plan/works.ts';
import { referencePlan } from '../jobs/plan-of-reference.ts';

const plan = referencePlan();
const strip = needOf(worksOf(plan), plan, ['timing belt', 'coolant pump', 'cam cover gasket'], new Set()).order;
const build = buildOrder(plan, strip);
const text = (step: BuildStep): string => {
  if ('at' in step) return step.at;
  if (step.kind === 'face') return `${step.kind} ${step.face} ${step.beads}`;
  if ('area' in step) return `${step.kind} ${step.area}`;
  if ('circuit' in step) return `${step.kind} ${step.circuit}`;
  if ('drive' in step) return `${step.kind} ${step.drive}: ${step.tightFirst}`;
  return 'later' in step ? `${step.later} ${step.holes.length}` : step.kind;
};

describe('the order of building', () => {
  it('is the strip order in reverse, step by step and unit by unit', () => {
    const back = build.filter((step) => 'at' in step).flatMap((step) => step.units);
    expect(back).toEqual(strip.flatMap((step) => step.units).toReversed());
  });

  it('has each proof before what waits for it, and the rest before the car leaves', () => {
    expect(build.map(text)).toEqual([
      'part:gasket',
      'face cam cover face 1',
      'area:cam cover',
      'connection:rear breather',
      'connection:front breather',
      'connection:cam sensor plug',
      'connection:coil rail plug',
      'face pump face 0',
      'companions coolant pump',
      'area:coolant pump',
      'connection:bottom hose',
      'area:tensioner and idler',
      'part:timing belt',
      'rotation timing drive: tensioner and idler/1',
      'area:lower belt cover',
      'area:upper belt cover',
      'connection:harness clip',
      'area:crank pulley',
      'part:auxiliary belt',
      'area:mount bracket',
      'area:arch liner',
      'area:right front wheel',
      'connection:battery earth',
      'fill coolant',
      'on-wheels 7',
      'leak-check coolant',
      'leak-check engine oil',
      'road-test',
      'second-look',
    ]);
  });
});
