// The rows at the top: which screen of which job, the counts and whether all is saved; every screen with its letter; what is in use.
import { screenIds } from '../calls/bindings.ts';
import { jobName } from '../calls/job-name.ts';
import { keyName, padQuestionKeys } from '../calls/key-caps.ts';
import { keyOf } from '../calls/key-names.ts';
import { specWords } from '../calls/spec-words.ts';
import { takenNext } from '../calls/taken-next.ts';
import { openSaid, outParts } from '../calls/tally-words.ts';
import { stateOf } from '../job/ledger.ts';
import type { Spec } from '../job/spec.ts';
import { plainText } from '../trade/plain-text.ts';
import type { ScreenId } from '../view/screens.ts';
import { acting } from '../view/view.ts';
import { fitted, spread } from './cells.ts';
import { alarmLook, type Look, quietLook } from './colours.ts';
import type { Scene } from './frame.ts';
import { endRow, plainRow, type Row, type Run } from './rows.tsx';
import { cellsOf } from './width.ts';

export const titles: Record<ScreenId, string> = {
  shelf: 'Shelf of jobs',
  services: 'Services',
  todo: 'Still to do',
  strip: 'Strip',
  build: 'Build',
  findings: 'Findings',
  rotation: 'Check rotation',
  sealing: 'Sealing and cure',
  box: 'Parts box and trays',
  leaving: 'Before it leaves',
  log: 'Log',
  settings: 'Settings',
  glance: 'Glance',
  help: 'Calls',
};

export const isOnHoles = (screen: ScreenId): boolean => screen === 'strip' || screen === 'build';

const longList = 12;
/** "12 of 80": where the picked row stands in its list. */
function placeIn({ view, listed, keymap }: Scene): string {
  const showsNoList = isOnHoles(view.screen) || view.screen === 'glance';
  if (view.asking || showsNoList || listed.length === 0) return '';
  // Where a list goes on below, one need not go through all of it.
  const across = listed.length > longList ? keyOf(keymap, view.screen, 'next-group') : '';
  const far = across === '' ? '' : `${across} next group   `;
  return `${far}${Math.min(listed.length, (view.at[view.screen] ?? 0) + 1)} of ${listed.length} `;
}

export function headRows(scene: Scene): Row[] {
  const { view, desk, session, columns } = scene;
  const vehicle = session && stateOf(desk.ledger, 'vehicle', 'vehicle');
  const { all } = desk.ledger.tallies;
  const counts = (open: string): string =>
    session ? `${[...outParts(all), open].join('  ')}  ${savedWords(session, desk.ledger.lines.length)} ` : '';
  const name = session ? jobName(desk.ledger, scene.begunAs) : '';
  const left = ` ${titles[view.screen]}${name && `  ${name}`}${vehicle?.releasedAt ? '  RELEASED' : ''}`;
  const whole = counts(openSaid(all));
  // The name goes before a word that the number is known without.
  const said = cellsOf(left) + cellsOf(whole) < columns ? whole : counts(`${all.open} open`);
  return [
    plainRow(spread(left, said, columns), session?.notSaved ? alarmLook : { inverse: true, bold: true }),
    session ? tabsRow(scene) : plainRow(fitted('', columns)),
    plainRow(spread(session ? inUseWords(scene) : '', placeIn(scene) || headKeys(scene), columns)),
  ];
}
/** "hex 8:8 0:10 2:12": which figure sets which head; the figures alone where the row has room for no more. */
function headKeys(scene: Scene): string {
  const { view, session, columns, keymap } = scene;
  if (!session || view.asking || view.screen !== 'strip') return '';
  const heads = keymap.keysOn('strip').filter(({ row, binding: { key } }) => row.id === 'head' && /^\d$/.test(key));
  if (heads.length === 0) return '';
  const sizes = heads.map(({ binding: { key, args } }) => {
    const spec = (args?.spec ?? {}) as Spec;
    return `${key}:${spec.head?.replace('hex ', '')}`;
  });
  const room = columns - cellsOf(inUseWords(scene)) - 2;
  const said = [`hex ${sizes.join(' ')} `, `heads ${heads.map(({ binding }) => binding.key).join(' ')} `];
  return said.find((one) => cellsOf(one) <= room) ?? '';
}
/** The area, the tray, and the fastener that the next call takes. */
export function inUseWords({ desk, view }: Pick<Scene, 'desk' | 'view'>): string {
  const { area, tray } = desk.facing;
  const fastener = specWords(takenNext(desk, acting(view)));
  return ` ${area === undefined ? 'no area in use' : `at ${plainText(area)}`}   into tray ${plainText(tray)}   ${fastener === 'unknown' ? '' : fastener}`;
}
const withoutTab = new Set(['to-glance', 'to-todo', 'to-settings']);
const isTab = (id: string): boolean => id.startsWith('to-') && !withoutTab.has(id);
/** Every screen with the letter that leads to it; the one that is up stands out. */
function tabsRow(scene: Scene): Row {
  const { columns, keymap, view } = scene;
  // By the keypad the figures alone are other keys.
  const list = keymap.pad ? keyOf(keymap, view.screen, 'screens') : '';
  const after = (words: string): Run[] => (list === '' ? [] : [{ text: ` ${list}${words}`, look: { bold: true } }]);
  const said = (['figures', 'names', 'none'] as const).map((beyond) => tabs(scene, beyond));
  const ways = said.flatMap((some) => [' then', ''].map((words) => [...after(words), ...some]));
  const runs = ways.find((some) => cellsIn(some) <= columns);
  return runs ? endRow(runs, columns) : plainRow(fitted(textIn(ways.at(-1) ?? []), columns), quietLook);
}
const textIn = (runs: readonly Run[]): string => runs.map(({ text }) => text).join('');
const cellsIn = (runs: readonly Run[]): number => cellsOf(textIn(runs));
/** @param beyond how the screens beyond the ninth of a keypad are told */
function tabs({ view, keymap }: Scene, beyond: 'figures' | 'names' | 'none'): Run[] {
  const all = screenIds(keymap);
  return keymap.keysOn(view.screen).flatMap(({ row, binding }) => {
    const look: Look = row.id === `to-${view.screen}` ? { bold: true } : quietLook;
    // By the keypad its number in the list of the screens; beyond the ninth the page is turned first.
    const nth = all.indexOf(row.id) + 1;
    const said = keymap.pad
      ? nth <= 9
        ? String(nth)
        : beyond === 'figures'
          ? `${padQuestionKeys.page} ${nth - 9}`
          : ' '
      : keyName(binding.key);
    const isTold = !keymap.pad || nth <= 9 || beyond !== 'none';
    return row.group === 'the screen' && isTab(row.id) && isTold ? [{ text: ` ${said} ${row.label}`, look }] : [];
  });
}
export function savedWords(session: NonNullable<Scene['session']>, lines: number): string {
  if (session.notSaved) return 'NOT SAVED';
  if (session.looking) return 'to look only';
  return session.savedTo >= lines ? 'saved' : 'saving';
}
