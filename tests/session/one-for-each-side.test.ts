// A job of struts and brakes: what must be in before a spring or a caliper is let go, in what order an assembly goes
// together again, and what comes out when. What stands on the screen as first is what its key takes.
import { describe, expect, it } from 'vitest';
import { offerOf } from '../../src/calls/desk.ts';
import { upNext } from '../../src/calls/up-next.ts';
import { restOf } from '../../src/job/area-rest.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { sheetCsv } from '../../src/sheet/csv.ts';
import { sheetPage } from '../../src/sheet/page/page.ts';
import { sheetText } from '../../src/sheet/text.ts';
import { shipped } from '../plan/shipped/shipped.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { atTheBench } from './at-the-bench.ts';

const files = ['front-struts.json', 'front-brake-pads-and-discs.json', 'auxiliary-belt-and-tensioner.json'];
const plans = files.map((file) => offerOf({ plan: shipped(file), file }));
async function ordered(...services: [plan: string, service: string][]) {
  const at = await atTheBench(undefined, { trays: ['1', '2', '3'], plans });
  await at.press('n', 'x', 'enter', 'S');
  const say = (...lines: string[]) => {
    for (const line of lines) {
      const said = at.session().runLine(line);
      if (said.kind === 'refused') throw new Error(`${line}: ${said.text}`);
    }
  };
  for (const [plan, service] of services) say(`plan ${plan} for ${service}`);
  const answer = () => {
    const said = at.state().answer;
    return said && 'text' in said ? said.text : '';
  };
  const shown = () => {
    const { keymap, view } = at.bench.store.getState();
    return upNext(at.bench.desk(), keymap.keysOn(view.screen)).map(({ bound, name }) => `${bound.row.label}: ${name}`);
  };
  const isOff = (hole: string) => stateOf(at.state().ledger, 'hole', hole)?.called.occupant === undefined;
  return { ...at, say, answer, shown, isOff };
}
const struts = () => ordered(['front struts', 'front struts']);
const brakes = () => ordered(['front brakes', 'front pads and discs']);

describe('a loaded spring', () => {
  it('is pressed together before its nut: the key that puts in takes the compressors, the nut is asked about once', async () => {
    const at = await struts();
    at.say('area right piston nut');
    await at.press('enter');
    expect(at.state().answer).toMatchObject({
      kind: 'asked',
      text: expect.stringMatching(
        /right spring compressor one and right spring compressor two are not in: let go, it kills/,
      ),
      by: 'put-in',
    });
    await at.press('s');
    expect(at.state().answer?.kind).toBe('asked');
    await at.press('i', 'i');
    expect(at.answer()).toMatch(/^right spring compressor two in/);
    await at.press('enter');
    expect(at.state().answer?.kind).toBe('taken');
    expect(at.isOff('right piston nut/1')).toBe(true);
  });
  it('keeps them in until its nut is tight, and they hold no engine', async () => {
    const at = await struts();
    at.say('in right spring compressor one', 'area right piston nut', 'off 1');
    await at.press('B', 'o');
    expect(at.view().asking?.title).toBe('taken out: temporary');
    await at.press('1');
    expect(at.state().answer).toMatchObject({
      kind: 'asked',
      text: 'right piston nut is open: let go, the spring throws what is on it',
    });
  });
});

describe('an assembly', () => {
  it('goes together from behind: damper, spring, top mount; set on before them, the mount is minded', async () => {
    const at = await struts();
    at.say('area right piston nut', 'off 1', 'part off right spring', 'part off right damper');
    at.say('box new mount for right top mount', 'box new damper for right damper');
    at.say('area right piston nut');
    await at.press('B');
    expect(at.shown()).toContain('renewed: right damper');
    expect(at.session().runLine('renewed right top mount')).toMatchObject({
      kind: 'taken',
      text: expect.stringContaining('Mind: right damper and right spring off behind it: on before right top mount'),
    });
    at.say('strike last');
    await at.press('r');
    expect(at.answer()).toMatch(/^right damper renewed/);
    expect(at.shown()).toContain('part back: right spring');
    await at.press('b');
    expect(at.shown()).toContain('renewed: right top mount');
  });
  it('offers no caliper over pads that are off', async () => {
    const at = await brakes();
    at.say(
      'area left caliper',
      'off 1',
      'off 2',
      'part off left pads',
      'box new pads for left pads',
      'area left caliper',
    );
    await at.press('B');
    expect(at.shown().filter((one) => /part back|renewed/.test(one))).toEqual(['renewed: left pads']);
  });
});

