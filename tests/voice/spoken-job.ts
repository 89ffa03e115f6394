// The reference job called by synthesized speech through the real recogniser into a real job file.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Line, readLine as readJobLine } from '../../src/job/line.ts';
import { createEar } from '../../src/session/hearing.ts';
import { type Answer, createSession, type Session } from '../../src/session/session.ts';
import { createJob, openJob } from '../../src/store/open-job.ts';
import { grammarOf } from '../../src/voice/grammar.ts';
import { judged } from '../../src/voice/judge.ts';
import { decodeAll, decoders } from '../../src/voice/pocketsphinx.ts';
import { plansAtHand, playLines, scriptLines } from '../jobs/lines.ts';
import { saidAs } from './said-as.ts';
import { type noises, over, spoken, type Voice } from './speech.ts';

export type SpokenJob = {
  /** Phrases said, those said a second time or more, those given up and typed, those written wrongly. */
  said: number;
  again: number;
  givenUp: string[];
  wrong: string[];
  /** Lines that no saying has: new names and free words. */
  typed: string[];
  refused: string[];
  asByLines: boolean;
  released: boolean;
};
const mostTries = 4;
/** What the desk fills by itself need not be said; whether it came to the same is seen in the end. */
function shorter(line: string): string[] {
  if (line.startsWith('box ')) return [line.replace(/ for .*$/, '')];
  return line.startsWith('mark on ') ? ['mark on'] : [line];
}

export async function speakJob(
  voice: Voice,
  noise: 'clean' | keyof typeof noises,
  decibels: number,
  hear: 'heard' | 'as said',
  tell: (text: string) => void = () => {},
): Promise<SpokenJob> {
  const script = scriptLines('reference-planned.calls');
  const folder = mkdtempSync(join(tmpdir(), 'countback-spoken-job-'));
  const path = join(folder, 'spoken.job');
  let now = { atMs: Date.UTC(2026, 0, 5, 8), zoneMin: 0, awakeMs: 0 };
  const found: SpokenJob = {
    said: 0,
    again: 0,
    givenUp: [],
    wrong: [],
    typed: [],
    refused: [],
    asByLines: false,
    released: false,
  };
  let seed = 0;
  try {
    await createJob(path, 'spoken');
    const opened = async (): Promise<Session> =>
      createSession({
        job: await openJob<Line>({ path, readLine: readJobLine }),
        clock: () => now,
        plans: plansAtHand,
      });
    let session = await opened();
    const ear = createEar({
      desk: () => session.desk(),
      run: (row, args) => session.run(row, args, 'voice'),
    });
    async function say(phrase: string): Promise<Answer | undefined> {
      for (let tried = 0; tried < mostTries; tried++) {
        found.said += tried === 0 ? 1 : 0;
        found.again += tried === 1 ? 1 : 0;
        const grammar = grammarOf(session.desk(), ear.heed());
        let what: ReturnType<typeof judged> = { phrase };
        if (hear === 'heard') {
          const pcm = over(spoken(voice, phrase), noise, decibels, seed++);
          const all = await Promise.all(decoders.map((decoder) => decodeAll([pcm], grammar, decoder, 15)));
          what = judged(all.flatMap(([one]) => one ?? []));
        }
        if (what === 'nothing' || 'unsure' in what) continue;
        // It would have been written: it is counted, and said anew as if it had been struck.
        if (what.phrase !== phrase) {
          found.wrong.push(`${phrase} -> ${what.phrase}`);
          continue;
        }
        const { answer } = ear.hear(what);
        return ear.heed() === 'second word' ? say('really do it') : answer;
      }
      found.givenUp.push(phrase);
      const { answer } = ear.hear({ phrase });
      return ear.heed() === 'second word' ? ear.hear({ phrase: 'really do it' }).answer : answer;
    }
    for (const line of script) {
      if (!line.call) {
        now = {
          ...now,
          atMs: now.atMs + line.minutes * 60_000,
          awakeMs: line.closed ? 0 : now.awakeMs + line.minutes * 60_000,
        };
        if (line.closed) {
          await session.close();
          session = await opened();
        }
        continue;
      }
      now = { ...now, atMs: now.atMs + 30_000, awakeMs: now.awakeMs + 30_000 };
      const phrases = shorter(line.text).flatMap((text) => saidAs(session.desk(), text) ?? []);
      if (phrases.length === 0) {
        found.typed.push(line.text);
        const answer = session.runLine(line.text);
        if (answer.kind === 'refused') found.refused.push(`${line.text}: ${answer.text}`);
        continue;
      }
      for (const phrase of phrases) {
        const answer = await say(phrase);
        if (answer?.kind === 'refused') found.refused.push(`${phrase}: ${answer.text}`);
      }
      tell(`${line.at} ${line.text}: said ${found.said}, again ${found.again}, wrong ${found.wrong.length}`);
    }
    await session.settled();
    await session.close();
    const back = await openJob<Line>({ path, readLine: readJobLine, look: true });
    const written = back.lines().flatMap(({ entries }) => entries);
    await back.close();
    const byLines = playLines(script).ledger;
    const theirs = byLines.lines.all.slice(0, byLines.lines.length).flatMap(({ entries }) => entries);
    found.asByLines = JSON.stringify(written) === JSON.stringify(theirs);
    found.released = written.some(({ kind }) => kind === 'released');
    return found;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
