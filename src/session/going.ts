// Where one goes and comes back to: to a screen and the row that waits there, from a row to its place, and by Escape to
// what was before. It calls nothing on the job.
import { cap } from '../calls/key-caps.ts';
import { keyOf, waySaid } from '../calls/key-names.ts';
import { rowById } from '../calls/table.ts';
import { type Ledger, stateOf } from '../job/ledger.ts';
import { mayLeave } from '../job/open-points.ts';
import type { ScreenId } from '../view/screens.ts';
import { helped, workedOn } from '../view/view.ts';
import { screenFor } from './leading.ts';
import type { Answer, Session } from './session-shape.ts';
import type { Floor } from './steps.ts';
import { backToRow, goTo, pickedOf, rowsLeft, startWhereItWaits } from './walking.ts';

const leadingElsewhere = ['to-strip', 'to-build', 'to-leaving', 'to-shelf'];
const isReleased = (ledger: Ledger): boolean => (stateOf(ledger, 'vehicle', 'vehicle')?.releasedAt ?? 0) > 0;
const labelOf = (screen: ScreenId): string => rowById.get(`to-${screen}`)?.label ?? screen;
/** A refusal, or what was asked once, stands on the screen. */
const hasNo = (at: Session | undefined): boolean =>
  ['refused', 'asked'].includes(at?.store.getState().answer?.kind ?? '');

export type Going = {
  to(screen: ScreenId): void;
  /** Over the screen that is up, and away again. */
  help(): void;
  /** What is picked is opened, or gone to where it is. */
  choose(): void;
  leave(): void;
};

