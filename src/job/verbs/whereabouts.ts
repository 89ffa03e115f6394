// Verbs on where fasteners lie: moved, lost and found, condemned, broken, measured, strays; and U3's corrections.
import { z } from 'zod';
import { isCritical } from '../closed.ts';
import { fastenerIdSchema, pieceIdSchema } from '../entries/fasteners.ts';
import type { Entry } from '../entry.ts';
import { fastenerState, holeState, mayNotServe, no, occupantOf } from '../guards.ts';
import { stateOf } from '../ledger.ts';
import { contradictions, specSchema, specText } from '../spec.ts';
import { areaOf, holeSchema, inHole, nameSchema, placeSchema, subjectText } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';

const reason = z.string().min(1).max(400);
const person = z.string().min(1).max(60);
const fastener = fastenerIdSchema;

const isKnown: Guard<{ fastener: string }> = {
  code: 'no-such-fastener',
  rule: 'L1',
  kind: 'footing',
  needs: ['fastener'],
  check: (s, said) =>
    fastenerState(s, said.fastener) ? null : no(`there is no fastener ${said.fastener}`, 'name its hole'),
};
const isNotInAHole: Guard<{ fastener: string }> = {
  code: 'still-in-its-hole',
  rule: 'L1',
  kind: 'footing',
  needs: ['fastener'],
  check(s, said) {
    const f = fastenerState(s, said.fastener);
    return f?.place.startsWith('hole:') ? no(`it is in ${subjectText(f.place)}`, 'call it off first') : null;
  },
};

const move = verb(
  'move-fastener',
  z.strictObject({ fastener, to: placeSchema, because: reason.optional() }),
  [
    isKnown,
    isNotInAHole,
    {
      code: 'not-a-place-to-lay',
      rule: 'L1',
      kind: 'footing',
      needs: ['to'],
      check: (s, { fastener: id, to }) =>
        to.startsWith('hole:') || to.startsWith('box:') || to === 'lost' || fastenerState(s, id)?.place === to
          ? no(`it can't be moved to ${subjectText(to)}`, 'call it back into a hole, lost, or to another tray')
          : null,
    },
  ],
  (s, said) => [
    {
      kind: 'fastener-moved',
      fastener: said.fastener,
      from: fastenerState(s, said.fastener)?.place as string,
      to: said.to,
      ...(said.because && { because: said.because }),
    },
  ],
);

const lose = verb(
  'lose-fastener',
  z.strictObject({ fastener, reaches: z.boolean(), where: z.string().max(80) }),
  [
    isKnown,
    isNotInAHole,
    {
      code: 'lost-already',
      rule: 'L9',
      kind: 'footing',
      needs: ['fastener'],
      check: (s, said) =>
        fastenerState(s, said.fastener)?.place === 'lost'
          ? no('it is called lost already', 'call it found, or the search')
          : null,
    },
  ],
  (s, said) => [
    {
      kind: 'fastener-lost',
      fastener: said.fastener,
      from: fastenerState(s, said.fastener)?.place as string,
      reaches: said.reaches,
      where: said.where,
    },
  ],
);

const lostOf = (s: Standing, lost: string) =>
  lost.startsWith('p') ? stateOf(s.ledger, 'piece', lost)?.loss : stateOf(s.ledger, 'fastener', lost)?.loss;
const anyLost = z.union([fastener, pieceIdSchema]);
const isLost: Guard<{ lost: string }> = {
  code: 'not-lost',
  rule: 'L9',
  kind: 'footing',
  needs: ['lost'],
  check: (s, { lost }) => (lostOf(s, lost) ? null : no(`${lost} is not lost`, 'name what is lost')),
};
const search = verb(
  'search',
  z.strictObject({ lost: anyLost, how: z.enum(['magnet', 'camera', 'cover off', 'sump off']) }),
  [isLost],
  (_s, said) => [{ kind: 'search-made', ...said }],
);
const ruleOut = verb(
  'rule-out-loss',
  z.strictObject({ lost: anyLost, who: person, because: reason }),
  [
    isLost,
    {
      code: 'search-not-made',
      rule: 'L9',
      kind: 'gate',
      needs: ['lost'],
      check(s, { lost }) {
        const loss = lostOf(s, lost);
        return loss?.reaches && loss.searched.length === 0
          ? no(
              'it can reach belt, gears, valves, cylinders or sump',
              'make the search first: magnet, camera, cover or sump off',
            )
          : null;
      },
    },
  ],
  (_s, said) => [{ kind: 'loss-ruled-out', ...said }],
);

