// Letters as they are spelled out: ICAO words, and the names of letters as a recogniser writes them.

const icao =
  'alfa bravo charlie delta echo foxtrot golf hotel india juliett kilo lima mike november oscar papa quebec romeo sierra tango uniform victor whiskey xray yankee zulu';

const names: Readonly<Record<string, string>> = {
  alpha: 'a',
  ay: 'a',
  bee: 'b',
  cee: 'c',
  see: 'c',
  sea: 'c',
  dee: 'd',
  ee: 'e',
  ef: 'f',
  eff: 'f',
  gee: 'g',
  aitch: 'h',
  haitch: 'h',
  eye: 'i',
  jay: 'j',
  juliet: 'j',
  kay: 'k',
  okay: 'k',
  el: 'l',
  ell: 'l',
  em: 'm',
  en: 'n',
  pee: 'p',
  pea: 'p',
  queue: 'q',
  cue: 'q',
  are: 'r',
  ar: 'r',
  ess: 's',
  es: 's',
  tee: 't',
  tea: 't',
  you: 'u',
  vee: 'v',
  whisky: 'w',
  ex: 'x',
  why: 'y',
  wye: 'y',
  zee: 'z',
  zed: 'z',
};

export const letters: ReadonlyMap<string, string> = new Map([
  ...icao.split(' ').map((word) => [word, word.charAt(0)] as const),
  ...Object.entries(names),
  ...[...'abcdefghijklmnopqrstuvwxyz'].map((letter) => [letter, letter] as const),
]);
