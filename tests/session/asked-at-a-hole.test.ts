// What is asked once at a hole: what comes off, goes in, is tightened, was found or is called put right.
import { describe, expect, it } from 'vitest';
import { stateOf } from '../../src/job/ledger.ts';
import { asked, cover, levelIn, lines } from './asked.ts';
import { type AtTheBench, lettersOf, newJob } from './at-the-bench.ts';

describe('what was slackened on purpose', () => {
  it('[L4] comes off by the second Enter once all others are called', async () => {
    const at = await cover();
    await at.press('enter');
    expect(at.state().answer?.kind).toBe('taken');
    await at.press('enter');
    expect(asked(at)).toBe('all 8 of cam cover are called, 5 only slackened; another area is next; area; takes 5 off');
    expect(levelIn(at, 'cam cover/5')).toBe('slack');
    await at.press('enter');
    expect(levelIn(at, 'cam cover/5')).toBeUndefined();
  });
  it('[U1] is put away by the key that strikes, which strikes the call before it only when pressed again', async () => {
    const at = await cover();
    await at.press('enter');
    const before = lines(at);
    at.pace.stepMs = 20;
    await at.press('enter', 'enter', 'backspace');
    expect(at.state().answer).toMatchObject({ kind: 'faced', text: expect.stringMatching(/^nothing was called yet/) });
    expect(lines(at)).toBe(before);
    at.pace.stepMs = 60_000;
    await at.press('enter');
    expect(asked(at)).toContain('takes 5 off');
    await at.press('backspace', 'backspace');
    expect(at.state().answer).toMatchObject({ text: expect.stringMatching(/^struck: line 10 /) });
    // In words the last call is meant.
    await at.press('enter', 'enter');
    expect(asked(at)).toContain('takes 5 off');
    expect(at.session().runLine('strike last')).toMatchObject({ kind: 'taken' });
  });
  it('[L4] comes off at once where it is pointed at', async () => {
    const at = await cover();
    await at.press('enter', '#', '5', 'enter', 'enter');
    expect(levelIn(at, 'cam cover/5')).toBeUndefined();
  });
});

describe('a whole pass', () => {
  it('[O3] with a hole of the area empty is asked once a pass, and never with none', async () => {
    const at = await cover();
    for (const line of ['slack 8', 'holes 8', 'back 1', 'back 2', 'back 3', 'back 4']) at.session().runLine(line);
    await at.press('B', '.');
    expect(asked(at)).toBe('cam cover: 6, 7 are still empty; in by hand first; back; calls snug done without them');
    at.session().runLine('back 6');
    await at.press('.');
    expect(asked(at)).toBe('cam cover: 7 is still empty; in by hand first; new; calls snug done without it');
    await at.press('.');
    expect(at.state().answer?.kind).toBe('taken');
    await at.press('.');
    expect(asked(at)).toContain('calls final done without it');
    for (const line of ['box new bolt as bolt hex 10 M6x25', 'new 7', 'tight 7']) at.session().runLine(line);
    await at.press('.');
    expect(at.state().answer?.kind).toBe('taken');
    expect(levelIn(at, 'cam cover/6')).toBe('tight');
  });
});

describe('a new one for a hole with none in the box', () => {
  it('[L1] buys none for one pointed at that is full, and takes off what is in it by the key named', async () => {
    const at = await cover();
    for (const line of ['holes 8', 'back 1']) at.session().runLine(line);
    await at.press('B', '#', '1', 'n');
    expect(at.state().answer).toMatchObject({
      kind: 'refused',
      text: '1 still holds bolt hex 10',
      instead: 'it comes off first',
      by: 'off',
    });
    await at.press('S', 'd');
    expect(levelIn(at, 'cam cover/1')).toBeUndefined();
  });
  it('[L11] opens the line that puts it there, with more to be typed behind, and then takes it', async () => {
    const at = await cover();
    at.session().runLine('holes 8');
    await at.press('B', '#', '7', 'n');
    expect(at.view().asking).toMatchObject({
      typed: 'box "new for cam cover 7" as bolt hex 10',
      title: expect.stringMatching(/^no new fastener is in the parts box for cam cover 7\. /),
    });
    await at.press(...lettersOf(' M6x25'), 'enter', 'n');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringContaining('cam cover 7 new one in') });
  });
  it('[L11] is refused where the keypad has no line to finish it in', async () => {
    const at = await cover();
    await at.press('B', '#', '7', 'K', '2');
    expect(at.view().asking).toBeUndefined();
    expect(at.state().answer).toMatchObject({ kind: 'refused', by: 'box' });
  });
});

describe('a part that came back with its first bolt', () => {
  it('[O2] is back already when it is called, and the answer names the key that takes both back', async () => {
    const at = await cover();
    await at.press('enter', 'p', ...lettersOf('cover'), 'enter');
    expect(at.state().answer).toMatchObject({
      kind: 'taken',
      text: expect.stringContaining('still slack in it: cam cover 5'),
    });
    await at.press('B', 'h', '8', 'enter', 'enter');
    expect(at.state().answer).toMatchObject({ otherwise: { words: 'To take both back', by: 'strike-last' } });
    await at.press('enter', 'b');
    expect(at.state().answer).toEqual({
      kind: 'faced',
      text: 'cover is back already: it came back with 1; nothing more is to be called for it',
    });
  });
});

