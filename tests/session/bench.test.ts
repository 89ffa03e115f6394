// The bench as a mechanic works it: keys in, calls and screens out.
import { describe, expect, it } from 'vitest';
import type { OnTheShelf } from '../../src/calls/lists/shelf.ts';
import { names } from '../../src/calls/slot-names.ts';
import { stateOf } from '../../src/job/ledger.ts';
import type { Line } from '../../src/job/line.ts';
import { openPoints } from '../../src/job/open-points.ts';
import { createBench } from '../../src/session/bench.ts';
import { lineBegun } from '../../src/session/typed-line.ts';
import { standingText } from '../../src/sheet/standing-text.ts';
import { fault } from '../../src/store/fault.ts';
import { ringOf } from '../../src/trade/layout.ts';
import { demoLines } from '../demo/at-hand.ts';
import { atTheBench, lettersOf, newJob } from './at-the-bench.ts';
import { occupantOf } from './reading.ts';

describe('the shelf', () => {
  it('makes a job by its name and goes to strip', async () => {
    const at = await newJob();
    expect(at.opens).toEqual([{ named: 'estate', how: { fresh: true } }]);
    expect(at.view().screen).toBe('strip');
    expect(stateOf(at.state().ledger, 'vehicle', 'vehicle')?.label).toBe('estate');
  });
  it('keeps keys that are pressed while a job is being opened', async () => {
    const at = await atTheBench();
    await at.press('n', ...lettersOf('estate'), 'enter', 'a', ...lettersOf('sump'), 'enter', 'enter');
    await new Promise(setImmediate);
    await at.press();
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: 'sump 1 off, to tray 1' });
  });
  it('says a fault in its own words and stays', async () => {
    const at = await atTheBench();
    await at.press('n', ...lettersOf('broken'), 'enter');
    await new Promise(setImmediate);
    expect(at.bench.store.getState().word).toContain('line 3 is damaged');
    expect(at.view().screen).toBe('shelf');
    await at.press('S', 'a', 'B');
    expect(at.view().screen).toBe('shelf');
  });
  const estate = (file: string, more: Partial<OnTheShelf> = {}): OnTheShelf => ({
    name: 'estate',
    path: `/jobs/${file}`,
    said: '2 off, 3 holes open',
    changed: '4 Mar 12:00',
    file,
    ...more,
  });
  const damaged = { name: 'van', said: 'line 18 is not as it was written', broken: { why: 'all of it, and how' } };
  const copy = { path: '/jobs/copies/van', said: 'its copy of 3 Mar 9:00, 17 calls' };

  it('tells two jobs of one name apart, and puts what cannot be opened behind them, with all there is to say of it', async () => {
    const at = await atTheBench(undefined, { shelf: [estate('van', damaged), estate('one'), estate('two')] });
    await new Promise(setImmediate);
    const rows = at.bench.listed();
    expect(rows.slice(0, 3).map(({ text, end }) => [text, end])).toEqual([
      ['estate, file one', '2 off, 3 holes open   4 Mar 12:00'],
      ['estate, file two', '2 off, 3 holes open   4 Mar 12:00'],
      ['! van: line 18 is not as it was written', '4 Mar 12:00'],
    ]);
    expect(rows.at(2)?.more).toBe('all of it, and how');
    await at.press('page-down', 'enter');
    expect(at.bench.store.getState().word).toBe('all of it, and how');
    expect(at.opens).toEqual([]);
  });
  it('opens the copy of what cannot be opened, to look only', async () => {
    const broken = { ...damaged, broken: { ...damaged.broken, copy } };
    const look = fault('copy', 'this is a copy, opened to look only', '/jobs/copies/van', 'to go on from it: cp');
    const at = await atTheBench(undefined, { look, shelf: [estate('one'), estate('van', broken)] });
    await new Promise(setImmediate);
    await at.press('down');
    expect(at.bench.listed().at(1)?.more).toBe(
      'Enter opens to look only: its copy of 3 Mar 9:00, 17 calls. all of it, and how',
    );
    await at.press('enter');
    await new Promise(setImmediate);
    expect(at.opens).toEqual([{ named: '/jobs/copies/van', how: {} }]);
    expect(at.bench.store.getState().word).toBe('this is a copy, opened to look only; to go on from it: cp');
    await at.press('a', '+', 'enter');
    expect(at.state().answer).toMatchObject({ text: look.what, instead: look.next });
  });
  it('has help of its own calls first, which leads back to it, also with a job in hand', async () => {
    const at = await atTheBench(demoLines());
    await at.press('escape', 'H', '?');
    const calls = at.bench
      .listed()
      .slice(0, 300)
      .map(({ key }) => key);
    expect(calls.indexOf('choose')).toBeLessThan(calls.indexOf('to-strip'));
    expect(calls.indexOf('to-strip')).toBeLessThan(calls.indexOf('off'));
    await at.press('escape');
    expect(at.view()).toMatchObject({ screen: 'shelf', before: 'strip' });
  });
  it('is read anew where one that cannot be opened is chosen, and when the terminal is in front again', async () => {
    const shelf: OnTheShelf[] = [estate('van', { ...damaged, broken: { ...damaged.broken, copy } })];
    const at = await atTheBench(undefined, { shelf });
    await new Promise(setImmediate);
    shelf.splice(0, 1, estate('van'), estate('other'));
    expect(at.bench.listed()).toHaveLength(1);
    at.bench.inFront();
    await new Promise(setImmediate);
    expect(
      at.bench
        .listed()
        .slice(0, 9)
        .map(({ end }) => end),
    ).toEqual(Array(2).fill('2 off, 3 holes open   4 Mar 12:00'));
    shelf.splice(0, 2, estate('van', { ...damaged, broken: { ...damaged.broken, copy } }));
    at.bench.inFront();
    await new Promise(setImmediate);
    shelf.splice(0, 1, estate('van'));
    await at.press('enter');
    await new Promise(setImmediate);
    expect(at.opens.map(({ named }) => named)).toEqual(['/jobs/van']);
  });
  it('keeps the job pointed at where another one comes before it while the shelf stands there', async () => {
    const shelf: OnTheShelf[] = [estate('one'), estate('van')];
    const at = await atTheBench(undefined, { shelf });
    await new Promise(setImmediate);
    await at.press('down');
    shelf.unshift(estate('newer'));
    at.bench.inFront();
    await new Promise(setImmediate);
    expect(at.bench.listed()).toHaveLength(3);
    await at.press('enter');
    await new Promise(setImmediate);
    expect(at.opens.map(({ named }) => named)).toEqual(['/jobs/van']);
  });
  it('is not read where a job is opened at once, before it is gone to or nothing could be opened', async () => {
    let read = 0;
    const jobs = async () => {
      read++;
      return [];
    };
    const later = createBench({ jobs, open: () => Promise.reject(new Error('gone')), shelfLater: true });
    expect([read, later.store.getState().shelf]).toEqual([0, undefined]);
    await later.open('red one');
    await later.store.getState().session?.settled();
    expect([read, later.store.getState().shelf]).toEqual([1, []]);
    createBench({ jobs, open: () => Promise.reject(new Error('gone')) });
    expect(read).toBe(2);
  });

  it('goes nowhere else before a job is open', async () => {
    const at = await atTheBench();
    await at.press('S', 'B', 'L', '/', 'a');
    expect(at.view().screen).toBe('shelf');
    expect(at.view().asking).toBeUndefined();
  });
});

