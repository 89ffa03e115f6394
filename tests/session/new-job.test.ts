// What is typed for a new job, and the file and the first line that come of it.
import { describe, expect, it } from 'vitest';
import { newJobOf } from '../../src/session/new-job.ts';

const closed = (file: string) => ({ file, sheet: `countback sheet ${file}` });

describe('a new job', () => {
  it.each([
    ['blue van', 'blue van', 'job "blue van"'],
    [' blue van  registration  AB 12 ', 'blue van', 'job "blue van" registration "AB 12"'],
    ['blue van, Registration AB-12', 'blue van', 'job "blue van" registration "AB-12"'],
    // Without one behind it the word is part of the name.
    ['blue van registration', 'blue van registration', 'job "blue van registration"'],
    ['the "old" van', 'the "old" van', 'job "the old van"'],
  ])('%s', (typed, file, line) => {
    expect(newJobOf(typed, [])).toEqual({ file, line });
  });

  it('of a vehicle that comes again goes beside the jobs that are closed, under the same label', () => {
    // A file is called by what can be in its name.
    const shelf = [closed('blue-van'), closed('blue-van-2'), closed('red-van')];
    expect(newJobOf('Blue van registration AB 12', shelf)).toEqual({
      file: 'Blue van 3',
      line: 'job "Blue van" registration "AB 12"',
    });
  });

  it('is not made beside one of its name that is still open', () => {
    expect(newJobOf('blue van', [{ file: 'blue-van' }]).file).toBe('blue van');
  });
});
