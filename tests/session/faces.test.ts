// The list of faces: where it begins, and what is asked before a call is written of a face nobody can reach.
import { describe, expect, it } from 'vitest';
import { offerOf } from '../../src/calls/desk.ts';
import { nextWords } from '../../src/calls/line-reader.ts';
import { pickedAt } from '../../src/calls/listed.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { openPointsWithNext } from '../../src/job/next-call.ts';
import type { OpenPoint } from '../../src/job/open-point.ts';
import { waitWords } from '../../src/job/ready.ts';
import { shipped } from '../plan/shipped/shipped.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { atTheBench, lettersOf, newJob } from './at-the-bench.ts';
import { fromNothing, type PartWay, partWay } from './part-way.ts';

const count = (at: PartWay) => at.state().ledger.lines.length;

describe('the list of faces', () => {
  it('begins with the first that wants something, also when it is come back to', async () => {
    const at = await partWay('clean cam cover face');
    await at.press('C');
    const picked = () => pickedAt(at.bench.listed(), at.view().at.sealing);
    expect(picked()?.text).toBe('cam cover face');
    await at.press('page-up', 'page-up', 'B', 'C');
    expect(picked()?.text).toBe('cam cover face');
    await at.press('c');
    expect(stateOf(at.state().ledger, 'face', 'cam cover face')?.cleanedAt).toBe(count(at));
  });
});

describe('a face that no plan names', () => {
  it('[S1] is asked for by the key that a face called clean names, with the holes called there', async () => {
    const at = await fromNothing();
    await at.press('C');
    await at.press('c');
    expect(at.answer()).toBe('no sealing face is known yet');
    at.say('area cover', 'off 1', 'off 2', 'off 3', 'off 4', 'off 5 as clamp', 'use bolt', 'off 6');
    await at.press('a', ...lettersOf('lip'), 'enter');
    expect(at.view().asking?.typed).toBe('1-4 6');
    await at.press('enter', ...lettersOf('engine oil'), 'enter', '2', 'enter');
    expect(at.answer()).toBe('sealing face lip, pressed by cover 1-4 6, keeps in engine oil, 2 beads');
    expect(stateOf(at.state().ledger, 'face', 'lip')?.declared).toMatchObject({
      area: 'cover',
      pressedBy: ['cover/1', 'cover/2', 'cover/3', 'cover/4', 'cover/6'],
      keepsIn: ['engine oil'],
      bead: 2,
    });
    await at.press('c');
    expect(at.answer()).toBe('lip clean');
  });
  it('[S3] has its label read back, and its bead say what its time is counted from', async () => {
    const at = await fromNothing();
    at.say('area cover', 'off 1', 'off 2', 'face lip pressed by 1-2 keeps in engine oil with a bead');
    await at.type('label grey moisture skin 10 fill 4 full "40 min" at 23 50');
    expect(at.answer()).toBe('label of grey: skin 10 min, fill 4 h, full 40 min, at 23 °C and 50 %');
    // Where the tube says nothing of the air, the standard atmosphere (ISO 291:2008, table 1).
    await at.type('label tube anaerobic full 6');
    expect(at.answer()).toBe('label of tube: full 6 h, at 23 °C and 50 %');
    await at.type('label tube full 6');
    expect(at.view().asking?.why).toContain('one is missing of: moisture, anaerobic, non-setting, dry');
    await at.press('escape');
    at.pace.stepMs = 1000;
    at.say('bench 23 50', 'clean lip', 'bead lip with grey', 'holes 2', 'back 1', 'back 2', 'tight 1', 'tight 2');
    await at.press('escape', 'C');
    const row = at.bench
      .listed()
      .slice(0, 99)
      .find(({ name }) => name === 'bead');
    expect(row?.more).toMatch(/\. Counted from \d\d:\d\d, when it was together\. Turning by hand/);
  });
});

