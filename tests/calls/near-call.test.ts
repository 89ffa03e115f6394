// A line that begins no call names the call that is near.
import { expect, it } from 'vitest';
import { readLine } from '../../src/calls/line-reader.ts';
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