const condemn = verb(
  'condemn',
  z.strictObject({ fastener, because: reason }),
  [
    isKnown,
    {
      code: 'condemned-already',
      rule: 'L8',
      kind: 'footing',
      needs: ['fastener'],
      check: (s, said) =>
        fastenerState(s, said.fastener)?.condemned ? no('it is condemned already', 'lay it on the scrap pile') : null,
    },
  ],
  (s, said) => [
    {
      kind: 'fastener-condemned',
      fastener: said.fastener,
      at: fastenerState(s, said.fastener)?.place as string,
      because: said.because,
    },
  ],
);

const breaks = verb(
  'break',
  z.strictObject({
    hole: holeSchema,
    /** Where the head is now: still in the hole, in a tray, or lost. */
    headTo: placeSchema,
    /** Each further piece: in the hole, found (on the scrap pile), or lost. */
    pieces: z
      .array(z.enum(['hole', 'found', 'lost']))
      .min(1)
      .max(8),
  }),
  [
    {
      code: 'nothing-to-break',
      rule: 'L10',
      kind: 'footing',
      needs: ['hole'],
      check: (s, { hole }) =>
        occupantOf(s, hole)
          ? null
          : no(`nothing is known to be in ${subjectText(`hole:${hole}`)}`, 'call what was found in it'),
    },
  ],
  (s, { hole, headTo, pieces }) => {
    const id = occupantOf(s, hole)?.fastener as string;
    const out: Entry[] = headTo === inHole(hole) ? [] : [{ kind: 'fastener-removed', hole, fastener: id, to: headTo }];
    const where = { hole: inHole(hole), found: 'scrap', lost: 'lost' } as const;
    const at = `hole:${hole}`;
    return [
      { kind: 'finding-made', finding: `d${s.n}.1`, at, what: 'fastener broken', when: 'during the work' },
      ...out,
      {
        kind: 'fastener-broken',
        fastener: id,
        at: headTo,
        pieces: pieces.map((p, i) => ({ piece: `p${s.n}.${i + 1}`, in: where[p] })),
      },
    ];
  },
);

const pieceOut = verb(
  'move-piece',
  z.strictObject({ piece: pieceIdSchema, to: placeSchema }),
  [
    {
      code: 'no-such-piece',
      rule: 'L10',
      kind: 'footing',
      needs: ['piece'],
      check(s, { piece, to }) {
        const p = stateOf(s.ledger, 'piece', piece);
        if (!p) return no(`there is no piece ${piece}`, 'name the piece');
        return p.place === to || to === 'lost' || to.startsWith('box:')
          ? no(`it can't be moved to ${subjectText(to)}`, 'call it found, or lost')
          : null;
      },
    },
  ],
  (s, { piece, to }) => [{ kind: 'piece-moved', piece, from: stateOf(s.ledger, 'piece', piece)?.place as string, to }],
);
const losePiece = verb(
  'lose-piece',
  z.strictObject({ piece: pieceIdSchema, reaches: z.boolean(), where: z.string().max(80) }),
  [
    {
      code: 'no-such-piece',
      rule: 'L10',
      kind: 'footing',
      needs: ['piece'],
      check(s, { piece }) {
        const p = stateOf(s.ledger, 'piece', piece);
        return p && p.place !== 'lost' ? null : no(`there is no piece ${piece} to lose`, 'name the piece');
      },
    },
  ],
  (s, said) => [{ kind: 'piece-lost', from: stateOf(s.ledger, 'piece', said.piece)?.place as string, ...said }],
);

