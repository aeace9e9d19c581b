// A phrase printed as a JSGF grammar, for recognisers that take one.
import { type Phrase, partsOf } from '../phrase.ts';

/** Whatever stands in more than one place becomes a rule of its own, so that the text stays short. */
export function jsgfOf(of: Phrase): string {
  const shared = sharedIn(of);
  const names = new Map<Phrase, string>();
  const rules: string[] = [];
  const print = (phrase: Phrase): string => (shared.has(phrase) ? ruleFor(phrase) : body(phrase));
  const body = (phrase: Phrase): string => {
    switch (phrase.kind) {
      case 'word':
        return phrase.word;
      case 'seq':
        return phrase.parts.map(print).filter(Boolean).join(' ') || '<NULL>';
      case 'oneOf':
        return `(${phrase.of.map(print).join(' | ')})`;
      case 'maybe':
        return `[${print(phrase.of)}]`;
      case 'means':
      case 'seldom':
        return print(phrase.of);
      case 'lazy':
        return print(phrase.get());
      case 'slot':
        throw new TypeError(`jsgf() cannot print the slot <${phrase.name}>`);
    }
  };
  const ruleFor = (phrase: Phrase): string => {
    const known = names.get(phrase);
    if (known) return known;
    const name = `<r${names.size + 1}>`;
    names.set(phrase, name);
    rules.push(`${name} = ${body(phrase)};`);
    return name;
  };
  const start = print(of);
  return `#JSGF V1.0;\ngrammar axlehand;\npublic <sentence> = ${start};\n${rules.join('\n')}\n`;
}

function sharedIn(of: Phrase): ReadonlySet<Phrase> {
  const seen = new Set<Phrase>();
  const again = new Set<Phrase>();
  const visit = (phrase: Phrase): void => {
    if (phrase.kind === 'word') return;
    if (seen.has(phrase)) {
      again.add(phrase);
      return;
    }
    seen.add(phrase);
    for (const part of partsOf(phrase)) visit(part);
  };
  visit(of);
  return again;
}