describe('the shelf with a job in hand', () => {
  it('goes back to it when it is chosen again, and does not open it a second time', async () => {
    const at = await atTheBench(demoLines());
    await at.press('escape', 'B', 'H');
    await new Promise(setImmediate);
    await at.press('enter');
    await new Promise(setImmediate);
    expect(at.view().screen).toBe('build');
    expect(at.opens).toHaveLength(1);
  });
});

describe('one key, one fastener', () => {
  it('takes off in turn what was slackened before', async () => {
    const at = await newJob();
    await at.press('a', '+', 'n', '9', 's', 's', 's', 'enter', 'enter', 'enter');
    expect(at.state().ledger.tallies.all).toMatchObject({ holes: 3, off: 3, slack: 0 });
    await at.press('enter');
    expect(at.state().ledger.tallies.all.holes).toBe(4);
  });
  it('adds a thread or a length to the fastener in use, and starts anew with a kind or a head', async () => {
    const at = await newJob();
    await at.press('a', '+', 'n', '9', 'x', ...lettersOf('M12x1.5'), 'enter');
    expect(at.state().facing.spec).toEqual({ kind: 'nut', head: 'hex 19', thread: 'M12x1.5' });
    await at.press('x', ...lettersOf('bolt hex 10'), 'enter');
    expect(at.state().facing.spec).toEqual({ kind: 'bolt', head: 'hex 10' });
  });
  it('offers the fasteners in use before first, so that longer ones in the middle of a row are two keys', async () => {
    const at = await newJob();
    const inUse = () => at.bench.desk().facing.spec;
    await at.press('a', '+', 'b', '0', 'x', ...lettersOf('M6x25'), 'enter', 'x', ...lettersOf('M6x40'), 'enter', 'x');
    expect(
      at
        .view()
        .asking?.choices.slice(0, 2)
        .map((one) => one.text),
    ).toEqual(['bolt hex 10 M6x25', 'bolt hex 10 M6x40']);
    await at.press('1');
    expect(inUse()).toMatchObject({ thread: 'M6', lengthMm: 25 });
    await at.press('x', '1');
    expect(inUse()).toMatchObject({ thread: 'M6', lengthMm: 40 });
    // A head keeps its number behind them, in use or not.
    await at.press('8', 'x', '1', 'x', '3');
    expect(inUse()).toEqual({ kind: 'bolt', head: 'hex 8' });
  });
  it('has the fastener in use at hand when the job is opened again', async () => {
    const at = await newJob();
    await at.press('a', '+', 'n', '9', 'enter', 't', '2', 'enter');
    const again = await atTheBench(at.state().ledger.lines.all.slice(0, at.state().ledger.lines.length));
    expect(again.state().facing).toMatchObject({ area: 'area 1', spec: { kind: 'nut', head: 'hex 19' } });
  });
  it('[T1] knows by its name what goes in, and asks where the name does not say', async () => {
    const at = await newJob();
    await at.press('i', ...lettersOf('rear stand'), 'enter');
    expect(stateOf(at.state().ledger, 'temporary', 'rear stand')?.sort).toBe('stand');
    await at.press('i', ...lettersOf('blue thing'), 'enter');
    expect(at.view().asking).toMatchObject({ slot: 'sort' });
  });
  it('makes an area in two keys, sets the fastener in two, and takes one off with each key after', async () => {
    const at = await newJob();
    await at.press('a', '+', 'b', '0', 'enter', 'enter', 'space');
    expect(at.state().ledger.tallies.all.off).toBe(3);
    expect(at.state().facing).toMatchObject({ area: 'area 1', spec: { kind: 'bolt', head: 'hex 10' } });
    expect(stateOf(at.state().ledger, 'fastener', 'f3.1')?.spec).toEqual({ kind: 'bolt', head: 'hex 10' });
  });
  it('takes a tray by its number, with Enter only where the tray is new', async () => {
    const at = await newJob();
    await at.press('a', '+', 'b', '0', 'enter', 't', '2', 'enter', 'enter', 't', '1', 'space');
    expect([1, 2, 3].map((n) => stateOf(at.state().ledger, 'fastener', `f${n + 1}.1`)?.place)).toEqual([
      'tray:1',
      'tray:2',
      'tray:1',
    ]);
  });
  it('takes an Enter right after a number that was taken by itself for the end of the question, once', async () => {
    const at = await newJob();
    at.pace.stepMs = 200;
    await at.press('a', '+', 'b', '0', 'enter', 'enter', 'h', '3', 'enter', '#', '2', 'enter');
    expect(at.state().ledger.tallies.all.off).toBe(2);
    expect(at.state().facing.hole).toBe('area 1/2');
    expect(at.bench.store.getState().word).toContain('this Enter called nothing');
    await at.press('#', '3', 'enter');
    expect(at.state().ledger.tallies.all.off).toBe(2);
    await at.press('enter');
    expect(at.state().ledger.tallies.all.off).toBe(3);
    await at.press('#', '2', 'up', 'enter');
    expect(at.bench.store.getState().word).toBeUndefined();
  });
  it('takes an Enter a while after a number that only pointed for the call there, and after one that made a call for none', async () => {
    const at = await newJob();
    at.pace.stepMs = 3000;
    await at.press('a', '+', 'b', '0', 'enter', 'enter', 'h', '2', 'enter', 'B', '#', '2', 'enter');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: 'area 1 2 back' });
    for (const line of ['parted plug', 'parted hose']) at.session().runLine(line);
    await at.press(',', 'j', '1', 'enter');
    expect(at.bench.store.getState().word).toContain('this Enter called nothing');
    expect(at.state().ledger.tallies.all.off).toBe(1);
  });
  it('waits for the second figure of a hole that nobody called yet, by letters and by keypad', async () => {
    const at = await newJob();
    await at.press('a', '+', 's', 's', '#', '1', '2', 'enter');
    expect(at.state().facing.hole).toBe('area 1/12');
    await at.press('K', '-', '1', '3', 'enter');
    expect(at.state().facing.hole).toBe('area 1/13');
    expect(at.state().ledger.tallies.all).toMatchObject({ slack: 2, off: 0 });
    expect(at.state().facing.spec?.head).toBeUndefined();
  });
  it('calls nothing with the second figure of a tray there is none of, typed in one breath', async () => {
    const at = await newJob();
    await at.press('a', '+');
    for (const line of ['tray left', 'off 1', 'tray 2', 'off 2', 'tray 1', 'off 3']) at.session().runLine(line);
    at.pace.stepMs = 50;
    await at.press(',', 't', '1', '2');
    expect(at.bench.store.getState().word).toContain('this 2 called nothing');
    expect(at.state().facing).toMatchObject({ tray: '1' });
    expect(at.state().facing.spec?.head).toBeUndefined();
    await at.press('2');
    expect(at.state().facing.spec?.head).toBe('hex 12');
  });
  it('[K4] asks before a number is taken that cannot be, where the holes are counted, and only then', async () => {
    const at = await newJob();
    await at.press('a', ...lettersOf('cam cover'), 'enter', 'enter', 'enter', 'h', '3', 'enter');
    const before = at.state().ledger.lines.length;
    await at.press('#', ...'99'.split(''), 'enter');
    // The key pressed again by habit is the careful answer.
    await at.press('enter');
    expect(at.view().asking?.title).toBe('cam cover has 3 holes (counted): is there a 99?');
    await at.press('enter');
    expect(at.state().ledger.lines.length).toBe(before);
    expect(at.session().runLine('slack 99')).toMatchObject({
      kind: 'refused',
      text: 'cam cover has 3 holes (counted): is there a 99?',
      instead: 'say the number that is meant, or say it with "all the same" at its end',
    });
    expect(at.session().runLine('off 3')).toMatchObject({ kind: 'taken' });
    expect(at.session().runLine('off 4')).toMatchObject({ kind: 'refused' });
    await at.press('#', ...'99'.split(''), 'enter', 'enter', '2');
    expect(at.state().answer).toMatchObject({ text: 'cam cover 99 off, to tray 1' });
    expect(at.session().runLine('missing 4 all the same')).toMatchObject({ kind: 'taken' });
  });
  it('[F2] says what is odd about what came off as the answer to the call, and takes one key for either answer', async () => {
    const at = await newJob();
    const line = (text: string) => at.press('/', ...lettersOf(text), 'enter');
    await at.press('a', ...lettersOf('mount'), 'enter');
    await line('off 1 as bolt hex 14 M10x1.25x60 10.9');
    await line('off 2 as bolt hex 14 M10x1.25x60 10.9');
    await line('off 3 as bolt hex 17 M10x1.25x50 8.8');
    expect(at.state().answer).toMatchObject({
      kind: 'taken',
      text: 'mount 3 off, to tray 1. Mind: mount 3 suspected: class 8.8, not 10.9 as its neighbours; 10 mm shorter; hex 17, not hex 14 as its neighbours',
    });
    await at.press('z');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: 'mount 3 meant so' });
    await at.press('backspace', 'u');
    expect(at.state().answer).toMatchObject({
      kind: 'taken',
      text: expect.stringMatching(/^finding d\d+.1 at mount 3: class 8.8/),
    });
    await at.press('u');
    expect(at.state().answer).toMatchObject({ kind: 'refused', text: 'nothing of it is suspected' });
  });
  it('[U1] strikes the last call with one key', async () => {
    const at = await newJob();
    await at.press('a', '+', 'enter', 'enter', 'backspace');
    expect(at.state().ledger.tallies.all.off).toBe(1);
  });
  it('does nothing on a wrong key', async () => {
    const at = await newJob();
    const before = at.state();
    await at.press('Z', '§', 'tab', 'home', 'left', '~');
    expect(at.state()).toBe(before);
  });
});

