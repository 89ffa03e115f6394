// How much memory the bench keeps. A long job is read in a moment and kept open for days: the room its reading needs is not
// to stay taken. A command that answers and ends may take what it likes.
import { getHeapSpaceStatistics, setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

/** Bytes, both halves of it: left alone, what is new takes as much as a long job. */
const roomForNew = 16e6;
/** The longest job is read by then. */
const untilReadMs = 3000;
const lookAgainMs = 250;

/** What reading a long job left behind, a tenth of what is held then. Node has no call for it but this. */
function clearWhatReadingLeft(): void {
  setFlagsFromString('--expose-gc');
  const clear: unknown = runInNewContext('gc');
  if (typeof clear === 'function') clear();
}

/** How far the room for what is new may grow at once. */
const grow = (factor: number) => setFlagsFromString(`--semi-space-growth-factor=${factor}`);

let untilRead: NodeJS.Timeout | undefined;
let growing: NodeJS.Timeout | undefined;

/**
 * To be called before a job is read. What is new keeps the room it has until then, and has more as it asks for it after, up
 * to a bound: held small for ever it would be cleared several times a key.
 */
export function keepHeapSmall(): void {
  clearTimeout(untilRead);
  clearInterval(growing);
  setFlagsFromString('--heap-growing-percent=20');
  grow(1);
  untilRead = setTimeout(() => {
    clearWhatReadingLeft();
    growing = setInterval(() => {
      const young = getHeapSpaceStatistics().find((space) => space.space_name === 'new_space');
      const isEnough = (young?.space_size ?? roomForNew) >= roomForNew;
      grow(isEnough ? 1 : 2);
      if (isEnough) clearInterval(growing);
    }, lookAgainMs).unref();
  }, untilReadMs).unref();
}
