// The one shape of all wording tables: code and facts in, words out. A code without wording does not compile.
import type { Line } from '../draft.ts';
import type { Shop } from '../types.ts';
import { sentence } from '../words.ts';

/** What one code says. `show` only where the screen differs from the voice. */
interface Words {
  readonly tone: Line['tone'];
  readonly speak: string;
  readonly show?: string;
}

export type Wording<Facts> = { readonly [Code in keyof Facts]: (facts: Facts[Code], shop: Shop) => Words };

/** A function that puts any code of the table into words. */
export function speaker<Facts>(table: Wording<Facts>) {
  return <Code extends keyof Facts & string>(code: Code, facts: Facts[Code], shop: Shop): Line => {
    const { tone, speak, show } = table[code](facts, shop);
    return { code, tone, speak: sentence(speak), show: sentence(show ?? speak) };
  };
}
