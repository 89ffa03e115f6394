// How strong a bolt is by what is stamped on its head: ISO 898-1 classes, and the inch grades of SAE J429. Nuts,
// stainless steel and stretch bolts by a maker's own marks are not here.
import { type Answer, refused } from './answer.ts';
import { cited } from './cited.ts';
import { hundred, kilogramsPerPound, millimetresPerInch, standardGravity, ten, thousand } from './definitions.ts';
import type { Thread } from './threads.ts';

/** Stress under proof load, N/mm². Class 8.8 above M16 bears more. */
const proofStress = cited<Readonly<Record<string, number>>>(
  {
    '4.6': 225,
    '4.8': 310,
    '5.6': 280,
    '5.8': 380,
    '6.8': 440,
    '8.8': 580,
    '9.8': 650,
    '10.9': 830,
    '12.9': 970,
  },
  'N/mm²',
  'ISO 898-1:2013, table 3',
);
const class88AboveM16 = cited({ overMm: 16, stress: 600 }, 'mm, N/mm²', 'ISO 898-1:2013, table 3');
const class98UpToM16 = cited(16, 'mm', 'ISO 898-1:2013, table 3: class 9.8 ends at M16');
/** Grades 1/4 to 3/4 in. */
const gradeProof = cited<Readonly<Record<string, number>>>(
  { 2: 55_000, 5: 85_000, 8: 120_000 },
  'lbf/in²',
  'SAE J429, table 1, sizes 1/4 to 3/4 in',
);

const newtonsPerMm2PerPsi = (kilogramsPerPound.value * standardGravity.value) / millimetresPerInch.value ** 2;

/**
 * Nominal strength from the two figures of a class.
 * @param grade "8.8", "10.9"
 * @returns N/mm²: tensile = first figure × 100, yield = first × second × 10; refused: no class of ISO 898-1
 * Source: ISO 898-1:2013, clause 5.
 */
export function nominalStrength(grade: string): Answer<{ tensile: number; yield: number }> {
  const parts = /^(\d{1,2})\.(\d)$/.exec(grade.trim());
  if (!parts || !Object.hasOwn(proofStress.value, grade.trim())) return noClass(grade);
  return { tensile: Number(parts[1]) * hundred.value, yield: Number(parts[1]) * Number(parts[2]) * ten.value };
}

/**
 * Stress at proof load: what a bolt must bear without a lasting stretch.
 * @param grade "8.8" for metric threads; "5" or "8" (SAE) for inch ones
 * @returns N/mm²; refused: a class that is none of these, or of the other system
 * Source: ISO 898-1:2013, table 3; SAE J429, table 1.
 */
export function proofStressMPa(grade: string, { system, majorMm }: Thread): Answer<number> {
  const plain = grade.trim();
  if (system === 'inch') {
    const psi = Object.hasOwn(gradeProof.value, plain) ? gradeProof.value[plain] : undefined;
    return psi === undefined ? refused(`"${grade}" is no grade of inch bolts: 2, 5, 8`) : psi * newtonsPerMm2PerPsi;
  }
  if (plain === '8.8' && majorMm > class88AboveM16.value.overMm) return class88AboveM16.value.stress;
  if (plain === '9.8' && majorMm > class98UpToM16.value) return refused('class 9.8 is made up to M16 only');
  const stress = Object.hasOwn(proofStress.value, plain) ? proofStress.value[plain] : undefined;
  return stress ?? noClass(grade);
}

const noClass = (grade: string) =>
  refused(
    `"${grade}" is no property class: ${Object.keys(proofStress.value)
      .sort((a, b) => Number(a) - Number(b))
      .join(', ')}`,
  );

/** Newtons from kilonewtons said short: "21.2 kN". */
export const kilonewtons = (newtons: number): string => `${(newtons / thousand.value).toFixed(1)} kN`;
