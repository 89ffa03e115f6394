// What there is, said on the spot: parts, connections, faces, circuits, drives, labels; what a plan would declare.
import type { Entry } from '../../job/entry.ts';
import { learnedFront } from '../../job/learned.ts';
import { stateOf } from '../../job/ledger.ts';
import { numbersText } from '../../job/numbers-text.ts';
import { numberOf } from '../../job/subjects.ts';
import { specAt } from '../../job/tightening.ts';
import { perhaps } from '../../trade/perhaps.ts';
import { standardAtmosphere } from '../../trade/vapour.ts';
import { declare, noArea } from '../declaring.ts';
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { key, type No, type Row } from '../row.ts';
import { names } from '../slot-names.ts';

/** The area in use, and what came off before it and was still off. */
function learned({ ledger, facing: { area } }: Desk): Args {
  if (area === undefined) return {};
  const front = learnedFront(ledger, area);
  return { behind: `area:${area}`, ...(front !== undefined && { front: `area:${front}` }) };
}

/** "part cover back" declares nothing: said the other way round it is a call. Nor is a name nobody knows near one that is known. */
function slipFor({ ledger }: Desk, part: string): { no: No } | undefined {
  if (stateOf(ledger, 'part', part)) return undefined;
  const known = names(ledger, 'part');
  const [, name = part, call] = /^(.+) (off|back|stays)$/i.exec(part) ?? [];
  const meant = known.includes(name) ? `, perhaps ${JSON.stringify(name)}` : perhaps(name, known);
  // Two that differ by a figure are two.
  const isOther = call === undefined && (meant === '' || /\d/.test(part));
  if (isOther) return undefined;
  const way = call === undefined ? '' : `as "part ${call.toLowerCase()} NAME"; `;
  return {
    no: { because: `no part "${part}" is known${meant}`, instead: `${way}a new one as "part NAME held by nothing"` },
  };
}

/** All that were called of the area in use, but for hose clamps: what it is pressed by, but for a few. */
function holesHere({ ledger, facing: { area } }: Desk): string | undefined {
  const holes = area === undefined ? undefined : stateOf(ledger, 'area', area)?.holes;
  const pressing = (holes ?? []).filter((hole) => specAt(ledger, hole)?.kind !== 'clamp');
  const numbers = [...new Set(pressing.map((hole) => Number(numberOf(hole))))].sort((one, other) => one - other);
  return numbers.length > 0 ? numbersText(numbers.map(String)) : undefined;
}

