// The job sheet as text: what a released, an unreleased, a falsely released and a left job say of themselves.
import { expect, it } from 'vitest';
import { noSealant } from '../../src/job/beads.ts';
import { sheetCsv } from '../../src/sheet/csv.ts';
import { cells } from '../../src/sheet/layout.ts';
import { sheetPage } from '../../src/sheet/page/page.ts';
import { openSentences } from '../../src/sheet/points.ts';
import { sheetText } from '../../src/sheet/text.ts';
import { conditionsText, methodText } from '../../src/sheet/words.ts';
import type { Units } from '../../src/trade/units-shown.ts';
import { newStory, type Story, unwrapped } from './bench-story.ts';
import { builtJob, fastenerOf, releasedJob, strippedJob } from './jobs.ts';

const sheet = (s: Story, more: { copy?: 'owner'; digest?: string; zone?: number; units?: Units } = {}) =>
  sheetText(s.ledger, { now: s.now, ...more });
const lid = { kind: 'face-declared', face: 'lid', area: 'lid', pressedBy: ['lid/1'], keepsIn: [] };
const lidBolt = { kind: 'hole-declared', hole: 'lid/1', wants: { kind: 'bolt', thread: 'M6' } };
/** The lines of one section, its title left out. */
function sectionOf(text: string, title: string): string[] {
  const lines = text.split('\n');
  const from = lines.findIndex((line) => line.startsWith(`${title} -`));
  if (from < 0) return [];
  const to = lines.findIndex((line, i) => i > from && line === '');
  return lines.slice(from + 1, to < 0 ? lines.length : to);
}
const said = (text: string, title: string) => unwrapped(sectionOf(text, title).join('\n'));

const released = releasedJob();
const releasedSheet = sheet(released, { digest: 'ab'.repeat(32) });

it('says on top whose car it is, by whom and when it was released, and the digest of the log', () => {
  expect(releasedSheet.split('\n').slice(2, 11)).toEqual([
    'Vehicle         bench car',
    'Registration    XX 12',
    'Odometer        84210 km',
    'Remarks         owner waits for a call',
    'Job opened      Monday 2026-11-23 08:00',
    'As it stands    Wednesday 2026-11-25 07:29 (UTC+01:00)',
    `Log digest      ${'ab'.repeat(32)}`,
    '',
    'RELEASED by Ola on Wednesday 2026-11-25 07:28, line 89',
  ]);
  expect(releasedSheet).not.toContain('NOT RELEASED');
  expect(sectionOf(releasedSheet, 'WHAT IS OPEN')).toEqual([]);
});

it('lists services done and dropped with the reason, and what is due by date and distance', () => {
  expect(sectionOf(releasedSheet, 'SERVICES')).toEqual(['  - pump and belt: done', '  - wash: dropped: frost']);
  expect(sectionOf(releasedSheet, 'RE-CHECKS AND NEXT SERVICE')).toEqual([
    '  - mount bolt, right class: 2026-12-01 or at 85000 km, whichever first',
    '  - coolant: 2030-11-01',
  ]);
});

it('lists every finding, accepted and declined plain to see, with who and why', () => {
  const text = said(releasedSheet, 'FINDINGS');
  expect(text).toMatch(
    /ACCEPTED AS IT IS.*part pump: paint gone; found on arrival, 2026-11-23 08:05 accepted by Ola 2026-11-23 08:32: looks only/s,
  );
  expect(text).toMatch(
    /DECLINED BY THE OWNER\s+- area mount \(critical\): rubber cracked; found on arrival, 2026-11-23 08:04 the owner was told 2026-11-23 08:30, and said: not this year; declined by owner 2026-11-23 08:31: not this year CAUTION: this is a place/,
  );
  expect(text).toMatch(/Put right\s+- pump 2: thread stripped; found during the work/);
  expect(text).not.toContain('OPEN');
});

