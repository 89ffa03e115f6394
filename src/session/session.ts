// The running job: the ledger as it stands, what is faced, the last answer, and whether it is saved. One way to run a
// call on it, whoever calls. It paints nothing and knows no rule.

import { createStore } from 'zustand/vanilla';
import type { Desk, PlanOffer } from '../calls/desk.ts';
import { whereNext } from '../calls/lacking.ts';
import { readLine } from '../calls/line-reader.ts';
import { askedInWords, type Meant, meantBy, type Row } from '../calls/row.ts';
import { sheetWay } from '../calls/sheet-way.ts';
import { decide, type Override } from '../job/decide.ts';
import { type Line, type Stamp, whyNotWritten } from '../job/line.ts';
import { appendLine, readLog } from '../job/log.ts';
import type { Said } from '../job/said.ts';
import { isFault } from '../store/fault.ts';
import { photographAt } from '../store/photograph.ts';
import { fileNameOf } from '../store/places.ts';
import { plainDeep, plainText } from '../trade/plain-text.ts';
import { firstFacing } from '../view/facing.ts';
import { backToArea, backWords } from './back-to-area.ts';
import { areaFaced, keptFaced, lastFaced } from './faced.ts';
import { knownAnew } from './known-anew.ts';
import { lookOn } from './look-on.ts';
import { mindOf } from './minded.ts';
import { onceMore, putAwayWords, putsAway, tooQuick } from './once-more.ts';
import { refusingOn } from './refusing.ts';
import type { Answer, Doubts, Session, SessionOptions, SessionState } from './session-shape.ts';
import { takenWords } from './taken-words.ts';

const noPlanOffers: readonly PlanOffer[] = [];
const noPlans = () => noPlanOffers;

type How = { override?: Override; row?: Row; doubt?: { of: Row; doubts: Doubts } };
const isKey = (by: Line['by']): boolean => by === 'key' || by === 'pad';
const runOf = (lines: readonly Line[]): number => lines.reduce((most, line) => Math.max(most, line.run), 0) + 1;

