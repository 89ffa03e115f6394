// How the words hold by ear: synthetic voices through the real recogniser, clean and over workshop noise, a fixed sample
// from a fixed seed on all cores. Right is right at the first saying; asking again counts as not right, not as wrong; wrong is
// what would have been written. One voice is held out: nothing was tuned on it. Synthetic voices are not people.
import { cpus } from 'node:os';
import type { Desk } from '../../src/calls/desk.ts';
import { grammarOf } from '../../src/voice/grammar.ts';
import { heardIn } from '../../src/voice/hearings.ts';
import type { Heard } from '../../src/voice/judge.ts';
import { createCutter } from '../../src/voice/utterances.ts';
import { plansAtHand, playLines, scriptLines, upTo } from '../jobs/lines.ts';
import { missing, noises, over, pcmOf, rate, spoken, type Voice, voices } from '../voice/speech.ts';
import { speakJob } from '../voice/spoken-job.ts';
import type { Figure } from './figure.ts';

/** Every number to ten among them, in many sorts of call. Every voice says half of them. */
export const phrases = [
  'take away number one after zero',
  'take away number seven after six',
  'take away number six after five',
  'take away next one',
  'next tray is now three after two',
  'work on the coolant pump from here',
  'change socket size to ten after nine',
  'bring back number three after two',
  'bring back number eight after seven',
  'pull up number four after three',
  'pull up number nine after eight',
  'pull up next one',
  'this pass is now complete',
  'part gasket comes away now',
  'part pump comes away now',
  'in tray two after one i count eleven after ten',
  'joined the front breather together again',
  'put the cam clamp in place now',
  'tension good by pointer',
  'only slackened number five after four',
  'straight to the end number two after one',
  'on for now number ten after nine',
  'change socket size to thirteen after twelve',
  'something wrong at hole seven after six thread stripped in the head',
] as const;
const nicely = 10;
const seed = 20_261_126;

export function benchDesk(): Desk {
  const line = 'finding at cam cover 7 thread stripped in the head';
  const { ledger, now, places } = playLines(upTo(scriptLines('reference-planned.calls'), line));
  return { ledger, facing: places.at(-1)?.facing as Desk['facing'], now, plans: plansAtHand };
}

type Said = { voice: Voice; noise: string; text: string; pcm: Buffer };
function sayings(): Said[] {
  const said: Said[] = [];
  for (const [v, voice] of voices.entries()) {
    for (const text of phrases.filter((_, i) => (i + v) % 2 === 0)) {
      const speech = spoken(voice, text);
      const add = (noise: 'clean' | keyof typeof noises, decibels: number) =>
        said.push({
          voice,
          noise: noise === 'clean' ? noise : `${noise} ${decibels} dB`,
          text,
          pcm: over(speech, noise, decibels, seed + said.length),
        });
      add('clean', 0);
      for (const decibels of [20, 10, 5])
        for (const noise of Object.keys(noises) as (keyof typeof noises)[]) add(noise, decibels);
    }
  }
  return said;
}
/** In as many shares as there are cores; in each one decoder after the other. */
async function heardAcross(pcm: readonly Buffer[]): Promise<Heard[]> {
  const grammar = grammarOf(benchDesk());
  const shares = Math.min(cpus().length, Math.max(1, pcm.length));
  const heard: Heard[] = [];
  await Promise.all(
    Array.from({ length: shares }, async (_, k) => {
      const mine = pcm.flatMap((_one, i) => (i % shares === k ? [i] : []));
      const what = await heardIn(
        mine.map((i) => pcm[i] as Buffer),
        grammar,
        { nice: nicely, oneAfterTheOther: true },
      );
      mine.forEach((i, at) => {
        heard[i] = what[at] as Heard;
      });
    }),
  );
  return heard;
}

const share = (name: string, of: string, count: number, rounds: number, goal?: string): Figure => ({
  name,
  of,
  unit: 'share',
  value: count,
  baseline: rounds,
  ratio: count / Math.max(1, rounds),
  rounds,
  ...(goal && { goal }),
});

