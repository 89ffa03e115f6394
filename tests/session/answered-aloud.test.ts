// A question that stands on the screen, answered out loud by the number that stands before the answer.
import { describe, expect, it } from 'vitest';
import { answersAloud } from '../../src/calls/answers-aloud.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { grammarOf } from '../../src/voice/grammar.ts';
import { type AtTheBench, newJob } from './at-the-bench.ts';

const say = (at: AtTheBench, phrase: string) => at.bench.hear({ phrase });
const heard = (at: AtTheBench) => at.bench.store.getState().heard;
const asked = (at: AtTheBench) => at.view().asking?.slot;

describe('a question that stands there', () => {
  it('is answered by a number said with the one before it, as by its key, one after the other', async () => {
    const at = await newJob();
    await at.press('L', 'w');
    expect(at.bench.heed()).toEqual({
      answers: expect.arrayContaining(['the answer is one after zero', 'the answer is two after one', 'leave it be']),
    });
    say(at, 'the answer is two after one');
    expect([asked(at), heard(at)]).toEqual(['because', expect.stringContaining('say "the answer is one after zero"')]);
    say(at, 'the answer is one after zero');
    say(at, 'the answer is seven after six');
    expect(asked(at)).toBeUndefined();
    expect(stateOf(at.state().ledger, 'vehicle', 'vehicle')?.waiting).toMatchObject({
      who: 'the owner',
      because: 'on order',
      until: 'Monday 2031-03-10',
    });
    expect(at.bench.heed()).toBe('calls');
  });
  it('takes a number that names something itself, and a call by the number it has', async () => {
    const at = await newJob(undefined, { trays: ['1', '2', '12'] });
    await at.press('P', 'c');
    expect(answersAloud(at.view().asking as never).map((one) => one.say)).toContain(
      'the answer is twelve after eleven',
    );
    say(at, 'the answer is twelve after eleven');
    expect(at.view().asking?.title).toContain('12');
    say(at, 'leave it be');
    expect(asked(at)).toBeUndefined();
    await at.press('M');
    say(at, 'the answer is none at all');
    expect(at.bench.store.getState().note).toContain('Which one?');
  });
  it('takes no other phrase, no number that stands nowhere, and nothing half heard', async () => {
    const at = await newJob();
    await at.press('L', 'w');
    const { length } = at.state().ledger.lines;
    for (const phrase of ['the answer is two', 'the answer is nine after eight', 'tools are out']) say(at, phrase);
    at.bench.hear({ unsure: 'the answer is two after one' });
    expect(heard(at)).toContain('not understood: say "the answer is one after zero"');
    expect([asked(at), at.state().ledger.lines.length]).toEqual(['who', length]);
    say(at, 'leave it be');
    expect(asked(at)).toBeUndefined();
    expect(at.bench.store.getState().note).toContain('was not called');
  });
  it('[X3] is answered by a key alone where its answer signs, or something is typed', async () => {
    const at = await newJob();
    at.session().runLine('odometer 5000');
    await at.press('L', 'u', 'A', 'n', 'n', 'enter');
    expect(at.bench.heed()).toEqual({ answers: ['leave it be'] });
    await at.press('t', 'o', 'w', 'enter');
    expect(asked(at)).toBe('sure');
    say(at, 'the answer is two after one');
    expect([asked(at), heard(at)]).toEqual(['sure', expect.stringContaining('answer it by its keys')]);
    expect(at.state().ledger.lines.all.at(-1)?.entries[0]?.kind).toBe('odometer-noted');
  });
  it('has a grammar of its own', async () => {
    const at = await newJob();
    await at.press('L', 'w');
    const { jsgf } = grammarOf(at.bench.desk(), at.bench.heed());
    expect(jsgf).toContain('<call> = the answer is one after zero');
    expect(jsgf).not.toContain('take away');
  });
});
