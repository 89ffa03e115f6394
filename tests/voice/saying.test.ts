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
import type { Answer } from '../../src/session/session.ts';
import { grammarOf } from '../../src/voice/grammar.ts';
import { judged } from '../../src/voice/judge.ts';
import { stretched } from '../../src/voice/pocketsphinx.ts';
import { bySpelling, dictionaryOf, tradeWords } from '../../src/voice/pronounce.ts';
import { createCutter } from '../../src/voice/utterances.ts';
import { plansAtHand, playLines, scriptLines, upTo } from '../jobs/lines.ts';
import { compressor, over, pcmOf, rate } from './speech.ts';

function deskAt(line: string, area: string): Desk {
  const { ledger, now, places } = playLines(upTo(scriptLines('reference-planned.calls'), line));
  const facing = { ...(places.at(-1)?.facing as Desk['facing']), area };
  return { ledger, facing, now, plans: plansAtHand };
}
const desk = deskAt('finding at cam cover 7 thread stripped in the head', 'cam cover');

describe('sayings', () => {
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
    ['take away number seven seven', 'off 7'],
    ['take away next one', 'off'],
    ['into tray three three', 'tray 3'],
    ['work on coolant pump', 'area coolant pump'],
    ['socket size ten ten', 'head hex 10'],
    [
      'odd one number three three as bolt hex seventeen em ten pitch one point two five by fifty class eight point eight',
      'wrong one 3 as bolt hex 17 M10x1.25x50 8.8',
    ],
    ['in tray two two i count eleven eleven', 'count 2 is 11'],
    ['something wrong at hole seven seven thread stripped in the head', 'finding at 7 thread stripped in the head'],
    ['the distance run is one one eight four zero zero', 'odometer 118400'],
    ['insert work at number seven seven drilled six point three', 'repair 7 drilled 6.3'],
  ])('"%s" is "%s"', (said, typed) => {
    expect(readLine(desk, said)).toEqual(readLine(desk, typed));
    expect(readSaid(desk, said)).toBeDefined();
  });

  it('know only what is on this job: no number of a hole that is not there, no half of a call', () => {
    for (const text of [
      'take away number eleven eleven',
      'take away number',
      'work on the pump',
      'part comes away',
      '',
    ])
      expect(readSaid(desk, text), text).toBeUndefined();
  });

  it('make a grammar that follows the area in use', () => {
    const cover = grammarOf(desk).jsgf;
    expect(cover).toContain(
      '<hole> = one one | two two | three three | four four | five five | six six | seven seven |',
    );
    expect(grammarOf({ ...desk, facing: { ...desk.facing, area: 'crank pulley' } }).jsgf).toContain(
      '<hole> = one one;',
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
    expect(at.hear({ unsure: 'take away number seven seven' }).word).toBe('not understood: say it again');
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
  it('stops and starts listening by word', () => {
    const at = ear();
    at.hear({ phrase: 'stop listening' });
    at.hear({ phrase: 'take away number seven seven' });
    expect([at.ran, at.heed()]).toEqual([[], 'start']);
    at.hear({ phrase: 'start listening' });
    at.hear({ phrase: 'take away number seven seven' });
    expect(at.ran).toEqual(['off']);
  });
});

describe('judging and cutting', () => {
  const as = (text: string, fit = -40) => ({
    words: text.split(' ').map((word) => ({ word, fit, frames: 20 })),
  });
  it('takes only what every decoder heard alike, and well enough', () => {
    expect(judged([as('into tray three three'), as('into tray three three')])).toEqual({
      phrase: 'into tray three three',
    });
    expect(judged([as('into tray three three'), as('into tray two')])).toEqual({ unsure: 'into tray three three' });
    expect(judged([as('into tray three three'), { words: [] }])).toEqual({ unsure: 'into tray three three' });
    expect(judged([as('into tray three three', -300), as('into tray three three')])).toEqual({
      unsure: 'into tray three three',
    });
    expect(judged([{ words: [] }, { words: [] }])).toBe('nothing');
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