export async function voiceHeard(): Promise<Figure[]> {
  const lacking = missing();
  if (lacking.length > 0) {
    process.stdout.write(`voice: skipped, ${lacking.join(', ')} not on this machine; .ci/run installs them\n`);
    return [];
  }
  const said = sayings();
  const heard = await heardAcross(said.map(({ pcm }) => pcm));
  const figures: Figure[] = [];
  const tell = (name: string, chosen: (one: Said) => boolean, rightGoal?: string, wrongGoal?: string) => {
    const rows = said.flatMap((one, i) => (chosen(one) ? [{ one, what: heard[i] as Heard }] : []));
    const taken = rows.flatMap(({ one, what }) => (what !== 'nothing' && 'phrase' in what ? [{ one, what }] : []));
    const right = taken.filter(({ one, what }) => what.phrase === one.text).length;
    const again = rows.length - taken.length;
    figures.push(share(name, 'right at first saying / said', right, rows.length, rightGoal));
    figures.push(share(name, 'asked again or unheard / said', again, rows.length));
    figures.push(share(name, 'wrong and written / said', taken.length - right, rows.length, wrongGoal));
  };
  const tuned = (one: Said) => !one.voice.heldOut;
  const loud = (one: Said, level: string) => one.noise.endsWith(level);
  tell('20 dB', (one) => tuned(one) && loud(one, ' 20 dB'), '0.95', '0.01');
  tell('10 dB', (one) => tuned(one) && loud(one, ' 10 dB'), '0.90', '0.02');
  for (const noise of new Set(said.map((one) => one.noise))) tell(noise, (one) => tuned(one) && one.noise === noise);
  for (const voice of voices.filter((one) => !one.heldOut)) tell(voice.name, (one) => one.voice === voice);
  for (const voice of voices.filter((one) => one.heldOut))
    for (const level of ['clean', ' 20 dB', ' 10 dB', ' 5 dB'])
      tell(`${voice.name}, held out, ${level.trim()}`, (one) => one.voice === voice && loud(one, level));
  said.forEach(({ voice, noise, text }, i) => {
    const what = heard[i];
    if (what === undefined || what === 'nothing' || !('phrase' in what) || what.phrase === text) return;
    process.stderr.write(`wrong: ${voice.name}, ${noise}: ${text} -> ${what.phrase}\n`);
  });
  return [...figures, ...(await noiseAlone())];
}

/** A minute of each noise, cut as the microphone's sound is: nothing of it may be a call. */
export async function noiseAlone(): Promise<Figure[]> {
  if (missing().length > 0) return voiceHeard();
  const figures: Figure[] = [];
  for (const [name, make] of Object.entries(noises)) {
    const level = name === 'ratchet' ? 0.4 : 0.15;
    const cut = createCutter().push(pcmOf(make(rate * 60, 77).map((x) => x * level)));
    // Whole stretches too, as if the cutter had let everything through.
    const whole = Array.from({ length: 15 }, (_, i) => pcmOf(make(rate * 4, 100 + i).map((x) => x * level)));
    const heard = await heardAcross([...cut, ...whole]);
    const written = heard.filter((what) => what !== 'nothing' && 'phrase' in what).length;
    const asked = heard.filter((what) => what !== 'nothing' && 'unsure' in what).length;
    figures.push(share(`a minute of ${name} alone, twice`, 'calls written / stretches', written, heard.length, '0'));
    figures.push(share(`a minute of ${name} alone, twice`, 'asked again / stretches', asked, heard.length));
  }
  return figures;
}

/** The reference job by one voice over a compressor at 20 dB, phrase by phrase as it goes: it takes long. */
export async function jobSpoken(): Promise<Figure[]> {
  if (missing().length > 0) return voiceHeard();
  const voice = voices.find(({ name }) => name === 'flite rms') as Voice;
  const job = await speakJob(voice, 'compressor', 20, 'heard', (text) => void process.stderr.write(`${text}\n`));
  for (const phrase of job.givenUp) process.stderr.write(`given up and typed: ${phrase}\n`);
  for (const wrong of job.wrong) process.stderr.write(`taken for something else: ${wrong}\n`);
  for (const line of job.refused) process.stderr.write(`refused: ${line}\n`);
  return [
    share('reference job spoken', 'said twice or more / phrases', job.again, job.said),
    share('reference job spoken', 'taken for something else / phrases', job.wrong.length, job.said),
    share('reference job spoken', 'given up and typed / phrases', job.givenUp.length, job.said),
    share('reference job spoken', 'lines typed: names and free words / 1', job.typed.length, 1),
    share('reference job spoken', 'stands as by call lines / 1', Number(job.asByLines), 1, '1'),
  ];
}
