// What the screens of the check rotation and of sealing say, with the keys that lead on.
import { describe, expect, it } from 'vitest';
import { type Keymap, standardKeymap } from '../../src/calls/bindings.ts';
import { rotationRows } from '../../src/calls/lists/rotation.ts';
import { sealingRows } from '../../src/calls/lists/sealing.ts';
import { listedOn } from '../../src/calls/lists.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { warningsOf } from '../../src/job/warnings.ts';
import { playLines, scriptLines, upTo } from '../jobs/lines.ts';
import { demoDesk } from '../screen/scene.ts';
import { atTheBench } from '../session/at-the-bench.ts';

const words = (text: string) => [...text].map((char) => (char === ' ' ? 'space' : char));
async function driveWith(teeth: string) {
  const at = await atTheBench();
  await at.press('n', ...words('estate'), 'enter');
  await new Promise(setImmediate);
  const lines = [
    'area idler',
    'use bolt hex 14',
    'off 1',
    'holes 1',
    `drive timing over idler marks crank, cam ${teeth}`,
  ];
  for (const line of [...lines, 'back 1', 'pass', 'pass', 'all trays empty']) at.session().runLine(line);
  const listed = () => {
    const rows = listedOn('rotation', 'strip', at.session().desk(), standardKeymap);
    return rows.slice(0, rows.length).map((row) => `${row.name} ${row.text}: ${row.end}`);
  };
  return { at, listed };
}

describe('the check rotation', () => {
  it('[R2] says before anything of it is open that the engine is brought to its marks, and before what', () => {
    const first = (text: string) => {
      const { ledger, now } = playLines(upTo(scriptLines('reference-planned.calls'), text));
      const rows = listedOn('rotation', 'strip', { ...demoDesk(), ledger, now }, standardKeymap);
      return rows.slice(0, rows.length).find(({ name }) => name === 'first');
    };
    expect(first('to marks')).toMatchObject({
      text: expect.stringMatching(/^turned to its marks, before .*flywheel lock/),
      end: 'k',
    });
    expect(first('in flywheel lock')).toBeUndefined();
  });
  it('[R8] asks for no printed mark of the belt, and says after how many turns they would meet again', async () => {
    // 123 teeth on 24: 82 turns. Source: lcm(2z, Z)/z, counted out by hand in the published checks.
    const { at, listed } = await driveWith('teeth 123 24');
    expect(listed()).toContain('belt printed marks: not asked for; meet again after 82 turns');
    for (const line of ['turned 2', 'mark on', 'mark on']) at.session().runLine(line);
    expect(at.state().ledger.lines.all.at(-1)?.entries).toMatchObject([{ kind: 'mark-read', mark: 'cam' }]);
    expect(listed()[0]).toBe('drive timing: check rotation passed');
  });
  it('[R2] takes out what keeps the drive from being turned, not what went in last', async () => {
    const { at, listed } = await driveWith('');
    for (const line of ['in cam clamp as lock at area idler', 'in mask as mask at area idler'])
      at.session().runLine(line);
    await at.press('R');
    expect(listed().join('\n')).toContain('first cam clamp is in: o');
    await at.press('o');
    expect(at.state().ledger.lines.all.at(-1)?.entries).toMatchObject([
      { kind: 'temporary-taken-out', temporary: 'cam clamp' },
    ]);
  });
  it('[R2] leads to the part that is off, and to none that the key would take before it', async () => {
    const at = await atTheBench();
    await at.press('n', ...words('estate'), 'enter');
    await new Promise(setImmediate);
    const say = (...lines: string[]) => lines.map((line) => at.session().runLine(line)).at(-1);
    say('plan inline-four belt service for timing belt', 'area lower belt cover');
    say(...[1, 2, 3, 4, 5, 6].map((n) => `off ${n}`), 'part off timing belt', 'box new timing belt for timing belt');
    const first = () => rotationRows(at.session().desk(), standardKeymap).find(({ name }) => name === 'first');
    say('area crank pulley');
    expect(first()).toMatchObject({ text: 'timing belt is off', end: 'B , r' });
    say('area lower belt cover');
    expect(first()?.end).toBe('B r');
    // Said once, whatever stands behind it by its area and by itself.
    expect(say('part back lower cover')).toMatchObject({
      text: 'lower cover back. Mind: behind it timing belt is open: off',
    });
  });
  it('reads the next mark, although the row of one that was read is picked', async () => {
    const { at } = await driveWith('');
    at.session().runLine('turned 2');
    await at.press('R', 'down', 'down', 'm', 'm');
    const read = at.state().ledger.lines.all.flatMap((line) => line.entries);
    expect(read.flatMap((entry) => (entry.kind === 'mark-read' ? [entry.mark] : []))).toEqual(['crank', 'cam']);
  });
  it('[R6] shows no mark of a try that is void, and says that the drive was opened since', async () => {
    const { at, listed } = await driveWith('');
    for (const line of ['turned 2', 'mark on', 'mark on']) at.session().runLine(line);
    expect(listed()).toContain('mark crank: stands');
    for (const line of ['slack 1', 'tight 1', 'tight 1']) at.session().runLine(line);
    expect(listed().slice(0, 4)).toEqual([
      'drive timing: check rotation to come',
      'try 1 2 of 2 turns: passed, and opened since',
      'mark crank: not read',
      'mark cam: not read',
    ]);
    await at.press('R', 'm');
    expect(at.state().answer).toMatchObject({ kind: 'refused', text: 'no check rotation is running' });
  });
  it('says what a mark that stands off is worth in degrees', async () => {
    const { at, listed } = await driveWith('teeth 123 24');
    for (const line of ['turned 2', 'mark off by 1']) at.session().runLine(line);
    expect(listed().join('\n')).toMatch(/mark crank: 1 tooth off: 15° at the crank, 7.5° at the cam/);
  });
  it('says nothing of a belt whose teeth nobody counted, and why where the counts can\u2019t be', async () => {
    expect((await driveWith('')).listed().join('\n')).not.toContain('printed marks');
    expect((await driveWith('teeth 60 50')).listed().join('\n')).toContain('does not go round');
  });
});

