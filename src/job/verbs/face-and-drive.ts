// Verbs on sealing faces and on the check rotation of a drive.
import { z } from 'zod';
import { faceOpenedAt } from '../beads.ts';
import { type Product, productSchema } from '../entries/declared.ts';
import type { Entry } from '../entry.ts';
import { no, traysCounted } from '../guards.ts';
import { stateOf } from '../ledger.ts';
import {
  driveHolesOpen,
  driveOpenedAt,
  drivePartsOff,
  locksIn,
  rotationNeeded,
  runningTry,
  tensionerNotLive,
  wantedOfTry,
} from '../rotation.ts';
import type { DriveState } from '../states.ts';
import { nameSchema } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';

const face = z.strictObject({ face: nameSchema });
const isFace: Guard<{ face: string }> = {
  code: 'no-such-face',
  rule: 'S1',
  kind: 'footing',
  needs: ['face'],
  // Its declaration may be struck and a bead still be on it.
  check: (s, said) =>
    stateOf(s.ledger, 'face', said.face) ? null : no(`there is no sealing face ${said.face}`, 'declare the face'),
};
const clean = verb('clean-face', face, [isFace], (_s, said) => [{ kind: 'face-cleaned', ...said }]);

const labelOf = (s: Standing, said: { product?: string; label?: Product }): Product | undefined =>
  said.label ?? (said.product ? stateOf(s.ledger, 'product', said.product)?.label : undefined);
const lay = verb(
  'lay-bead',
  z.strictObject({ face: nameSchema, product: nameSchema.optional(), label: productSchema.optional() }),
  [
    isFace,
    {
      code: 'product-not-on-the-list',
      rule: 'S1',
      kind: 'rule',
      needs: ['product'],
      check: (s, said) =>
        labelOf(s, said)
          ? null
          : no(`${said.product ?? 'the product'} is not on the workshop's list`, 'put its label on the list'),
    },
    {
      code: 'face-not-clean',
      rule: 'S1',
      kind: 'rule',
      needs: ['face'],
      check(s, said) {
        const f = stateOf(s.ledger, 'face', said.face);
        return f && f.cleanedAt > faceOpenedAt(s.ledger, f)
          ? null
          : no(`${said.face} was not called clean since it was opened`, 'clean it, and call it clean', [
              `face:${said.face}`,
            ]);
      },
    },
  ],
  (s, said) => [{ kind: 'bead-laid', face: said.face, label: labelOf(s, said) as Product }],
);

const drive = z.strictObject({ drive: nameSchema });
const driveOf = (s: Standing, name: string) => stateOf(s.ledger, 'drive', name);
const isDrive: Guard<{ drive: string }> = {
  code: 'no-such-drive',
  rule: 'R1',
  kind: 'footing',
  needs: ['drive'],
  check: (s, said) =>
    driveOf(s, said.drive)?.declared ? null : no(`there is no drive ${said.drive}`, 'declare the drive'),
};

const live = verb(
  'tensioner-live',
  z.strictObject({ drive: nameSchema, how: z.enum(['pin pulled', 'plunger released', 'set and tight']).optional() }),
  [isDrive],
  (s, said) => {
    const usual = {
      sprung: 'pin pulled',
      plunger: 'plunger released',
      set: 'set and tight',
      none: 'set and tight',
    } as const;
    return [
      {
        kind: 'tensioner-live',
        drive: said.drive,
        how: said.how ?? usual[driveOf(s, said.drive)?.declared?.tensioner ?? 'set'],
      },
    ];
  },
);

/** R2, one guard a reason, for turning the engine; most are asked only where its drive is or was open. */
const ready = (
  code: string,
  why: (s: Standing, d: DriveState) => { because: string; instead: string; places: string[] } | null,
  always = false,
): Guard<{ drive: string }> => ({
  code,
  rule: 'R2',
  kind: 'gate',
  needs: ['drive'],
  check(s, said) {
    const d = driveOf(s, said.drive);
    if (!d || (!always && driveOpenedAt(s.ledger, d) === 0)) return null;
    const stop = why(s, d);
    return stop ? no(stop.because, stop.instead, stop.places) : null;
  },
});
const readyToTurn: Guard<{ drive: string }>[] = [
  ready('drive-part-off', (s, d) => {
    const off = drivePartsOff(s.ledger, d);
    return off[0]
      ? { because: `${off[0]} is off`, instead: `put ${off[0]} on`, places: off.map((p) => `part:${p}`) }
      : null;
  }),
  ready('drive-not-tight', (s, d) => {
    const [first, ...rest] = driveHolesOpen(s.ledger, d);
    const name = first?.hole.replace('/', ' ');
    return first
      ? {
          because: `${name} is not closed`,
          instead: `bring ${name} tight`,
          places: [first, ...rest].map((h) => `hole:${h.hole}`),
        }
      : null;
  }),
  // T1: a lock holds rotation whether its drive was open or not.
  ready(
    'pin-still-in',
    (s) => {
      const locks = locksIn(s.ledger);
      return locks[0]
        ? { because: `${locks[0]} is in`, instead: `take ${locks[0]} out`, places: locks.map((l) => `temporary:${l}`) }
        : null;
    },
    true,
  ),
  ready('tensioner-not-live', (s, d) => {
    const why = tensionerNotLive(s.ledger, d);
    return why
      ? {
          because: `the tensioner is not live: ${why}`,
          instead: 'let the tensioner live, and call it',
          places: [`drive:${d.drive}`],
        }
      : null;
  }),
];