describe('putting right', () => {
  it('[U3] "called 7, was 8" takes three keys on the screen of the area', async () => {
    const at = await atTheBench(demoLines());
    await at.press('enter', 'B', 'a', '4');
    const before = occupantOf(at.state().ledger, 'upper belt cover/3');
    expect(before.own).not.toBe(occupantOf(at.state().ledger, 'upper belt cover/4').own);
    await at.press('e', '3', '4');
    expect(at.state().answer).toMatchObject({ kind: 'taken' });
    expect(occupantOf(at.state().ledger, 'upper belt cover/4').own).toBe(before.own);
  });
  it('[U3] takes the hole that was called last, or that of a line of the log, unless another is said', async () => {
    const at = await newJob();
    await at.press('a', '+', 'enter', 'enter', 'enter', 'e', 'enter', '1');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringMatching(/1 .*3|3 .*1/) });
    await at.press('backspace', 'J', 'down', 'down', 'down', 'e', '1');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringMatching(/1 .*2|2 .*1/) });
  });
  it('[U2] names what leans on a line, and strikes it together as one call', async () => {
    const at = await newJob();
    await at.press('a', '+', 'enter', 'B', 'h', '1', 'enter', 'enter', 'J', 'down', 'down', 'x');
    expect(at.state().answer).toMatchObject({ kind: 'refused', text: expect.stringContaining('line 4') });
    await at.press('w');
    expect(at.state().answer).toMatchObject({ kind: 'taken' });
    expect(at.state().ledger.lines.all.at(-1)?.entries).toEqual([{ kind: 'calls-struck', lines: [2, 4] }]);
  });
});

