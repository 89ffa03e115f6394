// The line that says the label of a sealant as it is known, to be typed over by what stands on the tube.
import { noSealant } from '../job/beads.ts';
import type { Product } from '../job/entries/declared.ts';
import { every } from '../job/ledger.ts';
import type { Desk } from './desk.ts';

/** Of the product said last, else the first of the workshop's list; undefined where none is known. */
export function knownLabel({ ledger, products }: Desk): Product | undefined {
  const said = [...every(ledger, 'product')]
    .map(({ label }) => label)
    .filter((one) => one.product !== noSealant.product);
  return said.at(-1) ?? products?.[0];
}

/** "label joint sealant moisture skin 10 fill 6 run 6 full 24 at 23 50"; its bare beginning where none is known. */
export function labelLine(desk: Desk): string {
  const known = knownLabel(desk);
  if (!known) return 'label ';
  const { product, kind, labelCelsius, labelHumidityPct } = known;
  const time = (name: string, value: number | undefined) => (value === undefined ? [] : [name, String(value)]);
  return [
    'label',
    /^[\w -]+$/.test(product) ? product : JSON.stringify(product),
    kind,
    ...time('skin', known.skinMinutes),
    ...time('fill', known.fillHours),
    ...time('run', known.runHours),
    ...time('full', known.fullHours),
    'at',
    String(labelCelsius),
    String(labelHumidityPct),
    ...time('lowest', known.lowestCelsius),
  ].join(' ');
}
