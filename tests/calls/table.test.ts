import { describe, expect, it } from 'vitest';
import { standardKeymap } from '../../src/calls/bindings.ts';
import type { Desk } from '../../src/calls/desk.ts';
import { slotsOf } from '../../src/calls/form.ts';
import { usage } from '../../src/calls/line-reader.ts';
import type { Row } from '../../src/calls/row.ts';
import { sayings } from '../../src/calls/sayings.ts';
import { readSlot } from '../../src/calls/slots.ts';
import { formOf, rowById, rows } from '../../src/calls/table.ts';
import { verbs } from '../../src/job/decide.ts';
import { emptyLedger } from '../../src/job/ledger.ts';
import { screens } from '../../src/view/screens.ts';

const desk: Desk = {
  ledger: emptyLedger,
  facing: { tray: '1', spec: {} },
  now: { atMs: 0, zoneMin: 0, run: 1, awakeMs: 0 },
  plans: () => [],
};

describe('the table of calls', () => {
  it('gives every row an id of its own, and no two rows the same words', () => {
    const all = rows.flatMap((row) => [row.id, ...row.words.filter((w) => w !== row.id)]);
    expect(all.filter((word, i) => all.indexOf(word) !== i)).toEqual([]);
  });

  it('binds no key twice on a screen; only a screen of its own goes before what holds anywhere', () => {
    for (const screen of screens) {
      const own = standardKeymap.keysOn(screen).filter((b) => b.binding.on !== 'any');
      const names = own.map((b) => b.binding.key);
      expect(
        names.filter((k, i) => names.indexOf(k) !== i),
        screen,
      ).toEqual([]);
      const anywhere = standardKeymap.keysOn(screen).filter((b) => b.binding.on === 'any');
      expect(
        anywhere.filter((b) => names.includes(b.binding.key)).map((b) => b.row.id),
        screen,
      ).toEqual([]);
    }
  });

  it('names only verbs there are, and reaches every verb by a line', () => {
    const named = rows.flatMap((row) => (row.verb ? [row.verb] : []));
    expect(named.filter((verb) => !verbs.has(verb))).toEqual([]);
    const byMeaning = [
      'lose-fastener',
      'move-piece',
      'move-stray',
      'lose-piece',
      'break',
      'lay-bead',
      'look-again',
      'remove-part',
      'count-trays',
      'order-service',
      'order-services',
      'declare',
      'exchange-holes',
      'note-photo',
      'fill-box-together',
      'scrap-together',
    ];
    // Scrapping a hole's own is the same as laying its fastener on the scrap pile.
    const reached = new Set([...named, ...byMeaning, 'scrap-own']);
    expect([...verbs.keys()].filter((verb) => !reached.has(verb))).toEqual([]);
  });

  it('gives every slot that is said out loud a type that something can fill', () => {
    const typed = new Set([...formOf.values()].flatMap((form) => slotsOf(form).map(({ type }) => type)));
    const onlySaid = ['socket', 'star', 'few', 'figures'];
    const unfilled = sayings.flatMap(({ row, nodes }) =>
      slotsOf(nodes)
        .filter(({ type }) => !typed.has(type) && !onlySaid.includes(type))
        .map(({ slot, type }) => `${row.id}: <${slot}:${type}>; a slot that is said carries its type as in the form`),
    );
    expect(unfilled).toEqual([]);
  });
  it('has a reader for every slot of every form', () => {
    for (const [id, form] of formOf) {
      for (const { type } of slotsOf(form))
        expect(() => readSlot(desk)(type, [], [], {}), `${id}: ${type}`).not.toThrow();
    }
  });

  it('shows a phrase that may be said as it is said, and a slot by its name', () => {
    expect(usage(rowById.get('finding') as Row)).toBe('finding [on arrival|during the work] [at AT] WHAT');
  });

  it('says help in one sentence that ends with a full stop', () => {
    for (const row of rows) expect(row.help, row.id).toMatch(/^[A-Z].*\.$/);
  });
});
