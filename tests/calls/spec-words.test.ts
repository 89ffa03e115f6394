// A spec in words, as it is typed and said back.
import { describe, expect, it } from 'vitest';
import { tokens } from '../../src/calls/form.ts';
import { readLine } from '../../src/calls/line-reader.ts';
import { readSpec, specWords } from '../../src/calls/spec-words.ts';
import { coatings, makes, specSchema } from '../../src/job/spec.ts';
import { demoDesk } from '../screen/scene.ts';

const read = (text: string) => readSpec(tokens(text));

describe('a spec in words', () => {
  it('reads its coating, the usual ones by a word of their own, and says each as it is read', () => {
    for (const coating of [...coatings, 'bronze', 'zinc-nickel']) {
      const spec = { kind: 'bolt', head: 'hex 10', thread: 'M6', lengthMm: 25, class: '8.8', coating } as const;
      expect(read(specWords(spec))).toEqual({ spec, used: specWords(spec).split(' ').length });
    }
    expect(specWords({ kind: 'nut', coating: 'bronze' })).toBe('nut coated bronze');
    expect(read('bolt coated Zinc M6').spec).toEqual({ kind: 'bolt', coating: 'zinc', thread: 'M6' });
  });

  it('says the length behind an inch thread in millimetres, as it is read back', () => {
    const spec = { kind: 'bolt', head: 'hex 13', thread: '5/16-18', lengthMm: 25.4 } as const;
    expect(read('bolt hex 13 5/16-18x1').spec).toEqual(spec);
    expect(specWords(spec)).toBe('bolt hex 13 5/16-18 x25.4mm');
    expect(read(specWords(spec))).toEqual({ spec, used: 5 });
  });
  it('reads the class of a nut, which is one figure, and no other figure alone', () => {
    const spec = { kind: 'nut', head: 'hex 16', thread: 'M10', class: '10' } as const;
    expect(read('nut hex 16 M10 10')).toEqual({ spec, used: 5 });
    expect(read(specWords(spec)).spec).toEqual(spec);
    expect(read('nut hex 16 M10 7').used).toBe(4);
    expect(read('bolt hex 16 M10 10').used).toBe(4);
  });
  it('reads a head in inches, and says it as it is read', () => {
    for (const head of ['hex 1/2', 'hexkey 5/16', 'hex 1 1/4']) {
      const spec = { kind: 'bolt', head, thread: '5/16-18', lengthMm: 25 } as const;
      expect(read(specWords(spec))).toEqual({ spec, used: specWords(spec).split(' ').length });
    }
    for (const unit of ['', 'in', ' in', ' in.'])
      expect(read(`bolt hex 9/16${unit} 8.8`).spec).toEqual({ kind: 'bolt', head: 'hex 9/16', class: '8.8' });
    expect(read('hex 13 5/16-18').spec).toEqual({ head: 'hex 13', thread: '5/16-18' });
    // The size before its shape, as it is said.
    const inch = { kind: 'bolt', head: 'hex 7/16', thread: '1/4-20', lengthMm: 25 };
    expect(read('bolt 7/16 hex 1/4-20 x25mm')).toEqual({ spec: inch, used: 5 });
    expect(read('10 hex M6').spec).toEqual({ head: 'hex 10', thread: 'M6' });
  });
  it.each([
    ['bolt hex 1/0', '"1/0" after "hex" is no size of a head, as in hex 13 or hex 1/2'],
    ['bolt 13 M8x30', '"13" is a head with its shape, as hex 13, or a length as x13'],
    ['bolt hec 13', '"hec" is no word of a fastener, perhaps "hex"'],
    ['bolt hex 10 M6x25x', '"M6x25x" is no designation: write M8x1.25x30'],
  ])('says of "%s" which word is none, and what it would be', (line, why) => {
    for (const said of [line, `use ${line}`, `off 1 as ${line}`])
      expect(readLine(demoDesk(), said)).toMatchObject({ why: expect.stringContaining(why) });
  });

  it('[L6] takes the words the trade has in front of a kind, and says how one is made as it is read', () => {
    for (const made of makes) {
      const spec = { kind: 'bolt', head: 'hex 13', thread: 'M10x1', coating: made } as const;
      expect(read(`${made} bolt hex 13 M10x1`)).toEqual({ spec, used: 5 });
      expect(read(specWords(spec))).toEqual({ spec, used: 5 });
    }
    expect(read('banjo bolt M10x1 zinc').spec).toEqual({ kind: 'bolt', thread: 'M10x1', coating: 'banjo' });
    expect(read('shoulder bolt hex 10').spec).toEqual({ kind: 'bolt', head: 'hex 10', shouldered: true });
    expect(read('flange nut M8').spec).toEqual({ kind: 'nut', thread: 'M8', coating: 'flanged' });
    expect(read('stud bolt M8x30').spec).toEqual({ kind: 'stud', thread: 'M8', lengthMm: 30 });
    expect(read('drain plug hex 17')).toEqual({ spec: { kind: 'plug', head: 'hex 17' }, used: 4 });
    expect(read('crush washer').spec).toEqual({ kind: 'washer', oneUse: true });
  });
  it('begins a line with them, and names no word that is none without the nearest way', () => {
    expect(readLine(demoDesk(), 'banjo bolt hex 13 M10x1')).toMatchObject({ row: { id: 'use' } });
    expect(readLine(demoDesk(), 'use wonky bolt hex 13')).toMatchObject({
      why: expect.stringContaining('"wonky" is no word of a fastener: say "bolt" without it'),
    });
  });

  it('takes no word for a coating that could not be said back', () => {
    for (const coating of ['', 'Zinc', 'two words', 'a;b', '"', '\u001b[31m']) {
      expect(specSchema.safeParse({ coating }).success, coating).toBe(false);
    }
    expect(read('bolt coated').used).toBe(1);
    expect(read('bolt coated "two words"').used).toBe(1);
  });
});
