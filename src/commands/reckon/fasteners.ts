// Topics about what a fastener is: its thread, its head, two threads side by side, what is odd about one among others.

import { tokens } from '../../calls/form.ts';
import { readSpec, specWords } from '../../calls/spec-words.ts';
import type { Spec } from '../../job/spec.ts';
import { type Answer, isRefused, refused } from '../../trade/answer.ts';
import { type FastenerDesignation, printFastener, readFastener } from '../../trade/designation.ts';
import { headCarries, headsForThread, readHead, threadsForHead } from '../../trade/heads.ts';
import { nearMiss } from '../../trade/near-miss.ts';
import { proofLoadNewtons } from '../../trade/preload.ts';
import { kilonewtons } from '../../trade/property-class.ts';
import { socketsThatNearlyFit } from '../../trade/sockets.ts';
import { suspicionsOf } from '../../trade/suspicion.ts';
import { compareDesignations } from '../../trade/thread-compared.ts';
import { minorDiameterMm, pitchDiameterMm, stressAreaMm2 } from '../../trade/threads.ts';
import { allOf, decimals, type Reckoned, type Topic } from './topic.ts';

const nothing = (usage: string) => refused(`say ${usage}`);

const thread: Topic = {
  name: 'thread',
  usage: 'thread M8x1.25x30 [CLASS]',
  help: 'pitch, diameters, stress area, proof load of a class, and the heads it is sold with',
  options: [],
  reckon: ({ words }) => {
    const read = words.length > 0 ? readFastener(words.join(' ')) : nothing(thread.usage);
    return isRefused(read) ? read : threadTold(read);
  },
};
function threadTold(read: FastenerDesignation): Answer<Reckoned> {
  const { thread: one, class: grade } = read;
  const proof = grade === undefined ? undefined : proofLoadNewtons(one, grade);
  if (isRefused(proof)) return proof;
  const heads = headsForThread(one.name);
  const sold = isRefused(heads) ? [] : heads;
  const area = Number(stressAreaMm2(one).toPrecision(3));
  return {
    lines: [
      `${printFastener(read)}: pitch ${decimals(one.pitchMm, 3)} mm, ${one.system} ${one.series}`,
      `pitch diameter ${decimals(pitchDiameterMm(one), 3)} mm, bore of the nut thread ${decimals(minorDiameterMm(one), 3)} mm, stress area ${area} mm²`,
      ...(proof === undefined ? [] : [`proof load of class ${grade}: ${kilonewtons(proof)}`]),
      ...(sold.length > 0 ? [`heads: ${sold.map(({ head, by }) => `${head} (${by})`).join(', ')}`] : []),
    ],
    data: {
      thread: one.name,
      system: one.system,
      pitchMm: one.pitchMm,
      pitchDiameterMm: pitchDiameterMm(one),
      minorDiameterMm: minorDiameterMm(one),
      stressAreaMm2: area,
      ...(read.lengthMm !== undefined && { lengthMm: read.lengthMm }),
      ...(grade !== undefined && { class: grade, proofLoadNewtons: proof }),
      heads: sold,
    },
  };
}

const head: Topic = {
  name: 'head',
  usage: 'head "hex 14" [THREAD]',
  help: 'the threads a head can carry in any standard known, sockets that nearly fit; with a thread, whether the two go together',
  options: [],
  reckon: ({ words }) => {
    const [written = '', ...more] = joinedHead(words);
    const read = words.length > 0 ? readHead(written) : nothing(head.usage);
    if (isRefused(read)) return read;
    const judged = more.length > 0 ? headCarries(written, more.join(' ')) : undefined;
    if (isRefused(judged)) return judged;
    const carries = threadsForHead(read);
    const near = read.shape === 'hex' && read.size !== undefined ? socketsThatNearlyFit(read.size) : [];
    return {
      lines: [
        carries.length > 0
          ? `${written}: ${carries.map(({ nominal, by }) => `${nominal} (${by})`).join(', ')}`
          : `${written}: no standard known says which thread`,
        ...near.map(
          ({ socket, looseByMm }) =>
            `a socket of ${socket} nearly fits: ${decimals(Math.abs(looseByMm), 2)} mm ${looseByMm > 0 ? 'loose' : 'tight'}`,
        ),
        ...(judged ? [judged.because || `${written} goes with ${more.join(' ')}`] : []),
      ],
      data: {
        head: written,
        carries,
        nearSockets: near,
        ...(judged && { verdict: judged.verdict, because: judged.because }),
      },
    };
  },
};
/** hex 14 M10 is one head and a thread, quoted or not. */
function joinedHead(words: readonly string[]): string[] {
  const [first = '', second, ...rest] = words;
  if (first.includes(' ') || second === undefined || !/^[tT]?\d/.test(second)) return [...words];
  return [`${first} ${second}`, ...rest];
}

const threads: Topic = {
  name: 'threads',
  usage: 'threads BOLT HOLE',
  help: 'two threads or designations side by side: what differs, and how far the one turns into the other',
  options: [],
  reckon: ({ words: [bolt, hole, ...more] }) => {
    if (bolt === undefined || hole === undefined || more.length > 0) return nothing(threads.usage);
    const read = allOf<[FastenerDesignation, FastenerDesignation]>(readFastener(bolt), readFastener(hole));
    if (isRefused(read)) return read;
    const compared = compareDesignations(bolt, hole);
    if (isRefused(compared)) return compared;
    const near = nearMiss(read[0].thread, read[1].thread);
    return {
      lines: compared.lines.length > 0 ? compared.lines : ['one and the same thread'],
      data: {
        differs: compared.thread,
        lengthMm: compared.lengthMm,
        class: compared.class,
        ...(near && {
          freeTurns: Number.isFinite(near.freeTurns) ? near.freeTurns : null,
          starts: near.starts,
          feel: near.feel,
        }),
      },
    };
  },
};

function specIn(written: string): Answer<Spec> {
  const words = tokens(written);
  const { spec, used } = readSpec(words);
  return used > 0 && used === words.length ? spec : refused(`"${written}" is no fastener, as "bolt hex 10 M6x25 8.8"`);
}
const odd: Topic = {
  name: 'odd',
  usage: 'odd "bolt hex 17 M10x1.25x50 8.8" "NEIGHBOUR"… [--plan "bolt hex 14 M10x1.25x60 10.9"]',
  help: 'what is odd about a fastener, by itself, beside its neighbours and beside the plan, gravest first',
  options: ['plan'],
  reckon: ({ words, options }) => {
    const [called, ...neighbours] = words.map(specIn);
    const planned = options.has('plan') ? specIn(options.get('plan') as string) : undefined;
    const wrong = [called, ...neighbours, planned].find(isRefused);
    if (called === undefined) return nothing(odd.usage);
    if (wrong) return wrong;
    const found = suspicionsOf(called as Spec, {
      neighbours: neighbours as Spec[],
      ...(planned !== undefined && { plan: planned as Spec }),
    });
    const tooFew = neighbours.length === 1 ? ['one neighbour tells nothing: name two or more'] : [];
    return {
      lines: [
        ...(found.length > 0 ? found.map(({ line }) => line) : [`nothing is odd about ${specWords(called as Spec)}`]),
        ...tooFew,
      ],
      data: { suspicions: found },
    };
  },
};

export const fastenerTopics: readonly Topic[] = [thread, head, threads, odd];
