// Number words that noise turns into one another. The search may have dropped the other one at its first sound, so that a mistaken
// "sixteen" looks sure: it is weighed against its twin before it is taken.
import type { Automaton } from '#intents/grammar';

/** "-teen" and "-ty", and the two digits that radio operators keep apart by saying "niner". */
const pairs = [
  ['thirteen', 'thirty'],
  ['fourteen', 'forty'],
  ['fifteen', 'fifty'],
  ['sixteen', 'sixty'],
  ['seventeen', 'seventy'],
  ['eighteen', 'eighty'],
  ['nineteen', 'ninety'],
  ['five', 'nine'],
] as const;
const twins: ReadonlyMap<string, string> = new Map(
  pairs.flatMap(([one, other]) => [[one, other] as const, [other, one] as const]),
);

export const hasTwins = (text: string): boolean => text.split(' ').some((word) => twins.has(word));

/** Only this sentence, and the sentences of the grammar that come of it by putting twins for words. */
export function beside(grammar: Automaton, text: string): Automaton {
  const said = text.split(' ');
  /** State n: so many words said, and where the grammar then is. */
  const places: { readonly said: number; readonly at: number }[] = [{ said: 0, at: grammar.start }];
  const numbers = new Map<string, number>();
  const place = (id: number) => {
    const found = places[id];
    if (!found) throw new TypeError(`beside() has no state ${id}`);
    return found;
  };
  const stateOf = (count: number, at: number): number => {
    const key = `${count} ${at}`;
    const known = numbers.get(key) ?? places.push({ said: count, at }) - 1;
    numbers.set(key, known);
    return known;
  };
  const whole = (id: number): boolean => place(id).said === said.length;
  return {
    start: 0,
    next(id) {
      const { said: count, at } = place(id);
      const next = grammar.next(at);
      const ways = [said[count], twins.get(said[count] ?? '')].flatMap((word) => {
        const to = word === undefined ? undefined : next.get(word);
        return word === undefined || to === undefined ? [] : [[word, stateOf(count + 1, to)] as const];
      });
      return new Map(ways);
    },
    accepts: (id) => whole(id) && grammar.accepts(place(id).at),
    cost: (id, word) => grammar.cost(place(id).at, word),
    endCost: (id) => (whole(id) ? grammar.endCost(place(id).at) : Number.POSITIVE_INFINITY),
  };
}
