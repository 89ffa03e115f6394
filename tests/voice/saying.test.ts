// What may be said on a job, read from words alone: no recogniser is needed here.
import { describe, expect, it } from 'vitest';
import type { Desk } from '../../src/calls/desk.ts';
import { slotsOf } from '../../src/calls/form.ts';
import { readLine } from '../../src/calls/line-reader.ts';
import { readSaid } from '../../src/calls/read-said.ts';
import { sayings } from '../../src/calls/sayings.ts';
import { asSaid } from '../../src/calls/spoken-words.ts';
import { formOf } from '../../src/calls/table.ts';
import { createEar } from '../../src/session/hearing.ts';
import type { Answer } from '../../src/session/session-shape.ts';
import { grammarOf } from '../../src/voice/grammar.ts';
import { judged, settled } from '../../src/voice/judge.ts';
import { stretched } from '../../src/voice/pocketsphinx.ts';
import { bySpelling, dictionaryOf, tradeWords } from '../../src/voice/pronounce.ts';
import { createCutter } from '../../src/voice/utterances.ts';
import { phrases as measured } from '../bench/voice.ts';
import { plansAtHand, playLines, scriptLines, upTo } from '../jobs/lines.ts';
import { compressor, over, pcmOf, rate } from './speech.ts';

function deskAt(line: string, area: string): Desk {
  const { ledger, now, places } = playLines(upTo(scriptLines('reference-planned.calls'), line));
  const facing = { ...(places.at(-1)?.facing as Desk['facing']), area };
  return { ledger, facing, now, plans: plansAtHand };
}
const desk = deskAt('finding at cam cover 7 thread stripped in the head', 'cam cover');

describe('sayings', () => {
  it('hold every phrase that is measured', () => {
    for (const phrase of measured) expect(readSaid(desk, phrase), phrase).toBeDefined();
  });

  it('are two words or more, begin with no f, and name only slots of their own form', () => {
    for (const { row, nodes } of sayings) {
      const words = nodes.flatMap((node) => ('word' in node ? [node.word] : []));
      const counted = words.length + slotsOf(nodes).filter(({ optional }) => !optional).length;
      expect(counted, row.id).toBeGreaterThanOrEqual(2);
      expect(words[0]?.[0], row.id).not.toBe('f');
      const slots = slotsOf(formOf.get(row.id) ?? []).map(({ slot }) => slot);
      for (const { slot } of slotsOf(nodes)) expect(slots, row.id).toContain(slot);
    }
  });

  it.each([
    ['take away number seven after six', 'off 7'],
    ['take away next one', 'off'],
    ['in tray two after one i count none at all', 'count 2 is 0'],
    ['crank was turned two after one', 'turned 2'],
    ['next tray is now three after two', 'tray 3'],
    ['work on the coolant pump from here', 'area coolant pump'],
    ['change socket size to ten after nine', 'head hex 10'],
    [
      'odd one number three after two as bolt hex seventeen em ten pitch one point two five by fifty after forty nine class eight point eight',
      'wrong one 3 as bolt hex 17 M10x1.25x50 8.8',
    ],
    ['in tray two after one i count eleven after ten', 'count 2 is 11'],
    ['something wrong at hole seven after six thread stripped in the head', 'finding at 7 thread stripped in the head'],
    ['the distance run is one one eight four zero zero', 'odometer 118400'],
    ['insert work at number seven after six drilled six point three', 'repair 7 drilled 6.3'],
    ['insert work at number seven after six depth sixteen after fifteen', 'repair 7 depth 16'],
    ['odd one number three after two as bolt hex ten em six by twenty five', 'wrong one 3 as bolt hex 10 M6x25'],
  ])('"%s" is "%s"', (said, typed) => {
    expect(readLine(desk, said)).toEqual(readLine(desk, typed));
    expect(readSaid(desk, said)).toBeDefined();
  });

  it('know only what is on this job: no number of a hole that is not there, no half of a call', () => {
    for (const text of [
      'take away number eleven after ten',
      'take away number',
      'take away number seven',
      'take away number seven after five',
      'work on the pump from here',
      'part comes away',
      '',
    ])
      expect(readSaid(desk, text), text).toBeUndefined();
  });

  it('make a grammar that follows the area in use', () => {
    const cover = grammarOf(desk).jsgf;
    expect(cover).toContain(
      '<hole> = one after zero | two after one | three after two | four after three | five after four | six after five | seven after six |',
    );
    expect(grammarOf({ ...desk, facing: { ...desk.facing, area: 'crank pulley' } }).jsgf).toContain(
      '<hole> = one after zero;',
    );
    expect(cover).not.toMatch(/<(?!heard|call|[a-z]+>)/);
    for (const [, rule] of cover.matchAll(/<([a-z]+)>/g)) expect(cover, rule).toContain(`<${rule}> =`);
    expect(grammarOf(desk, 'start').words).toEqual(['listening', 'start']);
  });

  it('say names as they sound', () => {
    expect(asSaid('O-ring')).toBe('o ring');
    expect(asSaid('M6x25 8.8')).toBe('em six by twenty five eight point eight');
    expect(asSaid('Kühler 112')).toBe('kuhler one hundred twelve');
  });
});

