// Verbs on a drive: its tensioner let live, the crank turned, a bind felt and explained. What a check
// rotation shows is called in checking-rotation.ts.
import * as z from 'zod';
import type { Entry } from '../entry.ts';
import { locksInTurn } from '../first-in.ts';
import { no, traysCounted } from '../guards.ts';
import { later } from '../later.ts';
import { stateOf } from '../ledger.ts';
import { driveHolesOpen, driveOpenedAt, drivePartsOff, runningTry, tensionerNotLive, toItsMarks } from '../rotation.ts';
import type { DriveState } from '../states.ts';
import { nameSchema } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';
import { worksSearched } from '../works-searched.ts';

export const drive = later(() => z.strictObject({ drive: nameSchema }));
export const driveOf = (s: Standing, name: string) => stateOf(s.ledger, 'drive', name);
const isDrive: Guard<{ drive: string }> = {
  code: 'no-such-drive',
  rule: 'R1',
  kind: 'footing',
  needs: ['drive'],
  check: (s, said) =>
    driveOf(s, said.drive)?.declared ? null : no(`there is no drive ${said.drive}`, 'declare the drive'),
};

/** R2: called before, it would stand as proof for a belt that is put on after it. */
const somethingToTension: Guard<{ drive: string }> = {
  code: 'nothing-to-tension',
  rule: 'R2',
  kind: 'gate',
  needs: ['drive'],
  check(s, said) {
    const d = driveOf(s, said.drive);
    const off = d ? drivePartsOff(s.ledger, d) : [];
    return off[0]
      ? no(
          `${off[0]} is off: there is nothing to tension yet`,
          `put ${off[0]} on first`,
          off.map((p) => `part:${p}`),
        )
      : null;
  },
};
const live = verb(
  'tensioner-live',
  () =>
    z.strictObject({ drive: nameSchema, how: z.enum(['pin pulled', 'plunger released', 'set and tight']).optional() }),
  [isDrive, somethingToTension],
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
      const locks = locksInTurn(s.ledger);
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
export const begins = (s: Standing, name: string): boolean => {
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
  () =>
    z.strictObject({
      drive: nameSchema,
      quarters: z.number().int().min(1).max(400),
      backwards: z.literal(true).optional(),
      /** R3: a turn backwards that the maker's own procedure asks for. */
      makersStep: z.literal(true).optional(),
    }),
  [isDrive, bindExplained, worksSearched, ...readyToTurn, countedToBegin],
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
/** R5: felt before the first quarter was called, it is a try all the same. */
const bind = verb('feel-bind', drive, [isDrive, bindExplained], (s, said) => [
  ...(begins(s, said.drive) ? [{ kind: 'rotation-begun' as const, ...said }] : []),
  { kind: 'bind-felt', ...said },
]);
const explain = verb(
  'explain-bind',
  () => z.strictObject({ drive: nameSchema, cause: z.string().min(1).max(400) }),
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
const toMarks = verb(
  'turn-to-marks',
  drive,
  [isDrive, bindExplained, worksSearched, ...readyToTurn],
  (_s, said): Entry[] => [{ kind: 'note-made', words: toItsMarks, at: `drive:${said.drive}` }],
);

export const turningVerbs = [live, turn, bind, explain, toMarks];
