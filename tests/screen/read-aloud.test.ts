// What a screen reader is given: plain lines, the last answer first, no drawing. Kept beside this file and read by eye.
import { describe, expect, it } from 'vitest';
import { linesToRead } from '../../src/screen/read-aloud.ts';
import { screens } from '../../src/view/screens.ts';
import type { View } from '../../src/view/view.ts';
import { sceneOf } from './scene.ts';

const aloud = (view: Partial<View>, more = {}) => linesToRead(sceneOf(view, more));
const drawn = /[\u2500-\u28ff]/;

describe('read aloud', () => {
  it.each(screens)('%s has no drawing, no blank line and no columns', (screen) => {
    const lines = aloud({ screen });
    expect(lines.length).toBeGreaterThan(0);
    expect(lines.filter((line) => drawn.test(line) || line.trim() === '' || /\s{2}/.test(line))).toEqual([]);
  });
  it('says the answer first, then what is next, then where one is, the holes, and the keys that would be taken', async () => {
    const answer = { kind: 'taken', text: 'cam cover 10 off, to tray 5', n: 90, call: 'off' };
    const scene = sceneOf({ screen: 'build' });
    const said = linesToRead({ ...scene, session: { savedTo: 0, looking: false, answer } as never });
    await expect(said.join('\n')).toMatchFileSnapshot('./frames/aloud-build.txt');
  });
  it('says what is asked, each choice with its number, and why not', async () => {
    const asking: View['asking'] = {
      title: 'area: area',
      row: 'area',
      slot: 'area',
      type: 'area',
      optional: false,
      typed: 'co',
      at: 1,
      choices: [
        { value: 'coolant pump', text: 'coolant pump' },
        { value: 'cam cover', text: 'cam cover', blocked: 'the mask is in' },
      ],
      why: 'there is no such area',
    };
    await expect(aloud({ screen: 'strip', asking }).join('\n')).toMatchFileSnapshot('./frames/aloud-question.txt');
  });
  it('says the picked line of a list first, with what it has to say', () => {
    const lines = aloud({ screen: 'leaving', at: { leaving: 2 } });
    const at = lines.findIndex((line) => line.startsWith('chosen: '));
    expect(lines[at]).toMatch(/^chosen: open, /);
    expect(lines.slice(at + 1).some((line) => / more$/.test(line))).toBe(true);
  });
});
