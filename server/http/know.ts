import type { Know, Shop } from '#dialogue';
import type { Log } from '#log';
import type { Speech } from './speech.ts';

/** Jobs a turn can name: the newest ones. */
const jobsKnown = 200;

/** Until the shop says otherwise. */
export const plainShop: Shop = {
  name: 'the shop',
  lengthUnit: 'in',
  spelling: 'british',
  sides: { left: 'left', right: 'right' },
};

/** What a turn may look at besides its job, as it stands now. */
export function knowOf(log: Log, speech: Speech): Know {
  return {
    shop: (log.setting('shop') as Shop | undefined) ?? plainShop,
    stock: log.stock(),
    // Most turns never look at the log book; those that do, pay for it.
    get jobs() {
      return log.search({ limit: jobsKnown, steps: true }).jobs;
    },
    readNote: speech.readNote,
    ...(speech.practice ? { practice: speech.practice } : {}),
  };
}