describe('a face that goes on without sealant', () => {
  it("[S8 X5] is said by one key, which its row names, and is in no one's way then", async () => {
    const at = await partWay('bead cam cover face with joint sealant');
    await at.press('C');
    const rows = () => at.bench.listed().slice(0, 99);
    const row = pickedAt(at.bench.listed(), at.view().at.sealing);
    expect(row?.more).toMatch(/^cam cover face: once clean, s bead laid, or n where it goes on without/);
    await at.press('n');
    expect(at.answer()).toContain('cam cover face goes on without sealant');
    const open = openPointsWithNext(at.state().ledger, at.session().now());
    expect(open.filter((p) => p.at === 'face:cam cover face')).toEqual([]);
    expect(rows().find((one) => one.name === 'bead')?.end).toBe('wants no cure');
    expect(rows().find((one) => one.text === 'cam cover face')?.end).toBe('goes on without sealant');
    // One that wants none is none the other for it.
    const before = count(at);
    await at.type('no bead pump face');
    expect(at.answer()).toMatch(/^pump face wants no bead as it is; nothing is/);
    expect(count(at)).toBe(before);
  });
});

describe('a bead that only wants time', () => {
  it('[S5 X5] says in the list of what is open till when it is waited for, and where the road test waits for it', async () => {
    const at = await partWay('area tensioner and idler', 2);
    at.say('clock right');
    await at.press('L');
    const row = at.bench
      .listed()
      .slice(0, 99)
      .find(({ key }) => key === 'bead-curing face:cam cover face');
    const { ledger } = at.state();
    const now = at.session().now();
    const hour = (code: OpenPoint['code'], place: OpenPoint['at']) => waitWords(ledger, { code, at: place }, now);
    expect(row?.text).toMatch(/joint sealant is curing, ready \w+day \d\d:\d\d(, may be run \w+day \d\d:\d\d)?$/);
    expect(row?.end).toBe(`wait till ${row?.text.split('ready ')[1]?.split(',')[0]}`);
    expect(hour('bead-curing', 'face:cam cover face')).toBe(row?.end);
    expect(hour('bead-curing', 'face:pump face')).toBe('');
    expect(hour('hole-open', 'hole:cam cover/1')).toBe('');
    // Six label hours to run and to fill engine oil, twenty-four until it is cured; coolant is kept in by another face.
    expect(hour('road-test', 'vehicle')).toMatch(/^wait till \w+day \d\d:\d\d$/);
    expect(hour('road-test', 'vehicle')).not.toBe(row?.end);
    expect(hour('circuit-empty', 'circuit:engine oil')).toBe(hour('road-test', 'vehicle'));
    expect(hour('circuit-empty', 'circuit:coolant')).toBe('');
  });
});

describe('a face that is closed over', () => {
  it('[S1] is asked for once more before it is called clean or a bead is laid, and the careful answer comes first', async () => {
    const at = await partWay('area tensioner and idler', 2);
    const before = count(at);
    await at.press('C', 'page-up', 'page-up', 'down');
    const row = at.bench
      .listed()
      .slice(0, 9)
      .find(({ key }) => key === 'face pump face');
    expect(row?.more).toContain('not called: "clean pump face all the same"');
    await at.press('c');
    expect(at.view().asking).toMatchObject({
      title: expect.stringContaining('is closed over: was it cleaned before?'),
      choices: [{ value: 'no' }, { value: 'all the same' }],
    });
    await at.press('c', 'enter');
    expect(count(at)).toBe(before);
    expect(at.view().asking).toBeUndefined();
    await at.press('s', 's', 'enter');
    expect(count(at)).toBe(before);
    await at.press('c', '2');
    expect(count(at)).toBe(before + 1);
    expect(at.answer()).toContain('Mind: ');
  });
  it('[X5] leads to what covers it coming off again, and to no call that is refused', async () => {
    const at = await partWay('clean cam cover face');
    const next = () => {
      const point = openPointsWithNext(at.state().ledger, at.session().now()).find(
        (p) => p.at === 'face:cam cover face',
      );
      return (
        point?.next &&
        nextWords({ ...at.bench.desk(), facing: { ...at.bench.desk().facing, area: undefined } }, point.next)
      );
    };
    expect(next()).toBe('clean cam cover face');
    at.say('area cam cover', 'renewed gasket', 'back 4', 'back 5');
    expect(next()).toBe('off cam cover 5');
    at.say('off 5', 'off 4');
    expect(next()).toBe('clean cam cover face');
  });
  it('[S1] takes a typed line only with the words for it', async () => {
    const at = await partWay('area tensioner and idler', 2);
    const before = count(at);
    await at.type('clean pump face');
    expect(at.view().asking?.why).toMatch(/^pump face is closed over: was it cleaned before\? /);
    expect(count(at)).toBe(before);
    at.say('clean pump face all the same', 'bead pump face with joint sealant all the same');
    expect(count(at)).toBe(before + 2);
  });
  it('[S1 X5] is one whose part is set on again, and one that a bolt presses; minded where it was done before', async () => {
    const at = await partWay('clean cam cover face');
    at.say('area cam cover', 'part back cam cover');
    const before = count(at);
    const next = () => openPointsWithNext(at.state().ledger, at.session().now()).find((p) => p.at === face)?.next;
    const face = 'face:cam cover face';
    expect(next()).toEqual({ verb: 'remove-part', part: 'cam cover' });
    await at.press('C', 'c');
    expect(at.view().asking?.title).toBe('cam cover is on cam cover face: was it cleaned before?');
    await at.press('c', 'enter');
    expect(count(at)).toBe(before);
    await at.type('clean cam cover face');
    expect(at.view().asking?.why).toMatch(/^cam cover is on cam cover face: was it cleaned before\? /);
    await at.press(...lettersOf(' all the same'), 'enter');
    expect(at.answer()).toMatch(/Mind: cam cover is on cam cover face/);
    await at.type('bead cam cover face');
    expect(at.view().asking?.why).toMatch(/^cam cover is on cam cover face: was the bead laid before\? /);
    expect(count(at)).toBe(before + 1);

    const own = await newJob();
    for (const line of ['area sump', 'bolt hex 10', 'off 1', 'off 2', 'holes 2']) own.session().runLine(line);
    for (const line of ['face sump face pressed by 1 2', 'back 1', 'back 2', 'tight 1'])
      expect(own.session().runLine(line)).toMatchObject({ kind: 'taken' });
    expect(own.session().runLine('clean sump face')).toMatchObject({
      kind: 'refused',
      text: 'sump 1 presses sump face: was it cleaned before?',
    });
  });
  it('asks of a bead as well where the plan wants none', async () => {
    const at = await partWay('renewed pump');
    await at.type('bead pump face');
    expect(at.view().asking?.why).toMatch(/^pump face wants no bead by its plan: is one laid\? /);
    at.say('clean pump face');
  });
});