it('keeps the tightening record in the order in which the holes were called, out-of-order ones marked', () => {
  const areas = sectionOf(releasedSheet, 'AREAS');
  const pump = areas.slice(areas.indexOf('  pump: 4 of 4 closed'), areas.indexOf('  mount, critical: 2 of 2 closed'));
  expect(pump.slice(1, 5)).toEqual([
    '    snug        1, 3, 2',
    '                2026-11-24 04:46',
    '    final       3*, 1, 2',
    '                torque: 10 Nm; tool: torque wrench; 2026-11-24 04:49 to 04:50 by',
  ]);
  expect(unwrapped(areas.join('\n'))).toContain(
    'torque then angle: 40 Nm, 90 deg; with oil; 2026-11-24 05:11 to 05:12',
  );
  expect(areas).toContain('    second look 1, 2; 2026-11-25 07:22 by Bo');
  expect(areas).toContain('    seen        dowel, O-ring; 2026-11-24 04:47');
});

it('names new, new-pattern and substitute fasteners, holes left empty, and a spent one serving by measurement', () => {
  const text = said(releasedSheet, 'AREAS');
  expect(text).toContain('3 new bolt flange 10 M6x25 (flanged bolt)');
  expect(text).toContain('3 new pattern: another head');
  expect(text).toContain('4 left empty by Ola: no boss behind it');
  expect(text).toContain(
    '2 substitute bolt hex 14 M10x1.25x60 8.8 where bolt hex 14 M10x1.25x60 10.9 is wanted: right class not in stock',
  );
  expect(text).toContain('1 serves again by measurement: length under head 65.2 mm, limit 66 mm');
  expect(sectionOf(releasedSheet, 'FASTENERS')).toEqual([
    '  - 6 came off: 4 back, 2 scrap pile',
    '  - 2 new ones from the parts box: 2 back',
  ]);
});

it('[L8] says to the owner as well why a fastener is not used again, where no finding tells it', () => {
  const fasteners = (one: Story) => sectionOf(sheet(one, { copy: 'owner' }), 'FASTENERS');
  const s = strippedJob();
  const before = fasteners(s);
  s.call('condemn', { fastener: fastenerOf(s, 'pump/1'), because: 'damaged after it came off' })
    .call('scrap-own', { hole: 'pump/3' })
    .call('fit', { hole: 'mount/1' })
    .call('remove', { hole: 'mount/1', to: 'tray:1', wrong: 'damaged' });
  expect(unwrapped(fasteners(s).slice(before.length).join('\n'))).toBe(
    ' - not used again: bolt hex 10 M6x25 of pump 1 (damaged after it came off)',
  );
});

it('tells a thread repair step by step', () => {
  expect(said(releasedSheet, 'THREAD REPAIRS')).toContain(
    'pump 2, 2026-11-23 08:20 to 08:25 depth in the boss 16 mm; drilled 6.3 mm; tapped (M6 for insert); cleaned; insert 12 mm; tried by hand',
  );
});

it('[F5] names among the findings a thread repaired of which none was called, and no other', () => {
  const repaired = (s: ReturnType<typeof strippedJob>) => {
    for (const step of ['drilled', 'tapped', 'cleaned', 'insert', 'tried'])
      s.call('repair-thread', { hole: 'pump/2', step, ...(step !== 'tried' && { millimetres: 12 }) });
    return s;
  };
  const begun = strippedJob().call('repair-thread', { hole: 'pump/2', step: 'depth', millimetres: 16 });
  expect(said(sheet(begun), 'FINDINGS')).toContain('pump 2: thread repair begun, 2026-');
  const text = said(sheet(repaired(begun)), 'FINDINGS');
  expect(text).toMatch(
    /Thread repaired, and no finding called of it - pump 2: thread repaired, 2026-.*; see Thread repairs/,
  );
  const called = strippedJob().call('make-finding', { at: 'hole:pump/2', what: 'thread torn' });
  called.call('repair-thread', { hole: 'pump/2', step: 'depth', millimetres: 16 });
  expect(said(sheet(repaired(called)), 'FINDINGS')).not.toContain('no finding called');
  expect(sheetPage(begun.ledger, { now: begun.now })).toContain('no finding called of it');
});