describe('what was found at a hole', () => {
  const found = (at: AtTheBench) =>
    at.bench
      .listed()
      .slice(0, 30)
      .filter(({ end }) => end?.startsWith('put right'))
      .map(({ key, text }) => [key, text]);
  /** A new one is in where nothing was. */
  async function filled() {
    const at = await newJob();
    for (const line of ['area one', 'off 1', 'hole empty 2', 'holes 2', 'back 1', 'box spare as bolt hex 10', 'new 2'])
      at.session().runLine(line);
    return at;
  }
  it('[X5] is one row with the hole where one call closes both, and two where the hole wants another first', async () => {
    const at = await filled();
    await at.press('L');
    expect(
      at.bench
        .listed()
        .slice(0, 30)
        .map(({ key }) => key),
    ).toEqual(expect.arrayContaining(['hole-open hole:one/2', 'finding-open finding:d3.1']));
    at.session().runLine('final 2');
    expect(found(at)).toEqual([['finding-open finding:d3.1', 'd3.1: one 2: empty']]);
  });
  it('[F3] is offered with the call that makes the new one tight, and not once it is put right', async () => {
    const at = await filled();
    await at.press('B', '.');
    expect(at.state().answer).not.toHaveProperty('otherwise');
    await at.press('.');
    expect(at.state().answer).toMatchObject({
      otherwise: { words: expect.stringContaining('at 2 is open'), by: 'put-right' },
    });
    await at.press('g');
    expect(found(at)).toEqual([]);
    at.session().runLine('slack 2');
    await at.press('l');
    expect(at.state().answer).toMatchObject({ kind: 'taken' });
    expect(at.state().answer).not.toHaveProperty('otherwise');
  });
});

describe('a direction', () => {
  it('is asked about while a part of its area is off', async () => {
    const at = await newJob();
    for (const line of ['area rear', 'off 1', 'holes 1', 'part off disc held by 1', 'direction marked'])
      at.session().runLine(line);
    await at.press('B', '%');
    expect(asked(at)).toMatch(/^disc is off: what goes which way is seen once it is on; put it on first; part-back; /);
    for (const line of ['part back disc', 'back 1']) at.session().runLine(line);
    await at.press('%');
    expect(at.state().answer?.kind).toBe('taken');
  });
});

describe('a finding at an empty hole', () => {
  const made = async () => {
    const at = await newJob();
    for (const line of ['area cover', 'off 1', 'finding at cover 1 thread stripped']) at.session().runLine(line);
    return at;
  };
  it('[F3] is asked about before it is put right with nothing called done there', async () => {
    const at = await made();
    await at.press('F', 'p');
    expect(asked(at)).toMatch(
      /^nothing was called done at cover 1 since it was found: thread stripped; .*; repair; calls it put right all the same$/,
    );
    await at.press('p');
    expect(at.state().answer?.kind).toBe('taken');
  });
  it('[F5] is put right at once after its thread was chased', async () => {
    const at = await made();
    expect(at.session().runLine('chased 1').kind).toBe('taken');
    await at.press('F', 'p');
    expect(at.state().answer?.kind).toBe('taken');
  });
});

describe('a fastener that proves damaged after it came off', () => {
  const clips = async () => {
    const at = await newJob();
    for (const line of ['area liner', 'clip', 'off 1', 'off 2', 'holes 2']) at.session().runLine(line);
    return at;
  };
  it('[L8] is condemned in its tray by the key for one that comes off so, at its hole', async () => {
    const at = await clips();
    await at.press('d');
    expect(at.state().answer).toMatchObject({
      kind: 'refused',
      instead: 'where one proved damaged since, point at its hole first',
      by: 'point',
    });
    await at.press('#', '2', 'enter', 'd');
    expect(at.state().answer).toMatchObject({
      text: 'f3.1 condemned: damaged after it came off (clip of liner 2)',
      otherwise: { by: 'scrap' },
    });
    expect(stateOf(at.state().ledger, 'fastener', 'f3.1')).toMatchObject({ condemned: expect.any(String) });
    expect(at.session().runLine('damaged 2')).toMatchObject({ kind: 'refused', by: 'scrap' });
    // One that is on the scrap pile is damaged no more.
    await at.press('P', 's');
    expect(at.session().runLine('damaged 2')).toMatchObject({ kind: 'refused', text: 'liner 2 holds nothing' });
  });
  it('[L8] is condemned on the box screen too, which asks why of what', async () => {
    const at = await clips();
    await at.press('P', 'down', 'd');
    expect(at.view().asking?.title).toBe('condemned: clip of liner 1: why');
    await at.press(...lettersOf('tab broken'), 'enter');
    expect(at.state().answer).toMatchObject({ text: 'f2.1 condemned: tab broken (clip of liner 1)' });
  });
});

describe('a reading far from the figure of its bolt', () => {
  it('[O4] tightens nothing by its line until it is said with "all the same", and is asked about by nothing near it', async () => {
    const at = await newJob();
    await at.press('a', ...lettersOf('bracket'), 'enter', '0');
    for (const line of ['off 1', 'off 2', 'holes 2', 'by torque 110', 'back 1', 'back 2', 'pass'])
      expect(at.session().runLine(line).kind).not.toBe('refused');
    expect(at.session().runLine('tight 1 read 105')).toMatchObject({ kind: 'taken' });
    expect(at.session().runLine('tight 2 read 11')).toMatchObject({
      kind: 'refused',
      text: 'bracket 2: 11 N·m read where 110 N·m are wanted; is that what the wrench showed?',
      instead: 'tighten it to its figure and say what is read then; or say it with "all the same" at its end',
    });
    expect(levelIn(at, 'bracket/2')).toBe('snug');
    expect(at.session().runLine('tight 2 read 11 all the same')).toMatchObject({ kind: 'taken' });
    expect(levelIn(at, 'bracket/2')).toBe('tight');
  });
});
