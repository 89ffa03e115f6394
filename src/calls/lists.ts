// Which list a screen shows. The rows of the shelf and of the settings are the session's, since they are
// files.
import type { ScreenId } from '../view/screens.ts';
import type { Keymap } from './bindings.ts';
import type { Desk } from './desk.ts';
import type { Rows } from './listed.ts';
import { boxRows } from './lists/box.ts';
import { findingRows } from './lists/findings.ts';
import { helpRows } from './lists/help.ts';
import { holeRows } from './lists/holes.ts';
import { leavingRows } from './lists/leaving.ts';
import { logRows } from './lists/log.ts';
import { rotationRows } from './lists/rotation.ts';
import { sealingRows } from './lists/sealing.ts';
import { serviceRows } from './lists/services.ts';
import { todoRows } from './lists/todo.ts';

/** @param before the screen that help was asked for on */
export function listedOn(screen: ScreenId, before: ScreenId, desk: Desk, keymap: Keymap): Rows {
  switch (screen) {
    case 'services':
      return serviceRows(desk);
    case 'todo':
      return todoRows(desk);
    case 'strip':
      return holeRows(desk, 'loosening');
    case 'build':
      return holeRows(desk, 'tightening');
    case 'findings':
      return findingRows(desk);
    case 'rotation':
      return rotationRows(desk, keymap);
    case 'sealing':
      return sealingRows(desk, keymap);
    case 'box':
      return boxRows(desk);
    case 'leaving':
      return leavingRows(desk);
    case 'log':
      return logRows(desk);
    case 'help':
      return helpRows(desk, before, keymap);
    case 'glance':
    case 'settings':
    case 'shelf':
      return [];
  }
}
