// The same key once more: a refusal that it answers (O5), a question that it means, and a key that only bounced.
import type { Once, Row } from '../calls/row.ts';
import type { Line, Stamp } from '../job/line.ts';
import type { Said } from '../job/said.ts';
import { areaOf, subjectText } from '../job/subjects.ts';
import type { Facing } from '../view/facing.ts';
import type { Answer } from './session-shape.ts';

/** Sooner, nobody has read what stands on the screen. */
export const leastMsToRead = 700;
/** The same key came before what stands there could have been read: the answer says so, and stands as it was. */
export const tooQuick = <A extends Answer>(answer: A): A =>
  answer.kind === 'asked' || answer.kind === 'refused' ? { ...answer, tooQuick: true } : answer;
/** The key that strikes puts away what was asked of a call that was not made; in words the last call is meant. */
export const putsAway = ({ id }: Row, by: Line['by'], shown: Answer | undefined): boolean =>
  id === 'strike-last' && by !== 'line' && shown?.kind === 'asked';
export const putAwayWords =
  'nothing was called yet, and it is not called now; nothing is struck, the same key again strikes the last call';

const isSame = (one: Said, other: Said): boolean => JSON.stringify(one) === JSON.stringify(other);

export function onceMore() {
  let refused: { row: string; said: Said; awakeMs: number } | undefined;
  let asked: { said: Said; answer: Answer; awakeMs: number } | undefined;
  /** What was asked of this call and still stands on the screen. */
  const standing = (said: Said, shown: Answer | undefined) =>
    asked && asked.answer === shown && isSame(asked.said, said) ? asked : undefined;

  /** The call with which work went on by itself to another area: once more by habit it means nothing there. */
  let went: { call: string; awakeMs: number; answer: Answer; area: string; past?: Answer } | undefined;

  return {
    wentOn(call: string, answer: Answer, area: string, { awakeMs }: Stamp) {
      went = { call, answer, awakeMs, area };
    },
    wentNowhere() {
      went = undefined;
    },
    isByHabit: (row: string): boolean => went?.call === row,
    /**
     * One too many at the end of an area would be the first of the next, and of a call for the whole of it all of the next:
     * that is asked once however late it comes. What the call before said stays to be read.
     */
    heldBack(
      row: string,
      { hole, area, holes }: Said,
      shown: Answer | undefined,
      { awakeMs }: Stamp,
    ): Answer | undefined {
      if (went?.call !== row || went.answer !== shown) return undefined;
      const isSoon = awakeMs - went.awakeMs < leastMsToRead;
      // A hand that has not stopped has not read: what is held back is held until it does.
      went = { ...went, awakeMs };
      if (shown.kind !== 'taken') return isSoon ? shown : undefined;
      const isWhole = hole === undefined;
      if (!isSoon && !isWhole) return undefined;
      const whole = area ?? (Array.isArray(holes) && typeof holes[0] === 'string' ? areaOf(holes[0]) : undefined);
      const again = `is for ${typeof hole === 'string' ? subjectText(`hole:${hole}`) : (whole ?? 'what comes next')}`;
      const instead = 'this key once more called nothing';
      const answer: Answer = {
        kind: 'asked',
        text: shown.text,
        instead,
        again,
        call: row,
        ...(isSoon && { tooQuick: true }),
      };
      went = { ...went, answer };
      return answer;
    },
    /** The key for the next area, where work is there by itself and nothing of it was called yet: once more goes past it. */
    heldAt({ id }: Row, face: Partial<Facing>, at: Facing, shown: Answer | undefined, { awakeMs }: Stamp) {
      if (went === undefined || went.area !== at.area) return undefined;
      const isSoon = awakeMs - went.awakeMs < leastMsToRead;
      if (went.past && (went.past !== shown || !isSoon)) return undefined;
      const answer: Answer = {
        kind: 'asked',
        text: `at ${at.area} already: work went on there by itself`,
        instead: 'nothing of it is called since',
        again: `goes past it, to ${face.area}`,
        call: id,
        ...(went.past && { tooQuick: true }),
      };
      went = { ...went, past: answer, awakeMs };
      return answer;
    },
    refused: () => refused,
    wasRefused(row: string, said: Said, { awakeMs }: Stamp) {
      refused = { row, said, awakeMs };
    },
    noneRefused() {
      refused = undefined;
    },
    answersRefusal: (row: string, said: Said): boolean => refused?.row === row && isSame(refused.said, said),
    couldBeRead: ({ awakeMs }: Stamp): boolean => awakeMs - (refused?.awakeMs ?? 0) >= leastMsToRead,

    isMeant(said: Said, shown: Answer | undefined, { awakeMs }: Stamp): boolean {
      const one = standing(said, shown);
      return one !== undefined && awakeMs - one.awakeMs >= leastMsToRead;
    },
    /** A key that bounces asks nothing anew: it would never have been asked long enough. */
    asks(
      { because: text, ...rest }: Once,
      call: string,
      said: Said,
      shown: Answer | undefined,
      { awakeMs }: Stamp,
    ): Answer {
      const one = standing(said, shown);
      if (one) one.answer = tooQuick(one.answer);
      if (one) return one.answer;
      asked = { said, answer: { kind: 'asked', text, ...rest, call }, awakeMs };
      return asked.answer;
    },
    noneAsked() {
      asked = undefined;
    },
  };
}
