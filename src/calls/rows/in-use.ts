// What is in use: the area, the tray, the fastener; what stays set until it is changed.
import { restOf } from '../../job/area-rest.ts';
import { holesUncounted } from '../../job/counts.ts';
import { every } from '../../job/ledger.ts';
import { fastenerKinds, makes, type Spec } from '../../job/spec.ts';
import { areaOf, subjectText } from '../../job/subjects.ts';
import { whatHangs } from '../../job/what-hangs.ts';
import type { Desk } from '../desk.ts';
import { facedAt, facedPast, facedWords, isInTurn, nextArea } from '../next-area.ts';
import { methodThere, otherSide, specThere } from '../other-side.ts';
import { key, type No, type Row } from '../row.ts';
import { inUse } from '../spec-in-use.ts';
import { specWords } from '../spec-words.ts';
import { anotherKnown } from '../taken-next.ts';
import { isOneMore, unknownTray } from '../trays.ts';
import { declareMethod } from '../whose-figure.ts';

const sizeKeys: [string, string][] = [
  ['8', 'hex 8'],
  ['0', 'hex 10'],
  ['2', 'hex 12'],
  ['3', 'hex 13'],
  ['4', 'hex 14'],
  ['6', 'hex 16'],
  ['7', 'hex 17'],
  ['9', 'hex 19'],
];

const kindKeys: [string, string][] = [
  ['b', 'bolt'],
  ['n', 'nut'],
  ['v', 'screw'],
  ['k', 'clip'],
];

/** Kinds that have no head and no thread: with them those of the fastener before are forgotten. */
const withoutHead: ReadonlySet<string> = new Set(['clip']);
/** What goes on it keeps its head and its thread; how long the bolt was, of which class and how shaped is not said of it. */
const withoutShank: ReadonlySet<string> = new Set(['nut', 'washer', 'cap']);
function keptOf({ head, thread, ...rest }: Spec, kind: string | undefined): Spec {
  if (withoutHead.has(kind ?? '')) return {};
  const isOther = kind !== undefined && rest.kind !== undefined && kind !== rest.kind;
  const isNutNow = isOther && (withoutShank.has(kind) || withoutShank.has(rest.kind ?? ''));
  return { ...(isNutNow ? {} : rest), ...(head !== undefined && { head }), ...(thread !== undefined && { thread }) };
}

/** K4: what is off waits for a look yet, before its first fastener goes back. */
function noneComesOff({ ledger }: Desk): No {
  const because = 'no other area has a fastener left to come off';
  const further = { instead: 'see what else is to come off', by: 'to-todo' };
  const toCount = [...every(ledger, 'area')].filter((a) => holesUncounted(ledger, a) !== null).map(({ area }) => area);
  return toCount.length === 0
    ? { because, ...further }
    : {
        because,
        instead: `count the holes of ${toCount.join(', ')} by eye, each with its area in use`,
        by: 'holes',
        or: further,
      };
}

/** What belongs to no area, or to one of which no fastener was called, waits all the same. */
function noneGoesBack({ ledger, now }: Desk): No {
  const hanging = whatHangs(ledger, now).filter(({ what }) => ['part-off', 'in', 'parted', 'drained'].includes(what));
  const named = hanging.slice(0, mostHanging).map(({ words }) => words);
  const left = hanging.length - named.length;
  const waits = named.length > 0 ? `, but ${named.join(', ')}${left > 0 ? ` and ${left} more` : ''}` : '';
  return {
    because: `no other area has a fastener that goes back now${waits}`,
    instead: 'see what is open',
    by: 'to-leaving',
  };
}
const mostHanging = 3;

