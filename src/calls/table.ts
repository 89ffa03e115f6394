// THE table of calls. Keys, words, footer, help, the tables of the documents and the spoken grammar come from it.
import { type Node, parseForm } from './form.ts';
import type { Row } from './row.ts';
import { areaTraitsRows } from './rows/area-traits.ts';
import { boxAndFluidsRows } from './rows/box-and-fluids.ts';
import { buildRows } from './rows/build.ts';
import { carRows } from './rows/car.ts';
import { countsRows } from './rows/counts.ts';
import { drawingRows } from './rows/drawing.ts';
import { findingsRows } from './rows/findings.ts';
import { holeTraitsRows } from './rows/hole-traits.ts';
import { inUseRows } from './rows/in-use.ts';
import { jobRows } from './rows/job.ts';
import { onTheSpotRows } from './rows/on-the-spot.ts';
import { partsRows } from './rows/parts.ts';
import { puttingRightRows } from './rows/putting-right.ts';
import { rotationRows } from './rows/rotation.ts';
import { sealingRows } from './rows/sealing.ts';
import { servicesRows } from './rows/services.ts';
import { stepRows } from './rows/steps.ts';
import { stripRows } from './rows/strip.ts';
import { temporariesRows } from './rows/temporaries.ts';
import { tighteningRows } from './rows/tightening.ts';
import { tighteningMethodRows } from './rows/tightening-method.ts';
import { whereaboutsRows } from './rows/whereabouts.ts';

export const rows: readonly Row[] = [
  ...inUseRows,
  ...stripRows,
  ...buildRows,
  ...tighteningRows,
  ...partsRows,
  ...temporariesRows,
  ...boxAndFluidsRows,
  ...findingsRows,
  ...sealingRows,
  ...rotationRows,
  ...countsRows,
  ...carRows,
  ...whereaboutsRows,
  ...puttingRightRows,
  ...jobRows,
  ...servicesRows,
  ...drawingRows,
  ...areaTraitsRows,
  ...tighteningMethodRows,
  ...holeTraitsRows,
  ...onTheSpotRows,
  ...stepRows,
];

export const rowById: ReadonlyMap<string, Row> = new Map(rows.map((row) => [row.id, row]));
export const formOf: ReadonlyMap<string, readonly Node[]> = new Map(rows.map((row) => [row.id, parseForm(row.form)]));
