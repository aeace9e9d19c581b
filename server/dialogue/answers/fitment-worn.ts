// A worn number read out character by character, with words for what cannot be read: "L four four something four nine".
const digits = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const worn = new Set(['something', 'blank', 'unreadable', 'worn', 'smudge', 'missing']);
const letters: Readonly<Record<string, string>> = {
  oh: '0',
  o: '0',
  niner: '9',
  el: 'L',
  em: 'M',
  jay: 'J',
  aitch: 'H',
  h: 'H',
  l: 'L',
  m: 'M',
  j: 'J',
};

/** The characters with "?" for each that cannot be read; undefined where no word says so or too little is left. */
export function wornNumber(words: string): string | undefined {
  const heard = words.toLowerCase().split(/[^a-z0-9?]+/);
  const runs: string[] = [''];
  for (const word of heard) {
    const read = characters(word);
    if (read === undefined) runs.push('');
    else runs[runs.length - 1] += read;
  }
  return runs.find((run) => run.includes('?') && run.length >= 4 && run.replaceAll('?', '').length >= 3);
}

function characters(word: string): string | undefined {
  if (worn.has(word)) return '?';
  if (/^[0-9?]+$/.test(word)) return word;
  const digit = digits.indexOf(word);
  if (digit >= 0) return String(digit);
  return letters[word] ?? (/^[hjlm]{1,3}[0-9?]+$/.test(word) ? word.toUpperCase() : undefined);
}
