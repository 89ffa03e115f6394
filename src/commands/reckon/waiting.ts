// Topics about time and turns: how long a sealant takes in this air, a belt's teeth in degrees, when a service is next due,
// and how old a part is by its marking.
import { type Answer, figure, isRefused, refused } from '../../trade/answer.ts';
import {
  type Degrees,
  degreesOff,
  degreesPerTooth,
  type MarksMeet,
  turnsUntilMarksMeet,
} from '../../trade/belt-drive.ts';
import { readDate } from '../../trade/calendar.ts';
import { type Air, cureFactorIn, readAir, usualCureHours } from '../../trade/cure.ts';
import { madeFrom } from '../../trade/date-codes.ts';
import { type Distance, type Interval, intervalFor, intervalsHeld, nextDue } from '../../trade/intervals.ts';
import { readDistance } from '../../trade/units.ts';
import { standardAtmosphere } from '../../trade/vapour.ts';
import { allOf, decimals, numberIn, type Reckoned, type Topic } from './topic.ts';

const cure: Topic = {
  name: 'cure',
  usage: 'cure "10 C 40 %" [HOURS] [--label "23 C 50 %"]',
  help: 'how many times as long a moisture-curing sealant takes in this air, and how long that is for hours on the label',
  options: ['label'],
  reckon: ({ words: [said, hours = String(usualCureHours.value), ...more], options }) => {
    if (said === undefined || more.length > 0) return refused(`say ${cure.usage}`);
    const label = options.has('label') ? readAir(options.get('label') as string) : standardAtmosphere.value;
    const read = allOf<[Air, Air, number]>(readAir(said), label, numberIn(hours, 'count of hours'));
    if (isRefused(read)) return read;
    const [air, at, labelHours] = read;
    const found = cureFactorIn(
      {
        kind: 'moisture',
        labelCelsius: at.celsius,
        labelHumidityPct: at.humidityPct ?? standardAtmosphere.value.humidityPct,
        fullHours: labelHours,
      },
      air,
    );
    if (isRefused(found)) return found;
    return {
      lines: [
        found.because,
        `${figure(labelHours)} h on the label are ${decimals(labelHours * found.factor, 1)} h here`,
      ],
      data: { factor: found.factor, labelHours, hours: labelHours * found.factor, because: found.because },
    };
  },
};

const belt: Topic = {
  name: 'belt',
  usage: 'belt CRANK-TEETH BELT-TEETH [--off TEETH]',
  help: 'what a tooth is worth at crank and cam, and after how many turns the printed marks meet again',
  options: ['off'],
  reckon: ({ words: [crank, teeth, ...more], options }) => {
    if (more.length > 0) return refused(`say ${belt.usage}`);
    const read = allOf<[number, number]>(numberIn(crank, 'count of teeth'), numberIn(teeth, 'count of teeth'));
    if (isRefused(read)) return read;
    const off = options.has('off') ? numberIn(options.get('off'), 'count of teeth') : undefined;
    const wrong = typeof off === 'number' ? degreesOff(off, read[0]) : off;
    const found = allOf<[Degrees, MarksMeet]>(degreesPerTooth(read[0]), turnsUntilMarksMeet(...read));
    if (isRefused(found)) return found;
    if (isRefused(wrong)) return wrong;
    const [tooth, meet] = found;
    return {
      lines: [
        `one tooth: ${decimals(tooth.crankDegrees, 2)}° at the crank, ${decimals(tooth.camDegrees, 2)}° at the cam`,
        ...(wrong ? [wrong.text] : []),
        meet.text,
      ],
      data: { ...tooth, crankTurns: meet.crankTurns, ...(wrong && { off: wrong }) },
    };
  },
};

const due: Topic = {
  name: 'due',
  usage: 'due DATE ["SERVICE"] [--at "118400 km"] [--months N] [--distance "60000 mi"]',
  help: 'when a service done then is next due, by date and distance, whichever first; a service by the interval of your own settings, else by the usual one, but a timing belt',
  options: ['at', 'months', 'distance'],
  asksSettings: true,
  reckon: ({ words: [date, service, ...more], options, today, intervals: own }) => {
    if (more.length > 0) return refused(`say ${due.usage}`);
    const said = intervalSaid(options);
    if (isRefused(said)) return said;
    const from = date === undefined || date === 'today' ? today : date;
    const begun = readDate(from);
    if (isRefused(begun)) return begun;
    const bare = said.months === undefined && said.distance === undefined;
    const found =
      bare && service !== undefined ? intervalFor(service, own) : { interval: said, source: 'as said', note: '' };
    if (isRefused(found)) return found;
    const at = options.has('at') ? readDistance(options.get('at') as string) : undefined;
    if (isRefused(at)) return at;
    const next = nextDue(from, at, found.interval);
    if (isRefused(next)) return next;
    const note = [found.source, found.note].filter(Boolean).join('; ');
    return {
      lines: [`${service ?? 'next'} due ${next.text} (${note})`],
      data: { ...next, interval: found.interval, source: found.source },
    };
  },
};
function intervalSaid(options: ReadonlyMap<string, string>): Answer<Interval> {
  const months = options.has('months') ? numberIn(options.get('months'), 'count of months') : undefined;
  const distance: Answer<Distance> | undefined = options.has('distance')
    ? readDistance(options.get('distance') as string)
    : undefined;
  if (isRefused(months)) return months;
  if (isRefused(distance)) return distance;
  return { ...(months !== undefined && { months }), ...(distance && { distance }) };
}

const intervals: Topic = {
  name: 'intervals',
  usage: 'intervals',
  help: 'the usual intervals, which rows of your own in the settings replace; for a timing belt there is none',
  options: [],
  asksSettings: true,
  reckon: ({ words, intervals: own }) => {
    if (words.length > 0) return refused(`say ${intervals.usage}`);
    const rows = intervalsHeld(own);
    const lines = rows.map(({ service, months, distance, source, note }) => {
      const parts = [months && `${months} months`, distance && `${distance.distance} ${distance.unit}`];
      return `${service}: ${parts.filter(Boolean).join(' or ')} (${[source, note].filter(Boolean).join('; ')})`;
    });
    return { lines, data: { intervals: rows } };
  },
};

const made: Topic = {
  name: 'made',
  usage: 'made MARKING',
  help: 'when a part was made by a date or code as typed, read in every way it can be meant: the earliest it can have been fitted',
  options: [],
  reckon: ({ words, today }): Answer<Reckoned> => {
    if (words.length === 0) return refused(`say ${made.usage}`);
    const found = madeFrom(words.join(' '), today);
    if (isRefused(found)) return found;
    return {
      lines: [
        `made between ${found.earliest} and ${found.latest}: fitted no earlier than ${found.earliest}`,
        ...found.readings.map(({ as, from, to }) => `  as ${as}: ${from === to ? from : `${from} to ${to}`}`),
      ],
      data: { ...found },
    };
  },
};

export const waitingTopics: readonly Topic[] = [cure, belt, due, intervals, made];