const measure = verb(
  'measure-fastener',
  z.strictObject({
    fastener,
    what: z.string().min(1).max(60),
    measuredMm: z.number().positive().max(2000),
    limitMm: z.number().positive().max(2000),
  }),
  [
    isKnown,
    {
      code: 'beyond-the-limit',
      rule: 'L7',
      kind: 'rule',
      needs: ['fastener'],
      check: (s, said) =>
        said.measuredMm > said.limitMm
          ? no(`${said.measuredMm} mm is beyond the limit of ${said.limitMm} mm`, 'fit a new one', [
              fastenerState(s, said.fastener)?.place ?? '',
            ])
          : null,
    },
  ],
  (s, said) => [{ kind: 'fastener-measured', at: fastenerState(s, said.fastener)?.place as string, ...said }],
);

const leaveEmpty = verb(
  'leave-empty',
  z.strictObject({ hole: holeSchema, who: person, because: reason }),
  [
    {
      code: 'not-empty',
      rule: 'L1',
      kind: 'footing',
      needs: ['hole'],
      check: (s, { hole }) => {
        const h = holeState(s, hole);
        return !h?.called.touchedAt || h.called.occupant
          ? no(`${subjectText(`hole:${hole}`)} is not an empty hole`, 'call it off, or found empty')
          : null;
      },
    },
    {
      code: 'never-on-a-critical-area',
      rule: 'L11',
      kind: 'rule',
      needs: ['hole'],
      check: (s, { hole }) => {
        const h = holeState(s, hole);
        return h && isCritical(s.ledger, h, areaOf(hole))
          ? no('no hole of a critical area stays empty', 'fit a fastener', [`hole:${hole}`])
          : null;
      },
    },
  ],
  (_s, said) => [{ kind: 'hole-left-empty', ...said }],
);

const stateWants = verb(
  'state-wants',
  z.strictObject({ hole: holeSchema, spec: specSchema, because: reason }),
  [],
  (s, said) => [
    ...(stateOf(s.ledger, 'area', areaOf(said.hole))?.declared
      ? []
      : [{ kind: 'area-declared' as const, area: areaOf(said.hole) }]),
    { kind: 'wants-stated', ...said },
  ],
);

const correctSpec = verb(
  'correct-spec',
  z.strictObject({ fastener, spec: specSchema, because: reason }),
  [isKnown],
  (s, said) => [{ kind: 'spec-corrected', at: fastenerState(s, said.fastener)?.place as string, ...said }],
);

const exchangeHoles = verb(
  'exchange-holes',
  z.strictObject({ one: holeSchema, other: holeSchema, because: reason }),
  [
    {
      code: 'nothing-to-exchange',
      rule: 'U3',
      kind: 'footing',
      needs: ['one', 'other'],
      check(s, { one, other }) {
        const called = (hole: string) => (holeState(s, hole)?.called.levels.length ?? 0) > 0;
        if (one === other) return no('they are the same hole', 'name the hole it really was');
        return called(one) || called(other)
          ? null
          : no('nothing was called of either', 'name the hole that was called');
      },
    },
    {
      code: 'could-not-have-held-it',
      rule: 'U3',
      kind: 'rule',
      needs: ['one', 'other'],
      check(s, { one, other }) {
        const a = holeState(s, one);
        const b = holeState(s, other);
        for (const [from, into] of [
          [a, b],
          [b, a],
        ] as const) {
          const spec = from?.called.occupant?.spec;
          const wants = into?.declared?.wants;
          const differs = spec && wants && !from?.called.occupant?.substitute ? contradictions(wants, spec) : [];
          if (differs.length > 0 && spec) {
            return no(
              `${subjectText(`hole:${into?.hole}`)} wants another ${differs.join(', ')} than ${specText(spec)}`,
              'name the hole it really was',
            );
          }
        }
        return null;
      },
    },
  ],
  (_s, said) => [{ kind: 'holes-exchanged', ...said }],
);