describe('leaving', () => {
  it('[X5] puts the call of the picked line at hand, to be taken with Enter and not before', async () => {
    const at = await newJob();
    await at.press('c', ...lettersOf('plug'), 'enter', 'L');
    const rows = at.bench.listed();
    const places = rows.slice(0, rows.length).map((row) => row.leads);
    await at.press(...places.slice(0, places.indexOf('connection:plug')).map(() => 'down'), 'space');
    expect(at.view().asking?.typed).toBe('made plug');
    expect(at.state().answer).toMatchObject({ text: expect.stringContaining('parted') });
    await at.press('enter');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: 'plug made' });
  });
  it('[X5] keeps a row picked where the list has grown shorter', async () => {
    const at = await newJob();
    await at.press('a', ...lettersOf('sump'), 'enter', 'enter', 'enter', 'L', ...Array<string>(20).fill('down'));
    const cursor = at.view().at.leaving ?? 0;
    expect(cursor).toBe(at.bench.listed().length - 1);
    at.session().runLine('strike 3');
    expect(at.bench.listed().length).toBeLessThanOrEqual(cursor);
    await at.press('space');
    expect(at.view().asking?.typed.length).toBeGreaterThan(0);
  });
  it('leaves what is to be said to be typed', async () => {
    const at = await newJob();
    await at.press('L', 'space');
    expect(at.view().asking?.typed).toBe('odometer ');
    await at.press(...lettersOf('120'), 'enter');
    expect(at.state().answer).toMatchObject({ kind: 'taken' });
  });
  it('[K4] leaves it to be typed in the midst of the call, of which nothing is lost', async () => {
    const at = await newJob();
    for (const line of ['area caliper', 'off 1', 'off 2', 'area wheel']) at.session().runLine(line);
    await at.press('L');
    const rows = at.bench.listed();
    const to = rows.slice(0, rows.length).findIndex(({ end }) => end === 'holes … in caliper');
    await at.press(...Array<string>(to).fill('down'), 'space');
    expect(at.view().asking).toMatchObject({ typed: 'holes ', tail: ' in caliper' });
    await at.press('2', 'enter');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringContaining('counted at caliper') });
    expect(lineBegun('lay … to tray …')).toEqual({ typed: 'lay ' });
  });
});

describe('a question that only names what there is', () => {
  it.each(['tab', 'M'])('asked by %s, takes nothing for an answer that is none of it', async (key) => {
    const at = await newJob();
    await at.press(key, ...lettersOf('of 9'), 'enter');
    expect(at.view().screen).toBe('strip');
    expect(at.state().ledger.lines.length).toBe(1);
  });
});

describe('counting trays', () => {
  it('[K1] goes on to the next tray, although the cursor stands on the one just counted', async () => {
    const at = await newJob();
    for (const line of ['area sump', 'off 1 to tray 1', 'off 2 to tray 2']) at.session().runLine(line);
    const why = () =>
      openPoints(at.state().ledger, at.bench.desk().now).find(({ code }) => code === 'tray-uncounted')?.because;
    expect(why()).toBe('to be counted by eye');
    at.session().runLine('count 1 is 2');
    expect(why()).toBe('its count by eye does not agree');
    at.session().runLine('off 3 to tray 1');
    expect(why()).toBe('to be counted by eye again: something was moved since');
    at.session().runLine('strike last');
    await at.press('P');
    const row = Array.from({ length: at.bench.listed().length }, (_, i) => at.bench.listed().at(i)).findIndex(
      (one) => one?.picks.tray === '1',
    );
    await at.press(...Array<string>(row).fill('down'), 'c', '1', 'enter', 'c', '1', 'enter');
    const counted = (tray: string) => stateOf(at.state().ledger, 'tray', tray)?.counted?.count;
    expect([counted('1'), counted('2')]).toEqual([1, 1]);
  });
});

describe('a tray that is not on the bench', () => {
  it('is minded where it is taken in use or laid into, once, and never where no tray was named', async () => {
    const at = await newJob(undefined, { trays: ['1', '2', 'left'] });
    const said = (line: string) => (at.session().runLine(line) as { text: string }).text;
    const mind = '. Mind: no tray of the bench is called lft, perhaps "left": 1, 2, left';
    said('area sump');
    expect(said('off 1')).toBe('sump 1 off, to tray 1');
    expect(said('off 2 to lft')).toBe(`sump 2 off, to tray lft${mind}`);
    expect(said('off 3 to lft')).toBe('sump 3 off, to tray lft');
    expect(said('tray 9')).toBe('tray 9. Mind: no tray of the bench is called 9: 1, 2, left');
    expect(said('off 4')).toBe('sump 4 off, to tray 9');
    const bare = await newJob();
    for (const line of ['area sump', 'off 1 to lft']) bare.session().runLine(line);
    expect(bare.state().answer).toMatchObject({ text: 'sump 1 off, to tray lft' });
  });
});