export function createGoing({ get, set, around, doors, carryOut, open, refreshShelf }: Floor): Going {
  const { session, desk, step } = around;
  /** The rows that were picked on the lists of this job as they were left. */
  const left = new WeakMap<Session, Map<ScreenId, readonly string[]>>();
  const rowsOf = (at: Session) => left.get(at) ?? left.set(at, new Map()).get(at);
  const leaveRow = (at = session()) => at && rowsOf(at)?.set(get().view.screen, rowsLeft(around));
  const findRow = (at = session()) => backToRow(around, (at && rowsOf(at)?.get(get().view.screen)) ?? []);
  /** How all stood when Escape found nothing to put away. */
  let stayed: { where: string; ledger: Ledger } | undefined;
  /** What was answered on the screen before: put away with the list it came along to. */
  let cameWith: Answer | undefined;
  const come = () => {
    cameWith = session()?.store.getState().answer;
  };

  function to(screen: ScreenId): void {
    const { view, keymap } = get();
    if (screen === 'shelf') void refreshShelf();
    if (screen === 'settings') return view.screen === screen ? undefined : step({ to: screen, from: view.screen });
    // The key that laid it over a screen takes it away.
    if (screen === 'glance' && view.screen === screen) return step({ to: view.before });
    // Without a job every other screen would be empty.
    if (!session() && screen !== 'shelf') return;
    const isThere = view.screen === screen;
    if (!isThere) {
      session()?.putAway(screen);
      leaveRow();
    }
    step({ to: screen });
    if (!isThere) {
      findRow();
      come();
    }
    if (screen === 'todo' && isThere) return step({ move: Number.NEGATIVE_INFINITY, of: 1 });
    const sentTo = startWhereItWaits(around);
    const again = `${keyOf(keymap, 'todo', 'to-todo')} again: the top of the list.`;
    const { area } = desk().facing;
    const where = area === undefined ? 'on the whole car' : `at ${area}`;
    if (sentTo?.name === 'mind') set({ note: `To be minded ${where}. ${again}` });
  }

  function help(): void {
    const { view } = get();
    step({ to: view.screen === 'help' ? helped(view) : 'help' });
    come();
    step({ move: view.screen === 'help' ? 0 : Number.NEGATIVE_INFINITY, of: 1 });
  }

  function choose(): void {
    const row = pickedOf(around);
    if (!row) return;
    if (get().view.screen === 'shelf') return void takeFromShelf(row.key);
    if (get().view.screen === 'settings') {
      const setting = rowById.get(row.key);
      return setting ? carryOut(setting, {}) : set({ note: `Only the file holds it: ${doors.settingsFile?.path}` });
    }
    if (!row.leads) return set({ note: `No place belongs to this row. ${keysSaid(['next-group', 'leave'])}.` });
    const { screen: from } = get().view;
    if (from === 'leaving' && (row.leadsOn ?? screenFor(row.leads)) === from)
      return set({ note: `That is called here: ${keysSaid(['next-call'])}.` });
    leaveRow();
    goTo(around, row.leads, row.leadsOn);
    come();
    const { screen } = get().view;
    if (screen === from) return;
    const { goesOnBy = '' } = row;
    const key = keyOf(get().keymap, from, goesOnBy);
    const goesOn = key === '' ? '' : `, where ${rowById.get(goesOnBy)?.label} goes on: ${key}`;
    set({ note: `${openedFrom(from)}${goesOn}.` });
  }

  /** One that cannot be opened leads to its newest copy, where there is one. */
  async function takeFromShelf(path: string): Promise<void> {
    const brokenNow = () => get().shelf?.find((one) => one.path === path)?.broken;
    // It may have been put right meanwhile, elsewhere.
    if (brokenNow()) await refreshShelf();
    const broken = brokenNow();
    if (!broken) return open(path);
    if (!broken.copy) return set({ word: broken.why });
    await open(broken.copy.path);
  }

  function leave(): void {
    const { view } = get();
    const at = session();
    if (at && desk().facing.hole && !view.from) return at.face({ hole: undefined });
    if (hasNo(at)) {
      const isOpened = !workedOn.has(view.screen) || view.from !== undefined;
      const isOfBefore = at?.store.getState().answer === cameWith && isOpened;
      at?.store.setState({ answer: undefined });
      if (!isOfBefore) return view.from && set({ note: `Put away. ${openedFrom(view.from)}.` });
    }
    if (view.screen === 'help') return step({ to: helped(view) });
    if (view.screen === 'glance') return step({ to: view.before });
    if (view.screen === 'shelf')
      return set({ note: `${cap.leave} leaves nothing here. ${keysSaid(['choose', 'quit'])}.` });
    if (view.from) return backTo(view.from);
    if (!at) return step({ to: 'shelf' });
    if (view.screen === 'todo' && view.todoFrom !== 'shelf') return backTo(view.todoFrom ?? 'strip');
    if (!workedOn.has(view.screen)) return backTo(view.trail?.at(-1) ?? view.work ?? 'strip');
    // Once too often by habit leads nowhere, and after that to the shelf: never where the same letters mean other calls.
    const { ledger } = at.store.getState();
    const where = JSON.stringify(view);
    const again = stayed?.where === where && stayed.ledger === ledger;
    stayed = again ? undefined : { where, ledger };
    if (again) return to('shelf');
    set({ note: `No question stands here. ${cap.leave} again: the shelf. ${keysSaid(leadingElsewhere)}.` });
  }
  /** To where a list was opened from; a car that may leave does not go by being left. */
  function backTo(screen: ScreenId): void {
    const { view, keymap } = get();
    leaveRow();
    step({ to: screen });
    findRow();
    const back = `Back: ${labelOf(screen)}.`;
    const isReady = view.screen === 'leaving' && mayLeave(desk().ledger, desk().now) && !isReleased(desk().ledger);
    const way = waySaid(keymap, screen, 'release');
    set({ note: isReady ? `Not released: nothing is open, and release was not called (${way}). ${back}` : back });
  }
  const openedFrom = (from: ScreenId): string =>
    `${labelOf(get().view.screen)}, opened from ${labelOf(from)}. ${wayBack(from)}`;
  /** A keypad has no key that leaves: the screen it was opened from is gone to again. */
  function wayBack(from: ScreenId): string {
    const { view, keymap } = get();
    return keymap.pad ? `${keyOf(keymap, view.screen, `to-${from}`)} leads back` : keysSaid(['leave']);
  }
  /** "S Strip, B Build": what leads on from here. */
  function keysSaid(calls: readonly string[]): string {
    const { view, keymap } = get();
    const said = calls.flatMap((id) => {
      const key = id === `to-${view.screen}` ? '' : keyOf(keymap, view.screen, id);
      return key === '' ? [] : [`${key} ${rowById.get(id)?.label}`];
    });
    return said.join(', ');
  }

  return { to, help, choose, leave };
}
