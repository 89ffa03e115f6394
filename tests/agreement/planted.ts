// npm run model -- planted: whether the comparison can fail. Each row breaks one rule in a copy of the program's core;
// the copy must part from the second model within a few hundred jobs. A row whose text is gone is to be written anew.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** `shows` is what the second model must be the only one to list, or the program. */
type Planted = { rule: string; wrong: string; shows: string; in: string; text: string; instead: string };

const planted: readonly Planted[] = [
  {
    rule: 'L4',
    wrong: 'slack counts as closed',
    shows: 'hole-open',
    in: 'closed.ts',
    text: `if (o.level !== 'tight')`,
    instead: `if (o.level !== 'tight' && o.level !== 'slack')`,
  },
  {
    rule: 'S3',
    wrong: 'cure counts from the bead, not from the last hole snug',
    shows: 'bead-curing',
    in: 'beads.ts',
    text: 'earnedSince(ledger, togetherAt, now, rate)',
    instead: 'earnedSince(ledger, n, now, rate)',
  },
  {
    rule: 'T3',
    wrong: 'the old part needs no verdict',
    shows: 'part-not-judged',
    in: 'evolve/area-and-parts.ts',
    text: 'oldWaits: p.oldWaits || !p.judged',
    instead: 'oldWaits: p.oldWaits',
  },
  {
    rule: 'L7',
    wrong: 'a one-use fastener is spent only when it comes off, not when slackened',
    shows: 'hole-open',
    in: 'evolve/fastener.ts',
    text: 'return f.place === inHole(entry.hole) ? loosened(f) : misfit;',
    instead: 'return f.place === inHole(entry.hole) ? f : misfit;',
  },
  {
    rule: 'K1',
    wrong: 'a tray count outlives what moves out of the tray',
    shows: 'tray-uncounted',
    in: 'evolve/tray-and-box.ts',
    text: 'contents: t.contents.filter((one) => one !== id), movedAt: n }',
    instead: 'contents: t.contents.filter((one) => one !== id) }',
  },
  {
    rule: 'K2',
    wrong: 'what is thrown away straight from the parts box is not counted on the scrap pile',
    shows: 'scrap-differs',
    in: 'counts.ts',
    text: "?.sort === 'fastener' ? quantity : 0",
    instead: "?.sort === 'part' ? quantity : 0",
  },
  {
    rule: 'R6',
    wrong: 'a passed check outlives the opening of its drive',
    shows: 'rotation-needed',
    in: 'rotation.ts',
    text: 'last.passedAt > 0 && last.begunAt > opened',
    instead: 'last.passedAt > 0',
  },
  {
    rule: 'S7',
    wrong: 'time away is earned unasked',
    shows: 'bead-curing',
    in: 'clock.ts',
    text: 'if (said.confirmed) {',
    instead: 'if (said.confirmed || away > 0) {',
  },
  {
    rule: 'S2',
    wrong: 'skin time is measured by the running clock alone',
    shows: 'bead-missing',
    in: 'clock.ts',
    text: 'sum += Math.max(0, wall, running);',
    instead: 'sum += Math.max(0, running);',
  },
  {
    rule: 'X2',
    wrong: 'a release is taken at its word',
    shows: 'released',
    in: 'fold.ts',
    text: 'work.verdicts[line.n] ??= judge(sofar, line);',
    instead: 'work.verdicts[line.n] ??= true;',
  },
  {
    rule: 'U1',
    wrong: 'a struck line is folded out of its first subject only',
    shows: '',
    in: 'refold.ts',
    text: 'for (const key of touches(one)) keys.add(key);',
    instead: 'for (const key of touches(one).slice(0, 1)) keys.add(key);',
  },
  {
    rule: 'U3',
    wrong: 'holes exchanged: the findings stay behind',
    shows: 'misfit',
    in: 'exchange.ts',
    text: '{ ...f, at: swapped(f.at) }',
    instead: '{ ...f }',
  },
  {
    rule: 'F2',
    wrong: 'called meant so once, it is for good, whatever it turns out to be',
    shows: 'suspicion',
    in: 'suspicions.ts',
    text: `|| !cannotBeToldApart(said.spec, spec)`,
    instead: ``,
  },
  {
    rule: 'F2',
    wrong: 'the wrong one goes on being a neighbour to go by',
    shows: 'suspicion',
    in: 'suspicions.ts',
    text: `first === undefined || firstIsWrong ?`,
    instead: `first === undefined ?`,
  },
  {
    rule: 'L8',
    wrong: 'a condemned fastener may lie in a tray at release',
    shows: 'condemned-about',
    in: 'open-points.ts',
    text: 'if (f.condemned)',
    instead: 'if (f.condemned && f.broken)',
  },
];

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Runs the comparison in a copy with one rule wrong. What it said first, or why it said nothing. */
function foundIn(row: Planted): string | null {
  const copy = mkdtempSync(join(tmpdir(), 'countback-planted-'));
  try {
    for (const part of ['src', 'tests/model', 'tests/agreement', 'package.json', 'tsconfig.json']) {
      cpSync(join(root, part), join(copy, part), { recursive: true });
    }
    symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
    const path = join(copy, 'src/job', row.in);
    const text = readFileSync(path, 'utf8');
    if (!text.includes(row.text)) throw new Error(`${row.rule}: src/job/${row.in} no longer says ${row.text}`);
    writeFileSync(
      path,
      text.replace(row.text, () => row.instead),
    );
    const tsx = join(root, 'node_modules/.bin/tsx');
    const ran = spawnSync(process.execPath, [tsx, 'tests/agreement/run.ts', '400'], { cwd: copy, encoding: 'utf8' });
    const [first = '', ...rest] = ran.stdout.split('\n').slice(0, 3);
    const told = [first, ...rest.filter((one) => /^ +only the /.test(one))].map((one) => one.trim()).join('; ');
    return ran.status === 1 && first.startsWith('seed ') && told.includes(row.shows) ? told : null;
  } finally {
    rmSync(copy, { recursive: true });
  }
}

/** True when every wrong rule was found. */
export function everyPlantedIsFound(): boolean {
  let all = true;
  for (const row of planted) {
    const found = foundIn(row);
    all &&= found !== null;
    process.stdout.write(`[${row.rule}] ${row.wrong}: ${found ?? 'NOT FOUND'}\n`);
  }
  return all;
}