describe('a typed line', () => {
  it('takes a bare number for the area, the part or the joint that a key named so', async () => {
    const at = await newJob();
    await at.press('a', '+', 'b', '0', 'enter', 'a', '+', 'enter', 'p', '+', 'enter');
    const areas = () => names(at.state().ledger, 'area');
    expect(areas()).toEqual(['area 1', 'area 2']);
    for (const line of ['area 1', 'part back 1', 'area 2'])
      expect([line, at.session().runLine(line).kind]).not.toContain('refused');
    expect([areas(), at.state().facing.area]).toEqual([['area 1', 'area 2'], 'area 2']);
    // One that is really called so goes before it, and what is quoted is meant as it stands.
    at.session().runLine('area "1"');
    expect(at.state().facing.area).toBe('1');
    at.session().runLine('off 1');
    at.session().runLine('area 2');
    at.session().runLine('area 1');
    expect(at.state().facing.area).toBe('1');
  });
  it('stays open with its reason and what is left of it where a call cannot be read, and the rest was taken', async () => {
    const at = await newJob();
    await at.press('/', ...lettersOf('area sump; off 1; off; count 1 is; off 3'), 'enter');
    expect(at.state().ledger.lines.length).toBe(3);
    expect(at.view().asking).toMatchObject({
      typed: 'count 1 is; off 3',
      why: expect.stringMatching(/count.* is missing/),
    });
    await at.press('ctrl+u', ...lettersOf('count 1 is 2'), 'enter');
    expect(at.view().asking).toBeUndefined();
    expect(at.state().answer?.kind).toBe('taken');
  });
  it('stays open from a call that was refused on, while there are more, and says how many were not called', async () => {
    const at = await newJob();
    await at.press('/', ...lettersOf('area sump; off 1; off 1; off 2; off 3'), 'enter');
    expect(at.view().asking).toMatchObject({
      typed: 'off 1; off 2; off 3',
      why: expect.stringMatching(/^sump 1 holds nothing; .*; and the 2 after it are not called yet$/),
    });
    await at.press('ctrl+u', ...lettersOf('off 2; off 2'), 'enter');
    expect(at.view().asking).toBeUndefined();
    expect(at.state().answer).toMatchObject({ kind: 'refused', text: 'sump 2 holds nothing' });
  });
  it('says with its last answer what the calls before it were minded for', async () => {
    const at = await newJob();
    await at.press('/', ...lettersOf('area wheel; role wheel; off 1; off 2; holes 5'), 'enter');
    expect(at.state().answer).toMatchObject({
      kind: 'taken',
      text: expect.stringMatching(/^5 holes .*Before it: off 1: Mind: no stand is in/),
    });
  });
  it('stays open while it answers no to what a key would be asked', async () => {
    const at = await newJob();
    await at.press('/', ...lettersOf('area sump; drawn as ring of 4; off 9'), 'enter');
    expect(at.view().asking).toMatchObject({ typed: 'off 9', why: expect.stringContaining('is there a 9') });
    await at.press(...lettersOf(' all the same'), 'enter');
    expect(at.view().asking).toBeUndefined();
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringContaining('sump 9 off') });
  });
  it('names the keys, and no command of a shell, that lead to the words it was none of', async () => {
    const at = await newJob();
    await at.press('/', ...lettersOf('nonsense'), 'enter');
    expect(at.view().asking?.why).toBe('"nonsense" begins no call; see all words: Esc, then ?');
    await at.press('escape', '?');
    expect(at.view().screen).toBe('help');
    expect(at.session().runLine('nonsense')).toMatchObject({ kind: 'refused', instead: 'see all words', by: 'help' });
  });
  it('is at hand again with Up, the last one first', async () => {
    const at = await newJob();
    await at.press('/', ...lettersOf('nonsense'), 'enter', 'escape', '/', ...lettersOf('note two'), 'enter', '/', 'up');
    expect(at.view().asking?.typed).toBe('note two');
    await at.press('up');
    expect(at.view().asking?.typed).toBe('nonsense');
    await at.press('down');
    expect(at.view().asking?.typed).toBe('note two');
  });
});

