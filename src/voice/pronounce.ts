// How words sound, in the sounds of the English dictionary that comes with the recogniser: from that dictionary, from the
// list of trade words it lacks, or, for a name nobody listed, by simple rules of spelling. A word without a sound would
// silence the whole grammar, so every word gets one; those that were guessed are told.

/** Trade words the dictionary of pocketsphinx-en-us lacks. From memory, by its own way of writing sounds. */
export const tradeWords: Readonly<Record<string, string>> = {
  tensioner: 'T EH N SH AH N ER',
  grommet: 'G R AA M AH T',
  mudguard: 'M AH D G AA R D',
  slackened: 'S L AE K AH N D',
  unmasked: 'AH N M AE S K T',
  subframe: 'S AH B F R EY M',
  driveshaft: 'D R AY V SH AE F T',
  tappet: 'T AE P AH T',
  dowel: 'D AW AH L',
  dowels: 'D AW AH L Z',
  hexkey: 'HH EH K S K IY',
  locknut: 'L AA K N AH T',
  camshaft: 'K AE M SH AE F T',
  crankcase: 'K R AE NG K K EY S',
  flywheel: 'F L AY W IY L',
  turbocharger: 'T ER B OW CH AA R JH ER',
  thermostat: 'TH ER M AH S T AE T',
  bellhousing: 'B EH L HH AW Z IH NG',
  wishbone: 'W IH SH B OW N',
  solenoid: 'S AA L AH N OY D',
  downpipe: 'D AW N P AY P',
  viscous: 'V IH S K AH S',
  sprocket: 'S P R AA K AH T',
  gasket: 'G AE S K AH T',
  retightened: 'R IY T AY T AH N D',
};

/** Longest spelling first within a letter; what no rule knows is silent. */
const spellings: readonly (readonly [string, string])[] = Object.entries({
  tion: 'SH AH N',
  ough: 'AO',
  igh: 'AY',
  tch: 'CH',
  sch: 'SH',
  ee: 'IY',
  ea: 'IY',
  oo: 'UW',
  ou: 'AW',
  ow: 'OW',
  ai: 'EY',
  ay: 'EY',
  oa: 'OW',
  oi: 'OY',
  oy: 'OY',
  au: 'AO',
  aw: 'AO',
  er: 'ER',
  ir: 'ER',
  ur: 'ER',
  ar: 'AA R',
  or: 'AO R',
  ch: 'CH',
  sh: 'SH',
  th: 'TH',
  ph: 'F',
  wh: 'W',
  ck: 'K',
  ng: 'NG',
  qu: 'K W',
  ll: 'L',
  ss: 'S',
  tt: 'T',
  pp: 'P',
  nn: 'N',
  mm: 'M',
  rr: 'R',
  ff: 'F',
  dd: 'D',
  gg: 'G',
  bb: 'B',
  zz: 'Z',
  a: 'AE',
  b: 'B',
  c: 'K',
  d: 'D',
  e: 'EH',
  f: 'F',
  g: 'G',
  h: 'HH',
  i: 'IH',
  j: 'JH',
  k: 'K',
  l: 'L',
  m: 'M',
  n: 'N',
  o: 'AA',
  p: 'P',
  q: 'K',
  r: 'R',
  s: 'S',
  t: 'T',
  u: 'AH',
  v: 'V',
  w: 'W',
  x: 'K S',
  y: 'IY',
  z: 'Z',
});
export function bySpelling(word: string): string {
  const sounds: string[] = [];
  const spelt = word.length > 3 ? word.replace(/(?<=[b-df-hj-np-tv-z])e$/, '') : word;
  for (let at = 0; at < spelt.length; ) {
    const [letters, sound] = spellings.find(([one]) => spelt.startsWith(one, at)) ?? [spelt[at] as string, ''];
    if (sound) sounds.push(sound);
    at += letters.length;
  }
  return sounds.join(' ') || 'AH';
}

/** The sounds of a recogniser's dictionary file, by word; second ways of saying a word stand as "word(2)". */
export function readDictionary(text: string): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const line of text.split('\n')) {
    const gap = line.search(/\s/);
    if (gap <= 0) continue;
    const word = line.slice(0, gap).replace(/\(\d+\)$/, '');
    found.set(word, [...(found.get(word) ?? []), line.slice(gap).trim()]);
  }
  return found;
}

/** The dictionary of one grammar, and the words in it whose sound was guessed. */
export function dictionaryOf(
  words: readonly string[],
  known: ReadonlyMap<string, readonly string[]>,
): { text: string; guessed: readonly string[] } {
  const guessed: string[] = [];
  const lines = words.flatMap((word) => {
    const listed = known.get(word) ?? (tradeWords[word] ? [tradeWords[word]] : undefined);
    if (!listed) guessed.push(word);
    return (listed ?? [bySpelling(word)]).map((sounds, i) => `${word}${i > 0 ? `(${i + 1})` : ''} ${sounds}`);
  });
  return { text: `${lines.join('\n')}\n`, guessed };
}