it('tells a bead with its product, the bench, when the face was together, and its cure', () => {
  expect(said(releasedSheet, 'SEALANT')).toContain(
    'pump face: grey sealant (moisture), laid 2026-11-24 04:39 cleaned 2026-11-24 04:38; at the bench 23 deg C, 55 % humidity together 2026-11-24 04:46; fully cured (24 h by the label)',
  );
});

it('tells each try of the check rotation with its result', () => {
  const text = said(releasedSheet, 'CHECK ROTATION');
  expect(text).toContain('timing belt: the check rotation stands');
  expect(text).toContain('try 1, 2026-11-24 04:55: 2 turns, cam off by 1 tooth backwards; FAILED: cam off by -1');
  expect(text).toContain(
    'try 2, 2026-11-24 04:57: 2 turns, cam on, crank on, tension by pointer right; passed 2026-11-24 05:00',
  );
});

it('tells fluids, parts with the verdict on the old ones, the road test not made, and the struck line', () => {
  expect(said(releasedSheet, 'FLUIDS AND LEAK CHECKS')).toContain(
    'coolant: drained 2026-11-23 08:12; filled 2026-11-25 07:16, 5.2 l coolant mix; leak-checked after running (cold, 1 min after the start) 2026-11-25 07:21',
  );
  const parts = said(releasedSheet, 'PARTS');
  expect(parts).toContain('new: pump, 2026-11-24 04:40; the old one: leaking (at the shaft)');
  expect(parts).toContain('new: belt, 2026-11-24 04:51; the old one: worn');
  // T3: what nobody judged is no judgement for the owner.
  const owners = said(sheet(released, { copy: 'owner' }), 'PARTS');
  expect(owners).toContain('the old one: leaking (at the shaft)');
  expect(owners).not.toContain('the old one: worn');
  expect(parts).toContain('refitted: bracket');
  expect(said(releasedSheet, 'START AND ROAD')).toContain('NO ROAD TEST: no number plates (Ola, 2026-11-25 07:23)');
  expect(sectionOf(releasedSheet, 'LOG')[0]).toBe('  - 89 lines, 1 struck');
});

it('tells of one bead the same minute in each place', () => {
  const text = sheet(builtJob().call('note-conditions', { celsius: 17, humidityPct: 43 }).later(10));
  const told = (title: string) => said(text, title).match(/ready \w+day (?:\d{4}-\d\d-\d\d )?(\d\d:\d\d)/)?.[1];
  expect(told('WHAT IS OPEN')).toMatch(/^\d\d:\d\d$/);
  expect(told('SEALANT')).toBe(told('WHAT IS OPEN'));
});

it("keeps what a plan says to mind at the work to the workshop's copy", () => {
  const s = newStory()
    .call('open-job', { label: 'estate' })
    .call('order-service', { service: 'pump', cautions: [{ words: 'hot coolant', at: 'area:lid' }] });
  expect(said(sheet(s), 'MIND')).toContain('lid: hot coolant');
  const owners = said(sheet(s, { copy: 'owner' }), 'MIND');
  expect(owners).not.toContain('hot coolant');
  expect(owners).toContain('Local codes');
  for (const form of [sheetPage, sheetCsv]) {
    expect(form(s.ledger, { now: s.now })).toContain('hot coolant');
    expect(form(s.ledger, { now: s.now, copy: 'owner' })).not.toContain('hot coolant');
  }
});

it('ends with the cautions', () => {
  expect(releasedSheet.trimEnd().split('\n').slice(-3)).toEqual([
    'This sheet says what was called, not what is right: torque, angles and order',
    "come from the maker's manual.",
    'Local codes and licensed practice come first, whatever is written here.',
  ]);
});

it('marks a wrong order for the owner only where it is critical', () => {
  const owners = sectionOf(sheet(released, { copy: 'owner' }), 'AREAS');
  expect(owners).toContain('    final       3, 1, 2');
  expect(owners).toContain('    final       2*, 1');
});

