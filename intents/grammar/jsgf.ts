// A phrase printed as a JSGF grammar, for recognisers that take one.
import type { Phrase } from '../phrase.ts';

/** Large shared parts become rules of their own, so that the text stays short. */
export function jsgfOf(of: Phrase): string {
  const rules = new Map<Phrase, string>();
  const bodies: string[] = [];
  const print = (phrase: Phrase): string => {
    switch (phrase.kind) {
      case 'word':
        return phrase.word;
      case 'seq':
        return phrase.parts.map(print).filter(Boolean).join(' ') || '<NULL>';
      case 'oneOf':
        return `(${phrase.of.map(print).join(' | ')})`;
      case 'maybe':
        return `[${print(phrase.of)}]`;
      case 'many':
        return `(${print(phrase.of)})+`;
      case 'means':
        return print(phrase.of);
      case 'lazy':
        return rule(phrase, phrase.get());
      case 'slot':
        throw new TypeError(`jsgf() cannot print the slot <${phrase.name}>`);
    }
  };
  const rule = (key: Phrase, body: Phrase): string => {
    const known = rules.get(key);
    if (known) return known;
    const name = `<r${rules.size + 1}>`;
    rules.set(key, name);
    bodies.push(`${name} = ${print(body)};`);
    return name;
  };
  const start = print(of);
  return `#JSGF V1.0;\ngrammar axlehand;\npublic <sentence> = ${start};\n${bodies.join('\n')}\n`;
}
