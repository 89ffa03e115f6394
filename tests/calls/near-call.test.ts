// A line that begins no call names the call that is near.
import { expect, it } from 'vitest';
import { readLine } from '../../src/calls/line-reader.ts';
import { meantBy } from '../../src/calls/row.ts';
import { demoDesk } from '../screen/scene.ts';

const why = (line: string): string => {
  const read = readLine(demoDesk(), line);
  return 'why' in read ? read.why : '';
};

it('names the call whose words stand at the end, else a note of what no call says', () => {
  expect(why('engine lifted a little')).toBe('"engine" begins no call; as a note: "note engine lifted a little"');
  expect(why('cam sensor plug parted')).toBe('"cam" begins no call, perhaps "parted cam sensor plug"');
  expect(why('rear breather joined again')).toBe('"rear" begins no call, perhaps "joined again rear breather"');
  expect(why('tihgt 1 and 2')).toBe('"tihgt" begins no call, perhaps "tight"');
  expect(why('brake')).toBe('"brake" begins no call, perhaps "brake pedal firm"');
  expect(why('sideways 2')).toBe('"sideways" begins no call');
});

it.each(['part off', 'part back', 'service done', 'service dropped'])(
  'takes "%s" alone for no name of anything',
  (line) => {
    expect(why(line)).toMatch(/missing|is none/);
  },
);
it('[X4] takes a whole date as a day there is, and no other, and a distance as a figure', () => {
  const on = (words: string): unknown => {
    const read = readLine(demoDesk(), `due coolant ${words}`);
    if ('why' in read) return read.why;
    const meant = meantBy(read.row, demoDesk(), read.args);
    return 'no' in meant ? meant.no.because : read.args.on;
  };
  expect(on('on 2031-02-01')).toBe('2031-02-01');
  expect(on('on 1.2.2031 at 90000')).toBe('2031-02-01');
  expect(on('on 14.3.')).toBe('14.3.');
  expect(on('on 2030-02-31')).toBe('there is no 2030-02-31');
  expect(on('on 31.02.2030')).toBe('there is no 2030-02-31');
  expect(on('on 1/2/2031')).toBe('"1/2/2031" may be two days: year first, as 2031-02-01');
  expect(on('at soon')).toBe('"soon" is no distance');
});