it('says torques and temperatures in the units of the workshop; the log and the table keep newton metres and Celsius', () => {
  const units = { distance: 'mi', temperature: 'F', torque: 'lbf ft' } as const;
  // 40 / 1.355818 = 29.5; 20 * 9 / 5 + 32 = 68. The units themselves are held to prints in tests/published/units.ts.
  expect(methodText({ by: 'torque', newtonMetres: 40 }, units)).toBe('torque: 29.5 lbf ft');
  expect(methodText({ by: 'torque', newtonMetres: 40 })).toBe('torque: 40 Nm');
  expect(conditionsText({ celsius: 20, humidityPct: 45 }, units)).toBe('68 deg F, 45 % humidity');
  const [metric, own] = [sheet(released), sheet(released, { units })];
  expect(metric).toMatch(/\d Nm/);
  expect(own).not.toMatch(/\d Nm/);
  expect(own).toMatch(/\d lbf ft/);
  expect(metric).toMatch(/\d deg C,/);
  expect(own).not.toMatch(/\d deg C,/);
  expect(own).toMatch(/\d deg F,/);
});

it('says what is open area by area, whatever came up in between', () => {
  const open = (at: string, area?: string) => ({ code: 'x', at, place: at, because: 'off', ...(area && { area }) });
  const some = [
    open('hole:mount/1', 'mount'),
    open('hole:pump/2', 'pump'),
    open('vehicle'),
    open('hole:mount/2', 'mount'),
    open('part:bracket', 'mount'),
    open('hole:mount/3 nut', 'mount'),
  ];
  expect(openSentences({ open: some })).toEqual([
    'mount 1, 2, 3 nut: off',
    'part:bracket: off',
    'hole:pump/2: off',
    'vehicle: off',
  ]);
});

it('says of a job on the bench that it is not released, how much is open, and lists open findings first', () => {
  const built = builtJob().call('make-finding', { at: 'hole:mount/1', what: 'thread dirty' });
  const text = sheet(built);
  // Holes of which the same is said stand in one line: as many points as there are numbers.
  const openIn = (sheetText: string) => {
    const lines = sectionOf(sheetText, 'WHAT IS OPEN').filter((line) => line.startsWith('  - '));
    const holes = (line: string) =>
      /^ {2}- \w+ ([\d, ]+): (?:off|slack|on|snug)/.exec(line)?.[1]?.split(',').length ?? 1;
    return { lines: lines.length, points: lines.reduce((sum, line) => sum + holes(line), 0) };
  };
  const stripped = sheet(strippedJob());
  expect(openIn(stripped).points).toBeGreaterThan(openIn(stripped).lines);
  for (const one of [text, stripped]) expect(one).toContain(`\nNOT RELEASED, ${openIn(one).points} open points\n`);
  expect(text).not.toMatch(/^RELEASED/m);
  // The hole that only the finding keeps open is told with the finding, and counted once.
  expect(said(text, 'WHAT IS OPEN')).toContain(': mount 1: thread dirty');
  expect(text).not.toContain('- mount 1: a finding on it is open');
  expect(sectionOf(text, 'FINDINGS').slice(0, 2)).toEqual([
    'OPEN',
    '  - mount 1 (critical): thread dirty; found during the work, 2026-11-24 05:05',
  ]);
  expect(said(text, 'AREAS')).toContain('OPEN 2: off');
  expect(said(text, 'SEALANT')).toMatch(
    /together 2026-11-24 04:46; CURING: 23 h 40 min of label time left, ready Wednesday 2026-11-25 04:46/,
  );
  expect(said(text, 'FLUIDS AND LEAK CHECKS')).toContain('NOT FILLED; NOT LEAK-CHECKED');
});

it('says of a bead that skinned before its face was together that it is void, and counts the one cleaned off', () => {
  const s = strippedJob()
    .call('repair-thread', { hole: 'pump/2', step: 'depth', millimetres: 14 })
    .call('note-conditions', { celsius: 20 })
    .call('clean-face', { face: 'pump face' })
    .call('lay-bead', { face: 'pump face', product: 'grey sealant' })
    .call('clean-face', { face: 'pump face' })
    .call('lay-bead', { face: 'pump face', product: 'grey sealant' })
    .later(45)
    .call('note-conditions', { celsius: 6, humidityPct: 80 });
  const text = said(sheet(s), 'SEALANT');
  expect(text).toContain('at the bench 20 deg C, humidity unknown; 6 deg C, 80 % humidity from 2026-11-23 09:08');
  expect(text).toContain('VOID: skinned before it was together');
  expect(text).toContain('pump face: 1 earlier bead laid and cleaned off again');
});

