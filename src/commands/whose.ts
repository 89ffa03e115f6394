// whose: where a fastener that is left over belongs, or what is left over for a hole. It reads the job and writes nothing.
import type { Desk } from '../calls/desk.ts';
import { nextWords } from '../calls/line-reader.ts';
import { specWords } from '../calls/spec-words.ts';
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import { readLog } from '../job/log.ts';
import { doubtOfNumber } from '../job/number-jump.ts';
import type { Said } from '../job/said.ts';
import { fastenerKinds, type Spec, specSchema } from '../job/spec.ts';
import { type Hole, holeIn, subjectText, withinArea } from '../job/subjects.ts';
import { type Candidate, whose as candidatesOf, type InHand } from '../job/whose.ts';
import { settlingCalls } from '../job/whose-calls.ts';
import { whatFits } from '../job/whose-hole.ts';
import { candidatePlace } from '../job/whose-words.ts';
import { machineClock } from '../session/clock.ts';
import { type Answer, isRefused, refused } from '../trade/answer.ts';
import { readHead } from '../trade/heads.ts';
import { plainText } from '../trade/plain-text.ts';
import { threadNamed } from '../trade/threads.ts';
import { firstFacing } from '../view/facing.ts';
import { type Command, exits, type Parsed } from './answer.ts';
import { openToLook, orFault } from './opening.ts';
import { notOne } from './slips.ts';

const ofFastener = ['kind', 'head', 'thread', 'length', 'class', 'coating', 'tray'] as const;
/** No fastener on a vehicle is longer. */
const longestMm = 2000;

/** One line of the answer, and the same as data. */
type Told = { line: string; data: object };

export const whose: Command = {
  name: 'whose',
  usage:
    'whose JOB [--head 12] [--thread M8] [--length 25] [--class 8.8] [--coating zinc] [--kind bolt] [--tray 3] [--json], or whose JOB --hole "cam cover 7"',
  help: 'where a fastener left over belongs, likeliest first, and the call that settles it; with --hole what is left over for that hole; with neither every stray called',
  options: { json: 'flag', hole: 'value', ...Object.fromEntries(ofFastener.map((name) => [name, 'value' as const])) },
  run: (args, out) =>
    orFault(out, async () => {
      const [named] = args.names;
      if (named === undefined || args.names.length > 1) {
        out.complain(`countback: ${notOne(args.names)}; ${whose.usage}`);
        return exits.usage;
      }
      const asked = inHandOf(args);
      if (isRefused(asked)) {
        out.complain(`countback: ${asked.refused}`);
        return exits.usage;
      }
      const job = await openToLook(named, out);
      try {
        const lines = job.lines();
        const now = { ...machineClock()(), run: (lines.at(-1)?.run ?? 0) + 1 };
        const desk: Desk = { ledger: readLog(lines), facing: firstFacing, now, plans: () => [] };
        const told = toldOf(desk, args.values.get('hole'), asked);
        if (isRefused(told)) {
          out.complain(`countback: ${told.refused}`);
          return exits.usage;
        }
        const text = args.flags.has('json')
          ? JSON.stringify(
              told.flatMap(({ data }) => ('place' in data ? [data] : [])),
              null,
              2,
            )
          : told.map(({ line }) => plainText(line, Number.POSITIVE_INFINITY)).join('\n');
        out.write(`${text}\n`);
        return exits.fine;
      } finally {
        await job.close();
      }
    }),
};

/** What is said of the fastener; undefined where nothing is. */
function inHandOf({ values }: Parsed): Answer<{ stray?: InHand }> {
  const given = ofFastener.filter((name) => values.has(name));
  if (given.length > 0 && values.has('hole'))
    return refused(`--hole asks what is left over for it: --${given[0]} has no part in it`);
  if (given.length === 0) return {};
  const spec = specOf(values);
  if (isRefused(spec)) return spec;
  if (Object.keys(spec).length === 0)
    return refused('a tray alone tells nothing: say head, thread, length, class, coating or kind');
  const tray = values.get('tray');
  return { stray: { spec, ...(tray !== undefined && { tray }) } };
}

function specOf(values: ReadonlyMap<string, string>): Answer<Spec> {
  const [kind, head, thread, length, grade] = ['kind', 'head', 'thread', 'length', 'class'].map((n) => values.get(n));
  const known: readonly string[] = fastenerKinds;
  if (kind !== undefined && !known.includes(kind)) return refused(`"${kind}" is no kind: ${known.join(', ')}`);
  // A bare number is what the spanner says.
  const readAs = head !== undefined && /^[\d./ ]+$/.test(head.trim()) ? `hex ${head.trim()}` : head;
  const readAsHead = readAs === undefined ? undefined : readHead(readAs);
  if (isRefused(readAsHead)) return readAsHead;
  const readAsThread = thread === undefined ? undefined : threadNamed(thread);
  if (isRefused(readAsThread)) return readAsThread;
  const lengthMm = length === undefined ? undefined : Number(length.replace(/ ?mm$/, ''));
  if (lengthMm !== undefined && !(lengthMm > 0 && lengthMm <= longestMm))
    return refused(`"${length}" is no length in millimetres`);
  if (grade !== undefined && !/^[\w.-]{1,20}$/.test(grade)) return refused(`"${grade}" is no property class`);
  const coating = values.get('coating')?.toLowerCase();
  if (!specSchema.shape.coating.safeParse(coating).success)
    return refused(`"${coating}" is no coating: one word, as zinc`);
  return {
    ...(kind !== undefined && { kind: kind as Spec['kind'] }),
    ...(readAsHead && { head: readAsHead.written }),
    ...(readAsThread && { thread: readAsThread.name }),
    ...(lengthMm !== undefined && { lengthMm }),
    ...(grade !== undefined && { class: grade }),
    ...(coating !== undefined && { coating }),
  };
}