describe('a question whose answers stand in a list', () => {
  it('keeps the list when a letter is pressed by habit, and says so', async () => {
    const at = await partWay('area tensioner and idler', 2);
    await at.press('C', 'page-up', 'page-up', 'down', 'c', 'q');
    expect(at.view().asking).toMatchObject({ typed: '', why: expect.stringContaining('none of these has "q"') });
    await at.press('escape', 'c', 'c');
    expect(at.view().asking?.typed).toBe('c');
  });
});

describe('the conditions at the bench', () => {
  it('are asked for with their unit and an example', async () => {
    const at = await partWay('bench 21 55');
    await at.press('C', 'b');
    expect(at.view().asking?.title).toBe('bench conditions: how many °C, as 18');
    await at.press('2', '1', 'enter');
    expect(at.view().asking?.title).toBe('bench conditions: humidity of the air in %, as 45 (left out: unknown)');
  });
});

describe('a screen that one is sent to', () => {
  it('[S1] opens on the face of the area in use, whatever another face wants', async () => {
    const at = await partWay('clean cam cover face');
    at.say('area coolant pump');
    await at.press('B', 'C');
    const picked = () => pickedAt(at.bench.listed(), at.view().at.sealing)?.text;
    expect(picked()).toBe('pump face');
    await at.press('c');
    expect(at.answer()).toBe('pump face clean');
    await at.press('B', 'C');
    expect(picked()).toBe('cam cover face');
  });
  it('opens on what is to be minded at the area in use, and by the same key at the top', async () => {
    const at = await partWay('off 1', 2);
    at.say('area tensioner and idler');
    await at.press('S', 'T');
    const picked = () => pickedAt(at.bench.listed(), at.view().at.todo);
    expect(picked()).toMatchObject({
      name: 'mind',
      end: 'timing belt',
      more: expect.stringMatching(/^timing belt: .*[^:]$/),
    });
    expect(at.bench.store.getState().note).toBe('To be minded at tensioner and idler. T again: the top of the list.');
    await at.press('T');
    expect(picked()?.name).toBe('service');
  });
  it('opens on what is to be minded on the whole car before an area is in use', async () => {
    const at = await atTheBench(undefined, {
      plans: [offerOf({ plan: shipped('front-struts.json'), file: 'front-struts.json' })],
    });
    await at.press('n', 'x', 'enter');
    at.session().runLine('plan front struts for front struts');
    await at.press('S', 'T');
    expect(pickedAt(at.bench.listed(), at.view().at.todo)?.name).toBe('mind');
    expect(at.bench.store.getState().note).toMatch(/^To be minded on the whole car/);
    // And in the first area, of which nothing is said itself.
    at.session().runLine('area right front wheel');
    await at.press('T', 'home', 'S', 'T');
    expect(pickedAt(at.bench.listed(), at.view().at.todo)).toMatchObject({ name: 'mind' });
    await at.press('S', 'a', ...lettersOf('jack point'), 'enter', 'B');
    const shown = textOf(sceneOf(at.view(), { desk: at.bench.desk(), session: at.state() })).replace(/[\s│]+/g, ' ');
    expect(shown).toContain('No fastener of jack point was called yet.');
    expect(shown).toContain('What came off is called on Strip: S.');
  });
  it('[X5] lists what is open as the way back goes: what came off last first, what waits behind another last', async () => {
    const at = await partWay('finding at cam cover 7 thread stripped in the head');
    await at.press('L');
    const areas = at.bench
      .listed()
      .slice(0, 200)
      .flatMap(({ leads = '' }) => (leads.startsWith('hole:') ? [leads.slice(5).split('/')[0]] : []));
    expect([...new Set(areas)].slice(0, 4)).toEqual([
      'cam cover',
      'coolant pump',
      'tensioner and idler',
      'lower belt cover',
    ]);
  });
  it('[F4] opens on the finding of the area in use', async () => {
    const at = await partWay('part off timing belt');
    at.say('finding at lower belt cover 2 bent', 'finding at coolant pump 1 bent', 'area coolant pump');
    await at.press('B', 'F');
    expect(pickedAt(at.bench.listed(), at.view().at.findings)?.text).toBe('coolant pump 1: bent');
  });
});

