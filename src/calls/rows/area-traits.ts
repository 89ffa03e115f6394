// What is said on the spot of an area as a whole: critical, its role, kept clean, companions. How it is drawn stands in
// drawing.ts, how it is tightened in tightening-method.ts.
import { areaRoles } from '../../job/entries/declared.ts';
import { ofArea } from '../declaring.ts';
import { key, type Row } from '../row.ts';

export const areaTraitsRows: readonly Row[] = [
  {
    id: 'critical',
    words: ['critical', 'area is critical'],
    form: '[<area>]',
    label: 'critical',
    help: 'The area carries somebody\u2019s safety: second look, no hole left empty, trades with none.',
    group: 'on the spot',
    keys: [],
    means: ofArea(() => ({ critical: true })),
  },
  {
    id: 'role',
    words: ['role', 'area belongs to'],
    form: `<role:${areaRoles.join('|')}> [in <area>]`,
    label: 'role',
    help: 'What the area belongs to: wheel, brake, steering, suspension, mount, drive, engine.',
    group: 'on the spot',
    keys: [key('r', 'strip')],
    means: ofArea(({ role }) => ({ role })),
  },
  {
    id: 'keep-clean',
    words: ['keep clean', 'no chips here'],
    form: '[<area>]',
    label: 'keep clean',
    help: 'No metal is cut while this area stands open and unmasked.',
    group: 'on the spot',
    keys: [],
    means: ofArea(() => ({ keepClean: true })),
  },
  {
    id: 'blind',
    words: ['blind holes', 'has blind holes'],
    form: '[<area>]',
    label: 'blind holes',
    help: 'The area has blind holes, to be called dry before it closes.',
    group: 'on the spot',
    keys: [],
    means: ofArea(() => ({ blindHoles: true })),
  },
  {
    id: 'marked',
    words: ['direction marked', 'routing marked'],
    form: '[<area>]',
    label: 'direction marked',
    help: 'Direction or routing was marked, to be called right before it closes.',
    group: 'on the spot',
    keys: [],
    means: ofArea(() => ({ marked: true })),
  },
  {
    id: 'has-companions',
    words: ['has companions', 'between the faces'],
    form: '<companions:list> [in <area>]',
    label: 'has companions',
    help: 'Dowels, sleeves, keys, O-rings that must not be forgotten between the faces.',
    group: 'on the spot',
    keys: [],
    means: ofArea(({ companions }) => ({ companions })),
  },
];