it('[S1] says in each copy of a bead called after its face was closed that it was, and since when; not of none laid', () => {
  const s = strippedJob()
    .call('declare', { entries: [lid, lidBolt] })
    .call('remove', { hole: 'lid/1', to: 'tray:3' })
    .call('count-holes', { area: 'lid', count: 1 })
    .call('fit', { hole: 'lid/1' })
    .call('tighten', { hole: 'lid/1', last: true })
    .call('clean-face', { face: 'lid' })
    .call('lay-bead', { face: 'lid', label: noSealant })
    .call('lay-bead', { face: 'lid', product: 'grey sealant' });
  const late = 'lid: grey sealant (moisture), laid 2026-11-23 08:24, AFTER ITS FACE WAS CLOSED (2026-11-23 08:21)';
  for (const copy of [{}, { copy: 'owner' }] as const) {
    expect(said(sheet(s, copy), 'SEALANT')).toContain(late);
    expect(sheetPage(s.ledger, { now: s.now, ...copy }).replace(/<[^>]*>/g, '')).toContain(late.slice(5));
    expect(sheetCsv(s.ledger, { now: s.now, ...copy })).toContain('AFTER ITS FACE WAS CLOSED');
    expect(sheet(s, copy).match(/AFTER ITS/g)).toHaveLength(1);
  }
});

it('[O4] says beside a reading far from what its method ends in that it is not the figure, in each copy', () => {
  const s = newStory().call('open-job', { label: 'estate' });
  s.call('declare', { entries: [{ kind: 'area-declared', area: 'hub', method: { by: 'torque', newtonMetres: 110 } }] });
  for (const hole of ['hub/1', 'hub/2']) s.call('remove', { hole, to: 'tray:1', spec: { kind: 'bolt', thread: 'M8' } });
  s.call('count-holes', { area: 'hub', count: 2 }).call('fit', { hole: 'hub/1' }).call('fit', { hole: 'hub/2' });
  s.call('tighten', { hole: 'hub/1', last: true, readNewtonMetres: 11 });
  s.call('tighten', { hole: 'hub/2', last: true, readNewtonMetres: 108 });
  for (const copy of [{}, { copy: 'owner' }] as const) {
    expect(said(sheet(s, copy), 'AREAS')).toContain('1 (read 11 Nm, not the figure), 2 (read 108 Nm)');
    expect(sheetPage(s.ledger, { now: s.now, ...copy })).toContain('read 11 Nm, not the figure');
    expect(sheetCsv(s.ledger, { now: s.now, ...copy })).toContain('read 11 Nm, not the figure');
  }
});

it('[O4] says that no figure was noted where its method wants one, with the last pass alone and in each copy', () => {
  const s = newStory().call('open-job', { label: 'estate' });
  const bolt = { kind: 'bolt', thread: 'M8' };
  const entries = ['torque', 'torque-angle', 'hand'].map((by) => ({ kind: 'area-declared', area: by, method: { by } }));
  s.call('declare', { entries });
  for (const { area } of entries) {
    s.call('remove', { hole: `${area}/1`, to: 'tray:1', spec: bolt }).call('remove', {
      hole: `${area}/2`,
      to: 'tray:1',
    });
    s.call('count-holes', { area, count: 2 })
      .call('fit', { hole: `${area}/1` })
      .call('fit', { hole: `${area}/2` });
    s.call('complete-pass', { area }).call('tighten', { hole: `${area}/1`, last: true });
    s.call('tighten', { hole: `${area}/2`, last: true, ...(area === 'torque' && { readNewtonMetres: 25 }) });
  }
  for (const copy of [{}, { copy: 'owner' }] as const) {
    const areas = said(sheet(s, copy), 'AREAS');
    expect(areas).toMatch(/final 1 torque; figure not noted; \S+ \S+ final 2 \(read 25 Nm\) torque; 2026/);
    expect(areas).toContain('final 1, 2 torque then angle; figure not noted;');
    expect(areas.match(/not noted/g)).toHaveLength(2);
    expect(sheetPage(s.ledger, { now: s.now, ...copy })).toContain('torque then angle; figure not noted');
    expect(sheetCsv(s.ledger, { now: s.now, ...copy }).match(/figure not noted/g)).toHaveLength(3);
  }
});

