// What a workshop sets once: who works here, trays, sounds, the sealants on the shelf. A missing file means the defaults;
// a broken one is told, line by line, and left as it is. Settings never change what a job demands.
import { Low } from 'lowdb';
import * as z from 'zod';
import { productSchema } from '../job/entries/declared.ts';
import { nameSchema } from '../job/subjects.ts';
import { shapeFaults } from '../plan/shape-faults.ts';
import { plainDeep } from '../trade/plain-text.ts';
import { distanceUnits, metric, temperatureUnits, torqueUnits } from '../trade/units-shown.ts';
import { type Disk, realDisk } from './disk.ts';
import { type Fault, fault, faultFrom } from './fault.ts';
import { whereJsonBreaks } from './json-place.ts';
import { wholeFileAdapter } from './whole-file-adapter.ts';

const sealantSchema = productSchema.superRefine((product, found) => {
  const { kind, skinMinutes, fillHours, runHours, fullHours } = product;
  const cures = kind === 'moisture' || kind === 'anaerobic';
  if (kind === 'moisture' && skinMinutes === undefined)
    found.addIssue({ code: 'custom', path: ['skinMinutes'], message: 'a moisture-curing product needs its skin time' });
  if (cures && fillHours === undefined && runHours === undefined && fullHours === undefined)
    found.addIssue({
      code: 'custom',
      path: ['fullHours'],
      message: 'a product that cures needs one time of its label',
    });
});

export const settingsSchema = z.strictObject({
  /** Offered where a call is signed, never assumed. */
  name: z.string().min(1).max(60).optional(),
  trays: z
    .array(nameSchema)
    .min(1)
    .max(40)
    .superRefine((trays, found) => {
      for (const [i, tray] of trays.entries())
        if (trays.indexOf(tray) < i) found.addIssue({ code: 'custom', path: [i], message: `"${tray}" is there twice` });
    })
    .default(['1', '2', '3', '4', '5', '6']),
  sounds: z.boolean().default(true),
  /** NO_COLOR of the terminal goes before it. */
  colours: z.boolean().default(true),
  /** Of figures typed without their unit, and of those shown. */
  units: z
    .strictObject({
      distance: z.enum(distanceUnits).default(metric.distance),
      temperature: z.enum(temperatureUnits).default(metric.temperature),
      torque: z.enum(torqueUnits).default(metric.torque),
    })
    .prefault({}),
  /** Read the keys by a numeric keypad. */
  keypad: z.boolean().default(false),
  /** Keys of one's own, by the id of the call; whether there is such a call is the bench's to say. */
  keys: z
    .array(
      z.strictObject({
        call: z.string().min(1).max(60),
        key: z.string().min(1).max(12),
        on: z.string().min(1).max(20).optional(),
      }),
    )
    .max(200)
    .default([]),
  pedals: z
    .strictObject({ again: z.string().min(1).max(12).optional(), strike: z.string().min(1).max(12).optional() })
    .default({}),
  /** When services are next due, by name: a row of one's own goes before the usual one of that name. */
  intervals: z
    .record(
      z.string().min(1).max(120),
      z
        .strictObject({
          months: z.number().int().min(1).max(480).optional(),
          distance: z
            .strictObject({ distance: z.number().positive().max(5_000_000), unit: z.enum(['km', 'mi']) })
            .optional(),
        })
        .refine(
          ({ months, distance }) => months !== undefined || distance !== undefined,
          'months, a distance, or both',
        ),
    )
    .default({}),
  sealants: z
    .array(sealantSchema)
    .max(200)
    .default([])
    .superRefine((sealants, found) => {
      for (const [i, { product }] of sealants.entries())
        if (sealants.findIndex((s) => s.product === product) < i)
          found.addIssue({ code: 'custom', path: [i, 'product'], message: `"${product}" is in the list twice` });
    }),
});
export type Settings = z.infer<typeof settingsSchema>;

export const defaultSettings = (): Settings => settingsSchema.parse({});

export type OpenSettings = {
  /** The defaults where the file is missing or broken. */
  settings(): Settings;
  /** One for each thing wrong with the file. */
  readonly faults: readonly Fault[];
  /** The fault when it could not be saved; a broken file is never written over. */
  save(settings: Settings): Promise<Fault | undefined>;
};

export async function openSettings(path: string, disk: Disk = realDisk): Promise<OpenSettings> {
  let faults: Fault[] = [];
  const adapter = wholeFileAdapter<Settings>(disk, path, (text) => {
    const read = readSettings(text, path);
    if (read.ok) return read.settings;
    faults = read.faults;
    throw read.faults[0];
  });
  const low = new Low<Settings>(adapter, defaultSettings());
  try {
    await low.read();
  } catch (thrown) {
    if (faults.length === 0) faults = [faultFrom(thrown, path)];
  }
  return {
    settings: () => low.data,
    faults,
    async save(settings) {
      const read = readSettings(JSON.stringify(settings), path);
      if (!read.ok) return read.faults[0];
      const before = low.data;
      low.data = read.settings;
      try {
        await low.write();
        return undefined;
      } catch (thrown) {
        low.data = before;
        return faultFrom(thrown, path);
      }
    },
  };
}

/** Nothing of a file that is wrong somewhere is taken: a figure would else be read in a unit that nobody meant. */
const asStandard = 'put it right and start again; until then none of it holds: N·m, km and °C are taken';
function readSettings(text: string, path: string): { ok: true; settings: Settings } | { ok: false; faults: Fault[] } {
  const bad = (what: string, where: string) => fault('bad-settings', what, where, asStandard);
  let value: unknown;
  try {
    value = plainDeep(JSON.parse(text) as unknown);
  } catch {
    const { line, column } = whereJsonBreaks(text) ?? { line: 1, column: 1 };
    return { ok: false, faults: [bad('this is no JSON from here on', `${path}, line ${line}, column ${column}`)] };
  }
  const read = settingsSchema.safeParse(value);
  if (read.success) return { ok: true, settings: read.data };
  const faults = shapeFaults(settingsSchema, read.error.issues, value, 'setting').map(({ what, at }) =>
    bad(what, [path, placeName(at)].filter(Boolean).join(', ')),
  );
  return { ok: false, faults };
}

const placeName = (at: readonly PropertyKey[]) =>
  at.reduce<string>(
    (name, step) => (typeof step === 'number' ? `${name}[${step}]` : `${name}${name && '.'}${String(step)}`),
    '',
  );
