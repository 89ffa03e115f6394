// The screen as lines for a screen reader: what was understood first, then what is asked or comes next, then the list in
// words. No drawing, no columns, no shapes; the same state gives the same lines.
import { nextHole } from '../calls/desk.ts';
import { keyName } from '../calls/key-caps.ts';
import type { Listed, Mark } from '../calls/listed.ts';
import { pickedAt } from '../calls/listed.ts';
import { belongingsHere, holeRow } from '../calls/lists/holes.ts';
import { whyNot } from '../calls/pressing.ts';
import { openSaid, outParts } from '../calls/tally-words.ts';
import { stateOf } from '../job/ledger.ts';
import { subjectText } from '../job/subjects.ts';
import { plainText } from '../trade/plain-text.ts';
import { acting, areNumbered, offered } from '../view/view.ts';
import { answerOf } from './answer.ts';
import { greetingHead, standingWords } from './body.ts';
import { windowFrom } from './cells.ts';
import type { Scene } from './frame.ts';
import { inUseWords, savedWords, titles } from './head.ts';

const words: Record<Mark, string> = {
  open: 'open',
  half: 'half way',
  slack: 'slack',
  on: 'hand-tight',
  snug: 'snug',
  empty: 'empty',
  gated: 'gated',
  done: 'done',
  found: 'as found',
  stays: 'as found, only to be slackened',
  struck: 'struck',
  plain: '',
};
const most = 12;

export function linesToRead(scene: Scene): string[] {
  const { view, desk, session } = scene;
  const { all } = desk.ledger.tallies;
  const counts = session
    ? `: ${outParts(all).join(', ')}, ${openSaid(all)}, ${savedWords(session, desk.ledger.lines.length)}`
    : '';
  return [
    answerOf(scene).text,
    ...(view.asking
      ? askedLines(scene)
      : scene.greeting
        ? [greetingHead(scene), ...scene.greeting, 'Any key goes on.']
        : nextLines(scene)),
    `${titles[view.screen]}${counts}`,
    ...(session ? [inUseWords(scene)] : []),
    ...(view.asking ? [] : [...listLines(scene), keysLine(scene)]),
  ].flatMap((line) => {
    const plain = plainText(line).replace(/\s+/g, ' ').trim();
    return plain === '' ? [] : [plain];
  });
}

function askedLines({ view: { asking } }: Scene): string[] {
  if (!asking) return [];
  const choices = offered(asking);
  const first = Math.floor(Math.max(0, asking.at) / 9) * 9;
  const shown = choices.slice(first, first + 9).map((choice, i) => {
    const number = areNumbered(choices) ? '' : `${i + 1}: `;
    return `${number}${choice.text}${choice.blocked ? `, not now: ${choice.blocked}` : ''}${first + i === asking.at ? ', chosen' : ''}`;
  });
  const left = choices.length - first - shown.length;
  return [
    `${asking.title}?`,
    ...(asking.why ? [asking.why] : asking.standing ? [standingWords] : []),
    ...(asking.typed === ''
      ? []
      : [`typed: ${asking.typed}${asking.tail === undefined ? '' : `… ${asking.tail.trim()}`}`]),
    ...shown,
    ...(left > 0 ? [`${left} more: page down`] : []),
  ];
}

function nextLines({ desk, view }: Scene): string[] {
  const screen = acting(view);
  if (screen !== 'strip' && screen !== 'build') return [];
  const next = nextHole(desk, screen);
  if (next === undefined) return desk.facing.area === undefined ? [] : ['nothing of this area is next'];
  const h = stateOf(desk.ledger, 'hole', next);
  const row = h && holeRow(desk, h);
  return [
    `next: ${subjectText(`hole:${next}`)}${row ? `, ${row.text.trimEnd()}${row.end ? `, ${row.end}` : ''}` : ''}`,
  ];
}

/** The picked row first, then what stands around it. */
function listLines({ view, desk, listed }: Scene): string[] {
  const onHoles = view.screen === 'strip' || view.screen === 'build';
  const at = onHoles ? 0 : Math.min(view.at[view.screen] ?? 0, listed.length - 1);
  const picked = onHoles ? undefined : listed.at(at);
  const from = windowFrom(at, listed.length, most);
  const shown = listed.slice(from, from + most);
  const others = onHoles ? belongingsHere(desk) : [];
  const left = listed.length - shown.length;
  return [
    ...(picked ? [`chosen: ${rowWords(picked)}`, ...moreOf(picked)] : []),
    ...[...shown, ...others].map(rowWords),
    ...(left > 0 ? [`${left} more`] : []),
  ];
}
const rowWords = ({ mark, name, text, end }: Listed): string =>
  [name, words[mark], text, end].filter((part) => part !== undefined && part.trim() !== '').join(', ');
const moreOf = ({ more }: Listed): string[] => {
  const said = typeof more === 'function' ? more() : more;
  return said ? [said] : [];
};

function keysLine({ view, desk, listed, keymap }: Scene): string {
  const screen = acting(view);
  const picks = screen === 'strip' || screen === 'build' ? {} : (pickedAt(listed, view.at[screen])?.picks ?? {});
  const shown = keymap.keysOn(screen).filter((b) => b.binding.footer !== false && !whyNot(b, desk, picks));
  return `keys: ${shown.map((b) => b.binding.footer ?? `${keyName(b.binding.key)} ${b.row.labelNow?.(desk) ?? b.row.label}`).join(', ')}`;
}
