// What each entry does to the car and the job as a whole. Whether a release was allowed is told from outside: it takes
// the whole ledger to know.
import type { Entry } from '../entry.ts';
import type { VehicleState } from '../states.ts';
import { type Misfit, misfit } from './misfit.ts';

const fresh: VehicleState = {
  label: '',
  resumedAt: 0,
  startedAt: 0,
  movedAt: 0,
  pedalAt: 0,
  oilAt: 0,
  toolsAt: 0,
  roadAt: 0,
  due: [],
  remarks: [],
  photos: [],
  releasedAt: 0,
  falseReleases: [],
  loweredAt: 0,
};

export function evolveVehicle(
  before: VehicleState | undefined,
  entry: Entry,
  n: number,
  allowed: boolean,
): VehicleState | Misfit {
  const v = before ?? fresh;
  switch (entry.kind) {
    case 'job-opened':
      return v.label ? misfit : { ...v, ...entry.vehicle };
    case 'registration-noted':
      return { ...v, registration: entry.registration };
    case 'odometer-noted':
      return { ...v, odometer: { distance: entry.distance, unit: entry.unit } };
    case 'job-waiting': {
      const { who, because, until } = entry;
      return { ...v, waiting: { n, who, because, ...(until && { until }) } };
    }
    case 'job-resumed': {
      const { waiting: _, ...rest } = v;
      return { ...rest, resumedAt: n };
    }
    case 'engine-started':
      return { ...v, startedAt: n };
    case 'car-moved':
      return { ...v, movedAt: n };
    case 'car-lowered':
      return { ...v, loweredAt: n };
    case 'pedal-firm':
      return { ...v, pedalAt: n };
    case 'oil-level-seen':
      return { ...v, oilAt: n };
    case 'tools-out':
      return { ...v, toolsAt: n };
    case 'road-tested': {
      const { roadWaived: _, ...rest } = v;
      return { ...rest, roadAt: n };
    }
    case 'road-test-waived':
      return { ...v, roadAt: n, roadWaived: { who: entry.who, because: entry.because } };
    case 'due-noted': {
      const { kind: _, ...due } = entry;
      return { ...v, due: [...v.due, due] };
    }
    case 'note-made': {
      const { words, at } = entry;
      return { ...v, remarks: [...v.remarks, { n, words, ...(at && { at }) }] };
    }
    case 'photo-noted': {
      const { kind: _, ...photo } = entry;
      return { ...v, photos: [...v.photos, { n, ...photo }] };
    }
    case 'left-unreleased':
      return { ...v, left: { n, who: entry.who, because: entry.because } };
    case 'released':
      return allowed
        ? { ...v, releasedAt: n, releasedBy: entry.who }
        : { ...v, falseReleases: [...v.falseReleases, n] };
    case 'reopened': {
      const { releasedBy: _, left: __, ...rest } = v;
      return { ...rest, releasedAt: 0 };
    }
    default:
      return v;
  }
}