export const onTheSpotRows: readonly Row[] = [
  {
    id: 'holds',
    words: ['part', 'there is a part'],
    form: '<part> [held by <heldBy:holes>] [<sits:held by nothing>] [<renew:to be renewed>]',
    label: 'part',
    help: 'A part there is: held by holes of the area in use, or by nothing, and whether it is renewed.',
    group: 'on the spot',
    keys: [],
    means: (desk, { part, heldBy, sits, renew }) =>
      ((heldBy ?? sits ?? renew) === undefined && slipFor(desk, part as string)) ||
      declare({
        kind: 'part-declared',
        part: part as string,
        heldBy: (heldBy as string[] | undefined) ?? [],
        ...(renew ? { renew: true } : {}),
      }),
  },
  {
    id: 'connection',
    words: ['connection', 'there is a connection'],
    form: '<connection> [in <area>] [of <circuit>]',
    label: 'connection',
    help: 'A plug, hose, union or clip there is, with its area and the circuit it belongs to.',
    group: 'on the spot',
    keys: [],
    means: (_desk, { connection, area, circuit }) =>
      declare({
        kind: 'connection-declared',
        connection: connection as string,
        ...(area ? { area: area as string } : {}),
        ...(circuit ? { circuit: circuit as string } : {}),
      }),
  },
  {
    id: 'face',
    words: ['face', 'sealing face'],
    form: '<face> pressed by <pressedBy:holes> [keeps in <keepsIn:list>] [under <part>] [<bead:with a bead>] [with <beads:count> beads]',
    label: 'sealing face',
    help: 'A sealing face of the area in use: the holes that press it, what it keeps in, its part, whether it wants a bead.',
    group: 'on the spot',
    questions: {
      face: 'its name, as "cover face"',
      pressedBy: 'the holes of the bolts that press it, as 1-8',
      keepsIn: 'what it keeps in, as "engine oil" (left out: nothing)',
      beads: 'how many beads it wants: 1, or more where they are laid one after the other (left out: none)',
    },
    keys: [key('a', 'sealing', { pad: '0', fresh: true, asks: ['keepsIn', 'beads'] })],
    stands: (desk, slot) => (slot === 'pressedBy' ? holesHere(desk) : undefined),
    means: (desk, { face, pressedBy, keepsIn, part, bead, beads }) =>
      desk.facing.area === undefined
        ? noArea
        : declare({
            kind: 'face-declared',
            face: face as string,
            area: desk.facing.area,
            pressedBy: pressedBy as string[],
            keepsIn: (keepsIn as string[] | undefined) ?? [],
            ...(part ? { part: part as string } : {}),
            ...(typeof beads === 'number' && beads > 1 ? { bead: beads } : bead || beads ? { bead: true } : {}),
          }),
  },
  {
    id: 'circuit',
    words: ['circuit', 'fluid circuit'],
    form: '<circuit> with <fluid:words>',
    label: 'circuit',
    help: 'A circuit and the fluid in it.',
    group: 'on the spot',
    keys: [],
    means: (_desk, { circuit, fluid }) =>
      declare({ kind: 'circuit-declared', circuit: circuit as string, fluid: fluid as string }),
  },
  {
    id: 'behind',
    words: ['behind', 'sits behind'],
    form: '<front:subject> is <behind:subject> [<until:until snug>] [<gate:as a gate>]',
    label: 'behind',
    help: 'Behind the first sits the second, which must be closed first: by key the area in use behind the one that came off before it. "rotation NAME" is the check rotation of a drive.',
    group: 'on the spot',
    questions: { front: 'what is in front', behind: 'what sits behind it' },
    keys: [key('<', ['strip', 'build'], { footer: false }), key('<', 'todo', { pad: '1' })],
    fills: learned,
    means: (_desk, { front, behind, until, gate }) =>
      declare({
        kind: 'behind-declared',
        front: front as string,
        behind: behind as string,
        until: until ? 'snug' : 'closed',
        ...(gate ? { gate: true as const } : {}),
        from: 'said',
      }),
  },
  {
    id: 'drive',
    words: ['drive', 'belt drive'],
    form: '<drive> over <areas:list> [with <parts:list>] [marks <marks:list>] [tensioner <tensioner:sprung|plunger|set|none>] [turns <turns:count>] [crank bolt <crankBolt:hole>] [teeth <beltTeeth:count> <crankTeeth:count>]',
    label: 'drive',
    help: 'What keeps crank and cam in time: its areas, parts, marks, tensioner, turns of the check. A crank bolt is named where the sprocket has no key; teeth are those of the belt, then of the crank sprocket.',
    group: 'on the spot',
    keys: [],
    means: (_desk, { drive, areas, parts, marks, tensioner, turns, crankBolt, beltTeeth, crankTeeth }) =>
      declare({
        kind: 'drive-declared',
        drive: drive as string,
        areas: areas as string[],
        parts: (parts as string[] | undefined) ?? [],
        marks: (marks as string[] | undefined) ?? [],
        turns: (turns as number | undefined) ?? 2,
        tensioner: (tensioner as 'sprung' | undefined) ?? 'none',
        ...(crankBolt ? { crankBolt: crankBolt as string } : {}),
        crankKeyed: crankBolt === undefined,
        ...(beltTeeth ? { teeth: { belt: beltTeeth as number, crank: crankTeeth as number } } : {}),
      }),
  },
  {
    id: 'label',
    words: ['label', 'product label'],
    form: '<product> <kind:moisture|anaerobic|non-setting|dry> [skin <skin:number>] [fill <fill:hours>] [run <run:hours>] [full <full:hours>] [at <celsius:temperature> <humidity:number>] [lowest <lowest:temperature>]',
    label: 'product label',
    help: 'A sealant\u2019s label: skin minutes; to fill, run and full cure hours, or "40 min"; at degrees Celsius and % humidity (left out: the standard 23 and 50), lowest temperature.',
    group: 'on the spot',
    keys: [],
    means: (_desk, args) => {
      const given = (name: string, to: string) => (args[name] === undefined ? {} : { [to]: args[name] });
      return declare({
        kind: 'product-declared',
        label: {
          product: args.product,
          kind: args.kind,
          ...given('skin', 'skinMinutes'),
          ...given('fill', 'fillHours'),
          ...given('run', 'runHours'),
          ...given('full', 'fullHours'),
          labelCelsius: args.celsius ?? standardAtmosphere.value.celsius,
          labelHumidityPct: args.humidity ?? standardAtmosphere.value.humidityPct,
          ...given('lowest', 'lowestCelsius'),
        },
      } as Entry);
    },
  },
];
