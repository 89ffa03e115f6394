// What an entry says, in a few words: for the answer to a call and for the log. What a declaration says stands in
// declared-words.ts, what a whole call says in call-words.ts.
import { noSealant } from '../job/beads.ts';
import type { Entry } from '../job/entry.ts';
import { holesSaid, sortOf, subjectText } from '../job/subjects.ts';
import { metric, temperatureText, type Units } from '../trade/units-shown.ts';
import { declaredWords } from './declared-words.ts';
import { specWords } from './spec-words.ts';

/** "head-7.jpg" of its whole path. */
export const fileName = (path: string): string => path.split(/[/\\]/).at(-1) || path;

const hole = (h: string): string => subjectText(`hole:${h}`);

/** "by 2029-11-25", "or at 176336, whichever first". */
function dueParts({ on, atDistance }: Extract<Entry, { kind: 'due-noted' }>, { distance }: Units): string[] {
  const at = atDistance === undefined ? undefined : `at ${atDistance} ${distance}`;
  if (on === undefined) return [at ?? 'with no date or distance'];
  return [`by ${on}${at === undefined ? '' : ` or ${at}, whichever first`}`];
}

const foundOr = ({ from }: { from: string }): string => (from === 'lost' ? 'found again, ' : '');

/** What was bought under a name, where the name does not say it. */
function boughtWords({ sort, name, spec, replaces }: Extract<Entry, { kind: 'box-filled' }>): string {
  if (sort === 'fastener') return spec && specWords(spec) !== name ? `, ${specWords(spec)}` : ', a fastener';
  return sort === 'part' ? `, for ${replaces}` : ', a supply';
}

