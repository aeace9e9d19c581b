/** Pieces of some eight seconds at most: browsers cut longer ones off. */
const longest = 110;

/** A text in sentences, long ones cut at commas or blanks. */
export function sentences(text: string): string[] {
  const whole = text.match(/[^.!?\n]+[.!?]*(?=\s|$)|[^\s]+/g) ?? [];
  return whole
    .map((sentence) => sentence.trim())
    .filter(Boolean)
    .flatMap(cut);
}

function cut(sentence: string): string[] {
  if (sentence.length <= longest) return [sentence];
  const head = sentence.slice(0, longest);
  const comma = head.lastIndexOf(', ') + 1;
  const at = comma > 30 ? comma : head.lastIndexOf(' ') > 0 ? head.lastIndexOf(' ') : longest;
  return [sentence.slice(0, at).trim(), ...cut(sentence.slice(at).trim())];
}