const strayId = z.string().regex(/^s\d{1,8}\.\d{1,4}$/);
const stray = verb('find-stray', z.strictObject({ spec: specSchema, tray: nameSchema }), [], (s, { spec, tray }) => [
  { kind: 'stray-found', stray: `s${s.n}.1`, spec, at: `tray:${tray}` },
]);
const isStray: Guard<{ stray: string }> = {
  code: 'no-such-stray',
  rule: 'K3',
  kind: 'footing',
  needs: ['stray'],
  check(s, said) {
    const known = stateOf(s.ledger, 'stray', said.stray);
    return known && !known.settled ? null : no(`there is no stray ${said.stray} to settle`, 'name a stray');
  },
};
const settle = (s: Standing, id: string) => ({
  kind: 'stray-settled' as const,
  stray: id,
  at: stateOf(s.ledger, 'stray', id)?.place as string,
});

/** K3: it becomes a fastener in hand, its own hole's if the hole's own never was there, and can be called back. */
const giveStray = verb(
  'give-stray',
  z.strictObject({ stray: strayId, hole: holeSchema }),
  [
    isStray,
    {
      code: 'hole-is-taken',
      rule: 'L1',
      kind: 'footing',
      needs: ['hole'],
      check: (s, { hole }) =>
        occupantOf(s, hole) ? no(`${subjectText(`hole:${hole}`)} holds a fastener`, 'name an open hole') : null,
    },
    {
      code: 'wants-another',
      rule: 'L5',
      kind: 'rule',
      needs: ['stray', 'hole'],
      check(s, said) {
        const spec = stateOf(s.ledger, 'stray', said.stray)?.spec ?? {};
        const h = holeState(s, said.hole);
        const wants = h?.called.stated ?? h?.declared?.wants ?? h?.called.firstSpec;
        const differs = wants ? contradictions(wants, spec) : [];
        return differs.length > 0
          ? no(`it wants ${specText(wants ?? {})}, this is ${specText(spec)}`, 'name another hole')
          : null;
      },
    },
  ],
  (s, said) => {
    const spec = stateOf(s.ledger, 'stray', said.stray)?.spec ?? {};
    const h = holeState(s, said.hole);
    const untouched: Entry[] = h && h.called.levels.length > 0 ? [] : [{ kind: 'hole-found-empty', hole: said.hole }];
    const id = `f${s.n}.1`;
    return [
      ...untouched,
      { ...settle(s, said.stray), as: 'given', fastener: id, spec: { ...spec } },
      {
        kind: 'fastener-fitted',
        hole: said.hole,
        fastener: id,
        from: stateOf(s.ledger, 'stray', said.stray)?.place as string,
        spec,
      },
    ];
  },
);
const scrapStray = verb('scrap-stray', z.strictObject({ stray: strayId }), [isStray], (s, said) => [
  { ...settle(s, said.stray), as: 'scrapped' },
]);
const disownStray = verb(
  'disown-stray',
  z.strictObject({ stray: strayId, who: person, because: reason }),
  [isStray],
  (s, said) => [{ ...settle(s, said.stray), as: 'not-of-this-vehicle', who: said.who, because: said.because }],
);

const scrapHole = verb(
  'scrap-own',
  z.strictObject({ hole: holeSchema }),
  [
    {
      code: 'not-in-a-tray',
      rule: 'L1',
      kind: 'footing',
      needs: ['hole'],
      check(s, { hole }) {
        const own = holeState(s, hole)?.called.own;
        const f = own ? fastenerState(s, own) : undefined;
        return f?.place.startsWith('tray:')
          ? null
          : no(`the fastener of ${subjectText(`hole:${hole}`)} lies in no tray`, 'call it off first');
      },
    },
  ],
  (s, { hole }) => {
    const f = fastenerState(s, holeState(s, hole)?.called.own as string);
    const barred = f && mayNotServe(f, false);
    const condemned: Entry[] =
      f && !barred ? [{ kind: 'fastener-condemned', fastener: f.id, at: f.place, because: 'scrapped' }] : [];
    return f ? [...condemned, { kind: 'fastener-moved', fastener: f.id, from: f.place, to: 'scrap' }] : [];
  },
);

export const whereaboutsVerbs = [
  move,
  lose,
  search,
  ruleOut,
  condemn,
  breaks,
  pieceOut,
  losePiece,
  measure,
  leaveEmpty,
  stateWants,
  correctSpec,
  exchangeHoles,
  stray,
  giveStray,
  scrapStray,
  disownStray,
  scrapHole,
];
