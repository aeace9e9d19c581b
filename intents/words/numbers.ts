// Number words, and how a whole number is spoken.

export const digits: ReadonlyMap<string, number> = new Map(
  ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'].map((word, at) => [word, at + 1]),
);

export const teens: ReadonlyMap<string, number> = new Map(
  ['ten', 'eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen'].map(
    (word, at) => [word, at + 10],
  ),
);

export const tens: ReadonlyMap<string, number> = new Map([
  ...['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'].map(
    (word, at) => [word, (at + 2) * 10] as const,
  ),
  ['fourty', 40],
]);

/** Nought beside another digit, and an exclamation alone. */
export const exclamations: ReadonlySet<string> = new Set(['oh', 'o']);

/** What stands for nought. */
export const zeros: ReadonlySet<string> = new Set([...exclamations, 'zero', 'naught', 'nought', 'aught', 'ought', 'nil']);

/** Names of the powers that end a group: "two hundred thousand", "three million". */
export const scales: ReadonlyMap<string, bigint> = new Map([
  ['thousand', 1_000n],
  ['thousands', 1_000n],
  ['grand', 1_000n],
  ['million', 1_000_000n],
  ['millions', 1_000_000n],
  ['billion', 1_000_000_000n],
  ['billions', 1_000_000_000n],
  ['trillion', 1_000_000_000_000n],
  ['trillions', 1_000_000_000_000n],
  ['quadrillion', 10n ** 15n],
  ['quintillion', 10n ** 18n],
  ['sextillion', 10n ** 21n],
  // Indian English.
  ['lakh', 100_000n],
  ['lakhs', 100_000n],
  ['crore', 10_000_000n],
  ['crores', 10_000_000n],
]);

/** A count by its trade name: "a dozen", "two dozen". */
export const batches: ReadonlyMap<string, number> = new Map([
  ['dozen', 12],
  ['dozens', 12],
  ['score', 20],
  ['pair', 2],
  ['couple', 2],
]);

/** "twentyone", as hurried thumbs write it. */
export const joinedWords: readonly (readonly [joined: string, apart: string])[] = [...tens.keys()].flatMap((ten) =>
  [...digits.keys()].map((digit) => [ten + digit, `${ten} ${digit}`] as const),
);

const small = ['zero', ...digits.keys(), ...teens.keys()];
const tensSpoken = [...tens.keys()];
const spokenScales: readonly (readonly [bigint, string])[] = [
  [1_000_000_000_000n, 'trillion'],
  [1_000_000_000n, 'billion'],
  [1_000_000n, 'million'],
  [1_000n, 'thousand'],
  [100n, 'hundred'],
];

/** "seventy-two", "one hundred twenty", "three thousand five hundred". @throws TypeError below nought. */
export function cardinal(value: bigint | number): string {
  const n = BigInt(value);
  if (n < 0n) throw new TypeError(`cardinal() expected a whole number from 0 up, got ${n}`);
  if (n < 20n) return small[Number(n)] ?? '';
  if (n < 100n) {
    const ten = tensSpoken[Number(n / 10n) - 2] ?? '';
    return n % 10n === 0n ? ten : `${ten}-${cardinal(n % 10n)}`;
  }
  const [size, name] = spokenScales.find(([scale]) => n >= scale) ?? [100n, 'hundred'];
  const head = `${cardinal(n / size)} ${name}`;
  return n % size === 0n ? head : `${head} ${cardinal(n % size)}`;
}

/** Digit by digit: "four four six oh nine". */
export function digitByDigit(text: string): string {
  return [...text].map((digit) => small[Number(digit)] ?? digit).join(' ');
}
