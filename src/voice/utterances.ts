// Cuts a running sound into utterances by its loudness over the noise of the last seconds. It is generous: what is no
// speech is for the decoders to refuse. Pure: sound in, utterances out, no clock but the sound itself.

export const rate = 16_000;
const frame = rate / 50;
/** 20 ms each; loudness is that of the last eight, which a compressor's strokes do not shake. */
const spans = { start: 6, end: 30, before: 20, least: 15, most: 400, floor: 250, smooth: 8 };
/** Over the noise floor, in decibels. */
const louder = { start: 4, stay: 2.5 };

export type Cutter = {
  /** Takes 16-bit sound and gives the utterances that ended in it. */
  push(pcm: Buffer): Buffer[];
  /** Forgets what was begun: what the program itself said. */
  drop(): void;
};

export function createCutter(): Cutter {
  let rest: Buffer = Buffer.alloc(0);
  let recent: Buffer[] = [];
  let levels: number[] = [];
  let powers: number[] = [];
  let speech: Buffer[] | undefined;
  let loud = 0;
  let quiet = 0;

  /** The level that a quarter of the last seconds lay below. */
  const noiseLevel = (): number => [...levels].sort((a, b) => a - b)[Math.floor(levels.length / 4)] ?? -90;

  function take(one: Buffer): Buffer | undefined {
    powers = [...powers.slice(1 - spans.smooth), powerOf(one)];
    const level = 10 * Math.log10(powers.reduce((sum, power) => sum + power, 0) / powers.length);
    const over = level - noiseLevel();
    levels = [...levels.slice(-spans.floor), level];
    if (!speech) {
      recent = [...recent.slice(-spans.before - spans.start), one];
      loud = over > louder.start ? loud + 1 : Math.max(0, loud - 1);
      if (loud < spans.start) return undefined;
      speech = recent;
      recent = [];
      quiet = 0;
      return undefined;
    }
    speech.push(one);
    quiet = over > louder.stay ? 0 : quiet + 1;
    if (quiet < spans.end && speech.length < spans.most) return undefined;
    const ended = speech;
    speech = undefined;
    loud = 0;
    // The quiet that ended it begins the next.
    recent = ended.slice(-spans.before);
    return ended.length - quiet >= spans.least ? Buffer.concat(ended) : undefined;
  }

  return {
    push(pcm) {
      rest = Buffer.concat([rest, pcm]);
      const ended: Buffer[] = [];
      for (; rest.length >= frame * 2; rest = rest.subarray(frame * 2)) {
        const one = take(rest.subarray(0, frame * 2));
        if (one) ended.push(one);
      }
      return ended;
    },
    drop() {
      speech = undefined;
      recent = [];
      loud = 0;
    },
  };
}
function powerOf(pcm: Buffer): number {
  let sum = 1;
  for (let at = 0; at + 1 < pcm.length; at += 2) sum += pcm.readInt16LE(at) ** 2;
  return sum / (pcm.length / 2);
}