describe('Escape', () => {
  it('puts a refusal away, stays once on a screen that is worked on, and leads up to the shelf, never to another of them', async () => {
    for (const screen of [...'SBRC']) {
      const at = await newJob();
      await at.press('a', '+', 'B', 'enter');
      expect(at.state().answer).toMatchObject({ kind: 'refused' });
      // Elsewhere its same key is another call: there it is gone with its screen.
      await at.press(screen, ...(screen === 'B' ? ['escape'] : []));
      expect(at.state().answer).toBeUndefined();
      const there = at.view().screen;
      await at.press('escape');
      expect({ screen, stays: at.view().screen }).toEqual({ screen, stays: there });
      const { note } = at.bench.store.getState();
      expect(note).toMatch(/^No question stands here\. Esc again: the shelf\. .*L Leave, H Shelf\.$/);
      expect(note?.includes('S Strip')).toBe(screen !== 'S');
      // Another key between them: it is the first again.
      await at.press('?', 'escape', 'escape');
      expect({ screen, stays: at.view().screen }).toEqual({ screen, stays: there });
      await at.press('escape');
      expect({ screen, up: at.view().screen }).toEqual({ screen, up: 'shelf' });
    }
  });
  it('takes what was answered on the screen before away with the list or help it came along to', async () => {
    const at = await newJob();
    await at.press('a', '+', 'enter', 'L', 'x');
    expect(at.state().answer).toMatchObject({ kind: 'refused' });
    await at.press('?', 'escape');
    expect(at.view().screen).toBe('leaving');
    expect(at.state().answer).toBeUndefined();
    // What is answered there is put away by itself.
    await at.press('x', 'escape');
    expect(at.view().screen).toBe('leaving');
    await at.press('escape');
    expect(at.view().screen).toBe('strip');
  });
  it('leads from a list back to the screen that was worked on', async () => {
    for (const list of [...'FPLJWTGE?']) {
      const at = await newJob();
      await at.press('B', list);
      expect(at.view().screen).not.toBe('build');
      await at.press('escape');
      expect({ list, back: at.view().screen }).toEqual({ list, back: 'build' });
      await at.press('L', list, 'escape', 'escape');
      expect({ list, back: at.view().screen }).toEqual({ list, back: 'build' });
    }
  });
  it('leaves neither the shelf nor the program: a letter does', async () => {
    const at = await newJob();
    await at.press('H', 'escape', 'escape');
    expect(at.view().screen).toBe('shelf');
    expect(at.view().asking).toBeUndefined();
    expect(at.bench.store.getState()).toMatchObject({
      leaving: false,
      note: expect.stringContaining('q leave program'),
    });
    await at.press('q');
    expect(at.bench.store.getState().leaving).toBe(true);
  });
  it('goes from one area or heading of a long list to the next and back, and asks for no row between', async () => {
    const at = await atTheBench(demoLines());
    for (const list of ['L', 'T'] as const) {
      await at.press('escape', list);
      const { screen } = at.view();
      const rows = at.bench.listed();
      const group = () => {
        const i = at.view().at[screen] ?? 0;
        return { i, at: rows.groupAt ? rows.groupAt(i) : rows.at(i)?.group };
      };
      const seen = [group()];
      for (let more = true; more; ) {
        await at.press('right');
        more = group().i !== seen.at(-1)?.i;
        if (more) seen.push(group());
      }
      const all = Array.from({ length: rows.length }, (_, i) => (rows.groupAt ? rows.groupAt(i) : rows.at(i)?.group));
      expect(seen.map((one) => one.at)).toEqual(all.filter((one, i) => one !== all[i - 1]));
      expect(seen.length).toBeGreaterThan(3);
      await at.press('down', 'left', 'left');
      expect(group().i).toBe(seen.at(-2)?.i);
      await at.press('up');
    }
  });
  it('leads back to where a place was gone to from', async () => {
    const at = await atTheBench(demoLines());
    await at.press('escape', 'F', 'page-up', 'enter');
    expect(at.view().screen).toBe('build');
    expect(at.bench.store.getState().note).toBe('Build, opened from Findings. Esc back.');
    expect(at.state().facing).toMatchObject({ area: 'mount bracket', hole: 'mount bracket/3' });
    await at.press('escape');
    expect(at.view().screen).toBe('findings');
  });
  it('names by the keypad the screen it was gone to from, and never the key that strikes', async () => {
    const at = await atTheBench(demoLines(), {}, { keypad: true });
    await at.press('escape', 'F', 'enter');
    expect(at.bench.store.getState().note).toBe('Build, opened from Findings. * 3 leads back.');
    await at.press('*', '3');
    expect(at.view().screen).toBe('findings');
  });
});

describe('the map', () => {
  it('draws an area on the spot, and moves a hole of it with the arrow keys', async () => {
    const at = await newJob();
    await at.press('a', '+', 'D', '1', '8', 'enter', 'enter', '@', 'right', 'right', 'down', 'enter');
    const second = stateOf(at.state().ledger, 'hole', 'area 1/2')?.declared?.at;
    expect(stateOf(at.state().ledger, 'area', 'area 1')?.declared?.outline?.length).toBeGreaterThan(3);
    expect(at.state().answer).toMatchObject({ kind: 'taken' });
    const { holes } = ringOf(8);
    expect(second).toEqual([(holes[1]?.[0] ?? 0) + 4, (holes[1]?.[1] ?? 0) + 2]);
    await at.press('@', 'left', 'escape');
    expect(at.state().facing.placing).toBeUndefined();
  });
  it('says how many a cover has, and asks before holes that were called are placed anew', async () => {
    const at = await newJob();
    await at.press('a', '+', 'enter', 'D', '2', '4', 'enter', 'enter');
    expect(at.view().asking?.title).toContain('4 by 1 are 4');
    await at.press('escape', 'D', '2', '4', 'enter', '2', 'enter');
    expect(at.view().asking?.title).toContain('4 by 2 are 8');
    await at.press('2', 'enter');
    expect(at.view().asking?.title).toBe('a cover of 10 holes: hole 1 is called already, and is drawn as hole 1 of it');
    await at.press('2');
    expect(at.view().asking).toBeUndefined();
    expect(stateOf(at.state().ledger, 'area', 'area 1')?.declared?.outline).toBeUndefined();
    await at.press('D', '2', '4', 'enter', 'enter', 'enter', 'enter');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: 'area 1 drawn, 4 holes' });
    await at.press('backspace');
    expect(at.session().runLine('drawn as ring of 8')).toMatchObject({ kind: 'refused' });
    expect(at.session().runLine('drawn as ring of 8 all the same')).toMatchObject({
      kind: 'taken',
      text: 'area 1 drawn, 8 holes',
    });
    expect(at.session().runLine('area sump')).toMatchObject({ kind: 'faced' });
    expect(at.session().runLine('drawn as ring of 8')).toMatchObject({ kind: 'taken' });
  });
});

