// Keys as they are printed on the caps.
const names: Record<string, string> = {
  enter: 'Enter',
  space: 'Space',
  backspace: 'Bksp',
  escape: 'Esc',
  right: 'Right',
  'page-up': 'PgUp',
  'page-down': 'PgDn',
};
export const keyName = (key: string): string => names[key] ?? key;
