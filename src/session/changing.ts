// Changes one setting of the workshop: the next of two, or what is typed for it. It stands there as it is now, and what is
// typed goes in its place.
import type { Settable } from '../calls/row.ts';
import { nameSchema } from '../job/subjects.ts';
import { distanceUnits, temperatureUnits, torqueUnits } from '../trade/units-shown.ts';
import type { Asking } from '../view/view.ts';
import { plainAsking } from './asking.ts';
import type { Habits } from './habits.ts';
import type { Answered } from './questions.ts';

const nextOf = <T>(all: readonly T[], now: T): T => all[(all.indexOf(now) + 1) % all.length] as T;

const longestName = 60;
const mostTrays = 40;
/** Numbers and ranges with blanks between them: several trays, where words would be one name. */
const apartByBlanks = /^\d{1,3}(\s*-\s*\d{1,3})?(\s+\d{1,3}(\s*-\s*\d{1,3})?)*$/;
/** "1, 2, left" or "1-6": a range of numbers can be typed on a keypad. */
export function readTrays(text: string): string[] | { why: string } {
  const named = text
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '')
    .flatMap((name) => (apartByBlanks.test(name) ? name.replace(/\s*-\s*/g, '-').split(/\s+/) : [name]));
  const trays = named.flatMap((name) => {
    const range = /^(\d{1,3})\s*-\s*(\d{1,3})$/.exec(name);
    if (!range) return [name];
    const [from, to] = [Number(range[1]), Number(range[2])];
    return Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => String(from + i));
  });
  if (trays.length === 0) return { why: 'name one tray at least: 1, 2, left, or 1-6' };
  if (trays.length > mostTrays) return { why: `${mostTrays} trays at most` };
  const half = trays.find((tray) => /^\d+\s*-$|^-\s*\d+$/.test(tray));
  if (half !== undefined) return { why: `"${half}" is half of a range: 1-6` };
  const twice = trays.find((tray, i) => trays.indexOf(tray) < i);
  if (twice !== undefined) return { why: `"${twice}" is there twice` };
  const wrong = trays.find((tray) => !nameSchema.safeParse(tray).success);
  return wrong === undefined ? trays : { why: `"${wrong}": a name has 1 to 60 characters, no "/" and no ":"` };
}

export function changeSetting(
  what: Settable,
  { name, trays, units, colours }: Habits,
  { keep, ask }: { keep(changed: Partial<Habits>): void; ask(asking: Asking, answered: Answered): void },
): void {
  switch (what) {
    case 'colours':
      return keep({ colours: !colours });
    case 'distance':
      return keep({ units: { ...units, distance: nextOf(distanceUnits, units.distance) } });
    case 'temperature':
      return keep({ units: { ...units, temperature: nextOf(temperatureUnits, units.temperature) } });
    case 'torque':
      return keep({ units: { ...units, torque: nextOf(torqueUnits, units.torque) } });
    case 'name':
      return ask(
        {
          ...plainAsking('your name; empty: none is offered', 'name'),
          typed: name ?? '',
          ...(name && { standing: true }),
        },
        (text) => {
          const typed = text.trim();
          if ([...typed].length > longestName) return { why: `${longestName} characters at most` };
          keep({ name: typed === '' ? undefined : typed });
          return undefined;
        },
      );
    case 'trays':
      return ask(
        { ...plainAsking('trays on the bench: 1, 2, left, or 1-6', 'trays'), typed: trays.join(', '), standing: true },
        (text) => {
          const read = readTrays(text);
          if ('why' in read) return read;
          keep({ trays: read });
          return undefined;
        },
      );
  }
}
