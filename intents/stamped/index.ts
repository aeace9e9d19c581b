// Trade tokens, in the order they are tried where nothing else tells them apart.
import type { Holds } from '../fields.ts';
import { numberOpeners, numberVocabulary } from '../numbers/classes.ts';
import { unitVocabulary } from '../numbers/unit.ts';
import type { Token } from '../tokens.ts';
import { wordList } from '../wordbook.ts';
import { letters } from '../words/letters.ts';
import { readBearing, readSerial } from './bearing.ts';
import { readBoltPattern, readBrakeSize } from './cross.ts';
import { readThread } from './thread.ts';
import type { Stamp, StampReader } from './types.ts';
import { readTyre } from './tyre.ts';
import { readVin } from './vin.ts';

export type { Stamp };

const readers: Readonly<Partial<Record<Holds, StampReader>>> = {
  vin: readVin,
  tyre: readTyre,
  thread: readThread,
  boltPattern: readBoltPattern,
  brakeSize: readBrakeSize,
  bearing: readBearing,
  serial: readSerial,
};

const inOrder = Object.values(readers);

/** Words that may begin a token without its field's name: letters and their names, designations. Numbers may as well. */
export const stampStarts: ReadonlySet<string> = new Set([
  ...letters.keys(),
  'st',
  'lt',
  'lm',
  'jl',
  'jm',
  'hm',
  'jlm',
  'double',
  'triple',
  'metric',
  'inch',
]);

/** A number, a letter or a unit: "inch by one and a half". */
const begins = wordList([...stampStarts, ...numberVocabulary, ...unitVocabulary, ...numberOpeners]);

/** The trade token at `at`; `asked` names the kinds that the words before it call for. */
export function readStamp(tokens: readonly Token[], at: number, asked: readonly Holds[]): Stamp | undefined {
  for (const kind of asked) {
    const found = readers[kind]?.(tokens, at, true);
    if (found) return found;
  }
  if (tokens[at]?.kind === 'word' && !begins(tokens[at])) return undefined;
  for (const read of inOrder) {
    const found = read(tokens, at, false);
    if (found) return found;
  }
  return undefined;
}
