// What a colour looks like to whoever sees fewer of them, and how far two colours stand apart. Of the checks alone.
//
// Sources: the matrices are those of G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based Model
// for Simulation of Color Vision Deficiency", IEEE TVCG 15(6), 2009, table of severity 1.0, taken on linear light; read
// in copies that agree to the last digit, not in the print. Linear light, luminance and contrast as
// WCAG 2.2 defines "relative luminance" and "contrast ratio" (the threshold 0.04045 is IEC 61966-2-1's). Colours 16 to
// 255: the cube of six levels and the greys of xterm's 256colres.h, from memory.
export type Rgb = readonly [number, number, number];
type Matrix = readonly [Rgb, Rgb, Rgb];

/** What light of a colour becomes: linear in, linear out. */
export const sights: Readonly<Record<string, Matrix>> = {
  'all colours': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
  achromatopsia: [
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
  ],
};

export const linear = (byte: number): number => {
  const part = byte / 255;
  return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
};
const byteOf = (light: number): number => {
  const part = light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055;
  return Math.round(Math.min(1, Math.max(0, part)) * 255);
};
const times = (matrix: Matrix, light: Rgb): Rgb =>
  matrix.map(([r, g, b]) => r * light[0] + g * light[1] + b * light[2]) as unknown as Rgb;

/** A colour as it is seen, in bytes. */
export const seenAs = (rgb: Rgb, sight: string): Rgb =>
  times(sights[sight] as Matrix, rgb.map(linear) as unknown as Rgb).map(byteOf) as unknown as Rgb;

export function contrast(one: Rgb, other: Rgb): number {
  const luminance = (rgb: Rgb): number => 0.2126 * linear(rgb[0]) + 0.7152 * linear(rgb[1]) + 0.0722 * linear(rgb[2]);
  const [dark, light] = [luminance(one), luminance(other)].toSorted((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

const levels = [0, 95, 135, 175, 215, 255];
/** Colours 16 to 255 of a terminal, which no theme changes. */
export function rgbOf(number: number): Rgb {
  if (number < 16) throw new Error(`colour ${number} is the theme's`);
  if (number >= 232) return Array.from({ length: 3 }, () => 8 + 10 * (number - 232)) as unknown as Rgb;
  const at = number - 16;
  return [at / 36, (at / 6) % 6, at % 6].map((level) => levels[Math.floor(level)] as number) as unknown as Rgb;
}
