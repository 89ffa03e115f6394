// Of which circuit a hose or pipe is that no plan knows: asked once, as it is named and parted, since without it neither its
// fluid nor a leak is ever asked for.
import { every, stateOf } from '../job/ledger.ts';
import { carriesByName, roleOf } from '../job/roles.ts';
import { circuitsInTurn } from './circuits-in-turn.ts';
import type { Desk } from './desk.ts';
import type { Args } from './form.ts';
import type { Besides, Meant } from './row.ts';

/** Circuits a car has, by the names and fluids the trade gives them. Common practice, no source. */
const usual: Readonly<Record<string, string>> = {
  brakes: 'brake fluid',
  coolant: 'coolant',
  'engine oil': 'oil',
  'gearbox oil': 'gear oil',
  clutch: 'brake fluid',
  fuel: 'fuel',
  'power steering': 'steering fluid',
};
const none = 'none';
/** Of what a brake has that is parted, this carries none of its fluid. Common practice, no source. */
const isElectric = (name: string): boolean =>
  /\b(plug|sensor|lamp|lead|wire|cable|harness|clip|connector)\b/i.test(name);

export function askedOnCircuit(desk: Desk, { connection, of }: Args): Besides | undefined {
  const { ledger, facing } = desk;
  const a = facing.area === undefined ? undefined : stateOf(ledger, 'area', facing.area);
  if (typeof connection !== 'string' || of !== undefined || stateOf(ledger, 'connection', connection)) return undefined;
  if (facing.area === undefined || a?.declared?.planned || isElectric(connection)) return undefined;
  const isBrake = roleOf(ledger, facing.area) === 'brake';
  if (!isBrake && !carriesByName(connection)) return undefined;
  const known = circuitsInTurn(
    desk,
    [...every(ledger, 'circuit')].map(({ circuit }) => circuit),
  );
  const others = Object.keys(usual).filter((name) => !known.includes(name));
  const named = [...known, ...others].map((value) => ({ value, text: value }));
  const nothing = { value: none, text: 'of none: air, vacuum, a lead; nothing more is asked of it' };
  return {
    key: 'of',
    title: `${connection}: of which circuit is it? Its fluid, a leak check and what goes with them are asked then`,
    // What is taken by habit asks for nothing that was not meant; of a brake its fluid is.
    choices: isBrake
      ? [...named.filter(isOfBrake), ...named.filter((one) => !isOfBrake(one)), nothing]
      : [nothing, ...named],
    inWords: '',
    notInWords: true,
  };
}
const isOfBrake = ({ value }: { value: string }): boolean => /\bbrakes?\b/i.test(value);

/** With its circuit it belongs to the area in use. */
export function partedMeant({ ledger, facing }: Desk, { connection, of }: Args): Meant {
  const said = { verb: 'part-connection', connection };
  if (typeof of !== 'string' || of === none || facing.area === undefined) return { say: said };
  const fluid = stateOf(ledger, 'circuit', of)?.fluid ?? usual[of];
  return { say: { ...said, of: { circuit: of, area: facing.area, ...(fluid !== undefined && { fluid }) } } };
}
