import { Fraction } from '../quantity/index.ts';

const numeral = /^-?\d+(?:\.\d+|\/[1-9]\d*)?$/;

/** An exact number, or undefined where the text is none. */
export function numberOf(text: string): Fraction | undefined {
  return numeral.test(text) ? new Fraction(text) : undefined;
}
