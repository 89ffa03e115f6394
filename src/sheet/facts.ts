// Everything the job sheet says, gathered from the ledger as plain values: one gathering for every form of the sheet.
// What it returns can't steer a terminal, whatever names and reasons the job holds. It words and lays out nothing.

import { every, type Ledger, stateOf } from '../job/ledger.ts';
import type { Stamp } from '../job/line.ts';
import type { VehicleState } from '../job/states.ts';
import { plainDeep } from '../trade/plain-text.ts';
import type { Units } from '../trade/units-shown.ts';
import { type AreaFact, areaFacts } from './area-facts.ts';
import { type FindingFact, findingFacts } from './finding-facts.ts';
import {
  type BoxFacts,
  boxFacts,
  type FastenerSums,
  fastenerSums,
  type LossFact,
  lossFacts,
  madeAgain,
  openedAt,
  type PartFacts,
  partFacts,
  type StrayFact,
  strangeFacts,
} from './goods-facts.ts';
import {
  type CorrectionFact,
  correctionFacts,
  type LogFact,
  logFact,
  type OverrideFact,
  overrideFacts,
} from './log-facts.ts';
import { type OdometerBefore, odometerBefore } from './odometer-facts.ts';
import type { Intervals } from './old-part.ts';
import { type PhotoFact, type PhotosNow, photoFacts, seenNow } from './photo-facts.ts';
import {
  type CircuitFact,
  circuitFacts,
  type DriveFact,
  driveFacts,
  type FaceFact,
  faceFacts,
  oilSeen,
} from './proof-facts.ts';
import { type Moment, moment, momentOf, placeWords, type Reading, standingEntries } from './reading.ts';
import { type RegainedFact, regainedFacts } from './regained-facts.ts';
import { type ServiceFact, serviceFact } from './service-facts.ts';
import { type StandingFacts, standingFacts } from './standing-facts.ts';
import { type StruckFact, struckFacts } from './struck-facts.ts';

export type SheetOptions = {
  now: Stamp;
  /** Of the log as printed; on a released job the seal (X3). */
  digest?: string;
  /** Minutes east of UTC to show every time at; without it each line is shown at the offset it was called in. */
  zone?: number;
  /** Those of the workshop, for figures in words; a table keeps newton metres and degrees Celsius. */
  units?: Units;
  /** The workshop's own intervals, to measure old parts against. */
  intervals?: Intervals;
  /** What has become of the files of photographs. */
  photos?: PhotosNow;
  /** Why the file is perhaps not all of the job. */
  fileEnd?: string;
};
export type SheetFacts = StandingFacts & {
  vehicle: Pick<VehicleState, 'label' | 'registration' | 'notes' | 'odometer'> & OdometerBefore;
  opened?: Moment;
  printed: { atMs: number; zoneMin: number };
  digest?: string;
  services: ServiceFact[];
  findings: FindingFact[];
  due: { what: string; on?: string; atDistance?: number }[];
  fasteners: FastenerSums;
  areas: AreaFact[];
  faces: FaceFact[];
  drives: DriveFact[];
  circuits: CircuitFact[];
  oil?: Moment;
  parts: PartFacts;
  box: BoxFacts;
  again: { connections: string[]; temporaries: string[] };
  losses: LossFact[];
  /** L9: found again. */
  regained: RegainedFact[];
  strange: StrayFact[];
  overrides: OverrideFact[];
  corrections: CorrectionFact[];
  car: {
    started?: Moment;
    /** T1: onto its wheels. */
    lowered?: Moment & { standsOut?: Moment };
    moved?: Moment;
    pedal?: Moment;
    tools?: Moment;
    road?: Moment & { waived?: { who: string; because: string } };
    waiting?: Moment & { on: string; because: string; until?: string };
  };
  notes: (Moment & { words: string; place?: string })[];
  photos: PhotoFact[];
  /** What the plans warn of. */
  cautions: { words: string; place?: string }[];
  /** X4: what the plans have for the owner after the work. */
  forOwner: string[];
  log: LogFact;
  struck: StruckFact[];
};

