// What each entry does to a hole. Physical fitting only: a wrong spec or a wrong order is no misfit.
import type { Entry, EntryOf } from '../entry.ts';
import type { CalledOfHole, HoleState, Occupant, Reached } from '../hole-states.ts';
import { type Hole, nameOf } from '../subjects.ts';
import { type Misfit, misfit } from './misfit.ts';

const nothingCalled: CalledOfHole = {
  touchedAt: 0,
  openedAt: 0,
  openings: [],
  changedAt: 0,
  lookedAt: 0,
  foundEmptyAt: 0,
  levels: [],
  passes: [],
  findings: [],
  pieces: [],
  temporaries: [],
  repair: [],
  chasedAt: 0,
};
export const freshHole = (hole: Hole): HoleState => ({ hole, called: nothingCalled });

const touched = (n: number) => ({ touchedAt: n, changedAt: n });
/** Opened and changed, but not touched: a correction speaks of what was found, nobody's hand was on it. */
const corrects = (c: CalledOfHole, n: number) => ({ changedAt: n, openedAt: n, openings: [...c.openings, n] });
const opened = (c: CalledOfHole, n: number) => ({ ...corrects(c, n), touchedAt: n });
const reached = (c: CalledOfHole, n: number, level: Reached['level']) => [...c.levels, { n, level }];
const without = (all: readonly string[], gone: string) => all.filter((one) => one !== gone);

export function evolveHole(before: HoleState | undefined, entry: Entry, n: number, hole: Hole): HoleState | Misfit {
  const state = before ?? freshHole(hole);
  if (entry.kind === 'hole-declared') {
    const { kind: _, ...said } = entry;
    return { ...state, declared: { ...state.declared, ...said } };
  }
  const called = evolveCalled(state.called, entry, n, hole);
  return called === misfit ? misfit : { ...state, called };
}

function evolveCalled(c: CalledOfHole, entry: Entry, n: number, hole: Hole): CalledOfHole | Misfit {
  switch (entry.kind) {
    case 'fastener-found':
      return c.levels.length > 0 ? misfit : found(c, entry, n);
    case 'hole-found-empty':
      return c.levels.length > 0 ? misfit : { ...c, ...touched(n), foundEmptyAt: n, levels: reached(c, n, 'off') };
    case 'fastener-slackened':
    case 'fastener-removed':
    case 'fastener-tightened':
    case 'fastener-made-final':
      return c.occupant?.fastener === entry.fastener ? evolveOccupied(c, c.occupant, entry, n) : misfit;
    case 'fastener-fitted':
      return c.occupant ? misfit : fitted(c, entry, n);
    case 'fastener-condemned':
    case 'fastener-measured':
      return holds(c, entry.fastener) ? { ...c, changedAt: n } : misfit;
    case 'spec-corrected':
      return corrected(c, entry, n, hole);
    case 'fastener-lost':
      return c.occupant?.fastener === entry.fastener ? emptied(c, n) : misfit;
    case 'fastener-moved':
      return misfit;
    case 'fastener-broken':
      return broken(c, entry, n, hole);
    case 'piece-moved':
      return moved(c, entry, hole);
    case 'piece-lost':
      return c.pieces.includes(entry.piece) ? { ...c, pieces: without(c.pieces, entry.piece) } : misfit;
    case 'hole-left-empty':
      return c.occupant ? misfit : leftEmpty(c, entry, n);
    case 'wants-stated':
      return { ...c, changedAt: n, stated: entry.spec };
    case 'suspicion-dismissed':
      return c.first === entry.fastener ? { ...c, meantSo: meantSo(entry, n) } : misfit;
    case 'looked-again':
      return { ...c, lookedAt: n };
    case 'thread-chased':
      return { ...c, chasedAt: n };
    case 'repair-step':
      return { ...c, ...touched(n), levels: stirred(c, n), repair: [...c.repair, stepOf(entry, n)] };
    case 'finding-made':
      return { ...c, findings: [...c.findings, entry.finding], ...(isWrongHere(c, entry) && { firstIsWrong: true }) };
    case 'finding-closed':
      return c.findings.includes(entry.finding) ? { ...c, findings: without(c.findings, entry.finding) } : misfit;
    case 'temporary-put-in':
      return c.temporaries.includes(entry.temporary)
        ? misfit
        : { ...c, temporaries: [...c.temporaries, entry.temporary] };
    case 'temporary-taken-out':
      return c.temporaries.includes(entry.temporary)
        ? { ...c, temporaries: without(c.temporaries, entry.temporary) }
        : misfit;
    default:
      return c;
  }
}

const holds = (c: CalledOfHole, fastener: string): boolean => c.occupant?.fastener === fastener;

const isWrongHere = (c: CalledOfHole, { fastener, wrongOne }: EntryOf<'finding-made'>): boolean =>
  wrongOne === true && fastener !== undefined && fastener === c.first;