export function createSession({
  job,
  clock,
  plans = noPlans,
  plansLeftOut = () => 0,
  products = [],
  intervals = {},
  workshop = {},
  program = 'countback',
  photo = photographAt,
  reminders = () => [],
  facing = {},
  ledger = readLog(job.lines()),
}: SessionOptions): Session {
  const run = runOf(job.lines());
  const store = createStore<SessionState>(() => ({
    ledger,
    facing: { ...firstFacing, ...lastFaced(job.lines()), ...facing },
    savedTo: ledger.lines.length,
    looking: job.mode === 'look',
  }));
  const again = onceMore();
  const back = backToArea();
  let saving: Promise<void> = Promise.resolve();

  let shop = workshop;

  const now = (): Stamp => ({ ...clock(), run });
  const desk = (): Desk => ({
    ledger: store.getState().ledger,
    facing: store.getState().facing,
    now: now(),
    plans,
    plansLeftOut,
    products,
    intervals,
    ...shop,
  });
  const { answered, no, refuse, refusedBy, mayNotCall, mayNotWrite } = refusingOn(store, { job, desk });

  function carryOut(row: Row, meant: Meant, by: Line['by'], doubts: Doubts): Answer {
    const before = back.leadsTo(row, by, store.getState().answer);
    if (before) {
      store.setState({ facing: before });
      return answered({ kind: 'faced', text: backWords(before) });
    }
    if (putsAway(row, by, store.getState().answer)) {
      again.noneAsked();
      return answered({ kind: 'faced', text: putAwayWords });
    }
    if ('no' in meant) return mayNotCall(row) ?? refuse(meant.no);
    if ('step' in meant) return { kind: 'step', step: meant.step };
    if ('again' in meant) {
      const refused = again.refused();
      return refused
        ? say(refused.row, refused.said, by, { override: meant.again })
        : no('nothing was refused that could be answered', 'go on');
    }
    if ('face' in meant && !('say' in meant)) {
      const { facing, answer: shown } = store.getState();
      const held = isKey(by) && meant.passes?.() ? again.heldAt(row, meant.face, facing, shown, now()) : undefined;
      if (held) return answered(held);
      store.setState({ facing: { ...facing, ...meant.face } });
      const answer = answered({ kind: 'faced', text: meant.answer });
      back.chose(answer, shown, facing, meant.face);
      return answer;
    }
    if ('photo' in meant) return noted(row, meant, by);
    // On the keyboard the same again is an answer (O5); in a list of lines two alike neighbours are ordinary.
    const pressed = isKey(by);
    const { answer: shown, facing } = store.getState();
    const isPointed = facing.hole !== undefined;
    const held = pressed && !isPointed ? again.heldBack(row.id, meant.say, shown, now()) : undefined;
    if (held) return answered(held);
    const byHabit = again.isByHabit(row.id) || row.answeredInWords === true;
    const sameAgain = pressed && !byHabit && again.answersRefusal(row.id, meant.say);
    // A key that bounces or is held down is no answer: the refusal stands until it could have been read.
    if (sameAgain && !again.couldBeRead(now())) return answered(tooQuick(shown as Answer));
    return say(row.id, meant.say, by, {
      ...(sameAgain && { override: { because: 'done already' } }),
      ...(pressed && { row }),
      doubt: { of: row, doubts },
    });
  }

  /** The core never reads a file: what the photograph is, is said to it. */
  function noted(row: Row, meant: { say: Said; photo: string }, by: Line['by']): Answer {
    try {
      return say(row.id, { ...meant.say, ...photo(meant.photo) }, by);
    } catch (thrown) {
      if (!isFault(thrown)) throw thrown;
      return no(`${thrown.what}: ${thrown.where}`, thrown.next);
    }
  }

  /** @param how `row`: its key was pressed, and work goes on after it; `doubt`: whose call it is, and what comes of what it is asked once */
  function say(call: string, said: Said, by: Line['by'], { override, row, doubt }: How = {}): Answer {
    const stop = mayNotWrite();
    if (stop) return stop;
    const { ledger, facing } = store.getState();
    const at = now();
    const decided = decide(ledger, plainDeep(said), at, override);
    if ('refused' in decided) {
      if (decided.refused.kind === 'order') again.wasRefused(call, said, at);
      else again.noneRefused();
      const { kind } = decided.refused;
      const againSays = kind === 'order' && row !== undefined && !again.isByHabit(call) && !row.answeredInWords;
      // All of it is done: where work goes on is named.
      const onwards = decided.refused.instead === 'go on' && row?.group === 'build' ? whereNext(row, desk()) : {};
      return refusedBy(decided.refused, { ...(againSays && { againSays: call }), ...onwards });
    }
    again.noneRefused();
    const shown = store.getState().answer;
    const isAsked = doubt !== undefined && doubt.doubts !== 'meant' && !again.isMeant(said, shown, at);
    const once = isAsked ? doubt.of.asksOnce?.(desk(), said) : undefined;
    if (once && doubt?.doubts === 'asked') return answered(again.asks(once, call, said, shown, at));
    again.noneAsked();
    const n = ledger.lines.length + 1;
    const { area, tray } = facing;
    const { entries, overrides } = decided;
    const faced = { ...(area !== undefined && { area }), tray };
    const line: Line = { n, ...at, call, by, facing: faced, ...(overrides && { overrides }), entries };
    // A line that could not be read again would close the whole job.
    const unwritten = whyNotWritten(line);
    if (unwritten) return no(`this cannot be written down (${unwritten})`, 'say it otherwise');
    const after = appendLine(ledger, line);
    const remembered = knownAnew(line, after).flatMap(reminders);
    const mind = mindOf(line, {
      before: { ...desk(), ledger },
      after,
      warnings: [...(once && doubt?.doubts === 'minded' ? [once.because] : []), ...(decided.warnings ?? [])],
      // On the bench they stand in a block of their own.
      remembered: by === 'line' ? remembered : remembered.slice(0, 1),
    });
    store.setState({
      ledger: after,
      facing: { ...keptFaced(facing, entries), ...areaFaced(said) },
      ...(remembered.length > 0 && { remembered }),
    });
    save(line);
    const next = row?.after?.(desk(), said) ?? {};
    store.setState((s) => ({ facing: { ...s.facing, ...next } }));
    const taken = takenWords({ before: ledger, after, line, mind, facing, next, row, units: shop.units });
    const isRelease = line.entries.some(({ kind }) => kind === 'released');
    const text = isRelease ? `${taken}. Its sheet: ${sheetWay(fileNameOf(job.path), program)}` : taken;
    const otherwise = row?.otherwise?.(line.entries, said, desk());
    const answer = answered({ kind: 'taken', text, n: line.n, call, ...(otherwise && { otherwise }) });
    if (next.area !== undefined && next.area !== facing.area) again.wentOn(call, answer, next.area, at);
    else again.wentNowhere();
    return answer;
  }

  function save(line: Line): void {
    const done = job.append(line).then((saved) => {
      if (saved.saved) store.setState((s) => ({ savedTo: Math.max(s.savedTo, line.n), notSaved: undefined }));
      else store.setState({ notSaved: saved.fault });
    });
    saving = saving.then(() => done);
  }

  const endLooking = lookOn(job, store, (fault) => void no(fault, 'leave, and open the job again'));

  return {
    store,
    job,
    now,
    desk,
    // What was heard the ear has asked already.
    run(row, args, by, isChosen) {
      if (isChosen) again.wentNowhere();
      return carryOut(row, meantBy(row, desk(), args), by, isKey(by) ? 'asked' : 'meant');
    },
    runLine(text, by = 'line', doubts = isKey(by) ? 'asked' : 'minded') {
      const read = readLine(desk(), plainText(text));
      if ('why' in read) {
        const { why: text, ...rest } = read;
        return answered({ kind: 'refused', text, ...rest });
      }
      // What a key would be asked, a typed line has answered before.
      const asked = askedInWords(read.row, desk(), read.args);
      if (asked) return no(asked.title, asked.inWords);
      return carryOut(read.row, meantBy(read.row, desk(), read.args), by, doubts);
    },
    suits({ name, trays, units }) {
      shop = { name, trays, units };
    },
    refuse: (row, no) => void (mayNotCall(row) ?? refuse(no)),
    putAway(to) {
      const { answer } = store.getState();
      again.noneRefused();
      const isOver = answer?.kind === 'refused' && (answer.by === undefined || answer.by === `to-${to}`);
      if (answer?.kind === 'asked' || isOver) store.setState({ answer: undefined });
      if (answer?.kind !== 'refused' || isOver || !answer.againSays) return;
      const { againSays: _, ...rest } = answer;
      answered(rest);
    },
    alsoSays(words) {
      const { answer } = store.getState();
      if (answer?.kind === 'taken' || answer?.kind === 'faced')
        answered({ ...answer, text: `${answer.text}. ${words}` });
    },
    face: (faced) => store.setState((s) => ({ facing: { ...s.facing, ...faced } })),
    settled: () => saving,
    async retry() {
      const saved = await job.retry();
      if (!saved.saved) return store.setState({ notSaved: saved.fault });
      // The last answer may be a call that was refused for it.
      const answer: Answer = { kind: 'faced', text: 'saved: every call is on the disk' };
      store.setState((s) => ({ savedTo: s.ledger.lines.length, notSaved: undefined, answer }));
    },
    close() {
      endLooking?.();
      return saving.then(() => job.close());
    },
  };
}
