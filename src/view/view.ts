// Which screen is up, where its cursor stands, and what is being asked or typed: a plain reducer. It knows no job and
// no key; what a key means is settled before it comes here.
import type { ScreenId } from './screens.ts';

/** One thing asked for: chosen from a list, or typed. */
export type Asking = {
  /** What is asked, in words. */
  title: string;
  /** The call's row and slot it is for. */
  row: string;
  slot: string;
  type: string;
  /** May be left out with an empty answer. */
  optional: boolean;
  /** What stood there to be gone on with. */
  begun?: string;
  choices: readonly Choice[];
  typed: string;
  /** What stands behind the place where it is typed, and belongs to the answer. */
  tail?: string;
  /** The largest number that may be meant, where one that is not among the choices may. */
  most?: number;
  /** What stands typed is how it is so far: the first sign typed goes in its place, what goes back in it keeps it. */
  standing?: true;
  /** -1: nothing is pointed at. */
  at: number;
  /** Which of the choices comes next, the first one first, where they are listed otherwise. */
  turn?: readonly string[];
  /** Nothing is pointed at until an arrow goes there: a bare Enter signs with nobody's name, and leaves out what may be. */
  unpointed?: true;
  /** Why the last answer could not be read. */
  why?: string;
  /** Another of the same call was answered before it, and is asked again by the key that erases where nothing is typed. */
  after?: true;
};
export type Choice = {
  value: string;
  text: string;
  /** Why it can't be taken now, and what to do first. */
  blocked?: string;
  /** How it stands, beside it. */
  beside?: string;
  /** By what else it is found where the list is narrowed: words that do not stand in its text. */
  finds?: string;
  way?: string;
  /** It is not where the call would take it from. */
  never?: true;
};

export type View = {
  screen: ScreenId;
  /** Where help, the glance and the shelf lead back to. */
  before: ScreenId;
  /** Where help was asked for on the shelf, which itself leads back to a job. */
  helpOn?: 'shelf';
  at: Readonly<Partial<Record<ScreenId, number>>>;
  asking?: Asking;
  /** The screen a place was gone to from; leaving leads back there. */
  from?: ScreenId;
  /** The screen that what is still to do was opened from; leaving it leads back there, from a place of it too. */
  todoFrom?: ScreenId;
  /** The lists that were opened one from the other, the last one last: each leads back to the one before. */
  trail?: readonly ScreenId[];
  /** The screen that was worked on last: a list that is only looked at leads back there. */
  work?: ScreenId;
};

export const firstView: View = { screen: 'shelf', before: 'shelf', at: {} };

export type ViewStep =
  | { to: ScreenId; from?: ScreenId }
  | { move: number; of: number }
  | { ask: Asking }
  | { type: string }
  | { erase: true }
  | { empty: true }
  | { wrong: string }
  | { stopAsking: true };

/** The slot of a question that is a line of calls: what is asked of it is answered by its Enter. */
export const typedLine = 'typed line';
/** A day: its figures are typed, and stand in all that is proposed. */
export const isOfADay = ({ type }: Asking): boolean => type === 'date' || type === 'day';
/** Choices that hold what was typed, in their order. */
export const offered = (asking: Asking): readonly Choice[] => {
  const typed = asking.typed.trim().toLowerCase();
  return typed === '' || isOfADay(asking)
    ? asking.choices
    : asking.choices.filter((c) => `${c.text}\n${c.finds ?? ''}`.toLowerCase().includes(typed));
};
/** Which of them is pointed at by itself. */
export const firstInTurn = (choices: readonly Choice[], turn: readonly string[] = []): number => {
  const next = turn.find((value) => choices.some((c) => c.value === value));
  return Math.max(
    0,
    choices.findIndex((c) => c.value === next),
  );
};
/** The choices are numbers themselves, as holes and trays are: a digit then is typed, not counted off. */
export const areNumbered = (choices: readonly Choice[]): boolean => choices.some((c) => /^\d/.test(c.text));
export const longestTyped = 400;

