import { Fraction } from '../quantity/index.ts';

const numeral = /^(-?\d+)(?:(\.\d+)|\/([1-9]\d*))?$/;

/** An exact number, or undefined where the text is none. */
export function numberOf(text: string): Fraction | undefined {
  const [, whole, decimals, below = '1'] = numeral.exec(text) ?? [];
  if (whole === undefined) return undefined;
  return decimals ? new Fraction(text) : new Fraction(BigInt(whole), BigInt(below));
}