it('X2: a release the list of open points did not allow is shown as such and is none', () => {
  const s = builtJob().forged({ kind: 'released', who: 'Mallory' });
  const text = sheet(s);
  expect(text).toMatch(/^NOT RELEASED, \d+ open points$/m);
  expect(text.replace(/\s+/g, ' ')).toMatch(
    /A RELEASE THAT WAS NONE: said by Mallory on Tuesday 2026-11-24 05:05 in line \d+, and not allowed\./,
  );
  expect(text).not.toMatch(/^RELEASED/m);
});

it('X3: what is written after a release is not covered by it', () => {
  const s = releasedJob().forged({ kind: 'connection-parted', connection: 'bottom hose' });
  const text = sheet(s);
  expect(text).toMatch(/^NOT RELEASED AS IT STANDS, \d+ open points?$/m);
  expect(text.replace(/\s+/g, ' ')).toContain(
    'The release by Ola on Wednesday 2026-11-25 07:28, line 89, no longer covers the log: 1 line written after it.',
  );
  expect(text).not.toMatch(/^RELEASED/m);
});

it('a job reopened after its release is not released, and the log tells both', () => {
  const s = releasedJob().call('reopen', { who: 'Bo', because: 'it drips' });
  const text = sheet(s);
  expect(text).toContain('\nNOT RELEASED; nothing is open, release may be called\n');
  expect(said(text, 'LOG')).toMatch(/released by Ola, .*reopened by Bo, 2026-11-25 07:29, line 90: it drips/s);
});

it('a job that left unreleased is not fit to drive, and its open points are handed over', () => {
  const s = strippedJob().call('leave-unreleased', { who: 'Ola', because: 'towed to the owner' });
  const text = sheet(s);
  expect(text).toMatch(/^LEFT UNRELEASED: NOT FIT TO DRIVE, \d+ open points$/m);
  expect(text).toContain('called by Ola on Monday 2026-11-23 08:17: towed to the owner');
  expect(said(text, 'WHAT IS OPEN')).toContain('- connection bottom hose: parted');
  expect(text).not.toMatch(/^RELEASED/m);
});

it('O5: tells the workshop every overridden order with its reason, the owner only that a critical place was', () => {
  const s = strippedJob()
    .call('declare', {
      entries: [
        { kind: 'area-declared', area: 'lid', planned: true },
        { kind: 'behind-declared', front: 'area:lid', behind: 'part:belt', until: 'closed', from: 'said' },
      ],
    })
    .call('remove', { hole: 'lid/1', to: 'tray:3', spec: { kind: 'screw' } })
    .call('fit', { hole: 'lid/1' })
    .call('tighten', { hole: 'lid/1' }, { because: 'lid does not hide it' })
    .call('fit', { hole: 'mount/1' })
    .call('tighten', { hole: 'mount/1' }, { because: 'pump goes in from below', who: 'Kim' });
  const workshops = said(sheet(s), 'DONE OUT OF ORDER');
  expect(workshops).toContain('lid 1, 2026-11-23 08:20, line 21, rule O1: lid does not hide it');
  expect(workshops).toContain('mount 1 (critical), 2026-11-23 08:22 by Kim, line 23, rule O1: pump goes in from below');
  const owners = sheet(s, { copy: 'owner' });
  expect(sectionOf(owners, 'DONE OUT OF ORDER')).toEqual(['  - critical, and done out of order: mount 1']);
  expect(owners).not.toContain('goes in from below');
  expect(owners).not.toContain('lid does not hide it');

  s.call('strike', { lines: [23] });
  expect(said(sheet(s), 'DONE OUT OF ORDER')).not.toContain('mount 1');
});

