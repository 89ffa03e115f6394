// The reference job called by synthesized speech through the real recogniser into a real job file.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Desk } from '../../src/calls/desk.ts';
import { readSaid } from '../../src/calls/read-said.ts';
import { type Line, readLine as readJobLine } from '../../src/job/line.ts';
import { createEar } from '../../src/session/hearing.ts';
import { createSession } from '../../src/session/session.ts';
import type { Answer, Session } from '../../src/session/session-shape.ts';
import { createJob, openJob } from '../../src/store/open-job.ts';
import { grammarOf } from '../../src/voice/grammar.ts';
import { heardIn } from '../../src/voice/hearings.ts';
import type { Heard } from '../../src/voice/judge.ts';
import { linesOf, plansAtHand, playLines, scriptLines } from '../jobs/lines.ts';
import { saidAs } from './said-as.ts';
import { type noises, over, spoken, type Voice } from './speech.ts';

export type SpokenJob = {
  /**
   * Phrases said, those said a second time or more, those given up and typed, those taken for another: that one was struck
   * by voice where it wrote something, and the right one said anew.
   */
  said: number;
  again: number;
  givenUp: string[];
  wrong: string[];
  /** Lines that no saying has: new names and free words. */
  typed: string[];
  refused: string[];
  /** The same entries as by call lines, when what was struck is left out. */
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
  hear: 'heard' | 'as said' | 'sometimes another',
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
    async function heardOf(phrase: string): Promise<Heard> {
      if (hear === 'as said') return { phrase };
      if (hear === 'sometimes another') return { phrase: another(session.desk(), phrase, seed++) };
      const pcm = over(spoken(voice, phrase), noise, decibels, seed++);
      const [what] = await heardIn([pcm], grammarOf(session.desk(), ear.heed()), { nice: 10 });
      return what ?? 'nothing';
    }
    /** Whoever hears another call back strikes it, and takes again the tray that it had put in use. */
    async function takenBack(before: Desk, phrase: string, what: string): Promise<void> {
      found.wrong.push(`${phrase} -> ${what}`);
      ear.hear({ phrase: what });
      if (ear.heed() === 'second word') return void (await said('leave it be'));
      if (session.desk().ledger.lines.length > before.ledger.lines.length) await said('strike that call');
      const { tray } = before.facing;
      if (tray !== undefined && session.desk().facing.tray !== tray)
        for (const right of saidAs(session.desk(), `tray ${tray}`) ?? []) await said(right);
    }
    const said = async (phrase: string): Promise<void> => {
      while ((await say(phrase)) === 'another');
    };
    async function say(phrase: string): Promise<Answer | 'another' | undefined> {
      found.said++;
      for (let tried = 0; tried < mostTries; tried++) {
        found.again += tried === 1 ? 1 : 0;
        const before = session.desk();
        const what = await heardOf(phrase);
        if (what === 'nothing' || 'unsure' in what) continue;
        if (what.phrase !== phrase) {
          await takenBack(before, phrase, what.phrase);
          return 'another';
        }
        const { answer } = ear.hear(what);
        return ear.heed() === 'second word' ? say('really do it') : answer;
      }
      found.givenUp.push(phrase);
      const { answer } = ear.hear({ phrase });
      return ear.heed() === 'second word' ? ear.hear({ phrase: 'really do it' }).answer : answer;
    }
    /** From its beginning again when one of its phrases was taken for another: the area in use may have changed. */
    async function sayLine(text: string): Promise<boolean> {
      const phrases = shorter(text).flatMap((one) => saidAs(session.desk(), one) ?? []);
      for (const phrase of phrases) {
        const answer = await say(phrase);
        if (answer === 'another') return sayLine(text);
        if (answer?.kind === 'refused') found.refused.push(`${phrase}: ${answer.text}`);
      }
      return phrases.length > 0;
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
      if (!(await sayLine(line.text))) {
        found.typed.push(line.text);
        const answer = session.runLine(line.text);
        if (answer.kind === 'refused') found.refused.push(`${line.text}: ${answer.text}`);
      }
      tell(`${line.at} ${line.text}: said ${found.said}, again ${found.again}, wrong ${found.wrong.length}`);
    }
    await session.settled();
    await session.close();
    const back = await openJob<Line>({ path, readLine: readJobLine, look: true });
    const written = standingEntries(back.lines());
    await back.close();
    const byLines = playLines(script).ledger;
    found.asByLines = written === standingEntries(linesOf(byLines));
    found.released = written.includes('"kind":"released"');
    return found;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Entries that were not struck, with the names that are made of line numbers counted anew. */
function standingEntries(lines: readonly Line[]): string {
  const entries = lines.flatMap((line) => line.entries);
  const struck = new Set(entries.flatMap((entry) => (entry.kind === 'calls-struck' ? entry.lines : [])));
  const left = lines
    .filter(({ n }) => !struck.has(n))
    .flatMap((line) => line.entries.filter(({ kind }) => kind !== 'calls-struck'));
  const names = new Map<string, string>();
  return JSON.stringify(left).replace(/"([a-z])\d+\.\d+"/g, (name, sort: string) => {
    if (!names.has(name)) names.set(name, `"${sort}${names.size}"`);
    return names.get(name) as string;
  });
}
/** What a poor recogniser might have heard instead, now and then: another number, another call. */
function another(desk: Desk, phrase: string, turn: number): string {
  if (turn % 7 !== 3) return phrase;
  const others = [
    'take away next one',
    'next tray is now five after four',
    'everything is masked over now',
    'car may leave by the owner',
  ];
  const other = others[turn % others.length] as string;
  return readSaid(desk, other) ? other : phrase;
}