export const inUseRows: readonly Row[] = [
  {
    id: 'area',
    words: ['area', 'at'],
    form: '<area>',
    spoken: ['work on the <area> from here'],
    label: 'area',
    help: 'Take an area in use, or name a new one; holes are numbered within it. In an area of no plan the tray its fasteners lie in comes into use with it.',
    group: 'in use',
    keys: [key('a', ['strip', 'build'], { pad: '8' })],
    means: (desk, { area }) => {
      const face = facedAt(desk, area as string);
      return { face, answer: `at ${facedWords(face)}` };
    },
  },
  {
    id: 'next-area',
    words: ['next area', 'on to the next'],
    form: '',
    spoken: ['go on to the next area'],
    label: 'next area',
    help: 'Take the next area in use that has something left: in their order to take off, from the last to put back, what lies at the same place first; pressed again and again it reaches each of them.',
    group: 'in use',
    keys: [key('>', 'strip', { pad: '+' }), key('>', 'build', { pad: '+', args: { back: true } })],
    means: (desk, { back }) => {
      const area = nextArea(desk, back === true);
      if (area === undefined)
        return {
          no: back ? noneGoesBack(desk) : noneComesOff(desk),
        };
      const face = facedPast(desk, area);
      const { ledger, facing } = desk;
      const waits = back && facing.area !== undefined ? restOf(ledger, facing.area).filter((one) => one.now) : [];
      const left = waits.length > 0 ? `. Left at ${facing.area}: ${waits.map(({ words }) => words).join(', ')}` : '';
      const passes = () => isInTurn(desk, back === true);
      return { face, answer: `at ${facedWords(face)}${left}`, passes };
    },
  },
  {
    id: 'tray',
    words: ['tray', 'into'],
    form: '<tray>',
    spoken: ['next tray is now <tray>'],
    label: 'tray',
    help: 'Take a tray in use: what comes off goes there.',
    group: 'in use',
    keys: [key('t', 'strip', { pad: '7' })],
    means: (desk, { tray }) => {
      const more = isOneMore(desk, tray as string) ? ', one more: something lies in every other' : '';
      const mind = unknownTray(desk, tray as string);
      return { face: { tray: tray as string }, answer: `tray ${tray}${more}${mind ? `. Mind: ${mind}` : ''}` };
    },
  },
  {
    id: 'use',
    words: ['use', ...fastenerKinds, ...makes],
    keepsWord: true,
    form: '<spec>',
    spoken: ['change to <spec>'],
    label: 'fastener',
    help: 'Say the fastener in use: kind, head, thread x length, class. It stays until another is said.',
    group: 'in use',
    keys: [
      key('x', 'strip', { pad: '9' }),
      ...kindKeys.map(([k, kind], i) =>
        key(k, 'strip', {
          args: { spec: { kind } },
          footer: i === 0 && kindKeys.map(([one, of]) => `${one} ${of}`).join(' '),
        }),
      ),
    ],
    questions: {
      spec: (_args, { facing: { spec } }) =>
        `which one, as "bolt hex 10 M6x25 8.8"${specWords(spec) === 'unknown' ? '' : `; in use: ${specWords(spec)}`}`,
    },
    means: (desk, { spec, merge }) => {
      const said = spec as Spec;
      // A thread or a length alone is said of the fastener in use; another head of its kind.
      const adds = merge || (said.kind === undefined && said.head === undefined);
      const { kind } = desk.facing.spec;
      const before = adds ? keptOf(desk.facing.spec, said.kind) : said.kind === undefined && kind ? { kind } : {};
      const next: Spec = { ...before, ...said };
      return { face: inUse(desk, next), answer: `now ${specWords(next)}${anotherKnown(desk, next)}` };
    },
  },
  {
    id: 'head',
    words: ['head', 'socket size'],
    form: '<spec>',
    spoken: ['change socket size to <spec:socket>', 'star head <spec:star>'],
    label: 'head size',
    help: 'Change the head of the fastener in use; thread and length are forgotten with it.',
    group: 'in use',
    keys: sizeKeys.map(([k, head], i) => key(k, 'strip', { args: { spec: { head } }, footer: i === 0 && '0-9 head' })),
    means: (desk, { spec }) => {
      const kind = desk.facing.spec.kind ?? 'bolt';
      const next = { kind, ...(spec as Spec) } as Spec;
      return { face: inUse(desk, next), answer: `now ${specWords(next)}${anotherKnown(desk, next)}` };
    },
  },
  {
    id: 'other-side',
    words: ['as the other side', 'same as there'],
    form: '[<what:fastener|figure>]',
    label: 'as the other side',
    help: 'What the area of the same name on the other side of the car has and this one lacks: the fastener in use while stripping, the figures it is tightened to on the way back. It is offered with its words, and nothing is taken from there by itself.',
    group: 'in use',
    keys: [
      key('"', 'strip', { args: { what: 'fastener' }, footer: false }),
      key('"', 'build', { args: { what: 'figure' }, footer: false }),
    ],
    means: (desk, { what }) => {
      const figure = what === 'fastener' ? undefined : methodThere(desk);
      if (figure) return declareMethod(figure.whose, figure.method);
      const there = what === 'figure' ? undefined : specThere(desk);
      if (there) return { face: inUse(desk, there.spec), answer: `now ${specWords(there.spec)}, as at ${there.from}` };
      const other = otherSide(desk);
      return {
        no: other
          ? { because: `nothing is known at ${other} that is wanted here`, instead: 'say it here' }
          : { because: 'no area of this name on the other side is known', instead: 'say it here' },
      };
    },
  },
  {
    id: 'point',
    words: ['hole', 'point at'],
    form: '<hole>',
    spoken: ['point at hole <hole>'],
    label: 'this hole',
    help: 'Point at a hole: the next call speaks of it.',
    group: 'in use',
    keys: [key('#', ['strip', 'build'], { pad: '-', footer: false })],
    means: (_desk, { hole }) => ({
      face: { area: areaOf(hole as string), hole: hole as string },
      answer: subjectText(`hole:${hole}`),
    }),
  },
];
