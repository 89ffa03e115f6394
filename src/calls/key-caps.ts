// Keys as they are printed on the caps, and the keys that answer a question. No other string names one of them.

const names: Record<string, string> = {
  enter: 'Enter',
  space: 'Space',
  tab: 'Tab',
  backspace: 'Bksp',
  escape: 'Esc',
  right: 'Right',
  left: 'Left',
  'page-up': 'PgUp',
  'page-down': 'PgDn',
  home: 'Home',
  end: 'End',
};
export const keyName = (key: string): string => names[key] ?? key;

/**
 * What stands in a question is taken, gone on with to a known name, rubbed out, left; the same keys keep or leave what is
 * shown. `fresh` answers with a name nobody used yet.
 */
export const questionKeys = {
  take: 'enter',
  complete: 'tab',
  erase: 'backspace',
  leave: 'escape',
  fresh: '+',
} as const;
/** What a keypad has for it, where each key means one thing; and for the next page. */
export const padQuestionKeys = { erase: '*', leave: '-', page: '+', fresh: '0' } as const;
export const cap = {
  take: keyName(questionKeys.take),
  complete: keyName(questionKeys.complete),
  erase: keyName(questionKeys.erase),
  leave: keyName(questionKeys.leave),
} as const;
