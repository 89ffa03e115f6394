// Why a line of a script may be left out and the car is released all the same: reason → area in use → lines. Here the
// shape, and the reasons that more than one job has; the lists stand beside each job's script.

export type Reasons = Readonly<Record<string, Readonly<Record<string, readonly string[]>>>>;
/** Where no area is in use yet. */
export const nowhere = '';

export const nameOfJob = 'the name of the job is read by people only';
export const trayInUse = 'this tray was in use already';
export const areaInUse = 'this area was in use already';
export const emptiedTray = 'what it held lay in the tray before, and was out of it when that was counted';
export const onItsWheels = 'the stand was called out, and that is what the weight is asked by';
export const noRule = 'what was done goes into the log: no rule asks for it';
export const drainedAnyway = 'it was filled and leak-checked all the same, as a hose or face of its circuit was open';
export const roleAsks = 'what an area is asks for more (weight on, pedal, road test), and all of it was called';
export const criticalAsks = 'critical asks for a second look, which was called';
export const methodNoted = 'the method is written beside each pass: nothing compares it';
export const orderProposed = 'the order proposes the next hole, and the holes were named or done by whole passes';
export const laterKept = 'when a final is due: it was given then, with or without being told';
export const cleanKept = 'what must stay clean is asked for when metal is cut, and all was masked';
export const behindClosed = 'what sits behind what refuses only work out of order, and there was none';
export const eyeAlone =
  'what came off is then called like the one before it: the eye alone sees a spec, and it goes back where it was';
export const partUnnamed = 'a part nobody names is not known: the bolts that held it are called and counted';
export const fluidNamed = 'it names a fluid; what is drained, filled and checked is the circuit';
export const hoseNamed = 'a hose of a circuit asks for a leak check, which draining asked for as well';
export const dryFace = 'a face without a bead asks for the leak check of its circuit, which was made';
export const companionsAsk = 'companions are asked to be called seen, and were';

export type Told = { area: string; line: string };
const flat = (reasons: Reasons): [string, Told][] =>
  Object.entries(reasons).flatMap(([reason, areas]) =>
    Object.entries(areas).flatMap(([area, lines]) => lines.map((line): [string, Told] => [reason, { area, line }])),
  );
export const linesWithReasons = (reasons: Reasons): Told[] => flat(reasons).map(([, told]) => told);
export const reasonOf = (reasons: Reasons, { area, line }: Told): string | undefined =>
  flat(reasons).find(([, told]) => told.area === area && told.line === line)?.[0];
