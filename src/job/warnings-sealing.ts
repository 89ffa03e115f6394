// What is said beside a bead and a label: by which label a bead counts, and that one laid before keeps its own; that no
// engine ran since one was laid; that nothing known opens a circuit. It stands in no way.
import { beadsOn, labelHours, noSealant } from './beads.ts';
import type { Product } from './entries/declared.ts';
import type { EntryOf } from './entry.ts';
import { every, type Ledger, lastLine, stateOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import { areaOf } from './subjects.ts';

/** "skin 10 min, fill 4 h, run 12 h, full 24 h at 23 °C, 50 %": the hours that hold, told on the label or not. */
function labelText(label: Product): string {
  const { fill, run, full } = labelHours(label);
  const skin = label.kind === 'moisture' && label.skinMinutes !== undefined ? `skin ${label.skinMinutes} min, ` : '';
  return `${skin}fill ${fill} h, run ${run} h, full ${full} h at ${label.labelCelsius} °C, ${label.labelHumidityPct} %`;
}
const curesNot: ReadonlySet<string> = new Set(['non-setting', 'dry']);

/** Its label was written into the job together with other declarations, by a plan; nobody read it off the tube. */
function isThePlans(ledger: Ledger, label: Product): boolean {
  const told = ledger.lines.all
    .slice(0, ledger.lines.length)
    .findLast(({ entries }) => entries.some((e) => e.kind === 'product-declared' && e.label.product === label.product));
  return told?.entries.some((e) => e.kind !== 'product-declared') === true;
}

/** S1: said with the bead, since from then on its label stands. */
export const byPlansLabel = (ledger: Ledger, label: Product): string[] =>
  !curesNot.has(label.kind) && isThePlans(ledger, label)
    ? [
        `it counts by the plan's label: ${labelText(label)}; the one in your hand goes before it: ` +
          `strike ${ledger.lines.length + 1}, say that one (label in hand), call the bead anew`,
      ]
    : [];

export const makesChips: ReadonlySet<string> = new Set(['drilled', 'tapped']);
/** F5, F6: nothing that still lies open can be masked. Common practice, no source. */
export function chipsInBead(ledger: Ledger, { hole, step }: EntryOf<'repair-step'>, now: Stamp): string[] {
  if (!makesChips.has(step)) return [];
  const faces = [...every(ledger, 'face')].filter(
    (f) => f.declared?.area === areaOf(hole) || f.declared?.pressedBy.includes(hole),
  );
  const open = faces.filter((f) =>
    beadsOn(ledger, f, now).some((b) => !b.void && b.togetherAt === 0 && b.label.product !== noSealant.product),
  );
  return open.map((f) => `the bead on ${f.face} lies open under the chips: cleaned, and laid anew`);
}

/** T6: what a first start asks about was never asked of it. */
export function beadNotRun(ledger: Ledger): string[] {
  const started = stateOf(ledger, 'vehicle', 'vehicle')?.startedAt ?? 0;
  const faces = [...every(ledger, 'face')].filter((f) =>
    f.beads.some((b) => b.n > started && b.label.product !== noSealant.product),
  );
  return faces.length > 0
    ? [`no first start was called since a bead was laid on ${faces.map((f) => f.face).join(', ')}`]
    : [];
}

/** S3, S5: a bead keeps the label that was known when it was laid. */
export function keepTheirLabel(ledger: Ledger, label: Product): string[] {
  const now = lastLine(ledger);
  if (!now) return [];
  return [...every(ledger, 'face')].flatMap((face) =>
    beadsOn(ledger, face, now)
      .filter((b) => b.label.product === label.product && !b.void && !b.reached.full)
      .filter((b) => JSON.stringify(b.label) !== JSON.stringify(label))
      .map(
        (b) =>
          `the bead on ${b.face} keeps the label it was laid by: ${labelText(b.label)}; to go by this one: ` +
          `strike ${b.n} and call the bead anew; it cures from then on`,
      ),
  );
}

/** T5: what is asked of a circuit is asked once it was opened; said alone, nothing that opens it is known. */
export function hangsOnNothing(ledger: Ledger, circuit: string): string[] {
  const isKnown =
    (stateOf(ledger, 'circuit', circuit)?.drainedAt ?? 0) > 0 ||
    [...every(ledger, 'connection')].some((c) => c.declared?.circuit === circuit) ||
    [...every(ledger, 'face')].some((f) => f.declared?.keepsIn.includes(circuit));
  const way = `as "connection hose in AREA of ${circuit}"`;
  return isKnown
    ? []
    : [`nothing is asked of it until it is drained, or a connection or face of it opened; say one ${way}`];
}