function toldOf(desk: Desk, hole: string | undefined, { stray }: { stray?: InHand }): Answer<Told[]> {
  const { ledger } = desk;
  if (hole !== undefined) {
    const at = holeNamed(ledger, hole);
    return at === undefined
      ? refused(`"${hole}" is no hole of this job: ${holesThere(ledger, hole)}`)
      : toldOfHole(desk, at);
  }
  if (stray?.tray !== undefined && !stateOf(ledger, 'tray', stray.tray)) {
    const trays = [...every(ledger, 'tray')].map((t) => t.tray);
    return refused(`no tray "${stray.tray}" on this job${trays.length > 0 ? `; there are ${trays.join(', ')}` : ''}`);
  }
  if (stray) return toldOfStray(desk, stray, candidatesOf(ledger, [stray])[0] ?? []);
  const called = [...every(ledger, 'stray')].filter((s) => !s.settled);
  const hands = called.map(({ spec, place }): InHand => ({ spec, tray: place.replace(/^tray:/, '') }));
  if (called.length === 0)
    return [{ line: 'no stray was called: say what is known of the fastener in the hand', data: {} }];
  return candidatesOf(ledger, hands).flatMap((all, i) => {
    const { id, spec } = called[i] as (typeof called)[number];
    const head: Told = { line: `stray ${id}: ${specWords(spec)}`, data: {} };
    return [head, ...toldOfStray(desk, hands[i] as InHand, all, id)];
  });
}

function holeNamed(ledger: Ledger, text: string): Hole | undefined {
  const parts = /^(.+?)[ /](\d{1,4}(?: [a-z]+(?: \d)?)?)$/.exec(text.trim());
  const area = [...every(ledger, 'area')].find((a) => a.area.toLowerCase() === parts?.[1]?.toLowerCase())?.area;
  const hole = area === undefined ? undefined : holeIn(area, parts?.[2] ?? '');
  return hole !== undefined && stateOf(ledger, 'hole', hole) ? hole : undefined;
}

/** What there is instead: the holes of the area that was named, else the areas. */
function holesThere(ledger: Ledger, text: string): string {
  const areas = [...every(ledger, 'area')];
  const area = areas.find((a) => text.trim().toLowerCase().startsWith(a.area.toLowerCase()));
  if (!area)
    return `say an area and a number; the areas are ${areas.map((a) => a.area).join(', ') || 'not called yet'}`;
  const known = area.holes.map((hole) => withinArea(hole)).join(', ');
  return `of ${area.area} ${known === '' ? 'none is' : `${known} are`} called so far`;
}

const callsText = (desk: Desk, calls: readonly Said[]): string => calls.map((said) => nextWords(desk, said)).join('; ');

function toldOfStray(desk: Desk, hand: InHand, candidates: readonly Candidate[], stray?: string): Told[] {
  return candidates.map((one): Told => {
    const call = callsText(desk, settlingCalls(desk.ledger, one, hand, stray));
    const { as, place, holes, verdict, share } = one;
    const doubts = holes.flatMap((hole) => doubtOfNumber(desk.ledger, hole) ?? []);
    const because = [one.because, ...doubts].join('; ');
    return {
      line: `${verdict}: ${candidatePlace(one)}: ${because}${call === '' ? '' : ` -> ${call}`}`,
      data: {
        ...(stray !== undefined && { stray }),
        place,
        as,
        holes,
        verdict,
        because,
        call,
        share: Number(share.toFixed(3)),
      },
    };
  });
}

function toldOfHole(desk: Desk, hole: Hole): Told[] {
  const found = whatFits(desk.ledger, hole);
  if (found.length === 0)
    return [{ line: `nothing that lies in a tray or in the box goes into ${subjectText(`hole:${hole}`)}`, data: {} }];
  return found.map(({ of, spec, place, verdict, because, call }): Told => {
    const words = call ? callsText(desk, [call]) : '';
    const many = of.length > 1 ? `${of.length} x ` : '';
    return {
      line: `${verdict}: ${many}${specWords(spec)}, ${subjectText(place)}: ${because}${words === '' ? '' : ` -> ${words}`}`,
      data: { place, of, spec, verdict, because, call: words },
    };
  });
}
