// A spec in words, as it is typed and said back.
import { describe, expect, it } from 'vitest';
import { tokens } from '../../src/calls/form.ts';
import { readSpec, specWords } from '../../src/calls/spec-words.ts';
import { coatings, specSchema } from '../../src/job/spec.ts';

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

  it('takes no word for a coating that could not be said back', () => {
    for (const coating of ['', 'Zinc', 'two words', 'a;b', '"', '\u001b[31m']) {
      expect(specSchema.safeParse({ coating }).success, coating).toBe(false);
    }
    expect(read('bolt coated').used).toBe(1);
    expect(read('bolt coated "two words"').used).toBe(1);
  });
});
