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
/** Where none is known yet, those a car has. */
export const usualCircuits: readonly string[] = Object.keys(usual);
const none = 'none';
/** Of what a brake has that is parted, this carries none of its fluid. Common practice, no source. */
const isElectric = (name: string): boolean =>
  /\b(plug|sensor|lamp|lead|wire|cable|harness|clip|connector)\b/i.test(name);

/** By the words of a joint, or of where it sits. A vacuum hose of a brake carries none. Common practice, no source. */
const wordsOfFluid: readonly (readonly [RegExp, string])[] = [
  [/\b(coolant|radiator|heater|thermostat|expansion)\b/i, 'coolant'],
  [/\bfuel\b/i, 'fuel'],
  [/\bsteering\b/i, 'steering fluid'],
  [/\b(oil cooler|oil filter)\b/i, 'oil'],
];
function likelyFluid(isBrake: boolean, ...named: readonly string[]): string | undefined {
  if (isBrake) return 'brake fluid';
  return wordsOfFluid.find(([words]) => named.some((one) => words.test(one)))?.[1];
}

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
  const fluid = likelyFluid(isBrake, connection, facing.area);
  const isLikely = ({ value }: { value: string }): boolean =>
    fluid !== undefined && (isBrake ? isOfBrake(value) : fluidOf(desk, value) === fluid);
  const named = [...known, ...others].map((value) => ({ value, text: value }));
  const nothing = { value: none, text: 'of none: air, vacuum, a lead; nothing more is asked of it' };
  return {
    key: 'of',
    title: `${connection}: of which circuit is it? Its fluid, a leak check and what goes with them are asked then`,
    // What is taken by habit asks for nothing that was not meant; of what its name says a fluid of, that is.
    choices:
      fluid === undefined
        ? [nothing, ...named]
        : [...named.filter(isLikely), ...named.filter((one) => !isLikely(one)), nothing],
    inWords: '',
    notInWords: true,
  };
}
const isOfBrake = (circuit: string): boolean => /\bbrakes?\b/i.test(circuit);
const fluidOf = ({ ledger }: Desk, circuit: string): string | undefined =>
  stateOf(ledger, 'circuit', circuit)?.fluid ?? usual[circuit];

/** With its circuit it belongs to the area in use. */
export function partedMeant(desk: Desk, { connection, of }: Args): Meant {
  const said = { verb: 'part-connection', connection };
  const { area } = desk.facing;
  if (typeof of !== 'string' || of === none || area === undefined) return { say: said };
  const fluid = fluidOf(desk, of);
  return { say: { ...said, of: { circuit: of, area, ...(fluid !== undefined && { fluid }) } } };
}
