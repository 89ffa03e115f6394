// What is proposed for the parts box: what the plan lists as bought new as well, and nothing twice.
import { expect, it } from 'vitest';
import { boxFor } from '../../src/calls/new-ones.ts';
import { boxProposals } from '../../src/calls/proposals.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { atTheBench } from '../session/at-the-bench.ts';

it('proposes a new one for a hole whose own is condemned, of a kind without a thread as well', async () => {
  const at = await atTheBench([]);
  for (const line of ['job "van"', 'area air duct', 'clamp hex 7', 'off 1', 'damaged 2']) at.session().runLine(line);
  expect(boxProposals(at.session().desk())).toEqual([
    expect.objectContaining({ name: 'new one for air duct 2', spec: { kind: 'clamp', head: 'hex 7' } }),
  ]);
});

it.each([
  ['its head', 'nut hex 19 M12x1.5 one-use'],
  ['being one-use', 'nut hex 18 M12x1.5'],
])('takes of the new ones that may go in the nearest, by %s too, whichever was put in first', async (_by, bought) => {
  const at = await atTheBench([]);
  for (const line of ['job "van"', 'area strut foot', 'nut hex 18 M12x1.5 one-use', 'off 1', 'holes 1'])
    at.session().runLine(line);
  for (const line of [`box "wheel nut" as ${bought}`, 'box "foot nut" as nut hex 18 M12x1.5 one-use'])
    at.session().runLine(line);
  expect(boxFor(at.session().desk(), 'strut foot/1')).toBe('foot nut');
});

it('[P1] proposes what the plan says is bought new, supplies too, until it is in the box', async () => {
  const at = await atTheBench([]);
  const say = (line: string) => at.session().runLine(line);
  say('job "van"');
  const offer = at.session().desk().plans()[0];
  const bought = offer?.plan?.newParts?.find((one) => one.sort === 'supply');
  const service = bought?.services?.[0] ?? offer?.services[0];
  expect(say(`plan ${offer?.name} for ${service}`)).toHaveProperty('kind', 'taken');
  const listed = stateOf(at.state().ledger, 'service', service as string)?.newParts ?? [];
  const supply = listed.find((one) => one.sort === 'supply');
  const names = () => boxProposals(at.session().desk()).map((one) => one.name);
  expect(names()).toContain(supply?.name);
  expect(new Set(names()).size).toBe(names().length);
  for (const { replaces } of listed)
    if (replaces) expect(boxProposals(at.session().desk()).filter((p) => p.replaces === replaces)).toHaveLength(1);
  expect(say(`box ${supply?.name}`)).toMatchObject({ kind: 'taken' });
  expect(stateOf(at.state().ledger, 'box', supply?.name as string)).toMatchObject({
    sort: 'supply',
    left: supply?.quantity,
  });
  expect(names()).not.toContain(supply?.name);
});