it('[R2 K1] says all that would refuse a turn before it is tried, each with its keys, and the counts last', () => {
  const before = (text: string) => {
    const { ledger } = playLines(upTo(scriptLines('reference-planned.calls'), text));
    const rows = rotationRows({ ...demoDesk(), ledger }, standardKeymap);
    const stand = rows.filter((row) => row.name === 'first' || row.name === 'then');
    return stand.map((row) => `${row.name} ${row.text}: ${row.end}`);
  };
  expect(before('out flywheel lock')).toEqual([
    'first flywheel lock is in, wanted again for crank pulley 1: o',
    expect.stringMatching(
      /^first nothing is in crank pulley 1 to turn it by: a working bolt: B(, a crank pulley,)? w$/,
    ),
    expect.stringMatching(/^then no count by eye stands for tray .*: P c, all others empty: P e$/),
  ]);
  expect(before('count 1 is 12')).toEqual([expect.stringMatching(/^first no count by eye stands for tray 1/)]);
  expect(before('turned 1')).toEqual([]);
});

it('[S1] names the key by which the bench is noted, where nothing cures before it is', () => {
  const { ledger } = playLines(upTo(scriptLines('reference-planned.calls'), 'bench 21 55'));
  const endBy = (keymap: Keymap) =>
    sealingRows({ ...demoDesk(), ledger }, keymap).find(({ key }) => key === 'bench')?.end;
  const key = standardKeymap.keysOn('sealing').find(({ row }) => row.id === 'bench')?.binding.key;
  expect(key).toMatch(/^.$/);
  expect(endBy(standardKeymap)).toBe(`nothing cures by the book until it is: ${key}`);
});

it('[K1] minds with the count of a tray that a bolt comes out of it for the turns, while one is wanted', () => {
  const counted = (before: string, tray: string) => {
    const { ledger } = playLines(upTo(scriptLines('reference-planned.calls'), before));
    const count = stateOf(ledger, 'tray', tray)?.contents.length ?? 0;
    return warningsOf(ledger, [{ kind: 'tray-counted', tray, count }], demoDesk().now);
  };
  expect(counted('working crank pulley 1', '2')).toEqual([
    'the bolt of crank pulley 1 lies in it: in as a working bolt for the turns first, or this count falls',
  ]);
  expect(counted('working crank pulley 1', '1')).toEqual([]);
  expect(counted('count 1 is 12', '2')).toEqual([]);
});