/** One line of words for one entry; empty where it says nothing to a reader. */
export function entryWords(entry: Entry, units: Units = metric): string {
  switch (entry.kind) {
    case 'job-opened':
      return `${entry.vehicle.label} on the bench`;
    case 'fastener-found':
      return `${hole(entry.hole)} holds ${specWords(entry.spec)}`;
    case 'hole-found-empty':
      return `${hole(entry.hole)} empty on arrival`;
    case 'fastener-slackened':
      return `${hole(entry.hole)} slack`;
    case 'fastener-removed':
      return `${hole(entry.hole)} off, to ${subjectText(entry.to)}`;
    case 'fastener-fitted': {
      const how = entry.working
        ? 'in as a working fastener'
        : entry.forNow
          ? 'on for now'
          : entry.from.startsWith('box:')
            ? 'new one in'
            : 'back';
      return `${hole(entry.hole)} ${how}${entry.substitute ? `, substitute: ${entry.substitute}` : ''}`;
    }
    case 'fastener-tightened':
      return `${hole(entry.hole)} ${entry.last ? 'tight' : entry.pass}${entry.outOfOrder ? ', out of order' : ''}`;
    case 'fastener-made-final':
      return `${hole(entry.hole)} stays`;
    case 'fastener-moved':
      return `${entry.fastener} ${foundOr(entry)}to ${subjectText(entry.to)}`;
    case 'fastener-lost':
    case 'piece-lost':
      return `lost${entry.where ? ` at ${entry.where}` : ''}${entry.reaches ? ', can reach the works' : ''}`;
    case 'search-made':
      return `searched by ${entry.how}`;
    case 'loss-ruled-out':
      return `${entry.lost} not in the vehicle, says ${entry.who}`;
    case 'fastener-condemned':
      return `${entry.fastener} condemned: ${entry.because}`;
    case 'fastener-broken':
      return `${entry.fastener} broken, ${entry.pieces.length} piece${entry.pieces.length === 1 ? '' : 's'} besides its head`;
    case 'piece-moved':
      return `${entry.piece} ${foundOr(entry)}to ${subjectText(entry.to)}`;
    case 'fastener-measured':
      return `${entry.what} ${entry.measuredMm} mm, limit ${entry.limitMm} mm`;
    case 'hole-left-empty':
      return `${hole(entry.hole)} stays empty, says ${entry.who}`;
    case 'wants-stated':
      return `${hole(entry.hole)} wants ${specWords(entry.spec)}`;
    case 'spec-corrected':
      return `what ${sortOf(entry.at) === 'hole' ? 'is in' : 'lies in'} ${subjectText(entry.at)} is ${specWords(entry.spec)}`;
    case 'holes-exchanged':
      return `${hole(entry.one)} was really ${hole(entry.other)}`;
    case 'suspicion-dismissed':
      return `${hole(entry.hole)} meant so${entry.because === 'meant so' ? '' : `: ${entry.because}`}`;
    case 'looked-again':
      return `${hole(entry.hole)} looked at again${entry.who ? ` by ${entry.who}` : ''}`;
    case 'thread-chased':
      return `${hole(entry.hole)} thread chased`;
    case 'repair-step':
      return `${hole(entry.hole)} ${entry.step}${entry.millimetres ? ` ${entry.millimetres} mm${entry.step === 'drilled' ? ' across' : ''}` : ''}`;
    case 'stray-found':
      return `stray ${entry.stray} in ${subjectText(entry.at)}: ${specWords(entry.spec)}`;
    case 'stray-moved':
      return `stray ${entry.stray} in ${subjectText(entry.to)}`;
    case 'stray-settled':
      return `stray ${entry.stray} ${entry.as.replaceAll('-', ' ')}`;
    case 'part-removed':
      return `${entry.part} off`;
    case 'part-fitted':
      return `${entry.part} ${entry.forNow ? 'on for now' : 'back'}`;
    case 'part-replaced':
      return `${entry.part} renewed`;
    case 'part-made-final':
      return `${entry.part} stays`;
    case 'part-judged':
      return `old ${entry.part}: ${entry.verdict}${entry.marking ? `, marked ${entry.marking}` : ''}`;
    case 'companions-seen':
      return `companions of ${entry.area} seen`;
    case 'blind-holes-dry':
      return `blind holes of ${entry.area} dry`;
    case 'direction-seen':
      return `direction right at ${entry.area}`;
    case 'connection-parted':
      return `${entry.connection} parted`;
    case 'connection-made':
      return `${entry.connection} made${entry.forNow ? ' for now' : ''}`;
    case 'temporary-put-in':
      return `${entry.temporary} in`;
    case 'temporary-taken-out':
      return `${entry.temporary} out`;
    case 'all-masked':
      return `masked: ${entry.areas.join(', ')}`;
    case 'all-unmasked':
      return 'masks away, chips out';
    case 'box-filled':
      return `in the box: ${entry.quantity > 1 ? `${entry.quantity} ` : ''}${entry.name}${boughtWords(entry)}`;
    case 'box-used':
      return `used: ${entry.name}`;
    case 'box-moved':
      return `${entry.name} to ${subjectText(entry.to)}`;
    case 'fluid-drained':
      return `${entry.circuit} drained`;
    case 'fluid-filled':
      return `${entry.circuit} filled${entry.fluid === entry.circuit ? '' : ` with ${entry.fluid}`}${entry.litres ? `, ${entry.litres} l` : ''}`;
    case 'oil-level-seen':
      return 'engine oil level looked at';
    case 'leak-checked':
      return `${entry.circuit} dry ${entry.how}`;
    case 'finding-made':
      return `finding ${entry.finding} at ${subjectText(entry.at)}: ${entry.what}`;
    case 'owner-told':
      return `owner told of ${entry.finding}${entry.how ? ` ${entry.how}` : ''}`;
    case 'finding-closed':
      return `finding ${entry.finding} ${entry.how}`;
    case 'face-cleaned':
      return `${entry.face} clean`;
    case 'bead-laid':
      return entry.label.product === noSealant.product
        ? `${entry.face} goes on without sealant`
        : `${entry.label.product} laid on ${entry.face}`;
    case 'conditions-noted':
      return `bench ${temperatureText(entry.celsius, units)}${entry.humidityPct === undefined ? '' : `, ${entry.humidityPct} %`}`;
    case 'clock-confirmed':
      return 'the time shown is right';
    case 'tensioner-live':
      return `tensioner live: ${entry.how}`;
    case 'tension-reset':
      return 'tension set anew, two more turns';
    case 'rotation-begun':
      return `check rotation of ${entry.drive} begun`;
    case 'crank-turned':
      return entry.backwards
        ? 'turned backwards, the count starts again'
        : `${entry.quarters} quarter${entry.quarters === 1 ? '' : 's'} turned`;
    case 'mark-read':
      return entry.teethOff === 0 ? `mark ${entry.mark} stands` : `mark ${entry.mark} off by ${entry.teethOff}`;
    case 'locks-slid':
      return 'every lock slides';
    case 'tension-read':
      return `tension ${entry.right ? 'right' : 'not right'} by ${entry.how}`;
    case 'bind-felt':
      return 'bind felt';
    case 'bind-explained':
      return `bind: ${entry.cause}`;
    case 'tray-counted':
      return `tray ${entry.tray} counted: ${entry.count}`;
    case 'box-counted':
      return `${entry.name} in the parts box counted: ${entry.count}`;
    case 'scrap-counted':
      return `scrap pile counted: ${entry.count}`;
    case 'holes-counted':
      return `${holesSaid(entry.count)} counted at ${entry.area}`;
    case 'calls-struck':
      return `struck: line ${entry.lines.join(', ')}`;
    case 'calls-restored':
      return `restored: ${entry.lines.join(', ')}`;
    case 'service-ordered':
      return `${entry.service} ordered`;
    case 'service-done':
      return `${entry.service} done`;
    case 'service-dropped':
      return `${entry.service} dropped: ${entry.because}`;
    case 'registration-noted':
      return `registration ${entry.registration}`;
    case 'odometer-noted':
      return `odometer ${entry.distance} ${entry.unit}`;
    case 'road-test-waived':
      return `no road test: ${entry.because}`;
    case 'job-waiting':
      return `waiting for ${entry.who}: ${entry.because}${entry.until ? `, until ${entry.until}` : ''}`;
    case 'released':
      return `released by ${entry.who}`;
    case 'reopened':
      return `reopened by ${entry.who}: ${entry.because}`;
    case 'left-unreleased':
      return `left unreleased: ${entry.because}`;
    case 'photo-noted':
      return `photo of ${subjectText(entry.at)}: ${fileName(entry.file)}${entry.words ? `, ${entry.words}` : ''}`;
    case 'note-made':
      return entry.words;
    case 'due-noted':
      return `due: ${[entry.what, ...dueParts(entry, units)].join(', ')}`;
    case 'area-declared':
    case 'hole-declared':
    case 'behind-declared':
    case 'part-declared':
    case 'connection-declared':
    case 'face-declared':
    case 'drive-declared':
    case 'circuit-declared':
    case 'temporary-declared':
    case 'product-declared':
    case 'tray-declared':
      return declaredWords(entry, units);
    case 'tools-out':
      return 'tools out';
    case 'engine-started':
      return 'engine started';
    case 'pedal-firm':
      return 'brake pedal firm';
    case 'car-lowered':
      return 'car on its wheels';
    case 'car-moved':
      return 'car moved';
    case 'road-tested':
      return 'road tested';
    case 'job-resumed':
      return 'job goes on';
  }
}
