import { mkdtemp, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { everyBead } from '../../src/job/beads.ts';
import { every, lastLine } from '../../src/job/ledger.ts';
import { type Line, readLine } from '../../src/job/line.ts';
import { readLog } from '../../src/job/log.ts';
import { openPoints } from '../../src/job/open-points.ts';
import { openJob } from '../../src/store/open-job.ts';
import { finishedJob, midJob } from './demo-jobs.ts';
import { makeDemo } from './make.ts';

const root = new URL('../../', import.meta.url);
const shipped = (file: string) => fileURLToPath(new URL(`demo-data/${file}`, root));

async function load(file: string) {
  const job = await openJob({ path: file, readLine, look: true });
  const lines = [...job.lines()];
  await job.close();
  const ledger = readLog(lines);
  return { ledger, now: lastLine(ledger) as Line };
}

describe('the demo data', () => {
  it('[V2] is what its calls write today, byte by byte', async () => {
    const folder = await mkdtemp(path.join(tmpdir(), 'countback-demo-test-'));
    for (const demo of [midJob, finishedJob]) {
      const made = await readFile(await makeDemo(demo, folder, root), 'utf8');
      expect(
        made === (await readFile(shipped(demo.file), 'utf8')),
        `run tests/demo/make.ts: ${demo.file} differs`,
      ).toBe(true);
    }
  });

  it('stands in the middle of a job with one of everything', async () => {
    const { ledger, now } = await load(shipped(midJob.file));
    const points = openPoints(ledger, now).map((p) => `${p.code} ${p.at}`);
    expect([...every(ledger, 'finding')].filter((f) => !f.closed).map((f) => f.at)).toEqual([
      'hole:mount bracket/3',
      'hole:lower belt cover/4',
      'hole:cam cover/7',
    ]);
    const beads = everyBead(ledger, now);
    expect(beads.map((b) => [b.face, b.void ?? (b.reached.full ? 'cured' : 'curing')])).toEqual([
      ['upper carrier face', 'cured'],
      ['lower carrier face', 'skinned before it was together'],
    ]);
    expect(ledger.tallies.all.slack).toBe(2);
    const trays = [...every(ledger, 'tray')];
    expect(trays.map((t) => t.tray).sort()).toEqual(['1', '2', '3', '4', '5', '6']);
    expect(trays.filter((t) => t.contents.length === 0)).toEqual([]);
    expect(points.filter((p) => p.startsWith('misfit') || p.startsWith('books'))).toEqual([]);
    expect(points).toContain('bead-missing face:lower carrier face');
  });

  it('holds a finished job that was released with nothing open', async () => {
    const { ledger, now } = await load(shipped(finishedJob.file));
    expect(openPoints(ledger, now)).toEqual([]);
    expect([...every(ledger, 'vehicle')][0]?.releasedBy).toBe('the workshop');
  });
});