const within = (at: number, of: number): number => Math.max(0, Math.min(at, of - 1));

/** Looked at from another screen, to which they lead back. */
const beside: ReadonlySet<ScreenId> = new Set(['help', 'shelf', 'glance']);

/** Worked on: the same letters mean other calls on each, so that none is left but by the letter of another. The rest are lists. */
export const workedOn: ReadonlySet<ScreenId> = new Set(['strip', 'build', 'rotation', 'sealing']);

/** The screen whose calls the keys make: work goes on under the glance. */
export const acting = ({ screen, before }: View): ScreenId => (screen === 'glance' ? before : screen);

/** The screen that help is about, and leads back to. */
export const helped = ({ helpOn, before }: View): ScreenId => helpOn ?? before;

export function viewed(view: View, step: ViewStep): View {
  if ('to' in step) {
    const before = beside.has(view.screen) ? view.before : view.screen;
    const { asking: _, from, trail: __, helpOn, ...rest } = view;
    const trail = trailTo(view, before, step);
    const isLook = step.to === 'help' || (view.screen === 'help' && step.to === view.before);
    const isOpened = step.to === 'todo' && before !== 'todo' && view.from !== 'todo';
    // A place that a list led to is only visited.
    const isWork = workedOn.has(acting(view)) && view.from === undefined;
    return {
      ...rest,
      screen: step.to,
      before,
      ...(step.to === 'help' && (view.screen === 'shelf' || helpOn) && { helpOn: 'shelf' as const }),
      // A look at help on the way leads back to a place that leads back.
      ...(step.from ? { from: step.from } : from && isLook && { from }),
      ...(isOpened && { todoFrom: before }),
      ...(isWork && { work: acting(view) }),
      ...(trail.length > 0 && { trail }),
    };
  }
  if ('ask' in step) return { ...view, asking: step.ask };
  const { asking } = view;
  if ('stopAsking' in step) {
    const { asking: _, ...rest } = view;
    return rest;
  }
  if ('move' in step) {
    if (asking) {
      const { standing: _, ...kept } = asking;
      return {
        ...view,
        asking: { ...kept, at: within(pointed(asking.at, step.move) + step.move, offered(asking).length) },
      };
    }
    return { ...view, at: { ...view.at, [view.screen]: within((view.at[view.screen] ?? 0) + step.move, step.of) } };
  }
  if (!asking) return view;
  if ('wrong' in step) return { ...view, asking: { ...asking, why: step.wrong } };
  const { why: _, standing: __, tail, ...still } = asking;
  const typed = typedAfter(asking, step);
  const behind = tail !== undefined && !('empty' in step) ? { tail } : {};
  const isUnpointed = typed === '' && asking.unpointed === true;
  const at = isUnpointed ? -1 : firstInTurn(offered({ ...asking, typed }), asking.turn);
  return { ...view, asking: { ...still, ...behind, typed, at } };
}
const isList = (screen: ScreenId): boolean => !workedOn.has(screen) && !beside.has(screen) && screen !== 'settings';
/** What is worked on ends it, unless a list led there and it leads back to that. */
function trailTo(
  { from, trail = [] }: View,
  before: ScreenId,
  step: { to: ScreenId; from?: ScreenId },
): readonly ScreenId[] {
  if (beside.has(step.to) || step.from !== undefined || step.to === from || step.to === before) return trail;
  if (!isList(step.to)) return [];
  const opened = [...trail, ...(from === undefined ? [] : [from]), before].filter(isList);
  const again = opened.indexOf(step.to);
  return again < 0 ? opened : opened.slice(0, again);
}
/** Where a page is turned from, or one row gone on. */
const pointed = (at: number, by: number): number => (by === 1 ? at : Math.max(0, at));
function typedAfter({ typed, standing }: Asking, step: { type: string } | { erase: true } | { empty: true }): string {
  if ('empty' in step) return '';
  if ('erase' in step) return [...typed].slice(0, -1).join('');
  return ((standing ? '' : typed) + step.type).slice(0, longestTyped);
}
