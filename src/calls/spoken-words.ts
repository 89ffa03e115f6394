// How things written are said: numbers, sizes, names. "M6x25" is "em six by twenty five", "O-ring" is "o ring".

const upToNineteen = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
] as const;
const tens = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
export const digitWords: readonly string[] = upToNineteen.slice(0, 10);

/** 0 to 999 in words; a longer one figure by figure. */
export function numberInWords(n: number): string {
  if (n < 20) return upToNineteen[n] as string;
  if (n < 100) return `${tens[Math.floor(n / 10)]}${n % 10 ? ` ${upToNineteen[n % 10]}` : ''}`;
  if (n < 1000) return `${upToNineteen[Math.floor(n / 100)]} hundred${n % 100 ? ` ${numberInWords(n % 100)}` : ''}`;
  return [...String(n)].map((figure) => upToNineteen[Number(figure)]).join(' ');
}

/** A name, a spec or a number as it is said: small letters, figures in words, no signs. */
export function asSaid(written: string): string {
  const parts = written
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/\bm(?=\d)/g, 'em ')
    .replace(/(?<=\d)x(?=\d)|\bx(?=\d)/g, ' by ')
    .match(/\d+(?:[.,]\d+)?|[a-z']+/g);
  return (parts ?? []).map(partSaid).join(' ');
}
function partSaid(part: string): string {
  if (!/^\d/.test(part)) return part.replaceAll("'", '');
  const [whole = '', after] = part.split(/[.,]/);
  const said = numberInWords(Number(whole));
  return after === undefined
    ? said
    : `${said} point ${[...after].map((figure) => digitWords[Number(figure)]).join(' ')}`;
}