describe('the dictionary of a grammar', () => {
  it('has a sound for every word, and tells those it guessed', () => {
    const known = new Map([['take', ['T EY K']]]);
    const { text, guessed } = dictionaryOf(['take', 'tensioner', 'zwickel'], known);
    expect(text).toBe(`take T EY K\ntensioner ${tradeWords.tensioner}\nzwickel ${bySpelling('zwickel')}\n`);
    expect(guessed).toEqual(['zwickel']);
  });
});

describe('the ear', () => {
  const taken: Answer = { kind: 'taken', text: 'done', n: 1, call: 'x' };
  const ear = () => {
    const ran: string[] = [];
    const run = (row: { id: string }) => {
      ran.push(row.id);
      return taken;
    };
    const one = createEar({ desk: () => desk, run });
    return { ...one, ran };
  };
  it('asks again where it is unsure, and runs nothing', () => {
    const at = ear();
    expect(at.hear({ unsure: 'take away number seven after six' }).word).toBe('not understood: say it again');
    expect(at.hear({ phrase: 'take away banana' }).word).toContain('no call here');
    expect(at.hear('nothing')).toEqual({});
    expect(at.ran).toEqual([]);
  });
  it('[X3] wants a second word before what is hard to take back, and nothing else will do', () => {
    const at = ear();
    expect(at.hear({ phrase: 'car may leave by the mechanic' }).word).toContain('really do it');
    expect(at.heed()).toBe('second word');
    at.hear({ unsure: 'really do it' });
    at.hear({ phrase: 'car may leave by the mechanic' });
    expect(at.ran).toEqual([]);
    at.hear({ phrase: 'car may leave by the mechanic' });
    at.hear({ phrase: 'really do it' });
    expect(at.ran).toEqual(['release']);
  });
  it('asks it for a strike of more than one call, typed words of another recogniser too', () => {
    const at = ear();
    expect(at.hear({ phrase: 'strike 3 4' }).word).toContain('really do it');
    at.hear({ phrase: 'leave it be' });
    at.hear({ phrase: 'strike that call' });
    expect(at.ran).toEqual(['strike-last']);
  });
  it('asks once what a key is asked, and a second word is the answer', () => {
    const asked = (line: string, area: string, phrase: string) => {
      const now = deskAt(line, area);
      const ran: unknown[] = [];
      const at = createEar({ desk: () => now, run: (row, args) => void ran.push([row.id, args]) });
      return { at, ran, first: at.hear({ phrase }).word };
    };
    // Nothing of the drive was touched yet: the engine is turned for another reason, or the phrase was misheard.
    const turned = asked('tray 1', 'right front wheel', 'crank was turned two after one');
    expect(turned.first).toContain('no check rotation is wanted');
    expect(turned.first).toContain('say "really do it": it begins a check rotation, or "leave it be"');
    expect([turned.at.heed(), turned.ran]).toEqual(['second word', []]);
    turned.at.hear({ phrase: 'leave it be' });
    expect(turned.ran).toEqual([]);
    turned.at.hear({ phrase: 'crank was turned two after one' });
    turned.at.hear({ phrase: 'really do it' });
    expect(turned.ran).toHaveLength(1);
  });
  it('says "all the same" by a second word, where a typed line says it at its end', () => {
    const covered = deskAt('area mount bracket', 'cam cover');
    const ran: unknown[] = [];
    const at = createEar({ desk: () => covered, run: (row, args) => void ran.push([row.id, args]) });
    expect(at.hear({ phrase: 'clean pump face' }).word).toMatch(/pump face is closed over.*say "really do it": right/);
    at.hear({ phrase: 'really do it' });
    expect(ran).toEqual([['clean', expect.objectContaining({ late: 'all the same' })]]);
  });
  it('stops and starts listening by word', () => {
    const at = ear();
    at.hear({ phrase: 'stop listening' });
    at.hear({ phrase: 'take away number seven after six' });
    expect([at.ran, at.heed()]).toEqual([[], 'start']);
    at.hear({ phrase: 'start listening' });
    at.hear({ phrase: 'take away number seven after six' });
    expect(at.ran).toEqual(['off']);
  });
});

