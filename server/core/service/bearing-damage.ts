// What the shop calls it -> what it is (ISO 15243) -> whether it goes back.
import { type BearingDamageRow, bearingDamage } from '#data';

export interface DamageNamed {
  readonly code: 'damageNamed';
  /** Worst first: replace before look before keep. */
  readonly found: readonly BearingDamageRow[];
}
export interface DamageUnknown {
  readonly code: 'damageUnknown';
  /** What could be said: the first word of every row. */
  readonly known: readonly string[];
}

/** Names the damage in a spoken description: "right inner is flaked and a bit blue". */
export function nameDamage(description: string): DamageNamed | DamageUnknown {
  const text = ` ${plain(description).replace(denied, ' ')} `;
  const hits = bearingDamage.flatMap((row) => {
    const word = row.said
      .map(plain)
      .filter((said) => text.includes(` ${said} `))
      .toSorted((one, other) => other.length - one.length)[0];
    return word === undefined ? [] : [{ row, word }];
  });
  const found = hits.filter(({ word }) => !hits.some((other) => other.word !== word && ` ${other.word} `.includes(` ${word} `)));
  if (found.length === 0) return { code: 'damageUnknown', known: bearingDamage.map(({ said }) => said[0] ?? '') };
  return { code: 'damageNamed', found: found.map(({ row }) => row).toSorted((one, other) => rank(one) - rank(other)) };
}

/** "No pitting", "isn't rough": what is denied is not there. */
const denied = /\b(no|not|never|without|(is|are|was|were|do|does|did)n t) (sign of |signs of |any |trace of )?\w+( or \w+)*/g;

/** Small words between tell nothing: "the cage is bent" is "cage bent". */
const small = /\b(a|an|the|is|are|was|were|has|have|had|looks|look|feels|feel|round|around|all|very|some|little|bit|badly)\b/g;

const plain = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .replace(small, ' ')
    .replace(/ +/g, ' ')
    .trim();

function rank({ reuse }: BearingDamageRow): number {
  return ['no', 'look', 'yes'].indexOf(reuse);
}