it('U3: what was called of the wrong hole is told of the right one, and the correction with its reason', () => {
  const s = strippedJob()
    .call('fit', { hole: 'mount/1' })
    .call('tighten', { hole: 'mount/1' }, { because: 'no room later' })
    .call('exchange-holes', { one: 'mount/1', other: 'mount/2', because: 'counted from the wrong end' });
  const text = sheet(s);
  expect(said(text, 'DONE OUT OF ORDER')).toContain('mount 2 (critical)');
  expect(said(text, 'AREAS')).toContain('OPEN 1: off');
  expect(said(text, 'LOG')).toContain(
    'mount 1 and mount 2 exchanged: what was called of the one was of the other: counted from the wrong end',
  );
});

it('L9: a loss ruled out names who, why and the search; one that is not says so', () => {
  const s = newStory()
    .call('open-job', { label: 'bench car' })
    .call('remove', { hole: 'cover/1', to: 'tray:1', spec: { kind: 'bolt', thread: 'M6', lengthMm: 20 } })
    .call('remove', { hole: 'cover/2', to: 'tray:1', spec: { kind: 'bolt', thread: 'M6', lengthMm: 25 } })
    .call('lose-fastener', { fastener: 'f2.1', reaches: true, where: 'the belt bay' })
    .call('search', { lost: 'f2.1', how: 'camera' })
    .call('rule-out-loss', { lost: 'f2.1', who: 'Ola', because: 'seen to fall on the floor' })
    .call('lose-fastener', { fastener: 'f3.1', reaches: false, where: '' })
    .call('find-stray', { tray: '1', spec: { kind: 'nut', thread: 'M8' } })
    .call('disown-stray', { stray: 's8.1', who: 'Ola', because: 'fell out of a rag' });
  const text = said(sheet(s), 'LOST, AND NOT OF THIS VEHICLE');
  expect(text).toContain(
    'bolt M6x20 of cover 1, lost at the belt bay, could reach the works; searched: camera; stated not to be in the vehicle by Ola: seen to fall on the floor',
  );
  expect(text).toContain('bolt M6x25 of cover 2, lost; STILL LOST');
  expect(text).toContain('nut M8, found 2026-11-23 08:08: no part of this vehicle, stated by Ola: fell out of a rag');
});

it('shows each line at the offset it was called in, or all at the one asked for', () => {
  const s = newStory().call('open-job', { label: 'ferry car' }).zone(-300).call('note', { words: 'over the sea' });
  expect(sheet(s)).toContain('Job opened      Monday 2026-11-23 08:00');
  expect(said(sheet(s), 'NOTES')).toContain('2026-11-23 02:01: over the sea');
  expect(said(sheet(s, { zone: 60 }), 'NOTES')).toContain('2026-11-23 08:01: over the sea');
});

it('keeps within eighty columns and ASCII, and a job of nothing has a sheet too', () => {
  for (const text of [releasedSheet, sheet(builtJob()), sheetText(newStory().ledger, { now: newStory().now })]) {
    expect(text.split('\n').filter((line) => cells(line) > 80)).toEqual([]);
    expect(text).toMatch(/^[\n\x20-\x7e]*$/);
  }
});

it('tells how many were only slackened, and whether they are tight again', () => {
  const story = newStory()
    .call('open-job', { label: 'bench car' })
    .call('slacken', { hole: 'mount/1', spec: { kind: 'nut', head: 'hex 13' } })
    .call('slacken', { hole: 'mount/2', spec: { kind: 'nut', head: 'hex 13' } });
  expect(said(sheet(story), 'FASTENERS')).toContain('2 only slackened: 2 NOT TIGHT');
  story.call('tighten', { hole: 'mount/1', pass: 'final', last: true });
  expect(said(sheet(story), 'FASTENERS')).toContain('2 only slackened: 1 tight again, 1 NOT TIGHT');
  story.call('tighten', { hole: 'mount/2', pass: 'final', last: true });
  expect(said(sheet(story), 'FASTENERS')).toContain('2 only slackened: tight again');
});