describe('what goes in for the work', () => {
  it('is offered where it belongs, before what belongs to no place', async () => {
    const at = await brakes();
    at.say('area right caliper');
    expect(at.shown()).toContain('put in: right caliper hook');
    at.say('in right caliper hook', 'in left caliper hook', 'in wheel chock');
    await at.press('enter', 'enter', 'B');
    // The chock is in last, the caliper hangs on its hook.
    expect(at.shown().filter((one) => one.startsWith('taken out'))).toEqual([
      expect.stringMatching(/^taken out: left/),
    ]);
    at.say('area right caliper', 'box guide bolt times 2 as bolt hex 13 M8x1.25x25', 'new 1', 'new 2');
    expect(at.shown().filter((one) => one.startsWith('taken out'))).toEqual([
      expect.stringMatching(/^taken out: right caliper hook/),
    ]);
  });
  it('comes out where it belongs, then on its side of the car, before what went in last', async () => {
    const at = await brakes();
    const outNext = () => at.shown().filter((one) => one.startsWith('taken out'));
    at.say('in wheel chock', 'in right stand', 'in left stand', 'area right front wheel');
    await at.press('B');
    expect(outNext()).toEqual([expect.stringMatching(/^taken out: right stand;/)]);
    at.say('area right disc');
    expect(outNext()).toEqual([expect.stringMatching(/^taken out: right stand;/)]);
    at.say('area left disc');
    expect(outNext()).toEqual([expect.stringMatching(/^taken out: left stand;/)]);
  });
  it('[T1] a chock comes out after the stands and is in nobody’s way, and is asked about before', async () => {
    const at = await brakes();
    at.say('in wheel chock', 'in right stand', 'area right front wheel', 'off 1', 'back 1', 'pass');
    await at.press('B');
    expect(at.shown().filter((one) => one.startsWith('taken out'))).toEqual([
      expect.stringMatching(/^taken out: right stand/),
    ]);
    await at.press(',', 'o');
    const place = at.view().asking?.choices.findIndex(({ value }) => value === 'wheel chock') ?? -1;
    await at.press(String(place + 1));
    expect(at.state().answer).toMatchObject({ kind: 'asked', text: expect.stringContaining('keeps it from rolling') });
    at.say('out right stand', 'tight 1');
    expect(at.answer()).toContain('tight');
    expect(at.shown()).toContain('taken out: wheel chock');
  });
  it('a tensioner pin is no proposal away from its belt', async () => {
    const at = await ordered(['auxiliary belt', 'auxiliary belt and tensioner']);
    at.say('area right front wheel', 'in right stand');
    expect(at.shown().filter((one) => one.startsWith('put in'))).toEqual([]);
  });
});

describe('what an area waits for', () => {
  it('[O6] names the key that does it now, and what waits behind it without one', async () => {
    const at = await struts();
    at.say('area left strut foot', 'parted left wheel speed lead off the strut', 'area left strut foot', 'off 1');
    at.say('back 1', 'box foot nut times 2 as nut hex 18 M12x1.5', 'new 1 nut', 'area left strut foot', 'final 1');
    at.say('area left strut foot');
    await at.press('B');
    expect(textOf(sceneOf({ screen: 'build' }, { desk: at.bench.desk() })).replace(/\s+│?\s*/g, ' ')).toMatch(
      /It waits: direction not called: %;/,
    );
    await at.press('j');
    expect(at.state().answer).toMatchObject({
      text: expect.stringMatching(/^left wheel speed lead off the strut: behind it left strut foot is open/),
      instead: 'call that',
      by: 'direction',
    });
    // Typed it is refused with the same way; away from the area that one is taken in use first.
    for (const [area, instead, by] of [
      ['left strut foot', 'call that', 'direction'],
      ['left front wheel', 'call that at left strut foot', 'area'],
    ]) {
      at.say(`area ${area}`);
      const said = at.session().runLine('made left wheel speed lead off the strut');
      expect(said).toMatchObject({ kind: 'refused', instead, by });
    }
    at.say('area left strut foot');
    await at.press('%');
    expect(at.answer()).toMatch(/direction/);
    await at.press('j');
    expect(at.answer()).toMatch(/^left wheel speed lead off the strut made/);
  });
  it('[O6] says direction of what, where the plan has words for it', async () => {
    const at = await brakes();
    const rest = () => restOf(at.state().ledger, 'left caliper').find(({ by }) => by === 'direction');
    at.say('in wheel chock', 'in left stand', 'area left caliper', 'off 1');
    expect(rest()?.words).toBe(
      'direction not called (Pads with a wear sensor or an arrow have a side and a direction)',
    );
  });
});

it('[X4] tells the owner what the plan has for him, on his own copy too', async () => {
  const at = await brakes();
  const { ledger } = at.state();
  for (const copy of ['owner', 'workshop'] as const) {
    const options = { now: at.bench.desk().now, copy };
    for (const sheet of [sheetText(ledger, options), sheetPage(ledger, options), sheetCsv(ledger, options)]) {
      expect(sheet.replace(/\s+/g, ' ')).toContain('again after the first 50 km or so');
      expect(sheet.replace(/\s+/g, ' ')).toContain('Bedding in: gentle stops first');
    }
  }
});