describe('asking', () => {
  it('is left by Escape with nothing written', async () => {
    const at = await newJob();
    const { length } = at.state().ledger.lines;
    await at.press('p', ...lettersOf('wheel'), 'escape', 'O', 'escape', '/', ...lettersOf('off'), 'escape');
    expect(at.view().asking).toBeUndefined();
    expect(at.state().ledger.lines.length).toBe(length);
    await at.press('f', 'escape');
    expect(at.bench.store.getState().note).toBe('Left: "finding" was not called.');
  });
  it('says why an answer cannot be read, and takes another', async () => {
    const at = await newJob();
    await at.press('a', '+', 'x', ...lettersOf('frog'), 'enter');
    expect(at.view().asking?.why).toContain('frog');
    await at.press(...lettersOf('backspace').map(() => 'backspace'), ...lettersOf('nut hex 17'), 'enter');
    expect(at.state().facing.spec).toEqual({ kind: 'nut', head: 'hex 17' });
  });
  it('[X3] asks release twice, and "not yet" releases nothing', async () => {
    const at = await newJob();
    at.session().runLine('odometer 118400');
    await at.press('L', 'x', ...lettersOf('me'), 'enter');
    expect(at.view().asking).toMatchObject({ slot: 'sure' });
    // A name typed on beyond its Enter begins no answer and makes no call.
    await at.press(...lettersOf('not yes'));
    expect(at.view().asking).toMatchObject({
      slot: 'sure',
      typed: '',
      why: expect.stringContaining('1 not yet, 2 release'),
    });
    await at.press('enter');
    expect(at.state().ledger.lines.length).toBe(2);
    await at.press('x', ...lettersOf('me'), 'enter', '1');
    expect(at.state().answer).not.toMatchObject({ kind: 'refused' });
    expect(at.state().ledger.lines.length).toBe(2);
    const note = () => at.bench.store.getState().note;
    for (const leftBy of ['1', 'escape']) {
      await at.press('x', ...lettersOf('me'), 'enter', leftBy);
      expect(note()).toBe('Not released. Nothing was written.');
    }
    await at.press('escape');
    expect(note()).toBe('Not released: nothing is open, and release was not called (L x). Back: Strip.');
    await at.press('L', 'x', ...lettersOf('me'), 'enter', '2');
    expect(at.state().answer).toMatchObject({ kind: 'taken', call: 'release' });
    await at.press('escape');
    expect(note()).toBe('Back: Strip.');
    // Whatever else would be said of the key: the job is released, and there is a call that opens it again.
    at.session().face({ area: 'cover' });
    for (const key of ['enter', 'backspace']) {
      await at.press(key);
      expect(at.state().answer).toMatchObject({ refusal: { rule: 'X3' }, by: 'reopen' });
    }
  });
  it('[X1] counts what is open alike in the list, the glance and the refusal: what was found at a hole once', async () => {
    const at = await newJob();
    for (const line of ['area cover', 'off 1', 'missing 2', 'holes 2']) at.session().runLine(line);
    await at.press('L', 'x');
    const many = at.bench.listed().length;
    expect(at.state().answer).toMatchObject({ kind: 'refused', text: expect.stringMatching(`^${many} open: `) });
    expect(standingText(at.state().ledger, { now: at.bench.desk().now, wordsOf: () => '' })).toContain(
      `NOT RELEASED, ${many} open points`,
    );
  });
  it('[X1] asks for no name where the car may not leave, and says at once what is open', async () => {
    const at = await newJob();
    await at.press('L', 'x');
    expect(at.view().asking).toBeUndefined();
    expect(at.state().answer).toMatchObject({ kind: 'refused', text: expect.stringContaining('open') });
  });
  it('lists first what can be taken, and says of the rest why not', async () => {
    const at = await newJob();
    await at.press('L', 'O', '1', 'O');
    const services = at.view().asking?.choices ?? [];
    expect(services.at(-1)).toMatchObject({ blocked: expect.stringContaining('ordered already') });
    expect(services[0]?.blocked).toBeUndefined();
  });
});

describe('order answered by the same key', () => {
  it('[O5] takes a key that bounces for no answer', async () => {
    const at = await newJob();
    const lines = ['area front', 'off 1', 'holes 1', 'area rear', 'off 1', 'area front', 'back 1'];
    lines.push('behind area front is area rear');
    for (const line of lines) at.session().runLine(line);
    at.pace.stepMs = 20;
    await at.press('B', 't', 't', 't');
    expect(at.state().answer).toMatchObject({ kind: 'refused', refusal: { rule: 'O1' }, tooQuick: true });
    at.pace.stepMs = 500;
    await at.press('t');
    expect(at.state().answer).toMatchObject({ kind: 'taken' });
  });
  it('[O5] takes it as done already, and only at once', async () => {
    const at = await newJob();
    const lines = ['area front', 'off 1', 'holes 1', 'area rear', 'off 1', 'area front', 'back 1'];
    lines.push('behind area front is area rear');
    for (const line of lines) at.session().runLine(line);
    await at.press('B', 't');
    expect(at.state().answer).toMatchObject({ kind: 'refused', refusal: { rule: 'O1', kind: 'order' } });
    await at.press('t');
    expect(at.state().answer).toMatchObject({ kind: 'taken' });
    expect(at.state().ledger.lines.all.at(-1)?.overrides).toEqual([{ rule: 'O1', because: 'done already' }]);
  });
});