export function sheetFacts(
  ledger: Ledger,
  { now, digest, zone, units, intervals = {}, photos, fileEnd }: SheetOptions,
): SheetFacts {
  const of: Reading = { ledger, now, ...(zone !== undefined && { zone }), ...(units && { units }) };
  const v = stateOf(ledger, 'vehicle', 'vehicle');
  const opened = openedAt(of);
  const oil = oilSeen(of);
  const facts = plainDeep({
    vehicle: {
      label: v?.label ?? '',
      ...(v?.registration && { registration: v.registration }),
      ...(v?.notes && { notes: v.notes }),
      ...(v?.odometer && { odometer: v.odometer, ...odometerBefore(of, v.odometer) }),
    },
    ...(opened && { opened }),
    printed: { atMs: now.atMs, zoneMin: zone ?? now.zoneMin },
    ...(digest && { digest }),
    ...(fileEnd !== undefined && { fileEnd }),
    ...standingFacts(ledger, of),
    services: [...every(ledger, 'service')].map((one) => serviceFact(ledger, one)),
    findings: findingFacts(of),
    due: [...(v?.due ?? [])],
    fasteners: fastenerSums(of),
    areas: areaFacts(of),
    faces: faceFacts(of),
    drives: driveFacts(of),
    circuits: circuitFacts(of),
    ...(oil && { oil }),
    parts: partFacts(of, intervals),
    box: boxFacts(of),
    again: madeAgain(of),
    losses: lossFacts(of),
    regained: regainedFacts(of),
    strange: strangeFacts(of),
    overrides: overrideFacts(of),
    corrections: correctionFacts(of),
    car: carFact(of, v),
    notes: (v?.remarks ?? []).map(({ n, words, at }) => ({
      ...moment(of, n),
      words,
      ...(at && { place: placeWords(at) }),
    })),
    photos: photoFacts(of),
    cautions: cautionFacts(of),
    forOwner: [...new Set(cautionsOf(of).flatMap(({ words, at }) => (at === 'vehicle' ? [words] : [])))],
    log: logFact(of),
    struck: struckFacts(of),
  } satisfies SheetFacts);
  // Bytes are no text: cut to the length of one they would be a broken picture.
  return { ...facts, photos: seenNow(facts.photos, photos) };
}

/** Of the services that were not dropped. */
const cautionsOf = (of: Reading) =>
  [...standingEntries(of.ledger)].flatMap(({ entry }) =>
    entry.kind !== 'service-ordered' || stateOf(of.ledger, 'service', entry.service)?.state === 'dropped'
      ? []
      : (entry.cautions ?? []),
  );
/** Each once. */
function cautionFacts(of: Reading): SheetFacts['cautions'] {
  const cautions = new Map<string, { words: string; place?: string }>();
  for (const { words, at } of cautionsOf(of))
    cautions.set(`${at ?? ''} ${words}`, { words, ...(at && { place: placeWords(at) }) });
  return [...cautions.values()];
}

/** T1: with the last of them out the weight is on the wheels, and their finals may come before the call that it is. */
function standsOut(of: Reading, loweredAt: number): { standsOut?: Moment } {
  const out = [...standingEntries(of.ledger)].findLast(
    ({ line, entry }) =>
      entry.kind === 'temporary-taken-out' &&
      line.n < loweredAt &&
      stateOf(of.ledger, 'temporary', entry.temporary)?.sort === 'stand',
  );
  return out ? { standsOut: moment(of, out.line.n) } : {};
}

function carFact(of: Reading, v: VehicleState | undefined): SheetFacts['car'] {
  if (!v) return {};
  const started = momentOf(of, v.startedAt);
  const lowered = momentOf(of, v.loweredAt);
  const moved = momentOf(of, v.movedAt);
  const pedal = momentOf(of, v.pedalAt);
  const tools = momentOf(of, v.toolsAt);
  const road = momentOf(of, v.roadAt);
  const { waiting: w, roadWaived: waived } = v;
  return {
    ...(started && { started }),
    ...(lowered && { lowered: { ...lowered, ...standsOut(of, v.loweredAt) } }),
    ...(moved && { moved }),
    ...(pedal && { pedal }),
    ...(tools && { tools }),
    ...(road && { road: { ...road, ...(waived && { waived }) } }),
    ...(w && {
      waiting: { ...moment(of, w.n), on: w.who, because: w.because, ...(w.until && { until: w.until }) },
    }),
  };
}