describe('judging and cutting', () => {
  const as = (text: string, fit = -40) => ({
    words: text.split(' ').map((word) => ({ word, fit, frames: 20 })),
  });
  it('takes only what every decoder heard alike, and well enough', () => {
    expect(judged([as('next tray is now three after two'), as('next tray is now three after two')])).toEqual({
      phrase: 'next tray is now three after two',
    });
    expect(judged([as('next tray is now three after two'), as('next tray is now two')])).toEqual({
      unsure: 'next tray is now three after two',
    });
    expect(judged([as('next tray is now three after two'), { words: [] }])).toEqual({
      unsure: 'next tray is now three after two',
    });
    expect(judged([as('next tray is now three after two', -300), as('next tray is now three after two')])).toEqual({
      unsure: 'next tray is now three after two',
    });
    expect(judged([{ words: [] }, { words: [] }])).toBe('nothing');
  });
  it('settles hearings that part only for a phrase that two had and that fits clearly better', () => {
    const [one, other] = ['pull up number four after three', 'every lock slid'];
    const two = [as(one), as(other), as(one)];
    const weighed = (best: number, next: number, over = [best, next]) => ({
      phrases: [one, other],
      fits: [
        [best, over[0] as number],
        [next, over[1] as number],
      ],
    });
    expect(settled(two, weighed(-4000, -6000))).toEqual({ phrase: one });
    expect(settled(two, weighed(-4000, -4100))).toEqual({ unsure: one });
    expect(settled(two, weighed(-4000, -6000, [-6000, -4500])), 'not over all speeds').toEqual({ unsure: one });
    expect(settled([as(one), as(other), { words: [] }], weighed(-4000, -6000)), 'had by one').toEqual({ unsure: one });
    expect(settled([as(one, -300), as(other), as(one, -300)], weighed(-4000, -6000)), 'no word').toEqual({
      unsure: one,
    });
    const agreed = [as(one, -73), as(one, -73), as(one, -73)];
    expect(judged(agreed), 'three had it').toEqual({ phrase: one });
    expect(settled([as(one, -73), as(other), as(one, -73)], weighed(-4000, -6000)), 'as over a ratchet alone').toEqual({
      unsure: one,
    });
    expect(settled(two, weighed(-6000, -4000)), 'the other fits, and was had by one').toEqual({ unsure: other });
    expect(settled(two, { phrases: [one, other], fits: [[undefined], [undefined]] })).toEqual({ unsure: one });
  });
  it('cuts an utterance out of the noise around it, whatever pieces the sound comes in', () => {
    const tone = Float64Array.from({ length: rate }, (_, i) => 0.4 * Math.sin(i / 5) * (1 + Math.sin(i / 900)));
    const noise = pcmOf(compressor(rate * 4, 5).map((x) => x * 0.02));
    const sound = Buffer.concat([noise, over(tone, 'compressor', 10, 5), noise]);
    const whole = createCutter().push(sound);
    const cutter = createCutter();
    const parts: Buffer[] = [];
    for (let at = 0; at < sound.length; at += 777) parts.push(...cutter.push(sound.subarray(at, at + 777)));
    expect(whole.map((one) => one.length)).toEqual(parts.map((one) => one.length));
    expect(whole.some((one) => one.length > rate * 2 && one.length < rate * 7)).toBe(true);
  });
  it('draws a sound out without losing its end', () => {
    const pcm = pcmOf(Float64Array.from({ length: 100 }, (_, i) => i / 200));
    expect([stretched(pcm, 1.08).length, stretched(pcm, 0.93).length]).toEqual([216, 186]);
    expect(stretched(pcm, 1.08).readInt16LE(214)).toBeGreaterThan(16_000 * 0.95);
  });
});