function meantSo(
  { kind: _, hole: _hole, ...said }: EntryOf<'suspicion-dismissed'>,
  n: number,
): CalledOfHole['meantSo'] {
  return { n, ...said };
}

/** A thread is repaired in an empty hole: it may be the first that is called of it. */
function stirred(c: CalledOfHole, n: number): CalledOfHole['levels'] {
  if (c.levels.length === 0) return reached(c, n, 'off');
  // S2: touched, it presses its face no longer as found, and not as called either.
  return c.occupant?.level === 'as-found' ? reached(c, n, 'on') : c.levels;
}

function stepOf({ step, millimetres, words }: EntryOf<'repair-step'>, n: number) {
  return { n, step, ...(millimetres !== undefined && { millimetres }), ...(words !== undefined && { words }) };
}

function found(c: CalledOfHole, entry: EntryOf<'fastener-found'>, n: number): CalledOfHole {
  return {
    ...c,
    first: entry.fastener,
    own: entry.fastener,
    occupant: { fastener: entry.fastener, spec: entry.spec, level: 'as-found' },
    levels: reached(c, n, 'as-found'),
  };
}

function leftEmpty(c: CalledOfHole, { who, because }: EntryOf<'hole-left-empty'>, n: number): CalledOfHole {
  return { ...c, ...touched(n), leftEmpty: { who, because }, levels: reached(c, n, 'left') };
}

function fitted(c: CalledOfHole, entry: EntryOf<'fastener-fitted'>, n: number): CalledOfHole {
  const { fastener, spec, forNow, working, substitute, newPattern } = entry;
  const occupant: Occupant = {
    fastener,
    spec,
    level: 'on',
    ...(forNow && { forNow }),
    ...(working && { working }),
    ...(substitute !== undefined && { substitute }),
    ...(newPattern && { newPattern }),
  };
  const { leftEmpty: _, ...rest } = c;
  return {
    ...rest,
    ...touched(n),
    occupant,
    ...(!working && { own: fastener }),
    levels: reached(c, n, 'on'),
    passes: [],
  };
}

function evolveOccupied(
  c: CalledOfHole,
  occupant: Occupant,
  entry: EntryOf<'fastener-slackened' | 'fastener-removed' | 'fastener-tightened' | 'fastener-made-final'>,
  n: number,
): CalledOfHole {
  if (entry.kind === 'fastener-removed') return emptied(c, n);
  if (entry.kind === 'fastener-slackened') {
    return {
      ...c,
      ...opened(c, n),
      occupant: { ...occupant, level: 'slack' },
      levels: reached(c, n, 'slack'),
      passes: [],
    };
  }
  if (entry.kind === 'fastener-made-final') {
    const { forNow: _, ...final } = occupant;
    return { ...c, occupant: final };
  }
  const { pass, last, fastener, method, tool, readNewtonMetres: read, outOfOrder } = entry;
  const level = last || occupant.level === 'tight' ? 'tight' : 'snug';
  return {
    ...c,
    ...touched(n),
    occupant: { ...occupant, level },
    levels: reached(c, n, level),
    passes: [
      ...c.passes,
      {
        n,
        pass,
        last,
        fastener,
        ...(method && { method }),
        ...(tool && { tool }),
        ...(read !== undefined && { readNewtonMetres: read }),
        ...(outOfOrder && { outOfOrder }),
      },
    ],
  };
}

function emptied(c: CalledOfHole, n: number): CalledOfHole {
  const { occupant: _, ...rest } = c;
  return { ...rest, ...opened(c, n), levels: reached(c, n, 'off'), passes: [] };
}

function corrected(c: CalledOfHole, entry: EntryOf<'spec-corrected'>, n: number, hole: Hole): CalledOfHole | Misfit {
  const { fastener, spec } = entry;
  if (entry.at !== `hole:${hole}`) return c;
  return holds(c, fastener) && c.occupant ? { ...c, ...corrects(c, n), occupant: { ...c.occupant, spec } } : misfit;
}

function broken(c: CalledOfHole, entry: EntryOf<'fastener-broken'>, n: number, hole: Hole): CalledOfHole | Misfit {
  const headHere = entry.at.startsWith('hole:') && nameOf(entry.at) === hole;
  if (headHere && !holds(c, entry.fastener)) return misfit;
  const here = entry.pieces.filter((p) => p.in === `hole:${hole}`).map((p) => p.piece);
  return { ...c, ...touched(n), ...(headHere && { levels: stirred(c, n) }), pieces: [...c.pieces, ...here] };
}

function moved(c: CalledOfHole, entry: EntryOf<'piece-moved'>, hole: Hole): CalledOfHole | Misfit {
  if (entry.from === entry.to) return misfit;
  if (entry.from !== `hole:${hole}`) return { ...c, pieces: [...c.pieces, entry.piece] };
  return c.pieces.includes(entry.piece) ? { ...c, pieces: without(c.pieces, entry.piece) } : misfit;
}
