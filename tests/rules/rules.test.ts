// The rule book and the names of the tests match: every rule is proven by a test that carries its number or is on the
// list of those not proven yet, and that list only shrinks.
import { describe, expect, it } from 'vitest';
import { notYet } from './not-yet.ts';
import { ruleBook, rulesIn, rulesNamedIn, rulesNamedInTests } from './reading.ts';

const rules = rulesIn(ruleBook()).map((rule) => rule.number);
const named = rulesNamedInTests();
const proven = new Set(named.map(({ rule }) => rule));
const listed = Object.keys(notYet);

describe('the rule book', () => {
  it('uses no number twice', () => {
    expect(rules.length).toBeGreaterThan(60);
    expect(rules.filter((rule, place) => rules.indexOf(rule) !== place)).toEqual([]);
  });
});

describe('the names of the tests', () => {
  it('carry every rule that is not on the list of those not proven yet', () => {
    const unproven = rules.filter((rule) => !proven.has(rule) && !listed.includes(rule));
    expect(unproven, 'name the proving test after it, `[L7] …`').toEqual([]);
  });

  it('carry no number that the rule book lacks', () => {
    expect(named.filter(({ rule }) => !rules.includes(rule))).toEqual([]);
  });
});

describe('the list of rules not proven yet', () => {
  it('names rules of the book, each with a reason', () => {
    expect(listed.filter((rule) => !rules.includes(rule))).toEqual([]);
    expect(listed.filter((rule) => (notYet[rule] ?? '').length < 15)).toEqual([]);
  });

  it('names none that a test proves by now', () => {
    const stale = named.filter(({ rule }) => listed.includes(rule));
    expect(stale, 'proven now: take it off the list in tests/rules/not-yet.ts').toEqual([]);
  });
});

describe('reading test names', () => {
  const numbers = (text: string): string[] => rulesNamedIn(text, 'a.test.ts').map(({ rule }) => rule);

  it.each([
    ["it('[L7] a one-use fastener never goes back', () => {});", ['L7']],
    ["test('[L7 L8] both', () => {});", ['L7', 'L8']],
    ["describe('[S2] skin time', () => { it('[S3] cure', () => {}); });", ['S2', 'S3']],
    ["it.each([[1], [2]])('[O3] pass %s', () => {});", ['O3']],
    // biome-ignore lint/suspicious/noTemplateCurlyInString: this is the text of a test
    ['it(`[K1] tray ${tray}`, () => {});', ['K1']],
  ])('sees %s', (text, expected) => expect(numbers(text)).toEqual(expected));

  it.each([
    "it.skip('[L7] later', () => {});",
    "it.todo('[L7] later');",
    "describe.skip('[L7] later', () => {});",
    "expect('[L7]').toBe('[L7]');",
    "// it('[L7] a comment', () => {});",
    "it('hole [7] of the area', () => {});",
  ])('does not take for a proof: %s', (text) => expect(numbers(text)).toEqual([]));
});
