// One row of the table of faults: what was done to the program, how often, and how often it held. What did not hold is
// kept with where it was, so that it can be done again.

export type Row = {
  what: string;
  tried: number;
  held: number;
  /** The first few that did not hold. */
  broken: string[];
  /** Why it was not tried on this machine. */
  skipped?: string;
  remark?: string;
};

/** How much is tried; the short form is a part of `npm test`. */
export type Size = { long: boolean; seed: number; minutes: number; kills: number; races: number };

export const short: Size = { long: false, seed: 1, minutes: 0, kills: 2, races: 2 };
export const long: Size = { long: true, seed: 1, minutes: 10, kills: 300, races: 200 };

const mostTold = 5;

export type Trials = Row & {
  /** Tries one thing: it holds when `what` ends without throwing. */
  one(where: string, what: () => unknown): Promise<void>;
};

export function trialsOf(what: string): Trials {
  const trials: Trials = {
    what,
    tried: 0,
    held: 0,
    broken: [],
    async one(where, tried) {
      trials.tried++;
      try {
        await tried();
        trials.held++;
      } catch (thrown) {
        const why = thrown instanceof Error ? thrown.message : String(thrown);
        if (trials.broken.length < mostTold) trials.broken.push(`${where}: ${why.slice(0, 600)}`);
      }
    },
  };
  return trials;
}

export const skippedRow = (what: string, skipped: string): Row => ({ what, tried: 0, held: 0, broken: [], skipped });

export const holds = (row: Row): boolean => row.held === row.tried && (row.tried > 0 || row.skipped !== undefined);

/** As it stands in DEVELOPERS.md. */
export function tableText(rows: readonly Row[]): string {
  const cells = rows.map(({ what, tried, held, skipped, remark }) => [
    remark ? `${what} (${remark})` : what,
    skipped ? `not tried: ${skipped}` : tried.toLocaleString('en'),
    skipped ? '' : held.toLocaleString('en'),
  ]);
  return [['what', 'tried', 'held'], ['---', '---', '---'], ...cells].map((row) => `| ${row.join(' | ')} |`).join('\n');
}

export const brokenText = (rows: readonly Row[]): string =>
  rows.flatMap(({ what, broken }) => broken.map((each) => `${what}\n  ${each}\n`)).join('');