describe('coming back', () => {
  it('[T8] says first how the job was left, until a key is pressed', async () => {
    const at = await atTheBench(demoLines());
    const told = at.bench.store.getState().greeting?.join('\n');
    expect(told).toMatch(/^off: .*wheel/m);
    expect(told).toMatch(/^in: .*jack with block/m);
    expect(told).toMatch(/^parted: .*battery earth/m);
    expect(at.bench.store.getState().greeting?.[0]).toMatch(
      /^4\d off, 2 slack, (1 empty, )?45 holes open; next to (take off|put back): /,
    );
    await at.press('B');
    expect(at.bench.store.getState().greeting).toBeUndefined();
    expect(at.view().screen).toBe('build');
  });

  it.each(['enter', 'space', 'p', 's'])('takes %s, pressed only to go on, for no call', async (key) => {
    const at = await atTheBench(demoLines());
    const { length } = at.state().ledger.lines;
    await at.press(key);
    expect(at.bench.store.getState().greeting).toBeUndefined();
    expect(at.state().ledger.lines.length).toBe(length);
    expect(at.state().answer).toBeUndefined();
    expect(at.view().asking).toBeUndefined();
  });
  it('[S7] asks once whether the time is right where something cures, and counts the time away when it is', async () => {
    const at = await newJob();
    const lines = [
      'area cover',
      'off 1',
      'off 2',
      'holes 2',
      'face cover face pressed by 1 2 keeps in oil with a bead',
    ];
    lines.push('label grey moisture skin 30 full 24 at 23 50', 'bench 23 50', 'clean cover face');
    at.pace.stepMs = 50;
    for (const line of [...lines, 'bead cover face with grey', 'back 1', 'back 2', 'pass', 'pass'])
      expect(at.session().runLine(line), line).not.toMatchObject({ kind: 'refused' });
    const before = at.state().ledger.lines.all.slice(0, at.state().ledger.lines.length);
    const last = before.at(-1) as Line;
    // The last line is one of the next day.
    const dayLater: Line = { ...last, n: last.n + 1, atMs: last.atMs + 30 * 3_600_000, run: 2, awakeMs: 5 };
    const again = await atTheBench([...before, { ...dayLater, entries: [{ kind: 'note-made', words: 'morning' }] }]);
    expect(again.view().asking?.title).toMatch(/^It is \w+ \d\d:\d\d, and something cures/);
    expect(again.bench.store.getState().greeting?.join(' ')).toContain('grey on cover face is curing');
    await again.press('2');
    expect(again.state().ledger.lines.all.at(-1)?.entries).toEqual([{ kind: 'clock-confirmed' }]);
    // What was told before the answer is told as it stands after it.
    expect(again.bench.store.getState().greeting?.join(' ') ?? '').not.toContain('is curing');
    const third = await atTheBench(again.state().ledger.lines.all.slice(0, again.state().ledger.lines.length));
    expect(third.view().asking).toBeUndefined();
  });
  it('[D2] tells what was left out of the file', async () => {
    const notices = [fault('torn', 'a half-written last line was left out', '/jobs/x', 'go on')];
    const at = await atTheBench(demoLines(), { notices });
    expect(at.bench.store.getState().word).toContain('half-written');
  });
  it('[D2] goes on without a bad last line only when that is said', async () => {
    const doubt = {
      fault: fault('last-line-bad', 'the last line does not hold', '/jobs/x', 'go on without it'),
      byte: 77,
    };
    const at = await atTheBench(demoLines(), { doubt });
    expect(at.view().asking?.title).toContain('the last line does not hold');
    await at.press('1');
    expect(at.opens).toHaveLength(1);
    const again = await atTheBench(demoLines(), { doubt });
    await again.press('2');
    await new Promise(setImmediate);
    expect(again.opens.at(-1)).toEqual({ named: '/jobs/x', how: { goOnFrom: 77 } });
  });
  it('[D2] goes on from a copy that holds more, or without it, only when that is said', async () => {
    const told = fault('torn', 'a copy holds 2 calls more', '/jobs/x', 'open the job');
    const doubt = { fault: told, byte: 77, copy: '/jobs/copies/y' };
    for (const [key, how] of [
      ['1', undefined],
      ['2', { goOnFrom: 77, fromCopy: '/jobs/copies/y' }],
      ['3', { goOnFrom: 77 }],
    ] as const) {
      const at = await atTheBench(demoLines(), { doubt });
      expect(at.view().asking?.title).toContain('a copy holds 2 calls more. Go on from that copy?');
      await at.press(key);
      await new Promise(setImmediate);
      expect(at.opens.slice(1)).toEqual(how ? [{ named: '/jobs/x', how }] : []);
    }
    // Only looked at, it is opened anew where it is chosen on the shelf again, and asks again.
    const at = await atTheBench(demoLines(), { doubt });
    await at.press('1', 'H', 'enter');
    await new Promise(setImmediate);
    expect(at.opens.slice(1)).toEqual([{ named: '/jobs/x', how: {} }]);
  });
  it('[D3] takes no call while it is opened to look', async () => {
    const at = await atTheBench(demoLines(), { look: true });
    await at.press('escape', 'B', 'enter');
    expect(at.state().answer).toMatchObject({ kind: 'refused', text: expect.stringContaining('to look only') });
    expect(at.state().ledger.lines.length).toBe(demoLines().length);
  });
  it('[D3] says that it is only looked at, whatever else stands in the way of a call', async () => {
    const at = await atTheBench(demoLines(), { look: true });
    at.session().face({ area: undefined });
    for (const keys of [
      ['S', 'enter'],
      ['B', 't'],
      ['B', 'n'],
    ]) {
      await at.press('escape', ...keys);
      expect(at.state().answer).toMatchObject({ kind: 'refused', text: expect.stringContaining('to look only') });
    }
  });
});

describe('a full disk', () => {
  it('[D5] lets go of no job that is not saved', async () => {
    const at = await newJob();
    at.disk.full = true;
    await at.press('a', '+', 'enter');
    await at.press('H', 'n', ...lettersOf('other'), 'enter');
    expect(at.opens).toHaveLength(1);
    expect(at.bench.store.getState().word).toContain('NOT SAVED');
  });
  it('[D5] shows the call not saved, takes no other, and saves by a key once there is room', async () => {
    const at = await newJob();
    at.disk.full = true;
    await at.press('a', '+', 'enter');
    expect(at.state()).toMatchObject({ notSaved: { what: 'the disk is full' }, savedTo: 1 });
    await at.press('enter');
    expect(at.state().answer).toMatchObject({ kind: 'refused', text: expect.stringContaining('NOT SAVED') });
    expect(at.state().ledger.lines.length).toBe(2);
    at.disk.full = false;
    await at.press('!');
    await new Promise(setImmediate);
    expect(at.state().notSaved).toBeUndefined();
    await at.press('enter');
    expect(at.state()).toMatchObject({ savedTo: 3 });
    expect(at.disk.saved.map((line) => line.n)).toEqual([1, 2, 3]);
  });
});
