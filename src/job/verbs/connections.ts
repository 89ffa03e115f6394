// Verbs on connections: parted and made again (T2).
import * as z from 'zod';
import type { Entry } from '../entry.ts';
import { behindRefusal, no } from '../guards.ts';
import { stateOf } from '../ledger.ts';
import { nameSchema } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';
import { areaIfNew } from './first-call.ts';

const forNow = z.literal(true).optional();
const connectionState = (s: Standing, name: string) => stateOf(s.ledger, 'connection', name);
/** The circuit and area of one nobody has named before, declared in the same breath. */
const ofCircuit = () => z.strictObject({ circuit: nameSchema, area: nameSchema, fluid: nameSchema.optional() });
function declaredOf(s: Standing, name: string, of: z.infer<ReturnType<typeof ofCircuit>> | undefined): Entry[] {
  if (!of || connectionState(s, name)?.declared) return [];
  const { circuit, area, fluid } = of;
  const isNew = fluid !== undefined && stateOf(s.ledger, 'circuit', circuit)?.fluid === undefined;
  return [
    ...areaIfNew(s, area),
    ...(isNew ? [{ kind: 'circuit-declared' as const, circuit, fluid }] : []),
    { kind: 'connection-declared', connection: name, area, circuit },
  ];
}
const part = verb(
  'part-connection',
  () => z.strictObject({ connection: nameSchema, of: ofCircuit().optional() }),
  [
    {
      code: 'parted-already',
      rule: 'T2',
      kind: 'footing',
      needs: ['connection'],
      check: (s, said) =>
        connectionState(s, said.connection)?.parted ? no(`${said.connection} is parted already`, 'call it made') : null,
    },
  ],
  (s, said) => [...declaredOf(s, said.connection, said.of), { kind: 'connection-parted', connection: said.connection }],
);
const connectionBehind = (gates: boolean): Guard<{ connection: string; forNow?: true }> => ({
  code: gates ? 'hides-what-is-not-proven' : 'open-behind',
  rule: gates ? 'R7' : 'O1',
  kind: gates ? 'gate' : 'order',
  needs: ['connection'],
  check: (s, said) => (said.forNow ? null : behindRefusal(s, [`connection:${said.connection}`], gates)),
});
const make = verb(
  'make-connection',
  () => z.strictObject({ connection: nameSchema, forNow }),
  [
    {
      code: 'not-parted',
      rule: 'T2',
      kind: 'footing',
      needs: ['connection'],
      check: (s, said) => {
        const c = connectionState(s, said.connection);
        return c?.parted || (c?.forNow && !said.forNow)
          ? null
          : no(`${said.connection} is not parted`, 'call it parted first');
      },
    },
    connectionBehind(true),
    connectionBehind(false),
  ],
  (_s, said) => [{ kind: 'connection-made', connection: said.connection, ...(said.forNow && { forNow: said.forNow }) }],
);

export const connectionVerbs = [part, make];