it('[T1 T7] tells when the car last came down onto its wheels and last moved, in the text and in the table', () => {
  const story = newStory().call('open-job', { label: 'estate' }).call('lower-car').call('move-car', { how: 'by hand' });
  const text = sheetText(story.ledger, { now: story.now, copy: 'owner' });
  expect(text).toMatch(/last lowered onto its wheels 2026-11-23 08:01/);
  expect(text).toMatch(/last moved 2026-11-23 08:02/);
  const table = sheetCsv(story.ledger, { now: story.now, copy: 'owner' });
  expect(table).toMatch(/^way out,[^\n]*car down/m);
});

it('[T1] tells beside the car that came down when its last stand was out, which puts the weight on', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  for (const temporary of ['left stand', 'right stand']) story.call('put-in', { temporary, sort: 'stand' });
  story.call('put-in', { temporary: 'sump rag', sort: 'rag' });
  for (const temporary of ['right stand', 'left stand', 'sump rag']) story.call('take-out', { temporary });
  story.call('lower-car');
  expect(unwrapped(sheet(story))).toContain(
    'last lowered onto its wheels 2026-11-23 08:07; the last stand out 2026-11-23 08:05',
  );
});

it('L9: what was lost in the works and found again is told on the workshop\u2019s copy alone', () => {
  const s = newStory()
    .call('open-job', { label: 'bench car' })
    .call('remove', { hole: 'cover/1', to: 'tray:1', spec: { kind: 'bolt', thread: 'M6', lengthMm: 20 } })
    .call('lose-fastener', { fastener: 'f2.1', reaches: true, where: 'the belt bay' })
    .call('move-fastener', { fastener: 'f2.1', to: 'tray:1' });
  const told = /bolt M6x20 of cover 1, lost at the belt bay .*could reach the works; found again/;
  expect(said(sheet(s), 'LOST, AND NOT OF THIS VEHICLE')).toMatch(told);
  expect(sheet(s, { copy: 'owner' })).not.toContain('belt bay');
  s.call('strike', { lines: [4] });
  expect(said(sheet(s), 'LOST, AND NOT OF THIS VEHICLE')).not.toContain('found again');
});

it('X4: the odometer on arrival is told beside the one at the end', () => {
  const s = newStory().call('open-job', { label: 'bench car' }).call('note-odometer', { distance: 248_000 });
  expect(sheet(s)).toMatch(/^Odometer +248000 km$/m);
  s.call('note-odometer', { distance: 248_012 });
  expect(sheet(s)).toMatch(/^Odometer +248012 km; 248000 km when noted first$/m);
});
it('F1: of a wrong fastener the owner reads what was in the hole, as far as it is known', () => {
  const s = newStory().call('open-job', { label: 'car' });
  const wrong = { to: 'tray:1', wrong: 'odd' };
  s.call('remove', { hole: 'caliper/2', ...wrong, spec: { kind: 'bolt', head: 'hex 13', thread: 'M8', lengthMm: 30 } });
  s.call('remove', { hole: 'caliper/3', ...wrong });
  const told = unwrapped(sheetText(s.ledger, { now: s.now, copy: 'owner' }));
  expect(told).toContain('caliper 2: wrong fastener in it (bolt hex 13 M8x30); found on arrival');
  expect(told).toContain('caliper 3: wrong fastener in it; found on arrival');
});
it('[F2] says once that what was suspected is meant so', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  for (const [n, thread] of [...'12345'].map((n) => [n, n === '5' ? 'M12x1.25' : 'M12x1.5']))
    story.call('remove', { hole: `arm/${n}`, to: 'tray:1', spec: { kind: 'bolt', thread } });
  story.call('dismiss-suspicion', { hole: 'arm/5' });
  expect(unwrapped(sheet(story))).toMatch(/confirmed [-\d: ]+: bolt M12x1.25 in arm 5: meant so/);
});
