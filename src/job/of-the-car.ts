// Which connections belong to the whole car and to no area of it, as the battery's earth does: they come off first and go
// on last. One that was only named as it was parted belongs somewhere; nobody said where.
import type { ConnectionState } from './states.ts';

/** As it was declared, else by its name. Common practice, no source. */
export const isOfTheCar = ({ connection, declared }: ConnectionState): boolean =>
  declared === undefined ? /\b(battery|earth|ground)\b/i.test(connection) : declared.area === undefined;