const bindExplained: Guard<{ drive: string }> = {
  code: 'bind-not-explained',
  rule: 'R5',
  kind: 'gate',
  needs: ['drive'],
  check(s, said) {
    const last = driveOf(s, said.drive)?.tries.at(-1);
    return last?.failed === 'bind felt' && !last.explained
      ? no('a bind was felt and its cause is not entered', 'stop, never force; enter the cause', [
          `drive:${said.drive}`,
        ])
      : null;
  },
};
const begins = (s: Standing, name: string): boolean => {
  const d = driveOf(s, name);
  return !d || !runningTry(s.ledger, d);
};
/** K1 is asked when a try begins, not at every quarter of it. */
const countedToBegin: Guard<{ drive: string }> = {
  ...traysCounted,
  needs: ['drive'],
  check: (s, said) => (begins(s, said.drive) ? traysCounted.check(s, said) : null),
};

/** The first turn begins a try; each is called as it is made, in quarters. */
const turn = verb(
  'turn-crank',
  z.strictObject({
    drive: nameSchema,
    quarters: z.number().int().min(1).max(400),
    backwards: z.literal(true).optional(),
    /** R3: a turn backwards that the maker's own procedure asks for. */
    makersStep: z.literal(true).optional(),
  }),
  [isDrive, bindExplained, ...readyToTurn, countedToBegin],
  (s, said) => [
    ...(begins(s, said.drive) ? [{ kind: 'rotation-begun' as const, drive: said.drive }] : []),
    {
      kind: 'crank-turned',
      drive: said.drive,
      quarters: said.quarters,
      ...(said.backwards && { backwards: said.backwards }),
      ...(said.makersStep && { makersStep: said.makersStep }),
    },
  ],
);

const tryRuns: Guard<{ drive: string }> = {
  code: 'no-try-runs',
  rule: 'R3',
  kind: 'footing',
  needs: ['drive'],
  check: (s, said) =>
    begins(s, said.drive) ? no('no check rotation is running', 'turn the crank, and call the turns') : null,
};
/** R5: a mark seen off when the check had passed is a fact, and fails it. */
const marksCanBeSeen: Guard<{ drive: string }> = {
  ...tryRuns,
  check(s, said) {
    const d = driveOf(s, said.drive);
    return d && !rotationNeeded(s.ledger, d) && d.tries.at(-1)?.passedAt ? null : tryRuns.check(s, said);
  },
};
const wants = (what: 'marks' | 'tension'): Guard<{ drive: string }> => ({
  code: what === 'marks' ? 'turns-not-complete' : 'marks-not-called',
  rule: 'R4',
  kind: 'gate',
  needs: ['drive'],
  check(s, said) {
    const d = driveOf(s, said.drive);
    const t = d && runningTry(s.ledger, d);
    const now = d && t ? wantedOfTry(d, t) : undefined;
    if (now === 'turns')
      return no(
        `${((t?.quarters ?? 0) / 4).toString()} of ${(t?.need ?? 8) / 4} turns made; whole pairs only`,
        'turn on in the running direction',
      );
    return what === 'tension' && now === 'marks'
      ? no('the marks are not all called', 'call each mark, on or how many teeth off')
      : null;
  },
});
const mark = verb(
  'read-mark',
  z.strictObject({ drive: nameSchema, mark: nameSchema, teethOff: z.number().int().min(-200).max(200) }),
  [
    marksCanBeSeen,
    wants('marks'),
    {
      code: 'no-such-mark',
      rule: 'R4',
      kind: 'footing',
      needs: ['drive', 'mark'],
      check: (s, said) =>
        driveOf(s, said.drive)?.declared?.marks.includes(said.mark)
          ? null
          : no(`${said.drive} has no mark ${said.mark}`, 'name one of its marks'),
    },
  ],
  (_s, said) => [{ kind: 'mark-read', ...said }],
);
const slide = verb('slide-locks', drive, [tryRuns, wants('marks')], (_s, said) => [{ kind: 'locks-slid', ...said }]);
const tension = verb(
  'read-tension',
  z.strictObject({ drive: nameSchema, how: z.enum(['pointer', 'play', 'reading']), right: z.boolean() }),
  [tryRuns, wants('tension')],
  (_s, said) => [{ kind: 'tension-read', ...said }],
);
const reset = verb(
  'reset-tension',
  drive,
  [
    {
      code: 'no-try-to-go-on-with',
      rule: 'R6',
      kind: 'footing',
      needs: ['drive'],
      check: (s, said) =>
        driveOf(s, said.drive)?.tries.at(-1)
          ? null
          : no('no check rotation was made', 'turn the crank, and call the turns'),
    },
  ],
  (_s, said) => [{ kind: 'tension-reset', ...said }],
);
/** R5: felt before the first quarter was called, it is a try all the same. */
const bind = verb('feel-bind', drive, [isDrive, bindExplained], (s, said) => [
  ...(begins(s, said.drive) ? [{ kind: 'rotation-begun' as const, ...said }] : []),
  { kind: 'bind-felt', ...said },
]);
const explain = verb(
  'explain-bind',
  z.strictObject({ drive: nameSchema, cause: z.string().min(1).max(400) }),
  [
    {
      code: 'no-bind-felt',
      rule: 'R5',
      kind: 'footing',
      needs: ['drive'],
      check: (s, said) =>
        driveOf(s, said.drive)?.tries.at(-1)?.failed === 'bind felt'
          ? null
          : no('no bind was felt in the last try', 'nothing to explain'),
    },
  ],
  (_s, said) => [{ kind: 'bind-explained', ...said }],
);

/** The engine brought to its marks for the strip: no check, but the engine turns all the same. */
const toMarks = verb('turn-to-marks', drive, [isDrive, bindExplained, ...readyToTurn], (_s, said): Entry[] => [
  { kind: 'note-made', words: 'turned to its marks', at: `drive:${said.drive}` },
]);

export const faceAndDriveVerbs = [clean, lay, live, turn, mark, slide, tension, reset, bind, explain, toMarks];