describe('a bead that skinned before it was together', () => {
  const skinned = async () => {
    const at = await newJob();
    for (const line of [
      'area cover',
      'bolt hex 10 M6x25',
      'off 1',
      'off 2',
      'holes 2',
      'part off lid held by 1-2',
      'face cover face pressed by 1-2 keeps in engine oil under lid with a bead',
      'label grey moisture skin 3 fill 4 run 12 full 24 at 23 50',
      'bench 18 45',
      'clean cover face',
      'bead cover face with grey',
    ]) {
      const answer = at.session().runLine(line);
      if (answer.kind === 'refused') throw new Error(`${line}: ${answer.text}`);
    }
    at.pace.stepMs = 600_000;
    return at;
  };
  const mind = 'Mind: the bead on cover face is void, skinned before it was together: cleaned, and laid again';
  const said = (at: Awaited<ReturnType<typeof skinned>>) => {
    const { answer } = at.state();
    return answer && 'text' in answer ? answer.text : '';
  };
  const shownOn = (at: Awaited<ReturnType<typeof skinned>>, screen: 'build' | 'leaving' | 'sealing') =>
    textOf(sceneOf({ screen }, { desk: at.bench.desk() }))
      .replaceAll(/\s*│\s*/g, ' ')
      .replace(/\s+/g, ' ');
  it('[S2] is minded with the part that goes on it, and with the first bolt', async () => {
    const at = await skinned();
    await at.press('B', 'b');
    expect(said(at)).toBe(`lid back. ${mind}`);
    await at.press('enter');
    expect(said(at)).toBe(`cover 1 back. ${mind}`);
    await at.press('enter');
    expect(said(at)).toBe('cover 2 back');
  });
  it('[S2] stands over the next bolt, is the reason why one that is on comes off again, and is cleaned away first', async () => {
    const at = await skinned();
    expect(shownOn(at, 'build')).toContain(
      '! first C: cover face clean, bead anew: void, skinned before it was together',
    );
    expect(shownOn(at, 'sealing')).toContain(
      'cover face: the bead is void: skinned before it was together. once clean',
    );
    expect(shownOn(at, 'leaving')).toContain('Next: clean cover face');
    at.session().runLine('back 1');
    expect(shownOn(at, 'leaving')).toContain(
      'cover 1: on; void bead on cover face, skinned before it was together. Next: off cover 1',
    );
  });
});
