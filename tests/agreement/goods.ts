// What the invented cars are held together and sealed with: fasteners that can and cannot be told apart, products of
// every kind, labels that say much and labels that say little.
import type { Product } from '../../src/job/entries/declared.ts';
import type { Spec } from '../../src/job/spec.ts';

export const specs: readonly Spec[] = [
  { kind: 'bolt', head: 'hex 10', thread: 'M6', lengthMm: 25 },
  { kind: 'bolt', head: 'hex 10', thread: 'M6', lengthMm: 35 },
  { kind: 'bolt', head: 'hex 13', thread: 'M8', lengthMm: 40, class: '8.8' },
  { kind: 'bolt', head: 'hex 13', thread: 'M8', lengthMm: 40, class: '10.9' },
  { kind: 'bolt', head: 'star 12', thread: 'M8', lengthMm: 40, class: '10.9' },
  { kind: 'nut', head: 'hex 17', thread: 'M12x1.25' },
  { kind: 'bolt', head: 'hex 19', thread: 'M14x1.5', lengthMm: 65, oneUse: true },
  { kind: 'bolt', head: 'hex 8', thread: 'M6', lengthMm: 35, shouldered: true },
  { kind: 'bolt', head: 'hex 13', thread: 'M8x1.25', lengthMm: 40, class: '8.8' },
  { kind: 'bolt', head: 'hex 13', thread: 'M8', lengthMm: 40, class: '8.8', coating: 'black' },
  { kind: 'bolt', head: 'hex 12', thread: 'M10', lengthMm: 40 },
  { kind: 'bolt', head: 'hex 13', thread: '5/16-18', lengthMm: 40, class: '8.8' },
  { kind: 'bolt', head: 'hexkey 6', thread: 'M8x1.35' },
  { kind: 'plug', head: 'hex 17', thread: 'M14x1.5' },
  { kind: 'clip' },
  { kind: 'washer', oneUse: true },
  {},
];

export const products: readonly Product[] = [
  {
    product: 'grey sealant',
    kind: 'moisture',
    skinMinutes: 20,
    fillHours: 2,
    runHours: 4,
    fullHours: 24,
    labelCelsius: 23,
    labelHumidityPct: 50,
  },
  {
    product: 'black sealant',
    kind: 'moisture',
    skinMinutes: 45,
    fullHours: 12,
    labelCelsius: 23,
    labelHumidityPct: 50,
    lowestCelsius: 5,
    atCelsius: [
      { celsius: 5, fullHours: 48 },
      { celsius: 15, fullHours: 20 },
    ],
  },
  { product: 'slow sealant', kind: 'moisture', labelCelsius: 20, labelHumidityPct: 50 },
  {
    product: 'red paste',
    kind: 'anaerobic',
    runHours: 3,
    labelCelsius: 22,
    labelHumidityPct: 50,
    lowestCelsius: 10,
    atCelsius: [{ celsius: 12, fullHours: 9 }],
  },
  { product: 'green paste', kind: 'anaerobic', fillHours: 1, labelCelsius: 22, labelHumidityPct: 40 },
  { product: 'blue compound', kind: 'non-setting', labelCelsius: 20, labelHumidityPct: 50 },
  { product: 'dry gasket', kind: 'dry', labelCelsius: 20, labelHumidityPct: 50 },
];
